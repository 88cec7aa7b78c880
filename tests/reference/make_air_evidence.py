"""Make tests/evidence/ducts.json, network.json and air_path.json.

    pip install fluids==1.3.1 numpy==2.4.6 scipy==1.17.1 psychrolib==2.5.0
    PYTHONPATH=calc/src python tests/reference/make_air_evidence.py

Values marked `computed` come from fluids 1.3.1, scipy 1.17.1, numpy 2.4.6 or psychrolib 2.5.0
in SI units, or from the libraries named in network_cases.json; values marked `read` are typed
below as printed. No number comes from the code under test: it is not imported.
"""

import json
import math
from pathlib import Path
from typing import Any

import fluids
import numpy
import psychrolib
import scipy.constants
from fluids.atmosphere import ATMOSPHERE_1976
from fluids.fittings import K_branch_diverging_Crane, K_run_diverging_Crane, diffuser_sharp
from scipy.integrate import quad, solve_ivp

HERE = Path(__file__).parent
EVIDENCE = HERE.parent / "evidence"
FOOT, POUND = 0.3048, 0.45359237
CFM = FOOT**3 / 60.0
PA_PER_INWC = 249.08891
LIBRARY = "fluids 1.3.1"
F21 = "2021 Fundamentals handbook (SI), chapter 21, Duct Design"

Row = dict[str, Any]


def entry(name: str, call: str, inputs: Row, printed: str, unit: str, document: str, section: str,
          how: str, module: str = "ducts", **more: Any) -> Row:
    row = {"id": name, "calculator": "physics", "call": f"downflow.physics.{module}:{call}",
           "inputs": inputs, "output": None, "printed": printed, "unit": unit,
           "document": document, "section": section, "how": how, "edge": False, "note": ""}
    row.update(more)
    return row


def friction() -> list[Row]:
    rows = []
    points = [(2300, 0.0), (2300, 0.03), (3000, 0.001), (5000, 1e-5), (1e4, 0.0), (1e4, 0.0045),
              (2.6157e4, 0.0006), (4e4, 0.05), (6e4, 0.0005), (1e5, 0.0), (1e5, 0.003),
              (3e5, 1e-4), (1e6, 0.01), (1e7, 1e-6), (1e8, 0.05)]
    for reynolds, rough in points:
        value = fluids.friction.Colebrook(float(reynolds), rough)
        rows.append(entry(
            f"colebrook-{reynolds:g}-{rough:g}", "friction_factor",
            {"reynolds": reynolds, "relative_roughness": rough}, f"{value:.6f}", "",
            LIBRARY, "friction.Colebrook", "computed", relative=1e-4,
            edge=reynolds in (2300, 1e8), note=f"{LIBRARY}, exact solution"))
    for reynolds in (100, 1000, 2000):
        value = fluids.friction_factor(Re=float(reynolds), eD=0.001)
        rows.append(entry(
            f"laminar-{reynolds}", "friction_factor",
            {"reynolds": reynolds, "relative_roughness": 0.001}, f"{value:.6f}", "",
            LIBRARY, "friction_factor, laminar", "computed", relative=1e-4, edge=reynolds == 2000,
            note=LIBRARY))
    cases = [(5, 70, 100, 0.0003, 0.075, 70), (6, 100, 100, 0.0003, 0.075, 70),
             (8, 200, 100, 0.0003, 0.075, 70), (10, 400, 100, 0.0003, 0.075, 70),
             (12, 600, 100, 0.003, 0.075, 70), (14, 1000, 100, 0.003, 0.075, 70),
             (9, 450, 24, 0.0003, 0.0623, 70), (12, 450, 15, 0.003, 0.0556, 120),
             (4, 20, 10, 0.0003, 0.0712, 40), (16, 1255, 60, 0.0005, 0.06, 100),
             (8, 250, 50, 0.0003, 0.06121, 100)]
    for diameter, flow, length, rough, density, air_f in cases:
        viscosity = ATMOSPHERE_1976.viscosity((air_f + 459.67) / 1.8)
        d, v_dot = diameter * 0.0254, flow * CFM
        velocity = v_dot / (math.pi * d * d / 4)
        rho = density * POUND / FOOT**3
        re = fluids.Reynolds(V=velocity, D=d, rho=rho, mu=viscosity)
        f = fluids.friction.Colebrook(re, rough * FOOT / d)
        drop = fluids.dP_from_K(f * length * FOOT / d, rho, velocity) / PA_PER_INWC
        rows.append(entry(
            f"friction-{diameter}in-{flow}cfm-{density}", "friction_inwc",
            {"airflow_cfm": flow, "diameter_in": diameter, "length_ft": length,
             "roughness_ft": rough, "density_lb_ft3": density,
             "viscosity_lb_ft_s": float(f"{viscosity * FOOT / POUND:.6e}")},
            f"{drop:.5f}", "in w.c.", LIBRARY, "Colebrook, dP_from_K in SI units", "computed",
            relative=0.003,
            note=f"{LIBRARY}; 0.15 % apart because handbooks round 1,097.8 to 1,097 in the "
                 "velocity pressure"))
    for air_f in (-40, 70, 100, 200):
        value = ATMOSPHERE_1976.viscosity((air_f + 459.67) / 1.8) * FOOT / POUND
        rows.append(entry(
            f"viscosity-{air_f}", "viscosity_lb_ft_s", {"air_f": air_f}, f"{value:.5e}",
            "lb/(ft s)", LIBRARY, "ATMOSPHERE_1976.viscosity", "computed", relative=1e-4,
            edge=air_f == -40, note=LIBRARY))
    return rows


