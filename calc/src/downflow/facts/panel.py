"""Facts about service, panel and the outdoor unit's circuit."""

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
from downflow.sources import PRACTICE, Source

EXISTING_DWELLING = Source("National Electrical Code (NFPA 70-2023)",
                           "220.83(B), existing dwelling with heating or cooling added", "code")
HOME_FEEDER = Source("National Electrical Code (NFPA 70-2023)",
                     "550.18, as 24 CFR 3280.811(a)", "code")
RECORDED_DEMAND = Source("National Electrical Code (NFPA 70-2023)", "220.87", "code")
SUPPLY_CORD = Source("24 CFR 3280", "3280.803(a) and 3280.804(e): 40 A and 50 A cords",
                     "regulation")
PANEL_SPACES = Source("Panel label and circuit directory", "two spaces for each 240 V circuit",
                      "label")
PANEL_LINES = Source("Panels and their histories", "lines with breaker failures on record",
                     "practice")
BACKUP_POWER = Source("National Electrical Code (NFPA 70-2023)", "702.5, transfer equipment",
                      "code")
GENERATOR_START = Source("Generators and motor starting", "starting power against rating",
                         "practice")
UNIT_PLATE = Source("The outdoor unit's plate", "minimum circuit ampacity, maximum breaker",
                    "label")
MOTOR_CIRCUIT = Source("National Electrical Code (NFPA 70-2023)", "440.33 and 440.4(B)", "code")
COMPRESSOR_BREAKER = Source("National Electrical Code (NFPA 70-2023)", "440.22(A)", "code")
COMPRESSOR_DISCONNECT = Source("National Electrical Code (NFPA 70-2023)", "440.12(A)(1)", "code")
DISCONNECT_PLACE = Source("National Electrical Code (NFPA 70-2023)",
                          "440.14 and the definition of in sight: 50 ft", "code")
STANDARD_BREAKERS = Source("National Electrical Code (NFPA 70-2023)", "240.6(A)", "code")
AMPACITY = Source("National Electrical Code (NFPA 70-2023)",
                  "table 310.16 and 110.14(C)(1)", "code")
OUTDOOR_GFCI = Source("National Electrical Code (NFPA 70-2023)",
                      "210.8(F) and its exception 2, which ends 1 September 2026", "code")
VOLTAGE_DROP = Source("National Electrical Code (NFPA 70-2023)",
                      "chapter 9 table 8; 210.19(A) informational note: 3 %", "code")
START_DROP = Source("Compressor starting", "voltage dip that lights and motors still ride through",
                    "practice")
FACTORY_TAG = Source("24 CFR 3285", "3285.503(a)(1)(ii)", "regulation")

PANEL_OPEN = Hazard(
    "danger",
    "Opening the panel's dead front bares live parts that can kill. Read from the closed panel; "
    "anything behind the cover is the electrician's to look at.",
    "Licensed electrician")
METER_ON_POWER = Hazard(
    "warning",
    "Live parts. Readings with the cover off are for a qualified person with rated gloves, glasses "
    "and meter. Not you? Type what the licensed person reads.",
    "Licensed electrician or qualified person")

_APPLIANCES = (
    Fact("id", "Name", "text", how="A name of your own for this appliance."),
    Fact("appliance", "Appliance", "choice", how="What it is.", choices=(
        Choice("range", "free-standing range"), Choice("oven", "wall oven"),
        Choice("cooktop", "cooktop"), Choice("dryer", "clothes dryer"),
        Choice("water heater", "water heater"), Choice("dishwasher", "dishwasher"),
        Choice("disposer", "waste disposer"), Choice("microwave", "built-in microwave"),
        Choice("motor", "pump or other motor"), Choice("heater", "electric heater that stays"),
        Choice("other", "other appliance on its own circuit"))),
    Fact("va", "Nameplate", "number", "VA", 50, 40000, 0,
         "Volt-amperes or watts on its plate; volts times amperes where it prints amperes.",
         spread={"data sheet": share(0.02), "estimated": share(0.2), "measured": share(0.03)}),
    Fact("leg", "Legs", "choice", how="A 240 V appliance loads both legs, a 120 V one loads one.",
         choices=(Choice("both", "both (240 V)"), Choice("A", "A (120 V)"),
                  Choice("B", "B (120 V)"))),
)

