"""The air network: against general libraries, against a root finder, and what it refuses."""

import json
import math
import random
import sys
import time
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq, root

from downflow.physics import ducts, network
from downflow.physics.network import (
    Branch,
    ConstantAirflowFan,
    FanCurve,
    Network,
    NetworkError,
    Node,
    PowerLaw,
    Series,
    Solution,
    duct,
    fan_table,
    leak,
    measured_point,
    opening,
)

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE.parent))
import bench_network  # noqa: E402

CASES: list[dict[str, Any]] = json.loads(
    (HERE.parent / "reference" / "network_cases.json").read_text(encoding="utf-8"))
TABLE = [(400.0, 0.92), (600.0, 0.84), (800.0, 0.68), (1000.0, 0.43), (1200.0, 0.08)]


def worst_imbalance(net: Network, found: Solution) -> float:
    balance = {node.id: node.inflow_cfm for node in net.nodes if node.pressure_inwc is None}
    for branch in net.branches:
        if branch.start in balance:
            balance[branch.start] -= found.flow_cfm[branch.id]
        if branch.end in balance:
            balance[branch.end] += found.flow_cfm[branch.id]
    return max(map(abs, balance.values()), default=0.0)


# ------------------------------------------------------------- against general libraries


def test_there_are_enough_reference_networks_and_they_reach_200_branches() -> None:
    by_library = [case for case in CASES if "scipy" not in case["library"]]
    assert len(by_library) >= 12
    assert max(len(case["branches"]) for case in by_library) >= 198
    assert len([case for case in CASES if "scipy" in case["library"]]) >= 4


@pytest.mark.parametrize("case", CASES, ids=[case["id"] for case in CASES])
def test_flows_are_those_of_a_general_library(case: dict[str, Any]) -> None:
    net = network.from_rows(case["nodes"], case["branches"])
    found = net.solve()
    largest = max(abs(flow) for flow in case["flow_cfm"].values())
    for name, flow in case["flow_cfm"].items():
        # Half a percent of the branch's own flow, and never worse than 1e-4 of the largest.
        assert found.flow_cfm[name] == pytest.approx(flow, rel=0.005, abs=1e-4 * largest)
    assert worst_imbalance(net, found) <= 1e-6 * largest
    assert found.energy_residual_inwc < 1e-8


# ------------------------------------------------------------------ against a root finder


def by_root(net: Network) -> dict[str, float]:
    """The same equations by scipy's hybrid method on node pressures, flows by bisection."""
    free = [node.id for node in net.nodes if node.pressure_inwc is None]
    known = {n.id: n.pressure_inwc for n in net.nodes if n.pressure_inwc is not None}

    def flows(pressures: Any) -> dict[str, float]:
        here = dict(known) | dict(zip(free, map(float, pressures), strict=True))
        return {
            b.id: float(brentq(
                lambda q, b=b: b.law.drop(q)[0] - (here[b.start] - here[b.end]),
                -1e6, 1e6, xtol=1e-13, rtol=1e-14))
            for b in net.branches
        }

    def balance(pressures: Any) -> list[float]:
        moved = flows(pressures)
        out = {node.id: node.inflow_cfm for node in net.nodes if node.pressure_inwc is None}
        for b in net.branches:
            if b.start in out:
                out[b.start] -= moved[b.id]
            if b.end in out:
                out[b.end] += moved[b.id]
        return list(out.values())

    for scale in (0.1, 0.02, 0.5):
        start = [scale * (1.0 - k / (len(free) + 1)) for k in range(len(free))]
        found = root(balance, start, method="hybr", tol=1e-12)
        if max(map(abs, balance(found.x))) < 1e-5:
            return flows(found.x)
    pytest.fail("the root finder did not converge")


def home_with(fan: network.Law) -> Network:
    return Network(
        [Node("main", 0.0), Node("belly", 0.0), *map(Node, ("in", "out", "a", "b")),
         Node("bed", room=True)],
        [
            Branch("filter", "main", "in", measured_point(0.15, 900.0, 1.176)),
            Branch("fan", "in", "out", fan),
            Branch("trunk-a", "out", "a", duct(9.5, 25.0, 0.0003, 0.067, 1.22e-5, 1.5)),
            Branch("crossover", "out", "b", duct(12.0, 16.0, 0.003, 0.067, 1.22e-5, 2.5,
                                                 flex_factor=2.3)),
            Branch("leak", "out", "belly", leak(40.0)),
            Branch("register-a", "a", "main", measured_point(0.04, 350.0, 1.9)),
            Branch("register-b", "b", "bed", measured_point(0.04, 350.0, 2.0), supply=True),
            Branch("transfer", "bed", "main", opening(80.0, 0.067)),
        ],
    )