def shapes() -> list[Row]:
    guide = "Heating, Ventilating and Air Conditioning Guide 1956"
    rows = []
    for width, height, value in ((10, 5, "7.6"), (12, 5, "8.3"), (14, 5, "8.9"), (10, 4, "6.8"),
                                 (10, 6, "8.4"), (12, 6, "9.1"), (14, 6, "9.8"), (16, 6, "10.4"),
                                 (12, 8, "10.7"), (14, 10, "12.9"), (12, 12, "13.1")):
        rows.append(entry(
            f"rectangle-{width}x{height}", "rectangular_equivalent_in",
            {"width_in": width, "height_in": height}, value, "in", guide,
            "chapter 32, table 1: circular equivalents of rectangular ducts", "read",
            absolute=0.06, edge=(width, height) == (12, 12),
            note="the table rounds to 0.1 in, some entries up"))
    rows.append(entry("rectangle-400x200mm", "rectangular_equivalent_in",
                      {"width_in": 400, "height_in": 200}, "305", "mm", F21, "table 3", "read",
                      absolute=0.5, note="every length in millimetres: the formula has no unit"))
    rows.append(entry("oval-205x70mm", "oval_equivalent_in", {"major_in": 205, "minor_in": 70},
                      "125", "mm", F21, "table 4", "read", absolute=0.6,
                      note="every length in millimetres; 124.5 before rounding"))
    for small, large in ((80, 240), (10, 1000), (100, 100)):
        value = diffuser_sharp(Di1=math.sqrt(small), Di2=math.sqrt(large))
        rows.append(entry(f"expansion-{small}-{large}", "expansion_c",
                          {"small_area_in2": small, "large_area_in2": large}, f"{value:.5f}", "",
                          LIBRARY, "fittings.diffuser_sharp", "computed", absolute=1e-4,
                          edge=small == large, note=LIBRARY))
    for flow, main, area, main_area in ((80, 400, 28.27, 113.1), (120, 400, 28.27, 78.5),
                                        (60, 1000, 19.6, 70), (300, 500, 63.6, 70)):
        beta_sq = area / main_area
        value = K_branch_diverging_Crane(
            D_run=math.sqrt(main_area), D_branch=math.sqrt(area), Q_run=float(main - flow),
            Q_branch=float(flow), angle=90.0)
        rows.append(entry(f"takeoff-{flow}-of-{main}-area-{beta_sq:.2f}", "takeoff_c",
                          {"branch_cfm": flow, "main_cfm": main, "branch_area_in2": area,
                           "main_area_in2": main_area}, f"{value:.5f}", "", LIBRARY,
                          "fittings.K_branch_diverging_Crane", "computed", relative=1e-3,
                          note=f"{LIBRARY}; technical paper 410 (2009)"))
    for flow, main in ((80, 400), (250, 500), (20, 100)):
        value = K_run_diverging_Crane(D_run=10.0, D_branch=5.0, Q_run=float(main - flow),
                                      Q_branch=float(flow), angle=90.0)
        rows.append(entry(f"straight-run-{flow}-of-{main}", "straight_run_c",
                          {"branch_cfm": flow, "main_cfm": main}, f"{value:.5f}", "", LIBRARY,
                          "fittings.K_run_diverging_Crane", "computed", absolute=1e-4,
                          note=f"{LIBRARY}; technical paper 410 (2009)"))
    miter = "ASHRAE 1989, rectangular mitered elbow without vanes (CR3-6)"
    rows.append(entry("miter-60-table", "mitered_bend_c", {"angle_deg": 60}, "0.55", "", miter,
                      "60°, H/W 1", "read", relative=0.01, note="formula 0.5515"))
    rows.append(entry("miter-90-table", "mitered_bend_c", {"angle_deg": 90}, "1.3", "", miter,
                      "90°, H/W 0.25 to 0.5", "read", relative=0.008,
                      note="formula 1.306; the table falls to 1.2 at H/W 1"))
    for height, value in ((0.25, "1.3"), (1, "1.2"), (2, "1.1"), (3, "0.98")):
        rows.append(entry(f"miter-90-hw-{height:g}", "table_loss_c",
                          {"rows": {"table": "elbow_mitered"}, "first": 90, "second": height},
                          value, "", miter, f"90°, H/W {height:g}", "read", absolute=0.001))
    smooth = "2005 Fundamentals handbook (SI), chapter 35"
    for radius, height, value in ((0.5, 0.25, "1.53"), (0.75, 1, "0.44"), (1, 2, "0.18"),
                                  (1.5, 8, "0.17"), (2, 0.25, "0.20")):
        rows.append(entry(f"smooth-{radius:g}-hw-{height:g}", "table_loss_c",
                          {"rows": {"table": "elbow_smooth"}, "first": radius, "second": height},
                          value, "", smooth,
                          f"elbow 90°, smooth radius without vanes (CR3-1), r/W {radius:g}, "
                          f"H/W {height:g}", "read", absolute=0.001, edge=height == 8))
    for power, angle in ((0.1, 30), (0.3, 60)):
        half = math.sin(math.radians(angle / 2))
        value = (0.95 + 33.5 / angle) * (0.95 * half**2 + 2.05 * half**4)
        rows.append(entry(f"miter-{angle}-formula", "mitered_bend_c", {"angle_deg": angle},
                          f"{value:.5f}", "", "Handbook of hydraulic resistance", "diagram 6-7",
                          "derived", relative=1e-3, note=f"the formula by hand ({power:g})"))
    return rows


