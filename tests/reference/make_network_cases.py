"""Make tests/reference/network_cases.json: networks solved by two general-purpose libraries.

Run it by hand, in an environment of its own:

    pip install wntr==1.5.0 pandapipes==0.16.0 six setuptools
    PYTHONPATH=calc/src python tests/reference/make_network_cases.py

Square-law networks and leaks go to EPANET 2.2 through wntr 1.5.0, as water: one inch of water
column of air is ten metres of head there, one cubic foot a minute a tenth of a litre a second,
a branch a very short pipe with a minor loss, a leak an emitter. EPANET rounds 8/(g pi²) to
0.02517 (feet), which the minor losses allow for. Straight ducts with Colebrook friction go to
pandapipes 0.16.0 with a fluid of the density and viscosity of the air. Fans by table, fans of
constant airflow and free exponents, for which neither has an element, go to the root finder of
scipy 1.16.3 on the balances and laws written out here a second time. The solver under test
takes no part: the networks are built here as plain data and the answers are the libraries'.
"""

import json
import math
import random
import tempfile
import time
from pathlib import Path
from typing import Any

OUT = Path(__file__).with_name("network_cases.json")
PA_PER_INWC = 249.08891
CFM_M3_S = 0.3048**3 / 60.0
LB_FT3_KG_M3 = 0.45359237 / 0.3048**3
LB_FT_S_PA_S = 0.45359237 / 0.3048
HEAD_M_PER_INWC = 10.0
WATER_M3_S_PER_CFM = 1e-4
EPANET_MINOR = 0.02517
VELOCITY_FPM = 1097.0

Rows = list[dict[str, Any]]


def power(name: str, start: str, end: str, resistance: float) -> dict[str, Any]:
    return {"id": name, "start": start, "end": end,
            "law": {"law": "power", "resistance": resistance, "exponent": 2.0}}


def leak(name: str, start: str, cfm25: float, exponent: float) -> dict[str, Any]:
    return {"id": name, "start": start, "end": "belly",
            "law": {"law": "leak", "leakage_cfm25": cfm25, "exponent": exponent}}


def pipe(name: str, start: str, end: str, diameter_in: float, length_ft: float,
         roughness_ft: float, loss_c: float, air: dict[str, float]) -> dict[str, Any]:
    return {"id": name, "start": start, "end": end,
            "law": {"law": "duct", "diameter_in": diameter_in, "length_ft": length_ft,
                    "roughness_ft": roughness_ft, "fittings_c": loss_c, **air}}


def case(name: str, branches: Rows, inflow: dict[str, float], fixed: tuple[str, ...],
         library: str) -> dict[str, Any]:
    names = sorted({row[end] for row in branches for end in ("start", "end")})
    nodes = [
        {"id": node, "pressure_inwc": 0.0 if node in fixed else None,
         "inflow_cfm": inflow.get(node, 0.0)}
        for node in names
    ]
    return {"id": name, "library": library, "nodes": nodes, "branches": branches}


# ------------------------------------------------------------------ square-law networks


