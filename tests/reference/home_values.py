"""Check values for the home's load and its power, worked by independent libraries.

Run it from the project's root with numpy, scipy, CoolProp, psychrolib, fluids and pvlib:

    python tests/reference/home_values.py            writes tests/evidence/home_computed.json
    python tests/reference/home_values.py --check    compares, writes nothing

Nothing here imports this project's own code: each value comes from a library's own solver,
property or distribution, on the inputs written down beside it.
"""

from __future__ import annotations

import gzip
import io
import itertools
import json
import math
import sys
from pathlib import Path
from typing import Any

import CoolProp
import fluids
import numpy as np
import psychrolib
import pvlib
import scipy
import scipy.constants
from CoolProp.CoolProp import PropsSI
from scipy import integrate, optimize, stats

ROOT = Path(__file__).resolve().parents[2]
OUT = ROOT / "tests" / "evidence" / "home_computed.json"
CFM = 0.3048**3 / 60            # m³/s
BTUH = 1055.05585262 / 3600     # W
PSI = 6894.757293168
LB_FT3 = 16.01846337396

NUMPY = f"numpy {np.__version__}"
SCIPY = f"scipy {scipy.__version__}"
COOLPROP = f"CoolProp {CoolProp.__version__}"
FLUIDS = f"fluids {fluids.__version__}"
PSYCHRO = "psychrolib 2.5.0"
PVLIB = f"pvlib {pvlib.__version__}"

ROWS: list[dict[str, Any]] = []


def row(id_: str, calculator: str, call: str, inputs: dict[str, Any], value: float, digits: int,
        unit: str, document: str, section: str, note: str, *, output: Any = None,
        edge: bool = False, relative: float | None = None,
        absolute: float | None = None) -> None:
    """One row; the value is printed with `digits` significant digits."""
    printed = f"{value:.{digits}g}"
    if "e" in printed:
        printed = f"{float(printed):f}"
    new = {"id": id_, "calculator": calculator, "call": f"downflow.physics.{call}",
           "inputs": inputs, "output": output, "printed": printed, "unit": unit}
    if relative is not None:
        new["relative"] = relative
    elif absolute is not None:
        new["absolute"] = absolute
    else:
        new["relative"] = 0.51 * 10.0 ** (1 - digits)
    new.update(document=document, section=section, how="computed", edge=edge, note=note)
    ROWS.append(new)


def air() -> None:
    psychrolib.SetUnitSystem(psychrolib.IP)
    for feet, edge in ((3000, False), (6200, False), (9000, False), (14000, True)):
        row(f"pressure-{feet}ft", "physics", "air:pressure_psia", {"elevation_ft": feet},
            psychrolib.GetStandardAtmPressure(feet), 6, "psia", PSYCHRO,
            "GetStandardAtmPressure", f"{PSYCHRO}, inch-pound units", edge=edge)
    for feet, temp, w in ((6200, 70, 0.0), (0, 70, 0.0), (6200, 120, 0.0), (5000, 80, 0.012)):
        p = psychrolib.GetStandardAtmPressure(feet)
        row(f"density-{feet}ft-{temp}f-{w}", "physics", "air:density_lb_ft3",
            {"elevation_ft": feet, "air_f": temp, "humidity_ratio": w},
            psychrolib.GetMoistAirDensity(temp, w, p), 5, "lb/ft³", PSYCHRO,
            "GetMoistAirDensity", f"{PSYCHRO}, inch-pound units", edge=feet == 0)
    kelvin, pascal = (70 + 459.67) / 1.8, 11.6886 * PSI
    row("density-6200ft-real", "physics", "air:density_lb_ft3",
        {"elevation_ft": 6200, "air_f": 70},
        PropsSI("D", "T", kelvin, "P", pascal, "Air") / LB_FT3, 4, "lb/ft³", COOLPROP,
        "Air, density", f"{COOLPROP}, real gas, at 11.6886 psia", relative=1e-3)
    for feet in (0, 3000, 5000, 6200, 9000):
        ratio = psychrolib.GetStandardAtmPressure(feet) / 14.696
        row(f"altitude-bound-{feet}", "capacity-at-altitude", "heat_pump:altitude_factor_bounds",
            {"elevation_ft": feet}, ratio, 5, "", PSYCHRO, "GetStandardAtmPressure",
            f"{PSYCHRO}, ratio to 14.696 psia", output="low", edge=feet == 0)


