"""Facts of the yearly visit: what has drifted since the visit before."""

from downflow.facts.definition import Fact, given
from downflow.sources import Source

STATIC_DRIFT = Source("Static pressure from year to year", "a fifth more is filter or coil",
                      "practice")
AIRFLOW_DRIFT = Source("Airflow from year to year", "a tenth less is worth a look", "practice")
KIT_DRIFT = Source("Resistance of heating elements", "steady within 5 %", "practice")
CHARGE_DRIFT = Source("Charge from year to year",
                      "subcooling within 3 °F, superheat within 5 °F", "practice")
CONTROL_DRIFT = Source("Control voltage from year to year", "within 1.5 V", "practice")
YEARLY_TASKS = Source("Yearly maintenance", "what is done, and how long it takes", "practice")

FACTS: tuple[Fact, ...] = (
    given("yearly_minutes", "Time for the visit, one person", "min", 0),
    given("yearly_static_pct", "Static against the visit before", "%", 0),
    given("yearly_airflow_pct", "Airflow against the visit before", "%", 0),
    given("yearly_kit_pct", "Resistance of the kit against the visit before", "%", 1),
    given("yearly_suction_pct", "Suction at the pan against the visit before", "%", 0),
    given("yearly_subcooling_f", "Subcooling against the visit before", "°F diff", 1),
    given("yearly_superheat_f", "Superheat against the visit before", "°F diff", 1),
    given("yearly_control_v", "Control voltage against the visit before", "V", 1),
    Fact("yearly_tasks", "Checklist", "table", where="results", given=True, enterable=False,
         columns=(Fact("task", "Do", "text"), Fact("minutes", "Minutes", "number", "min"))),
)
