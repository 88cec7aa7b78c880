"""The seasonal rating, worked again."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from downflow.physics import rating

approx = pytest.approx

BINS = tuple(zip(
    (62, 57, 52, 47, 42, 37, 32, 27, 22, 17, 12, 7, 2, -3, -8),
    (0, 0, .103, .093, .1, .109, .126, .087, .055, .036, .026, .013, .006, .002, .001),
    strict=True,
))
LOW_62, LOW_47, MIDDLE_35 = (16000, 1000), (13500, 1010), (24000, 2250)
FULL_47, FULL_35, FULL_17, FULL_5 = (36000, 2900), (34000, 3900), (31000, 3750), (27500, 3900)
VARIABLE = (BINS, 34000, LOW_62, LOW_47, MIDDLE_35, FULL_47, FULL_35, FULL_17, FULL_5)
SINGLE = (BINS, 24000, (25000, 2050), (22000, 1980), (15800, 1800))


def test_every_bin_gets_the_heat_it_needs():
    result = rating.single_speed(*SINGLE)
    for row in result.rows:
        capacity, power = rating.full_speed(row.outdoor_f, *SINGLE[2:])
        part = min(1, row.load_btuh / row.share / capacity)
        heat = row.share * part * capacity + row.resistance_w * rating.BTU_PER_WH
        assert heat == approx(row.load_btuh)
        assert power > 0


def test_no_rating_is_better_than_its_best_bin():
    result = rating.variable_speed(*VARIABLE)
    bins = [row.load_btuh / (row.heat_pump_w + row.resistance_w) for row in result.rows]
    assert min(bins) < result.hspf2 < max(bins)


def test_all_resistance_rates_at_3_413():
    """A unit locked out in every bin gives only resistance heat."""
    result = rating.single_speed(*SINGLE, off_f=60, on_f=60)
    assert result.hspf2 == approx(rating.BTU_PER_WH)
    assert {row.running for row in result.rows} == {"off"}


@settings(deadline=None)
@given(st.floats(1, 1.03))
def test_the_defrost_credit_is_a_plain_factor(credit):
    assert rating.single_speed(*SINGLE, credit=credit).hspf2 == approx(
        credit * rating.single_speed(*SINGLE).hspf2
    )


def test_a_worse_cut_out_lowers_the_rating():
    assert rating.variable_speed(*VARIABLE, off_f=17, on_f=22).hspf2 < rating.variable_speed(
        *VARIABLE
    ).hspf2


def test_the_frosted_line_ends_at_45_with_a_step():
    untested = rating.default_35f(FULL_17, FULL_47)
    just_below = rating.full_speed(44.999, FULL_47, untested, FULL_17)
    at_45 = rating.full_speed(45, FULL_47, untested, FULL_17)
    assert at_45[0] - just_below[0] == approx(0.10 * 34_000 * 28 / 18, rel=1e-3)


def test_below_5_the_cold_test_is_carried_on_with_the_slope_from_17_to_47():
    assert rating.full_speed(-7, FULL_47, FULL_35, FULL_17, FULL_5)[0] == approx(
        27500 - 12 * (36000 - 31000) / 30
    )


def test_defrost_credit_ends():
    assert rating.defrost_credit(1.0, 12) == approx(1.03)
    assert rating.defrost_credit(12, 15) == approx(1.0)


def test_the_speed_between_meets_both_ends():
    """Heat per electricity has no jump where one way of running hands over to the next."""
    result = rating.variable_speed(*VARIABLE)
    assert [row.running for row in result.rows] == ["cycles"] * 3 + ["between"] * 5 + [
        "all out"
    ] * 5


@pytest.mark.parametrize(
    "call",
    [
        lambda: rating.load_btuh(17, 0, 1.15),
        lambda: rating.single_speed((), 24000, *SINGLE[2:]),
        lambda: rating.single_speed(*SINGLE, cycling_loss=1),
        lambda: rating.single_speed(*SINGLE, on_f=5),
        lambda: rating.single_speed(*SINGLE, off_f=5, on_f=0),
        lambda: rating.single_speed(BINS, 24000, (25000, 0), *SINGLE[3:]),
        lambda: rating.defrost_credit(13, 12),
        lambda: rating.defrost_credit(1, 1.5),
        lambda: rating.variable_speed(BINS, 34000, LOW_62, LOW_47, (40000, 2250), *VARIABLE[5:]),
    ],
)
def test_calls_that_make_no_sense_are_refused(call):
    with pytest.raises(ValueError, match=r".+"):
        call()
