"""What ducts deliver, and what sealing is worth."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from downflow.physics import duct_leakage as leaks

PLAIN = {"airflow_cfm": 950, "leak_cfm": 60, "heat_btuh": 30000, "surface_ft2": 150,
         "insulation_r": 6, "around_f": 30, "room_f": 70, "density_lb_ft3": 0.075}


def test_the_worked_example():
    assert leaks.delivery(**PLAIN).plain == pytest.approx(0.8834, abs=1e-4)


def test_a_tight_duct_in_a_warm_place_delivers_everything():
    assert leaks.delivery(**{**PLAIN, "leak_cfm": 0, "surface_ft2": 0}).plain == pytest.approx(1)


@given(st.floats(0, 500), st.floats(1, 100), st.floats(1, 20), st.floats(0, 65))
def test_delivery_falls_with_leaks_and_lies_in_its_own_range(leak, more, r, around):
    here = leaks.delivery(**{**PLAIN, "leak_cfm": leak, "insulation_r": r, "around_f": around})
    worse = leaks.delivery(**{**PLAIN, "leak_cfm": leak + more, "insulation_r": r,
                              "around_f": around})
    assert worse.plain < here.plain
    assert here.plain <= here.low <= here.high <= 1
    assert here.leaked_share + here.lost_share + here.plain == pytest.approx(1)


def test_nominal_insulation_acts_less_than_printed():
    assert leaks.effective_r(8) < 8
    assert leaks.effective_r(0) == 1.7


def test_sealing_is_worth_the_difference():
    worth = leaks.sealing_worth(25000, 60e6, 0.69, 0.83, 2.5)
    assert worth.heat_at_design_btuh == pytest.approx(25000 / 0.69 - 25000 / 0.83)
    assert worth.yearly_kwh == pytest.approx(worth.yearly_heat_btu / 3412.142 / 2.5)


def test_leaks_see_half_of_the_box():
    assert leaks.mean_static_inwc(0.2, 0.0) == 0.1


@pytest.mark.parametrize("call", [
    lambda: leaks.leakage_per_floor(10, 0), lambda: leaks.leakage_per_floor(-1, 100),
    lambda: leaks.effective_r(-1), lambda: leaks.delivery(**{**PLAIN, "leak_cfm": 951}),
    lambda: leaks.delivery(**{**PLAIN, "heat_btuh": 0}),
    lambda: leaks.sealing_worth(1, 1, 0, 1, 1),
])
def test_numbers_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r"\d"):
        call()
