"""Cooling load by the residential load factor method."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from downflow import tables
from downflow.physics import cooling_load as cl

SURFACES = {r.surface: r for r in tables.rows("rlf_opaque")}
EXPOSURES = {r.exposure: r for r in tables.rows("rlf_window")}
LATITUDE = st.floats(20, 60)


def test_a_wall_in_the_sun_takes_more_than_one_in_the_shade():
    sun = cl.opaque_factor_btuh_ft2(0.09, 15, 20, SURFACES["wall or door in the sun"])
    shade = cl.opaque_factor_btuh_ft2(0.09, 15, 20, SURFACES["wall or door in shade"])
    assert sun - shade == approx(0.09 * 8.2 * 1.8)


def test_a_dark_roof_takes_more_than_a_white_one():
    roof = SURFACES["ceiling under vented attic"]
    assert cl.opaque_factor_btuh_ft2(0.05, 15, 20, roof, 0.9) > cl.opaque_factor_btuh_ft2(
        0.05, 15, 20, roof, 0.3)


def test_a_large_daily_range_helps_every_surface():
    for row in SURFACES.values():
        assert cl.opaque_factor_btuh_ft2(0.08, 15, 30, row, 0.7) < cl.opaque_factor_btuh_ft2(
            0.08, 15, 10, row, 0.7)


def test_a_crawl_space_shields_the_floor_from_summer():
    open_air = cl.opaque_factor_btuh_ft2(0.08, 18, 20, SURFACES["floor over open air"])
    crawl = cl.opaque_factor_btuh_ft2(0.08, 18, 20, SURFACES["floor over crawl space"])
    assert crawl < open_air


@given(LATITUDE, st.floats(0, 180))
def test_the_diffuse_part_is_a_part(lat, azimuth):
    assert cl.diffuse_irradiance_w_m2(lat, azimuth) <= cl.total_irradiance_w_m2(lat, azimuth) + 1e-9


@given(LATITUDE)
def test_east_and_west_get_the_same_sun_and_solar_load_factors_tell_them_apart(lat):
    assert cl.total_irradiance_w_m2(lat, 90) == cl.total_irradiance_w_m2(lat, -90)
    assert EXPOSURES["W"].solar_load_factor > EXPOSURES["E"].solar_load_factor


def test_south_glass_gets_more_sun_the_farther_north_it_is():
    sun = [cl.total_irradiance_w_m2(lat, 0) for lat in range(25, 61, 5)]
    assert sun == sorted(sun)


@given(LATITUDE)
def test_shade_lines_lie_between_the_neighbours_in_the_table(lat):
    for row in EXPOSURES.values():
        values = [getattr(row, f"slf_{d}") for d in range(20, 61, 5)]
        assert min(values) <= cl.shade_line_factor(row, lat) <= max(values)


def test_shade_lines_meet_the_table_at_its_own_latitudes():
    for row in EXPOSURES.values():
        for lat in range(20, 61, 5):
            assert cl.shade_line_factor(row, lat) == approx(getattr(row, f"slf_{lat}"))


def test_an_overhang_shades_from_nothing_to_all():
    assert cl.shaded_share(1.1, 0, 0, 4) == 0
    assert cl.shaded_share(5, 4, 0, 4) == 1
    assert cl.shaded_share(1.1, 2, 10, 4) == 0


def test_full_shade_leaves_the_diffuse_sky():
    assert cl.exterior_irradiance_w_m2(700, 150, shaded=1) == approx(150)
    assert cl.exterior_irradiance_w_m2(700, 150) == approx(700)


def test_an_insect_screen_keeps_a_third_out():
    assert cl.exterior_irradiance_w_m2(700, 150, screen=cl.INSECT_SCREEN) == approx(448)


def test_an_open_shade_does_nothing_and_a_closed_one_all_it_can():
    assert cl.interior_attenuation(0.57, 0) == 1
    assert cl.interior_attenuation(0.57, 1) == approx(0.57)


def test_a_window_without_sun_conducts_alone():
    assert cl.window_factor_btuh_ft2(0.5, 20, 10, 0, 0.6, 1, 0.5) == approx(0.5 * (20 - 4.6))


def test_dry_outdoor_air_brings_no_latent_load():
    assert cl.air_latent_btuh(100, 0.004, 0.009, 0.06) == 0
    assert cl.air_latent_btuh(100, 0.012, 0.009, 0.06) > 0


def test_thin_air_brings_less_of_both():
    assert cl.air_sensible_btuh(100, 20, 0.06) < cl.air_sensible_btuh(100, 20, 0.075)
    assert cl.air_latent_btuh(100, 0.012, 0.009, 0.06) < cl.air_latent_btuh(
        100, 0.012, 0.009, 0.075)


def test_people_and_floor_add_gains():  # 464 + 0.7 per ft² + 75 a person
    assert cl.internal_sensible_btuh(1512, 4) == approx(464 + 0.6975 * 1512 + 75.07 * 4, rel=2e-3)
    assert cl.internal_latent_btuh(1512, 4) == approx(68 + 0.0697 * 1512 + 40.9 * 4, rel=3e-3)


@given(st.floats(1, 50_000), st.floats(0, 50_000))
def test_the_sensible_share_is_a_share(sensible, latent):
    assert 0 < cl.sensible_heat_ratio(sensible, latent) <= 1


@pytest.mark.parametrize("call", [
    lambda: cl.total_irradiance_w_m2(19, 0),
    lambda: cl.diffuse_irradiance_w_m2(61, 0),
    lambda: cl.horizontal_irradiance_w_m2(10),
    lambda: cl.shade_line_factor(EXPOSURES["S"], 70),
    lambda: cl.shaded_share(1, 1, 0, 0),
    lambda: cl.sensible_heat_ratio(0, 0),
])
def test_outside_its_range_the_method_says_so(call):
    with pytest.raises(ValueError, match="."):
        call()
