"""Refrigerant pressure and temperature.

Two fields and a table, at the home's altitude. A gauge reads against the air around it:
the same refrigerant at the same temperature shows more pressure up high. A blend has two
numbers, bubble for liquid and dew for vapor.
"""

from __future__ import annotations

from downflow import tables
from downflow.calculators import Calculator, Paper, Quantity, Readings
from downflow.facts import Spread
from downflow.facts.refrigerant import CHARTS_DIFFER, PROPERTY_LIBRARY, TABLE_ERROR
from downflow.physics import moist_air, refrigerant
from downflow.sources import ARITHMETIC, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="refrigerant-pt",
    title="Pressure and temperature",
    phase="refrigerant",
    question="At what pressure does this refrigerant boil, and at what temperature?",
    reads=("refrigerant", "elevation_ft", "pt_f", "pt_psig"),
    gives=("pt_dew_psig", "pt_bubble_psig", "pt_dew_f", "pt_bubble_f", "pt_table"),
)

PSI_KPA = 6.894757
STEP_F = 10
GLIDE_F = 0.5


def solve(job: Readings, paper: Paper) -> None:
    rows = tables.rows("refrigerant_" + job.refrigerant.replace("-", "").lower())
    air = paper.step("a = 14.696 * (1 - 6.8754e-6 * z) ** 5.2559", STANDARD_ATMOSPHERE, "psia",
                     moist_air.atmosphere_psia(job.elevation_ft), z=job.elevation_ft,
                     what="Pressure of the air around the gauge")
    highest = rows[-1].dew_psia - air
    lowest = rows[0].bubble_psia - air
    if not lowest <= job.pt_psig <= highest:
        job.refuse("pt_psig",
                   f"is beyond the table of {job.refrigerant}, {lowest:.0f} to {highest:.0f} psig. "
                   f"Was it read in kPa? {job.pt_psig:.0f} kPa is {job.pt_psig / PSI_KPA:.0f} psi.")
    job.stop_if_refused()
    error = 0.01 if job.refrigerant == "R-454B" else 0.005
    source = CHARTS_DIFFER if job.refrigerant == "R-454B" else TABLE_ERROR
    absolute = refrigerant.absolute_psia(job.pt_psig, air)
    paper.step("p = g + a", ARITHMETIC, "psia", absolute, g=job.pt_psig, a=air,
               what="The gauge pressure as absolute pressure")
    for dew in (True, False):
        name = "dew" if dew else "bubble"
        low, high = refrigerant.rows_around_f(job.pt_f, rows)
        ends = (low.dew_psia, high.dew_psia) if dew else (low.bubble_psia, high.bubble_psia)
        psia = paper.lookup(f"{name.capitalize()} pressure at that temperature",
                            PROPERTY_LIBRARY, "psia",
                            refrigerant.saturation_psia(job.pt_f, rows, dew=dew),
                            row=[(f"{low.temp_f:g} °F", ends[0]), (f"{high.temp_f:g} °F", ends[1])])
        gauge = paper.step("g = p - a", ARITHMETIC, "psig", refrigerant.gauge_psig(psia, air),
                           p=psia, a=air, what=f"{name.capitalize()} pressure on the gauge")
        paper.give(f"pt_{name}_psig", gauge,
                   model=Spread(error * psia, error * psia, False, source))
        temp = refrigerant.saturation_f(absolute, rows, dew=dew)
        low, high = refrigerant.rows_around_f(temp, rows)
        paper.lookup(f"{name.capitalize()} temperature at that pressure", PROPERTY_LIBRARY, "°F",
                     temp, row=[(f"{low.temp_f:g} °F", low.temp_f),
                                (f"{high.temp_f:g} °F", high.temp_f)])
        slope = (high.temp_f - low.temp_f) / (
            (high.dew_psia - low.dew_psia) if dew else (high.bubble_psia - low.bubble_psia))
        paper.give(f"pt_{name}_f", temp,
                   model=Spread(error * absolute * slope, error * absolute * slope, False, source))
    paper.give_table("pt_table", [
        {"temp_f": row.temp_f, "bubble_psig": row.bubble_psia - air,
         "dew_psig": row.dew_psia - air}
        for row in rows if row.temp_f % STEP_F == 0])
    glide = paper.values["pt_dew_f"] - paper.values["pt_bubble_f"]
    blend = glide > GLIDE_F
    paper.verdict("two-curves", "fine",
                  "This blend has two numbers, {glide} apart here: set the gauge to dew on the "
                  "vapor side, for superheat, and to bubble on the liquid side, for subcooling."
                  if blend else "One number serves for superheat and subcooling.",
                  source=PROPERTY_LIBRARY, glide=Quantity(glide, "°F diff", 1))
    paper.verdict("altitude", "fine",
                  "A gauge up here reads {more} more than at sea level for the same temperature. A "
                  "gauge that asks for the altitude has done this: do not correct twice.",
                  source=STANDARD_ATMOSPHERE,
                  more=Quantity(moist_air.atmosphere_psia(0) - air, "psi", 1))