def flexible() -> list[Row]:
    rows = []
    diameter = round(250 / 25.4, 6)
    for percent, value, slack in ((4, "1.7", 0.05), (15, "3.5", 0.05), (30, "5.9", 0.15)):
        rows.append(entry(f"flex-250mm-{percent}", "flex_formula",
                          {"diameter_in": diameter, "compression_pct": percent}, value, "", F21,
                          f"table 2: 250 mm, {percent} % compression", "read", absolute=slack,
                          edge=percent == 30,
                          note="printed from tests" if percent == 30 else ""))
    rows.append(entry("flex-none", "flex_formula", {"diameter_in": 12, "compression_pct": 0},
                      "1", "", F21, "eq. 22: fully extended", "read", absolute=1e-9, edge=True))
    flow, length = round(0.470 / CFM, 4), round(1.8 / FOOT, 5)
    density = round(1.204 * FOOT**3 / POUND, 6)
    for name, rough_mm, pascal in (("spiral", 0.12, 7.7), ("stretched-flex", 0.9, 11.4)):
        rows.append(entry(f"f21-{name}", "friction_inwc",
                          {"airflow_cfm": flow, "diameter_in": diameter, "length_ft": length,
                           "roughness_ft": round(rough_mm / 1000 / FOOT, 7),
                           "density_lb_ft3": density}, f"{pascal / PA_PER_INWC:.5f}", "in w.c.",
                          F21, f"table 2: {name.replace('-', ' ')}, {pascal} Pa", "read",
                          relative=0.017, note=f"printed {pascal} Pa; 470 L/s, 250 mm, 1.8 m; the "
                          "handbook's own rounding and air properties"))
    for size, percent in ((6, 15), (8, 30), (12, 10)):
        value = 1 + 0.58 * percent * math.exp(-0.00496 * 25.4 * size)
        rows.append(entry(f"flex-{size}in-{percent}", "flex_formula",
                          {"diameter_in": size, "compression_pct": percent}, f"{value:.4f}", "",
                          F21, "eq. 22 in millimetres", "derived", relative=5e-4,
                          note="0.00496 per mm as printed"))
    rows.append(entry("flex-large-high", "flex_factor",
                      {"diameter_in": 12, "compression_pct": 10}, "4", "",
                      "Texas A&M University, thesis on 12, 14 and 16 in flexible duct, 2013",
                      "abstract: more than four times the stretched loss above 4 %", "read",
                      absolute=1e-9, output="high"))
    rows.append(entry("flex-spring-back", "compression_pct",
                      {"installed_ft": 17, "stretched_ft": 20}, "15", "%",
                      "Trade article on flexible duct", "a released piece springs back to 15 %",
                      "derived", absolute=1e-6, note="100 (1 − 17/20)"))
    rows.append(entry("flex-tested-to-10", "flex_factor",
                      {"diameter_in": 10, "compression_pct": 15}, "false", "",
                      "Compression effects on pressure loss in flexible HVAC ducts, LBNL",
                      "abstract: tests of 6, 8 and 10 in", "read", output="beyond_tests",
                      edge=True))
    rows.append(entry("flex-large-from-4", "flex_factor",
                      {"diameter_in": 12, "compression_pct": 4.05}, "4", "",
                      "Texas A&M University, thesis on 12, 14 and 16 in flexible duct, 2013",
                      "abstract: more than four times the stretched loss above 4 %", "read",
                      absolute=1e-9, output="high", edge=True))
    for sag, spacing in ((4, 4), (3, 6)):
        k = 4 * sag / (12.0 * spacing)     # y = k x (1 - x), span 1: slope k (1 - 2x)
        arc = quad(lambda x, k=k: math.hypot(1.0, k * (1 - 2 * x)), 0, 1)[0]
        rows.append(entry(f"sag-{sag}in", "sag_length_factor",
                          {"sag_in": sag, "spacing_ft": spacing}, f"{arc:.6f}", "",
                          "scipy 1.17.1", "integrate.quad: arc of the parabola", "computed",
                          absolute=3.5e-4, note="scipy 1.17.1"))
    rows.append(entry("sag-2ft", "sag_length_factor", {"sag_in": 2, "spacing_ft": 4}, "1.0046",
                      "", "Geometry", "parabola: 8/3 (s/L)²", "derived", absolute=5e-5,
                      note="8/3 (2/48)² = 0.00463"))
    return rows


