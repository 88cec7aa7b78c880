"""Which crossover.

Half of a double-section home hangs on one duct between the trunks. Each choice is tried in
the whole air path: what reaches the far half against its share of the load, the static that
it costs and how fast its air moves. The smallest that feeds both halves is taken.

Air goes by the fourth to fifth root of what it costs: a low wide slot has the area of a round
duct but more wall, and its air turns sharply in and out. A full-size round opening that
tapers, or a bellmouth, costs a tenth of a sharp collar.
"""

from __future__ import annotations

import itertools
from typing import Any, NamedTuple

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.drawing import Drawing
from downflow.facts import Spread
from downflow.physics import air, air_path, ducts
from downflow.sources import (
    BALANCING,
    DUCT_NETWORK,
    FLEX_COMPRESSION,
    HUD_CROSSOVER,
    PRACTICE,
    ROUND_EQUIVALENT,
    STANDARD_ATMOSPHERE,
    VELOCITY_LIMITS,
)

CALCULATOR = Calculator(
    id="crossover-choice",
    title="Which crossover",
    phase="air",
    question="Which crossover feeds both halves of the home by their loads?",
    reads=("trunks", "registers", "rooms", "home_length_ft", "elevation_ft", "return_air_f",
           "air_target_cfm", "fan_kind", "fan_table", "fan_table_density_lb_ft3", "filters",
           "filter_planned", "drops_at_cfm", "coil_drop_inwc", "kit_drop_inwc",
           "louver_face_in2", "louver_kind", "closet_other_free_in2", "opening_width_in",
           "opening_depth_in", "leakage_cfm25", "boot_loss_c", "trunk_turn_c", "crossover_found"),
    may_read=("room_loads", "fan_set_cfm", "fan_static_limit_inwc", "louver_free_pct",
              "floor_box_loss_c", "crossover_sound", "found_diameter_in", "slot_width_in",
              "slot_height_in", "slot_length_ft", "crossover_length_ft", "crossover_bends",
              "crossover_compression_pct", "crossover_sag_in", "crossover_support_ft",
              "crossover_second_ft", "crossover_planned_in",
              "crossover_planned_count"),
    gives=("crossover_size_in", "crossover_count", "crossover_far_share_pct",
           "crossover_far_load_pct", "crossover_static_inwc", "crossover_fpm", "crossover_plan",
           "crossover_options"),
    shows=("crossover_size_in", "crossover_count", "crossover_far_share_pct",
           "crossover_far_load_pct", "crossover_static_inwc", "crossover_fpm"),
)

NEAR_FULL_STRETCH_PCT = 10.0
MOST_SUPPORT_FT = 4.0
SIZES_IN = (8.0, 10.0, 12.0, 14.0)
COUNTS = (1, 2)


class Option(NamedTuple):
    """One choice: what stands for it, and its ducts."""

    name: str
    kind: str
    diameter_in: float
    number: int
    ducts: tuple[air_path.Crossover, ...]


class Tried(NamedTuple):
    """What a choice came to."""

    far_share: float
    static_inwc: float
    velocity_fpm: float
    airflow_cfm: float
    feeds: bool
    flows: air_path.Flows


