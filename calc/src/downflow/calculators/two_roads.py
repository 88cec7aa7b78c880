"""The roads to the heat loss, together.

The survey adds up surfaces; the bills and a cold night tell what was burnt. Each has its
own doubt. Where they agree, they are taken together, each by how sure it is. Where they
do not, the design goes by the larger, and the reasons to look for are named.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.envelope import UNCERTAINTY
from downflow.physics import heat_loss, two_roads
from downflow.sources import HUD_LOAD, PRACTICE

CALCULATOR = Calculator(
    id="two-roads",
    title="The roads to the heat loss, together",
    phase="survey",
    question="Do survey, bills and a cold night agree, and which loss is designed on?",
    reads=("survey_ua_btuh_f", "survey_sigma_btuh_f", "indoor_design_f", "design_heating_f"),
    may_read=("bills_ua_btuh_f", "bills_sigma_btuh_f", "night_ua_btuh_f", "night_sigma_btuh_f"),
    gives=("design_load_btuh", "home_ua_btuh_f", "roads_sigma_btuh_f"),
)


def solve(job: Readings, paper: Paper) -> None:
    roads = [("survey", job.survey_ua_btuh_f, job.survey_sigma_btuh_f)]
    if job.bills_ua_btuh_f is not None and job.bills_sigma_btuh_f is not None:
        roads.append(("fuel bills", job.bills_ua_btuh_f, job.bills_sigma_btuh_f))
    if job.night_ua_btuh_f is not None and job.night_sigma_btuh_f is not None:
        roads.append(("one night", job.night_ua_btuh_f, job.night_sigma_btuh_f))
    names = [name for name, _, _ in roads]
    _, ua, sigma = roads[0]
    apart = 0.0
    low, high = ua, ua
    for name, value, doubt in roads[1:]:
        found = two_roads.agreement(ua, sigma, value, doubt)
        both = two_roads.combine(ua, sigma, value, doubt)
        paper.step("n = abs(x - y) / sqrt(sx ** 2 + sy ** 2)", UNCERTAINTY, "", found.sigmas,
                   x=ua, y=value, sx=sigma, sy=doubt,
                   what=f"How far apart: {name} against what stands so far, in their own doubt")
        mean = paper.step(
            "UA = (x / sx ** 2 + y / sy ** 2) / (1 / sx ** 2 + 1 / sy ** 2)", UNCERTAINTY,
            "Btu/(h °F)", both.value, x=ua, y=value, sx=sigma, sy=doubt,
            what=f"Together with {name}, the surer counting more")
        spread = paper.step(
            "s = max(1, abs(x - y) / sqrt(sx ** 2 + sy ** 2)) / sqrt(1 / sx ** 2 + 1 / sy ** 2)",
            UNCERTAINTY, "Btu/(h °F)", both.sigma, x=ua, y=value, sx=sigma, sy=doubt,
            what="Doubt of the two together, wider where they are apart")
        apart = max(apart, found.sigmas)
        low, high = min(low, value), max(high, value)
        ua, sigma = mean, spread
    agree = bool(paper.decide("agree", apart <= two_roads.AGREE_SIGMAS))
    chosen = ua if agree else high
    load = paper.step("q = UA * (ti - to)", HUD_LOAD, "Btu/h",
                      heat_loss.load_btuh(chosen, job.indoor_design_f, job.design_heating_f),
                      UA=chosen, ti=job.indoor_design_f, to=job.design_heating_f,
                      what="Loss on the design night, to design on")
    # The roads' own spreads move the value already; what is left is how far they are apart.
    gap = Spread(chosen - low, high - chosen, False, UNCERTAINTY) if len(roads) > 1 and not agree \
        else None
    paper.give("home_ua_btuh_f", chosen, gap)
    paper.give("design_load_btuh", load)
    paper.give("roads_sigma_btuh_f", sigma)
    paper.draw(roads=[(name, value) for name, value, _ in roads], chosen=chosen)
    _verdicts(paper, names, apart, chosen, agree)


def _verdicts(paper: Paper, names: list[str], apart: float, chosen: float,
              agree: bool) -> None:
    value = Quantity(chosen, "Btu/(h °F)", 0)
    if len(names) == 1:
        paper.verdict("second-road", "look", "Only the survey speaks. A second road would show "
                      "whether it can be true.", source=PRACTICE,
                      do="Ask for twelve months of fuel bills, or count one cold night's burner "
                         "minutes.")
        return
    paper.verdict("second-road", "fine", f"{len(names)} roads: {', '.join(names)}.",
                  source=PRACTICE)
    far = Quantity(apart, "", 1)
    if agree:
        paper.verdict("roads-agree", "fine", "The roads agree within their doubt; designed on "
                      "{ua}, the surer counting more.", source=UNCERTAINTY, ua=value)
    else:
        paper.verdict("roads-agree", "look", "The roads do not agree: they are {far} standard "
                      "deviations apart. Designed on the larger, {ua}.", source=UNCERTAINTY,
                      do="Look for wood or space heaters, closed rooms, a setback, an open belly, "
                         "a wrong efficiency, a tank not filled to the same mark. Then trust the "
                         "better reading.", ua=value, far=far)


def figure(sheet: Sheet) -> str:
    """Each road's loss per degree, and the one designed on."""
    roads, chosen = sheet.drawn["roads"], sheet.drawn["chosen"]
    assert isinstance(roads, list)
    assert isinstance(chosen, float)
    return drawing.bars("two-roads", "Heat loss per degree by each road",
                        [*roads, ("designed on", chosen)], "Btu/(h °F)", head="for each degree",
                        system=sheet.system, keep_order=True,
                        ).figure("Two roads to one number: when they agree, believe it.")