FACTS: tuple[Fact, ...] = (
    Fact("main_breaker_a", "Main breaker, or rating of the feeder", "number", "A", 30, 400, 0,
         "The number on the main breaker's handle, or on the tag at the feeder's entrance; the "
         "smaller of the two.", "panel", first=True),
    Fact("supply_kind", "How the home is supplied", "choice", where="panel",
         how="Look where power comes in: wires in a conduit, or a cord with a plug cap.",
         choices=(Choice("feeder", "permanent feeder"), Choice("cord 50", "50 A cord"),
                  Choice("cord 40", "40 A cord"))),
    Fact("panel_line", "The panel's kind", "choice", where="panel", hazard=PANEL_OPEN,
         how="Read the maker and line on the door. The electrician knows the lines whose breakers "
             "have failed to trip.",
         choices=(Choice("ordinary", "breakers, no failures known"),
                  Choice("failures", "a line with known breaker failures"),
                  Choice("fuses", "fuses"), Choice("not read", "not read yet"))),
    Fact("panel_spaces_free", "Empty breaker spaces", "number", "", 0, 42, 0,
         "Count spaces without a breaker. Half-size breakers only where the label allows them.",
         "panel"),
    Fact("panel_spaces_freed", "Spaces that old circuits give back", "number", "", 0, 12, 0,
         "The old furnace's circuit gives one; an old air conditioner's two.", "panel",
         assumption=Assumption(1.0, "a fuel furnace has one 120 V circuit", PRACTICE)),
    Fact("kit_circuits", "Circuits that the kit's label asks for", "number", "", 1, 3, 0,
         "One 240 V circuit up to 10 kW, as a rule; larger kits take two.", "equipment",
         assumption=Assumption(1.0, "kits up to 10 kW are one bank on one circuit", PRACTICE)),
    Fact("appliances", "Electric appliances that stay", "table", where="rooms",
         how="Every appliance that is fastened in place or has its own circuit. Not the old "
             "furnace, not cooling, not the new heat pump.",
         columns=_APPLIANCES, rows=Rows(0, 30, unique="id")),
    Fact("kitchen_circuits", "Kitchen outlet circuits", "number", "", 2, 6, 0,
         "The code counts two at least.", "panel",
         assumption=Assumption(2.0, "two is the least that the code counts", EXISTING_DWELLING)),
    Fact("laundry_circuits", "Laundry outlet circuits", "number", "", 0, 3, 0,
         "One where there is a place for a washer.", "panel",
         assumption=Assumption(1.0, "one laundry circuit is the rule", EXISTING_DWELLING)),
    Fact("old_blower_a", "Old furnace blower", "number", "A", 0, 25, 1,
         "Amperes at 120 V on the old furnace's plate. It goes out.", "plate",
         spread={"estimated": share(0.3)},
         assumption=Assumption(6.0, "usual for a 120 V furnace blower", PRACTICE, within(3.0))),
    Fact("old_cooling_a", "Old cooling that goes out", "number", "A", 0, 60, 1,
         "Amperes at 240 V of an old air conditioner that is taken out; 0 if there is none.",
         "outdoors", assumption=Assumption(0.0, "no old cooling", PRACTICE)),
    Fact("outdoor_unit_a", "Outdoor unit while running", "number", "A", 1, 80, 1,
         "Rated-load amperes of the compressor and amperes of the fan together. A plate that shows "
         "only a minimum circuit ampacity: take that.", "equipment",
         spread={"estimated": share(0.2), "measured": share(0.05)}),
    Fact("indoor_blower_a", "New blower", "number", "A", 0.3, 15, 1,
         "Amperes of the air handler's blower motor, at 240 V, from its plate.", "equipment",
         spread={"estimated": share(0.3), "measured": share(0.05)}),
    Fact("controls_part_them", "Controls keep compressor and kit from running together", "yesno",
         where="equipment",
         how="Only a listed control that makes it impossible counts; a thermostat setting is none.",
         assumption=Assumption(False, "heat pumps and their kits run together", PRACTICE)),
    Fact("demand_record_a", "Highest demand in a year of meter data", "number", "A", 1, 400, 0,
         "From the utility: highest quarter hour of the last twelve months, in amperes at 240 V. "
         "Leave it empty if you have none.", "fuel"),
    Fact("generator_kva", "Owner's generator", "number", "kVA", 0.5, 60, 1,
         "Running rating on its plate. Leave it empty if there is none.", "outdoors"),
    Fact("compressor_lra_a", "Compressor, locked rotor", "number", "A", 5, 300, 0,
         "Locked-rotor amperes on the plate. A variable-speed compressor prints none: leave it "
         "empty.", "equipment"),
    # ---- the outdoor unit's own circuit ----
    Fact("outdoor_mca_a", "Minimum circuit ampacity on the plate", "number", "A", 3, 100, 1,
         "On the outdoor unit's plate. The wire must carry at least this.", "equipment"),
    Fact("outdoor_mocp_a", "Largest breaker on the plate", "number", "A", 10, 125, 0,
         "Maximum overcurrent device on the outdoor unit's plate.", "equipment"),
    Fact("compressor_rla_a", "Compressor, rated load", "number", "A", 1, 80, 1,
         "Rated-load amperes on the plate. Leave it empty on a variable-speed unit.",
         "equipment"),
    Fact("outdoor_fan_a", "Outdoor fan", "number", "A", 0.1, 12, 1,
         "Amperes of the fan motor on the plate.", "equipment"),
    Fact("outdoor_breaker_a", "Breaker planned for the outdoor unit", "number", "A", 10, 125, 0,
         "The breaker that feeds it.", "panel"),
    Fact("outdoor_wire", "Conductor to the outdoor unit", "choice", where="outdoors",
         how="Size printed on the cable's jacket; copper.", choices=tuple(
             Choice(size, f"{size} AWG copper") for size in ("14", "12", "10", "8", "6", "4"))),
    Fact("outdoor_terminals", "Terminals at both ends are marked for", "choice", where="outdoors",
         how="75 °C only if breaker, disconnect and unit are all marked for it, and the cable is "
             "not NM-B.",
         choices=(Choice("60", "60 °C"), Choice("75", "75 °C")),
         assumption=Assumption("60", "unmarked terminals up to 100 A are 60 °C", AMPACITY)),
    Fact("outdoor_wire_ft", "Length of that circuit", "number", "ft", 3, 300, 0,
         "One way, from panel to unit, along the route.", "crawl",
         spread={"measured": share(0.05), "estimated": share(0.25)}),
    Fact("disconnect_a", "Disconnect at the outdoor unit", "number", "A", 15, 200, 0,
         "Rating on its label.", "outdoors"),
    Fact("disconnect_ft", "Distance from disconnect to unit", "number", "ft", 0, 200, 0,
         "Along the line of sight.", "outdoors", spread={"estimated": within(5.0)}),
    Fact("disconnect_seen", "The disconnect can be seen from the unit", "yesno",
         where="outdoors", how="Nothing in between, and not behind the unit's own access panel."),
    Fact("code_edition", "Edition of the electrical code in force", "choice", where="place",
         how="Ask the building department; it also knows local changes.",
         choices=(Choice("2017", "2017 or earlier"), Choice("2020", "2020"),
                  Choice("2023", "2023"), Choice("2026", "2026"),
                  Choice("unknown", "not known yet"))),
    Fact("outdoor_gfci", "Ground-fault protection of the outdoor unit's circuit", "yesno",
         where="panel", how="Whether its breaker is a ground-fault one."),
    Fact("volts_load_off", "Voltage at the panel, large loads off", "number", "V", 200, 255, 1,
         "Between the two hot legs, range and dryer off.", "panel", hazard=METER_ON_POWER,
         spread={"measured": within(1.0)}),
    Fact("volts_load_on", "Voltage at the panel, a large load on", "number", "V", 195, 255, 1,
         "The same place with the range or dryer heating.", "panel", hazard=METER_ON_POWER,
         spread={"measured": within(1.0)}),
    Fact("load_on_a", "Current of that load", "number", "A", 5, 100, 1,
         "Clamp one of its two hot legs while it heats.", "panel", hazard=METER_ON_POWER,
         spread={"measured": share(0.03)}),
    # ---- given ----
    given("service_load_a", "Load of the service with the new system", "A", 1),
    given("service_left_a", "Left on the service", "A", 1),
    given("service_before_a", "Load before, by the same sum", "A", 1),
    given("service_apart_a", "Load if controls keep compressor and kit apart", "A", 1),
    given("service_kit_room_kw", "Largest kit that the service has room for", "kW", 1),
    given("feeder_leg_a", "Leg A by the manufactured-home sum", "A", 1),
    given("feeder_leg_b", "Leg B by the manufactured-home sum", "A", 1),
    given("panel_spaces_left", "Spaces left after the new circuits", "", 0),
    given("record_load_a", "Load by the demand on record", "A", 1),
    given("generator_blower_kva", "Blower alone on a generator", "kVA", 1),
    given("generator_heat_pump_kva", "Blower and heat pump on a generator", "kVA", 1),
    given("generator_start_kva", "The moment the compressor starts", "kVA", 1),
    given("outdoor_wire_a", "The outdoor conductor carries", "A", 0),
    given("outdoor_mca_worked_a", "Circuit ampacity worked from the motors", "A", 1),
    given("outdoor_mocp_worked_a", "Largest breaker worked from the motors", "A", 0),
    given("outdoor_disconnect_need_a", "Least rating of the disconnect", "A", 1),
    given("outdoor_run_drop_pct", "Voltage drop while running", "%", 1),
    given("outdoor_start_drop_pct", "Voltage dip at start, at most", "%", 1),
)
