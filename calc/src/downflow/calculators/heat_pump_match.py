"""The heat pump against the home.

Two lines over outdoor temperature: what the home asks for, and what the heat pump can
make. Where they cross is the thermal balance point; below it the backup kit helps. The
home's line is its heat loss divided by what the ducts deliver; the heat pump's is the
data sheet's, with frost where the sheet left it out, times the altitude factor.
"""

from __future__ import annotations

from typing import NamedTuple

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import fuel_bills, heat_loss, heat_pump
from downflow.sources import (
    CYCLING_WARMTH,
    DATA_SHEET,
    DUCT_DELIVERY,
    HUD_COMBINATION,
    HUD_LOAD,
    LABEL,
    LOAD_LINE,
    RATING_POINTS,
    UNITS,
)

CALCULATOR = Calculator(
    id="heat-pump-match",
    title="Heat pump against the home",
    phase="prove",
    question="Does the heat pump hold the house, and down to what outdoor temperature?",
    reads=("home_ua_btuh_f", "delivery_efficiency_pct", "indoor_design_f", "design_heating_f",
           "internal_gains_btuh", "hp_points", "hp_points_with_frost", "hp_cutout_f",
           "hp_altitude_factor_pct", "hp_rated_together"),
    may_read=("kit_planned_kw",),
    gives=("hp_share_pct", "hp_balance_f", "hp_cycles_above_f", "hp_load_btuh",
           "hp_capacity_design_btuh", "hp_cop_design"),
)

COLDEST_F = -60.0
CYCLING_LIMIT_F = 40.0
FACTOR_SETTLED = 0.985
"""Half way between 0.97 and 1: below it thin air may take more than the sheet's own error."""


