"""The supply side of this home.

Fan, filter, coil, kit, box, trunks, crossover, boots and leaks as one network. What comes out
of each register is laid against its room's share of the design load; where a room gets too
much, the plan names the damper that takes it away, and where one stays short, the boot that is
too small. Doors stand open here; *The way back* looks at closed ones.
"""

from __future__ import annotations

from typing import Any

from downflow import tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.drawing import Drawing
from downflow.facts import Spread
from downflow.physics import air, air_path, duct_leakage, ducts
from downflow.sources import (
    ARITHMETIC,
    BALANCING,
    DATA_SHEET,
    DUCT_LEAKS,
    DUCT_NETWORK,
    FLEX_COMPRESSION,
    GEOMETRY,
    HUD_STATIC,
    STANDARD_ATMOSPHERE,
    VELOCITY_LIMITS,
)

CALCULATOR = Calculator(
    id="supply-side",
    title="Supply side of this home",
    phase="air",
    question="Does each room get its share of the air, and at what static?",
    reads=("trunks", "registers", "rooms", "home_length_ft", "elevation_ft", "return_air_f",
           "air_target_cfm", "fan_kind", "fan_table", "fan_table_density_lb_ft3", "filters",
           "filter_planned", "drops_at_cfm", "coil_drop_inwc", "kit_drop_inwc",
           "louver_face_in2", "louver_kind", "closet_other_free_in2", "opening_width_in",
           "opening_depth_in", "leakage_cfm25", "boot_loss_c", "trunk_turn_c",
           "static_rated_inwc", "crossover_plan", "crossover_r", "trunk_r", "design_heating_f",
           "crossover_compression_pct"),
    may_read=("room_loads", "fan_set_cfm", "fan_static_limit_inwc", "louver_free_pct",
              "floor_box_loss_c", "crossover_bends", "kit_supply_air_f"),
    gives=("supply_airflow_cfm", "supply_worst_room_pct", "supply_static_inwc",
           "supply_external_inwc", "supply_delivered_cfm", "supply_leak_cfm",
           "supply_trunk_fpm", "supply_register_fpm", "supply_coldest_f", "drop_closet_inwc",
           "drop_filter_inwc", "drop_coil_inwc", "drop_kit_inwc", "drop_box_inwc",
           "drop_supply_inwc", "register_flows", "room_flows"),
    shows=("supply_airflow_cfm", "supply_worst_room_pct", "supply_static_inwc",
           "supply_external_inwc", "supply_delivered_cfm", "supply_leak_cfm",
           "supply_trunk_fpm", "supply_register_fpm", "supply_coldest_f"),
)

LARGEST_ASPECT = 4.0


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
    path = _path(job, density, lambda size: ducts.flex_factor(
        size, job.crossover_compression_pct).likely)
    shares = air_path.load_shares(job.rooms, job.room_loads)
    balanced, opened = _balance(paper, path, shares)
    dampers, now = balanced.dampers, balanced.flows
    rooms = air_path.room_flows(balanced.path, now)
    known = sum(shares[room] for room in rooms)
    targets = {room: shares[room] / known * now.delivered_cfm for room in rooms}
    worst = max(rooms, key=lambda r: abs(rooms[r] - targets[r]) / air_path.room_tolerance_cfm(
        targets[r]))
    worst = paper.decide("worst room", worst)
    _steps(job, paper, now, worst, rooms[worst], targets[worst], shares[worst] / known)
    external = now.fan_rise_inwc
    spread = _flex_spread(job, paper, density, dampers, worst, rooms[worst] / targets[worst], now,
                          shares)
    paper.give("supply_airflow_cfm", now.airflow_cfm)
    paper.give("supply_worst_room_pct", 100 * rooms[worst] / targets[worst], model=spread)
    paper.give("supply_static_inwc", now.supply_static_inwc)
    paper.give("supply_external_inwc", external)
    paper.give("supply_delivered_cfm", now.delivered_cfm)
    paper.give("supply_leak_cfm", now.leak_cfm)
    fastest = max(now.trunk_fpm.values())
    boot = max(144 * now.register_cfm[r.id] / r.area_in2 for r in path.registers)
    paper.give("supply_trunk_fpm", fastest)
    paper.give("supply_register_fpm", boot)
    temperatures = _temperatures(job, paper, balanced.path, now)
    for name in ("closet", "filter", "coil", "kit", "box", "supply"):
        paper.give(f"drop_{name}_inwc", now.drop_inwc.get(name, 0.0))
    paper.give_table("register_flows", [
        {"register": r.id, "room": r.room, "open_cfm": opened.register_cfm[r.id],
         "set_cfm": now.register_cfm[r.id],
         "damper": "close until it gives that" if r.id in dampers else "open",
         **({"air_f": temperatures[r.id]} if temperatures else {})}
        for r in path.registers])
    paper.give_table("room_flows", [
        {"id": room, "target_cfm": targets[room], "airflow_cfm": rooms[room],
         "of_target_pct": 100 * rooms[room] / targets[room],
         "within": abs(rooms[room] - targets[room]) <= air_path.room_tolerance_cfm(targets[room])}
        for room in rooms])
    paper.draw(path=balanced.path, flows=now, targets=targets,
               dampers=[r.id for r in path.registers if r.id in dampers])
    _verdicts(job, paper, path, balanced, rooms, targets, worst, density)


