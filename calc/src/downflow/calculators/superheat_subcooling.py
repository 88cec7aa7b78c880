"""Superheat and subcooling from the readings.

Vapor line against the dew point, liquid line against the bubble point, beside the plate's
target. Charge only counts with the airflow right, in steady running, and warm enough
outside; else it rests on the weighed amount.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import within
from downflow.facts.refrigerant import (
    CHARGE_CHECK,
    CHARGE_PAIR,
    CHARGE_PLATE,
    CHARTS_DIFFER,
    PROPERTY_LIBRARY,
    SUBCOOLING_BAND,
    TABLE_ERROR,
)
from downflow.physics import moist_air, refrigerant
from downflow.sources import ARITHMETIC, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="superheat-subcooling",
    title="Superheat and subcooling",
    phase="commission",
    question="What do the gauges and the clamps say about the charge?",
    reads=("refrigerant", "elevation_ft", "suction_psig", "suction_line_f", "liquid_psig",
           "liquid_line_f", "charge_outdoor_f", "charge_minutes", "subcooling_band_f",
           "superheat_band_f"),
    may_read=("target_subcooling_f", "target_superheat_f"),
    gives=("subcooling_f", "superheat_f", "suction_dew_f", "liquid_bubble_f"),
)

PSI_KPA = 6.894757
COLD_F = 55.0
SETTLED_MIN = 15.0
USUAL_SUBCOOLING = (8.0, 12.0)
USUAL_SUPERHEAT = (5.0, 15.0)
SUSPICIOUS_F = -25.0
BLEND_ERROR = (0.8, CHARTS_DIFFER)
TABLE_OFF = (0.3, TABLE_ERROR)


def solve(job: Readings, paper: Paper) -> None:
    rows = tables.rows("refrigerant_" + job.refrigerant.replace("-", "").lower())
    air = paper.step("a = 14.696 * (1 - 6.8754e-6 * z) ** 5.2559", STANDARD_ATMOSPHERE, "psia",
                     moist_air.atmosphere_psia(job.elevation_ft), z=job.elevation_ft,
                     what="Pressure of the air around the gauges")
    _refuse_strange(job, rows, air)
    dew = _point(job, paper, "suction_psig", rows, air, dew=True)
    bubble = _point(job, paper, "liquid_psig", rows, air, dew=False)
    heat = refrigerant.superheat_f(job.suction_line_f, dew)
    cool = refrigerant.subcooling_f(bubble, job.liquid_line_f)
    job.refuse_unless(heat >= SUSPICIOUS_F, "suction_line_f",
                      "is far colder than the refrigerant boils at that pressure. Were the clamps "
                      "swapped, or the gauge set to kPa?")
    job.refuse_unless(cool >= SUSPICIOUS_F, "liquid_line_f",
                      "is far warmer than the refrigerant condenses at that pressure. Were the "
                      "clamps swapped?")
    paper.step("S = t - d", CHARGE_CHECK, "°F diff", heat, t=job.suction_line_f, d=dew,
               what="Superheat: vapor line less dew point")
    paper.step("C = b - l", CHARGE_CHECK, "°F diff", cool, b=bubble, l=job.liquid_line_f,
               what="Subcooling: bubble point less liquid line")
    off = within(*(BLEND_ERROR if job.refrigerant == "R-454B" else TABLE_OFF))
    paper.give("subcooling_f", cool, model=off)
    paper.give("superheat_f", heat, model=off)
    paper.give("suction_dew_f", dew)
    paper.give("liquid_bubble_f", bubble)
    _verdicts(job, paper, heat, cool)


def _refuse_strange(job: Readings, rows: tuple[tables.RefrigerantRow, ...], air: float) -> None:
    for name, first, last in (("suction_psig", rows[0].dew_psia, rows[-1].dew_psia),
                              ("liquid_psig", rows[0].bubble_psia, rows[-1].bubble_psia)):
        value = getattr(job, name)
        if not first <= value + air <= last:
            job.refuse(name, f"is beyond the table of {job.refrigerant}, {first - air:.0f} to "
                             f"{last - air:.0f} psig. Was the gauge set to kPa? {value:.0f} kPa is "
                             f"{value / PSI_KPA:.0f} psi.")
    job.refuse_unless(job.suction_psig < job.liquid_psig, "suction_psig",
                      "is not below the liquid pressure. Were the two hoses swapped, or is the "
                      "compressor off?")
    job.stop_if_refused()


def _point(job: Readings, paper: Paper, name: str, rows: tuple[tables.RefrigerantRow, ...],
           air: float, *, dew: bool) -> float:
    gauge = getattr(job, name)
    psia = paper.step("p = g + a", ARITHMETIC, "psia", refrigerant.absolute_psia(gauge, air),
                      g=gauge, a=air, what="Suction, absolute" if dew else "Liquid, absolute")
    temp = refrigerant.saturation_f(psia, rows, dew=dew)
    low, high = refrigerant.rows_around_f(temp, rows)
    return paper.lookup("Dew point at the suction" if dew else "Bubble point of the liquid",
                        PROPERTY_LIBRARY, "°F", temp,
                        row=[(f"{low.temp_f:g} °F", low.temp_f),
                             (f"{high.temp_f:g} °F", high.temp_f)])


def _verdicts(job: Readings, paper: Paper, heat: float, cool: float) -> None:
    paper.limit("dry-suction", heat, at_least=0.0, of="superheat_f", source=CHARGE_PAIR,
                safety=True,
                fine="No liquid comes back to the compressor.",
                hold="The vapor line is {value} above the dew point: liquid may come back to "
                     "the compressor.",
                do="Stop, and look at airflow, filter and charge before it runs again.")
    if job.charge_outdoor_f < COLD_F:
        paper.verdict("warm-enough", "look",
                      "Too cold outside to judge the charge in cooling: it rests on the weighed "
                      "amount until {warm}.", source=CHARGE_CHECK,
                      do="Weigh the charge in, use the maker's heating chart, and come back in "
                         "warm weather.", warm=Quantity(COLD_F, "°F", 0))
    else:
        paper.verdict("warm-enough", "fine", "Warm enough outside to judge the charge.",
                      source=CHARGE_CHECK)
    paper.limit("settled", job.charge_minutes, at_least=SETTLED_MIN, unit="min", decimals=0,
                source=CHARGE_CHECK, beyond="look",
                fine="It had run long enough.",
                look="It had run {value}; {limit} of steady running come before a reading.",
                do="Let it run on and read again.")
    target = job.target_subcooling_f
    if target is None:
        low, high = USUAL_SUBCOOLING
        inside = low <= cool <= high
        paper.verdict("subcooling", "look",
                      "The plate's subcooling is not entered. Usual is {low} to {high}; read is "
                      "{cool}.", source=CHARGE_PLATE,
                      do="Read the plate or the charging chart and enter it."
                      + ("" if inside else " The reading lies outside what is usual."),
                      low=Quantity(low, "°F diff", 0), high=Quantity(high, "°F diff", 0),
                      cool=Quantity(cool, "°F diff", 1))
    else:
        paper.limit("subcooling", abs(cool - target), at_most=job.subcooling_band_f,
                    of="subcooling_f", source=SUBCOOLING_BAND, beyond="look",
                    fine="Subcooling is what the plate asks for.",
                    look="Subcooling is {cool}; the plate asks for {target}, and {value} is how "
                         "far it is off.",
                    do=_what_to_do(cool, target, heat),
                    cool=Quantity(cool, "°F diff", 1), target=Quantity(target, "°F diff", 0))
    wanted = job.target_superheat_f
    if wanted is not None:
        paper.limit("superheat", abs(heat - wanted), at_most=job.superheat_band_f,
                    of="superheat_f", source=CHARGE_CHECK, beyond="look",
                    fine="Superheat is what the plate asks for.",
                    look="Superheat is {heat}; the plate asks for {wanted}, and {value} is how far "
                         "it is off.",
                    do="Look at airflow and filter first, then at the charge.",
                    heat=Quantity(heat, "°F diff", 1), wanted=Quantity(wanted, "°F diff", 0))
    else:
        low, high = USUAL_SUPERHEAT
        upper = high - heat <= heat - low
        paper.limit("superheat", heat, at_most=high if upper else None,
                    at_least=None if upper else low, of="superheat_f", source=CHARGE_PAIR,
                    beyond="look",
                    fine="Superheat is in the usual range for an expansion valve.",
                    look="Superheat is {value}; with an expansion valve it is usually {low} to "
                         "{high}.",
                    do=_what_to_do(cool, target if target is not None else 10.0, heat),
                    low=Quantity(low, "°F diff", 0), high=Quantity(high, "°F diff", 0))


def _what_to_do(cool: float, target: float, heat: float) -> str:
    hot = heat > USUAL_SUPERHEAT[1]
    if cool < target:
        return ("Too little charge, or a leak: find it before adding." if hot else
                "Check the weighed amount first; add in small steps.")
    return ("A restriction in the liquid line: look at drier and valve." if hot else
            "Too much charge, or air in the system: weigh what comes out.")


def figure(sheet: Sheet) -> str:
    """The two temperatures of each line."""
    v, job = sheet.values, sheet.job
    rows = [("boils at", v["suction_dew_f"]), ("vapor line", job.suction_line_f),
            ("liquid line", job.liquid_line_f), ("condenses at", v["liquid_bubble_f"])]
    words = ", ".join(f"{name} {sheet.text(t, '°F', 1)}" for name, t in rows)
    d = drawing.Drawing(
        "superheat-subcooling", "From boiling to condensing",
        f"{words}. Superheat {sheet.text(v['superheat_f'], '°F diff', 1)}, subcooling "
        f"{sheet.text(v['subcooling_f'], '°F diff', 1)}.", 250)
    d.rect(20, 70, 110, 90, "of").text(75, 58, "vapor line", "b m")
    d.rect(210, 70, 110, 90, "of").text(265, 58, "liquid line", "b m")
    d.text(75, 100, sheet.text(job.suction_line_f, "°F", 0), "b m")
    d.text(75, 140, sheet.text(v["suction_dew_f"], "°F", 0), "m")
    d.text(265, 100, sheet.text(v["liquid_bubble_f"], "°F", 0), "m")
    d.text(265, 140, sheet.text(job.liquid_line_f, "°F", 0), "b m")
    d.line(30, 112, 120, 112, "d").line(220, 112, 310, 112, "d")
    d.text(75, 190, sheet.text(v["superheat_f"], "°F diff", 1), "b m")
    d.text(75, 212, "superheat", "m")
    d.text(265, 190, sheet.text(v["subcooling_f"], "°F diff", 1), "b m")
    d.text(265, 212, "subcooling", "m")
    return d.figure("Bold is read on the pipe; the other is the table at the gauge's pressure.")