def solve(job: Readings, paper: Paper) -> None:
    for field, reason in air_path.problems(job.trunks, job.registers, job.rooms,
                                           job.home_length_ft):
        job.refuse(field, reason)
    for field, reason in air_path.fan_problems(job.fan_kind, job.fan_table):
        job.refuse(field, reason)
    job.refuse_unless(job.louver_face_in2 + job.closet_other_free_in2 > 0, "louver_face_in2",
                      "nothing lets air into the closet: there is no way back at all. Enter the "
                      "louvers or the other openings.")
    job.stop_if_refused()
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.return_air_f),
        z=job.elevation_ft, t=job.return_air_f, what="Density of the air in the ducts")
    rough = {row.material: row.roughness_ft for row in tables.rows("duct_roughness")}
    base = air_path.base_path(job, density, rough)
    shares = air_path.load_shares(job.rooms, job.room_loads)
    load = air_path.far_load_share(base, shares)
    if all(t.under_box for t in base.trunks):
        paper.give("crossover_count", 0)
        paper.give_table("crossover_plan", [])
        paper.draw(options=[])
        paper.verdict("far-half", "fine", "One trunk: no crossover is needed.", source=BALANCING)
        return
    options = _options(job, paper, base.trunks)
    chosen, tried = _choose(job, paper, base, options, load)
    now = tried[chosen.name]
    _steps(paper, chosen, now)
    spread = _flex_spread(job, paper, base, chosen, now)
    paper.give("crossover_size_in", chosen.diameter_in)
    paper.give("crossover_count", chosen.number)
    paper.give("crossover_far_share_pct", 100 * now.far_share, model=spread)
    paper.give("crossover_far_load_pct", 100 * load)
    paper.give("crossover_static_inwc", now.static_inwc)
    paper.give("crossover_fpm", now.velocity_fpm)
    paper.give_table("crossover_plan", _plan_rows(job, chosen, now))
    if not paper.quiet:
        paper.give_table("crossover_options", [
            {"option": o.name, "far_share_pct": 100 * tried[o.name].far_share,
             "static_inwc": tried[o.name].static_inwc,
             "velocity_fpm": tried[o.name].velocity_fpm,
             "airflow_cfm": tried[o.name].airflow_cfm, "feeds": tried[o.name].feeds}
            for o in options])
    paper.draw(options=[(o, 100 * t.far_share, t.static_inwc, t.velocity_fpm, t.feeds)
                        for o in options if (t := tried.get(o.name))],
               chosen=chosen.name, load=100 * load)
    _verdicts(job, paper, chosen, now, load)


def _options(job: Readings, paper: Paper, trunks: tuple[air_path.Trunk, ...]) -> list[Option]:
    rough = {row.material: row.roughness_ft for row in tables.rows("duct_roughness")}
    out = [Option("none", "none", 0.0, 0, ())]
    if job.crossover_found == "slot" and None not in (
            job.slot_width_in, job.slot_height_in, job.slot_length_ft):
        out.append(Option("the slot found", "slot", ducts.rectangular_equivalent_in(
            job.slot_width_in, job.slot_height_in), 1, air_path.slots(
                trunks, width_in=job.slot_width_in, height_in=job.slot_height_in,
                length_ft=job.slot_length_ft, roughness_ft=rough["galvanized"])))
    if job.crossover_length_ft is None:
        return out
    sizes = set(SIZES_IN)
    if job.crossover_planned_in is not None:
        sizes.add(job.crossover_planned_in)
    if job.crossover_found == "round" and job.found_diameter_in is not None:
        sizes.add(job.found_diameter_in)
    for diameter, count in itertools.product(sorted(sizes), COUNTS):
        name = f"{diameter:g} in" if count == 1 else f"two of {diameter:g} in"
        out.append(Option(name, "flex", diameter, count, _flex(
            job, trunks, diameter, count,
            ducts.flex_factor(diameter, job.crossover_compression_pct).likely)))
    return out


def _flex(job: Readings, trunks: tuple[air_path.Trunk, ...], diameter: float, count: int,
          factor: float) -> tuple[air_path.Crossover, ...]:
    rough = {row.material: row.roughness_ft for row in tables.rows("duct_roughness")}
    pleated = [(r.diameter_in, r.loss_c) for r in tables.rows("elbow_round")
               if r.kind == "pleated"]
    return air_path.flexible(
        trunks, count, diameter_in=diameter,
        length_ft=job.crossover_length_ft * ducts.sag_length_factor(
            job.crossover_sag_in, job.crossover_support_ft),
        roughness_ft=rough["flex"], flex_factor=factor, bends=job.crossover_bends or 0.0,
        bend_c=air_path.pleated_bend_c(pleated, diameter), second_ft=job.crossover_second_ft)


