"""Facts of a first answer: what is usual, until a unit is chosen."""

from downflow.facts.definition import Assumption, Fact, given, share, within
from downflow.sources import PRACTICE, Source

COLD_CAPACITY = Source("Heat pumps sold for cold climates", "70 % and more of their 47 °F heat are "
                       "left at 5 °F", "memory")
USUAL_UNIT = Source("Usual sizes in closets of these homes", "two to three and a half tons",
                    "practice")

FACTS: tuple[Fact, ...] = (
    Fact("first_nominal_btuh", "Heat pump thought of, heat at 47 °F", "number", "Btu/h", 12000,
         72000, 0, "What the firm usually puts into such a home. Choosing one comes later.",
         "equipment", spread={"estimated": share(0.10), "data sheet": share(0.0)},
         assumption=Assumption(36000.0, "three tons are the usual size in such a closet",
                               USUAL_UNIT, within(6000.0, USUAL_UNIT))),
    Fact("first_cold_share_pct", "Share of that heat left at 5 °F", "number", "%", 30, 110, 0,
         "From the table of the unit thought of.", "equipment",
         spread={"data sheet": within(3.0), "estimated": within(8.0)},
         assumption=Assumption(80.0, "units for cold climates keep 70 % to 95 %", COLD_CAPACITY,
                               within(12.0, COLD_CAPACITY))),
    Fact("first_appliances_va", "Appliances that stay, in all", "number", "VA", 0, 60000, 0,
         "Range, dryer, water heater and the like, plates added up. A guess until they are "
         "listed.", "panel", spread={"estimated": share(0.25), "data sheet": share(0.05)},
         assumption=Assumption(16000.0, "an electric range and dryer, perhaps a water heater",
                               PRACTICE, within(6000.0, PRACTICE))),
    given("first_share_pct", "Share of the design load, a usual unit", "%", 0),
    given("first_shortfall_kw", "Left for a backup kit at design", "kW", 1),
    given("first_kit_kw", "Kit that would cover it", "kW", 0),
    given("first_service_a", "Service with a usual unit and that kit", "A", 0),
)
