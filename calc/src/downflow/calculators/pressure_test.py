"""The nitrogen test.

Nitrogen cools overnight and its pressure falls without any leak. This says what a tight
system would show at the second temperature, how much gauge and thermometer alone can
make, and whether more than that is missing.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.facts.pressure_test import GAS_LAW, NITROGEN, TEST_PRESSURE, TEST_TIME
from downflow.physics import air
from downflow.physics import pressure_test as physics
from downflow.sources import ARITHMETIC, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="pressure-test",
    title="Nitrogen test",
    phase="refrigerant",
    question="Did the pressure fall because it got colder, or because it leaks?",
    reads=("test_gas", "nitrogen_start_psig", "nitrogen_start_f", "nitrogen_end_psig",
           "nitrogen_end_f", "nitrogen_hours", "gauge_step_psi", "line_doubt_f", "elevation_ft"),
    may_read=("test_limit_psig",),
    gives=("nitrogen_missing_psi", "nitrogen_expected_psig", "nitrogen_allowed_psi",
           "nitrogen_gas_law_psig"),
)

MOST_PSIG = 700.0
LEAST_HOURS = 1.0
LEAST_PSIG = 150.0
ZERO_F = 459.67


def solve(job: Readings, paper: Paper) -> None:
    for name in ("nitrogen_start_psig", "nitrogen_end_psig"):
        job.refuse_unless(getattr(job, name) <= MOST_PSIG, name,
                          "is far above any test pressure here. Does this gauge read kPa instead "
                          "of psig?")
    atmosphere = paper.step("pa = 14.696 * (1 - 6.8754e-6 * z) ** 5.2559", STANDARD_ATMOSPHERE,
                            "psia", air.pressure_psia(job.elevation_ft), z=job.elevation_ft,
                            what="Pressure of the air at this elevation")
    start, first, second = job.nitrogen_start_psig, job.nitrogen_start_f, job.nitrogen_end_f
    density = physics.nitrogen_density(start, first, atmosphere)
    paper.solved(
        "Density of the nitrogen, which the cold leaves as it is",
        "(p1 + pa) / T1 = d * k(d, T1)", NITROGEN, "", density,
        left=(start + atmosphere) / (first + ZERO_F),
        right=density * physics.packing(density, first), side_unit="psia/°R",
        method="density as pressure over absolute temperature; k from three virial terms")
    expected = paper.step(
        "p2 = d * (t2 + 459.67) * k - pa", NITROGEN, "psig",
        physics.expected_psig(start, first, second, atmosphere), d=density, t2=second,
        k=physics.packing(density, second), pa=atmosphere,
        what="What a tight system would show now")
    law = paper.step("pg = (p1 + pa) * (t2 + 459.67) / (t1 + 459.67) - pa", GAS_LAW, "psig",
                     physics.gas_law_psig(start, first, second, atmosphere), p1=start,
                     pa=atmosphere, t1=first, t2=second,
                     what="By the plain gas law, for comparison")
    missing = paper.step("m = p2 - pe", ARITHMETIC, "psi", expected - job.nitrogen_end_psig,
                         p2=expected, pe=job.nitrogen_end_psig, what="Missing")
    allowed = paper.step(
        "a = g + (p1 + pa) / (t1 + 459.67) * dT", GAS_LAW, "psi",
        physics.tolerance_psi(start, first, atmosphere, job.gauge_step_psi, job.line_doubt_f),
        g=job.gauge_step_psi, p1=start, pa=atmosphere, t1=first, dT=job.line_doubt_f,
        what="What gauge step and temperature doubt alone can make")
    paper.give("nitrogen_missing_psi", missing)
    paper.give("nitrogen_expected_psig", expected)
    paper.give("nitrogen_allowed_psi", allowed)
    paper.give("nitrogen_gas_law_psig", law)
    paper.draw(atmosphere=atmosphere)
    _verdicts(job, paper, missing, allowed)


def _verdicts(job: Readings, paper: Paper, missing: float, allowed: float) -> None:
    nitrogen = job.test_gas == "nitrogen"
    paper.verdict("gas", "fine" if nitrogen else "hold",
                  "Dry nitrogen was used." if nitrogen else
                  "Something else than dry nitrogen was used. Oxygen and compressed air explode "
                  "with oil.", source=TEST_PRESSURE, safety=True,
                  do="" if nitrogen else "Let it off and begin again with dry nitrogen.")
    paper.limit(
        "tight", missing, at_most=allowed, of="nitrogen_missing_psi", source=NITROGEN,
        fine="Tight: what is missing is within what gauge and thermometer can make, {limit}.",
        look="{value} are missing, and {limit} are explained: near the edge of what the "
             "thermometer can tell.",
        hold="It leaks: {value} are missing, and gauge and thermometer explain {limit}.",
        do="Soap every joint, mend, and test again before the pump goes on.")
    paper.limit(
        "not-risen", -missing, at_most=allowed, of="nitrogen_missing_psi", source=NITROGEN,
        beyond="look",
        fine="It does not stand higher than the temperature explains.",
        look="It stands {value} higher than the temperature explains: the probe does not read the "
             "gas, or the bottle is not shut.",
        do="Shade the lines, wait, and read both again.")
    paper.limit(
        "long-enough", job.nitrogen_hours, at_least=LEAST_HOURS, unit="h", decimals=1,
        source=TEST_TIME, beyond="look",
        fine="It stood {value}.", look="It stood only {value}; a small leak needs {limit} to show.",
        do="Let it stand on; overnight is better.")
    paper.limit(
        "high-enough", job.nitrogen_start_psig, at_least=LEAST_PSIG, unit="psig", decimals=0,
        source=TEST_TIME, beyond="look",
        fine="The pressure was high enough to show a leak.",
        look="{value} is a first step, not the test.",
        do="Step up as the manual says, and read again.")
    if job.test_limit_psig is None:
        paper.verdict("test-pressure", "look",
                      "The highest pressure that the plate or manual allows is not known.",
                      source=TEST_PRESSURE, do="Read it on the plate, the lower of the two sides.")
    else:
        paper.limit(
            "test-pressure", job.nitrogen_start_psig, at_most=job.test_limit_psig, unit="psig",
            decimals=0, source=TEST_PRESSURE, safety=True,
            fine="Within what the plate allows, {limit}.",
            hold="{value} is above what the plate allows, {limit}: parts may burst.",
            do="Let nitrogen off slowly, away from faces, before anything else.")


def figure(sheet: Sheet) -> str:
    """Pressure of a tight system over temperature, and the two readings."""
    job = sheet.job
    atmosphere = sheet.drawn["atmosphere"]
    assert isinstance(atmosphere, float)
    first, second = job.nitrogen_start_f, job.nitrogen_end_f
    low, high = min(first, second) - 10, max(first, second) + 10
    line = [(t, physics.expected_psig(job.nitrogen_start_psig, first, t, atmosphere))
            for t in (low + (high - low) * n / 8 for n in range(9))]
    words = sheet.text(job.nitrogen_end_psig, "psig", 0)
    expected = sheet.text(sheet.values["nitrogen_expected_psig"], "psig", 1)
    return drawing.chart(
        "pressure-test", "Nitrogen in a tight system",
        f"Started at {sheet.text(job.nitrogen_start_psig, 'psig', 0)} and "
        f"{sheet.text(first, '°F', 0)}. At {sheet.text(second, '°F', 0)} a tight system shows "
        f"{expected}; the gauge shows {words}.",
        x=("line", "°F"), y=("gauge", "psig"),
        lines=[drawing.Line("tight", line),
               drawing.Line("", [(first, job.nitrogen_start_psig)], "dots")],
        mark=drawing.Mark(second, [(job.nitrogen_end_psig, words)]),
        system=sheet.system, zero=False,
    ).figure("A reading below the line, by more than gauge and thermometer explain, is a leak.")