def _path(job: Readings, density: float, factor: Any) -> air_path.AirPath:
    rough = {row.material: row.roughness_ft for row in tables.rows("duct_roughness")}
    pleated = [(r.diameter_in, r.loss_c) for r in tables.rows("elbow_round")
               if r.kind == "pleated"]
    base = air_path.base_path(job, density, rough)
    crossovers = air_path.crossovers_from(
        job.crossover_plan, base.trunks, flex_factor=factor, roughness_ft=rough,
        bends=job.crossover_bends or 0.0,
        bend_c=lambda size: air_path.pleated_bend_c(pleated, size))
    return air_path.AirPath(base.air, base.plant, base.trunks, base.registers, crossovers)


def _balance(paper: Paper, path: air_path.AirPath, shares: dict[str, float],
             ) -> tuple[air_path.Balanced, air_path.Flows]:
    """The path with its dampers, and its flows with all of them open.

    Dampers are set once; while the range is felt out they stay as they are, and each run begins
    from the flows of the first.
    """
    if paper.quiet:
        dampers = paper.decide("dampers", {})
        set_path = air_path.with_dampers(path, dampers)
        flows = air_path.solve(set_path, paper.decide("flows", None))
        return air_path.Balanced(set_path, flows, dampers, ()), flows
    opened = air_path.solve(path)
    found = air_path.balance(path, shares, opened)
    paper.decide("dampers", found.dampers)
    paper.decide("flows", found.flows)
    return found, opened


def _steps(job: Readings, paper: Paper, now: air_path.Flows, worst: str, gets: float,
           target: float, share: float) -> None:
    losses = sum(now.drop_inwc.values())
    paper.solved("Airflow of the system", "fan = what the path loses", DUCT_NETWORK, "cfm",
                 now.airflow_cfm, left=now.fan_rise_inwc, right=losses, side_unit="in w.c.",
                 method="Closet, filter, kit, box, trunks, crossover, boots and leaks as one "
                        "network: every law holds, flows balance at each joint.")
    paper.total("What the fan must make", DUCT_NETWORK, "in w.c.", losses,
                [(name, value) for name, value in now.drop_inwc.items()])
    paper.step("D = Q - L", ARITHMETIC, "cfm", now.airflow_cfm - now.leak_cfm, Q=now.airflow_cfm,
               L=now.leak_cfm, what="What comes out of the registers")
    paper.step("T = s * D", BALANCING, "cfm", target, s=share, D=now.delivered_cfm,
               what=f"Share of {worst} by its part of the load")
    paper.step("p = 100 * q / T", ARITHMETIC, "%", 100 * gets / target, q=gets, T=target,
               what=f"What {worst} gets of it")


def _flex_spread(job: Readings, paper: Paper, density: float, dampers: dict[str, float],
                 worst: str, ratio: float, now: air_path.Flows,
                 shares: dict[str, float]) -> Spread | None:
    """What the published bounds of compressed flexible duct leave open for the worst room."""
    if paper.quiet or not any(row["kind"] == "flex" for row in job.crossover_plan):
        return None
    ends = []
    for pick in ("low", "high"):
        path = air_path.with_dampers(_path(job, density, lambda size, pick=pick: getattr(
            ducts.flex_factor(size, job.crossover_compression_pct), pick)), dampers)
        flows = air_path.solve(path, now)
        rooms = air_path.room_flows(path, flows)
        known = sum(shares[room] for room in rooms)
        ends.append(100 * rooms[worst] / (shares[worst] / known * flows.delivered_cfm))
    here = 100 * ratio
    return Spread(max(0.0, here - min(ends)), max(0.0, max(ends) - here), False,
                  FLEX_COMPRESSION)


def _temperatures(job: Readings, paper: Paper, path: air_path.AirPath,
                  now: air_path.Flows) -> dict[str, float]:
    """Temperature at each register on the design night, if the supply air is known."""
    supply = job.kit_supply_air_f
    if supply is None:
        return {}
    crawl = paper.step("tc = (8 * to + 68) / 9", DUCT_LEAKS, "°F",
                       duct_leakage.crawl_space_f(job.design_heating_f), to=job.design_heating_f,
                       what="Air under the floor on the design night")
    found = air_path.register_temperatures_f(
        path, now, supply, crawl, crawl, duct_leakage.effective_r(job.trunk_r),
        duct_leakage.effective_r(job.crossover_r))
    fed = {r.id for r in path.registers if now.register_cfm[r.id] > 1.0}
    paper.give("supply_coldest_f", min(found[r] for r in fed))
    return found


