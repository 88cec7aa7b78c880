"""Facts about the place where the outdoor unit stands."""

from downflow.facts.definition import (
    Assumption,
    Choice,
    Fact,
    Rows,
    given,
    share,
    within,
)
from downflow.sources import PRACTICE, Source

OUTDOOR_SUPPORT = Source("International Residential Code",
                         "M1403.2: 3 in above grade, for defrost water", "code")
SNOW_HEIGHT = Source("Heat pumps in snow", "bottom above the usual snow, and 3 in", "practice")
CLEARANCES = Source("The outdoor unit's data sheet", "clearances", "label")
SOUND_DISTANCE = Source("Sound of a point source", "half, quarter or eighth of space", "handbook")
QUIET_NIGHT = Source("Sound at a window at night", "45 dB(A) where no local rule says", "practice")
MELT_PATH = Source("Defrost water", "freezes again where it runs", "practice")
MELT_SPREAD = Source("Defrost water on the ground", "spreads over some 20 to 60 ft²", "practice")
ROOF_EDGE = Source("Roof edges", "meltwater and sliding snow on an outdoor unit", "practice")

FACTS: tuple[Fact, ...] = (
    Fact("snow_in", "Usual depth of snow on the ground", "number", "in", 0, 120, 0,
         "What lies there in a usual winter; drifts count. Neighbours know.", "place",
         spread={"estimated": share(0.3), "data sheet": share(0.15)}),
    Fact("unit_base_in", "Bottom of the unit above the ground", "number", "in", 0, 72, 1,
         "Pad and stand together.", "outdoors",
         spread={"measured": within(0.5), "estimated": within(2.0)}),
    Fact("site_clearances", "Clearances of the outdoor unit", "table", where="outdoors",
         how="Each side that the data sheet names, what it asks for and what is there.",
         columns=(
             Fact("id", "Side", "text", how="Such as back, left, service side, above."),
             Fact("need_in", "Asked for", "number", "in", 0, 240, 0, "From the data sheet."),
             Fact("have_in", "There", "number", "in", 0, 2400, 0,
                  "Measured to wall, fence, shrub or roof.",
                  spread={"measured": within(0.5), "estimated": within(3.0)})),
         rows=Rows(1, 8, unique="id")),
    Fact("roof_drip", "Under a roof edge or sliding snow", "yesno", where="outdoors",
         how="Look up: would water or snow from the roof fall on it?"),
    Fact("sound_power_dba", "Sound power", "number", "dB(A)", 30, 100, 0,
         "From the data sheet, top speed; power, not pressure.", "equipment",
         spread={"data sheet": within(2.0), "estimated": within(5.0)}),
    Fact("sound_walls", "Walls beside the unit", "choice", where="outdoors",
         how="What stands within a few feet.",
         choices=(Choice("open", "none: open ground"), Choice("wall", "one wall"),
                  Choice("corner", "two walls: a corner"))),
    Fact("neighbor_ft", "To the neighbour's nearest window", "number", "ft", 1, 1000, 0,
         "From the unit.", "outdoors",
         spread={"measured": share(0.03), "estimated": share(0.25)}),
    Fact("window_ft", "To the home's nearest bedroom window", "number", "ft", 1, 300, 0,
         "From the unit.", "outdoors",
         spread={"measured": share(0.03), "estimated": share(0.25)}),
    Fact("quiet_dba", "Level allowed at night", "number", "dB(A)", 20, 80, 0,
         "The local rule, at the neighbour's window. Ask the town.", "place",
         assumption=Assumption(45.0, "common where no rule is known", QUIET_NIGHT)),
    Fact("melt_way", "Where defrost water runs", "choice", where="outdoors",
         how="Pour a bucket under the unit and watch.",
         choices=(Choice("gravel", "into gravel, away from walks"),
                  Choice("yard", "over the yard, away from walks"),
                  Choice("walk", "toward a walk, step, ramp or parking place"),
                  Choice("home", "under the home"))),
    Fact("melt_area_ft2", "Area that it wets", "number", "ft²", 2, 400, 0,
         "The patch that the bucket wets.", "outdoors", spread={"measured": share(0.15)},
         assumption=Assumption(35.0, "between 20 and 60 ft²", MELT_SPREAD,
                               within(15.0, MELT_SPREAD))),
    Fact("walk_ft", "To the nearest walk, step or door", "number", "ft", 0, 300, 0,
         "From the unit.", "outdoors", spread={"estimated": share(0.25)},
         assumption=Assumption(10.0, "most units stand within 10 ft of a walk", PRACTICE,
                               within(5.0))),
    given("base_height_in", "Height that the unit's bottom needs", "in", 0),
    given("neighbor_dba", "Sound at the neighbour's window", "dB(A)", 0),
    given("window_dba", "Sound at the bedroom window", "dB(A)", 0),
    given("quiet_distance_ft", "Distance at which the level is reached", "ft", 0),
    given("melt_ice_in", "Ice from one wet cold day", "in", 1),
)
