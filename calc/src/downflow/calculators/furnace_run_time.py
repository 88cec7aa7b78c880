"""Heat loss from one night's burner time.

On a dark, steady night what the furnace makes, with what people and appliances add, is
what the home loses. Minutes of burning times its real output tell how much that is. At
altitude the burner makes less than its plate says, unless somebody clocked it.
"""

from __future__ import annotations

import math

from downflow import drawing
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.envelope import NIGHT_BALANCE, UNCERTAINTY
from downflow.physics import fuel_bills
from downflow.sources import DUCT_DELIVERY, PRACTICE

CALCULATOR = Calculator(
    id="furnace-run-time",
    title="Heat loss from one night",
    phase="survey",
    question="What does one cold night's burner time say the home loses?",
    reads=("burner_minutes", "night_minutes", "night_indoor_f", "night_outdoor_f",
           "furnace_input_btuh", "furnace_efficiency_pct", "internal_gains_btuh",
           "delivery_before_pct"),
    gives=("night_ua_btuh_f", "night_ua_furnace_btuh_f", "night_sigma_btuh_f"),
)

LEAST_DIFFERENCE_F = 30.0
LEAST_MINUTES = 240.0
INPUT_OFF, DELIVERY_OFF, STEADY_OFF = 0.06, 0.08, 0.05


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.burner_minutes <= job.night_minutes, "burner_minutes",
                      "the burner cannot have run longer than the period.")
    job.refuse_unless(job.night_outdoor_f < job.night_indoor_f, "night_outdoor_f",
                      "must be colder than indoors. Are the two swapped?")
    job.stop_if_refused()
    output = paper.step(
        "q = I * e / 100 * b / t", NIGHT_BALANCE, "Btu/h",
        fuel_bills.mean_output_btuh(job.furnace_input_btuh, job.furnace_efficiency_pct / 100,
                                    job.burner_minutes, job.night_minutes),
        I=job.furnace_input_btuh, e=job.furnace_efficiency_pct, b=job.burner_minutes,
        t=job.night_minutes, what="Mean heat that the furnace made")
    # Gains warm the rooms, furnace heat passes the ducts first: each on its own side.
    arrives = paper.step("qr = q * d / 100", DUCT_DELIVERY, "Btu/h",
                         output * job.delivery_before_pct / 100, q=output,
                         d=job.delivery_before_pct, what="What of it the ducts delivered")
    home = paper.step(
        "UA = (qr + g) / (ti - to)", NIGHT_BALANCE, "Btu/(h °F)",
        fuel_bills.ua_of_run_time_btuh_f(arrives, job.internal_gains_btuh, job.night_indoor_f,
                                         job.night_outdoor_f),
        qr=arrives, g=job.internal_gains_btuh, ti=job.night_indoor_f, to=job.night_outdoor_f,
        what="Loss of the rooms, per degree")
    furnace = paper.step("UAf = UA * 100 / d", DUCT_DELIVERY, "Btu/(h °F)",
                         home * 100 / job.delivery_before_pct, UA=home,
                         d=job.delivery_before_pct, what="The same at the furnace, ducts in it")
    shares = math.sqrt(INPUT_OFF**2 + DELIVERY_OFF**2 + STEADY_OFF**2)
    sigma = paper.step("s = UA * sqrt(0.06 ** 2 + 0.08 ** 2 + 0.05 ** 2)", UNCERTAINTY,
                       "Btu/(h °F)", home * shares, UA=home,
                       what="Doubt: the burner's input, the ducts, a night that is never quite "
                            "steady")
    model = Spread(1.645 * STEADY_OFF, 1.645 * STEADY_OFF, True, PRACTICE)
    paper.give("night_ua_btuh_f", home, model)
    paper.give("night_ua_furnace_btuh_f", furnace, model)
    paper.give("night_sigma_btuh_f", sigma)
    paper.limit(
        "cold-enough", job.night_indoor_f - job.night_outdoor_f, at_least=LEAST_DIFFERENCE_F,
        unit="°F diff", decimals=0, source=PRACTICE, beyond="look",
        fine="Cold enough for the heat of people and sun to be small.",
        look="Only {value} between indoors and outdoors; from {limit} on a night tells.",
        do="Wait for a colder night.")
    paper.limit(
        "long-enough", job.night_minutes, at_least=LEAST_MINUTES, of="night_minutes",
        source=PRACTICE, beyond="look",
        fine="Long enough to even out the cycles.",
        look="Only {value}; from {limit} on the cycles even out.",
        do="Count a longer stretch of the night.")
    paper.limit(
        "burner-not-always-on", job.burner_minutes, at_most=0.97 * job.night_minutes,
        of="burner_minutes", source=NIGHT_BALANCE, beyond="look",
        fine="The burner rested in between, so the room was held.",
        look="The burner hardly rested: the room may have fallen, and the loss is larger than "
             "this.",
        do="See whether the thermostat held; take a night on which it did.")
    paper.draw(share=job.burner_minutes / job.night_minutes, output=output, arrives=arrives)


def figure(sheet: Sheet) -> str:
    """Where the burner's heat went, as bars."""
    output, arrives = sheet.drawn["output"], sheet.drawn["arrives"]
    assert isinstance(output, float)
    assert isinstance(arrives, float)
    rows = [("made by the furnace", output), ("came to the rooms", arrives),
            ("lost by the ducts", output - arrives)]
    return drawing.bars("furnace-run-time", "Heat on that night", rows, "Btu/h",
                        head="mean of the period", system=sheet.system,
                        ).figure("What came to the rooms, with people and appliances, is the loss.")
