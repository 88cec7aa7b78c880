"""Run time and setbacks; the closed forms against a differential-equation solver."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from downflow.physics import comfort

approx = pytest.approx


def test_an_oversized_furnace_rests_most_of_the_day():
    assert comfort.run_hours_a_day(14_400, 61_600) < 6


def test_a_modulating_unit_runs_all_day_while_it_is_needed_above_its_lowest_speed():
    assert comfort.run_hours_a_day(14_400, 10_967) == 24


def test_no_load_no_running():
    assert comfort.run_share(0, 10_000) == 0
    assert comfort.run_share(-500, 10_000) == 0


NIGHT = (4200, 420, 10, 69, 62, 8)


def _night(t, room, heat):
    return (heat - 420 * (room[0] - 10)) / 4200


def test_a_night_agrees_with_a_solver():
    """Drift, hold and recovery integrated step by step by scipy."""
    result = comfort.setback(*NIGHT, 38_000, 34_000, 1_500)
    drift = solve_ivp(_night, (0, result.drift_h), [69], args=(1_500,), rtol=1e-10,
                      atol=1e-10, dense_output=True)
    assert drift.y[0][-1] == approx(result.lowest_f, abs=1e-6)
    back = solve_ivp(_night, (0, result.alone_h), [result.lowest_f], args=(39_500,),
                     rtol=1e-10, atol=1e-10, dense_output=True)
    assert back.y[0][-1] == approx(69, abs=1e-6)
    helped = solve_ivp(_night, (0, result.with_backup_h), [result.lowest_f], args=(73_500,),
                       rtol=1e-10, atol=1e-10)
    assert helped.y[0][-1] == approx(69, abs=1e-6)
    missing = (
        quad(lambda t: 69 - drift.sol(t)[0], 0, result.drift_h)[0]
        + (8 - result.drift_h) * (69 - result.lowest_f)
        + quad(lambda t: 69 - back.sol(t)[0], 0, result.alone_h)[0]
    )
    assert result.heat_saved_btu == approx(420 * missing, rel=1e-6)
    assert result.backup_btu == approx(34_000 * result.with_backup_h)


def test_energy_of_a_night_balances():
    """Heat given over the night and the recovery, less what holding would take, is the saving."""
    result = comfort.setback(*NIGHT, 38_000, 0)
    hold = 420 * (69 - 10)
    lowered = 420 * (result.lowest_f - 10)
    given = lowered * (8 - result.drift_h) + 38_000 * result.alone_h
    assert hold * (8 + result.alone_h) - given == approx(result.heat_saved_btu, rel=1e-9)


def test_a_mild_night_never_reaches_the_lower_setting():
    result = comfort.setback(4200, 420, 55, 69, 55.5, 2, 38_000, 0)
    assert result.lowest_f > 55.5
    assert result.drift_h == 2


def test_a_heat_pump_that_only_just_holds_never_recovers_alone():
    result = comfort.setback(*NIGHT, 20_000, 34_000)
    assert result.alone_h is None
    assert result.heat_saved_btu is None
    assert result.with_backup_h > 0


def test_a_house_warm_by_itself_needs_no_recovery():
    assert comfort.setback(4200, 420, 75, 69, 62, 8, 38_000, 0).alone_h == 0


@settings(deadline=None)
@given(st.floats(40, 75), st.floats(40, 110), st.floats(1, 40), st.floats(0, 30))
def test_rooms_move_towards_where_they_settle(start, settled, tau, hours):
    later = comfort.after_f(start, settled, tau, hours)
    assert min(start, settled) - 1e-9 <= later <= max(start, settled) + 1e-9


@pytest.mark.parametrize(
    "call",
    [
        lambda: comfort.run_share(100, 0),
        lambda: comfort.time_constant_h(0, 400),
        lambda: comfort.after_f(60, 70, 0, 1),
        lambda: comfort.setback(4200, 420, 10, 69, 70, 8, 38_000, 0),
        lambda: comfort.setback(4200, 420, 10, 69, 62, 0, 38_000, 0),
    ],
)
def test_calls_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r"\d"):
        call()