def leaks() -> None:
    # one velocity head through a hole, found by the library's own pressure drop
    speed = optimize.brentq(lambda v: fluids.dP_from_K(1.0, rho=1.2, V=v) - 4.0, 0.1, 20.0)
    for flow, edge in ((280.8, False), (100.0, False), (2500.0, True)):
        row(f"leakage-area-{flow:g}cfm", "air-leakage", "heat_loss:leakage_area_in2",
            {"flow_cfm": flow}, flow * CFM / speed / 0.0254**2, 5, "in²", FLUIDS,
            "dP_from_K, one velocity head at 4 Pa",
            f"{FLUIDS} and {SCIPY} brentq: speed at which K = 1 loses 4 Pa in 1.2 kg/m³",
            edge=edge)
    # fit the power law through two points with a library, read it at a third
    p, q = np.array([10.0, 50.0]), np.array([509.56, 1450.0])
    n, c = np.polyfit(np.log(p), np.log(q), 1)
    row("leak-flow-4pa", "air-leakage", "heat_loss:leak_flow_cfm",
        {"flow_cfm": 1450, "measured_pa": 50, "wanted_pa": 4, "exponent": round(float(n), 9)},
        float(np.exp(c + n * np.log(4.0))), 5, "cfm", NUMPY, "polyfit of a power law",
        f"{NUMPY}: line through log flow against log pressure, read at 4 Pa")
    # the basic infiltration model in its own SI units
    for area, dt, wind, cs, cw, id_ in ((79.55, 50, 9, 0.000145, 0.000174, "calm"),
                                        (60, 0, 15, 0.000145, 0.000246, "wind-only"),
                                        (60, 70, 0, 0.000145, 0.000246, "stack-only")):
        stack = integrate.quad(lambda t, k=cs: k, 0, dt / 1.8)[0]
        gust = 2 * integrate.quad(lambda u, k=cw: k * u, 0, wind * 0.44704)[0]
        row(f"basic-infiltration-{id_}", "air-leakage", "heat_loss:basic_infiltration_cfm",
            {"leakage_area_in2": area, "difference_f": dt, "wind_mph": wind, "stack_si": cs,
             "wind_si": cw}, area * 6.4516 * math.sqrt(stack + gust) / 1000 / CFM, 5, "cfm",
            "EnergyPlus Input Output Reference",
            "ZoneInfiltration:EffectiveLeakageArea, its SI equation",
            f"{SCIPY} quad: the two driving terms as integrals, in SI", edge=id_ != "calm")


