"""Heat loss room by room: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def room(id_, floor, wall, **more):
    return {"id": id_, "floor_area_ft2": floor, "outside_wall_ft2": wall, "closes": False,
            "toilet": False, **more}


ROOMS = [room("front", 500.0, 400.0, window_ft2=60.0, door_ft2=20.0),
         room("middle", 500.0, 200.0, window_ft2=30.0),
         room("end", 512.0, 645.0, window_ft2=56.0, door_ft2=18.0)]
BARE = [{k: v for k, v in r.items() if k not in ("window_ft2", "door_ft2")} for r in ROOMS]


def loads(rooms, **facts):
    answer = solve_demo("room-loads", ranged=False, rooms=rooms, **facts)
    return {row["id"]: row["load_btuh"] for row in answer.tables["room_loads"]}


def test_the_rooms_add_up_to_the_home():
    home = solve_demo("two-roads", ranged=False).values["design_load_btuh"].value
    for rooms in (ROOMS, BARE):
        assert sum(loads(rooms).values()) == pytest.approx(home)


def test_a_room_with_more_outside_wall_needs_more():
    for rooms in (ROOMS, BARE):
        got = loads(rooms)
        assert got["end"] > got["front"] > got["middle"]


def test_a_quick_split_says_that_it_is_an_estimate():
    assert verdict_of(solve_demo("room-loads", rooms=BARE), "own-surfaces").level == "look"
    assert verdict_of(solve_demo("room-loads", rooms=ROOMS), "own-surfaces").level == "fine"


def test_one_room_without_windows_given_means_a_quick_split():
    mixed = [ROOMS[0], BARE[1], ROOMS[2]]
    assert verdict_of(solve_demo("room-loads", rooms=mixed), "own-surfaces").level == "look"


def test_glass_moves_heat_into_its_room():
    glassy = [ROOMS[0], {**ROOMS[1], "window_ft2": 150.0}, ROOMS[2]]
    assert loads(glassy)["middle"] > 1.2 * loads(ROOMS)["middle"]


def test_a_window_larger_than_its_wall_is_refused_by_row():
    rooms = [ROOMS[0], {**ROOMS[1], "window_ft2": 250.0}, ROOMS[2]]
    answer = solve_demo("room-loads", rooms=rooms)
    assert answer.errors[0]["field"] == "rooms[1].window_ft2"


def test_rooms_without_any_outside_wall_are_refused():
    answer = solve_demo("room-loads", rooms=[room("only", 1500.0, 0.0)])
    assert answer.errors[0]["field"] == "rooms"


@pytest.mark.parametrize(("area", "level"), [(1290.0, "fine"), (1280.0, "look")])
def test_a_missing_room_is_noticed_from_fifteen_percent_on(area, level):
    rooms = [room("all", area, 1000.0)]
    answer = solve_demo("room-loads", rooms=rooms, ranged=False)
    assert verdict_of(answer, "rooms-cover-home").level == level
