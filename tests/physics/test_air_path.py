"""The air path of a home: built from parts, balanced by dampers, cooled on its way."""

import pytest

from downflow.physics import air_path, ducts
from downflow.physics.network import ConstantAirflowFan, NetworkError, measured_point

AIR = air_path.Air(0.06, 1.22e-5)


def home(crossovers=(), fan=None, leak=60.0, registers=6, boot=2.5):
    plant = air_path.Plant(fan or ConstantAirflowFan(1000.0, 0.8),
                           (("filter", measured_point(0.1, 1000.0, 1.176)),), 600.0, 250.0, 1.0,
                           1.2, leak)
    trunks = (air_path.Trunk("A", 14.0, 5.0, 48.0, 24.0, 0.0003, True),
              air_path.Trunk("B", 14.0, 5.0, 48.0, 24.0, 0.0003, False))
    boots = tuple(air_path.Register(f"{t}{k}", t, f"room {t}{k}", 4.0 + 8.0 * k, 40.0, boot)
                  for t in "AB" for k in range(registers))
    return air_path.AirPath(AIR, plant, trunks, boots, tuple(crossovers))


def round_(diameter, to="B", **more):
    return air_path.crossover("x", to, 24.0, diameter_in=diameter, length_ft=14.0,
                              roughness_ft=0.003, **more)


def even(path):
    rooms = {r.room for r in path.registers}
    return dict.fromkeys(rooms, 1.0 / len(rooms))


def test_air_is_neither_made_nor_lost():
    flows = air_path.solve(home([round_(12.0)]))
    assert flows.airflow_cfm == pytest.approx(1000.0)
    assert flows.delivered_cfm + flows.leak_cfm == pytest.approx(1000.0)
    assert sum(flows.drop_inwc.values()) == pytest.approx(flows.fan_rise_inwc)


def test_an_unfed_trunk_gets_nothing_and_is_no_error():
    path = home()
    flows = air_path.solve(path)
    assert air_path.far_share(path, flows) == 0
    assert air_path.fed_trunks(path) == {"A"}


def test_a_crossover_without_loss_would_share_evenly():
    flows = air_path.solve(path := home([round_(40.0)], leak=0.0))
    assert air_path.far_share(path, flows) == pytest.approx(0.5, abs=0.02)


def test_balancing_brings_every_room_within_tolerance():
    path = home([round_(14.0)])
    done = air_path.balance(path, even(path))
    rooms = air_path.room_flows(done.path, done.flows)
    target = done.flows.delivered_cfm / len(rooms)
    assert all(abs(q - target) <= air_path.room_tolerance_cfm(target) for q in rooms.values())
    assert done.short == ()


def test_no_damper_is_set_where_none_helps():
    path = home()
    done = air_path.balance(path, even(path))
    assert done.dampers == {}
    assert len(done.short) == 6


def test_dampers_that_would_roar_are_not_set():
    path = home([round_(6.0)])
    opened = air_path.solve(path)
    done = air_path.balance(path, even(path), opened)
    assert done.flows.supply_static_inwc <= 2.0 * opened.supply_static_inwc
    assert done.short


def test_air_cools_along_trunk_and_crossover():
    path = home([round_(12.0)])
    flows = air_path.solve(path)
    found = air_path.register_temperatures_f(path, flows, 110.0, 10.0, 10.0, 6.0, 6.7)
    assert found["A0"] < found["A2"] < 110.0
    assert found["B2"] < found["A2"]
    still = air_path.register_temperatures_f(path, flows, 110.0, 110.0, 110.0, 6.0, 6.7)
    assert all(t == pytest.approx(110.0) for t in still.values())


def test_streams_from_two_crossovers_mix():
    two = [round_(10.0), air_path.crossover("y", "B", 8.0, diameter_in=10.0, length_ft=40.0,
                                            roughness_ft=0.003)]
    path = home(two)
    found = air_path.register_temperatures_f(path, air_path.solve(path), 110.0, 10.0, 10.0, 6.0,
                                             2.0)
    assert all(10.0 < t < 110.0 for t in found.values())


def test_a_slot_leaves_the_trunk_and_not_the_box():
    slot = air_path.slots(home().trunks, width_in=18.0, height_in=2.5, length_ft=3.0,
                          roughness_ft=0.0003)
    assert slot[0].from_trunk == "A"
    assert slot[0].diameter_in == pytest.approx(ducts.rectangular_equivalent_in(18.0, 2.5))
    assert air_path.solve(home(slot)).crossover_cfm["B1"] > 0


def test_a_second_crossover_lands_where_asked_or_a_third_away():
    trunk = home().trunks[1]
    assert air_path.landings(trunk, 2, None) == (24.0, 8.0)
    assert air_path.landings(trunk, 2, 40.0) == (24.0, 40.0)
    assert air_path.landings(trunk, 1, 40.0) == (24.0,)


def test_shares_are_loads_where_known_and_a_split_where_not():
    rooms = [{"id": "a", "floor_area_ft2": 100.0, "outside_wall_ft2": 50.0},
             {"id": "b", "floor_area_ft2": 300.0, "outside_wall_ft2": 50.0}]
    assert air_path.load_shares(rooms, None) == pytest.approx({"a": 0.375, "b": 0.625})
    loads = [{"id": "a", "load_btuh": 1000.0}, {"id": "b", "load_btuh": 3000.0}]
    assert air_path.load_shares(rooms, loads) == pytest.approx({"a": 0.25, "b": 0.75})


def test_tolerances_are_the_trades():
    assert air_path.room_tolerance_cfm(50.0) == 25.0
    assert air_path.room_tolerance_cfm(200.0) == 40.0
    assert air_path.halves_fed(0.43, 0.5)
    assert not air_path.halves_fed(0.42, 0.5)


def test_a_closed_closet_is_refused():
    path = home([round_(12.0)])
    shut = air_path.AirPath(path.air, air_path.Plant(
        path.plant.fan, path.plant.parts, 0.0, 250.0, 1.0, 1.2, 60.0), path.trunks,
        path.registers, path.crossovers)
    with pytest.raises(NetworkError, match="free_area_in2"):
        air_path.solve(shut)


def test_what_is_wrong_with_the_parts_is_named_all_at_once():
    trunks = [{"id": "A", "length_ft": 50.0, "feed_ft": 60.0, "under_box": True},
              {"id": "B", "length_ft": 70.0, "feed_ft": 20.0, "under_box": True}]
    registers = [{"id": "1", "trunk": "C", "room": "den", "at_ft": 5.0},
                 {"id": "2", "trunk": "A", "room": "attic", "at_ft": 55.0}]
    fields = [f for f, _ in air_path.problems(trunks, registers, [{"id": "den"}], 56.0)]
    assert fields == ["trunks[0].feed_ft", "trunks[1].length_ft", "trunks[0].under_box",
                      "registers[0].trunk", "registers[1].at_ft", "registers[1].room",
                      "trunks[1].id"]


def test_a_fixed_speed_table_must_fall():
    rows = [{"airflow_cfm": 1000.0}, {"airflow_cfm": 900.0}, {"airflow_cfm": 900.0}]
    assert air_path.fan_problems("speed", rows)[0][0] == "fan_table[2].airflow_cfm"
    assert air_path.fan_problems("constant", rows) == []
