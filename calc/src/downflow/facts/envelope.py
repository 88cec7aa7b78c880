"""Facts about the shell: size, insulation, windows, air leaks, summer, and the roads to UA."""

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

WIDTH_BY_SECTIONS = Source("Usual widths of manufactured homes", "14 to 16 ft a section",
                           "practice")
WINDOW_SHARE = Source("Window area of manufactured homes", "9 to 15 % of the floor", "practice")
ENVELOPE_BY_DATE = Source("Typical insulation by date of construction", "three eras", "memory")
LAYERS = Source("Fundamentals handbook 2021, ch. 26 and 27",
                "films and layers; rows from memory where the table says so", "handbook")
PARALLEL_PATH = Source("Fundamentals handbook 2021, ch. 27", "example 3, parallel path",
                       "handbook")
HUD_FRAMING = Source("24 CFR 3280", "3280.509(b): framing 15 % of wall, 10 % of floor and ceiling",
                     "regulation")
HUD_COMPRESSED = Source("24 CFR 3280", "3280.509(c): compressed insulation", "regulation")
HUD_SHORTS = Source("24 CFR 3280", "3280.508(c): thermal shorts above 1 %", "regulation")
HUD_UO = Source("24 CFR 3280", "3280.506(b): overall U by zone", "regulation")
HUD_INFILTRATION = Source("24 CFR 3280", "3280.509(a): 0.7 Btu/(h ft °F) of perimeter",
                          "regulation")
HUD_CERTIFICATE = Source("24 CFR 3280", "3280.510: heating certificate", "regulation")
GLAZING = Source("Fundamentals handbook 2021, ch. 17", "table 2: windows", "handbook")
BUFFER_SPACE = Source("Fundamentals handbook 2021, ch. 17", "eq. 5: buffer space", "handbook")
DESIGN_LEAKS = Source("Fundamentals handbook 2021, ch. 17", "eqs. 8 and 10: leakage at design",
                      "handbook")
LEAKAGE_AREA = Source("Fundamentals handbook 2021, ch. 16", "effective leakage area at 4 Pa",
                      "handbook")
BASIC_LEAKS = Source("EnergyPlus Input Output Reference",
                     "effective leakage area: the basic infiltration model", "handbook")
COMBINED_AIR = Source("Fundamentals handbook 2021, ch. 17", "eqs. 12 to 14: fans and leaks",
                      "handbook")
LEAK_MODEL = Source("Infiltration models against tracer gas",
                    "about 25 % for one home on one day", "practice")
DUCT_STUDY = Source("Duct retrofits in eight manufactured homes, OSTI 20006305",
                    "69 % before, 83 % after sealing", "study")
ROOMS_BY_VOLUME = Source("Fundamentals handbook 2021, ch. 17", "infiltration to rooms by volume",
                         "handbook")
QUICK_SPLIT = Source("Quick split by floor area and outside wall", "", "practice")
RLF = Source("Fundamentals handbook 2021, ch. 17", "residential load factor method", "handbook")
RLF_ACCURACY = Source("Residential load factor method against heat balance", "about 15 %",
                      "practice")
DEGREE_DAY_FIT = Source("Fundamentals handbook 2021, ch. 19", "variable-base degree days",
                        "handbook")
FUEL_HEAT = Source("40 CFR 98", "subpart C table C-1 and subpart NN table NN-1", "regulation")
FIT_ENOUGH = Source("Measurement and verification", "R² of 0.80, six heating periods", "practice")
NIGHT_BALANCE = Source("Steady energy balance", "one dark, steady night", "definition")
SURVEY_HIDDEN = Source("Surveys against measured loss", "gaps and wet insulation, about 8 %",
                       "practice")
UNCERTAINTY = Source("JCGM 100, Guide to the expression of uncertainty in measurement",
                     "independent values; coverage factor 2", "standard")

WEATHER_OUTLET = Hazard(
    "warning", "Live wires in the box. Switch the circuit off and prove it dead before the cover "
    "plate comes off.", "Anyone who can prove a circuit dead")
CRAWL = Hazard(
    "caution", "Sharp metal, animals, loose wires and wet ground under the home. Gloves, light, "
    "knee pads, respirator; someone outside knows that you are under it.")
BLOWER_DOOR = Hazard(
    "warning", "A blower door can pull a burner's exhaust into the home. Turn every fuel appliance "
    "off, water heater too, and turn it on again after the test.", "Trained in the test")

