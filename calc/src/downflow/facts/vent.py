"""Facts about closing what the old furnace leaves: vent, roof jack, openings, fuel line."""

from downflow.facts.definition import (
    Assumption,
    Choice,
    Fact,
    Hazard,
    given,
    within,
)
from downflow.sources import Source

STACK = Source("Fundamentals handbook 2021, ch. 16", "stack flow through an opening",
               "handbook")
OPENING = Source("Discharge of an opening", "0.60 to 0.70", "handbook")
VENT_OUT = Source("24 CFR 3280", "3280.710: fuel vents; a vent that serves nothing comes out",
                  "regulation")
ROOF_PATCH = Source("Roof patches in manufactured homes", "deck, air seal, insulation, flashing",
                    "practice")
COMBUSTION = Source("24 CFR 3280", "3280.709(d): the old furnace's own air openings",
                    "regulation")
CAPPED = Source("International Fuel Gas Code", "404.12: outlets capped gastight", "code")
SHARED_VENT = Source("Vents that lose one appliance", "resized for what stays", "practice")
ALARMS = Source("Local code and makers of alarms", "carbon monoxide alarm where fuel burns",
                "practice")
INDOOR_WINTER = Source("Indoor humidity in cold winters", "25 to 45 %", "practice")
OUTDOOR_WINTER = Source("Outdoor humidity in winter", "65 to 85 %", "practice")
ASBESTOS = Source("Old vent pipe and furnace closets", "asbestos before about 1980", "memory")

GAS_LINE = Hazard(
    "danger",
    "Gas explodes and burns. A closed valve is no cap. A licensed gas person closes, caps and "
    "tests; smell it, and everyone goes out and calls from outside.",
    "Licensed gas fitter or fuel supplier")
OLD_VENT = Hazard(
    "warning",
    "Old vent pipe and closet board may hold asbestos. Do not cut, sand or break what has not been "
    "sampled. On the roof: ladder tied, boards to walk on, fall protection.")

FACTS: tuple[Fact, ...] = (
    Fact("vent_in", "Diameter of the old vent", "number", "in", 2, 16, 1,
         "Inside, at the roof jack.", "closet",
         spread={"measured": within(0.25), "estimated": within(1.0)}),
    Fact("vent_rise_ft", "Height from floor to the vent's top", "number", "ft", 5, 30, 1,
         "Air comes in low and leaves at the top.", "outdoors",
         spread={"measured": within(0.5), "estimated": within(2.0)}),
    Fact("vent_state", "The old vent is", "choice", where="closet", hazard=OLD_VENT,
         how="Look from the closet and from the roof.",
         choices=(Choice("open", "open"), Choice("stuffed", "stuffed or taped"),
                  Choice("capped", "capped outside, the pipe still in"),
                  Choice("gone", "out: deck, air seal, insulation and flashing done"))),
    Fact("vent_shared", "Something else used the same vent", "choice", where="closet",
         how="Often the water heater.",
         choices=(Choice("no", "no"), Choice("resized", "yes, and it was resized for what stays"),
                  Choice("yes", "yes, nothing done"))),
    Fact("furnace_air_openings", "The old furnace's air openings", "choice", where="closet",
         how="Floor, door and roof of the closet: where the old burner took its air.",
         choices=(Choice("closed", "closed, sealed and insulated"),
                  Choice("none", "there were none"),
                  Choice("floor", "open to the crawl space"), Choice("roof", "open to the roof"))),
    Fact("indoor_winter_rh_pct", "Indoor humidity in cold weather", "number", "%", 5, 80, 0,
         "A few readings in winter.", "comfort",
         spread={"measured": within(3.0), "estimated": within(8.0)},
         assumption=Assumption(35.0, "25 to 45 % in cold winters", INDOOR_WINTER,
                               within(8.0, INDOOR_WINTER))),
    Fact("outdoor_winter_rh_pct", "Outdoor humidity in winter", "number", "%", 10, 100, 0,
         "Cold air holds little water: this hardly matters.", "place",
         spread={"estimated": within(10.0)},
         assumption=Assumption(75.0, "65 to 85 %", OUTDOOR_WINTER, within(10.0, OUTDOOR_WINTER))),
    Fact("vent_discharge", "Discharge coefficient of the vent", "number", "", 0.3, 0.9, 2,
         "0.65 for a short open pipe; less with bends and a cap.", "closet",
         assumption=Assumption(0.65, "a short open pipe", OPENING, within(0.05, OPENING))),
    given("open_vent_cfm", "Air through an open vent, design night", "cfm", 0),
    given("open_vent_btuh", "Heat through an open vent, design night", "Btu/h", 0),
    given("open_vent_mmbtu", "Heat through an open vent in a season", "MMBtu", 1),
    given("open_vent_usd", "Cost of an open vent in a season", "$/year", 0),
    given("open_vent_gal_day", "Water through an open vent, design day", "gal/day", 1),
)