class Lines(NamedTuple):
    """The two lines, as functions of outdoor temperature, and what they are made of."""

    points_f: list[float]
    most_btuh: list[float]
    power_w: list[float]
    least_btuh: list[float]
    frost: bool
    factor: float
    cutout_f: float
    ua_equipment: float
    balance_f: float

    def load(self, outdoor_f: float) -> float:
        """Heat asked of the equipment, gains counted. [Btu/h]"""
        return heat_pump.load_btuh(self.ua_equipment, self.balance_f, outdoor_f)

    def sheet(self, values: list[float], outdoor_f: float) -> heat_pump.Reading:
        """The data sheet's capacity, with frost where it left it out. [Btu/h]"""
        if not self.frost:
            return heat_pump.interpolate(self.points_f, values, outdoor_f)
        at_35 = heat_pump.frost_capacity_btuh(
            heat_pump.interpolate(self.points_f, values, heat_pump.FROST_LOW_F).value,
            heat_pump.interpolate(self.points_f, values, heat_pump.RATED_F).value)
        return heat_pump.with_frost(self.points_f, values, outdoor_f, at_35)

    def capacity(self, outdoor_f: float) -> float:
        """Capacity at top speed up here; nothing below the cut-out. [Btu/h]"""
        if not heat_pump.runs(outdoor_f, self.cutout_f):
            return 0.0
        return self.factor * self.sheet(self.most_btuh, outdoor_f).value

    def least(self, outdoor_f: float) -> float:
        """Capacity at the lowest speed up here. [Btu/h]"""
        return self.factor * heat_pump.interpolate(self.points_f, self.least_btuh, outdoor_f).value


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.design_heating_f < job.indoor_design_f, "design_heating_f",
                      "must be colder than the indoor temperature to hold.")
    rows = job.hp_points
    for index, row in enumerate(rows):
        least = row.get("capacity_min_btuh")
        if least is not None and least > row["capacity_max_btuh"]:
            job.refuse(f"hp_points[{index}].capacity_min_btuh",
                       "heat at lowest speed is more than at top speed. Are the two swapped?")
    lowest_known = all(r.get("capacity_min_btuh") is not None for r in rows)

    load = paper.step(
        "q = UA * (ti - to)", HUD_LOAD, "Btu/h",
        heat_loss.load_btuh(job.home_ua_btuh_f, job.indoor_design_f, job.design_heating_f),
        UA=job.home_ua_btuh_f, ti=job.indoor_design_f, to=job.design_heating_f,
        what="Heat that the rooms lose on the design night",
        note="No credit for people, sun or appliances on that night.")
    equipment = paper.step(
        "Q = q / (e / 100)", DUCT_DELIVERY, "Btu/h",
        heat_loss.equipment_load_btuh(load, job.delivery_efficiency_pct / 100),
        q=load, e=job.delivery_efficiency_pct, what="Heat the equipment must make")

    factor = job.hp_altitude_factor_pct / 100
    ua_equipment = heat_loss.equipment_load_btuh(job.home_ua_btuh_f,
                                                 job.delivery_efficiency_pct / 100)
    lines = Lines(
        [r["outdoor_f"] for r in rows], [r["capacity_max_btuh"] for r in rows],
        [r["power_max_w"] for r in rows],
        [r["capacity_min_btuh"] for r in rows] if lowest_known else [],
        not job.hp_points_with_frost, factor, job.hp_cutout_f, ua_equipment,
        fuel_bills.balance_point_f(job.indoor_design_f, job.internal_gains_btuh,
                                   job.home_ua_btuh_f))
    design = job.design_heating_f
    runs = heat_pump.runs(design, job.hp_cutout_f)
    on_sheet = lines.sheet(lines.most_btuh, design)
    _write_sheet(paper, lines, design, on_sheet.value)
    capacity = paper.step(
        "C = c * f / 100", LABEL, "Btu/h", factor * on_sheet.value, c=on_sheet.value,
        f=job.hp_altitude_factor_pct, what="Heat the heat pump makes up here")
    if not runs:
        capacity = 0.0
    share = paper.step(
        "s = 100 * min(1, C / Q)", LOAD_LINE, "%",
        100 * heat_pump.share_covered(equipment, capacity), C=capacity, Q=equipment,
        what="Share of the design load that it covers")
    power = heat_pump.interpolate(lines.points_f, lines.power_w, design).value
    if runs and power > 0 and capacity > 0:
        cop = paper.step("k = C / (3.412142 * P)", UNITS, "", heat_pump.cop(capacity, power),
                         C=capacity, P=power, what="Heat out over electricity in, design night")
        paper.give("hp_cop_design", cop)

    paper.step("tb = ti - g / UA", LOAD_LINE, "°F", lines.balance_f,
               ti=job.indoor_design_f, g=job.internal_gains_btuh, UA=job.home_ua_btuh_f,
               what="Below this outdoor temperature the home asks for heat",
               note="On an ordinary day people and appliances help; the balance point counts them.")
    balance = _balance(paper, lines)
    cycles = _cycles(paper, lines) if lowest_known else None
    paper.give("hp_load_btuh", equipment)
    paper.give("hp_capacity_design_btuh", capacity)
    paper.give("hp_share_pct", share)
    paper.give("hp_balance_f", balance)
    if cycles is not None:
        paper.give("hp_cycles_above_f", cycles)
    paper.draw(lines=lines, design=design, load=equipment, capacity=capacity)
    _verdicts(job, paper, lines, capacity=capacity, equipment=equipment,
              cycles=cycles, beyond=on_sheet.beyond)


