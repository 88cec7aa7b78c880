"""Charge limits of mildly flammable refrigerants."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import flammable

FT2 = 0.09290304


@given(st.floats(0.2, 20), st.floats(0.25, 0.4), st.floats(0.6, 2.2))
def test_room_and_charge_are_one_rule(charge_kg, limit, height_m):
    area = flammable.room_area_m2(charge_kg, limit, height_m)
    assert flammable.room_charge_kg(limit, height_m, area) == pytest.approx(charge_kg, rel=1e-9)


def test_the_straight_leg_governs_in_a_closet():
    small = flammable.room_charge_kg(0.306, 0.6, 1.0)
    assert small == pytest.approx(flammable.FLAT_FACTOR * 0.306 * 0.6)
    large = flammable.room_charge_kg(0.306, 0.6, 30.0)
    assert large < flammable.FLAT_FACTOR * 0.306 * 0.6 * 30


def test_the_legs_cross_near_sixty_five_square_feet():
    cross = (2.5 * 0.306**1.25 / (0.75 * 0.306)) ** 2
    assert cross / FT2 == pytest.approx(66, abs=2)
    below, above = 0.99 * cross, 1.01 * cross
    assert flammable.room_charge_kg(0.306, 0.6, below) == pytest.approx(0.75 * 0.306 * 0.6 * below)
    assert flammable.room_charge_kg(0.306, 0.6, above) < 0.75 * 0.306 * 0.6 * above


@pytest.mark.parametrize(("height_m", "area_m2"), [(0.6, 122.8), (1.8, 13.6), (2.2, 9.1)])
def test_eight_pounds_in_one_room(height_m, area_m2):
    assert (flammable.room_area_m2(8 * 0.45359237, 0.296, height_m)
            == pytest.approx(area_m2, rel=0.005))


def test_eight_pounds_mixed_through_the_home():
    assert flammable.mixed_area_m2(3.629, 0.296, 2.4, 0.5) == pytest.approx(11.14, abs=0.01)
    assert flammable.mixed_area_m2(3.629, 0.296, 2.4, 0.25) == pytest.approx(22.29, abs=0.02)


def test_mixed_area_and_charge_are_one_rule():
    charge = flammable.mixed_charge_kg(0.306, 2.3, 40, 0.5)
    assert flammable.mixed_area_m2(charge, 0.306, 2.3, 0.5) == pytest.approx(40)
    assert (flammable.mixed_concentration_kg_m3(charge, 2.3, 40)
            == pytest.approx(0.5 * 0.306))


def test_a_higher_ceiling_than_the_rule_counts_is_no_help():
    assert (flammable.mixed_area_m2(3, 0.306, 2.2, 0.5)
            == flammable.mixed_area_m2(3, 0.306, 3.0, 0.5))


def test_thresholds_rise_with_the_limit():
    assert flammable.least_charge_kg(0.296) < flammable.least_charge_kg(0.306)
    assert flammable.large_charge_kg(0.306) == pytest.approx(15.9, abs=0.05)


@pytest.mark.parametrize(("height_m", "size", "said"), [
    (0.5, 10, "outside 0.6"), (2.3, 10, "outside 0.6"), (1.0, 0, "not above 0")])
def test_what_the_rule_does_not_cover_is_refused(height_m, size, said):
    with pytest.raises(ValueError, match=said):
        flammable.room_charge_kg(0.306, height_m, size)
    with pytest.raises(ValueError, match=said):
        flammable.room_area_m2(size, 0.306, height_m)


def test_no_area_is_refused():
    with pytest.raises(ValueError, match="not above 0"):
        flammable.mixed_charge_kg(0.306, 2.2, 0, 0.5)


def test_a_label_multiplies():
    assert flammable.label_need(8, 58.275) == pytest.approx(466, abs=0.5)
