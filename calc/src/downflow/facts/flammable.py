"""Facts about a mildly flammable refrigerant: the charge, the rooms, the closet's openings."""

from downflow.facts.definition import Choice, Fact, given, share, within
from downflow.sources import Source

ROOM_CHARGE = Source("IEC 60335-2-40:2018", "annex GG: charge and room area, two legs",
                     "standard")
MIXED_CHARGE = Source("Public instructions to UL 60335-2-40",
                      "charge spread by the blower: half of the limit, height to 2.2 m",
                      "label")
STRICT_MIXING = Source("Stricter text of the same rule", "a quarter of the limit", "memory")
LOUVERS = Source("Public instructions to IEC 60335-2-40",
                 "two openings that make one room of two", "label")
FLAMMABILITY = Source("IEC 60335-2-40 and ASHRAE 34",
                      "lower flammability limits, the lower of both", "standard")
ROOM_LABEL = Source("The unit's room-area label and manual", "", "label")
TECHNOLOGY_RULE = Source("40 CFR 84.54", "(c)(1): split systems with a GWP of 700 or more",
                         "regulation")
NEW_ONLY = Source("40 CFR 82 subpart G", "appendix W: only in new equipment made for it",
                  "regulation")

FACTS: tuple[Fact, ...] = (
    Fact("closet_floor_ft2", "Floor of the closet", "number", "ft²", 3, 120, 1,
         "Width times depth inside, the cabinet not taken off.", "closet",
         spread={"measured": share(0.03), "estimated": share(0.15)}),
    Fact("closet_openings", "How the closet opens to the room beside it", "choice",
         where="closet", how="Look at door and wall. What can be shut does not count.",
         choices=(Choice("low and high", "openings that cannot be shut, low and high"),
                  Choice("middle", "louvers at middle height, or only low or only high"),
                  Choice("none", "a solid door"))),
    Fact("room_beside_ft2", "Floor of the room beside it", "number", "ft²", 20, 1500, 0,
         "The room that the openings lead to, up to its doors.", "rooms",
         spread={"measured": share(0.03), "estimated": share(0.10)}),
    Fact("louver_edge_in", "Lower edge of the lowest opening", "number", "in", 0, 90, 1,
         "Above the closet floor.", "closet", spread={"measured": within(0.25)}),
    Fact("louver_foot_in2", "Free area below 8 in", "number", "in²", 0, 1500, 0,
         "Free area, not face: from the grille's sheet. Only what lies lower than 8 in.",
         "closet", spread={"measured": share(0.10), "estimated": share(0.25)}),
    Fact("louver_low_in2", "Free area below 12 in", "number", "in²", 0, 1500, 0,
         "The same, with what lies between 8 and 12 in.", "closet",
         spread={"measured": share(0.10), "estimated": share(0.25)}),
    Fact("louver_high_in2", "Free area at 5 ft and higher", "number", "in²", 0, 1500, 0,
         "The upper opening.", "closet",
         spread={"measured": share(0.10), "estimated": share(0.25)}),
    Fact("louver_need_in2", "Area that the manual asks for below 12 in", "number", "in²", 1, 1500,
         0, "In the manual's clause on openings between two rooms, for this charge. Leave it empty "
         "if the manual has none.", "equipment"),
    Fact("supply_outlets", "Where the supply air comes out", "choice", where="rooms",
         how="The lowest opening of the duct into a room counts.",
         choices=(Choice("floor", "floor registers"), Choice("wall", "high on the wall"),
                  Choice("ceiling", "ceiling"))),
    Fact("leak_detector", "Refrigerant detector at the coil", "choice", where="equipment",
         how="Factory detector that starts the blower and stops the compressor. Look on the "
             "wiring diagram.",
         choices=(Choice("factory", "factory fitted"), Choice("none", "none"),
                  Choice("unknown", "not known yet"))),
    Fact("leak_airflow_cfm", "Airflow when the detector starts the blower", "number", "cfm", 50,
         3000, 0, "From the manual: blower speed at a leak.", "equipment",
         spread={"data sheet": share(0.10), "estimated": share(0.2)}),
    Fact("label_room_ft2_lb", "Label: room for each pound", "number", "ft²/lb", 1, 100, 2,
         "Smallest room for the charge, from the unit's own label or manual.",
         "equipment"),
    Fact("label_total_ft2_lb", "Label: served floor for each pound", "number", "ft²/lb", 1, 200, 2,
         "Floor of all rooms that the ducts serve, for the charge, from the label or manual.",
         "equipment"),
    Fact("label_cfm_lb", "Label: airflow for each pound", "number", "cfm/lb", 1, 300, 1,
         "Least airflow at a leak for the charge, from the label or manual.", "equipment"),
    Fact("flame_near", "A flame or glowing surface in the same space or ducts", "yesno",
         where="rooms", how="Pilot, burner, glowing element: in the closet, beside it, or where "
                            "the ducts carry a leak."),
    given("leak_room_ft2", "Least room without detector", "ft²", 0),
    given("leak_free_lb", "Charge without a room limit", "lb", 2),
    given("leak_counted_ft2", "Room that counts at the closet", "ft²", 0),
    given("leak_holds_lb", "Charge that this room may hold without detector", "lb", 2),
    given("leak_served_ft2", "Served floor needed with detector and blower", "ft²", 0),
    given("leak_mixed_pct", "Whole charge mixed in the home, share of the flammable limit",
          "%", 0),
    given("leak_label_room_ft2", "Room that the label asks for", "ft²", 0),
    given("leak_label_total_ft2", "Served floor that the label asks for", "ft²", 0),
    given("leak_label_cfm", "Airflow that the label asks for", "cfm", 0),
)
