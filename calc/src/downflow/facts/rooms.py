"""Rooms: one table that loads, registers and the way back all point to by its `id`."""

from downflow.facts.definition import Fact, Rows, share, within

FACTS: tuple[Fact, ...] = (
    Fact("rooms", "Rooms", "table", where="rooms",
         how="Every room with a register or a door, in the order in which you walk through.",
         columns=(
             Fact("id", "Room", "text", "", how="A short name that does not change."),
             Fact("floor_area_ft2", "Floor area", "number", "ft²", 10, 1500, 0,
                  "Length times width.",
                  spread={"measured": share(0.02), "estimated": share(0.10)}),
             Fact("outside_wall_ft2", "Outside wall", "number", "ft²", 0, 1000, 0,
                  "Length of outside wall times height, windows included.",
                  spread={"measured": share(0.03), "estimated": share(0.15)}),
             Fact("window_ft2", "Windows and glazed doors", "number", "ft²", 0, 300, 0,
                  "Frames included. Give it for every room, or for none.", optional=True,
                  spread={"measured": share(0.04), "estimated": share(0.20)}),
             Fact("door_ft2", "Outside doors", "number", "ft²", 0, 60, 0,
                  "Solid doors; leave it empty where there is none.", optional=True,
                  spread={"measured": share(0.04), "estimated": share(0.20)}),
             Fact("closes", "Has a door that closes", "yesno", "",
                  how="Yes where a shut door cuts the room off from the air handler's closet."),
             Fact("toilet", "Toilet room", "yesno", "",
                  how="Bath and toilet rooms need no way back of their own."),
             Fact("door_width_in", "Door width", "number", "in", 16, 48, 1,
                  "Clear width of the door leaf.", optional=True,
                  spread={"measured": within(0.25), "estimated": within(1.0)}),
             Fact("undercut_in", "Gap under the door", "number", "in", 0, 4, 2,
                  "From the carpet or floor as it lies to the underside of the door.",
                  optional=True, spread={"measured": within(0.125), "estimated": within(0.25)}),
             Fact("undercut_deck_in", "Gap under the door, from the decking", "number", "in", 0, 4,
                  2, "From the bare floor decking to the underside of the door; the federal rule "
                  "counts from there.", optional=True),
             Fact("transfer_in2", "Free area of transfer openings", "number", "in²", 0, 800, 0,
                  "Free area, not face: from the grille's sheet, or face times its free share.",
                  optional=True, spread={"measured": share(0.10), "estimated": share(0.25)}),
         ),
         rows=Rows(1, 30, unique="id")),
    Fact("room_loads", "Heat loss of each room at design", "table", where="results", given=True,
         how="From a room-by-room load report.",
         columns=(
             Fact("id", "Room", "text", "", how="As in the list of rooms."),
             Fact("load_btuh", "Heat loss at design", "number", "Btu/h", 0, 60000, 0,
                  "Without duct losses.",
                  spread={"data sheet": share(0.10), "estimated": share(0.25)}),
         ),
         rows=Rows(1, 30, unique="id")),
)