def envelope() -> None:
    # walls of three kinds of path as a conductance network solved for its node temperatures
    for share, edge in ((0.15, False), (0.10, False), (0.25, False), (0.0, True)):
        cavity, frame = [0.68, 0.45, 11.0, 0.61, 0.17], [0.68, 0.45, 4.375, 0.61, 0.17]
        flow = 0.0
        for part, layers in ((1 - share, cavity), (share, frame)):
            n = len(layers) - 1
            a, b = np.zeros((n, n)), np.zeros(n)
            for k in range(n):
                a[k, k] = 1 / layers[k] + 1 / layers[k + 1]
                if k:
                    a[k, k - 1] = -1 / layers[k]
                else:
                    b[k] += 1 / layers[0]           # indoors at 1, outdoors at 0
                if k < n - 1:
                    a[k, k + 1] = -1 / layers[k + 1]
            t = np.linalg.solve(a, b)
            flow += part * (1 - t[0]) / layers[0]
        row(f"wall-network-{share}", "shell", "heat_loss:parallel_path_u_btuh_ft2_f",
            {"cavity_r": cavity, "frame_r": frame, "framing_share": share}, float(flow), 6,
            "Btu/(h ft² °F)", NUMPY, "linalg.solve on the wall's temperatures",
            f"{NUMPY}: each path as a chain of resistances between 1 and 0 °F", edge=edge)
    # floor over a crawl space: heat balance of the node under the floor
    for u, area, skirt, cfm, rho, id_ in ((0.08, 1512, 60, 120, 0.0596, "tight"),
                                          (0.08, 1512, 60, 1500, 0.0596, "vented"),
                                          (0.12, 900, 25, 0.001, 0.075, "still")):
        out = skirt + 60 * 0.24 * rho * cfm
        crawl = float(np.linalg.solve(np.array([[u * area + out]]),
                                      np.array([u * area * 70.0 + out * 10.0]))[0])
        row(f"crawl-u-{id_}", "heat-loss", "heat_loss:floor_over_crawl_u_btuh_ft2_f",
            {"floor_u_btuh_ft2_f": u, "floor_ft2": area, "skirt_ua_btuh_f": skirt,
             "crawl_cfm": cfm, "density_lb_ft3": rho}, u * (70 - crawl) / 60, 5,
            "Btu/(h ft² °F)", NUMPY, "linalg.solve on the crawl space's balance",
            f"{NUMPY}: floor at 70, outdoors at 10 °F", edge=id_ == "still")
        row(f"crawl-temperature-{id_}", "heat-loss", "heat_loss:crawl_space_f",
            {"indoor_f": 70, "outdoor_f": 10, "floor_ua_btuh_f": u * area,
             "out_ua_btuh_f": out}, crawl, 5, "°F", NUMPY,
            "linalg.solve on the crawl space's balance", f"{NUMPY}: heat in = heat out")
    # rooms: the infiltration that leaves each room warm, by weights of a library
    ua, vol, inf = np.array([61.0, 88.5, 40.2, 12.0]), np.array([1100, 1650, 800, 300.0]), 92.0
    loss = ua + inf * np.average(np.eye(4), axis=0, weights=vol)
    for k in range(4):
        inputs = {"transmission_ua_btuh_f": [float(x) for x in ua],
                  "volume_ft3": [float(x) for x in vol], "infiltration_ua_btuh_f": inf}
        ROWS.append({
            "id": f"room-loss-{k}", "calculator": "room-loads",
            "call": "downflow.physics.heat_loss:room_losses", "inputs": inputs,
            "output": f"{k}.ua_btuh_f",
            "printed": f"{loss[k]:.6g}", "unit": "Btu/(h °F)",
            "relative": 1e-5, "document": NUMPY, "section": "average with weights",
            "how": "computed", "edge": k == 3,
            "note": f"{NUMPY}: infiltration shared by volume"})
    floor, wall = np.array([180, 240, 96, 40.0]), np.array([200, 160, 64, 0.0])
    shares = (150 * floor / floor.sum() + 130 * wall / wall.sum()) / 280
    for k in (0, 3):
        row(f"quick-share-{k}", "room-loads", "heat_loss:quick_room_shares",
            {"floor_ft2": [float(x) for x in floor], "outside_wall_ft2": [float(x) for x in wall],
             "by_floor_ua_btuh_f": 150, "by_wall_ua_btuh_f": 130}, float(shares[k]), 6, "",
            NUMPY, "array arithmetic", f"{NUMPY}: a room without outside wall last",
            output=k, edge=k == 3)


