"""Facts about a year of heating: the old furnace, its fuel, prices, and how it feels."""

from downflow.facts.definition import (
    Assumption,
    Choice,
    Fact,
    Rows,
    Spread,
    given,
    share,
    within,
)
from downflow.sources import PRACTICE, Source

DELIVERY_BEFORE = Source("Duct retrofits in eight manufactured homes, OSTI 20006305",
                         "69 % before sealing", "study")
SEASON_GAINS = Source("Fundamentals handbook 2021, ch. 19", "example 2: 1,250 W in a larger house",
                      "handbook")
DAY_SWING = Source("TMY3 data set", "1,020 stations: mean day swings 0.79 of the daily range, "
                   "15.8 °F on average", "data")
OLD_BLOWER = Source("Old furnace blowers", "350 to 500 W while firing", "memory")
AFUE_CLASSES = Source("Consumer guide to furnaces, US Department of Energy",
                      "56 to 70 % old, 80 to 83 % induced fan, 90 to 98.5 % condensing", "study")
AIR_DELIVERED = Source("Old furnace airflow", "temperature rise of 50 to 80 °F", "practice")
FIELD_CYCLING = Source("10 CFR 430 subpart B", "appendix M1: 0.25 where not tested", "regulation")

FUELS = (
    Choice("propane", "propane"),
    Choice("gas", "natural gas"),
    Choice("oil", "heating oil"),
    Choice("electric", "electric resistance"),
)

TESTS = (
    Choice("low-62", "lowest speed, 62 °F"),
    Choice("low-47", "lowest speed, 47 °F"),
    Choice("low-35", "low stage, 35 °F"),
    Choice("low-17", "low stage, 17 °F"),
    Choice("middle-35", "intermediate speed, 35 °F"),
    Choice("full-47", "full speed, 47 °F"),
    Choice("full-35", "full speed, 35 °F"),
    Choice("full-17", "full speed, 17 °F"),
    Choice("full-5", "full speed, 5 °F"),
)