def _verdicts(job: Readings, paper: Paper, path: air_path.AirPath,
              balanced: air_path.Balanced, rooms: dict[str, float], targets: dict[str, float],
              worst: str, density: float) -> None:
    now = balanced.flows
    tolerance = air_path.room_tolerance_cfm(targets[worst])
    off = abs(rooms[worst] - targets[worst])
    names = [r.id for r in path.registers if r.id in balanced.dampers]
    fine = "Every room gets its share: {room} is farthest off, {gets} for {target}."
    if names:
        fine += " Dampers to set: registers {dampers}."
    starved = [r for r in rooms if rooms[r] < 1.0]
    short = ", ".join(starved or balanced.short)
    paper.limit(
        "rooms-in-share", off, at_most=tolerance, unit="cfm", decimals=0, source=BALANCING,
        fine=fine,
        look="{room} gets {gets} for its share of {target}: off by {value}, {limit} is the most. "
             "Dampers to set: {dampers}.",
        hold="{room} gets {gets} for its share of {target}." + (
            f" Short: {short}." if short else ""),
        do=("No air reaches the far trunk: add or mend the crossover before anything else."
            if starved else
            "Set the dampers named below with a flow hood. A room that stays short needs a larger "
            "boot or a second register."),
        room=worst, gets=Quantity(rooms[worst], "cfm", 0),
        target=Quantity(targets[worst], "cfm", 0),
        dampers=", ".join(names) if names else "none")
    paper.limit(
        "total-in-share", abs(now.airflow_cfm / job.air_target_cfm - 1) * 100,
        at_most=100 * air_path.TOTAL_SHARE, unit="%", decimals=0, source=BALANCING,
        fine="The fan moves the target's airflow through this path.",
        look="The path lets {flow} through for a target of {target}.",
        hold="The path lets {flow} through for a target of {target}.",
        do="Find what takes the pressure in *Where the pressure goes*, and open it.",
        flow=Quantity(now.airflow_cfm, "cfm", 0), target=Quantity(job.air_target_cfm, "cfm", 0))
    as_standard = now.fan_rise_inwc * ducts.STANDARD_DENSITY_LB_FT3 / density
    paper.limit(
        "within-rated-static", as_standard, at_most=job.static_rated_inwc,
        of="supply_external_inwc", source=DATA_SHEET,
        fine="External static, brought to the plate's standard air, is within the rating.",
        look="In the plate's standard air the external static is {value}; rated is {limit}.",
        hold="In the plate's standard air the external static is {value}; rated is {limit}.",
        do="Take the deep filter, a larger crossover or a larger floor opening before you order.")
    box = now.supply_static_inwc * ducts.STANDARD_DENSITY_LB_FT3 / density
    paper.limit(
        "federal-casing-static", box, at_most=0.9 * job.static_rated_inwc,
        of="supply_static_inwc", source=HUD_STATIC, beyond="look",
        fine="Static in the box is within nine tenths of the plate's.",
        look="Static in the box is {value}; nine tenths of the plate's are {limit}.",
        do="Open the supply side: crossover, dampers, boots.")
    _speeds(paper, path, now)
    if now.limited or now.outside_table:
        paper.verdict("fan-in-its-table", "hold" if now.limited else "look",
                      "The fan cannot hold its airflow against this path." if now.limited else
                      "The operating point lies beyond the rows of the fan table.",
                      source=DATA_SHEET, do="Lower what the path loses, or choose another speed.")
    else:
        paper.verdict("fan-in-its-table", "fine", "The operating point lies within the fan table.",
                      source=DATA_SHEET)
    flat = max(path.trunks, key=lambda t: ducts.aspect_ratio(t.width_in, t.height_in))
    aspect = ducts.aspect_ratio(flat.width_in, flat.height_in)
    paper.limit("trunk-shape", aspect, at_most=LARGEST_ASPECT, unit="", decimals=1,
                source=GEOMETRY, beyond="look",
                fine="No trunk is flatter than four to one.",
                look="A trunk is {value} times as wide as high: more wall than air.",
                do="Reckon with its friction; do not widen it further.")
    if job.room_loads is None:
        paper.verdict("loads-by-room", "look",
                      "Shares are split by floor area and outside wall, not by a load of each "
                      "room.", source=BALANCING,
                      do="Enter a load for each room to sharpen them.")
    else:
        paper.verdict("loads-by-room", "fine", "Shares come from a load of each room.",
                      source=BALANCING)