@pytest.mark.parametrize("fan", [
    fan_table(TABLE, 0.067),
    FanCurve(0.9, 4e-7),
    FanCurve(0.9, 2e-5, 1.5),
    ConstantAirflowFan(800.0, 0.9),
    ConstantAirflowFan(1100.0, 0.4, 0.55),
], ids=["table", "curve", "free exponent", "constant airflow", "beyond its limit"])
def test_a_home_with_each_kind_of_fan_agrees_with_a_root_finder(fan: network.Law) -> None:
    net = home_with(fan)
    found = net.solve()
    for name, flow in by_root(net).items():
        assert found.flow_cfm[name] == pytest.approx(flow, rel=2e-4)


@given(st.integers(0, 10**6))
@settings(max_examples=60, deadline=None)
def test_any_connected_network_of_mixed_laws_balances_and_keeps_every_law(seed: int) -> None:
    rng = random.Random(seed)
    count = rng.randint(2, 14)
    nodes = [Node("room", 0.0)] + [Node(f"n{k}") for k in range(count)]
    branches = [Branch("back", f"n{count - 1}", "room", PowerLaw(10 ** rng.uniform(-8, -4), 2.0))]
    for k in range(count):
        other = "room" if k == 0 else f"n{rng.randrange(k)}"
        branches.append(Branch(f"limb{k}", other, f"n{k}", PowerLaw(
            10 ** rng.uniform(-9, -3), rng.uniform(1.0, 2.5))))
        branches.append(Branch(f"leak{k}", f"n{k}", "room", leak(10 ** rng.uniform(-1, 3))))
    for k in range(rng.randint(0, 8)):
        a, b = rng.sample(nodes, 2)
        branches.append(Branch(f"extra{k}", a.id, b.id, rng.choice([
            PowerLaw(10 ** rng.uniform(-9, -3), rng.uniform(1.0, 3.0)),
            duct(rng.uniform(3, 16), rng.uniform(1, 60), rng.choice([0.0, 0.0003, 0.003]),
                 0.075, 1.22e-5, rng.uniform(0, 5)),
            FanCurve(rng.uniform(0.1, 2.0), 10 ** rng.uniform(-8, -5)),
            ConstantAirflowFan(10 ** rng.uniform(1, 3.5), rng.uniform(0.05, 1.5)),
            fan_table(TABLE),
        ])))
    net = Network(nodes, branches)
    found = net.solve()
    largest = max(map(abs, found.flow_cfm.values()))
    assert worst_imbalance(net, found) <= 1e-6 * max(largest, 1e-6)
    for branch in branches:
        fall = found.pressure_inwc[branch.start] - found.pressure_inwc[branch.end]
        flow = found.flow_cfm[branch.id]
        below, _ = branch.law.drop(flow - 1e-3)
        above, _ = branch.law.drop(flow + 1e-3)
        assert below - 1e-7 <= fall <= above + 1e-7
    again = net.solve({b.id: rng.uniform(-1, 1) * 10 ** rng.uniform(-3, 6) for b in branches})
    for name, flow in found.flow_cfm.items():
        assert again.flow_cfm[name] == pytest.approx(flow, abs=1e-5 * max(largest, 1.0))


# ---------------------------------------------------------------------- how it behaves


def test_two_trunks_share_by_the_roots_of_their_resistances() -> None:
    # 1000 / (1 + sqrt(6e-7/1.1e-6)) = 575.19
    net = Network([Node("room", 0.0), Node("box", inflow_cfm=1000.0)], [
        Branch("a", "box", "room", PowerLaw(6e-7)), Branch("b", "box", "room", PowerLaw(1.1e-6))])
    assert net.solve().flow_cfm["a"] == pytest.approx(575.1923, abs=1e-3)


