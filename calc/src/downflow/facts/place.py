"""Facts about where the home stands: its climate, its zones, what energy costs there.

Most of them come from the place files, as `estimated`, when a climate station is
chosen. Each can be typed over.
"""

from downflow.facts.definition import Assumption, Choice, Fact, Rows, Spread, given, share, within
from downflow.sources import PRACTICE, Source

TMY3 = Source("Users Manual for TMY3 Data Sets", "NREL/TP-581-43156: one typical year", "data")
TYPICAL_COLD = Source("Cold percentile of a typical year against published 99 % design "
                      "temperatures", "31 stations: 4 °F colder to 9 °F warmer", "data")
TYPICAL_HOT = Source("Warm percentile of a typical year against published 1 % cooling "
                     "conditions", "31 stations: within 2.5 °F dry bulb, 2.6 °F wet bulb", "data")
TYPICAL_YEAR_NORMALS = Source("Degree days of a typical year against weather service normals",
                              "six stations: within 7 %", "data")
SEDS = Source("State Energy Data System, US Energy Information Administration",
              "residential prices, release 2024P", "data")
EGRID = Source("eGRID, US EPA", "subregion total output emission rates", "data")

STATES: dict[str, str] = {
    "AK": "Alaska", "AL": "Alabama", "AR": "Arkansas", "AZ": "Arizona", "CA": "California",
    "CO": "Colorado", "CT": "Connecticut", "DC": "District of Columbia", "DE": "Delaware",
    "FL": "Florida", "GA": "Georgia", "GU": "Guam", "HI": "Hawaii", "IA": "Iowa",
    "ID": "Idaho", "IL": "Illinois", "IN": "Indiana", "KS": "Kansas", "KY": "Kentucky",
    "LA": "Louisiana", "MA": "Massachusetts", "MD": "Maryland", "ME": "Maine",
    "MI": "Michigan", "MN": "Minnesota", "MO": "Missouri", "MS": "Mississippi",
    "MT": "Montana", "NC": "North Carolina", "ND": "North Dakota", "NE": "Nebraska",
    "NH": "New Hampshire", "NJ": "New Jersey", "NM": "New Mexico", "NV": "Nevada",
    "NY": "New York", "OH": "Ohio", "OK": "Oklahoma", "OR": "Oregon", "PA": "Pennsylvania",
    "PR": "Puerto Rico", "RI": "Rhode Island", "SC": "South Carolina", "SD": "South Dakota",
    "TN": "Tennessee", "TX": "Texas", "UT": "Utah", "VA": "Virginia",
    "VI": "U.S. Virgin Islands", "VT": "Vermont", "WA": "Washington", "WI": "Wisconsin",
    "WV": "West Virginia", "WY": "Wyoming",
}  # fmt: skip
"""States, the District and the territories that the place files cover."""

IECC_ZONES = ("1A", "2A", "2B", "3A", "3B", "3C", "4A", "4B", "4C", "5A", "5B", "6A", "6B", "7",
              "8")
BA_ZONES = ("Hot-Humid", "Hot-Dry", "Mixed-Humid", "Mixed-Dry", "Marine", "Cold", "Very Cold",
            "Subarctic")
GRID_SUBREGIONS: dict[str, str] = {
    "AKGD": "Alaska Grid", "AKMS": "Alaska Miscellaneous", "AZNM": "Southwest",
    "CAMX": "California", "ERCT": "Texas", "FRCC": "Florida", "HIMS": "Hawaii Miscellaneous",
    "HIOA": "Oahu", "MROE": "Midwest East", "MROW": "Midwest West", "NEWE": "New England",
    "NWPP": "Northwest", "NYCW": "New York City and Westchester", "NYLI": "Long Island",
    "NYUP": "Upstate New York", "PRMS": "Puerto Rico", "RFCE": "Mid-Atlantic",
    "RFCM": "Michigan", "RFCW": "Ohio Valley", "RMPA": "Rockies", "SPNO": "Kansas and Missouri",
    "SPSO": "Oklahoma and Panhandle", "SRMV": "Lower Mississippi", "SRMW": "Mid-Mississippi",
    "SRSO": "Southeast", "SRTV": "Tennessee Valley", "SRVC": "Virginia and Carolina",
}  # fmt: skip

_YEAR = {"estimated": within(3.0, TMY3)}
_COLD = {"estimated": Spread(4.0, 9.0, False, TYPICAL_COLD)}
_HOT = {"estimated": within(2.5, TYPICAL_HOT)}