def square_cases() -> list[dict[str, Any]]:
    rng = random.Random(20)
    water = "EPANET 2.2 through wntr 1.5.0"
    cases = [
        case("parallel-registers", [
            power(f"register-{k}", "box", "room", 1e-5 * (1.0 + 0.4 * k)) for k in range(12)
        ], {"box": 1100.0}, ("room",), water),
        case("one-crossover", [
            power("trunk-a", "box", "a", 2e-7), power("crossover", "box", "b", 4e-7),
            power("a-1", "a", "room", 3e-6), power("a-2", "a", "room", 2.4e-6),
            power("a-3", "a", "room", 3.5e-6),
            power("b-1", "b", "room", 2.2e-6), power("b-2", "b", "room", 2.8e-6),
        ], {"box": 900.0}, ("room",), water),
        case("two-crossovers", [
            power("feed-a", "box", "a1", 1e-7), power("crossover-1", "box", "b1", 2.5e-7),
            power("run-a", "a1", "a2", 4e-7), power("run-b", "b1", "b2", 4e-7),
            power("crossover-2", "a2", "b2", 3e-7),
            power("a1-register", "a1", "room", 2.4e-6), power("b1-register", "b1", "room", 2e-6),
            power("a2-register", "a2", "room", 2.8e-6), power("b2-register", "b2", "room", 3e-6),
        ], {"box": 1000.0}, ("room",), water),
    ]
    ring: Rows = []
    for k in range(12):
        ring.append(power(f"ring-{k}", f"n{k}", f"n{(k + 1) % 12}", rng.uniform(2e-7, 8e-7)))
        ring.append(power(f"register-{k}", f"n{k}", "room", rng.uniform(8e-6, 3e-5)))
    ring.append(power("feed-1", "box", "n0", 1.5e-7))
    ring.append(power("feed-2", "box", "n5", 2.5e-7))
    cases.append(case("perimeter-loop", ring, {"box": 1200.0}, ("room",), water))

    leaky: Rows = [power("trunk-a", "box", "a0", 1e-7), power("crossover", "box", "b0", 3e-7),
                   leak("box-leak", "box", 45.0, 0.6)]
    for side in "ab":
        for k in range(6):
            leaky.append(power(f"run-{side}{k + 1}", f"{side}{k}", f"{side}{k + 1}",
                               rng.uniform(1e-7, 4e-7)))
            leaky.append(power(f"register-{side}{k + 1}", f"{side}{k + 1}", "room",
                               rng.uniform(8e-6, 2.5e-5)))
            leaky.append(leak(f"leak-{side}{k + 1}", f"{side}{k + 1}", rng.uniform(3.0, 15.0), 0.6))
    cases.append(case("leaky-home", leaky, {"box": 1050.0}, ("room", "belly"), water))

    rooms: Rows = [power("trunk-a", "box", "a0", 1e-7), power("crossover", "box", "b0", 3e-7)]
    for side in "ab":
        for k in range(5):
            rooms += [
                power(f"run-{side}{k + 1}", f"{side}{k}", f"{side}{k + 1}",
                      rng.uniform(1e-7, 4e-7)),
                power(f"register-{side}{k + 1}", f"{side}{k + 1}", f"room-{side}{k + 1}",
                      rng.uniform(8e-6, 2e-5)),
                power(f"transfer-{side}{k + 1}", f"room-{side}{k + 1}", "hall",
                      rng.uniform(5e-7, 4e-6)),
                power(f"undercut-{side}{k + 1}", f"room-{side}{k + 1}", "hall",
                      rng.uniform(1e-5, 4e-5)),
            ]
    cases.append(case("closed-rooms", rooms, {"box": 900.0, "hall": 0.0}, ("hall",), water))

    grid: Rows = []
    side_count = 10
    for x in range(side_count):
        for y in range(side_count):
            if x + 1 < side_count:
                grid.append(power(f"x{x}-{y}", f"g{x}-{y}", f"g{x + 1}-{y}",
                                  10 ** rng.uniform(-7, -5)))
            if y + 1 < side_count:
                grid.append(power(f"y{x}-{y}", f"g{x}-{y}", f"g{x}-{y + 1}",
                                  10 ** rng.uniform(-7, -5)))
    for k in range(20):
        x, y = rng.randrange(1, side_count), rng.randrange(1, side_count)
        grid.append(power(f"register-{k}", f"g{x}-{y}", "room", rng.uniform(1e-6, 2e-5)))
    cases.append(case("grid-of-200", grid, {"g0-0": 1500.0}, ("room",), water))
    return cases