def _write_sheet(paper: Paper, lines: Lines, design_f: float, value: float) -> None:
    """The row or rows of the data sheet that the capacity was read from."""
    if lines.frost and heat_pump.FROST_LOW_F < design_f < heat_pump.FROST_HIGH_F:
        at_17 = heat_pump.interpolate(lines.points_f, lines.most_btuh, heat_pump.FROST_LOW_F).value
        at_47 = heat_pump.interpolate(lines.points_f, lines.most_btuh, heat_pump.RATED_F).value
        at_35 = paper.step(
            "c35 = 0.90 * (c17 + 0.6 * (c47 - c17))", RATING_POINTS, "Btu/h",
            heat_pump.frost_capacity_btuh(at_17, at_47), c17=at_17, c47=at_47,
            what="Capacity at 35 °F with frost and defrost, which the sheet leaves out")
        paper.step("c = c17 + (to - 17) / 18 * (c35 - c17)", RATING_POINTS, "Btu/h", value,
                   c17=at_17, c35=at_35, to=design_f, what="Capacity on the design night")
        return
    k = 0
    while k < len(lines.points_f) - 2 and design_f > lines.points_f[k + 1]:
        k += 1
    t0, t1 = lines.points_f[k], lines.points_f[k + 1]
    c0, c1 = lines.most_btuh[k], lines.most_btuh[k + 1]
    paper.step("c = c0 + (c1 - c0) * (to - t0) / (t1 - t0)", DATA_SHEET, "Btu/h", value,
               c0=c0, c1=c1, t0=t0, t1=t1, to=design_f,
               what="Capacity on the design night, between the sheet's neighbours"
               if t0 <= design_f <= t1 else
               "Capacity on the design night, beyond the sheet: its last line goes on")


def _balance(paper: Paper, lines: Lines) -> float:
    found = heat_pump.crossing_f(lambda t: lines.capacity(t) - lines.load(t), COLDEST_F,
                                 lines.balance_f)
    balance = COLDEST_F if found is None else found
    left, right = lines.load(balance), lines.capacity(balance)
    # Where the frost range or the cut-out makes a jump, no point lies on both lines.
    if abs(left - right) <= 1e-6 * max(abs(left), 1.0):
        paper.solved("Thermal balance point", "heat asked for = heat made", LOAD_LINE, "°F",
                     balance, left=left, right=right, side_unit="Btu/h",
                     method="Halving between the coldest outdoor temperature that holds and the "
                            "warmest that does not.")
    return balance


def _cycles(paper: Paper, lines: Lines) -> float:
    found = heat_pump.crossing_f(lambda t: lines.least(t) - lines.load(t), COLDEST_F,
                                 lines.balance_f)
    start = COLDEST_F if found is None else found
    left, right = lines.load(start), lines.least(start)
    if abs(left - right) <= 1e-6 * max(abs(left), 1.0):
        paper.solved("Starts to cycle above", "heat asked for = heat at lowest speed", LOAD_LINE,
                     "°F", start, left=left, right=right, side_unit="Btu/h",
                     method="Halving, as for the balance point.")
    return start