def bills() -> None:
    use = [124.6, 106.8, 96.5, 64.2, 47.8, 18.4, 11.2, 11.2, 24.1, 56.9, 97.4, 102.8]
    days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
    hdd65 = [1203.4, 1064.31, 948.29, 661.47, 488.77, 148.9, 12.89, 41.41, 221.5, 596.27, 950.92,
             1036.85]
    hdd60 = [1048.4, 924.31, 793.29, 511.47, 338.68, 79.35, 0.0, 6.15, 122.67, 442.61, 800.92,
             881.85]
    hdd55 = [893.4, 784.31, 638.29, 361.47, 222.97, 38.73, 0.0, 0.0, 52.51, 303.88, 650.92, 726.85]
    y = np.array(use) / days
    for base, hdd in ((65, hdd65), (60, hdd60)):
        x = np.array(hdd) / days
        fit = stats.linregress(x, y)
        inputs = {"x": [float(v) for v in x], "y": [float(v) for v in y]}
        for name, value in (("slope", fit.slope), ("intercept", fit.intercept),
                            ("r2", fit.rvalue**2), ("slope_error", fit.stderr),
                            ("intercept_error", fit.intercept_stderr)):
            row(f"bills-{base}-{name.replace('_', '-')}", "fuel-bills", "fuel_bills:fit_line",
                inputs, float(value), 7, "", SCIPY, "stats.linregress",
                f"{SCIPY} on twelve months of gallons a day against degree days a day, {base} °F",
                output=name, edge=name == "r2" and base == 60)
    best = {b: np.polyfit(np.array(h) / days, y, 1, full=True)[1][0]
            for b, h in ((55, hdd55), (60, hdd60), (65, hdd65))}
    base = min(best, key=best.__getitem__)
    inputs = {"use": use, "days": days, "degree_days_by_base": [hdd55, hdd60, hdd65],
              "bases_f": [55, 60, 65]}
    row("bills-best-base", "fuel-bills", "fuel_bills:fit_bills", inputs, float(base), 3, "°F",
        NUMPY, "polyfit, least residual of three bases", f"{NUMPY}", output="base_f", absolute=0.1)
    fit = stats.linregress(np.array(hdd60) / days, y)
    row("bills-best-slope", "fuel-bills", "fuel_bills:fit_bills", inputs, float(fit.slope), 6,
        "gal/°F day", SCIPY, "stats.linregress at 60 °F", f"{SCIPY}",
        output="slope_per_degree_day")
    for freedom, share, edge in ((1, 0.95, True), (2, 0.9, False), (4, 0.95, False),
                                 (9, 0.9, False), (10, 0.95, False), (40, 0.99, False)):
        row(f"student-{freedom}-{share}", "fuel-bills", "fuel_bills:student_t",
            {"share": share, "freedom": freedom}, float(stats.t.ppf((1 + share) / 2, freedom)), 7,
            "", SCIPY, "stats.t.ppf", SCIPY, edge=edge)

    def degree_days(mean: float, base: float, n: float, year: float) -> float:
        # mean of max(0, base - T) over the logistic spread, integrated numerically
        scale = (3.54 - 0.0290 * mean + 0.0664 * year) * math.sqrt(n) / 3.396
        spread = stats.logistic(loc=mean, scale=scale)
        return n * integrate.quad(spread.cdf, mean - 60 * scale, base, limit=400)[0]

    for hdd, base, n, edge in ((1203.77, 65, 31, False), (300, 65, 30, False), (12, 60, 31, True)):
        mean = optimize.brentq(lambda t, h=hdd, b=base, d=n: degree_days(t, b, d, 14.69) - h,
                               base - hdd / n - 1, base + 40)
        row(f"mean-of-{hdd:g}-degree-days", "fuel-bills", "fuel_bills:mean_of_degree_days_f",
            {"degree_days": hdd, "base_f": base, "days": n, "year_spread_f": 14.69}, mean, 6, "°F",
            SCIPY, "stats.logistic, integrate.quad and optimize.brentq",
            f"{SCIPY}: degree days as the integral of the logistic distribution of Erbs et al.",
            absolute=0.001, edge=edge)