def _count(option: Option) -> str:
    """What stands before the size of a choice in a sentence."""
    if option.kind == "flex":
        return "" if option.number == 1 else "two of "
    return "no crossover" if option.kind == "none" else option.name


def _try(base: air_path.AirPath, option: Option, load: float,
         start: air_path.Flows | None) -> Tried:
    path = air_path.AirPath(base.air, base.plant, base.trunks, base.registers, option.ducts)
    flows = air_path.solve(path, start)
    share = air_path.far_share(path, flows)
    fastest = max((abs(flows.crossover_cfm[c.id]) * 144 / c.area_in2 for c in option.ducts),
                  default=0.0)
    return Tried(share, flows.supply_static_inwc, fastest, flows.airflow_cfm,
                 air_path.halves_fed(share, load), flows)


def _choose(job: Readings, paper: Paper, base: air_path.AirPath, options: list[Option],
            load: float) -> tuple[Option, dict[str, Tried]]:
    """The chosen option, and every one that was tried, by name."""
    tried: dict[str, Tried] = {}
    if not paper.quiet:
        last = None
        for option in options:
            tried[option.name] = _try(base, option, load, last)
            last = tried[option.name].flows
    name = paper.decide("crossover", _pick(job, options, tried) if tried else "")
    chosen = next(o for o in options if o.name == name)
    if chosen.name not in tried:
        tried[chosen.name] = _try(base, chosen, load, paper.decide("flows", None))
    paper.decide("flows", tried[chosen.name].flows)
    return chosen, tried


def _pick(job: Readings, options: list[Option], tried: dict[str, Tried]) -> str:
    planned, count = job.crossover_planned_in, job.crossover_planned_count
    if count == 0:
        return "none"
    if planned is not None:
        want = int(count or 1)
        return next((o.name for o in options
                     if o.diameter_in == planned and o.number == want and o.kind == "flex"), "none")
    found = job.found_diameter_in if job.crossover_found == "round" else None
    keep = [o for o in options
            if o.kind == "slot" or (o.kind == "flex" and o.diameter_in == found and o.number == 1)]
    feeding = [o for o in options if tried[o.name].feeds]
    for option in keep:
        if option in feeding and job.crossover_sound == "sound":
            return option.name
    standard = [o for o in feeding if o.kind == "flex" and (count is None or o.number == count)]
    if standard:
        return min(standard, key=lambda o: (o.number * o.diameter_in**2, o.number)).name
    ranked = [o for o in options if o.kind == "flex"] or options
    return max(ranked, key=lambda o: tried[o.name].far_share).name


def _steps(paper: Paper, chosen: Option, now: Tried) -> None:
    if chosen.kind == "slot":
        one = chosen.ducts[0]
        paper.lookup("The slot as a round duct of the same friction", ROUND_EQUIVALENT, "in",
                     one.diameter_in, row=[("round equivalent, in", one.diameter_in)])
    for one in chosen.ducts[:1]:
        flow = abs(now.flows.crossover_cfm[one.id])
        paper.step("V = 144 * q / A", ROUND_EQUIVALENT, "ft/min", 144 * flow / one.area_in2,
                   q=flow, A=one.area_in2, what="Speed of the air in the crossover")
    solution = now.flows
    losses = sum(solution.drop_inwc.values())
    paper.solved("Airflow of the whole path with it", "fan = what the path loses", DUCT_NETWORK,
                 "cfm", solution.airflow_cfm, left=solution.fan_rise_inwc, right=losses,
                 side_unit="in w.c.",
                 method="Every duct, fitting and leak as one network; flows balance at each "
                        "joint.")


def _flex_spread(job: Readings, paper: Paper, base: air_path.AirPath, chosen: Option,
                 now: Tried) -> Spread | None:
    """What the published bounds of compressed flexible duct leave open. [share of air, %]"""
    if paper.quiet or chosen.kind != "flex":
        return None
    factor = ducts.flex_factor(chosen.diameter_in, job.crossover_compression_pct)
    ends = []
    for value in (factor.low, factor.high):
        moved = chosen._replace(ducts=_flex(job, base.trunks, chosen.diameter_in, chosen.number,
                                            value))
        ends.append(100 * _try(base, moved, 0.5, now.flows).far_share)
    here = 100 * now.far_share
    return Spread(max(0.0, here - min(ends)), max(0.0, max(ends) - here), False, FLEX_COMPRESSION)