FACTS: tuple[Fact, ...] = (
    # ---- the old furnace ----
    Fact("heating_fuel", "What the home was heated with", "choice", where="fuel",
         how="The fuel of the furnace that comes out.", choices=FUELS, first=True),
    Fact("furnace_input_btuh", "Input of the old furnace, as it burns here", "number", "Btu/h",
         5000, 250000, 0,
         "From its label, lowered for altitude as the label or manual says; or clocked at the "
         "meter. For electric heat, all elements together.", "closet", first=True,
         spread={"measured": share(0.03), "data sheet": share(0.10), "estimated": share(0.20)}),
    Fact("furnace_efficiency_pct", "Seasonal efficiency of the old furnace", "number", "%", 40, 100,
         0, "AFUE on its label or in its papers. 100 for electric heat.", "closet",
         spread={"data sheet": within(3.0, AFUE_CLASSES), "estimated": within(6.0, AFUE_CLASSES),
                 "measured": within(3.0)}),
    Fact("old_blower_w", "Power of the old blower", "number", "W", 0, 1500, 0,
         "While it blows. A clamp meter on its wire, or the motor's label.", "closet",
         spread={"measured": share(0.05), "estimated": share(0.3), "data sheet": share(0.2)},
         assumption=Assumption(425.0, "old blowers take 350 to 500 W", OLD_BLOWER,
                               within(100.0, OLD_BLOWER))),
    Fact("old_airflow_cfm", "Airflow of the old furnace", "number", "cfm", 150, 3000, 0,
         "Measured before it came out, or from its temperature rise.", "closet",
         spread={"measured": share(0.10), "estimated": share(0.25)}),
    Fact("delivery_before_pct", "Share of the heat that the ducts delivered before the work",
         "number", "%", 30, 100, 0,
         "From a duct test before sealing. Leave it out where nothing was done to the ducts and "
         "enter the same as now.", "crawl",
         spread={"measured": within(4.0), "estimated": within(10.0, DELIVERY_BEFORE)},
         assumption=Assumption(69.0, "belly ducts of eight homes delivered 69 % as found",
                               DELIVERY_BEFORE, within(10.0, DELIVERY_BEFORE))),
    # ---- the season ----
    Fact("season_gains_btuh", "Heat from sun, people and appliances over the season", "number",
         "Btu/h", 0, 20000, 0,
         "Mean of day and night in the heating season. Fuel bills against degree days show it as "
         "the base temperature at which heating starts.", "fuel",
         spread={"measured": share(0.25), "estimated": share(0.4)},
         assumption=Assumption(3600.0, "some 1,000 W of sun, people and appliances in a home of "
                               "this kind", SEASON_GAINS, within(1500.0, PRACTICE))),
    Fact("day_swing_f", "Swing of the mean winter day", "number", "°F diff", 0, 45, 0,
         "Warmest less coldest hour of the average day: about 0.8 of the mean difference between "
         "the day's highest and lowest.", "place",
         spread={"estimated": within(5.0, DAY_SWING), "data sheet": within(2.0)},
         assumption=Assumption(18.0, "between the national mean and dry mountain valleys",
                               DAY_SWING, within(6.0, DAY_SWING))),
    Fact("winter_humidity_pct", "Relative humidity of the winter air outside", "number", "%", 10,
         100, 0, "Mean of the heating season, by day and night; from a weather service. Dry "
         "mountain air 55 to 65, the coast 80.", "place",
         spread={"estimated": within(10.0), "data sheet": within(5.0)},
         assumption=Assumption(65.0, "between dry mountain winters and the damp coast", PRACTICE,
                               within(15.0, PRACTICE))),
    Fact("hp_cycling_loss", "Loss while it cycles", "number", "", 0, 0.5, 2,
         "Degradation coefficient of the rating. 0.25 where it was not tested.", "equipment",
         spread={"data sheet": within(0.02), "estimated": within(0.10)},
         assumption=Assumption(0.25, "the rating's value where it was not tested", FIELD_CYCLING,
                               Spread(0.15, 0.0, False, PRACTICE))),
    Fact("fan_extra_w", "Blower power that the data sheet leaves out", "number", "W", 0, 1500, 0,
         "0 where the sheet's power is that of the whole system, as ratings are.", "equipment",
         spread={"estimated": share(0.3), "measured": share(0.05)},
         assumption=Assumption(0.0, "rated power is that of the whole system", FIELD_CYCLING,
                               Spread(0.0, 80.0, False, PRACTICE))),
    Fact("weather_bins", "Hours by month and temperature, from a weather file", "table",
         where="place",
         how="Drop an hourly file (EPW or TMY3) on this page: it is counted here, on this device.",
         columns=(
             Fact("month", "Month", "number", "", 1, 12, 0, "1 for January."),
             Fact("outdoor_f", "Outdoor temperature", "number", "°F", -80, 140, 0,
                  "Middle of a step of 5 °F."),
             Fact("hours", "Hours", "number", "h", 0, 744, 0, "Hours within that step."),
         ), rows=Rows(12, 400), by_hand=False),
    Fact("weather_place", "Place of the weather file", "text", where="place",
         how="As the file says.", by_hand=False),
    # ---- cooling ----
    Fact("cooling_design_btuh", "Cooling load on the design day", "number", "Btu/h", 500, 120000,
         0, "Sensible and latent together, from the cooling load.", "equipment",
         given=True, spread={"estimated": share(0.25), "data sheet": share(0.15)}),
    Fact("cooling_seer2", "Seasonal cooling rating SEER2", "number", "Btu/Wh", 5, 40, 1,
         "On the rating certificate.", "equipment",
         spread={"data sheet": share(0.10), "estimated": share(0.2)}),
    # ---- money ----
    Fact("installed_usd", "Price of the whole work", "number", "$", 0, 200000, 0,
         "From the offer: equipment, ducts, electrical work, permits.", "fuel",
         spread={"estimated": share(0.15), "data sheet": within(0.0)}),
    Fact("rebate_usd", "Rebates and credits that will come back", "number", "$", 0, 100000, 0,
         "Only what has been confirmed. They end and change.", "fuel",
         spread={"estimated": share(0.3), "data sheet": within(0.0)},
         assumption=Assumption(0.0, "none until one is confirmed", PRACTICE)),
    # ---- how it feels ----
    Fact("hp_low_airflow_cfm", "Airflow of the new blower at its lowest", "number", "cfm", 100,
         3000, 0, "Blower table of the air handler, lowest heating speed.", "equipment",
         spread={"data sheet": share(0.10), "measured": share(0.07), "estimated": share(0.2)}),
    # ---- the seasonal rating ----
    Fact("rating_kind", "Compressor", "choice", where="equipment",
         how="As the rating certificate names it.",
         choices=(Choice("single", "single speed"), Choice("two", "two stages"),
                  Choice("variable", "variable speed"))),
    Fact("rating_cooling_95f_btuh", "Rated cooling capacity at 95 °F", "number", "Btu/h", 5000,
         150000, 0, "On the rating certificate. It sets the rating's load line.", "equipment",
         spread={"data sheet": share(0.02), "estimated": share(0.1)}),
    Fact("rating_points", "Rating test points", "table", where="equipment",
         how="Capacity and power of each test, from the submittal or the rating file.",
         columns=(
             Fact("test", "Test", "choice", how="Speed and outdoor temperature.", choices=TESTS),
             Fact("capacity_btuh", "Heat", "number", "Btu/h", 500, 150000, 0,
                  "Capacity in that test.",
                  spread={"data sheet": share(0.01), "estimated": share(0.1)}),
             Fact("power_w", "Power", "number", "W", 50, 30000, 0, "Power in that test.",
                  spread={"data sheet": share(0.01), "estimated": share(0.1)}),
         ), rows=Rows(2, 9, unique="test")),
    Fact("rating_off_f", "Outdoor temperature at which it turns off", "number", "°F", -60, 55, 0,
         "From the control's setting. Leave it out where it never turns off.", "equipment"),
    Fact("rating_on_f", "Outdoor temperature at which it comes on again", "number", "°F", -60, 60,
         0, "From the control's setting.", "equipment"),
    Fact("defrost_demand", "Defrost on demand", "yesno", where="equipment",
         how="Yes where the control defrosts only when frost is there; no where a clock does.",
         assumption=Assumption(False, "a clock earns no credit: the careful side", PRACTICE)),
    Fact("hspf2_printed", "Printed HSPF2, region IV", "number", "Btu/Wh", 3, 20, 2,
         "On the certificate.", "equipment"),
    # ---- given: year of this home ----
    given("year_kwh", "Electricity for heating in a year", "kWh", 0),
    given("season_cop", "Heat per electricity over the season", "", 2),
    given("season_backup_pct", "Share of the heat that backup gives", "%", 1),
    given("season_backup_kwh", "Electricity of the backup in a year", "kWh", 0),
    given("season_balance_f", "Heating starts below", "°F", 0),
    given("year_heat_mmbtu", "Heat that the rooms take in a year", "MMBtu", 1),
    given("year_fuel_units", "Fuel before, in its unit of sale", "", 0),
    given("year_cost_before_usd", "Heating before", "$/year", 0),
    given("year_cost_after_usd", "Heating after", "$/year", 0),
    given("year_cooling_kwh", "Electricity for cooling in a year", "kWh", 0),
    given("year_co2_before_lb", "Carbon dioxide before", "lb CO2", 0),
    given("year_co2_after_lb", "Carbon dioxide after", "lb CO2", 0),
    given("year_short_mmbtu", "Heat missing in a year", "MMBtu", 2),
    given("year_frost_kwh", "The same with frost by humidity", "kWh", 0),
    given("year_file_kwh", "The same from the weather file", "kWh", 0),
    Fact("year_months", "Month by month", "table", where="results", given=True, enterable=False,
         columns=(
             Fact("month", "Month", "number", "", 1, 12, 0),
             Fact("heat_mmbtu", "Heat", "number", "MMBtu", decimals=1),
             Fact("heat_pump_kwh", "Heat pump", "number", "kWh"),
             Fact("backup_kwh", "Backup", "number", "kWh"),
             Fact("cooling_kwh", "Cooling", "number", "kWh"),
             Fact("before_usd", "Before", "number", "$"),
             Fact("after_usd", "After", "number", "$"),
             Fact("before_co2_lb", "CO2 before", "number", "lb CO2"),
             Fact("after_co2_lb", "CO2 after", "number", "lb CO2"),
         )),
    # ---- given: price tie ----
    given("break_even_cop", "Break-even heat per electricity", "", 2),
    given("fuel_mmbtu_usd", "Heat from the old fuel", "$/MMBtu", 2),
    given("hp_mmbtu_usd", "Heat from the new system", "$/MMBtu", 2),
    given("kit_mmbtu_usd", "Heat from plain electric backup", "$/MMBtu", 2),
    given("tie_electric_usd_kwh", "Electricity price at which both cost the same", "$/kWh", 3),
    given("tie_fuel_usd", "Fuel price at which both cost the same", "$", 2),
    given("payback_years", "Simple payback", "year", 1),
    given("tie_grid_lb_mwh", "Grid at which both emit the same", "lb CO2/MWh", 0),
    # ---- given: how it will feel ----
    given("run_before_h_day", "The old furnace ran, on that day", "h/day", 1),
    given("run_after_h_day", "The heat pump runs, on that day", "h/day", 1),
    given("typical_day_f", "A typical winter day", "°F", 0),
    given("register_before_f", "Air at the old furnace's outlet", "°F", 0),
    given("register_after_f", "Air at the new outlet, on that day", "°F", 0),
    given("register_backup_f", "Air with backup on, at design", "°F", 0),
    given("setback_back_h", "Back from the setback on that day, heat pump alone", "h", 1),
    given("setback_saved_kwh", "What the setback saves in a night, heat pump alone", "kWh", 1),
    given("setback_backup_kwh", "What backup uses if it joins", "kWh", 1),
    given("quieter_db", "Fan quieter than the old one by about", "dB(A)", 0),
    # ---- given: seasonal rating ----
    given("hspf2_worked", "HSPF2 worked again, region IV", "Btu/Wh", 2),
    given("rating_resistance_pct", "Share of the energy that is resistance heat", "%", 1),
)