def run_time() -> None:
    """A thermostat on a one-node home of known loss: minutes of burning tell that loss."""
    for ua, c, out, gain, output, edge in ((448.5, 4200.0, 8.0, 1500.0, 61600.0, False),
                                           (300.0, 3000.0, -15.0, 1000.0, 48000.0, False),
                                           (600.0, 5000.0, 35.0, 2000.0, 61600.0, False),
                                           (700.0, 4200.0, -18.0, 0.0, 61600.0, True)):
        t, indoor, on, burning, heat = 0.0, 70.0, True, 0.0, 0.0
        temps: list[tuple[float, float]] = []
        cycles = 0
        while cycles < 12:
            goal = 70.5 if on else 69.5

            def at_goal(_: float, y: Any, goal: float = goal) -> float:
                return float(y[0]) - goal
            at_goal.terminal = True  # type: ignore[attr-defined]
            at_goal.direction = 1 if on else -1  # type: ignore[attr-defined]
            q = (output if on else 0.0) + gain
            run = integrate.solve_ivp(lambda _, y, q=q, ua=ua, out=out, c=c:
                                      [(q - ua * (y[0] - out)) / c],
                                      (t, t + 60), [indoor], events=at_goal, rtol=1e-9,
                                      atol=1e-9, dense_output=True)
            end = float(run.t[-1])
            heat += integrate.quad(lambda s, r=run: float(r.sol(s)[0]), t, end)[0]
            burning += (end - t) if on else 0.0
            t, indoor = end, float(run.y[0][-1])
            temps.append((t, indoor))
            if not on:
                cycles += 1
            on = not on
        # whole cycles from the same temperature: what was stored is what was given back
        mean_in, share = heat / t, burning / t
        stored = c * (indoor - 70.0) / t
        row(f"run-time-{ua:g}", "furnace-run-time", "fuel_bills:ua_of_run_time_btuh_f",
            {"output_btuh": round(output * share - stored, 6), "gain_btuh": gain,
             "indoor_f": round(mean_in, 9), "outdoor_f": out}, ua, 4, "Btu/(h °F)", SCIPY,
            "integrate.solve_ivp on a thermostat and a home of known loss",
            f"{SCIPY}: the loss put into the simulation comes back from its run time", edge=edge)
        row(f"run-output-{ua:g}", "furnace-run-time", "fuel_bills:mean_output_btuh",
            {"input_btuh": output / 0.8, "efficiency": 0.8,
             "burner_minutes": round(burning * 60, 9), "period_minutes": round(t * 60, 9)},
            output * share, 5, "Btu/h", SCIPY, "integrate.solve_ivp, mean of the burner",
            f"{SCIPY}: mean heat over twelve cycles", edge=edge)


def roads() -> None:
    def constant(x: Any, m: float) -> Any:
        return m + 0 * x

    for a, sa, b, sb, id_ in ((345.0, 30.0, 362.0, 22.0, "near"),
                              (330.0, 25.0, 330.0, 25.0, "same"),
                              (300.0, 15.0, 420.0, 20.0, "far")):
        given = {"first": a, "first_sigma": sa, "second": b, "second_sigma": sb}
        value, cov = optimize.curve_fit(constant, [0.0, 1.0], [a, b], p0=[(a + b) / 2],
                                        sigma=[sa, sb], absolute_sigma=True)
        _, scaled = optimize.curve_fit(constant, [0.0, 1.0], [a, b], p0=[(a + b) / 2],
                                       sigma=[sa, sb], absolute_sigma=False)
        sigma = math.sqrt(max(float(cov[0][0]), float(scaled[0][0])))
        row(f"roads-{id_}-value", "two-roads", "two_roads:combine", given, float(value[0]), 6,
            "Btu/(h °F)", SCIPY, "optimize.curve_fit of a constant with weights", SCIPY,
            output="value", edge=id_ == "same")
        row(f"roads-{id_}-sigma", "two-roads", "two_roads:combine", given, sigma, 6, "Btu/(h °F)",
            SCIPY, "optimize.curve_fit, wider of absolute and scaled covariance", SCIPY,
            output="sigma", edge=id_ == "same")
        spread = stats.norm(0, 1)
        z = abs(a - b) / math.sqrt(float(np.sum(np.square([sa, sb]))))
        row(f"roads-{id_}-sigmas", "two-roads", "two_roads:agreement", given,
            float(spread.isf(spread.sf(z))) if z else 0.0, 6, "", SCIPY, "stats.norm", SCIPY,
            output="sigmas", edge=id_ == "same",
            absolute=1e-4)
    row("roads-allowed", "two-roads", "two_roads:agreement",
        {"first": 345, "first_sigma": 30, "second": 362, "second_sigma": 22},
        2 * float(np.linalg.norm([30.0, 22.0])), 6, "Btu/(h °F)", NUMPY, "linalg.norm, twice",
        NUMPY, output="allowed")
    row("roads-range", "two-roads", "two_roads:sigma_of_range", {"low": 300, "high": 400},
        100 / (2 * float(stats.norm.ppf(0.95))), 7, "Btu/(h °F)", SCIPY,
        "stats.norm.ppf(0.95)", f"{SCIPY}: 5th to 95th percentile")