def openings() -> list[Row]:
    rows = []
    for area, pascal in ((15.0, 3.0), (100.0, 1.0), (250.0, 5.0)):
        rho = 0.075 * POUND / FOOT**3
        metres = math.sqrt(area * 0.0254**2 * 4 / math.pi)
        # Discharge coefficient 0.6 from a very wide duct: the approach velocity is nil.
        mass = fluids.flow_meter.flow_meter_discharge(
            D=metres * 1000, Do=metres, P1=101325.0, P2=101325.0 - pascal, rho=rho, C=0.6,
            expansibility=1.0)
        flow = mass / rho / CFM
        rows.append(entry(f"orifice-{area:g}-{pascal:g}Pa", "orifice_flow_cfm",
                          {"free_area_in2": area, "drop_pa": pascal}, f"{flow:.3f}", "cfm",
                          LIBRARY, "flow_meter.flow_meter_discharge, C = 0.6", "computed",
                          relative=0.002, note=f"{LIBRARY}; 0.07 % by 1,097 rounded"))
    rows.append(entry("orifice-area", "orifice_area_in2", {"airflow_cfm": 100, "drop_pa": 3},
                      "54.6", "in²", "Bernoulli with discharge coefficient 0.6", "", "derived",
                      absolute=0.06, note="100/(1.7622 · 0.6 · sqrt 3)"))
    for pressure, value in ((0.5, 0.5**0.65), (2.0, 2.0**0.65), (4.0, 4.0**0.65)):
        rows.append(entry(
            f"leak-class-{pressure:g}", "leakage_cfm",
            {"leakage_cfm25": round(24 * (25 / PA_PER_INWC) ** 0.65, 8),
             "pressure_pa": pressure * PA_PER_INWC},
            f"{24 * value:.3f}", "cfm", "Leakage class 24",
            f"F = 24 P^0.65 at {pressure:g} in w.c.", "derived", relative=1e-4,
            note="published definition of the leakage class, 100 ft²"))
    rows.append(entry("velocity-pressure-4005", "velocity_pressure_inwc",
                      {"velocity_fpm": 4005, "density_lb_ft3": 0.075}, "1.000", "in w.c.",
                      "Fundamentals handbook, Duct Design", "VP = (V/4005)² at 0.075 lb/ft³",
                      "read", absolute=0.0006, edge=True))
    value = 0.5 * 1.2 * 5.0**2 / PA_PER_INWC
    rows.append(entry("velocity-pressure-5ms", "velocity_pressure_inwc",
                      {"velocity_fpm": 5.0 / FOOT * 60, "density_lb_ft3": 1.2 * FOOT**3 / POUND},
                      f"{value:.6f}", "in w.c.", "Bernoulli in SI units", "", "derived",
                      relative=0.002, note="15 Pa"))
    rows.append(entry("reynolds-standard", "reynolds",
                      {"velocity_fpm": 1, "diameter_in": 1, "density_lb_ft3": 0.075,
                       "viscosity_lb_ft_s": 1.2169e-5}, "8.56", "", "Duct-fitting tables, ASHRAE",
                      "Re = 8.56 D V for standard air", "read", absolute=0.005, edge=True))
    for low, high in ((1, 2), (500, 1000)):
        rows.append(entry(f"sound-{high}", "sound_change_db", {"old_fpm": low, "new_fpm": high},
                          "15", "dB", "Trade article on flow noise",
                          "sound power rises with V⁵ to V⁶: 15 to 18 dB for double velocity",
                          "read", absolute=0.1, output="low"))
    rows.append(entry("sound-high", "sound_change_db", {"old_fpm": 400, "new_fpm": 800}, "18",
                      "dB", "Trade article on flow noise",
                      "sound power rises with V⁵ to V⁶: 15 to 18 dB for double velocity", "read",
                      absolute=0.1, output="high"))
    acoustics = "Architectural acoustics table of air velocity at free openings"
    for fpm, back, low in ((275, False, "15"), (400, False, "25"), (500, False, "30"),
                           (650, False, "40"), (330, True, "15"), (450, True, "25")):
        rows.append(entry(f"noise-{fpm}-{'return' if back else 'supply'}", "noise_band",
                          {"rows": {"table": "noise_velocity"}, "velocity_fpm": fpm,
                           "returning": back}, low, "NC", acoustics,
                          f"{'return' if back else 'supply'}, {fpm} ft/min", "read",
                          absolute=0.001, output="low", edge=fpm == 500))
    rows.append(entry("filter-350", "scaled_drop_inwc",
                      {"drop_inwc": 0.15, "airflow_cfm": 300, "at_cfm": 350, "exponent": 1.176},
                      "0.180", "in w.c.", "Mean of published filter tests", "exponent 1/0.85",
                      "derived", absolute=0.0005, note="0.15 (350/300)^1.176"))
    rows.append(entry("duct-exit", "duct_exit_f",
                      {"entering_f": 100, "around_f": 30, "surface_ft2": 150, "insulation_r": 6,
                       "airflow_cfm": 950, "density_lb_ft3": 0.075}, "98.315", "°F",
                      "Heat balance along a duct", "exp(−A/(60 Q rho cp R))", "derived",
                      absolute=0.002, note="exp(−150/(1026 · 6)) = 0.97593"))
    rows.append(entry("takeoff-share-4", "takeoff_friction_share", {"takeoffs": 4}, "0.4688", "",
                      "Arithmetic", "(1 + 4 + 9 + 16)/64", "derived", absolute=5e-5))
    rows.append(entry("equal-length", "equal_friction_length_ft",
                      {"loss_c": 1.0, "diameter_in": 12, "friction_factor": 0.02}, "50", "ft",
                      "Arithmetic", "C D/(12 f)", "derived", absolute=1e-6))
    return rows