def test_twice_the_air_takes_four_times_the_pressure_by_the_square_law() -> None:
    def box(inflow: float) -> float:
        return Network([Node("room", 0.0), Node("box", inflow_cfm=inflow), Node("b")], [
            Branch("a", "box", "room", PowerLaw(6e-7)), Branch("x", "box", "b", PowerLaw(3e-7)),
            Branch("b", "b", "room", PowerLaw(8e-7))]).solve().pressure_inwc["box"]
    assert box(2000.0) == pytest.approx(4.0 * box(1000.0), rel=1e-9)


@given(st.floats(1.01, 100.0), st.sampled_from(["trunk-a", "crossover", "register-b", "transfer"]))
@settings(max_examples=30, deadline=None)
def test_more_resistance_in_a_branch_never_raises_its_flow(times: float, name: str) -> None:
    net = home_with(FanCurve(0.9, 4e-7))
    before = net.solve()
    law = next(b.law for b in net.branches if b.id == name)
    more = Series((law, PowerLaw(law.drop(300.0)[0] / 300.0**2 * (times - 1.0))))
    after = net.with_laws({name: more}).solve(before)
    assert after.flow_cfm[name] <= before.flow_cfm[name] * (1 + 1e-9)


def test_a_branch_shut_almost_tight_is_as_good_as_none() -> None:
    net = home_with(FanCurve(0.9, 4e-7))
    shut = net.with_laws({"leak": PowerLaw(1e6)}).solve()
    without = Network(net.nodes[:1] + net.nodes[2:], [b for b in net.branches if b.id != "leak"])
    for name, flow in without.solve().flow_cfm.items():
        assert shut.flow_cfm[name] == pytest.approx(flow, rel=1e-4)


@pytest.mark.parametrize("start", [0.0, 1e-9, -500.0, 1e3, 1e6, -1e6, 1e9, math.nan, math.inf])
def test_a_bad_start_comes_to_the_same_answer(start: float) -> None:
    net = bench_network.home(40)
    good = net.solve()
    found = net.solve({branch.id: start for branch in net.branches})
    for name, flow in good.flow_cfm.items():
        assert found.flow_cfm[name] == pytest.approx(flow, abs=1e-5)


def test_the_last_solution_saves_steps_when_an_input_moves() -> None:
    net = bench_network.home(40)
    last = net.solve()
    moved = net.with_laws({"crossover-1": duct(10.0, 16.0, 0.003, 0.067, bench_network.VISCOSITY,
                                               2.5, flex_factor=2.6)})
    cold, warm = moved.solve(), moved.solve(last)
    assert warm.steps < cold.steps
    for name, flow in cold.flow_cfm.items():
        assert warm.flow_cfm[name] == pytest.approx(flow, abs=1e-4)


def test_a_constant_airflow_fan_holds_its_air_until_its_limit_and_no_further() -> None:
    net = bench_network.home(40)
    held = net.solve()
    assert held.flow_cfm["fan"] == pytest.approx(720.0, abs=1e-3)
    assert held.at_limit == ()
    need = -held.drop_inwc["fan"]
    beyond = net.with_laws({"fan": ConstantAirflowFan(720.0, need - 0.05)}).solve()
    assert beyond.at_limit == ("fan",)
    assert beyond.flow_cfm["fan"] < 700.0
    assert -beyond.drop_inwc["fan"] == pytest.approx(need - 0.05)


def test_a_fan_table_moves_the_same_air_at_altitude_with_less_pressure() -> None:
    table = fan_table(TABLE, 0.0603)
    assert -table.drop(800.0)[0] == pytest.approx(0.68 * 0.0603 / 0.075)
    # System losses fall by the same share, so the operating flow stays.
    high = Network([Node("room", 0.0), Node("box")], [
        Branch("fan", "room", "box", table),
        Branch("ducts", "box", "room", PowerLaw(6e-7 * 0.0603 / 0.075))])
    low = Network([Node("room", 0.0), Node("box")], [
        Branch("fan", "room", "box", fan_table(TABLE)),
        Branch("ducts", "box", "room", PowerLaw(6e-7))])
    assert high.solve().flow_cfm["fan"] == pytest.approx(low.solve().flow_cfm["fan"])


def test_a_flow_beyond_the_fan_table_is_said() -> None:
    net = Network([Node("room", 0.0), Node("box")], [
        Branch("fan", "room", "box", fan_table(TABLE)),
        Branch("ducts", "box", "room", PowerLaw(1e-9))])
    assert net.solve().outside_table == ("fan",)


