"""A year of this home: before against after, months against hours."""

import gzip
from pathlib import Path

import pytest

from downflow import weather
from downflow.physics import climate_year
from downflow.testing import solve_demo, verdict_of

ID = "year-of-this-home"
DATA = Path(__file__).parents[1] / "data"


def _file(name):
    with gzip.open(DATA / name, "rt", encoding="utf-8") as file:
        return weather.parse(file.read())


def _bins(year):
    return [{"month": n, "outdoor_f": b.outdoor_f, "hours": b.hours}
            for n, month in enumerate(year.months_f(), 1)
            for b in climate_year.bins_from_hours(month)]


def _means(year):
    return [{"month": n, "mean_f": sum(m) / len(m)} for n, m in enumerate(year.months_f(), 1)]


def test_months_add_up_to_the_year():
    answer = solve_demo(ID, ranged=False)
    rows = answer.tables["year_months"]
    assert len(rows) == 12
    assert sum(r["heat_pump_kwh"] + r["backup_kwh"] for r in rows) == pytest.approx(
        answer.values["year_kwh"].value)
    assert sum(r["after_usd"] for r in rows) == pytest.approx(
        answer.values["year_cost_after_usd"].value)
    assert sum(r["before_usd"] for r in rows) == pytest.approx(
        answer.values["year_cost_before_usd"].value)
    assert sum(r["before_co2_lb"] for r in rows) == pytest.approx(
        answer.values["year_co2_before_lb"].value)
    assert sum(r["heat_mmbtu"] for r in rows) == pytest.approx(
        answer.values["year_heat_mmbtu"].value)


@pytest.mark.parametrize("name", ["724666_golden_co_tmy3.csv.gz", "727720_helena_mt_tmy3.epw.gz"])
def test_the_months_of_a_weather_file_and_its_hours_agree(name):
    year = _file(name)
    swing = sum(climate_year.mean_day_swing_f(m) for m in year.months_f()) / 12
    answer = solve_demo(ID, ranged=False, weather_bins=_bins(year), monthly_means=_means(year),
                        day_swing_f=swing)
    assert answer.values["year_file_kwh"].value == pytest.approx(
        answer.values["year_kwh"].value, rel=0.10)
    assert verdict_of(answer, "roads-agree").level == "fine"


def test_a_file_of_another_place_is_noticed():
    year = _file("727720_helena_mt_tmy3.epw.gz")
    warm = [{**r, "outdoor_f": r["outdoor_f"] + 15} for r in _bins(year)]
    answer = solve_demo(ID, ranged=False, weather_bins=warm)
    assert verdict_of(answer, "roads-agree").level == "look"


def test_half_a_weather_file_is_refused():
    year = _file("727720_helena_mt_tmy3.epw.gz")
    answer = solve_demo(ID, ranged=False, weather_bins=_bins(year)[:100])
    assert answer.ok is False
    assert answer.errors[0]["field"] == "weather_bins"


def test_a_lowest_speed_above_the_top_speed_is_refused():
    points = [{"outdoor_f": 5, "capacity_max_btuh": 20000, "power_max_w": 3000,
               "capacity_min_btuh": 25000, "power_min_w": 1000},
              {"outdoor_f": 47, "capacity_max_btuh": 30000, "power_max_w": 2800,
               "capacity_min_btuh": 9000, "power_min_w": 700}]
    answer = solve_demo(ID, ranged=False, hp_points=points)
    assert answer.errors[0]["field"] == "hp_points[0].capacity_min_btuh"


def test_better_ducts_save_on_both_sides():
    leaky = solve_demo(ID, ranged=False, delivery_efficiency_pct=70.0)
    tight = solve_demo(ID, ranged=False, delivery_efficiency_pct=85.0)
    assert tight.values["year_kwh"].value < leaky.values["year_kwh"].value * 70 / 85


def test_electric_heat_before_costs_its_kilowatt_hours():
    answer = solve_demo(ID, ranged=False, heating_fuel="electric", furnace_efficiency_pct=100.0,
                        delivery_before_pct=80.0, delivery_efficiency_pct=80.0, old_blower_w=0.0)
    heat = answer.values["year_heat_mmbtu"].value * 1e6 / 0.8
    assert answer.values["year_fuel_units"].value == pytest.approx(heat / 3412.142)


def test_without_a_fuel_there_is_no_before_and_the_after_stands():
    answer = solve_demo(ID, ranged=False, heating_fuel=None)
    assert "year_cost_before_usd" not in answer.values
    assert answer.values["year_cost_after_usd"].value > 0
    assert all(row["before_usd"] is None for row in answer.tables["year_months"])


def test_without_the_lowest_speed_it_is_counted_as_single_speed():
    points = [{k: v for k, v in row.items() if "min" not in k} for row in
              solve_demo(ID, ranged=False).sheet.job.hp_points]
    answer = solve_demo(ID, ranged=False, hp_points=points)
    assert verdict_of(answer, "lowest-speed").level == "look"
    assert answer.values["year_kwh"].value > solve_demo(ID, ranged=False).values["year_kwh"].value


@pytest.mark.parametrize(("cutout", "level"), [(-15.0, "fine"), (30.0, "look")])
def test_a_large_backup_share_is_looked_at(cutout, level):
    answer = solve_demo(ID, ranged=False, hp_cutout_f=cutout)
    assert verdict_of(answer, "backup-share").level == level


def test_an_estimated_price_promises_nothing():
    answer = solve_demo(ID, ranged=False, propane_usd_gal=(2.5, "estimated"))
    assert verdict_of(answer, "prices").level == "look"


def test_the_one_measurement_that_narrows_it_is_named():
    typed = solve_demo(ID, home_ua_btuh_f=(410.0, "estimated"))
    assert typed.measure_next.field == "home_ua_btuh_f"


def test_a_measured_home_has_a_narrower_year():
    guessed = solve_demo(ID, home_ua_btuh_f=(410.0, "estimated")).values["year_kwh"]
    measured = solve_demo(ID, home_ua_btuh_f=(410.0, "measured")).values["year_kwh"]
    assert measured.high - measured.low < 0.75 * (guessed.high - guessed.low)


def test_cooling_needs_its_load_and_its_rating():
    assert "year_cooling_kwh" not in solve_demo(ID, ranged=False, cooling_seer2=None).values
    better = solve_demo(ID, ranged=False, cooling_seer2=20.0).values["year_cooling_kwh"].value
    assert better < solve_demo(ID, ranged=False).values["year_cooling_kwh"].value


def test_damp_air_costs_more_by_the_humidity_road_alone():
    dry = solve_demo(ID, ranged=False, winter_humidity_pct=40.0).values
    damp = solve_demo(ID, ranged=False, winter_humidity_pct=90.0).values
    assert damp["year_frost_kwh"].value > dry["year_frost_kwh"].value
    assert damp["year_kwh"].value == dry["year_kwh"].value


@pytest.mark.parametrize(("humidity", "level"), [(30.0, "fine"), (100.0, "look")])
def test_frost_roads_far_apart_are_looked_at(humidity, level):
    answer = solve_demo(ID, ranged=False, winter_humidity_pct=humidity)
    assert verdict_of(answer, "frost-roads").level == level


def test_frost_that_the_sheet_counts_is_not_counted_again():
    answer = solve_demo(ID, ranged=False, hp_points_with_frost=True)
    assert "year_frost_kwh" not in answer.values
    assert answer.values["year_kwh"].value < solve_demo(ID, ranged=False).values["year_kwh"].value
