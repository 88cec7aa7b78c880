"""Facts about the circuit of the air handler and its heat kit."""

from downflow.facts.definition import (
    Assumption,
    Choice,
    Fact,
    Hazard,
    Spread,
    given,
    share,
)
from downflow.sources import PRACTICE, Source

SPACE_HEATING = Source("National Electrical Code (NFPA 70-2023)",
                       "424.4(B), 125 % of heater and blower", "code")
BREAKER_SIZES = Source("National Electrical Code (NFPA 70-2023)",
                       "240.6(A), 240.4(B) and (D)", "code")
WIRE_TABLE = Source("National Electrical Code (NFPA 70-2023)",
                    "table 310.16 with 310.15(B), (C), 110.14(C)(1), 334.80", "code")
GROUND_TABLE = Source("National Electrical Code (NFPA 70-2023)",
                      "table 250.122 and 250.122(B)", "code")
DROP_NOTE = Source("National Electrical Code (NFPA 70-2023)",
                   "chapter 9 table 8; 210.19(A) informational note: 3 %", "code")
ONE_APPLIANCE = Source("24 CFR 3280", "3280.804(g)(1): 150 % of a single appliance",
                       "regulation")
COPPER_ONLY = Source("24 CFR 3280", "3280.801(e): no aluminum branch circuits", "regulation")
BANKS = Source("National Electrical Code (NFPA 70-2023)", "424.22(B): parts of 48 A at most",
               "code")
KIT_LABEL = Source("The kit's label", "minimum circuit ampacity, maximum breaker", "label")

PANEL_WORK = Hazard(
    "danger",
    "Panel lugs stay live with the main off. Circuit work is for the licensed electrician, with "
    "the power off, locked and proved dead.", "Licensed electrician")

SIZES = ("14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0")

FACTS: tuple[Fact, ...] = (
    Fact("kit_label_mca_a", "Circuit ampacity on the kit's label", "number", "A", 5, 200, 1,
         "Minimum circuit ampacity for this kit in this cabinet. Where a label has it, it counts.",
         "equipment"),
    Fact("kit_label_breaker_a", "Largest breaker on the kit's label", "number", "A", 10, 225, 0,
         "Maximum overcurrent protection for this kit in this cabinet.", "equipment"),
    Fact("kit_breaker_planned_a", "Breaker planned for the kit", "number", "A", 10, 225, 0,
         "The breaker that the electrician means to use.", "panel", hazard=PANEL_WORK),
    Fact("kit_wire_planned", "Conductor planned for the kit", "choice", where="panel",
         how="Size printed on the cable's jacket. Copper only inside the home.",
         choices=tuple(Choice(s, f"{s} AWG copper") for s in SIZES)),
    Fact("kit_cable", "Kind of cable", "choice", where="panel",
         how="NM-B is the sheathed cable; single wires in a raceway are marked THHN or THWN-2.",
         choices=(Choice("nm", "NM-B cable"), Choice("thhn", "single wires in a raceway")),
         assumption=Assumption("nm", "sheathed cable is the rule inside homes", PRACTICE)),
    Fact("kit_terminals", "Terminals at both ends are marked for", "choice", where="panel",
         how="75 °C only if breaker and kit are both marked for it.",
         choices=(Choice("60", "60 °C"), Choice("75", "75 °C")),
         assumption=Assumption("60", "unmarked terminals up to 100 A are 60 °C", WIRE_TABLE)),
    Fact("kit_route_f", "Hottest air along the cable", "number", "°F", 40, 140, 0,
         "The hottest place that it passes on a summer day. A roof space reaches 120 °F and more; "
         "belly and crawl space stay below 90 °F.", "crawl",
         spread={"measured": Spread(5.0, 5.0), "estimated": Spread(10.0, 10.0)},
         assumption=Assumption(104.0, "between a crawl space and a roof space", PRACTICE,
                               Spread(18.0, 18.0))),
    Fact("kit_wires_together", "Current-carrying wires that lie together", "number", "", 2, 40, 0,
         "Two for one 240 V cable alone; count every cable that touches it for more than two feet.",
         "crawl", assumption=Assumption(2.0, "one cable by itself", PRACTICE)),
    Fact("kit_wire_ft", "Length of that circuit", "number", "ft", 3, 300, 0,
         "One way, from panel to air handler, along the route.", "crawl",
         spread={"measured": share(0.05), "estimated": share(0.25)}),
    given("kit_circuit_a", "Kit and blower, at the label's voltage", "A", 1),
    given("kit_least_ampacity_a", "Least ampacity of the circuit", "A", 1),
    given("kit_breaker_a", "Breaker", "A", 0),
    given("kit_wire_awg", "Smallest copper conductor", "AWG", 0),
    given("kit_wire_ampacity_a", "It carries, in its place", "A", 1),
    given("kit_ground_awg", "Equipment ground", "AWG", 0),
    given("kit_amps_here_a", "Kit at this home's voltage", "A", 1),
    given("kit_drop_pct", "Voltage drop while the kit runs", "%", 2),
)
