"""Nitrogen test and the rise of a vacuum."""

import math

import pytest
from CoolProp import CoolProp

from downflow.physics import moist_air, pressure_test


def kelvin(temp_f):
    return (temp_f + 459.67) / 1.8


@pytest.mark.parametrize("start_psig", [50, 150, 300, 450, 600])
@pytest.mark.parametrize(("start_f", "end_f"), [(68, 41), (80, 70), (40, 95), (100, 10),
                                                (20, -10)])
@pytest.mark.parametrize("air", [14.696, 12.2])
def test_nitrogen_cools_as_the_real_gas_does(start_psig, start_f, end_f, air):
    density = CoolProp.PropsSI("D", "T", kelvin(start_f), "P", (start_psig + air) * 6894.757293,
                               "Nitrogen")
    end = CoolProp.PropsSI("P", "T", kelvin(end_f), "D", density, "Nitrogen") / 6894.757293
    ours = pressure_test.expected_psig(start_psig, start_f, end_f, air)
    assert ours + air == pytest.approx(end, rel=0.0005)


def test_the_plain_gas_law_expects_too_much_after_cooling():
    plain = pressure_test.gas_law_psig(450, 68, 41, 14.6959)
    real = pressure_test.expected_psig(450, 68, 41, 14.6959)
    assert plain == pytest.approx(426.2, abs=0.05)
    assert 1 < plain - real < 4


def test_no_change_of_temperature_no_change_of_pressure():
    assert pressure_test.expected_psig(450, 60, 60, 14.7) == pytest.approx(450, abs=1e-6)


def test_tolerance_of_a_common_gauge():
    assert pressure_test.tolerance_psi(450, 68, 14.6959, 0.5, 2.0) == pytest.approx(2.3, abs=0.1)


def test_microns_there_and_back():
    for micron in (50, 500, 5000, 760_000):
        psia = pressure_test.psia_from_microns(micron)
        assert pressure_test.microns_from_psia(psia) == pytest.approx(micron)


def test_water_holds_the_vacuum_at_its_own_pressure():
    at = {-20: 320, 0: 957, 20: 2611, 40: 6296, 60: 13_260, 80: 26_244}
    for temp_f, micron in at.items():
        ours = pressure_test.microns_from_psia(moist_air.vapor_pressure_psia(temp_f))
        assert ours == pytest.approx(micron, rel=0.005)


MINUTES = (0, 1, 2, 3, 4, 5, 6, 8, 10)


def test_a_tight_dry_system_stays():
    rise = pressure_test.read_rise(MINUTES, [250 + 3 * t for t in MINUTES])
    assert rise.kind == "flat"


def test_water_levels_off_and_the_level_is_found():
    micron = [1200 - 900 * math.exp(-t / 2.5) for t in MINUTES]
    rise = pressure_test.read_rise(MINUTES, micron)
    assert rise.kind == "levelling"
    assert rise.level_micron == pytest.approx(1200, rel=1e-3)
    assert rise.time_min == pytest.approx(2.5, rel=1e-2)


def test_a_leak_climbs_on():
    rise = pressure_test.read_rise(MINUTES, [300 + 85 * t for t in MINUTES])
    assert rise.kind == "climbing"
    assert rise.end_slope == pytest.approx(85)
    assert math.isnan(rise.level_micron)


def test_a_leak_in_a_wet_system_is_neither():
    micron = [300 + 60 * t + 500 * (1 - math.exp(-t / 2)) for t in MINUTES]
    assert pressure_test.read_rise(MINUTES, micron).kind in ("between", "climbing")


def test_noise_of_a_gauge_does_not_change_what_is_said():
    noise = (0, 4, -5, 3, -2, 5, -4, 2, -3)
    level = [1200 - 900 * math.exp(-t / 2.5) + n for t, n in zip(MINUTES, noise, strict=True)]
    climb = [300 + 85 * t + n for t, n in zip(MINUTES, noise, strict=True)]
    assert pressure_test.read_rise(MINUTES, level).kind == "levelling"
    assert pressure_test.read_rise(MINUTES, climb).kind == "climbing"


def test_four_readings_in_bunches_still_read():
    rise = pressure_test.read_rise((0, 0.5, 1, 10), (300, 320, 340, 700))
    assert rise.rise_micron == 400


@pytest.mark.parametrize(("minutes", "microns", "said"), [
    ((0, 1, 2), (300, 310, 320), "at least 4"),
    ((0, 1, 1, 2), (300, 310, 320, 330), "must rise"),
    ((0, 1, 2, 3), (300, 310, 0, 330), "not above 0"),
])
def test_bad_readings_are_refused(minutes, microns, said):
    with pytest.raises(ValueError, match=said):
        pressure_test.read_rise(minutes, microns)
