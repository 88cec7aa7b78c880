"""Facts of the start-up: the readings that no other calculator asks for, and who signs."""

from downflow.facts.definition import Choice, Fact, Hazard, given, share, within
from downflow.sources import METER, Source

LIVE = Hazard(
    "danger",
    "Live parts at 240 V. Only a qualified person with rated gloves, glasses and meter. Not you? "
    "Type what the licensed person reads.",
    "Licensed electrician or qualified person")
DEAD = Hazard(
    "warning",
    "Lugs are tightened dead. Lock off every supply, try to start it, prove it dead with a meter "
    "that you have proved.",
    "Licensed electrician or qualified person")
GAUGES = Hazard(
    "warning",
    "Refrigerant under pressure burns by frost. Only a certified person connects gauges.",
    "Person certified under EPA section 608")
MOVING = Hazard(
    "caution",
    "Fan and compressor start by themselves. Hands, sleeves and tools away.")

VOLT_RANGE = Source("Equipment plates for 240 V", "± 10 % of nominal", "practice")
RUNNING_DROP = Source("National Electrical Code (NFPA 70-2023)",
                      "210.19(A), informational note: 3 % on the branch", "code")
ELEMENT_AMPS = Source("Elements at start-up", "within 5 % of Ohm's law", "practice")
STATIC_LABEL = Source("The air handler's label", "highest external static", "label")
AIRFLOW_BAND = Source("ENERGY STAR HVAC installation checklist", "airflow within 15 % of design",
                      "standard")
RISE_BAND = Source("Heat over the elements", "by power and airflow, airflow within 15 %",
                   "definition")
COOLING_SPLIT = Source("Cooling split", "16 to 22 °F over a wet coil", "practice")
HEATING_SPLIT = Source("The data sheet's capacity at this outdoor temperature",
                       "by airflow, within 20 %", "label")
CHARGE_WEATHER = Source("California residential appendix RA3.2.2",
                        "charge is judged above 55 °F outdoors", "standard")
CHARGE_LABEL = Source("The outdoor unit's plate", "subcooling or superheat, and weighed charge",
                      "label")
COIL_COLD = Source("Coils in cooling", "above freezing, so that they do not ice", "practice")
CONDENSING = Source("Condensing in cooling", "8 to 35 °F above outdoors", "practice")
RUNNING_AMPS = Source("The unit's plate", "not above the rated running amperes", "label")
TORQUE = Source("National Electrical Code (NFPA 70-2023)",
                "110.14(D): the labelled torque, by a calibrated tool", "code")
TRAP_SEAL = Source("Trap as built", "suction that it holds", "label")
DOOR_PRESSURE = Source("Building science guide of a national laboratory",
                       "closed rooms: 3 Pa", "study")
LOCKOUT = Source("24 CFR 3280", "3280.714(a)(1)(ii): backup locked out above 40 °F", "regulation")
OWN_LIMIT = Source("The data sheet's lowest outdoor temperature", "", "label")
FUNCTION_TEST = Source("Start-up list of the manual", "", "label")
RELEASED_GAS = Source("National and local fuel-gas code", "capped gastight and leak-tested",
                      "code")
ALARMS = Source("Local code", "carbon monoxide and smoke alarms", "regulation")
RETURN_VISIT = Source("Readings that need other weather", "come back", "practice")

TESTED = (Choice("passed", "done, as it should"), Choice("failed", "done, and it failed"),
          Choice("due", "not done yet"))


def _test(name: str, label: str, how: str, hazard: Hazard | None = None) -> Fact:
    return Fact(name, label, "choice", where="readings", visit=True, hazard=hazard, how=how,
                choices=TESTED)


