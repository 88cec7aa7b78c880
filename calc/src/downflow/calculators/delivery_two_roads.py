"""What the ducts deliver, by both roads.

A study measured what belly ducts of whole homes deliver, as found and sealed. A duct test of
this home says what its leaks and its insulation let go. Where the two agree, the design stands on
either; where they part, one of them does not speak of this home, and the equipment, the kit and
the road by fuel bills all lean on it.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts.envelope import DUCT_STUDY, UNCERTAINTY
from downflow.physics import two_roads
from downflow.sources import DUCT_STANDARD

CALCULATOR = Calculator(
    id="delivery-two-roads",
    title="What the ducts deliver, by both roads",
    phase="air",
    question="Do the study and this home's duct test tell the same of its ducts?",
    reads=("delivery_efficiency_pct", "delivery_before_pct", "delivery_found_pct",
           "delivery_sealed_pct", "duct_state"),
    gives=("delivery_roads_pct", "delivery_roads_apart_pct"),
)

STUDY_FOUND_OFF, STUDY_SEALED_OFF = 10.0, 7.0
"""Half-widths that hold nine homes in ten, in parts of a hundred: homes differ."""
READ_OFF = 4.0
"""Where a share was measured and entered."""
TEST_OFF = 5.0
"""The test's: 0.3 to 0.6 of what is lost comes back, and where the leaks are is guessed."""
NINE_IN_TEN = two_roads.NINETY_PERCENT_SIGMAS


def solve(job: Readings, paper: Paper) -> None:
    sealed = job.duct_state == "sealed"
    now = job.delivery_efficiency_pct
    test = job.delivery_sealed_pct if sealed else job.delivery_found_pct
    if job.origin("delivery_efficiency_pct") in ("measured", "data sheet"):
        off = READ_OFF
    elif sealed:
        off = STUDY_SEALED_OFF
    else:
        off = _found_off(job)
    together, apart = _roads(paper, now, off, test, "as they are now")
    paper.give("delivery_roads_pct", together)
    paper.give("delivery_roads_apart_pct", now - test)
    paper.draw(rows=[("designed on", now), ("by the duct test", test), ("together", together)])
    # The doubt of both is in how far apart they are; the range must not count it again.
    agree = bool(paper.decide("agree", apart <= two_roads.AGREE_SIGMAS))
    paper.verdict(
        "roads-agree", "fine" if agree else "look",
        "Both roads tell the same: designed on {a}, the duct test says {b}." if agree else
        "Designed on {a}, the duct test says {b}: more apart than their doubt explains.",
        source=UNCERTAINTY,
        do="" if agree else
        "Look at the flow of the test, at the insulation around the trunks, and at the crossover. "
        "Then enter the lower of the two and design on it: load, kit and balance point follow.",
        a=Quantity(now, "%", 0), b=Quantity(test, "%", 0))
    if not sealed:
        return
    before, found = job.delivery_before_pct, job.delivery_found_pct
    both, far = _roads(paper, before, _found_off(job), found, "as found")
    agree = bool(paper.decide("found agree", far <= two_roads.AGREE_SIGMAS))
    paper.verdict(
        "found-agree", "fine" if agree else "look",
        "As found too: {before} by what is entered, {found} by the duct test." if agree else
        "As found the ducts delivered {before} by what is entered, {found} by the duct test. The "
        "loss from fuel bills and the cost before lean on it.", source=UNCERTAINTY,
        do="" if agree else
        "Ask what the test could not see, such as a duct fallen off. Without a reason enter "
        "{both}, the two together.",
        before=Quantity(before, "%", 0), found=Quantity(found, "%", 0),
        both=Quantity(both, "%", 0))


def _found_off(job: Readings) -> float:
    return READ_OFF if job.origin("delivery_before_pct") == "measured" else STUDY_FOUND_OFF


def _roads(paper: Paper, study: float, study_off: float, test: float,
           when: str) -> tuple[float, float]:
    """Both roads together [%], and how many standard deviations they are apart."""
    first = paper.step("sx = o / 1.644854", DUCT_STUDY, "%", study_off / NINE_IN_TEN,
                       o=study_off, what=f"Doubt of what is designed on, ducts {when}")
    second = paper.step("sy = o / 1.644854", DUCT_STANDARD, "%", TEST_OFF / NINE_IN_TEN,
                        o=TEST_OFF, what="Doubt of the duct test",
                        note="Part of what is lost comes back through the floor, and which leaks "
                             "are outside is guessed.")
    both = paper.step("d = (x / sx ** 2 + y / sy ** 2) / (1 / sx ** 2 + 1 / sy ** 2)",
                      UNCERTAINTY, "%", two_roads.combine(study, first, test, second).value,
                      x=study, sx=first, y=test, sy=second,
                      what="Both together, the surer counting more")
    apart = paper.step("n = abs(x - y) / sqrt(sx ** 2 + sy ** 2)", UNCERTAINTY, "",
                       two_roads.agreement(study, first, test, second).sigmas, x=study, y=test,
                       sx=first, sy=second, what="How far apart, in their own doubt")
    return both, apart


def figure(sheet: Sheet) -> str:
    """The two roads, and both together."""
    rows = sheet.drawn["rows"]
    assert isinstance(rows, list)
    return drawing.bars(
        "delivery-two-roads", "Heat that reaches the rooms, by two roads", rows, "%",
        head="of what the equipment makes", keep_order=True, system=sheet.system,
    ).figure("On the design night.")
