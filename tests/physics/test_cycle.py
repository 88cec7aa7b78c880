"""The simple cycle of practice: the directions that every technician knows, and the right order."""

import math

import pytest
from CoolProp.CoolProp import PropsSI

from downflow.physics import cycle

RIGHT = {"capacity_btuh": 34_000.0, "air_lb_h": 3_767.0, "rated_air_lb_h": 3_767.0,
         "return_f": 75.0, "outdoor_f": 75.0, "subcooling_target_f": 9.0}


def state(**changed: float) -> cycle.CoolingState:
    return cycle.cooling(**{**RIGHT, **changed})


def test_a_sound_system_reads_as_sound_systems_do():
    """Common practice: evaporating some 30 to 40 °F below the return air, condensing 15 to 30 °F
    above outdoors, superheat of a valve 5 to 15 °F."""
    sound = state()
    assert 30 <= RIGHT["return_f"] - sound.evaporating_f <= 40
    assert 15 <= sound.condensing_f - RIGHT["outdoor_f"] <= 30
    assert 5 <= sound.superheat_f <= 15
    assert sound.subcooling_f == 9.0


def test_both_sides_balance():
    sound = state()
    reach = cycle.coil_share(1.0)
    taken = reach * 3767 * cycle.AIR_BTU_LB_F * cycle.WET_COIL * (75 - sound.evaporating_f)
    assert taken == pytest.approx(sound.capacity_btuh, rel=1e-6)
    work = cycle.compressor_btuh(sound.capacity_btuh, sound.evaporating_f, sound.condensing_f)
    condenser = cycle.REJECTED_SHARE * 34_000 / cycle.CONDENSER_RATED_F
    assert condenser * (sound.condensing_f - 75) == pytest.approx(sound.capacity_btuh + work,
                                                                  rel=1e-6)


def test_too_little_charge_loses_subcooling_first_and_starves_the_coil_later():
    little, much = state(charge_share=0.92), state(charge_share=0.75)
    sound = state()
    assert 0 < little.subcooling_f < sound.subcooling_f
    assert little.superheat_f == sound.superheat_f
    assert much.subcooling_f == 0
    assert much.superheat_f > sound.superheat_f
    assert much.evaporating_f < sound.evaporating_f
    assert much.capacity_btuh < sound.capacity_btuh


def test_too_much_charge_raises_subcooling_and_head():
    much = state(charge_share=1.2)
    assert much.subcooling_f > 9
    assert much.condensing_f > state().condensing_f
    assert much.power_w > state().power_w


def test_too_little_air_lowers_suction_and_superheat_and_leaves_subcooling():
    less = state(air_lb_h=2_000.0)
    assert less.evaporating_f < state().evaporating_f - 5
    assert less.superheat_f < state().superheat_f
    assert less.subcooling_f == state().subcooling_f


def test_half_the_air_boils_below_freezing():
    assert state(air_lb_h=1_900.0).evaporating_f < 32


def test_a_dirty_outdoor_coil_and_a_hot_day_raise_head_and_power():
    for worse in (state(outdoor_air_share=0.6), state(outdoor_f=100.0)):
        assert worse.condensing_f > state().condensing_f
        assert worse.power_w > state().power_w


def test_less_air_reaches_the_coils_temperature_more_nearly():
    assert cycle.coil_share(0.5) > cycle.coil_share(1.0) > cycle.coil_share(1.5)


@pytest.mark.parametrize(("cold", "hot"), [(40.0, 100.0), (45.0, 115.0), (35.0, 95.0)])
def test_the_work_is_of_the_order_of_a_real_fluids(cold: float, hot: float):
    """Against R-32 by its equation of state (CoolProp): isentropic work at 0.70 and a motor and
    drive of 0.93 lie within a quarter of the model."""
    t0, t1 = (cold - 32) / 1.8 + 273.15, (hot - 32) / 1.8 + 273.15
    h1 = PropsSI("H", "T", t0, "Q", 1, "R32")
    s1 = PropsSI("S", "T", t0, "Q", 1, "R32")
    p1 = PropsSI("P", "T", t1, "Q", 0, "R32")
    h2 = PropsSI("H", "P", p1, "S", s1, "R32")
    h3 = PropsSI("H", "T", t1 - 5, "P", p1, "R32")
    real = (h2 - h1) / (0.70 * 0.93) / (h1 - h3)
    model = cycle.compressor_btuh(1.0, cold, hot)
    assert model == pytest.approx(real, rel=0.25)


@pytest.mark.parametrize("bad", [{"charge_share": 0.3}, {"charge_share": 2.0},
                                 {"outdoor_air_share": 0.0}, {"air_lb_h": 100.0}])
def test_what_the_model_does_not_hold_for_is_refused(bad: dict[str, float]):
    with pytest.raises(ValueError, match="outside"):
        state(**bad)


def test_it_settles_and_is_finite_everywhere():
    for outdoor in range(55, 116, 10):
        for charge in (0.5, 0.8, 1.0, 1.5):
            for share in (0.25, 0.7, 1.3, 2.0):
                found = state(outdoor_f=float(outdoor), charge_share=charge,
                              air_lb_h=3767.0 * share)
                assert all(math.isfinite(v) for v in found)