def _plan_rows(job: Readings, chosen: Option, now: Tried) -> list[dict[str, Any]]:
    return [
        {"id": c.id, "kind": chosen.kind, "trunk": c.to_trunk, "at_ft": c.to_ft,
         "diameter_in": c.diameter_in if chosen.kind == "flex" else 0.0,
         "width_in": job.slot_width_in if chosen.kind == "slot" else 0.0,
         "height_in": job.slot_height_in if chosen.kind == "slot" else 0.0,
         "length_ft": c.length_ft,
         "airflow_cfm": now.flows.crossover_cfm[c.id],
         "velocity_fpm": 144 * abs(now.flows.crossover_cfm[c.id]) / c.area_in2}
        for c in chosen.ducts
    ]


def _verdicts(job: Readings, paper: Paper, chosen: Option, now: Tried, load: float) -> None:
    if job.crossover_found == "not looked":
        paper.verdict("existing-looked-for", "hold",
                      "Nobody has looked whether a crossover is there.", source=PRACTICE,
                      do="Look before anything is bought: between the sections, and inside the "
                         "trunk through the register next to the marriage line. Measure it.")
    elif job.crossover_found in ("slot", "round") and job.crossover_sound is None:
        paper.verdict("existing-looked-for", "look",
                      "A crossover was found, but nobody has said whether it is sound.",
                      source=HUD_CROSSOVER,
                      do="Inspect it along its whole length and measure it before one is added.")
    else:
        paper.verdict("existing-looked-for", "fine", "What is there has been looked for.",
                      source=PRACTICE)
    off = max(abs(now.far_share / load - 1), abs((1 - now.far_share) / (1 - load) - 1)) \
        if 0 < load < 1 else 0.0
    paper.limit(
        "both-halves", 100 * off, at_most=100 * air_path.TOTAL_SHARE, unit="%", decimals=0,
        source=BALANCING,
        fine="With {count}{size} the far half gets {share} of the air for {load} of the load.",
        look="With {count}{size} the far half gets {share} of the air for {load} of the load: "
             "a half is off by {value}, {limit} is the most.",
        hold="With {count}{size} the far half gets {share} of the air for {load} of the load: "
             "a half is off by {value}, {limit} is the most.",
        do="Take the next larger crossover, or a second one, before the floor is closed. Then "
           "balance room by room.", count=_count(chosen),
        size=Quantity(chosen.diameter_in, "in", 0) if chosen.kind == "flex" else "",
        share=Quantity(100 * now.far_share, "%", 0), load=Quantity(100 * load, "%", 0))
    limit = next(r for r in tables.rows("velocity_limits") if r.place == "crossover")
    paper.limit(
        "crossover-speed", now.velocity_fpm, at_most=limit.maximum_fpm, of="crossover_fpm",
        source=VELOCITY_LIMITS, beyond="look",
        fine="Its air is slow enough to be quiet.",
        look="Its air moves at {value}; beyond {limit} it is heard and costs static.",
        do="Take the next larger size if there is room for it.")
    wide = Quantity(0.03, "", 2)
    paper.verdict(
        "opening-shape", "fine",
        "A full-size opening that tapers to the duct beats a low wide slot: a sharp collar that "
        "pokes in loses its whole velocity pressure, a flush one half, a bellmouth {mouth} of it.",
        source=FLEX_COMPRESSION, mouth=wide)
    if chosen.kind == "flex":
        factor = ducts.flex_factor(chosen.diameter_in, job.crossover_compression_pct)
        # Where the tests end the range holds both bounds; what hangs on it is judged above.
        squeezed = factor.beyond_tests and job.crossover_compression_pct > NEAR_FULL_STRETCH_PCT
        paper.verdict(
            "flex-known", "look" if squeezed else "fine",
            "Tests of compressed flexible duct that could be read end at {tested}. For this size "
            "the published bounds are {low} to {high} times the stretched loss; the range holds "
            "both." if factor.beyond_tests else "The size lies within the published tests.",
            source=FLEX_COMPRESSION,
            do="Pull it to full stretch, cut off the rest, and hang it straight; or run it in "
               "rigid pipe, whose loss is known.",
            tested=Quantity(ducts.FLEX_TESTED_TO_IN, "in", 0),
            low=Quantity(factor.low, "", 1), high=Quantity(factor.high, "", 1))
        if job.origin("crossover_support_ft") == "assumed":
            paper.verdict("flex-support", "fine", "Plan its supports no more than {apart} apart.",
                          source=HUD_CROSSOVER, apart=Quantity(MOST_SUPPORT_FT, "ft", 0))
            return
        paper.limit(
            "flex-support", job.crossover_support_ft, at_most=MOST_SUPPORT_FT, unit="ft",
            decimals=1, source=HUD_CROSSOVER, beyond="look",
            fine="Its supports stand no more than {limit} apart.",
            look="Its supports stand {value} apart; {limit} is the most under a home.",
            do="Hang it again, off the ground and not squeezed.")


