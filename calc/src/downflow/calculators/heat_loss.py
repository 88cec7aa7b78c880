"""Heat loss of the home, part by part.

Each surface loses by its area and U, leaking air by its mass. Their sum for one degree
is the home's loss; times the design difference it is the load. Ducts in the belly lose
a share on the way, so the equipment must make more: with ducts as found, and sealed.
"""

from __future__ import annotations

import math

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread, fact
from downflow.facts.envelope import (
    BUFFER_SPACE,
    DUCT_STUDY,
    HUD_CERTIFICATE,
    HUD_UO,
    SURVEY_HIDDEN,
    UNCERTAINTY,
)
from downflow.physics import air, heat_loss
from downflow.sources import ARITHMETIC, DUCT_DELIVERY, GEOMETRY, HUD_LOAD
from downflow.tables import UoLimit, typed

CALCULATOR = Calculator(
    id="heat-loss",
    title="Heat loss of the home",
    phase="survey",
    question="How much heat does the home lose on the design night, and where?",
    reads=("home_perimeter_ft", "ceiling_height_ft", "floor_area_ft2", "window_area_ft2",
           "door_area_ft2", "wall_u_btuh_ft2_f", "ceiling_u_btuh_ft2_f", "floor_u_btuh_ft2_f",
           "window_u_btuh_ft2_f", "door_u_btuh_ft2_f", "infiltration_ua_btuh_f", "skirting",
           "skirt_height_ft", "elevation_ft", "indoor_design_f", "design_heating_f",
           "duct_state", "delivery_before_pct"),
    may_read=("uo_zone", "year_built", "certificate_f", "certificate_output_btuh",
              "blower_door_cfm50", "wall_insulation_r", "ceiling_insulation_r",
              "floor_insulation_r", "window_kind"),
    gives=("survey_load_btuh", "survey_ua_btuh_f", "survey_sigma_btuh_f", "uo_btuh_ft2_f",
           "equipment_before_btuh", "equipment_after_btuh", "delivery_efficiency_pct",
           "wall_area_ft2", "floor_u_outdoors_btuh_ft2_f", "largest_part_pct", "survey_parts"),
    shows=("survey_load_btuh", "survey_ua_btuh_f", "equipment_before_btuh",
           "equipment_after_btuh", "uo_btuh_ft2_f"),
)