def heat_pump() -> None:
    f, q = [-13.0, 5.0, 17.0, 47.0], [21500.0, 28000.0, 31500.0, 36000.0]
    w, low = [4065.0, 4208.0, 4014.0, 2931.0], [13000.0, 12500.0, 11500.0, 9500.0]
    from scipy.interpolate import interp1d
    cap = interp1d(f, q, fill_value="extrapolate")
    least = interp1d(f, low, fill_value="extrapolate")
    power = interp1d(f, w, fill_value="extrapolate")
    for at, edge in ((27.0, False), (5.0, False), (-13.0, True), (-20.0, True), (55.0, True)):
        row(f"capacity-at-{at:g}", "heat-pump-match", "heat_pump:interpolate",
            {"points_f": f, "values": q, "at_f": at}, float(cap(at)), 7, "Btu/h", SCIPY,
            "interpolate.interp1d, linear", SCIPY, output="value", edge=edge)
    row("power-at-10", "heat-pump-match", "heat_pump:interpolate",
        {"points_f": f, "values": w, "at_f": 10.0}, float(power(10.0)), 7, "W", SCIPY,
        "interpolate.interp1d, linear", SCIPY, output="value")
    for ua, base, factor, id_ in ((400.0, 61.0, 1.0, "gains"), (420.0, 70.0, 0.9, "thin-air"),
                                  (520.0, 70.0, 0.8, "short")):
        inputs = {"points_f": f, "ua_btuh_f": ua, "balance_f": base, "capacity_factor": factor}
        t = optimize.brentq(lambda x, u=ua, b=base, k=factor: k * cap(x) - u * (b - x), -60, base)
        row(f"balance-{id_}", "heat-pump-match", "heat_pump:thermal_balance_f",
            {**inputs, "capacity_btuh": q}, t, 6, "°F", SCIPY, "interp1d and optimize.brentq",
            SCIPY, absolute=1e-4)
        t = optimize.brentq(lambda x, u=ua, b=base, k=factor: k * least(x) - u * (b - x), -60, base)
        row(f"cycling-{id_}", "heat-pump-match", "heat_pump:cycling_starts_f",
            {**inputs, "least_capacity_btuh": low}, t, 6, "°F", SCIPY,
            "interp1d and optimize.brentq", SCIPY, absolute=1e-4)
    row("cop-at-27", "heat-pump-match", "heat_pump:cop",
        {"capacity_btuh": 33000, "power_w": 3653}, 33000 * scipy.constants.Btu
        / scipy.constants.hour / 3653, 6, "", SCIPY, "constants.Btu and constants.hour", SCIPY)


