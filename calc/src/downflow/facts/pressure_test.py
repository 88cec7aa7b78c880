"""Facts about the nitrogen test, the evacuation and its decay."""

from downflow.facts.definition import (
    Assumption,
    Choice,
    Fact,
    Hazard,
    Rows,
    given,
    share,
    within,
)
from downflow.sources import METER, PRACTICE, Source

NITROGEN = Source("Nitrogen, equation of state by an open property library",
                  "three virial terms, within 0.05 %", "library")
GAS_LAW = Source("Gas law", "pressure goes with absolute temperature", "definition")
TEST_PRESSURE = Source("The unit's plate and manual", "design or test pressure, the lower side",
                       "label")
TEST_TIME = Source("Nitrogen tests", "an hour at least, overnight is better", "practice")
VACUUM_PASS = Source("Makers' manuals", "pull below 300 micron; 500 or less after 10 minutes",
                     "label")
VACUUM_RISE = Source("Makers' manuals", "shape of the rise: stays, levels off, climbs", "label")
VACUUM_WATER = Source("Fundamentals handbook 2021, ch. 1",
                      "vapor pressure of water and ice (psychrolib)", "handbook")
LEAST_SQUARES = Source("Straight line of least squares", "", "definition")
CLEARING = Source("40 CFR 82.156", "table 1", "regulation")

NITROGEN_HAZARD = Hazard(
    "danger",
    "Nitrogen at pressure bursts lines and drives out air. Regulator with relief valve, bottle "
    "chained, step up slowly, doors open; never oxygen, never compressed air.",
    "EPA Section 608 certified person")
VACUUM_HAZARD = Hazard(
    "caution",
    "Never run the compressor in a vacuum: it burns out. Keep the disconnect locked off.",
    "EPA Section 608 certified person")

_READINGS = (
    Fact("minutes", "Time since closing off", "number", "min", 0, 240, 1,
         "From the moment the pump is valved off. The first reading is at 0."),
    Fact("pressure_micron", "Vacuum gauge", "number", "micron", 1, 800000, 0,
         "Gauge at the far end of the system, not at the pump.",
         spread={"measured": share(0.10, METER)}),
)

FACTS: tuple[Fact, ...] = (
    Fact("test_gas", "Gas of the pressure test", "choice", where="readings", visit=True,
         hazard=NITROGEN_HAZARD, how="Dry nitrogen, and nothing else.",
         choices=(Choice("nitrogen", "dry nitrogen"), Choice("other", "something else"))),
    Fact("nitrogen_start_psig", "Nitrogen at the start", "number", "psig", 20, 6000, 0,
         "Gauge when the pressure has settled and the bottle is shut.", "readings", visit=True,
         hazard=NITROGEN_HAZARD),
    Fact("nitrogen_start_f", "Line temperature at the start", "number", "°F", -40, 140, 0,
         "Probe strapped to the line, out of the sun.", "readings", visit=True,
         spread={"measured": within(0.5, METER), "estimated": within(5.0)}),
    Fact("nitrogen_end_psig", "Nitrogen at the end", "number", "psig", 0, 6000, 0,
         "The same gauge.", "readings", visit=True),
    Fact("nitrogen_end_f", "Line temperature at the end", "number", "°F", -40, 140, 0,
         "The same probe, the same place.", "readings", visit=True,
         spread={"measured": within(0.5, METER), "estimated": within(5.0)}),
    Fact("nitrogen_hours", "Time between the two", "number", "h", 0, 96, 1,
         "Hours from one reading to the other.", "readings", visit=True),
    Fact("gauge_step_psi", "Smallest step of the gauge", "number", "psi", 0.1, 20, 1,
         "What can be told apart on its scale.", "readings",
         assumption=Assumption(1.0, "usual for a digital gauge", METER)),
    Fact("line_doubt_f", "Gas warmer or cooler than the probe by up to", "number", "°F diff", 0.5,
         15, 1, "In sun and wind the lines differ along their way.", "readings",
         assumption=Assumption(2.0, "a shaded line at rest", PRACTICE)),
    Fact("test_limit_psig", "Highest test pressure", "number", "psig", 100, 700, 0,
         "Marked on the plate or in the manual: the lower of the two sides.", "equipment"),
    Fact("vacuum_readings", "Readings after closing off", "table", where="readings", visit=True,
         hazard=VACUUM_HAZARD,
         how="Pull below the target, close off at the valve, and read every minute or two.",
         columns=_READINGS, rows=Rows(4, 60, rising="minutes")),
    Fact("vacuum_pull_micron", "Pull down to", "number", "micron", 50, 2000, 0,
         "The manual's figure before closing off.", "equipment",
         assumption=Assumption(300.0, "the strictest of the usual manuals", VACUUM_PASS)),
    Fact("vacuum_limit_micron", "Not above this at the end", "number", "micron", 100, 3000, 0,
         "The manual's figure after closing off.", "equipment",
         assumption=Assumption(500.0, "the strictest of the usual manuals", VACUUM_PASS)),
    Fact("vacuum_need_min", "Minutes to wait", "number", "min", 5, 60, 0,
         "The manual's waiting time.", "equipment",
         assumption=Assumption(10.0, "the least of the usual manuals", VACUUM_PASS)),
    Fact("vacuum_coldest_f", "Coldest place on the lines", "number", "°F", -40, 120, 0,
         "Probe on the line outdoors or under the home.", "readings", visit=True,
         spread={"measured": within(2.0, METER), "estimated": within(5.0)}),
    given("nitrogen_expected_psig", "A tight system would show", "psig", 1),
    given("nitrogen_missing_psi", "Missing", "psi", 1),
    given("nitrogen_allowed_psi", "Gauge and thermometer alone can make", "psi", 1),
    given("nitrogen_gas_law_psig", "By the plain gas law", "psig", 1),
    given("vacuum_end_micron", "At the end", "micron", 0),
    given("vacuum_rise_micron", "Rise", "micron", 0),
    given("vacuum_start_slope", "Rise in the first half", "micron/min", 1),
    given("vacuum_end_slope", "Rise in the second half", "micron/min", 1),
    given("vacuum_level_micron", "Levels off at", "micron", 0),
    given("vacuum_water_micron", "Water at the coldest place boils at", "micron", 0),
)