def _verdicts(job: Readings, paper: Paper, lines: Lines, *, capacity: float, equipment: float,
              cycles: float | None, beyond: bool) -> None:
    if job.hp_rated_together:
        paper.verdict("one-combination", "fine", "Indoor and outdoor unit are rated together.",
                      source=HUD_COMBINATION)
    else:
        paper.verdict("one-combination", "hold",
                      "These two units are not known to be one rated combination: no number of "
                      "either sheet holds for the pair.", source=HUD_COMBINATION,
                      do="Find the rating certificate that names both model numbers, or choose a "
                         "pair that has one.")
    if job.kit_planned_kw:
        paper.verdict(
            "covers-design", "fine",
            "The heat pump makes {made} of the {asked} asked for on the design night. A backup kit "
            "is planned for the rest; whether it is large enough stands on its own page.",
            source=LOAD_LINE, made=Quantity(capacity, "Btu/h", 0),
            asked=Quantity(equipment, "Btu/h", 0))
    else:
        paper.limit(
            "covers-design", capacity, at_least=equipment, of="hp_capacity_design_btuh",
            source=LOAD_LINE, beyond="look",
            fine="The heat pump alone holds the house on the design night.",
            look="The heat pump makes {value} of the {limit} asked for on the design night. No "
                 "backup kit is planned yet for the rest.",
            do="Choose the backup kit for the shortfall.")
    paper.limit(
        "above-cutout", job.design_heating_f, at_least=lines.cutout_f, of="design_heating_f",
        source=DATA_SHEET, beyond="look",
        fine="It still runs on the design night.",
        look="At {value} outdoors it has stopped: its lowest is {limit}. The kit alone must hold "
             "the house.", do="Size the kit for the whole load, or choose a unit that runs colder.")
    if beyond:
        paper.verdict("within-sheet", "look",
                      "The design night, {design}, is beyond the data sheet's points. The last "
                      "line was carried on.", source=DATA_SHEET,
                      do="Ask the maker for capacity at that temperature.",
                      design=Quantity(job.design_heating_f, "°F", 0))
    else:
        paper.verdict("within-sheet", "fine", "The design night lies within the data sheet.",
                      source=DATA_SHEET)
    # The factor worked out lies half way between its bounds; how far it is off is in the range.
    asked = job.origin("hp_altitude_factor_pct") != "worked out" or lines.factor >= FACTOR_SETTLED
    if not paper.decide("altitude asked", asked):
        paper.verdict("altitude-asked", "look",
                      "The maker's altitude factor is not known; {factor} stands in for it.",
                      source=LABEL, do="Ask the maker, and enter the factor.",
                      factor=Quantity(100 * lines.factor, "%", 0))
    else:
        paper.verdict("altitude-asked", "fine", "The altitude factor is settled.", source=LABEL)
    if cycles is not None:
        paper.limit(
            "modulates", cycles, at_least=CYCLING_LIMIT_F, of="hp_cycles_above_f",
            source=CYCLING_WARMTH, beyond="look",
            fine="It runs without stopping below {value}.",
            look="It starts to cycle at {value}, while it is still cold: it is large for this "
                 "home.", do="Look at the next smaller unit, or at one with a lower minimum speed.")


def figure(sheet: Sheet) -> str:
    """Load and capacity over outdoor temperature, with the design night marked."""
    lines = sheet.drawn["lines"]
    assert isinstance(lines, Lines)
    design, balance = _number(sheet, "design"), sheet.values["hp_balance_f"]
    load, capacity = _number(sheet, "load"), sheet.values["hp_capacity_design_btuh"]
    coldest = min(design - 5, lines.points_f[0])
    warmest = min(65.0, max(lines.balance_f, 50.0))
    steps = 48
    at = sorted({coldest + (warmest - coldest) * k / steps for k in range(steps + 1)}
                | {t for t in (lines.cutout_f, 45.0, 44.99, 17.0) if coldest < t < warmest})
    made = [(t, lines.capacity(t)) for t in at if t >= lines.cutout_f]
    drawn = [drawing.Line("the home", [(t, lines.load(t)) for t in (coldest, lines.balance_f)]),
             drawing.Line("heat pump, top speed", made, "air")]
    if lines.least_btuh:
        drawn.append(drawing.Line("lowest speed",
                                  [(t, lines.least(t)) for t in at if t >= lines.cutout_f], "old"))
    shown_load, shown_made = sheet.text(load, "Btu/h", 0), sheet.text(capacity, "Btu/h", 0)
    return drawing.chart(
        "heat-pump-match", "What the home asks for and what the heat pump makes",
        f"On the design night, {sheet.text(design, '°F', 0)}, the equipment must make "
        f"{shown_load}; the heat pump makes {shown_made}. The lines cross at "
        f"{sheet.text(balance, '°F', 0)}.",
        x=("outdoors", "°F"), y=("heat", "Btu/h"), lines=drawn,
        mark=drawing.Mark(design, [(load, shown_load), (capacity, shown_made)]),
        system=sheet.system,
    ).figure(f"Design night {sheet.text(design, '°F', 0)}. Balance point "
             f"{sheet.text(balance, '°F', 0)}: below it the backup kit helps.")


def _number(sheet: Sheet, name: str) -> float:
    value = sheet.drawn[name]
    assert isinstance(value, float)
    return value