def by_epanet(entry: dict[str, Any]) -> dict[str, float]:
    import wntr

    foot, cubic_foot = 0.3048, 0.3048**3
    built = time.perf_counter()
    model = wntr.network.WaterNetworkModel()
    model.options.hydraulic.accuracy = 1e-9
    model.options.hydraulic.trials = 500
    # Litres and metres: the library converts emitters as if their exponent were 0.5 otherwise.
    model.options.hydraulic.inpfile_units = "LPS"
    model.options.time.duration = 0
    leaks = [row for row in entry["branches"] if row["law"]["law"] == "leak"]
    if leaks:
        exponents = {row["law"]["exponent"] for row in leaks}
        assert len(exponents) == 1
        model.options.hydraulic.emitter_exponent = exponents.pop()
    for node in entry["nodes"]:
        if node["pressure_inwc"] is not None:
            if node["id"] != "belly":
                model.add_reservoir(node["id"], base_head=0.0)
            continue
        demand = -node["inflow_cfm"] * WATER_M3_S_PER_CFM
        model.add_junction(node["id"], base_demand=demand, elevation=0.0)
    head_ft = HEAD_M_PER_INWC / foot
    flow_cfs = WATER_M3_S_PER_CFM / cubic_foot
    diameter_m = 0.5
    for row in entry["branches"]:
        law = row["law"]
        if law["law"] == "leak":
            exponent = law["exponent"]
            at_25 = 25.0 / PA_PER_INWC * HEAD_M_PER_INWC
            node = model.get_node(row["start"])
            node.emitter_coefficient = law["leakage_cfm25"] * WATER_M3_S_PER_CFM / at_25**exponent
            continue
        resistance = law["resistance"] * head_ft / flow_cfs**2
        minor = resistance * (diameter_m / foot) ** 4 / EPANET_MINOR
        model.add_pipe(row["id"], row["start"], row["end"], length=0.001, diameter=diameter_m,
                       roughness=200.0, minor_loss=minor)
    with tempfile.TemporaryDirectory() as folder:
        begun = time.perf_counter()
        results = wntr.sim.EpanetSimulator(model).run_sim(file_prefix=str(Path(folder) / "net"))
        entry["library_ms"] = round(1000.0 * (time.perf_counter() - begun), 3)
        entry["library_build_and_solve_ms"] = round(1000.0 * (time.perf_counter() - built), 3)
    flows = results.link["flowrate"].iloc[0]
    demands = results.node["demand"].iloc[0]
    answer = {}
    for row in entry["branches"]:
        if row["law"]["law"] == "leak":
            node = next(n for n in entry["nodes"] if n["id"] == row["start"])
            flow = float(demands[row["start"]]) / WATER_M3_S_PER_CFM
            # The demand that the library reports holds the inflow put in at that node too.
            answer[row["id"]] = flow + node["inflow_cfm"]
        else:
            answer[row["id"]] = float(flows[row["id"]]) / WATER_M3_S_PER_CFM
    return answer


# --------------------------------------------------------------------- straight ducts


def duct_cases() -> list[dict[str, Any]]:
    rng = random.Random(33)
    library = "pandapipes 0.16.0, Colebrook"
    sea = {"density_lb_ft3": 0.075, "viscosity_lb_ft_s": 1.2169e-5}
    high = {"density_lb_ft3": 0.0603, "viscosity_lb_ft_s": 1.2749e-5}
    metal, flex = 0.0003, 0.003
    cases = [
        case("flex-crossover", [
            pipe("box-a", "box", "a", 10.4, 2.0, metal, 1.2, sea),
            pipe("trunk-a", "a", "room-a", 9.0, 20.0, metal, 3.0, sea),
            pipe("crossover", "box", "b", 12.0, 14.0, flex, 2.0, sea),
            pipe("trunk-b", "b", "room-b", 9.0, 20.0, metal, 3.0, sea),
        ], {"box": 900.0}, ("room-a", "room-b"), library),
        case("three-in-parallel", [
            pipe("six", "box", "room", 6.0, 30.0, metal, 2.0, sea),
            pipe("eight", "box", "room", 8.0, 30.0, flex, 2.0, sea),
            pipe("ten", "box", "room", 10.0, 45.0, metal, 4.0, sea),
        ], {"box": 800.0}, ("room",), library),
        case("two-flex-crossovers-high-up", [
            pipe("box-a", "box", "a1", 10.4, 2.0, metal, 1.3, high),
            pipe("crossover-1", "box", "b1", 10.0, 16.0, flex, 2.5, high),
            pipe("run-a", "a1", "a2", 9.0, 18.0, metal, 0.3, high),
            pipe("run-b", "b1", "b2", 9.0, 18.0, metal, 0.3, high),
            pipe("crossover-2", "a2", "b2", 8.0, 16.0, flex, 2.5, high),
            pipe("a1-boot", "a1", "room", 7.0, 2.0, metal, 3.5, high),
            pipe("a2-boot", "a2", "room", 7.0, 2.0, metal, 3.5, high),
            pipe("b1-boot", "b1", "room", 7.0, 2.0, metal, 3.0, high),
            pipe("b2-boot", "b2", "room", 6.0, 2.0, metal, 3.5, high),
        ], {"box": 850.0}, ("room",), library),
    ]
    ring: Rows = [pipe("feed", "box", "n0", 12.0, 4.0, metal, 1.3, sea)]
    for k in range(14):
        ring.append(pipe(f"ring-{k}", f"n{k}", f"n{(k + 1) % 14}", 9.0, rng.uniform(5.0, 12.0),
                         metal, 0.2, sea))
        ring.append(pipe(f"boot-{k}", f"n{k}", "room", 5.0 if k % 3 else 6.0,
                         rng.uniform(1.0, 4.0), metal, rng.uniform(2.5, 4.5), sea))
    cases.append(case("perimeter-loop-of-ducts", ring, {"box": 1150.0}, ("room",), library))

    cases.append(case("home-of-40", home_rows(10, rng, high), {"box": 900.0},
                      ("room", "belly"), library))

    ladder = home_rows(48, rng, sea, rungs=True)
    cases.append(case("ladder-of-200", ladder, {"box": 4200.0}, ("room", "belly"), library))

    tree: Rows = []
    for k in range(1, 60):
        above = (k - 1) // 2
        size = max(5.0, 16.0 - 1.6 * math.log2(k + 1))
        tree.append(pipe(f"limb-{k}", f"t{above}", f"t{k}", size, rng.uniform(4.0, 15.0),
                         rng.choice((metal, flex)), rng.uniform(0.1, 1.5), sea))
        if 2 * k + 1 >= 60:
            tree.append(pipe(f"boot-{k}", f"t{k}", "room", 5.0, 2.0, metal, 3.0, sea))
    tree.append(pipe("boot-0", "t0", "room", 4.0, 2.0, metal, 3.0, sea))
    cases.append(case("tree-of-90", tree, {"t0": 2600.0}, ("room",), library))
    return cases


