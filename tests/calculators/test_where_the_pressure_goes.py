"""Where the pressure goes: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def pressure(*, ranged=False, **facts):
    return solve_demo("where-the-pressure-goes", ranged=ranged, **facts)


def test_the_thin_rack_takes_more():
    deep = pressure()
    assert deep.values["pressure_other_filter_inwc"].value > \
        deep.values["pressure_external_inwc"].value
    thin = pressure(filter_planned="thin")
    assert verdict_of(thin, "filters-compared").level == "look"
    assert verdict_of(deep, "filters-compared").level == "fine"


def test_loaded_takes_more_than_clean():
    values = pressure().values
    assert values["pressure_loaded_inwc"].value > values["pressure_external_inwc"].value


def test_reserve_is_what_the_fan_has_left():
    values = pressure().values
    assert values["pressure_reserve_inwc"].value == pytest.approx(
        0.8 - values["pressure_external_inwc"].value)


@pytest.mark.parametrize(("face", "level"), [(337.0, "fine"), (335.0, "hold")])
def test_the_wet_coil_is_a_safety_limit(face, level):
    # 1050 cfm at 450 ft/min: 336 in²
    assert verdict_of(pressure(coil_face_in2=face), "coil-face").level == level


def test_doubt_about_the_coil_is_enough_for_a_hold():
    answer = pressure(ranged=True, coil_face_in2=(345.0, "estimated"))
    assert verdict_of(answer, "coil-face").level == "hold"


@pytest.mark.parametrize(("rated", "level"), [(0.25, "fine"), (0.23, "hold")])
def test_the_plate_is_judged_just_inside_and_just_outside(rated, level):
    answer = pressure(static_rated_inwc=(rated, "data sheet"))
    assert verdict_of(answer, "clean-within-rating").level == level


def test_one_filter_alone_cannot_be_compared():
    answer = pressure(filters=[{"kind": "deep", "width_in": 20.0, "height_in": 25.0,
                                "clean_inwc": 0.12, "at_cfm": 1200.0, "loaded_inwc": 0.3}])
    assert verdict_of(answer, "filters-compared").level == "look"


def test_watts_come_from_the_table_and_fall_with_density():
    values = pressure().values
    assert 130 < values["fan_power_w"].value < 180


def test_a_small_filter_is_too_fast():
    answer = pressure(filter_planned="thin", filters=[
        {"kind": "thin", "width_in": 16.0, "height_in": 20.0, "clean_inwc": 0.2, "at_cfm": 1000.0,
         "loaded_inwc": 0.5}])
    assert verdict_of(answer, "filter-face").level == "look"
