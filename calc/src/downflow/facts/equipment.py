"""Facts about the new heat pump and its backup kit, from plate, data sheet and manual."""

from downflow.facts.definition import (
    Assumption,
    Fact,
    Hazard,
    Rows,
    Spread,
    given,
    share,
    within,
)
from downflow.sources import PRACTICE, Source

RATING_TOLERANCE = Source("Data sheet against delivered capacity", "± 5 %", "practice")
POWER_TOLERANCE = Source("Data sheet against drawn power", "± 8 %", "practice")
LIGHT_HOUSE = Source("Heat stored by light construction", "2 to 4 Btu per °F and ft² of floor",
                     "memory")

LIVE_PANEL = Hazard(
    "warning",
    "Live parts. The meter goes on energised lugs: only a qualified person, with rated gloves, "
    "glasses and meter. Not you? Type what the licensed person reads.",
    "Licensed electrician or qualified person")

_POINTS = (
    Fact("outdoor_f", "Outdoor temperature", "number", "°F", -40, 80, 0,
         "As printed at the head of the column."),
    Fact("capacity_max_btuh", "Heat at top speed", "number", "Btu/h", 1000, 150000, 0,
         "Heating capacity at maximum speed.",
         spread={"data sheet": share(0.05, RATING_TOLERANCE), "estimated": share(0.15)}),
    Fact("power_max_w", "Power at top speed", "number", "W", 100, 30000, 0,
         "Power of the whole system at maximum speed.",
         spread={"data sheet": share(0.08, POWER_TOLERANCE), "estimated": share(0.2)}),
    Fact("capacity_min_btuh", "Heat at lowest speed", "number", "Btu/h", 500, 150000, 0,
         "Heating capacity at minimum speed; leave empty if it is not printed.", optional=True,
         spread={"data sheet": share(0.10, RATING_TOLERANCE), "estimated": share(0.25)}),
    Fact("power_min_w", "Power at lowest speed", "number", "W", 50, 30000, 0,
         "Power at minimum speed; leave empty if it is not printed.", optional=True,
         spread={"data sheet": share(0.10, POWER_TOLERANCE), "estimated": share(0.25)}),
)

FACTS: tuple[Fact, ...] = (
    Fact("hp_points", "Heating points of the data sheet", "table", where="equipment",
         how="From the extended performance table of this indoor and outdoor unit together: "
             "each outdoor temperature with its heat and power.",
         columns=_POINTS, rows=Rows(2, 20, rising="outdoor_f")),
    Fact("hp_points_with_frost", "The points near 35 °F count frost and defrost", "yesno",
         where="equipment",
         how="Look for “integrated” or “with frost” beside the table. Not said means no.",
         assumption=Assumption(False, "steady-state tables are the rule; counting defrost "
                               "again is the careful side", PRACTICE)),
    Fact("hp_cutout_f", "Lowest outdoor temperature at which it runs", "number", "°F", -40, 40, 0,
         "Operating range in the data sheet, heating.", "equipment"),
    given("hp_altitude_factor_pct", "Capacity left at this altitude", "%", 0, enterable=True,
          low=50, high=100,
          how="The manual's capacity factor at this elevation. Many do not print one: ask the "
              "maker.", spread={"estimated": within(5.0), "data sheet": within(1.0)}),
    Fact("hp_rated_together", "Indoor and outdoor unit are one rated combination", "yesno",
         where="equipment",
         how="Find the rating certificate that names both model numbers."),
    Fact("kit_sizes", "Backup kits marked on the air handler's plate", "table",
         where="equipment",
         how="Every kit that the plate or manual allows in this cabinet; no other may go in.",
         columns=(
             Fact("kit_kw", "Kit", "number", "kW", 1, 40, 1, "Rated power at the plate's voltage."),
             Fact("stages", "Stages", "number", "", 1, 6, 0, "How many steps it switches in."),
             Fact("least_scfm", "Least airflow", "number", "scfm", 100, 3000, 0,
                  "Least airflow with this kit, from the label. Taken as standard air unless the "
                  "label says otherwise.", optional=True)),
         rows=Rows(1, 12, rising="kit_kw")),
    Fact("kit_planned_kw", "Kit that you plan to put in", "number", "kW", 1, 40, 1,
         "One of the kits on the plate. Leave it empty and the smallest that covers the shortfall "
         "is taken.", "equipment"),
    Fact("kit_rated_v", "Voltage for which the kit's power is printed", "number", "V", 200, 250, 0,
         "Beside the kW on the kit's label: 240, 230 or 208.", "equipment",
         assumption=Assumption(240.0, "most labels of 120/240 V equipment say 240 V", PRACTICE)),
    Fact("supply_v", "Voltage at the panel, under load", "number", "V", 200, 255, 0,
         "Between the two hot legs, with the range or dryer on.", "panel", hazard=LIVE_PANEL,
         spread={"measured": share(0.015), "estimated": Spread(8.0, 4.0)},
         assumption=Assumption(240.0, "nominal voltage of a 120/240 V supply", PRACTICE,
                               Spread(8.0, 4.0, False, PRACTICE))),
    Fact("heating_airflow_cfm", "Airflow in heating, kit on", "number", "cfm", 150, 3000, 0,
         "Actual airflow planned or measured with the backup kit on.", "equipment",
         spread={"measured": share(0.07), "data sheet": share(0.10), "estimated": share(0.2)}),
    Fact("return_air_f", "Return air", "number", "°F", 45, 85, 0,
         "Air entering the cabinet on a heating day.", "readings",
         spread={"measured": within(0.5), "estimated": within(2.0)},
         assumption=Assumption(68.0, "a home held at 70 °F returns air a little cooler", PRACTICE,
                               within(2.0))),
    Fact("setback_f", "Night setback", "number", "°F diff", 0, 20, 0,
         "How far the owner lets the home cool at night. 0 where it is held steady.", "comfort",
         assumption=Assumption(0.0, "steady is what a heat pump is set to", PRACTICE)),
    Fact("heat_capacity_btu_f_ft2", "Heat stored by the home", "number", "Btu/(°F ft²)",
         1, 15, 1,
         "Btu per °F and square foot of floor. Light construction stores 2 to 4.", "home",
         assumption=Assumption(3.0, "light construction: 2 to 4 Btu per °F and ft²", LIGHT_HOUSE,
                               within(1.0, LIGHT_HOUSE))),
    # ---- given: heat pump against the home ----
    given("hp_load_btuh", "Heat the equipment must make at design", "Btu/h"),
    given("hp_capacity_design_btuh", "Heat pump at design", "Btu/h"),
    given("hp_share_pct", "Share of the design load covered", "%", 0),
    given("hp_balance_f", "Thermal balance point", "°F", 0),
    given("hp_cycles_above_f", "Starts to cycle above", "°F", 0),
    given("hp_cop_design", "COP at design", "", 2),
    # ---- given: backup kit ----
    given("kit_shortfall_btuh", "Shortfall at design", "Btu/h"),
    given("kit_shortfall_kw", "Shortfall at design, as electric heat", "kW", 1),
    given("kit_chosen_kw", "Kit", "kW", 1),
    given("kit_stages_at_design", "Stages on at design", "", 0),
    given("kit_real_kw", "Its power at this home's voltage", "kW", 1),
    given("kit_alone_holds_to_f", "The kit alone holds the house down to", "°F", 0),
    given("kit_supply_air_f", "Supply air with heat pump and kit", "°F", 0),
    given("kit_least_airflow_scfm", "Airflow over the elements, standard air", "scfm", 0),
    given("kit_recovery_h", "Hours to recover a setback at design", "h", 1),
)