_SEEN = {"measured": share(0.08), "data sheet": share(0.08), "estimated": share(0.25)}
_U = {"data sheet": share(0.05), "measured": share(0.10), "estimated": share(0.20)}
_HOW_U = "From the maker's U-value sheet or a load report, framing included."

WINDOW_KINDS: dict[str, str] = {
    "single clear, metal": "single pane, metal frame",
    "double clear, metal": "double pane or pane with storm, metal frame",
    "single clear, vinyl or wood": "single pane, vinyl or wood frame",
    "double clear, vinyl or wood": "double pane, vinyl or wood frame",
    "double low-e, low solar gain, vinyl or wood": "double pane, low-e coating",
    "triple clear, vinyl or wood": "triple pane",
}

FACTS: tuple[Fact, ...] = (
    # ---- size ----
    Fact("home_width_ft", "Outside width of the home", "number", "ft", 8, 60, 1,
         "All sections together, siding to siding.", "outdoors",
         spread={"measured": within(0.2), "estimated": within(1.0)}),
    Fact("ceiling_height_ft", "Ceiling height", "number", "ft", 6, 12, 1,
         "Mean height; a sloped ceiling half way.", "rooms",
         spread={"measured": within(0.1), "estimated": within(0.4)},
         assumption=Assumption(7.5, "older homes have 7 to 8 ft", PRACTICE, within(0.5))),
    given("home_perimeter_ft", "Outside perimeter", "ft", 0, enterable=True, low=60, high=600,
          how="Walk around it with a tape.",
          spread={"measured": share(0.01), "estimated": share(0.05)}),
    given("window_area_ft2", "Windows and glazed doors", "ft²", 0, enterable=True, low=0, high=900,
          how="Width times height of each opening, frames included.",
          spread={"measured": share(0.04), "estimated": share(0.20)}),
    given("door_area_ft2", "Outside doors", "ft²", 0, enterable=True, low=0, high=200,
          how="Width times height of each; glazed doors count as windows.",
          spread={"measured": share(0.04), "estimated": share(0.20)}),
    given("wall_area_ft2", "Outside wall without its openings", "ft²", 0),
    # ---- insulation ----
    Fact("wall_insulation_r", "Wall insulation, printed R", "number", "h ft² °F/Btu", 0, 40, 0,
         "Printed on the batt's facing: look beside an outlet box on an outside wall, power off. "
         "0 for an empty wall.", "rooms", hazard=WEATHER_OUTLET, spread=_SEEN),
    Fact("wall_stud_in", "Depth of the wall's studs", "number", "in", 1.5, 8, 1,
         "1.5 for 2×2, 2.5 for 2×3, 3.5 for 2×4, 5.5 for 2×6.", "rooms",
         assumption=Assumption(3.5, "2×4 studs are the rule since 1976", PRACTICE)),
    Fact("wall_batt_in", "Thickness at which the wall batt has its printed R", "number", "in", 1,
         12, 2, "Only where the batt is squeezed: 3.5 for R-11 to R-15, 6.25 for R-19.", "rooms"),
    Fact("ceiling_insulation_r", "Ceiling insulation, R in the open field", "number",
         "h ft² °F/Btu", 0, 70, 0,
         "Depth by stick through a vent or fixture times R per inch: 2.5 loose glass, 3.2 batt, "
         "3.6 cellulose.", "rooms", spread=_SEEN),
    Fact("ceiling_insulation_in", "Depth of the ceiling insulation in the field", "number", "in",
         0.5, 24, 1, "By stick.", "rooms"),
    Fact("ceiling_eave_in", "Depth left at the eaves", "number", "in", 0, 24, 1,
         "Under a bowed truss the roof leaves little: look through an eave vent.", "outdoors"),
    Fact("ceiling_fill", "Ceiling insulation is", "choice", where="rooms",
         how="Loose fill was blown in; batts lie in lengths.",
         choices=(Choice("nonuniform_blown", "blown in"), Choice("nonuniform_batt", "batts"))),
    Fact("floor_insulation_r", "Floor insulation, printed R", "number", "h ft² °F/Btu", 0, 50, 0,
         "Blanket under the joists, or batts between them: look where the belly is open.", "crawl",
         hazard=CRAWL, spread=_SEEN),
    Fact("belly_open_pct", "Share of the belly that is open or bare", "number", "%", 0, 100, 0,
         "Torn belly, fallen or wet insulation: area without insulation over the whole floor.",
         "crawl", hazard=CRAWL, spread={"measured": within(1.0), "estimated": within(4.0)},
         assumption=Assumption(3.0, "most bellies have been opened somewhere", PRACTICE,
                               within(3.0))),
    Fact("skirting", "Crawl space", "choice", where="outdoors",
         how="Walk around: open vents, closed skirting, or closed with insulation on it.",
         choices=(Choice("vented", "open, or skirting with open vents"),
                  Choice("closed", "closed skirting, not insulated"),
                  Choice("insulated", "closed and insulated skirting")),
         assumption=Assumption("vented", "vented skirting is the rule", PRACTICE)),
    Fact("skirt_height_ft", "Height of the crawl space", "number", "ft", 0.5, 10, 1,
         "Ground to the underside of the belly, mean.", "outdoors",
         spread={"measured": within(0.2), "estimated": within(0.7)},
         assumption=Assumption(2.5, "usual for piers on level ground", PRACTICE, within(1.0))),
    Fact("window_kind", "Windows", "choice", where="rooms",
         how="Look at the edge of the pane: one, two or three; feel the frame. A storm window "
             "counts as a second pane.",
         choices=tuple(Choice(k, label) for k, label in WINDOW_KINDS.items())),
    Fact("uo_zone", "Thermal zone on the data plate", "choice", where="plate",
         how="The Uo zone on the heating certificate or data plate.", first=True,
         choices=(Choice("1", "zone 1"), Choice("2", "zone 2"), Choice("3", "zone 3"))),
    Fact("certificate_f", "Outdoor temperature on the heating certificate", "number", "°F", -60, 60,
         0, "The lowest at which the factory furnace holds 70 °F.", "plate"),
    Fact("certificate_output_btuh", "Output of the factory furnace", "number", "Btu/h", 5000,
         250000, 0, "On its plate, when it is still the one named on the certificate.", "plate"),
    given("wall_u_btuh_ft2_f", "U of the walls", "Btu/(h ft² °F)", 3, enterable=True, low=0.01,
          high=0.6, how=_HOW_U, spread=_U),
    given("ceiling_u_btuh_ft2_f", "U of the ceiling", "Btu/(h ft² °F)", 3, enterable=True, low=0.01,
          high=0.6, how=_HOW_U, spread=_U),
    given("floor_u_btuh_ft2_f", "U of the floor", "Btu/(h ft² °F)", 3, enterable=True, low=0.01,
          high=0.6, how=_HOW_U, spread=_U),
    given("window_u_btuh_ft2_f", "U of the windows", "Btu/(h ft² °F)", 2, enterable=True, low=0.1,
          high=1.5, how="From the window's label; the whole window, frame included.", spread=_U),
    given("door_u_btuh_ft2_f", "U of the doors", "Btu/(h ft² °F)", 2, enterable=True, low=0.05,
          high=1.0, how="From a label or the maker's sheet.", spread=_U),
    # ---- air leaks ----
    Fact("blower_door_cfm50", "Blower door reading", "number", "cfm", 100, 8000, 0,
         "Flow at 50 Pa, all outside openings shut, furnace vent sealed if it will go.", "rooms",
         hazard=BLOWER_DOOR,
         spread={"measured": share(0.05), "data sheet": share(0.10), "estimated": share(0.30)}),
    Fact("leak_exponent", "Exponent of the leaks", "number", "", 0.5, 1, 2,
         "From a test at several pressures.", "rooms", spread={"measured": within(0.02)},
         assumption=Assumption(0.65, "homes lie between 0.6 and 0.7", LEAKAGE_AREA, within(0.05))),
    Fact("natural_ach", "Air changes of the closed home", "number", "1/h", 0.05, 3, 2,
         "From a tracer test or a report, winter design conditions.", "rooms",
         spread={"measured": share(0.15), "data sheet": share(0.25), "estimated": share(0.40)}),
    Fact("wind_shelter", "What stands around the home", "choice", where="outdoors",
         how="Look around: what breaks the wind within a few house-lengths.",
         choices=(Choice("1", "nothing"), Choice("2", "a rural place, few trees"),
                  Choice("3", "buildings or trees across the street"),
                  Choice("4", "a town, larger lots"), Choice("5", "close neighbours")),
         assumption=Assumption("3", "a home park or a small town", PRACTICE)),
    Fact("exhaust_fan_cfm", "Fan that always runs and only blows out", "number", "cfm", 0, 400, 0,
         "Whole-house ventilation by exhaust. 0 where fans run now and then.", "rooms",
         spread={"measured": share(0.10), "data sheet": share(0.20), "estimated": share(0.30)},
         assumption=Assumption(0.0, "most older homes have no fan that always runs", PRACTICE)),
    given("infiltration_ua_btuh_f", "Air leaks, heat per degree", "Btu/(h °F)", 0, enterable=True,
          low=0, high=1000, how="From a load report.",
          spread={"data sheet": share(0.15), "estimated": share(0.35)}),
    given("infiltration_cfm", "Outdoor air on the design night", "cfm", 0),
    given("infiltration_cooling_cfm", "Outdoor air on the design afternoon", "cfm", 0),
    given("infiltration_second_cfm", "Outdoor air by the basic model", "cfm", 0),
    given("leakage_area_in2", "Leaks as one hole", "in²", 0),
    given("air_changes_50", "Air changes at 50 Pa", "1/h", 1),
    # ---- the survey's road ----
    Fact("duct_state", "Ducts", "choice", where="crawl",
         how="As found, or after boots, seams, ends and crossover were sealed.",
         choices=(Choice("as found", "as found"), Choice("sealed", "sealed")),
         assumption=Assumption("as found", "nothing is credited that was not done", PRACTICE)),
    given("survey_ua_btuh_f", "Heat loss per degree, from the survey", "Btu/(h °F)", 0),
    given("survey_sigma_btuh_f", "Doubt of the survey's road", "Btu/(h °F)", 0),
    given("survey_load_btuh", "Loss at design, from the survey", "Btu/h", 0),
    given("equipment_before_btuh", "Equipment must make, ducts as found", "Btu/h", 0),
    given("equipment_after_btuh", "Equipment must make, ducts as they are now", "Btu/h", 0),
    given("uo_btuh_ft2_f", "Overall U of the shell", "Btu/(h ft² °F)", 3),
    given("floor_u_outdoors_btuh_ft2_f", "U of the floor against outdoors", "Btu/(h ft² °F)", 3),
    given("largest_part_pct", "Share of the largest part", "%", 0),
    Fact("survey_parts", "Loss part by part", "table", where="results", given=True,
         enterable=False, how="Worked out.",
         columns=(Fact("part", "Part", "text"),
                  Fact("area_ft2", "Area", "number", "ft²", optional=True),
                  Fact("u_btuh_ft2_f", "U", "number", "Btu/(h ft² °F)", decimals=3, optional=True),
                  Fact("ua_btuh_f", "Loss per degree", "number", "Btu/(h °F)", decimals=0),
                  Fact("load_btuh", "Loss at design", "number", "Btu/h"),
                  Fact("share_pct", "Share", "number", "%")), rows=Rows(1, 12)),
    given("room_largest_btuh", "Largest room's loss at design", "Btu/h", 0),
    given("room_largest_share_pct", "Its share of the home", "%", 0),
    # ---- summer ----
    Fact("indoor_cooling_f", "Indoor temperature to hold in summer", "number", "°F", 65, 85, 0,
         "75 °F unless the owner asks for less.", "comfort",
         assumption=Assumption(75.0, "usual design temperature", RLF)),
    Fact("bedrooms", "Bedrooms", "number", "", 1, 8, 0, "Count them; people are bedrooms plus one.",
         "rooms", spread={"estimated": within(1.0)},
         assumption=Assumption(3.0, "usual for this size", PRACTICE, within(1.0))),
    Fact("roof_kind", "Roof", "choice", where="outdoors", how="Material and colour.",
         choices=tuple(Choice(k, k) for k in (
             "asphalt shingles, light", "asphalt shingles, medium", "asphalt shingles, dark",
             "metal, white", "metal, light", "metal, medium", "metal, dark",
             "elastomeric coating, white")),
         assumption=Assumption("asphalt shingles, medium", "the commonest roof", PRACTICE)),
    Fact("roof_form", "Over the ceiling is", "choice", where="outdoors",
         how="A vented space, or a roof that sits right on the ceiling.",
         choices=(Choice("ceiling under vented attic", "a vented roof space"),
                  Choice("roof-ceiling without attic", "no vented space")),
         assumption=Assumption("ceiling under vented attic", "the rule in these homes",
                               PRACTICE)),
    Fact("interior_shade", "Shades inside the windows", "choice", where="rooms",
         how="What hangs there and is half closed on a hot afternoon.",
         choices=(Choice("none", "none"), Choice("drapes, closed weave, light", "light drapes"),
                  Choice("blinds, white", "white blinds"), Choice("blinds, medium", "blinds")),
         assumption=Assumption("blinds, medium", "four of five windows have a shade", RLF)),
    Fact("windows_by_side", "Windows by side of the home", "table", where="rooms",
         how="Area on each side, with the overhang above it. Leave it out to spread them evenly.",
         columns=(
             Fact("side", "Faces", "choice", how="By compass.", choices=tuple(
                 Choice(k, label) for k, label in (
                     ("N", "north"), ("NE", "northeast"), ("E", "east"), ("SE", "southeast"),
                     ("S", "south"), ("SW", "southwest"), ("W", "west"), ("NW", "northwest")))),
             Fact("area_ft2", "Area", "number", "ft²", 0, 500, 0, "Frames included.",
                  spread={"measured": share(0.05), "estimated": share(0.2)}),
             Fact("overhang_ft", "Depth of overhang", "number", "ft", 0, 12, 1,
                  "Out from the glass; 0 for none.", optional=True),
             Fact("height_ft", "Height of the windows", "number", "ft", 1, 8, 1,
                  "Mean height of the glass.", optional=True)),
         rows=Rows(1, 8, unique="side")),
    given("cooling_sensible_btuh", "Cooling load, sensible", "Btu/h", 0),
    given("cooling_latent_btuh", "Cooling load, latent", "Btu/h", 0),
    given("cooling_sensible_share", "Sensible share of the cooling load", "", 2),
    # ---- the bills' road ----
    Fact("fuel_periods", "Fuel used by period", "table", where="fuel",
         how="Meter readings, or fills to the same mark. Twelve months with a summer among them "
             "tell most. Give the month, or the period's own degree days if you have them.",
         columns=(
             Fact("days", "Days", "number", "day", 5, 200, 0, "From reading to reading."),
             Fact("units", "Used", "number", "", 0, 20000, 1,
                  "Gallons, therms or kilowatt-hours, as the bill counts.",
                  spread={"data sheet": share(0.01), "measured": share(0.02),
                          "estimated": share(0.08)}),
             Fact("month", "Month", "number", "", 1, 12, 0,
                  "1 for January: the month that most of it lies in.", optional=True),
             Fact("degree_days_65", "Degree days, base 65 °F", "number", "°F day", 0, 3000, 0,
                  "Of this very period, from the weather service. Better than the month.",
                  optional=True, spread={"data sheet": share(0.02), "estimated": share(0.08)})),
         rows=Rows(4, 36)),
    Fact("other_heat", "Other heat in those periods", "choice", where="fuel",
         how="Ask: wood, space heaters, an oven left open.",
         choices=(Choice("none", "none"), Choice("some", "some"), Choice("much", "much"))),
    given("bills_ua_btuh_f", "Heat loss per degree, from the bills", "Btu/(h °F)", 0),
    given("bills_ua_furnace_btuh_f", "The same at the furnace, ducts in it", "Btu/(h °F)", 0),
    given("bills_sigma_btuh_f", "Doubt of the bills' road", "Btu/(h °F)", 0),
    given("bills_base_f", "Outdoor temperature at which heating starts", "°F", 0),
    given("bills_base_use", "Used every day whatever the weather", "", 2),
    given("bills_r2", "How straight the line is (R²)", "", 3),
    # ---- the night's road ----
    Fact("burner_minutes", "Burner on", "number", "min", 1, 1440, 0,
         "Add up its minutes over the period: a running-time meter, or a listener with a watch.",
         "readings", spread={"measured": share(0.02), "estimated": share(0.10)}),
    Fact("night_minutes", "Length of the period", "number", "min", 60, 1440, 0,
         "Four dark hours at least, thermostat steady.", "readings"),
    Fact("night_indoor_f", "Indoors in that period", "number", "°F", 45, 85, 1,
         "Mean at the thermostat.", "readings", spread={"measured": within(0.7),
                                                        "estimated": within(1.5)}),
    Fact("night_outdoor_f", "Outdoors in that period", "number", "°F", -60, 60, 1,
         "Mean of the same hours, in the shade, or from the nearest station.", "readings",
         spread={"measured": within(1.0), "estimated": within(3.0)}),
    given("night_ua_btuh_f", "Heat loss per degree, from one night", "Btu/(h °F)", 0),
    given("night_ua_furnace_btuh_f", "The same at the furnace, ducts in it", "Btu/(h °F)", 0),
    given("night_sigma_btuh_f", "Doubt of the night's road", "Btu/(h °F)", 0),
    # ---- together ----
    given("roads_sigma_btuh_f", "Doubt of the roads together", "Btu/(h °F)", 0),
)
