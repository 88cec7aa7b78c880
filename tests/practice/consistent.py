"""What a consistent practice home is."""

from __future__ import annotations

import itertools
import math

from downflow.facts import all_facts
from downflow.facts.checks import check
from downflow.physics import air_path, climate_year
from downflow.practice import plant
from downflow.practice.faults import CALL, fault, of_visit
from downflow.practice.homes import MINUTES, MOST_FAULTS, PracticeHome


def inconsistencies(one: PracticeHome) -> list[str]:
    """Everything that cannot be true of this home together; nothing where all can."""
    f, out = one.facts, []

    def must(true: bool, said: str) -> None:
        if not true:
            out.append(said)

    for name, value in f.items():
        _, bad = check(all_facts()[name], value, name)
        must(not bad, f"{name}: {bad}")

    area = f["floor_area_ft2"]
    must(math.isclose(area, f["home_width_ft"] * f["home_length_ft"]), "area is width by length")
    must(f["home_width_ft"] <= f["home_length_ft"], "longer than wide")
    must((f["sections"] == "double") == (f["home_width_ft"] >= 20), "two sections are wide")
    must(len(f["trunks"]) == (2 if f["sections"] == "double" else 1), "one trunk a section")
    rooms = sum(r["floor_area_ft2"] for r in f["rooms"])
    must(0.9 * area <= rooms <= 1.02 * area, f"rooms cover the floor: {rooms:.0f} of {area:.0f}")
    wall = 2 * (f["home_width_ft"] + f["home_length_ft"]) * f["ceiling_height_ft"]
    walls = sum(r["outside_wall_ft2"] for r in f["rooms"])
    must(0.9 * wall <= walls <= 1.05 * wall, f"rooms share the outside wall: {walls:.0f}")
    must(f["window_area_ft2"] + f["door_area_ft2"] < 0.4 * wall, "openings fit the walls")
    sides = sum(w["area_ft2"] for w in f["windows_by_side"])
    must(math.isclose(sides, f["window_area_ft2"]), "windows by side are all windows")
    must(min(w["area_ft2"] for w in f["windows_by_side"]) > 0, "a window on each side")
    must(air_path.problems(f["trunks"], f["registers"], f["rooms"], f["home_length_ft"]) == [],
         "trunks, registers and rooms belong together")
    must({r["room"] for r in f["registers"]} == {r["id"] for r in f["rooms"]},
         "every room has a register")
    places = {(r["trunk"], r["at_ft"]) for r in f["registers"]}
    must(len(places) == len(f["registers"]), "each register has its place")

    means = [m["mean_f"] for m in f["monthly_means"]]
    must(f["design_heating_f"] < min(means) - 8, "the design night is colder than any mean")
    must(abs(climate_year.year_heating_degree_days(means, 65.0) - f["degree_days_65"]) < 1,
         "degree days are those of the months")
    must(f["design_heating_f"] < f["indoor_design_f"] < f["tmy_p99_f"] + 1, "winter and summer")

    warm = sum(p["units"] for p in f["fuel_periods"] if means[int(p["month"]) - 1] > 62)
    cold = sum(p["units"] for p in f["fuel_periods"] if means[int(p["month"]) - 1] < 45)
    must(len(f["fuel_periods"]) == 12 and cold > 2 * warm, "fuel follows the cold")
    must(0 < f["burner_minutes"] < 0.97 * f["night_minutes"], "the burner rested")

    points = f["hp_points"]
    must(all(a["capacity_max_btuh"] < b["capacity_max_btuh"]
             for a, b in itertools.pairwise(points)), "it makes more when it is warmer")
    must(all(p["capacity_min_btuh"] < p["capacity_max_btuh"] for p in points), "least below most")
    must(f["outdoor_unit_a"] <= f["outdoor_mca_a"] <= f["outdoor_breaker_a"] <= f[
        "outdoor_mocp_a"], "plate, breaker and largest breaker")
    must(300 < f["fan_set_cfm"] < 2000, "a plausible airflow")
    found = plant.air_of(f, one.conditions, f["fan_set_cfm"])
    must(not found.flows.limited, "the fan holds its air")
    got = found.flows.delivered_cfm + found.flows.leak_cfm
    must(math.isclose(got, found.flows.airflow_cfm, rel_tol=1e-3), "air in is air out")
    must(0 < found.external_inwc < 1.0, "a static that is met in homes")
    if f["crossover_found"] == "none" and len(f["trunks"]) > 1:
        must(found.far_share == 0, "no crossover, no air")

    must(len(one.faults) <= MOST_FAULTS, "three faults at most")
    must(set(one.faults) <= {x.id for x in of_visit(one.visit)}, "faults of this visit")
    ranks = [fault(x).rank for x in one.faults]
    must(ranks == sorted(ranks), "faults in the order of work")
    must(one.minutes == MINUTES[one.visit], "the time of such a visit")
    if one.visit == CALL:
        must(f["kit_planned_kw"] in {k["kit_kw"] for k in f["kit_sizes"]}, "a kit of the plate")
        must(f["suction_psig"] < f["liquid_psig"], "suction below liquid")
        must(f["suction_line_f"] < f["liquid_line_f"] + 60, "plausible lines")
        must(f["rise_supply_f"] > f["rise_return_f"] + 8, "elements warm the air")
    return out
