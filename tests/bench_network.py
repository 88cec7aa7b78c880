"""Time of a network solve, against the number of branches and against a general library.

`home(n)` builds a two-trunk home with crossovers, leaks and closed rooms of about `n`
branches; `times()` and `against_library()` are what `scripts/bench` prints. The general library
is pandapipes, see tests/reference/make_network_cases.py for its version. Where it is not
installed the times that it took when the cases were made stand in, which were taken on another
machine or day: the answer says so.
"""

import importlib.util
import json
import sys
import time
from pathlib import Path
from typing import Any

from downflow.physics import ducts, network
from downflow.physics.network import (
    Branch,
    ConstantAirflowFan,
    Network,
    Node,
    Series,
    duct,
    leak,
    measured_point,
    opening,
)

DENSITY = 0.067
VISCOSITY = ducts.viscosity_lb_ft_s(70.0)
# A room of one register: trunk piece, takeoff, leak, way back.
BRANCHES_PER_ROOM = 4
# Fan, filter, coil, louver, box to each trunk by two crossovers.
BRANCHES_OF_PLANT = 8


def home(branches: int) -> Network:
    """A home of about this many branches, half of its rooms on each trunk."""
    rooms = max(1, (branches - BRANCHES_OF_PLANT) // BRANCHES_PER_ROOM)
    per_trunk = [(rooms + 1) // 2, rooms // 2]
    total_cfm = 90.0 * rooms
    size = max(1.0, rooms / 8.0)
    trunk_in = 9.0 * size**0.5
    nodes = [Node("main", 0.0), Node("belly", 0.0)]
    nodes += [Node(name) for name in ("closet", "below-filter", "below-coil", "box", "a0", "b0")]
    parts = [
        Branch("louver", "main", "closet", opening(350.0 * size, DENSITY)),
        Branch("filter", "closet", "below-filter", measured_point(0.12, total_cfm, 1.176)),
        Branch("coil", "below-filter", "below-coil", measured_point(0.2, total_cfm, 1.8)),
        Branch("fan", "below-coil", "box", ConstantAirflowFan(total_cfm, 2.0)),
        Branch("box-a", "box", "a0", _duct(trunk_in, 2.0, 0.0003, 1.3)),
        Branch("crossover-1", "box", "b0", _duct(trunk_in * 1.3, 16.0, 0.003, 2.5, 2.6)),
        Branch("box-leak", "box", "belly", leak(30.0 * size)),
    ]
    for side, count in zip("ab", per_trunk, strict=True):
        for k in range(1, count + 1):
            room, trunk = f"room-{side}{k}", f"{side}{k}"
            nodes += [Node(trunk), Node(room, room=True)]
            parts += [
                Branch(f"run-{trunk}", f"{side}{k - 1}", trunk, _duct(trunk_in, 7.0, 0.0003)),
                Branch(f"register-{trunk}", trunk, room, Series(
                    (_duct(6.0, 2.0, 0.0003, 2.5), measured_point(0.03, 100.0, 2.0))
                ), supply=True),
                Branch(f"leak-{trunk}", trunk, "belly", leak(6.0)),
                Branch(f"back-{room}", room, "main", opening(60.0, DENSITY)),
            ]
    if per_trunk[1] > 1:
        parts.append(Branch("crossover-2", f"a{per_trunk[0]}", f"b{per_trunk[1]}",
                            _duct(trunk_in, 16.0, 0.003, 2.5, 2.6)))
    else:
        parts.append(Branch("crossover-2", "a1", "b0", _duct(trunk_in, 16.0, 0.003, 2.5, 2.6)))
    return Network(nodes, parts)


def _duct(
    diameter_in: float, length_ft: float, roughness_ft: float, loss_c: float = 0.0,
    flex: float = 1.0,
) -> Any:
    return duct(diameter_in, length_ft, roughness_ft, DENSITY, VISCOSITY, loss_c,
                flex_factor=flex)


def solve_ms(network: Network, warm: bool = False, repeat: int = 7) -> float:
    """Best time of a solve. [ms]"""
    start = network.solve() if warm else None
    best = float("inf")
    for _ in range(repeat):
        begun = time.perf_counter()
        network.solve(start)
        best = min(best, time.perf_counter() - begun)
    return 1000.0 * best


def build_and_solve_ms(branches: int, repeat: int = 5) -> float:
    """Best time to build a network of this size from its parts and solve it. [ms]"""
    best = float("inf")
    for _ in range(repeat):
        begun = time.perf_counter()
        home(branches).solve()
        best = min(best, time.perf_counter() - begun)
    return 1000.0 * best


def times(sizes: tuple[int, ...] = (10, 20, 40, 100, 200, 500, 1000, 2000)) -> list[dict[str, Any]]:
    """Rows of branch count, steps, cold and warm solve and build with solve. [ms]"""
    rows = []
    for size in sizes:
        network = home(size)
        rows.append({
            "branches": len(network.branches),
            "steps": network.solve().steps,
            "cold_ms": solve_ms(network),
            "warm_ms": solve_ms(network, warm=True),
            "build_and_solve_ms": build_and_solve_ms(size, 3),
        })
    return rows


LIBRARY_CASE = "home-of-40"


def against_library(repeat: int = 5) -> dict[str, Any]:
    """A home of 40 ducts from plain data to its flows, by this solver and by a general library.

    Returns:
        Times of both [ms], their ratio, the ratio of the bare solves with this one begun from
        its last solution, and whether the library was run here.
    """
    folder = Path(__file__).parent / "reference"
    cases = json.loads((folder / "network_cases.json").read_text(encoding="utf-8"))
    case = next(c for c in cases if c["id"] == LIBRARY_CASE)
    here = importlib.util.find_spec("pandapipes") is not None
    if here:
        sys.path.insert(0, str(folder))
        import make_network_cases

        runs = []
        for _ in range(repeat):
            entry = dict(case)
            make_network_cases.by_pandapipes(entry)
            runs.append((entry["library_build_and_solve_ms"], entry["library_ms"]))
        whole, bare = (min(values) for values in zip(*runs, strict=True))
    else:
        whole, bare = case["library_build_and_solve_ms"], case["library_ms"]
    best = float("inf")
    for _ in range(10 * repeat):
        begun = time.perf_counter()
        network.from_rows(case["nodes"], case["branches"]).solve()
        best = min(best, time.perf_counter() - begun)
    again = solve_ms(network.from_rows(case["nodes"], case["branches"]), warm=True, repeat=30)
    return {
        "branches": len(case["branches"]), "library_ms": whole, "own_ms": 1000.0 * best,
        "ratio": whole / (1000.0 * best), "solve_again_ratio": bare / again,
        "library_run_here": here,
    }


if __name__ == "__main__":
    print(against_library())
    for row in times():
        print("  ".join(f"{key} {value:.4g}" for key, value in row.items()))
