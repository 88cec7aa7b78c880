"""A year of heating: balances that must hold, limits, and the two roads side by side."""

import gzip
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from downflow import weather
from downflow.physics import climate_year, cost, energy_year

approx = pytest.approx

DATA = Path(__file__).parents[1] / "data"
POINTS_F = (-13, 5, 17, 47)
FULL_BTUH = (21500, 28000, 31500, 36000)
FULL_W = (4065, 4208, 4014, 2931)
LEAST_BTUH = (13000, 12500, 11500, 9500)
LEAST_W = (2380, 1730, 1290, 630)
SHEET = (POINTS_F, FULL_BTUH, FULL_W, LEAST_BTUH, LEAST_W)
HOUSE = energy_year.House(400, 61)
SYSTEM = energy_year.System(energy_year.data_sheet_speeds(*SHEET))
COLD_YEAR = [(t, 100.0) for t in range(-15, 96, 5)]


@pytest.fixture(scope="module", params=["724666_golden_co_tmy3.csv.gz",
                                        "727720_helena_mt_tmy3.epw.gz"])
def months_f(request):
    with gzip.open(DATA / request.param, "rt", encoding="utf-8") as file:
        return weather.parse(file.read()).months_f()


@settings(deadline=None)
@given(st.floats(-40, 100), st.floats(0.5, 1), st.floats(0, 15))
def test_heat_out_is_heat_asked_for(outdoor_f, delivery, kit_kw):
    house = HOUSE._replace(delivery=delivery)
    one = energy_year.hour_at(outdoor_f, house, SYSTEM._replace(kit_kw=kit_kw))
    assert one.heat_pump_btu + one.backup_kwh * cost.BTU_PER_KWH + one.short_btu == approx(
        one.load_btu, abs=1e-6
    )
    assert one.house_btu == approx(one.load_btu * delivery)
    assert 0 <= one.run_hours <= 1


def test_hours_and_their_bins_tell_the_same_year(months_f):
    """Published error of 5 °F bins against 8,760 hours: at most 1.6 % at 671 stations."""
    hourly = energy_year.total(energy_year.hour_year(months_f, HOUSE, SYSTEM))
    bins = [climate_year.bins_from_hours(month) for month in months_f]
    binned = energy_year.total(energy_year.year(bins, HOUSE, SYSTEM))
    assert binned.house_btu == approx(hourly.house_btu, rel=0.013)
    assert binned.heat_pump_kwh == approx(hourly.heat_pump_kwh, rel=0.016)


def test_the_monthly_road_comes_within_its_published_error(months_f):
    """Worst of 671 stations: load 5 %, electricity 10.1 %."""
    means = [sum(month) / len(month) for month in months_f]
    swings = [climate_year.mean_day_swing_f(month) for month in months_f]
    bins = climate_year.months_of_bins(means, swings)
    monthly = energy_year.total(energy_year.year(bins, HOUSE, SYSTEM))
    hourly = energy_year.total(energy_year.hour_year(months_f, HOUSE, SYSTEM))
    assert monthly.house_btu == approx(hourly.house_btu, rel=0.05)
    assert monthly.heat_pump_kwh + monthly.backup_kwh == approx(
        hourly.heat_pump_kwh + hourly.backup_kwh, rel=0.101
    )


def test_a_year_hour_by_hour_is_the_sum_of_its_hours(months_f):
    """Working each temperature once changes nothing: a plain loop over January agrees."""
    january = energy_year.hour_year([months_f[0]], HOUSE, SYSTEM)[0]
    plain = energy_year.total(
        [energy_year.hour_at(outdoor, HOUSE, SYSTEM) for outdoor in months_f[0]]
    )
    assert january == approx(plain)


def test_a_year_of_hours_takes_less_than_a_tenth_of_a_second(months_f):
    energy_year.hour_year(months_f, HOUSE, SYSTEM)
    times = []
    for _ in range(5):
        start = time.perf_counter()
        energy_year.hour_year(months_f, HOUSE, SYSTEM)
        times.append(time.perf_counter() - start)
    assert min(times) < 0.1


def test_below_the_cut_out_backup_does_everything():
    one = energy_year.hour_at(-5, HOUSE, SYSTEM._replace(cut_out_f=0))
    assert one.heat_pump_kwh == 0
    assert one.backup_kwh * cost.BTU_PER_KWH == approx(one.load_btu)


def test_at_the_cut_out_the_compressor_still_runs():
    assert energy_year.hour_at(0, HOUSE, SYSTEM._replace(cut_out_f=0)).heat_pump_kwh > 0


def test_a_kit_that_is_too_small_leaves_heat_missing_and_says_how_much():
    system = SYSTEM._replace(cut_out_f=0, kit_kw=5)
    one = energy_year.hour_at(-10, HOUSE, system)
    assert one.short_btu == approx(400 * 71 - 5 * cost.BTU_PER_KWH)


def test_leaky_ducts_cost_more_than_their_share():
    """More load also means a faster, less efficient compressor."""
    tight = energy_year.total(energy_year.year([COLD_YEAR], HOUSE, SYSTEM))
    leaky = energy_year.total(energy_year.year([COLD_YEAR], HOUSE._replace(delivery=0.8), SYSTEM))
    assert leaky.heat_pump_kwh + leaky.backup_kwh > 1.25 * (
        tight.heat_pump_kwh + tight.backup_kwh
    )


