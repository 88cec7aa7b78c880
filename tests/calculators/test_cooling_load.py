"""Cooling load: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def value(name="cooling_sensible_btuh", **facts):
    return solve_demo("cooling-load", ranged=False, **facts).values[name].value


def test_a_hotter_afternoon_needs_more():
    assert value(design_cooling_f=100.0) > value(design_cooling_f=88.0)


def test_a_wide_daily_range_helps():
    assert value(daily_range_f=30.0) < value(daily_range_f=15.0)


def test_a_white_roof_helps_and_a_roof_on_the_ceiling_does_not():
    dark = value(roof_kind=("asphalt shingles, dark", "measured"))
    white = value(roof_kind=("metal, white", "measured"))
    assert white < dark
    assert value(roof_form=("roof-ceiling without attic", "measured")) > value()


def test_west_glass_counts_more_than_east_glass():
    east = [{"side": "E", "area_ft2": 146.0}]
    west = [{"side": "W", "area_ft2": 146.0}]
    assert value(windows_by_side=west) > 1.1 * value(windows_by_side=east)


def test_an_overhang_shades_the_south_more_than_the_west():
    def saved(side):
        bare = [{"side": side, "area_ft2": 146.0}]
        shaded = [{"side": side, "area_ft2": 146.0, "overhang_ft": 2.0, "height_ft": 4.0}]
        return value(windows_by_side=bare) - value(windows_by_side=shaded)
    assert saved("S") > 0
    assert saved("W") > 0


def test_shades_take_sun_off():
    assert value(interior_shade=("blinds, white", "measured")) < value(
        interior_shade=("none", "measured"))


def test_dry_mountain_air_brings_no_moisture_and_humid_air_does():
    dry = value("cooling_sensible_share")
    humid = value("cooling_sensible_share", elevation_ft=0.0, design_cooling_wb_f=78.0)
    assert dry > 0.93
    assert humid < dry


def test_sealed_ducts_gain_less():
    assert value(duct_state=("sealed", "measured")) < value(duct_state=("as found", "measured"))


def test_the_total_is_sensible_and_latent():
    assert value("cooling_design_btuh") == pytest.approx(
        value() + value("cooling_latent_btuh"))


def test_a_wet_bulb_above_the_dry_bulb_is_refused():
    answer = solve_demo("cooling-load", design_cooling_f=70.0, design_cooling_wb_f=75.0)
    assert answer.errors[0]["field"] == "design_cooling_wb_f"


def test_a_latitude_outside_the_method_is_refused():
    answer = solve_demo("cooling-load", latitude_deg=15.0)
    assert answer.errors[0]["field"] == "latitude_deg"


@pytest.mark.parametrize(("height", "level"), [(6561.0, "fine"), (6563.0, "look")])
def test_above_2000_metres_the_method_is_an_estimate(height, level):
    answer = solve_demo("cooling-load", elevation_ft=(height, "data sheet"), ranged=False)
    assert verdict_of(answer, "summer-height").level == level


def test_windows_by_side_must_add_up():
    few = [{"side": "S", "area_ft2": 40.0}]
    answer = solve_demo("cooling-load", windows_by_side=few)
    assert verdict_of(answer, "sides-known").level == "look"
    assert verdict_of(solve_demo("cooling-load"), "sides-known").level == "fine"
    assert verdict_of(solve_demo("cooling-load", windows_by_side=None),
                      "sides-known").level == "look"