def home_rows(rooms: int, rng: random.Random, air: dict[str, float], rungs: bool = False) -> Rows:
    """Two trunks, a crossover, boots, and leaks as small rough holes."""
    size = (rooms / 8.0) ** 0.5
    rows: Rows = [
        pipe("box-a", "box", "a0", 10.5 * size, 2.0, 0.0003, 1.3, air),
        pipe("crossover", "box", "b0", 12.0 * size, 15.0, 0.003, 2.5, air),
        pipe("box-leak", "box", "belly", 3.0, 0.5, 0.003, 2.8, air),
    ]
    for side in "ab":
        count = rooms // 2
        for k in range(1, count + 1):
            rows += [
                pipe(f"run-{side}{k}", f"{side}{k - 1}", f"{side}{k}", 9.5 * size,
                     rng.uniform(5.0, 9.0), 0.0003, 0.15, air),
                pipe(f"boot-{side}{k}", f"{side}{k}", f"end-{side}{k}", 6.0,
                     rng.uniform(1.0, 3.0), 0.0003, rng.uniform(2.0, 3.5), air),
                pipe(f"register-{side}{k}", f"end-{side}{k}", "room", 8.0, 0.5, 0.0003,
                     rng.uniform(3.0, 5.0), air),
                pipe(f"leak-{side}{k}", f"{side}{k}", "belly", 1.2, 0.2, 0.003,
                     rng.uniform(2.0, 4.0), air),
            ]
    if rungs:
        for k in range(6, rooms // 2, 6):
            rows.append(pipe(f"rung-{k}", f"a{k}", f"b{k}", 8.0, 14.0, 0.003, 2.0, air))
    return rows


def by_pandapipes(entry: dict[str, Any]) -> dict[str, float]:
    import pandapipes

    law = entry["branches"][0]["law"]
    density = law["density_lb_ft3"] * LB_FT3_KG_M3
    viscosity = law["viscosity_lb_ft_s"] * LB_FT_S_PA_S
    built = time.perf_counter()
    net = pandapipes.create_empty_network()
    fluid = pandapipes.create_constant_fluid(
        "air as met here", "liquid", density=density, viscosity=viscosity, heat_capacity=1005.0,
        molar_mass=28.97,
    )
    net.fluid = fluid
    places = {}
    for node in entry["nodes"]:
        places[node["id"]] = pandapipes.create_junction(net, pn_bar=1.0, tfluid_k=293.15,
                                                        name=node["id"])
        if node["pressure_inwc"] is not None:
            pandapipes.create_ext_grid(net, places[node["id"]], p_bar=1.0, t_k=293.15)
        if node["inflow_cfm"]:
            pandapipes.create_source(net, places[node["id"]],
                                     mdot_kg_per_s=node["inflow_cfm"] * CFM_M3_S * density)
    pipes = {}
    # The handbook's 1097 in the velocity pressure is 60 sqrt(2 g) rounded: the same pressures
    # come from exact units with lengths and losses in proportion.
    exact = 60.0 * math.sqrt(2.0 * PA_PER_INWC / LB_FT3_KG_M3) / 0.3048
    for row in entry["branches"]:
        law = row["law"]
        pipes[row["id"]] = pandapipes.create_pipe_from_parameters(
            net, places[row["start"]], places[row["end"]],
            length_km=law["length_ft"] * 0.0003048,
            inner_diameter_mm=law["diameter_in"] * 25.4,
            k_mm=law["roughness_ft"] * 304.8, loss_coefficient=law["fittings_c"], sections=1,
        )
    entry["rounding_of_1097"] = round((exact / VELOCITY_FPM) ** 2 - 1.0, 6)
    begun = time.perf_counter()
    pandapipes.pipeflow(net, friction_model="colebrook", iter=500, tol_p=1e-11, tol_m=1e-11,
                        tol_res=1e-9, max_iter_colebrook=100)
    entry["library_ms"] = round(1000.0 * (time.perf_counter() - begun), 3)
    entry["library_build_and_solve_ms"] = round(1000.0 * (time.perf_counter() - built), 3)
    flows = net.res_pipe["mdot_from_kg_per_s"]
    return {name: float(flows[index]) / density / CFM_M3_S for name, index in pipes.items()}


# ------------------------------------------------------- fans and free exponents by a root


def row(name: str, start: str, end: str, **law: Any) -> dict[str, Any]:
    return {"id": name, "start": start, "end": end, "law": law}


def plant(fan: dict[str, Any], media: float = 0.12) -> Rows:
    """Closet, filter, coil, fan, box, two trunks of power laws, rooms, transfers and leaks."""
    return [
        row("louver", "hall", "closet", law="power", resistance=1.6e-8, exponent=2.0),
        row("filter", "closet", "below-filter", law="point", drop_inwc=media, airflow_cfm=900.0,
            exponent=1.176),
        row("coil", "below-filter", "below-coil", law="point", drop_inwc=0.22, airflow_cfm=900.0,
            exponent=1.8),
        row("fan", "below-coil", "box", **fan),
        row("trunk-a", "box", "a", law="power", resistance=5e-7, exponent=1.9),
        row("crossover", "box", "b", law="power", resistance=4e-7, exponent=1.95),
        row("box-leak", "box", "belly", law="leak", leakage_cfm25=60.0),
        row("leak-b", "b", "belly", law="leak", leakage_cfm25=18.0, exponent=0.6),
        row("a-1", "a", "hall", law="power", resistance=2.2e-6, exponent=2.0),
        row("a-2", "a", "bed-1", law="power", resistance=4e-6, exponent=1.85),
        row("b-1", "b", "hall", law="power", resistance=3.5e-6, exponent=2.0),
        row("b-2", "b", "bed-2", law="power", resistance=6e-6, exponent=2.0),
        row("transfer-1", "bed-1", "hall", law="power", resistance=3e-7, exponent=2.0),
        row("transfer-2", "bed-2", "hall", law="power", resistance=8e-7, exponent=1.7),
    ]


TABLE = [[400.0, 0.92], [600.0, 0.84], [800.0, 0.68], [1000.0, 0.43], [1200.0, 0.08]]


def root_cases() -> list[dict[str, Any]]:
    library = "scipy 1.16.3, root of balances and laws"
    fixed = ("hall", "belly")
    curve = {"law": "fan-curve", "shutoff_inwc": 1.0, "coefficient": 3.5e-7}
    table = {"law": "fan-table", "rows": TABLE}
    return [
        case("fan-curve-and-mixed-exponents", plant(curve), {}, fixed, library),
        case("fan-table", plant(table), {}, fixed, library),
        case("fan-table-and-dirty-filter", plant(table, 0.45), {}, fixed, library),
        case("constant-airflow-held", plant(
            {"law": "constant-airflow", "set_cfm": 850.0, "limit_inwc": 0.9}), {}, fixed, library),
        case("constant-airflow-beyond-its-limit", plant(
            {"law": "constant-airflow", "set_cfm": 1100.0, "limit_inwc": 0.5}), {}, fixed, library),
        case("two-fans", [
            *plant(table),
            row("bath-fan", "bed-2", "outdoors", law="fan-curve", shutoff_inwc=0.3,
                coefficient=3e-5),
            row("shell", "outdoors", "hall", law="leak", leakage_cfm25=600.0, exponent=0.65),
            row("shell-bed", "outdoors", "bed-2", law="leak", leakage_cfm25=120.0, exponent=0.65),
        ], {}, ("hall", "belly"), library),
    ]


def loss(law: dict[str, Any], flow: float) -> float:
    """Each law once more, written from its definition."""
    import numpy

    name = law["law"]
    if name == "power":
        return law["resistance"] * abs(flow) ** (law["exponent"] - 1.0) * flow
    if name == "point":
        n = law["exponent"]
        return math.copysign(law["drop_inwc"] * abs(flow / law["airflow_cfm"]) ** n, flow)
    if name == "leak":
        # The exponent of duct leaks where none is given: 0.65.
        pascal = 25.0 * abs(flow / law["leakage_cfm25"]) ** (1.0 / law.get("exponent", 0.65))
        return math.copysign(pascal / PA_PER_INWC, flow)
    if name == "fan-curve":
        return law["coefficient"] * abs(flow) * flow - law["shutoff_inwc"]
    if name == "fan-table":
        flows, rises = zip(*law["rows"], strict=True)
        return -float(numpy.interp(flow, flows, rises))
    raise ValueError(name)


def by_root(entry: dict[str, Any]) -> dict[str, float]:
    from scipy.optimize import root

    free = [n["id"] for n in entry["nodes"] if n["pressure_inwc"] is None]
    branches = entry["branches"]

    def solve(limited: bool) -> tuple[list[float], dict[str, float]]:
        def residuals(unknown: Any) -> list[float]:
            flows = [1000.0 * q for q in unknown[: len(branches)]]
            pressure = dict(zip(free, unknown[len(branches):], strict=True))
            balance = dict.fromkeys(free, 0.0)
            out = []
            for part, flow in zip(branches, flows, strict=True):
                start, end, law = part["start"], part["end"], part["law"]
                if start in balance:
                    balance[start] -= flow
                if end in balance:
                    balance[end] += flow
                fall = pressure.get(start, 0.0) - pressure.get(end, 0.0)
                if law["law"] == "constant-airflow":
                    out.append(fall + law["limit_inwc"] if limited
                               else (flow - law["set_cfm"]) / 1000.0)
                else:
                    out.append(fall - loss(law, flow))
            return out + [value / 1000.0 for value in balance.values()]

        for guess in (0.1, 0.3, 0.5, 0.05):
            found = root(residuals, [guess] * len(branches) + [0.0] * len(free), method="hybr",
                         tol=1e-13, options={"maxfev": 100000})
            if max(abs(v) for v in residuals(found.x)) < 1e-9:
                flows = [1000.0 * float(q) for q in found.x[: len(branches)]]
                return flows, dict(zip(free, found.x[len(branches):], strict=True))
        raise RuntimeError(entry["id"])

    begun = time.perf_counter()
    flows, pressure = solve(limited=False)
    for part in branches:
        law = part["law"]
        if law["law"] == "constant-airflow":
            rise = pressure[part["end"]] - pressure[part["start"]]
            if rise > law["limit_inwc"]:
                flows, pressure = solve(limited=True)
    entry["library_ms"] = round(1000.0 * (time.perf_counter() - begun), 3)
    entry["library_build_and_solve_ms"] = entry["library_ms"]
    return {part["id"]: flow for part, flow in zip(branches, flows, strict=True)}


def main() -> None:
    cases = []
    for entry in square_cases():
        entry["flow_cfm"] = {key: round(v, 5) for key, v in by_epanet(entry).items()}
        cases.append(entry)
    for entry in duct_cases():
        entry["flow_cfm"] = {key: round(v, 5) for key, v in by_pandapipes(entry).items()}
        cases.append(entry)
    for entry in root_cases():
        entry["flow_cfm"] = {key: round(v, 5) for key, v in by_root(entry).items()}
        cases.append(entry)
    lines = ",\n".join(json.dumps(entry) for entry in cases)
    OUT.write_text("[\n" + lines + "\n]\n", encoding="utf-8")
    for entry in cases:
        print(entry["id"], len(entry["branches"]), entry["library"], entry["library_ms"],
              entry["library_build_and_solve_ms"], "ms")


if __name__ == "__main__":
    main()