_FOR_THE_RECORD = {"cooling_degree_days_65", "tmy_p1_f", "tmy_min_f", "tmy_dewpoint_f",
                   "tmy_mcdb_f", "hours_below_35_h", "hours_below_17_h", "hours_below_5_h"}
"""What a station tells of its winter and summer beyond what any calculator asks."""


def _station(name: str, label: str, low: float, high: float, how: str,
             spread: dict[str, Spread], unit: str = "°F", decimals: int = 0) -> Fact:
    return Fact(name, label, "number", unit, low, high, decimals, how, "place", spread=spread,
                record=name in _FOR_THE_RECORD)


FACTS: tuple[Fact, ...] = (
    Fact("place_name", "Place", "text", how="The town, or the climate station chosen for it.",
         where="place", first=True),
    Fact("postal_code", "Postal code", "text", how="Five digits. It finds the nearest climate "
         "stations, the zones and the power grid.", where="place"),
    Fact("state", "State", "choice", where="place", how="Prices and the federal zone go by state.",
         choices=tuple(Choice(code, name) for code, name in STATES.items())),
    Fact("station_id", "Climate station", "text", where="place",
         how="The number of the station whose climate is used."),
    Fact("elevation_ft", "Elevation of the home", "number", "ft", -300, 14000, 0,
         "From a map or the phone's own altimeter, standing at the home. The air is thinner "
         "up high: airflow, burners and heat pumps all change with it.", "place", first=True,
         spread={"measured": within(50.0), "data sheet": within(50.0),
                 "estimated": within(500.0)}),
    Fact("station_elevation_ft", "Elevation of the climate station", "number", "ft", -300, 14000,
         0, "Filled in with the station. It should not lie far above or below the home.", "place"),
    Fact("station_miles", "Distance to the climate station", "number", "mile", 0, 300, 0,
         "Filled in with the station. Twenty miles can be another winter in the mountains.",
         "place", assumption=Assumption(
             19.0, "half of all postal codes lie within that distance of a station",
             Source("TMY3 stations and postal code areas", "great-circle distances", "data"))),
    Fact("latitude_deg", "Latitude, degrees north", "number", "", -15, 72, 1,
         "From a map; filled in with the place.", "place",
         spread={"estimated": within(0.5)}),

    Fact("monthly_means", "Monthly mean temperatures", "table", where="place",
         how="Twelve monthly means of the outdoor temperature. Filled in with the station, from "
             "one typical year.",
         columns=(
             Fact("month", "Month", "number", "", 1, 12, 0, "1 for January to 12 for December."),
             Fact("mean_f", "Mean temperature", "number", "°F", -60, 110, 1,
                  "Mean of all hours of the month.",
                  spread={"estimated": within(1.5, TYPICAL_YEAR_NORMALS)}),
         ), rows=Rows(12, 12, rising="month")),
    _station("degree_days_65", "Heating degree days, base 65 °F", 0, 22000,
             "Of a usual year, from (highest + lowest) / 2 of each day, as the weather service "
             "counts them.", {"estimated": share(0.07, TYPICAL_YEAR_NORMALS),
                              "data sheet": share(0.02)}, "°F day"),
    _station("cooling_degree_days_65", "Cooling degree days, base 65 °F", 0, 8000,
             "Of a usual year, counted in the same way.",
             {"estimated": share(0.15, TYPICAL_YEAR_NORMALS), "data sheet": share(0.04)},
             "°F day"),
    _station("tmy_p0_4_f", "Cold point of a typical year (99.6 % of hours are warmer)", -70, 80,
             "Filled in with the station. Not a design temperature: the published one lay "
             "between 4 °F colder and 9 °F warmer.", _COLD),
    _station("tmy_p1_f", "Cold point of a typical year (99 % of hours are warmer)", -70, 80,
             "Filled in with the station. It can be 9 °F too warm to design on.",
             {"estimated": Spread(9.0, 8.0, False, TYPICAL_COLD)}),
    _station("tmy_min_f", "Coldest hour of a typical year", -80, 80,
             "Filled in with the station. Real winters have colder hours.", _YEAR),
    _station("tmy_p99_f", "Hot point of a typical year (1 % of hours are hotter)", 40, 125,
             "Filled in with the station.", _HOT),
    _station("tmy_mcwb_f", "Mean wet bulb at the hot point", 30, 90, "Filled in with the station.",
             {"estimated": within(2.6, TYPICAL_HOT)}),
    _station("tmy_dewpoint_f", "Humid point of a typical year: dew point passed in 1 % of hours",
             10, 90, "Filled in with the station. Dry western stations read up to 4 °F low.",
             {"estimated": Spread(1.0, 4.1, False, TYPICAL_HOT)}),
    _station("tmy_mcdb_f", "Mean dry bulb at the humid point", 30, 115,
             "Filled in with the station.", _YEAR),
    _station("daily_range_f", "Daily range in the hottest month", 3, 50,
             "Mean difference between the day's highest and lowest temperature. Filled in with "
             "the station.", {"estimated": within(4.0)}, "°F diff"),
    _station("hours_below_35_h", "Hours a year below 35 °F", 0, 8760,
             "Filled in with the station: hours in which an outdoor coil may frost.",
             {"estimated": share(0.12, TMY3)}, "h"),
    _station("hours_below_17_h", "Hours a year below 17 °F", 0, 8760,
             "Filled in with the station.", {"estimated": share(0.3, TMY3)}, "h"),
    _station("hours_below_5_h", "Hours a year below 5 °F", 0, 8760,
             "Filled in with the station.", {"estimated": share(0.5, TMY3)}, "h"),

    Fact("iecc_zone", "Climate zone of the energy code", "choice", where="place",
         how="By county, in the edition of the energy code in force. The 2021 edition moved "
             "several hundred counties: the code official knows.",
         choices=tuple(Choice(z, z) for z in IECC_ZONES)),
    Fact("ba_zone", "Climate region of the DOE", "choice", where="place",
         how="Filled in with the place.", choices=tuple(Choice(z, z) for z in BA_ZONES)),
    Fact("doe_zone", "Zone of the DOE rule for manufactured homes", "choice", where="place",
         how="By state, from 10 CFR 460.101. It speaks of homes built under that rule. The data "
             "plate shows the HUD zone, which is another one.",
         choices=tuple(Choice(z, f"Zone {z}") for z in ("1", "2", "3"))),
    Fact("grid_subregion", "Power grid subregion", "choice", where="place",
         how="Filled in with the postal code.",
         choices=tuple(Choice(k, f"{k}, {name}") for k, name in GRID_SUBREGIONS.items())),
    Fact("grid_co2_lb_mwh", "Carbon dioxide of the grid's power", "number", "lb CO2/MWh", 0, 3000,
         0, "Average at the power plants, without line losses. Filled in with the postal code.",
         "place", spread={"estimated": share(0.10, EGRID)}),

    Fact("electricity_usd_kwh", "Price of electricity", "number", "$/kWh", 0.01, 2, 4,
         "The energy charge on the bill, without the fixed charge: what one more kilowatt-hour "
         "costs. The state's average has the fixed charge in it.", "fuel",
         spread={"estimated": share(0.20), "data sheet": share(0.02),
                 "measured": share(0.02)}),
    Fact("gas_usd_therm", "Price of natural gas", "number", "$/therm", 0.1, 10, 3,
         "From the bill, without the fixed charge.", "fuel",
         spread={"estimated": share(0.25), "data sheet": share(0.02), "measured": share(0.02)}),
    Fact("propane_usd_gal", "Price of propane", "number", "$/gal", 0.2, 12, 3,
         "From the last delivery ticket. In the west the state's average is itself an estimate.",
         "fuel",
         spread={"estimated": share(0.25), "data sheet": share(0.02), "measured": share(0.02)}),
    Fact("oil_usd_gal", "Price of heating oil", "number", "$/gal", 0.2, 15, 3,
         "From the last delivery ticket.", "fuel",
         spread={"estimated": share(0.25), "data sheet": share(0.02), "measured": share(0.02)}),
    Fact("price_year", "Year of the prices", "number", "year", 1990, 2100, 0,
         "The year that the prices above are from. Older than two years: ask again.", "fuel"),

    given("months_degree_days_65", "Degree days from the monthly means", "°F day", 0),
    given("design_cooling_f", "Outdoor design temperature, cooling", "°F", 0, enterable=True,
          low=40, high=125, how="The local code's summer design temperature.",
          spread={"data sheet": within(0.0), "estimated": within(2.5, TYPICAL_HOT),
                  "measured": within(3.0, PRACTICE)}),
    given("design_cooling_wb_f", "Outdoor wet bulb at the cooling design", "°F", 0,
          enterable=True, low=30, high=90,
          how="The mean wet bulb that goes with the summer design temperature.",
          spread={"data sheet": within(0.0), "estimated": within(2.6, TYPICAL_HOT),
                  "measured": within(3.0, PRACTICE)}),
)