def figure(sheet: Sheet) -> str:
    """Each choice: its share of the air in the far half, static and speed; the load as limits."""
    options: Any = sheet.drawn["options"]
    if not options:
        return drawing.bars("crossover-choice", "One trunk", [("no crossover", 0.0)], "%",
                            system=sheet.system).figure("One trunk needs no crossover.")
    load: Any = sheet.drawn["load"]
    chosen = ""
    named = []
    for option, *rest in options:
        name = _count(option)
        if option.kind == "flex":
            name += sheet.text(option.diameter_in, "in", 0)
        if option.name == sheet.drawn["chosen"]:
            chosen = name
        named.append((name, *rest))
    said = "; ".join(
        f"{name}: {sheet.text(share, '%', 0)} of the air, {sheet.text(static, 'in w.c.', 2)} in "
        f"the box, {sheet.text(fpm, 'ft/min', 0)}" for name, share, static, fpm, _ in named)
    row = 74.0
    top = 62.0
    height = top + row * len(options) + 46
    d = Drawing("crossover-choice", "Share of the air that reaches the far half, by crossover",
                f"The far half has {sheet.text(load, '%', 0)} of the load. {said}. "
                f"Chosen: {chosen}.", height)
    d.text(20, 18, "air in the far half", "b")
    d.text(20, 42, f"between the lines: near its load, {sheet.text(load, '%', 0)}")
    widest = max(10.0, max(share for _, share, _, _, _ in options), load * 1.2)
    scale = 300.0 / widest
    slack = 100 * air_path.TOTAL_SHARE * min(load / 100, 1 - load / 100)
    base = top + row * len(options)
    for edge in (load - slack, load + slack):
        d.line(20 + edge * scale, top, 20 + edge * scale, base, "d")
    y = top
    for name, share, static, fpm, feeds in named:
        d.text(28, y + 17, f"{name}, chosen" if name == chosen else name, "b halo")
        d.text(332, y + 17, sheet.text(share, "%", 0), "b e halo")
        d.rect(20, y + 24, share * scale, 16, "if")
        if not feeds:
            d.hatch(20, y + 24, share * scale, 16)
        words = sheet.text(static, "in w.c.", 2)
        if fpm > 0:
            words += f", {sheet.text(fpm, 'ft/min', 0)}"
        d.text(28, y + 60, words, "halo")
        y += row
    d.path(f"M20 {drawing.at(top)}V{drawing.at(base)}H328", "o")
    d.text(20, base + 24, "0")
    d.text(332, base + 24, sheet.text(widest, "%", 0), "e")
    return d.figure("Hatched: a half is off by more than its tolerance. Under each bar: static in "
                    "the box and speed of the air in the crossover.")
