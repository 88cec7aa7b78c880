"""Facts about the refrigerant: pressure and temperature, charge, line set, recovery."""

from downflow.facts.definition import (
    Assumption,
    Choice,
    Fact,
    Hazard,
    given,
    share,
    within,
)
from downflow.sources import PRACTICE, Source

PROPERTY_LIBRARY = Source("CoolProp 8.0", "saturation tables made from it, each degree", "library")
CHARTS_DIFFER = Source("Published charts of R-454B", "differ by about 1 % of absolute pressure",
                       "data")
TABLE_ERROR = Source("Refrigerant tables against published points", "within 0.5 %", "data")
CHARGE_CHECK = Source("California residential appendix RA3.2.2",
                      "± 5 °F superheat, 15 minutes, 55 °F outdoors", "standard")
SUBCOOLING_BAND = Source("California residential appendix RA3.2.2", "± 3 °F subcooling",
                         "standard")
CHARGE_PAIR = Source("Superheat and subcooling together", "what the pair says", "practice")
CHARGE_PLATE = Source("The outdoor unit's plate and manual",
                      "factory charge, line rate, limits of length and height", "label")
LINE_CARE = Source("Line sets of heat pumps", "oil, noise, driers for both directions", "practice")
LOCKING_CAPS = Source("International Mechanical Code", "1101.10: locking access port caps", "code")
RECOVERY = Source("40 CFR 82", "82.154(a), 82.156, 82.161", "regulation")
RECOVERY_TANK = Source("Training for section 608", "a recovery tank is filled to 80 % at most",
                       "practice")
NEW_EQUIPMENT_ONLY = Source("40 CFR 82 subpart G", "appendix W: only in equipment made for it",
                            "regulation")

CERTIFIED = Hazard(
    "warning",
    "Refrigerant is under pressure and burns skin by frost. Only a person certified under section "
    "608 connects gauges; eye protection and gloves.",
    "Person certified under EPA section 608")

REFRIGERANTS = (Choice("R-454B", "R-454B"), Choice("R-32", "R-32"), Choice("R-410A", "R-410A"),
                Choice("R-22", "R-22"))
_PRESSURE = {"measured": share(0.01), "estimated": share(0.05)}
_PIPE = {"measured": within(1.0), "estimated": within(4.0)}