def backup() -> None:
    btu_per_kwh = 1000 * scipy.constants.hour / scipy.constants.Btu
    for kw, edge in ((5.0, False), (10.0, False), (20.0, True)):
        row(f"kit-heat-{kw:g}kw", "backup-kit", "backup:kit_heat_btuh", {"kit_kw": kw},
            kw * btu_per_kwh, 7, "Btu/h", SCIPY, "constants.Btu and constants.hour", SCIPY,
            edge=edge)
    row("shortfall-kw", "backup-kit", "backup:kw_of_btuh", {"heat_btuh": 7111},
        7111 / btu_per_kwh, 6, "kW", SCIPY, "constants.Btu and constants.hour", SCIPY)
    # an element as a resistance in a circuit: node voltage solved, power from current
    for volts in (208.0, 230.0, 252.0):
        ohm = 240.0**2 / 10_000
        current = float(np.linalg.solve(np.array([[ohm]]), np.array([volts]))[0])
        row(f"element-at-{volts:g}v", "backup-kit", "backup:kw_at_voltage",
            {"rated_kw": 10, "rated_volts": 240, "volts": volts}, current**2 * ohm / 1000, 6, "kW",
            NUMPY, "linalg.solve on the circuit", f"{NUMPY}: 5.76 ohm", edge=volts == 252.0)
        row(f"amps-at-{volts:g}v", "kit-circuit", "circuit:amps_at_voltage",
            {"rated_kw": 10, "rated_volts": 240, "volts": volts}, current, 6, "A", NUMPY,
            "linalg.solve on the circuit", f"{NUMPY}: 5.76 ohm", edge=volts == 208.0)
    # supply air by the enthalpy of real air at the home's pressure
    for feet_psia, cfm, heat, back, rho, id_ in (
            (11.6886, 1100, 60121.4, 68.0, 0.0595637, "6200ft"),
            (14.696, 900, 34121.4, 70.0, 0.0748893, "sea")):
        pa = feet_psia * PSI
        h0 = PropsSI("H", "T", (back + 459.67) / 1.8, "P", pa, "Air")
        mass = cfm * CFM * rho * LB_FT3
        t1 = PropsSI("T", "H", h0 + heat * BTUH / mass, "P", pa, "Air") * 1.8 - 459.67
        row(f"supply-air-{id_}", "backup-kit", "backup:supply_air_f",
            {"return_f": back, "heat_btuh": heat, "airflow_cfm": cfm, "density_lb_ft3": rho}, t1, 5,
            "°F", COOLPROP, "Air, enthalpy to temperature",
            f"{COOLPROP}: real air; its specific heat is 0.2403, ours 0.240", absolute=0.3)
    # recovery from a setback: the equation integrated, the moment found as an event
    for c, ua, out, q, a, b, id_ in ((4200.0, 420.0, 10.0, 38000.0, 62.0, 69.0, "up"),
                                     (4200.0, 420.0, 10.0, 0.0, 69.0, 62.0, "down"),
                                     (3000.0, 300.0, -5.0, 22600.0, 60.0, 70.0, "hard")):
        def there(_: float, y: Any, goal: float = b) -> float:
            return float(y[0]) - goal
        there.terminal = True  # type: ignore[attr-defined]
        run = integrate.solve_ivp(lambda _, y, q=q, ua=ua, out=out, c=c:
                                  [(q - ua * (y[0] - out)) / c], (0, 500), [a], events=there,
                                  rtol=1e-10, atol=1e-10)
        row(f"recovery-{id_}", "backup-kit", "backup:recovery_hours",
            {"heat_capacity_btu_f": c, "ua_btuh_f": ua, "outdoor_f": out, "heat_btuh": q,
             "from_f": a, "to_f": b}, float(run.t_events[0][0]), 5, "h", SCIPY,
            "integrate.solve_ivp with an event", SCIPY, edge=id_ == "hard")
    # where a fixed heat and a loss line meet
    t = optimize.brentq(lambda x: 420 * (70 - x) - 10 * btu_per_kwh, -60, 70)
    row("holds-10kw", "backup-kit", "backup:holds_down_to_f",
        {"heat_btuh": round(10 * btu_per_kwh, 6), "ua_btuh_f": 420, "indoor_f": 70}, t, 6, "°F",
        SCIPY, "optimize.brentq", SCIPY, absolute=1e-4, edge=True)