def test_rating_frost_takes_heat_between_17_and_45_only():
    frosted = energy_year.data_sheet_speeds(*SHEET, rating_frost=True)
    plain = energy_year.data_sheet_speeds(*SHEET)
    assert frosted(35).full_btuh == approx(0.90 * (31500 + 0.6 * 4500))
    assert frosted(35).full_w == approx(0.985 * (4014 + 0.6 * (2931 - 4014)))
    for outdoor in (-10, 5, 17, 45, 50):
        assert frosted(outdoor) == plain(outdoor)


def test_frost_is_counted_once():
    with pytest.raises(ValueError, match="once"):
        energy_year.data_sheet_speeds(
            *SHEET, rating_frost=True, frost_at=lambda _: energy_year.NO_FROST
        )


def test_frost_on_demand_costs_more_in_damper_air():
    dry = energy_year.demand_frost(32, 0.0005)
    damp = energy_year.demand_frost(32, 0.0015)
    assert damp.capacity < dry.capacity
    assert damp.defrost_share > dry.defrost_share
    assert energy_year.demand_frost(41, 0.001) == energy_year.NO_FROST
    assert energy_year.timed_frost(41, 0.001, 0.05) == energy_year.NO_FROST


def test_the_frost_road_by_humidity_enters_the_year():
    speeds = energy_year.data_sheet_speeds(
        *SHEET, frost_at=lambda t: energy_year.demand_frost(t, 0.001)
    )
    frosty = energy_year.total(
        energy_year.year([COLD_YEAR], HOUSE, SYSTEM._replace(speeds=speeds))
    )
    plain = energy_year.total(energy_year.year([COLD_YEAR], HOUSE, SYSTEM))
    assert frosty.heat_pump_kwh + frosty.backup_kwh > plain.heat_pump_kwh + plain.backup_kwh


def test_far_below_the_data_sheet_where_no_capacity_is_left_the_unit_is_out():
    assert energy_year.data_sheet_speeds(*SHEET)(-90) == energy_year.LOCKED_OUT


def test_where_the_lowest_speed_would_pass_full_speed_full_speed_stands_for_both():
    speeds = energy_year.data_sheet_speeds(
        (5, 47), (20000, 20000), (2500, 2000), (19000, 21000), (2400, 2100)
    )(47)
    assert speeds == (20000, 2000, 20000, 2000)


def test_cooling_starts_above_its_balance_and_uses_the_data_sheets_efficiency():
    house = HOUSE._replace(cooling_btuh_f=600, cooling_balance_f=72)
    system = SYSTEM._replace(cooling_eer=((82, 16), (95, 11)))
    warm = energy_year.hour_at(95, house, system)
    assert warm.cooling_btu == approx(600 * 23)
    assert warm.cooling_kwh == approx(600 * 23 / 11 / 1000)
    assert energy_year.hour_at(72, house, system).cooling_btu == 0
    assert energy_year.hour_at(88.5, house, system).cooling_kwh == approx(600 * 16.5 / 13.5 / 1000)


def test_cooling_efficiency_is_flat_beyond_its_points():
    points = ((82, 16), (95, 11))
    assert energy_year.eer_at(60, points) == 16
    assert energy_year.eer_at(120, points) == 11
    assert energy_year.eer_at(75, ((95, 14.3),)) == 14.3


def test_seasonal_figures_of_nothing():
    assert energy_year.seasonal_cop(energy_year.NOTHING) is None
    assert energy_year.backup_share(energy_year.NOTHING) == 0
    assert energy_year.total([]) == energy_year.NOTHING


def test_an_electric_furnace_burns_kilowatt_hours_one_for_one():
    before = energy_year.furnace_month(3.412142e6, 1, 50_000, 1, cost.BTU_PER_KWH, 0)
    assert before.fuel_units == approx(1000)


def test_a_single_speed_unit_is_a_variable_one_with_both_speeds_alike():
    one = energy_year.heat_pump_hour(5000, 20000, 2000, 20000, 2000, 0.25)
    assert one.run_share == approx(0.25)
    assert one.heat_pump_w == approx(2000 * 0.25 / (1 - 0.25 * 0.75))


@pytest.mark.parametrize(
    "call",
    [
        lambda: energy_year.load_btuh(30, 400, 61, 0),
        lambda: energy_year.load_btuh(30, -1, 61),
        lambda: energy_year.heat_pump_hour(100, 200, 10, 150, 20),
        lambda: energy_year.eer_at(80, ()),
        lambda: energy_year.eer_at(80, ((90, 10), (80, 12))),
        lambda: energy_year.eer_at(80, ((90, 0),)),
        lambda: energy_year.furnace_month(1e6, 0.8, 0, 0.8, 91333, 400),
        lambda: energy_year.furnace_month(1e6, 1.8, 6e4, 0.8, 91333, 400),
        lambda: energy_year.table_year([1, 2], [1], [1], [1]),
    ],
)
def test_calls_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r".+"):
        call()