FACTS: tuple[Fact, ...] = (
    Fact("refrigerant", "Refrigerant of the new unit", "choice", where="equipment",
         how="On the outdoor unit's plate.", choices=REFRIGERANTS),
    Fact("pt_f", "Temperature to look up", "number", "°F", -40, 150, 1,
         "Any saturation temperature.", "readings",
         assumption=Assumption(40.0, "a usual boiling point in cooling", PRACTICE)),
    Fact("pt_psig", "Pressure to look up", "number", "psig", -14.6, 6000, 0,
         "Any gauge pressure; a gauge reads zero in the open air.", "readings", hazard=CERTIFIED,
         assumption=Assumption(120.0, "a usual suction pressure in cooling", PRACTICE)),
    # ---- superheat and subcooling ----
    Fact("suction_psig", "Suction pressure", "number", "psig", -14.6, 6000, 1,
         "At the vapor valve in cooling, after fifteen minutes of running.", "readings",
         visit=True, hazard=CERTIFIED, spread=_PRESSURE),
    Fact("suction_line_f", "Suction line", "number", "°F", -40, 250, 1,
         "Clamp on the vapor line beside the gauge, insulated from the air.", "readings",
         visit=True, spread=_PIPE),
    Fact("liquid_psig", "Liquid pressure", "number", "psig", -14.6, 6000, 1,
         "At the liquid valve in cooling.", "readings", visit=True, hazard=CERTIFIED,
         spread=_PRESSURE),
    Fact("liquid_line_f", "Liquid line", "number", "°F", -40, 250, 1,
         "Clamp on the liquid line beside the gauge.", "readings", visit=True, spread=_PIPE),
    Fact("charge_outdoor_f", "Outdoors during the charge check", "number", "°F", -30, 125, 0,
         "In the shade, where the outdoor coil draws its air.", "readings", visit=True,
         spread={"measured": within(1.0), "estimated": within(4.0)}),
    Fact("charge_minutes", "Minutes of steady running before", "number", "min", 0, 240, 0,
         "Fifteen at least, in the maker's test mode on a variable-speed unit.", "readings",
         visit=True),
    Fact("target_subcooling_f", "Subcooling on the plate", "number", "°F diff", 0, 40, 0,
         "On the plate or in the charging chart, for this outdoor temperature.", "equipment"),
    Fact("target_superheat_f", "Superheat on the plate", "number", "°F diff", 0, 50, 0,
         "Only where the plate gives one.", "equipment"),
    Fact("subcooling_band_f", "Tolerance of subcooling", "number", "°F diff", 0.5, 10, 1,
         "On the plate; 3 °F where it is silent.", "equipment",
         assumption=Assumption(3.0, "where the plate is silent", SUBCOOLING_BAND)),
    Fact("superheat_band_f", "Tolerance of superheat", "number", "°F diff", 0.5, 15, 1,
         "On the plate; 5 °F where it is silent.", "equipment",
         assumption=Assumption(5.0, "where the plate is silent", CHARGE_CHECK)),
    # ---- line set ----
    Fact("charge_factory_lb", "Factory charge", "number", "lb", 0.5, 40, 2,
         "On the outdoor unit's plate.", "equipment"),
    Fact("lineset_included_ft", "Line length counted in it", "number", "ft", 0, 100, 0,
         "In the manual, beside the charge.", "equipment"),
    Fact("charge_rate_oz_ft", "Charge for each foot more", "number", "oz/ft", 0.05, 3, 2,
         "In the manual, for this liquid line.", "equipment"),
    Fact("lineset_ft", "Length of the line set as run", "number", "ft", 2, 300, 0,
         "Along the liquid line, valve to coil.", "crawl",
         spread={"measured": within(0.5), "estimated": share(0.1)}),
    Fact("lineset_most_ft", "Longest line set allowed", "number", "ft", 10, 400, 0,
         "In the manual.", "equipment"),
    Fact("lineset_least_ft", "Shortest line set allowed", "number", "ft", 0, 50, 0,
         "In the manual; leave it empty if none is given.", "equipment"),
    Fact("lineset_rise_ft", "Indoor coil above the outdoor unit", "number", "ft", -60, 100, 1,
         "Below zero where the coil is lower.", "outdoors",
         spread={"measured": within(0.5), "estimated": within(2.0)}),
    Fact("lineset_most_rise_ft", "Largest height difference allowed", "number", "ft", 0, 150, 0,
         "In the manual, either way.", "equipment"),
    Fact("lineset_used", "The lines are", "choice", where="crawl",
         how="Old lines hold old oil.",
         choices=(Choice("new", "new"),
                  Choice("allowed", "old, allowed by the maker, flushed and tested"),
                  Choice("old", "old, nothing known"))),
    Fact("drier", "Filter drier", "choice", where="outdoors",
         how="On a heat pump the liquid flows both ways.",
         choices=(Choice("both", "for both directions"), Choice("one", "for one direction"),
                  Choice("none", "none in the field, the maker has one inside"),
                  Choice("missing", "none at all"))),
    Fact("caps_locked", "Locking caps on the outdoor ports", "yesno", where="outdoors",
         how="A cap that comes off only with a key."),
    Fact("old_refrigerant", "Refrigerant of the old cooling", "choice", where="outdoors",
         how="On the old outdoor unit's plate.",
         choices=(Choice("none", "no old cooling"), Choice("R-22", "R-22"),
                  Choice("R-410A", "R-410A"), Choice("R-32", "R-32"),
                  Choice("R-454B", "R-454B"))),
    Fact("old_recovered", "The old refrigerant is", "choice", where="outdoors", hazard=CERTIFIED,
         how="It is recovered, weighed and written down before any line is cut.",
         choices=(Choice("weighed", "recovered, weighed and recorded by a certified person"),
                  Choice("in", "still in the old unit"), Choice("gone", "gone, nobody knows how"),
                  Choice("none", "there is none"))),
    Fact("tank_water_lb", "Recovery tank, water capacity", "number", "lb", 5, 300, 1,
         "Stamped on the tank as WC.", "outdoors"),
    # ---- given ----
    given("pt_bubble_psig", "Bubble pressure at that temperature", "psig", 0),
    given("pt_dew_psig", "Dew pressure at that temperature", "psig", 0),
    given("pt_bubble_f", "Bubble temperature at that pressure", "°F", 0),
    given("pt_dew_f", "Dew temperature at that pressure", "°F", 0),
    Fact("pt_table", "Pressure by temperature up here", "table", where="results", given=True,
         enterable=False, columns=(
             Fact("temp_f", "Temperature", "number", "°F"),
             Fact("bubble_psig", "Bubble", "number", "psig"),
             Fact("dew_psig", "Dew", "number", "psig"))),
    given("superheat_f", "Superheat", "°F diff", 1),
    given("subcooling_f", "Subcooling", "°F diff", 1),
    given("suction_dew_f", "Boils at", "°F", 1),
    given("liquid_bubble_f", "Condenses at", "°F", 1),
    given("charge_change_oz", "Charge to add for the line set", "oz", 1),
    given("charge_total_lb", "Charge of the whole system", "lb", 2, enterable=True, low=0.5,
          high=60, how="On the finished unit, beside the plate: factory charge and what was "
                       "weighed in.", spread={"estimated": share(0.1)}),
    given("line_rise_psi", "Pressure that the rise takes", "psi", 1),
    given("tank_limit_lb", "The recovery tank holds at most", "lb", 1),
)
