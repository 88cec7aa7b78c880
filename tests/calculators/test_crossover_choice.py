"""The crossover: what a technician could argue with."""

import pytest

from downflow.testing import solve_demo, verdict_of


def choice(*, ranged=False, **facts):
    return solve_demo("crossover-choice", ranged=ranged, **facts)


def row(answer, name):
    return next(r for r in answer.tables["crossover_options"] if r["option"] == name)


def test_no_crossover_feeds_nothing_far():
    answer = choice(crossover_planned_count=0.0)
    assert row(answer, "none")["far_share_pct"] == 0
    assert verdict_of(answer, "both-halves").level == "hold"


def test_a_larger_crossover_always_brings_more_and_costs_less_static():
    answer = choice()
    sizes = [row(answer, f"{d} in") for d in (8, 10, 12, 14)]
    shares = [r["far_share_pct"] for r in sizes]
    statics = [r["static_inwc"] for r in sizes]
    assert shares == sorted(shares)
    assert statics == sorted(statics, reverse=True)


def test_two_bring_more_than_one():
    answer = choice()
    assert row(answer, "two of 10 in")["far_share_pct"] > row(answer, "10 in")["far_share_pct"]


def test_the_smallest_that_feeds_both_halves_is_taken():
    answer = choice()
    size = answer.values["crossover_size_in"].value
    assert row(answer, f"{size:g} in")["feeds"]
    assert not any(row(answer, f"{d} in")["feeds"] for d in (8, 10, 12, 14) if d < size)


def test_a_planned_size_is_kept_though_it_falls_short():
    answer = choice(crossover_planned_in=10.0, crossover_planned_count=1.0)
    assert answer.values["crossover_size_in"].value == 10
    assert verdict_of(answer, "both-halves").level == "hold"


def test_the_shallow_slot_starves_the_far_half_though_its_area_is_that_of_a_seven_inch_duct():
    slot = row(choice(), "the slot found")
    assert slot["far_share_pct"] < 30
    assert slot["velocity_fpm"] > row(choice(), "12 in")["velocity_fpm"]


def test_a_sound_round_one_that_feeds_both_halves_stays():
    answer = choice(crossover_found="round", crossover_sound="sound", found_diameter_in=15.0)
    assert answer.values["crossover_size_in"].value == 15


def test_nobody_looked_is_a_hold():
    assert verdict_of(choice(crossover_found="not looked"), "existing-looked-for").level == "hold"


def test_found_but_not_inspected_is_a_look():
    answer = choice(crossover_found="round", found_diameter_in=10.0, crossover_sound=None)
    assert verdict_of(answer, "existing-looked-for").level == "look"


def test_above_ten_inches_the_page_says_that_the_sources_part():
    assert "range holds both" in verdict_of(choice(), "flex-known").text
    small = choice(crossover_planned_in=10.0, crossover_planned_count=1.0)
    assert "within the published tests" in verdict_of(small, "flex-known").text


@pytest.mark.parametrize(("slack", "level"), [(10.0, "fine"), (10.5, "look")])
def test_a_large_duct_with_slack_is_a_look(slack, level):
    answer = choice(crossover_planned_in=14.0, crossover_planned_count=1.0,
                    crossover_compression_pct=slack)
    assert verdict_of(answer, "flex-known").level == level


@pytest.mark.parametrize(("apart", "level"), [(3.9, "fine"), (4.1, "look")])
def test_supports_stand_no_more_than_four_feet_apart(apart, level):
    answer = choice(crossover_support_ft=apart)
    assert verdict_of(answer, "flex-support").level == level


def test_more_slack_less_air():
    tight = choice(crossover_compression_pct=0.0, crossover_planned_in=12.0)
    slack = choice(crossover_compression_pct=30.0, crossover_planned_in=12.0)
    assert slack.values["crossover_far_share_pct"].value < \
        tight.values["crossover_far_share_pct"].value - 3


def test_one_trunk_needs_none():
    trunk = {"id": "A", "width_in": 14.0, "height_in": 5.0, "length_ft": 50.0, "feed_ft": 26.0,
             "material": "galvanized", "under_box": True}
    registers = [{"id": str(k), "trunk": "A", "room": "den", "at_ft": 10.0 * k,
                  "width_in": 4.0, "length_in": 10.0} for k in range(1, 5)]
    answer = choice(trunks=[trunk], registers=registers)
    assert answer.values["crossover_count"].value == 0
    assert verdict_of(answer, "far-half").level == "fine"


def test_the_range_holds_both_published_bounds():
    answer = choice(ranged=True)
    share = answer.values["crossover_far_share_pct"]
    assert share.high - share.low > 2


@pytest.mark.parametrize(("change", "field"), [
    ({"home_length_ft": 40.0}, "trunks[0].length_ft"),
    ({"fan_kind": "speed", "fan_table": [
        {"static_inwc": 0.2, "airflow_cfm": 1000.0}, {"static_inwc": 0.4, "airflow_cfm": 1100.0}]},
     "fan_table[1].airflow_cfm"),
])
def test_what_cannot_be_is_named_by_its_cell(change, field):
    answer = choice(**change)
    assert answer.ok is False
    assert field in [e["field"] for e in answer.errors]


def test_sizes_are_shown_in_the_readers_units():
    from downflow.engine.answer import verdict_data

    verdict = verdict_of(choice(), "both-halves")
    assert "14\u00a0in" in verdict_data(verdict, "ip")["text"]
    assert "356\u00a0mm" in verdict_data(verdict, "si")["text"]