def wires() -> None:
    for gauge, edge in ((14, True), (10, False), (6, False), (4, False), (2, False)):
        thick = fluids.t_from_gauge(gauge, False, "AWG")  # inches
        row(f"awg-library-{gauge}", "kit-circuit", "circuit:awg_circular_mils", {"gauge": gauge},
            (1000 * thick) ** 2, 4, "circular mils", FLUIDS, "t_from_gauge, schedule AWG",
            f"{FLUIDS}: the library's diameters are rounded to 0.1 mil", relative=0.004, edge=edge)
    # a run out and back as two resistors in series with the heater
    ohm_kft, feet, volts, load = 0.491, 45.0, 240.0, 240.0 / 38.33
    wire = ohm_kft * feet / 1000
    a = np.array([[1 / wire + 1 / load, -1 / load], [-1 / load, 1 / load + 1 / wire]])
    v = np.linalg.solve(a, np.array([volts / wire, 0.0]))
    current = float(v[0] - v[1]) / load
    row("drop-network", "kit-circuit", "circuit:drop_by_resistance_v",
        {"amps": round(current, 9), "length_ft": feet, "ohm_per_kft": ohm_kft},
        volts - float(v[0] - v[1]), 5, "V", NUMPY, "linalg.solve on the loop's two nodes",
        f"{NUMPY}: 6 AWG copper, 45 ft, a 38.33 A heater")


def climate() -> None:
    """Degree days of real years against those from their twelve monthly means."""
    folder = Path(pvlib.__file__).parent / "data"
    files: list[tuple[str, Any]] = []
    greensboro, _ = pvlib.iotools.read_tmy3(str(folder / "723170TYA.CSV"), map_variables=True)
    files.append(("Greensboro NC", greensboro["temp_air"]))
    sand_point, _ = pvlib.iotools.read_tmy3(str(folder / "703165TY.csv"), map_variables=True)
    files.append(("Sand Point AK", sand_point["temp_air"]))
    data = ROOT / "tests" / "data"
    golden_text = gzip.decompress((data / "724666_golden_co_tmy3.csv.gz").read_bytes()).decode()
    golden, _ = pvlib.iotools.read_tmy3(io.StringIO(golden_text), map_variables=True)
    files.append(("Golden CO", golden["temp_air"]))
    helena_text = gzip.decompress((data / "727720_helena_mt_tmy3.epw.gz").read_bytes()).decode()
    helena, _ = pvlib.iotools.read_epw(io.StringIO(helena_text))
    files.append(("Helena MT", helena["temp_air"]))
    lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
    for name, celsius in files:
        hours = np.asarray(celsius, dtype=float)[:8760] * 1.8 + 32
        day = hours.reshape(365, 24).mean(axis=1)
        ends = np.cumsum([0, *lengths])
        means = [float(day[a:b].mean()) for a, b in itertools.pairwise(ends)]
        for base in (65, 60):
            hdd = float(np.maximum(0, base - day).sum())
            row(f"year-degree-days-{name.split()[0].lower()}-{base}", "design-climate",
                "climate_year:year_heating_degree_days",
                {"monthly_mean_f": [round(m, 4) for m in means], "base_f": base}, hdd, 6, "°F day",
                f"Typical year of {name}", f"daily means, base {base} °F",
                f"{PVLIB} reads the file, {NUMPY} sums its days; the monthly road is 1.4 % high on "
                "average with a spread of 2.9 % over 960 stations", relative=0.045,
                edge=name.startswith("Sand") and base == 65)


def main() -> int:
    for part in (air, leaks, envelope, bills, run_time, roads, heat_pump, backup, wires, climate):
        part()
    text = "[\n" + ",\n".join(" " + json.dumps(r, ensure_ascii=False) for r in ROWS) + "\n]\n"
    if "--check" in sys.argv[1:]:
        old = {r["id"]: r for r in json.loads(OUT.read_text(encoding="utf-8"))}
        off = [r["id"] for r in ROWS if r["id"] not in old
               or abs(float(old[r["id"]]["printed"]) - float(r["printed"]))
               > 1e-3 * max(1e-9, abs(float(r["printed"])))]
        print(f"{len(ROWS)} values, {len(off)} differ: {off}")
        return 1 if off or len(old) != len(ROWS) else 0
    OUT.write_text(text, encoding="utf-8")
    print(f"wrote {len(ROWS)} values to {OUT.relative_to(ROOT)}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