SEALED_PCT = 83.0
DELIVERY_OFF_PCT = 7.0
SKIRT_U = {"closed": 0.8, "insulated": 0.15}
GROUND_U = 0.05
CLOSED_CHANGES_H = 1.0
SEEN_OFF, BY_DATE_OFF = 0.10, 0.25
BY_DATE_HALF = 0.20
"""Half of the band of U by date, as a share of its middle."""
TESTED_OFF, RULE_OFF = 0.20, 0.40
UNSEEN_OFF = 0.08
NINE_IN_TEN = 1.645
LAST_YEAR_BEFORE_UO = 1994


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.design_heating_f < job.indoor_design_f, "design_heating_f",
                      "must be colder than the indoor temperature to hold.")
    gross = job.home_perimeter_ft * job.ceiling_height_ft
    openings = job.window_area_ft2 + job.door_area_ft2
    job.refuse_unless(openings < gross, "window_area_ft2",
                      "windows and doors are larger than the outside walls.")
    walls = paper.step("Aw = P * H - Ag - Ad", GEOMETRY, "ft²", gross - openings,
                       P=job.home_perimeter_ft, H=job.ceiling_height_ft, Ag=job.window_area_ft2,
                       Ad=job.door_area_ft2, what="Outside wall without its openings")
    floor_u = _floor(job, paper)
    floor = job.floor_area_ft2
    parts = [
        ("windows", job.window_area_ft2, job.window_u_btuh_ft2_f, _off(job, "window_kind",
                                                                      "window_u_btuh_ft2_f")),
        ("walls", walls, job.wall_u_btuh_ft2_f, _off(job, "wall_insulation_r",
                                                     "wall_u_btuh_ft2_f")),
        ("floor", floor, floor_u, _off(job, "floor_insulation_r", "floor_u_btuh_ft2_f")),
        ("ceiling", floor, job.ceiling_u_btuh_ft2_f, _off(job, "ceiling_insulation_r",
                                                          "ceiling_u_btuh_ft2_f")),
        ("doors", job.door_area_ft2, job.door_u_btuh_ft2_f, _off(job, "", "door_u_btuh_ft2_f")),
    ]
    losses = [(name, area * u) for name, area, u, _ in parts]
    leaks = ("air leaks", job.infiltration_ua_btuh_f)
    shell = heat_loss.ua_btuh_f([p[1] for p in parts], [p[2] for p in parts])
    ua = paper.total("Loss for each degree, part by part (area times U)", HUD_LOAD, "Btu/(h °F)",
                     shell + job.infiltration_ua_btuh_f, [*losses, leaks])
    load = paper.step("q = UA * (ti - to)", HUD_LOAD, "Btu/h",
                      heat_loss.load_btuh(ua, job.indoor_design_f, job.design_heating_f), UA=ua,
                      ti=job.indoor_design_f, to=job.design_heating_f,
                      what="Loss on the design night, no credit for sun or people")
    area = sum(p[1] for p in parts)
    uo = paper.step("Uo = UAs / As", HUD_UO, "Btu/(h ft² °F)",
                    heat_loss.overall_u_btuh_ft2_f([p[1] for p in parts], [p[2] for p in parts]),
                    UAs=shell, As=area, what="Overall U of the shell, without air leaks")
    sealed = job.duct_state == "sealed"
    now = paper.lookup(
        "Share of the heat that belly ducts deliver", DUCT_STUDY, "%",
        SEALED_PCT if sealed else job.delivery_before_pct,
        row=(("as found", job.delivery_before_pct), ("sealed", SEALED_PCT)))
    before = paper.step("Qb = q / (eb / 100)", DUCT_DELIVERY, "Btu/h",
                        heat_loss.equipment_load_btuh(load, job.delivery_before_pct / 100), q=load,
                        eb=job.delivery_before_pct, what="Equipment must make, ducts as found")
    after = paper.step("Qa = q / (e / 100)", DUCT_DELIVERY, "Btu/h",
                       heat_loss.equipment_load_btuh(load, now / 100), q=load, e=now,
                       what="Equipment must make, ducts as they are now")
    sigma = _sigma(job, paper, parts, ua)
    duct_model = Spread(DELIVERY_OFF_PCT, DELIVERY_OFF_PCT, False, DUCT_STUDY)
    doubt = math.hypot(NINE_IN_TEN * UNSEEN_OFF, _one_package(parts) / ua)
    hidden = Spread(doubt, doubt, True, SURVEY_HIDDEN)
    paper.give("survey_load_btuh", load, hidden)
    paper.give("survey_ua_btuh_f", ua, hidden)
    paper.give("survey_sigma_btuh_f", sigma)
    paper.give("uo_btuh_ft2_f", uo)
    paper.give("equipment_before_btuh", before)
    paper.give("equipment_after_btuh", after)
    # As found, the fact's own spread carries the doubt; sealed, the study's does.
    paper.give("delivery_efficiency_pct", now, duct_model if sealed else None)
    paper.give("wall_area_ft2", walls)
    paper.give("floor_u_outdoors_btuh_ft2_f", floor_u)
    table = sorted([{"part": n, "area_ft2": a, "u_btuh_ft2_f": u, "ua_btuh_f": a * u}
                    for n, a, u, _ in parts]
                   + [{"part": leaks[0], "ua_btuh_f": leaks[1]}],
                   key=lambda row: -row["ua_btuh_f"])
    for row in table:
        row["load_btuh"] = row["ua_btuh_f"] * (job.indoor_design_f - job.design_heating_f)
        row["share_pct"] = 100 * row["ua_btuh_f"] / ua
    paper.give_table("survey_parts", table)
    paper.give("largest_part_pct", table[0]["share_pct"])
    paper.draw(parts=[(row["part"], row["load_btuh"]) for row in table])
    _verdicts(job, paper, ua=ua, uo=uo, sealed=sealed, table=table, before=before, after=after)


def _off(job: Readings, seen: str, u: str) -> float:
    """How far off a part may be: a tenth where it was looked at, else a quarter."""
    known = job.origin(u) not in ("worked out", "") or (seen and getattr(job, seen) is not None)
    return SEEN_OFF if known else BY_DATE_OFF


def _one_package(parts: list[tuple[str, float, float, float]]) -> float:
    """What is left out when parts taken by date are moved one by one: they go together.

    One builder chose walls, ceiling, floor and windows of a home; by date they are all better
    or all poorer than the middle. [Btu/(h °F)]
    """
    moved = [a * u * BY_DATE_HALF for _, a, u, off in parts if off >= BY_DATE_OFF]
    return math.sqrt(max(0.0, sum(moved) ** 2 - sum(m * m for m in moved)))


def _floor(job: Readings, paper: Paper) -> float:
    if job.skirting == "vented":
        return float(job.floor_u_btuh_ft2_f)
    skirt = paper.step(
        "Us = us * P * h + 0.05 * A", BUFFER_SPACE, "Btu/(h °F)",
        SKIRT_U[job.skirting] * job.home_perimeter_ft * job.skirt_height_ft
        + GROUND_U * job.floor_area_ft2, us=SKIRT_U[job.skirting], P=job.home_perimeter_ft,
        h=job.skirt_height_ft, A=job.floor_area_ft2,
        what="Loss of the crawl space through skirting and ground, per degree")
    volume = job.floor_area_ft2 * job.skirt_height_ft
    crawl = heat_loss.air_change_cfm(CLOSED_CHANGES_H, volume)
    density = air.density_lb_ft3(job.elevation_ft)
    return paper.step(
        "Uf = 1 / (1 / U + A / (Us + 60 * 0.24 * rho * A * h / 60))", BUFFER_SPACE,
        "Btu/(h ft² °F)",
        heat_loss.floor_over_crawl_u_btuh_ft2_f(job.floor_u_btuh_ft2_f, job.floor_area_ft2, skirt,
                                                crawl, density),
        U=job.floor_u_btuh_ft2_f, A=job.floor_area_ft2, Us=skirt, rho=density,
        h=job.skirt_height_ft,
        what="Floor against outdoors, with the closed crawl space in series",
        note="One air change an hour. Open vents undo it.")


