"""Start-up physics."""

import pytest

from downflow.physics import air, commissioning


def test_current_goes_with_the_voltage_and_power_with_its_square():
    assert commissioning.element_amps(8, 240, 120) == pytest.approx(8000 / 240 / 2)
    assert commissioning.element_kw(8, 240, 120) == pytest.approx(2)


def test_the_rise_is_the_one_that_airflow_by_heat_rise_turns_round():
    rise = commissioning.rise_f(8.2, 1000, 0.06)
    heat = 8200 * 3.412142
    assert air.airflow_cfm(heat, rise, 0.06) == pytest.approx(1000)
    assert commissioning.split_f(heat, 1000, 0.06) == pytest.approx(rise)


def test_no_drop_without_a_difference():
    assert commissioning.drop_pct(240, 240) == 0


@pytest.mark.parametrize("call", [
    lambda: commissioning.element_amps(8, 0, 240), lambda: commissioning.rise_f(8, 0, 0.07),
    lambda: commissioning.split_f(8, 900, 0), lambda: commissioning.drop_pct(239, 0)])
def test_what_makes_no_sense_is_refused(call):
    with pytest.raises(ValueError, match="above 0"):
        call()