def test_two_crossovers_and_a_perimeter_loop_need_nothing_special() -> None:
    # A symmetric ring fed at one point shares evenly, and nothing crosses the far point.
    nodes = [Node("room", 0.0), Node("n0", inflow_cfm=600.0)] + [Node(f"n{k}") for k in range(1, 6)]
    branches = [Branch(f"ring{k}", f"n{k}", f"n{(k + 1) % 6}", PowerLaw(4e-7)) for k in range(6)]
    branches += [Branch(f"r{k}", f"n{k}", "room", PowerLaw(2e-5)) for k in range(6)]
    flow = Network(nodes, branches).solve().flow_cfm
    for near, far in (("r1", "r5"), ("r2", "r4"), ("ring0", "ring5"), ("ring1", "ring4")):
        assert abs(flow[near]) == pytest.approx(abs(flow[far]), abs=1e-6)
    assert flow["ring2"] + -flow["ring3"] == pytest.approx(flow["r3"], abs=1e-9)


def test_time_grows_in_proportion_to_the_branches() -> None:
    small, large = bench_network.home(200), bench_network.home(2000)
    ratio = bench_network.solve_ms(large, repeat=5) / bench_network.solve_ms(small, repeat=5)
    assert ratio < 25.0  # ten times the branches; a square law would be 100


def test_a_home_of_40_branches_is_solved_well_under_three_milliseconds() -> None:
    net = bench_network.home(40)
    begun = time.perf_counter()
    for _ in range(10):
        net.solve()
    assert (time.perf_counter() - begun) / 10 < 0.003


# ------------------------------------------------------------------------ what it refuses


def refused(nodes: list[Node], branches: list[Branch]) -> NetworkError:
    with pytest.raises(NetworkError) as caught:
        Network(nodes, branches)
    return caught.value


def test_a_room_with_a_supply_and_no_way_back_is_named() -> None:
    error = refused([Node("hall", 0.0), Node("box", inflow_cfm=500.0), Node("bed", room=True)], [
        Branch("trunk", "box", "hall", PowerLaw(1e-6)),
        Branch("bed-register", "box", "bed", PowerLaw(1e-5), supply=True)])
    assert error.kind == "no-way-back"
    assert error.nodes == ("bed",)
    assert "bed-register" in str(error)


def test_two_supplies_are_no_way_back_for_each_other() -> None:
    error = refused([Node("hall", 0.0), Node("box", inflow_cfm=500.0), Node("bed", room=True)], [
        Branch("trunk", "box", "hall", PowerLaw(1e-6)),
        Branch("register-1", "box", "bed", PowerLaw(1e-5), supply=True),
        Branch("register-2", "box", "bed", PowerLaw(1e-5), supply=True)])
    assert error.kind == "no-way-back"
    assert "bed" in error.nodes


def test_a_branch_that_leads_nowhere_is_named() -> None:
    error = refused([Node("hall", 0.0), Node("box", inflow_cfm=500.0), Node("stub"), Node("end")], [
        Branch("trunk", "box", "hall", PowerLaw(1e-6)),
        Branch("spur", "box", "stub", PowerLaw(1e-6)),
        Branch("tip", "stub", "end", PowerLaw(1e-6))])
    assert error.kind == "no-path"
    assert error.branches == ("spur",)
    assert set(error.nodes) == {"stub", "end"}


def test_parts_that_are_not_connected_are_named() -> None:
    error = refused([Node("hall", 0.0), Node("box", inflow_cfm=500.0), Node("x"), Node("y")], [
        Branch("trunk", "box", "hall", PowerLaw(1e-6)),
        Branch("loose", "x", "y", PowerLaw(1e-6)),
        Branch("loose-2", "y", "x", PowerLaw(1e-6))])
    assert error.kind == "disconnected"
    assert set(error.nodes) == {"x", "y"}


def test_air_at_two_densities_is_refused() -> None:
    error = refused([Node("room", 0.0), Node("box")], [
        Branch("fan", "room", "box", fan_table(TABLE, 0.075)),
        Branch("duct", "box", "room", duct(9.0, 10.0, 0.0003, 0.0603, 1.22e-5))])
    assert error.kind == "density"
    assert error.branches == ("fan", "duct")


