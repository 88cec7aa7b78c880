"""Heat loss room by room.

Each register must bring its room's share. Where every room's windows are known, each
room's own surfaces are added up and the leaks shared by volume. Else the home's loss is
split by floor area and outside wall: an estimate, and marked so. Either way the rooms
add up to the home's load.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts.envelope import QUICK_SPLIT, ROOMS_BY_VOLUME
from downflow.physics import heat_loss
from downflow.sources import ARITHMETIC, HUD_LOAD, PRACTICE

CALCULATOR = Calculator(
    id="room-loads",
    title="Heat loss room by room",
    phase="survey",
    question="How much of the home's heat does each room need?",
    reads=("rooms", "design_load_btuh", "floor_area_ft2", "ceiling_height_ft",
           "home_perimeter_ft", "window_area_ft2", "door_area_ft2", "wall_u_btuh_ft2_f",
           "ceiling_u_btuh_ft2_f", "floor_u_outdoors_btuh_ft2_f", "window_u_btuh_ft2_f",
           "door_u_btuh_ft2_f", "infiltration_ua_btuh_f"),
    gives=("room_largest_btuh", "room_largest_share_pct", "room_loads"),
)

AREA_OFF = 0.15


def solve(job: Readings, paper: Paper) -> None:
    rooms = job.rooms
    for index, room in enumerate(rooms):
        glass = (room.get("window_ft2") or 0.0) + (room.get("door_ft2") or 0.0)
        if glass > room["outside_wall_ft2"]:
            job.refuse(f"rooms[{index}].window_ft2",
                       "windows and doors are larger than this room's outside wall.")
    own = all(room.get("window_ft2") is not None for room in rooms)
    shares = _own(job, paper) if own else _quick(job, paper)
    loads = [share * job.design_load_btuh for share in shares]
    table = [{"id": room["id"], "load_btuh": load} for room, load in zip(rooms, loads, strict=True)]
    largest = max(range(len(rooms)), key=lambda k: loads[k])
    paper.step("q = s * Q", ARITHMETIC, "Btu/h", loads[largest], s=shares[largest],
               Q=job.design_load_btuh, what=f"The largest share, {rooms[largest]['id']}, of the "
                                            "home's load")
    paper.total("The rooms together", ARITHMETIC, "Btu/h", sum(loads),
                [(room["id"], load) for room, load in zip(rooms, loads, strict=True)])
    paper.give_table("room_loads", table)
    paper.give("room_largest_btuh", loads[largest])
    paper.give("room_largest_share_pct", 100 * shares[largest])
    paper.draw(rooms=[(room["id"], load) for room, load in zip(rooms, loads, strict=True)])
    if own:
        paper.verdict("own-surfaces", "fine", "Each room by its own walls, windows and doors.",
                      source=HUD_LOAD)
    else:
        paper.verdict("own-surfaces", "look",
                      "Split by floor area and outside wall: an estimate. A room with large "
                      "windows needs more than this says.", source=QUICK_SPLIT,
                      do="Measure the windows of every room, and enter them.")
    total = sum(room["floor_area_ft2"] for room in rooms)
    paper.limit(
        "rooms-cover-home", abs(total - job.floor_area_ft2),
        at_most=AREA_OFF * job.floor_area_ft2, of="floor_area_ft2", source=PRACTICE,
        beyond="look",
        fine="The rooms cover the home.",
        look="The rooms add up to {total}, the home has {home}. A room is missing, or one is "
             "counted twice.",
        do="Go through the rooms again; halls and closets count too.",
        total=Quantity(total, "ft²", 0), home=Quantity(job.floor_area_ft2, "ft²", 0))


def _own(job: Readings, paper: Paper) -> list[float]:
    rooms = job.rooms
    flat = job.ceiling_u_btuh_ft2_f + job.floor_u_outdoors_btuh_ft2_f
    surfaces = []
    for room in rooms:
        glass, door = room["window_ft2"], room.get("door_ft2") or 0.0
        surfaces.append(heat_loss.ua_btuh_f(
            [room["outside_wall_ft2"] - glass - door, glass, door, room["floor_area_ft2"]],
            [job.wall_u_btuh_ft2_f, job.window_u_btuh_ft2_f, job.door_u_btuh_ft2_f, flat]))
    volumes = [room["floor_area_ft2"] * job.ceiling_height_ft for room in rooms]
    losses = heat_loss.room_losses(surfaces, volumes, job.infiltration_ua_btuh_f)
    k = max(range(len(rooms)), key=lambda i: losses[i].ua_btuh_f)
    room = rooms[k]
    door = room.get("door_ft2") or 0.0
    own = paper.step(
        "ua = (Ow - g - d) * uw + g * ug + d * ud + A * (uc + uf)", HUD_LOAD, "Btu/(h °F)",
        surfaces[k], Ow=room["outside_wall_ft2"], g=room["window_ft2"], d=door,
        uw=job.wall_u_btuh_ft2_f, ug=job.window_u_btuh_ft2_f, ud=job.door_u_btuh_ft2_f,
        A=room["floor_area_ft2"], uc=job.ceiling_u_btuh_ft2_f,
        uf=job.floor_u_outdoors_btuh_ft2_f,
        what=f"{room['id']}: its own surfaces, per degree")
    paper.step("UAr = ua + UAi * A / At", ROOMS_BY_VOLUME, "Btu/(h °F)", losses[k].ua_btuh_f,
               ua=own, UAi=job.infiltration_ua_btuh_f, A=room["floor_area_ft2"],
               At=sum(r["floor_area_ft2"] for r in rooms),
               what=f"{room['id']}: with its part of the leaks, by volume")
    return [loss.share for loss in losses]


def _quick(job: Readings, paper: Paper) -> list[float]:
    rooms = job.rooms
    wall = job.home_perimeter_ft * job.ceiling_height_ft - job.window_area_ft2 - job.door_area_ft2
    by_floor = paper.step(
        "UAf = A * (uc + uf) + UAi", HUD_LOAD, "Btu/(h °F)",
        job.floor_area_ft2 * (job.ceiling_u_btuh_ft2_f + job.floor_u_outdoors_btuh_ft2_f)
        + job.infiltration_ua_btuh_f, A=job.floor_area_ft2, uc=job.ceiling_u_btuh_ft2_f,
        uf=job.floor_u_outdoors_btuh_ft2_f, UAi=job.infiltration_ua_btuh_f,
        what="What goes by floor area: ceiling, floor, leaks")
    by_wall = paper.step(
        "UAw = Aw * uw + g * ug + d * ud", HUD_LOAD, "Btu/(h °F)",
        wall * job.wall_u_btuh_ft2_f + job.window_area_ft2 * job.window_u_btuh_ft2_f
        + job.door_area_ft2 * job.door_u_btuh_ft2_f, Aw=wall, uw=job.wall_u_btuh_ft2_f,
        g=job.window_area_ft2, ug=job.window_u_btuh_ft2_f, d=job.door_area_ft2,
        ud=job.door_u_btuh_ft2_f, what="What goes by outside wall: walls, windows, doors")
    if sum(r["outside_wall_ft2"] for r in rooms) <= 0:
        job.refuse("rooms", "no room has an outside wall.")
        job.stop_if_refused()
    shares = heat_loss.quick_room_shares([r["floor_area_ft2"] for r in rooms],
                                         [r["outside_wall_ft2"] for r in rooms], by_floor, by_wall)
    k = max(range(len(rooms)), key=lambda i: shares[i])
    paper.step("s = (UAf * a / At + UAw * o / Ot) / (UAf + UAw)", QUICK_SPLIT, "", shares[k],
               UAf=by_floor, UAw=by_wall, a=rooms[k]["floor_area_ft2"],
               At=sum(r["floor_area_ft2"] for r in rooms), o=rooms[k]["outside_wall_ft2"],
               Ot=sum(r["outside_wall_ft2"] for r in rooms),
               what=f"Share of the largest, {rooms[k]['id']}")
    return list(shares)


def figure(sheet: Sheet) -> str:
    """Each room's load as a bar, largest first."""
    rooms = sheet.drawn["rooms"]
    assert isinstance(rooms, list)
    return drawing.bars("room-loads", "Heat loss of each room on the design night", rooms, "Btu/h",
                        head="on the design night, before ducts", system=sheet.system,
                        ).figure("The registers' air is shared out by these bars.")