def _sigma(job: Readings, paper: Paper, parts: list[tuple[str, float, float, float]],
           ua: float) -> float:
    tested = job.blower_door_cfm50 is not None
    off = TESTED_OFF if tested else RULE_OFF
    seen = [a * u * o for _, a, u, o in parts if o < BY_DATE_OFF]
    unseen_parts = sum(a * u * o for _, a, u, o in parts if o >= BY_DATE_OFF)
    leaks = job.infiltration_ua_btuh_f * off
    shell = math.hypot(*seen, unseen_parts)
    unseen = UNSEEN_OFF * ua
    return paper.step("s = sqrt(ss ** 2 + (UAi * f) ** 2 + (0.08 * UA) ** 2)", UNCERTAINTY,
                      "Btu/(h °F)", math.sqrt(shell**2 + leaks**2 + unseen**2), ss=shell,
                      UAi=job.infiltration_ua_btuh_f, f=off, UA=ua,
                      what="Doubt of this road",
                      note="A tenth of each part that was looked at, by itself; a quarter of all "
                           "that were not, together, for one builder chose them all; a fifth of "
                           "tested leaks, four tenths of leaks by rule; 8 % for gaps and wet "
                           "places that no survey sees.")


def _verdicts(job: Readings, paper: Paper, *, ua: float, uo: float, sealed: bool,
              table: list[dict[str, float]], before: float, after: float) -> None:
    if job.uo_zone is not None:
        limit = next(r.max_uo_btuh_ft2_f for r in typed("uo_limits", UoLimit)
                     if str(r.uo_zone) == job.uo_zone)
        unit = fact("uo_btuh_ft2_f").unit
        if job.year_built is None or job.year_built > LAST_YEAR_BEFORE_UO:
            paper.limit(
                "uo-as-built", uo, at_most=limit, of="uo_btuh_ft2_f", source=HUD_UO,
                beyond="look",
                fine="The shell holds heat as well as the rule for new homes of its zone asks.",
                look="The shell loses {value}; the rule that this home was built to allows "
                     "{limit}.",
                do="Something has changed since the factory, or a reading is off: look at the "
                   "floor first.")
        else:
            paper.verdict(
                "uo-as-built", "fine",
                "The shell loses {uo}; new homes of this zone may lose {rule}. This home was built "
                "before that rule: the largest bar shows where insulation pays first.",
                source=HUD_UO, uo=Quantity(uo, unit, 3), rule=Quantity(limit, unit, 3))
    if job.certificate_f is not None and job.certificate_output_btuh is not None:
        paper.limit(
            "certificate-bound", ua,
            at_most=heat_loss.certificate_ua_bound_btuh_f(job.certificate_output_btuh,
                                                          job.certificate_f),
            of="survey_ua_btuh_f", source=HUD_CERTIFICATE, beyond="look",
            fine="Within what the heating certificate allowed when the home was new.",
            look="The survey says {value}; the factory's certificate allowed at most {limit} when "
                 "new. Something has changed, or a reading is off.",
            do="Look at the floor and the belly, then at the sizes typed in.")
    saved = Quantity(before - after, "Btu/h", 0)
    if sealed:
        paper.verdict("ducts", "fine", "Sealed ducts: the equipment may be smaller by {saved} than "
                      "with the ducts as found.", source=DUCT_STUDY, saved=saved)
    else:
        better = before - heat_loss.equipment_load_btuh(
            ua * (job.indoor_design_f - job.design_heating_f), SEALED_PCT / 100)
        paper.verdict("ducts", "look", "Ducts as found: sealing them would save {saved} of "
                      "equipment on the design night.", source=DUCT_STUDY,
                      do="Seal boots, seams, ends and crossover before the equipment is chosen.",
                      saved=Quantity(max(0.0, better), "Btu/h", 0))
    paper.verdict("largest-part", "fine", f"Most is lost through the {table[0]['part']}: "
                  "{part} of it.", source=ARITHMETIC,
                  part=Quantity(table[0]["share_pct"], "%", 0))


def figure(sheet: Sheet) -> str:
    """Loss of each part at design as ruled bars, largest first."""
    parts = sheet.drawn["parts"]
    assert isinstance(parts, list)
    total = sheet.values["survey_load_btuh"]
    return drawing.bars(
        "heat-loss", "Where the heat goes on the design night", parts, "Btu/h",
        head=f"{sheet.text(total, 'Btu/h', 0)} in all", system=sheet.system,
    ).figure("Before the ducts. The largest bar is where insulation pays first.")