def networks() -> list[Row]:
    """Flows of the smaller networks one by one, and the ends of the large ones."""
    rows = []
    cases = json.loads((HERE / "network_cases.json").read_text(encoding="utf-8"))
    for case in cases:
        flows = case["flow_cfm"]
        names = list(flows)
        count = 4 if len(names) <= 17 else 2 if len(names) <= 45 else 1
        # Spread over the list, leaving out flows too small to matter.
        large = [n for n in names if abs(flows[n]) > 0.01 * max(abs(v) for v in flows.values())]
        step = max(1, len(large) // count)
        for name in large[step - 1::step][:count]:
            rows.append(entry(
                f"net-{case['id']}-{name}", "branch_flow_cfm",
                {"nodes": case["nodes"], "branches": case["branches"], "branch": name},
                f"{flows[name]:.4f}", "cfm", case["library"].split(",")[0],
                f"network {case['id']}, branch {name}, {len(names)} branches", "computed",
                module="network", relative=0.001,
                edge=case["id"].startswith(("constant-airflow-beyond", "grid", "ladder")),
                note=f"{case['library']}; tests/reference/make_network_cases.py"))
    return rows


def dry_density(elevation_ft: float, air_f: float) -> float:
    """Density of dry air by psychrolib. [lb/ft³]"""
    psychrolib.SetUnitSystem(psychrolib.IP)
    pressure = psychrolib.GetStandardAtmPressure(elevation_ft)
    return float(psychrolib.GetDryAirDensity(air_f, pressure))


def air_path() -> list[Row]:
    """Values for the calculators of the air path beyond ducts and networks."""
    rows = []
    moist = "psychrolib 2.5.0"
    for elevation, air_f in ((0, 70), (3000, 70), (6200, 68), (9000, 100)):
        density = dry_density(elevation, air_f)
        rows.append(entry(f"target-density-{elevation}", "density_lb_ft3",
                          {"elevation_ft": elevation, "air_f": air_f}, f"{density:.5f}",
                          "lb/ft³", moist, "GetStandardAtmPressure, GetDryAirDensity",
                          "computed", module="air", calculator="airflow-target",
                          edge=elevation == 0, absolute=2e-5, note=moist))
        rows.append(entry(f"target-actual-{elevation}", "actual_cfm",
                          {"standard_cfm": 1000, "density_lb_ft3": round(density, 8)},
                          f"{75 / density:.2f}", "cfm", moist, "0.075 over its dry-air density",
                          "computed", module="air", calculator="airflow-target", relative=1e-4,
                          note=moist))
    page = "24 CFR 3280"
    for area, value in ((5, "1"), (120, "24")):
        rows.append(entry(f"hud-room-{area}", "hud_room_opening_in2", {"floor_area_ft2": area},
                          value, "in²", page, "3280.715(b)(4): 1 in² for each 5 ft²",
                          "read" if area == 5 else "derived", module="return_path",
                          calculator="way-back", absolute=1e-9, note="120/5"))
    rows.append(entry("hud-return-duct", "hud_return_duct_in2", {"input_btuh": 1000}, "2", "in²",
                      page, "3280.715(b)(3): 2 in² for each 1,000 Btu/h", "read",
                      module="return_path", calculator="way-back", absolute=1e-9))
    for deck, value in ((2.0, "1"), (2.5, "1.25"), (1.99, "0"), (3.0, "1.25")):
        rows.append(entry(f"hud-undercut-{deck:g}", "hud_undercut_credit_in2",
                          {"door_width_in": 1, "undercut_from_deck_in": deck}, value, "in²", page,
                          "3280.715(b)(4): 2 to 2-1/2 in, half counts",
                          "read" if deck in (2.0, 2.5) else "derived", module="return_path",
                          calculator="way-back", absolute=1e-9, edge=deck in (2.0, 2.5)))
    for kind, value in (("wood", "25"), ("metal", "75")):
        rows.append(entry(f"louver-{kind}", "closet_free_in2",
                          {"face_in2": 100, "kind": kind, "free_pct": None, "other_in2": 0}, value,
                          "in²", "National fuel gas code, quoted by a gas utility's guide",
                          f"louvers of {kind}: {value} % free", "read", module="air_path",
                          calculator="way-back", absolute=1e-9))
    guide = "Building science guide of a national laboratory (PNNL), transfer grilles"
    for flow, value in ((149.9, "3"), (150, "5")):
        rows.append(entry(f"room-limit-{flow:g}", "room_limit_pa", {"supply_cfm": flow}, value,
                          "Pa", guide, "3 Pa; 5 Pa from 150 cfm", "read", module="return_path",
                          calculator="way-back", absolute=1e-9, edge=flow == 150))
    for side, kind, value in ((14, "enclosed rectangular", "0.013"),
                              (15, "enclosed rectangular", "0.016"),
                              (14, "exposed rectangular", "0.016"),
                              (20, "exposed rectangular", "0.019"), (10, "round", "0.013")):
        rows.append(entry(f"metal-{kind.split()[0]}-{side}", "metal_thickness_in",
                          {"largest_side_in": side, "rows": {"table": "metal_thickness"},
                           "kind": kind}, value, "in", page, "3280.715(a)(1), table", "read",
                          module="floor_box", calculator="floor-box", absolute=1e-9,
                          edge=side == 14))
    for box, run in ((36, 0), (24, 1)):
        rows.append(entry(f"metal-run-{box}", "metal_run_ft",
                          {"outlet_to_elements_in": 0, "box_height_in": box,
                           "trunk_to_collar_ft": run}, "3", "ft", page,
                          "3280.715(a)(1): 3 ft along the centre line", "read",
                          module="floor_box", calculator="closet-fit", absolute=1e-9,
                          edge=box == 36, note=f"{box} in and {run} ft of metal are 3 ft"))
    rows.append(entry("metal-none", "metal_short_ft", {"run_ft": 0}, "3", "ft", page,
                      "3280.715(a)(1): metal for at least 3 ft along the centre line", "read",
                      module="floor_box", calculator="closet-fit", absolute=1e-9, edge=True))
    rows.append(entry("box-calm", "loss_c",
                      {"outlet_area_in2": 200, "box_area_in2": 200, "opening_area_in2": 100,
                       "overlap_share": 1.0}, "0.50", "",
                      "Fitting-loss supplement, Principles of HVAC, 9th edition",
                      "entries, duct end flush in a wall", "read", module="floor_box",
                      calculator="floor-box", output="low", absolute=1e-6, edge=True,
                      note="a box as wide as its outlet loses no jet: the entry alone"))
    rows.append(entry("box-sharp", "loss_c",
                      {"outlet_area_in2": 200, "box_area_in2": 200, "opening_area_in2": 100,
                       "overlap_share": 1.0}, "1.3", "",
                      "ASHRAE 1989, rectangular mitered elbow without vanes (CR3-6)",
                      "90°, H/W 0.25 to 0.5", "read", module="floor_box",
                      calculator="floor-box", output="high", absolute=1e-6))
    for tall, deep in ((49, 21), (60, 24)):
        rows.append(entry(f"stand-up-{tall}", "tilt_height_in",
                          {"height_in": tall, "depth_in": deep},
                          f"{float(numpy.hypot(tall, deep)):.4f}", "in", "numpy 2.4.6", "hypot",
                          "computed", module="floor_box", calculator="closet-fit", absolute=1e-3,
                          note="numpy 2.4.6"))
    btu = 3600.0 / scipy.constants.Btu_IT
    for volts, amps, blower, holds in ((240, 41, 250, False), (239, 33, 230, True),
                                       (208, 20, 0, False)):
        heat = btu * (volts * amps + (0 if holds else blower))
        rows.append(entry(f"element-heat-{volts}", "element_heat_btuh",
                          {"volts": volts, "amps": amps, "blower_w": blower,
                           "clamp_holds_blower": holds}, f"{heat:.2f}", "Btu/h", "scipy 1.17.1",
                          "constants.Btu_IT", "computed", module="airflow_reading",
                          calculator="airflow-by-heat-rise", relative=1e-5, note="scipy 1.17.1"))
    for elevation in (0, 3000):
        density = dry_density(elevation, 70)
        flow = 34428.5 / (60 * 0.24 * density * 30)
        rows.append(entry(f"heat-rise-{elevation}", "airflow_cfm",
                          {"heat_btuh": 34428.5, "rise_f": 30,
                           "density_lb_ft3": round(density, 9)}, f"{flow:.2f}", "cfm", moist,
                          "heat over 60 · 0.24 · density · rise", "computed", module="air",
                          calculator="airflow-by-heat-rise", relative=1e-4, edge=elevation == 0,
                          note=f"{moist} for the density"))
    static, flows = [0.1, 0.3, 0.5, 0.7], [1240.0, 1150.0, 1030.0, 860.0]
    for read in (0.1, 0.22, 0.5, 0.61, 0.9):
        rows.append(entry(f"fan-table-{read:g}", "table_airflow",
                          {"static_inwc": static, "airflow_cfm": flows, "read_inwc": read},
                          f"{float(numpy.interp(read, static, flows)):.3f}", "cfm", "numpy 2.4.6",
                          "interp", "computed", module="airflow_reading", output="airflow_cfm",
                          calculator="airflow-by-static", absolute=1e-3, edge=read in (0.1, 0.9),
                          note="numpy 2.4.6"))
    for a, u, b, v in ((1000, 0.04, 1100, 0.10), (800, 0.05, 800, 0.05), (900, 0.03, 1200, 0.1),
                       (1200, 0.2, 900, 0.02)):
        value = numpy.average([a, b], weights=[1 / (a * u) ** 2, 1 / (b * v) ** 2])
        rows.append(entry(f"together-{a}-{b}", "together",
                          {"first_cfm": a, "first_doubt": u, "second_cfm": b, "second_doubt": v},
                          f"{float(value):.3f}", "cfm", "numpy 2.4.6", "average with weights",
                          "computed", module="airflow_reading", output="airflow_cfm",
                          calculator="airflow-two-roads", absolute=1e-3, edge=a == b,
                          note="numpy 2.4.6"))
    rows.append(entry("heat-rise-doubt-30", "heat_rise_doubt", {"rise_f": 30}, "0.0389", "",
                      "Arithmetic", "sqrt((1/30)² + 0.02²)", "derived", module="airflow_reading",
                      calculator="airflow-two-roads", absolute=5e-5))
    minute = scipy.constants.foot**3
    for grams, dust, share, flow, hours in ((145, 0.04, 0.7, 1050, 14), (60, 0.08, 0.9, 900, 24),
                                            (300, 0.02, 0.5, 1200, 8)):
        caught = dust / 1000 * flow * minute * 60 * hours * share
        rows.append(entry(f"filter-days-{grams}", "filter_days",
                          {"holds_g": grams, "dust_mg_m3": dust, "catches_share": share,
                           "airflow_cfm": flow, "hours_per_day": hours}, f"{grams / caught:.3f}",
                          "day", "scipy 1.17.1", "constants.foot; mass balance", "computed",
                          module="airflow_reading", calculator="filter-change", relative=1e-4,
                          edge=hours == 24, note="scipy 1.17.1"))
    for allowed in (0.1, 0.2, 0.5):
        value = float(numpy.interp(allowed, [0.12, 0.3], [0.0, 1.0]))
        rows.append(entry(f"usable-dust-{allowed:g}", "usable_dust_share",
                          {"clean_inwc": 0.12, "loaded_inwc": 0.3, "allowed_inwc": allowed},
                          f"{value:.6f}", "", "numpy 2.4.6", "interp", "computed",
                          module="airflow_reading", calculator="filter-change", absolute=1e-6,
                          edge=allowed != 0.2, note="numpy 2.4.6"))
    code = "Residential duct standard (ASHRAE 152), coded in open research software"
    for nominal, value, slack in ((8, "6.7", 0.05), (0, "1.7", 0.01)):
        rows.append(entry(f"effective-r-{nominal}", "effective_r", {"nominal_r": nominal}, value,
                          "h ft² °F/Btu", code, "R-value at which insulated supply duct acts",
                          "read", module="duct_leakage", calculator="duct-leakage",
                          absolute=slack, edge=nominal == 0))
    rows.append(entry("crawl-68", "crawl_space_f", {"outdoor_f": 68}, "68", "°F", code,
                      "vented crawl space: (8 To + 68)/9", "read", module="duct_leakage",
                      calculator="duct-leakage", absolute=1e-9))
    rows.append(entry("crawl-minus-2", "crawl_space_f", {"outdoor_f": -2}, "5.778", "°F", code,
                      "vented crawl space: (8 To + 68)/9", "derived", module="duct_leakage",
                      calculator="duct-leakage", absolute=1e-3, note="52/9"))
    rows.append(entry("floor-leakage", "leakage_per_floor",
                      {"leakage_cfm25": 6, "floor_area_ft2": 100}, "0.06", "cfm/ft²",
                      "Ducts of 190 manufactured home floors, Florida Solar Energy Center",
                      "total leakage of 6 % of the floor", "read", module="duct_leakage",
                      calculator="duct-leakage", absolute=1e-9))
    for flow, leaked, heat, surface, insulation, around in (
            (950, 60, 30000, 150, 6, 30), (1050, 15, 25000, 320, 6.2, 6),
            (800, 0, 40000, 90, 4, 50)):
        density = 0.075
        capacity = 60 * flow * density * 0.24
        supply = 70 + heat / capacity
        end = solve_ivp(lambda area, t, c=capacity, r=insulation, k=around: [(k - t[0]) / (c * r)],
                        (0, surface), [supply], rtol=1e-11, atol=1e-11).y[0][-1]
        share = (flow - leaked) / flow * (end - 70) / (supply - 70)
        rows.append(entry(f"delivery-{flow}", "delivery",
                          {"airflow_cfm": flow, "leak_cfm": leaked, "heat_btuh": heat,
                           "surface_ft2": surface, "insulation_r": insulation,
                           "around_f": around, "room_f": 70, "density_lb_ft3": density},
                          f"{share:.5f}", "", "scipy 1.17.1",
                          "solve_ivp along the duct, then what the registers carry", "computed",
                          module="duct_leakage", output="plain", calculator="duct-leakage",
                          absolute=2e-5, edge=leaked == 0, note="scipy 1.17.1"))
    for side, value in (("low", "0.30"), ("high", "0.60")):
        rows.append(entry(f"regain-{side}", "delivery",
                          {"airflow_cfm": 900, "leak_cfm": 900, "heat_btuh": 30000,
                           "surface_ft2": 0, "insulation_r": 6, "around_f": 30, "room_f": 70,
                           "density_lb_ft3": 0.075}, value, "", code,
                          "regain: vented crawl space under an insulated floor 0.30, an "
                          "uninsulated one 0.60", "read", module="duct_leakage", output=side,
                          calculator="duct-leakage", absolute=1e-6, edge=True,
                          note="all air lost: what comes back is the regain alone"))
    yearly = 60e6 * (1 / 0.69 - 1 / 0.83) * scipy.constants.Btu_IT / 3.6e6 / 2.5
    rows.append(entry("sealing-year", "sealing_worth",
                      {"load_btuh": 25000, "yearly_load_btu": 60e6, "delivery_before": 0.69,
                       "delivery_after": 0.83, "seasonal_cop": 2.5}, f"{yearly:.2f}", "kWh",
                      "scipy 1.17.1", "constants.Btu_IT", "computed", module="duct_leakage",
                      output="yearly_kwh", calculator="duct-leakage", relative=1e-4,
                      note="scipy 1.17.1; delivery of eight homes before and after, OSTI 20006305"))
    worth = 25000 * (1 / 0.69 - 1 / 0.83)
    rows.append(entry("sealing-worth", "sealing_worth",
                      {"load_btuh": 25000, "yearly_load_btu": 0, "delivery_before": 0.69,
                       "delivery_after": 0.83, "seasonal_cop": 1}, f"{worth:.1f}", "Btu/h",
                      "Arithmetic", "load over delivery, before less after", "derived",
                      module="duct_leakage", output="heat_at_design_btuh",
                      calculator="duct-leakage", relative=1e-4,
                      note="delivery of eight homes before and after, OSTI 20006305"))
    return rows


CROSSOVER_CASES = ("one-crossover", "two-crossovers", "flex-crossover", "three-in-parallel",
                   "two-flex-crossovers-high-up")
FAN_CASES = ("fan-curve-and-mixed-exponents", "fan-table", "fan-table-and-dirty-filter",
             "constant-airflow-held", "constant-airflow-beyond-its-limit", "two-fans")


def speaks_for(row: Row) -> str:
    """The calculator that a check of ducts or networks speaks for."""
    name = row["id"]
    if name.startswith("net-"):
        case = name[4:]
        if case.startswith(CROSSOVER_CASES):
            return "crossover-choice"
        return "where-the-pressure-goes" if case.startswith(FAN_CASES) else "supply-side"
    if name.startswith(("flex-", "f21-", "sag-", "expansion")):
        return "crossover-choice"
    if name.startswith(("orifice",)):
        return "way-back"
    if name.startswith(("friction", "colebrook", "laminar", "rectangle", "noise", "miter-90",
                        "takeoff")):
        return "supply-side"
    if name.startswith(("filter-350", "velocity-pressure")):
        return "where-the-pressure-goes"
    return "physics"


def write(name: str, rows: list[Row]) -> None:
    lines = ",\n".join("  " + json.dumps(row, ensure_ascii=False, separators=(", ", ": "))
                       for row in rows)
    (EVIDENCE / name).write_text("[\n" + lines + "\n]\n", encoding="utf-8")
    counted = sum(row["how"] in ("read", "computed") for row in rows)
    print(name, len(rows), "rows,", counted, "counted")


if __name__ == "__main__":
    ducts = friction() + shapes() + flexible() + openings()
    nets = networks()
    for row in ducts + nets:
        row["calculator"] = speaks_for(row)
    write("ducts.json", ducts)
    write("network.json", nets)
    write("air_path.json", air_path())