def _speeds(paper: Paper, path: air_path.AirPath, now: air_path.Flows) -> None:
    limits = {r.place: r for r in tables.rows("velocity_limits")}
    paper.limit(
        "trunk-speed", max(now.trunk_fpm.values()), at_most=limits["trunk"].recommended_fpm,
        of="supply_trunk_fpm", source=VELOCITY_LIMITS, beyond="look",
        fine="Air in the trunks is slow enough to be quiet.",
        look="Air in a trunk moves at {value}; {limit} is recommended at most.",
        do="Feed that trunk in its middle, or split the air between more trunks.")
    band = ducts.noise_band(tables.rows("noise_velocity"), max(
        144 * now.register_cfm[r.id] / r.area_in2 for r in path.registers))
    said = f"{band.low:.0f} and over" if band.high is None else f"{band.low:.0f} to {band.high:.0f}"
    paper.limit(
        "register-noise", max(144 * now.register_cfm[r.id] / r.area_in2 for r in path.registers),
        at_most=425.0, of="supply_register_fpm", source=VELOCITY_LIMITS, beyond="look",
        fine="Registers are about as loud as noise criterion {band}: quiet.",
        look="Air leaves a boot at {value}, about noise criterion {band}; {limit} keeps it near "
             "30.", do="Share that room's air between two registers, or fit a larger boot.",
        band=said)


def figure(sheet: Sheet) -> str:
    """Plan of the home upright: trunks, crossovers, registers with their share of target."""
    path, flows = sheet.drawn["path"], sheet.drawn["flows"]
    targets = sheet.drawn["targets"]
    assert isinstance(path, air_path.AirPath)
    assert isinstance(flows, air_path.Flows)
    assert isinstance(targets, dict)
    rooms = air_path.room_flows(path, flows)
    longest = max(t.length_ft for t in path.trunks)
    top, scale = 66.0, 400.0 / longest
    height = top + 400 + 70
    said = "; ".join(
        f"register {r.id} in {r.room}: {sheet.text(flows.register_cfm[r.id], 'cfm', 0)}, "
        f"{_percent(rooms[r.room], targets[r.room])} of the room's share" for r in path.registers)
    d = Drawing("supply-side", "Plan of the home from above: trunks, crossover, registers", said,
                height)
    gap = 340 / len(path.trunks)
    middle = {t.id: gap * (k + 0.5) for k, t in enumerate(path.trunks)}
    d.rect(4, top - 14, 332, 400 + 28, "o")
    for k in range(1, len(path.trunks)):
        d.line(gap * k, top - 14, gap * k, top + 414, "c")
    for trunk in path.trunks:
        x = middle[trunk.id]
        d.rect(x - 12, top, 24, trunk.length_ft * scale, "if")
        d.text(x, top - 24, f"trunk {trunk.id}", "b m")
    for trunk in path.trunks:
        if trunk.under_box:
            y = top + trunk.feed_ft * scale
            d.hatch(middle[trunk.id] - 20, y - 14, 40, 28)
            start = (middle[trunk.id], y)
    for one in path.crossovers:
        y = top + one.to_ft * scale
        x = middle[one.to_trunk]
        side = -1 if x > start[0] else 1
        d.supply(start[0] - side * 20, start[1], x + side * 14, y)
    for register in path.registers:
        x, y = middle[register.trunk], top + register.at_ft * scale
        left = x < 170
        d.rect(x - 8, y - 6, 16, 12, "of")
        share = rooms[register.room] / targets[register.room]
        if abs(rooms[register.room] - targets[register.room]) > air_path.room_tolerance_cfm(
                targets[register.room]):
            d.hatch(x - 8, y - 6, 16, 12)
        d.text(x - 18 if left else x + 18, y + 6, f"{100 * share:.0f} %",
               "b e halo" if left else "b halo")
        flow, _, unit = sheet.text(flows.register_cfm[register.id], "cfm", 0).partition("\u00a0")
        d.text(x + 18 if left else x - 18, y + 6, f"{register.id}: {flow}",
               "halo" if left else "e halo")
    d.text(170, height - 40, "front of the home at the top", "m")
    d.text(170, height - 14, f"register: its airflow in {unit}", "m")
    legend = [f"{r.id} {r.room}" for r in path.registers]
    dampers = sheet.drawn["dampers"]
    assert isinstance(dampers, list)
    caption = ("Percent: of the room's share of the air. Hatched: outside its tolerance. "
               + (f"Dampers to set: registers {', '.join(dampers)}." if dampers
                  else "No damper needs setting."))
    return d.figure(caption + " Registers: " + "; ".join(legend) + ".")


def _percent(flow: float, target: float) -> str:
    return f"{100 * flow / target:.0f} %"