@pytest.mark.parametrize(("rows", "row", "column"), [
    ([(400, 0.9), (600, 0.95), (800, 0.5)], 1, "static_inwc"),
    ([(400, 0.9), (600, 0.9)], 1, "static_inwc"),
    ([(400, 0.9), (400, 0.8)], 1, "airflow_cfm"),
    ([(400, 0.9), (-600, 0.8)], 1, "airflow_cfm"),
    ([(400, math.nan), (600, 0.8)], 0, "static_inwc"),
])
def test_a_fan_table_that_does_not_fall_is_refused_at_its_row(
    rows: list[tuple[float, float]], row: int, column: str
) -> None:
    with pytest.raises(NetworkError) as caught:
        fan_table(rows)
    assert (caught.value.kind, caught.value.row, caught.value.column) == ("fan-table", row, column)


def test_a_fan_table_of_one_row_is_refused() -> None:
    with pytest.raises(NetworkError, match="two rows"):
        fan_table([(400.0, 0.9)])


@pytest.mark.parametrize("make", [
    lambda: PowerLaw(0.0), lambda: PowerLaw(-1e-6), lambda: PowerLaw(1e-6, 0.5),
    lambda: PowerLaw(math.nan), lambda: duct(0.0, 10.0, 0.0003, 0.075, 1.2e-5),
    lambda: duct(8.0, -1.0, 0.0003, 0.075, 1.2e-5), lambda: duct(8.0, 1.0, -1.0, 0.075, 1.2e-5),
    lambda: measured_point(0.0, 900.0, 2.0), lambda: opening(0.0), lambda: leak(-5.0),
    lambda: ConstantAirflowFan(0.0, 0.5), lambda: ConstantAirflowFan(900.0, 0.5, 0.4),
    lambda: FanCurve(0.9, 0.0), lambda: Series(()), lambda: FanCurve(0.9, 1e-7, 4.0),
    lambda: network.law_from_row({"law": "wishful"}),
])
def test_sizes_and_numbers_that_make_no_sense_are_refused(make: Any) -> None:
    with pytest.raises(NetworkError):
        make()


def test_names_used_twice_or_unknown_are_refused() -> None:
    law = PowerLaw(1e-6)
    room, box = Node("room", 0.0), Node("box", inflow_cfm=1.0)
    assert refused([room, room], [Branch("a", "room", "room", law)]).kind == "twice"
    assert refused([room, box], [Branch("a", "box", "room", law),
                                 Branch("a", "box", "room", law)]).kind == "twice"
    assert refused([room, box], [Branch("a", "box", "attic", law)]).kind == "unknown-node"
    assert refused([room, box], [Branch("a", "box", "box", law)]).kind == "no-path"
    assert refused([room, Node("box", math.inf)], [Branch("a", "box", "room", law)]).kind \
        == "bad-number"
    assert refused([room], []).kind == "no-path"
    with pytest.raises(NetworkError):
        Network([room, box], [Branch("a", "box", "room", law)]).with_laws({"b": law})


def test_laws_never_fall_and_their_slope_is_true() -> None:
    laws: list[network.Law] = [
        PowerLaw(1e-6, 1.9), leak(40.0), opening(80.0), fan_table(TABLE), FanCurve(0.9, 4e-7, 1.7),
        duct(9.0, 20.0, 0.003, 0.075, 1.22e-5, 2.0), ConstantAirflowFan(800.0, 0.5, 0.6),
        Series((PowerLaw(1e-6), duct(6.0, 10.0, 0.0003, 0.075, 1.22e-5))),
    ]
    for law in laws:
        last = -math.inf
        for k in range(-400, 401):
            flow = math.copysign(abs(k / 40.0) ** 3.2, k)
            value, slope = law.drop(flow)
            assert value >= last
            last = value
            step = 1e-5 * max(1.0, abs(flow))
            left, right = law.drop(flow - step)[0], law.drop(flow + step)[0]
            sides = sorted(((value - left) / step, (right - value) / step))
            assert sides[0] * 0.98 - 1e-9 <= slope <= sides[1] * 1.02 + 1e-9


def test_the_friction_of_a_duct_branch_is_that_of_the_formula() -> None:
    law = duct(9.0, 24.0, 0.0003, 0.0623, 1.22e-5)
    for flow in (0.5, 20.0, 60.0, 450.0):
        assert law.drop(flow)[0] == pytest.approx(
            ducts.friction_inwc(flow, 9.0, 24.0, 0.0003, 0.0623, 1.22e-5), rel=1e-9)
