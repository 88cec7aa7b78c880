"""Heat loss from one night: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of

PLAIN = {"furnace_input_btuh": 77_000.0, "furnace_efficiency_pct": 80.0, "burner_minutes": 205.0,
         "night_minutes": 480.0, "night_indoor_f": 70.0, "night_outdoor_f": 8.0,
         "internal_gains_btuh": 1500.0, "delivery_before_pct": 100.0}


def night(ranged=False, **facts):
    return solve_demo("furnace-run-time", ranged=ranged, **{**PLAIN, **facts})


def test_with_perfect_ducts_it_is_plain_arithmetic():  # (26,308 + 1,500) / 62
    assert night().values["night_ua_btuh_f"].value == pytest.approx(448.5, abs=0.1)
    assert night(internal_gains_btuh=0.0).values["night_ua_btuh_f"].value == pytest.approx(
        424.3, abs=0.1)


def test_ducts_that_deliver_seven_tenths_leave_less_for_the_rooms():
    leaky = night(delivery_before_pct=70.0).values
    assert leaky["night_ua_btuh_f"].value == pytest.approx((0.7 * 26_308 + 1500) / 62, abs=0.1)
    assert leaky["night_ua_furnace_btuh_f"].value > leaky["night_ua_btuh_f"].value


def test_a_burner_that_ran_longer_than_the_night_is_refused():
    assert night(burner_minutes=500.0).errors[0]["field"] == "burner_minutes"


def test_outdoors_warmer_than_indoors_is_refused():
    assert night(night_outdoor_f=60.0, night_indoor_f=55.0).errors[0]["field"] == "night_outdoor_f"


@pytest.mark.parametrize(("outdoor", "level"), [(40.0, "fine"), (40.5, "look")])
def test_thirty_degrees_of_difference_are_the_least(outdoor, level):
    assert verdict_of(night(night_outdoor_f=outdoor), "cold-enough").level == level


@pytest.mark.parametrize(("minutes", "level"), [(240.0, "fine"), (239.0, "look")])
def test_four_hours_are_the_least(minutes, level):
    answer = night(night_minutes=minutes, burner_minutes=100.0)
    assert verdict_of(answer, "long-enough").level == level


@pytest.mark.parametrize(("burner", "level"), [(465.0, "fine"), (467.0, "look")])
def test_a_burner_that_never_rests_may_have_let_the_room_fall(burner, level):
    assert verdict_of(night(burner_minutes=burner), "burner-not-always-on").level == level


def test_a_guessed_input_widens_the_range():
    read = night(ranged=True, furnace_input_btuh=(77_000.0, "measured")).values["night_ua_btuh_f"]
    guess = night(ranged=True, furnace_input_btuh=(77_000.0, "estimated")).values["night_ua_btuh_f"]
    assert guess.high - guess.low > read.high - read.low