FACTS: tuple[Fact, ...] = (
    Fact("commission_outdoor_f", "Outdoors at the visit", "number", "°F", -40, 125, 0,
         "In the shade, beside the outdoor unit.", "readings", visit=True,
         spread={"measured": within(1.0, METER), "estimated": within(4.0)}),
    Fact("panel_volts_kit_on", "Voltage at the panel, kit on", "number", "V", 180, 260, 1,
         "Between the two hot legs at the kit's breaker, all elements on.", "readings", True, LIVE,
         spread={"measured": share(0.002, METER)}),
    Fact("kit_volts_drop", "Voltage at the kit, same meter", "number", "V", 180, 260, 1,
         "At the kit's own lugs, the same meter, within a minute.", "readings", True, LIVE,
         spread={"measured": share(0.002, METER)}),
    Fact("outdoor_amps", "Current of the outdoor unit", "number", "A", 0.2, 100, 1,
         "Clamp on one hot leg, top speed or the maker's test mode, after fifteen minutes.",
         "readings", True, LIVE, spread={"measured": share(0.02, METER)}),
    Fact("blower_amps", "Current of the blower", "number", "A", 0.1, 20, 1,
         "Clamp on the blower's own lead, at its usual speed.", "readings", True, LIVE,
         spread={"measured": share(0.03, METER)}),
    Fact("torque_label_lbfin", "Torque on the label of the kit's lugs", "number", "lbf in", 5, 600,
         0, "Printed beside the lugs.", "equipment"),
    Fact("torque_set_lbfin", "Torque that the lugs were set to", "number", "lbf in", 5, 600, 0,
         "By a torque driver, every lug of kit, breaker, disconnect and outdoor unit by its own "
         "label; type the kit's.", "readings", True, DEAD,
         spread={"measured": share(0.06, METER)}),
    Fact("cool_split_return_f", "Cooling: air into the cabinet", "number", "°F", 55, 100, 1,
         "After fifteen minutes of cooling, coil wet.", "readings", visit=True,
         spread={"measured": within(0.7, METER)}),
    Fact("cool_split_supply_f", "Cooling: air out of the cabinet", "number", "°F", 35, 95, 1,
         "Mixed air in the trunk, out of sight of the coil.", "readings", visit=True,
         spread={"measured": within(0.7, METER)}),
    Fact("heat_split_return_f", "Heating by the heat pump: air into the cabinet", "number", "°F",
         40, 90, 1, "Kit off, top speed or the maker's test mode, after fifteen minutes.",
         "readings", visit=True, spread={"measured": within(0.7, METER)}),
    Fact("heat_split_supply_f", "Heating by the heat pump: air out of the cabinet", "number",
         "°F", 45, 140, 1, "Mixed air in the trunk.", "readings", visit=True,
         spread={"measured": within(0.7, METER)}),
    Fact("heat_split_outdoor_f", "Outdoors during that reading", "number", "°F", -40, 75, 0,
         "In the shade, beside the outdoor unit.", "readings", visit=True,
         spread={"measured": within(1.0, METER)}),
    Fact("charge_weighed_oz", "Charge weighed in for the line set", "number", "oz", -200, 400, 1,
         "By the scale, added to the factory charge; below zero where it was taken out.",
         "readings", True, GAUGES, spread={"measured": within(0.5, METER)}),
    Fact("door_pressure_pa", "Highest pressure of a closed room", "number", "Pa", -20, 30, 1,
         "Bedroom doors shut one by one, blower at top speed: room against hall.", "readings",
         visit=True, spread={"measured": within(0.3, METER)}),
    Fact("aux_lockout_set_f", "Backup locked out above, as set", "number", "°F", -20, 70, 0,
         "Read it in the thermostat or on the board.", "readings", visit=True),
    Fact("compressor_lockout_set_f", "Compressor locked out below, as set", "number", "°F", -60,
         50, 0, "Read it in the thermostat. Where there is none, type the unit's own lowest "
                "temperature.", "readings", visit=True),
    _test("mode_test", "Thermostat modes",
          "Call cooling, heating, backup, emergency heat and fan, one by one: the right parts run, "
          "and the reversing valve is the right way round.", MOVING),
    _test("defrost_test", "Forced defrost",
          "By the manual, in cold weather: it reverses, the outdoor fan stops, backup keeps the "
          "supply air warm, it ends by itself, and the water runs clear.", MOVING),
    _test("drain_test", "Drain",
          "Pour a quart at the cleanout with the kit locked off: it runs free, and the trap keeps "
          "its water with the blower at top speed."),
    _test("limit_test", "Limits and interlocks",
          "By the manual: the heater's limit opens, the door switch stops the blower."),
    _test("detector_test", "Refrigerant detector",
          "By the manual's own test: it starts the blower and stops compressor and elements."),
    Fact("commissioned_by", "Read and signed by", "text", where="readings", visit=True,
         how="Name of the person who took the readings."),
    Fact("commissioned_licence", "Trade and licence", "text", where="readings", visit=True,
         how="As on the licence."),
    Fact("return_on", "Return visit on", "date", where="readings", visit=True,
         how="For readings that need other weather. Give the owner the same date."),
    given("record_due", "Readings still due", "", 0),
    given("record_taken", "Readings taken", "", 0),
    given("record_off", "Readings that do not apply", "", 0),
    given("expect_kit_a", "Current that the kit should draw", "A", 1),
    given("expect_rise_f", "Rise over the elements that fits the airflow wanted", "°F diff", 1),
    given("expect_split_f", "Heating split that fits the data sheet", "°F diff", 1),
    Fact("record_table", "The record", "table", where="results", given=True, enterable=False,
         columns=(
             Fact("id", "Reading", "text"),
             Fact("reading", "Reading", "text"),
             Fact("state", "State", "text"),
             Fact("read", "Read", "number", optional=True),
             Fact("low", "At least", "number", optional=True),
             Fact("high", "At most", "number", optional=True),
             Fact("doubt", "Meter ±", "number", optional=True),
             Fact("unit", "Unit", "text", optional=True),
             Fact("decimals", "Decimals", "number", optional=True),
             Fact("note", "Note", "text", optional=True),
             Fact("wait_low_f", "Outdoors from", "number", "°F", optional=True),
             Fact("wait_high_f", "Outdoors to", "number", "°F", optional=True))),
)

