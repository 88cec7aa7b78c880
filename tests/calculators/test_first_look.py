"""A first look: what a technician could argue with."""

import pytest

from downflow.demo import demo_job
from downflow.facts.job import Entry
from downflow.plan import plan, the_chain
from downflow.render.first import MOST_FACTS, first_facts, first_job
from downflow.testing import solve_demo, verdict_of

BARE = {"hp_points": None, "appliances": None, "trunks": None, "cabinet_width_in": None}


def look(*, ranged=False, **facts):
    return solve_demo("first-look", ranged=ranged, **{**BARE, **facts})


def a_dozen(**facts):
    job = first_job(demo_job())
    for name, value in facts.items():
        job = job.with_entry(name, Entry(value, "measured"))
    return job


def test_a_dozen_facts_bring_load_share_kit_panel_and_crossover():
    assert len(first_facts()) <= MOST_FACTS
    made = plan(a_dozen())
    for id_ in ("heat-loss", "two-roads", "capacity-at-altitude", "first-look"):
        assert made.answers[id_].ok, (id_, made.answers[id_].missing)
    answer = made.answers["first-look"]
    assert {"first_share_pct", "first_kit_kw", "first_service_a"} <= set(answer.values)
    assert {"unit", "panel", "crossover", "closet", "furnace"} == {v.id for v in answer.verdicts}


def test_the_ranges_of_a_dozen_facts_are_honestly_wide_and_hold_the_whole_surveys_answer():
    first, whole = plan(a_dozen()), plan(demo_job())
    for id_, name, name_whole in (
            ("two-roads", "design_load_btuh", "design_load_btuh"),
            ("first-look", "first_share_pct", "hp_share_pct"),
            ("first-look", "first_shortfall_kw", "kit_shortfall_kw"),
            ("first-look", "first_service_a", "service_load_a")):
        wide = first.answers[id_].values[name]
        sure = next(a.values[name_whole] for a in whole.answers.values()
                    if name_whole in a.values)
        assert wide.high - wide.low > sure.high - sure.low, name
        assert wide.low < sure.high and sure.low < wide.high, name


def test_each_further_reading_narrows_it():
    dozen = the_chain().solve("two-roads", a_dozen()).values["design_load_btuh"]
    one_more = the_chain().solve("two-roads", a_dozen(
        wall_insulation_r=11.0, ceiling_insulation_r=22.0, floor_insulation_r=11.0,
        blower_door_cfm50=1380.0)).values["design_load_btuh"]
    assert one_more.high - one_more.low < dozen.high - dozen.low


def test_the_colder_the_night_the_less_it_covers():
    cold = look(design_heating_f=(-15.0, "data sheet")).values["first_share_pct"].value
    mild = look(design_heating_f=(20.0, "data sheet")).values["first_share_pct"].value
    assert cold < look().values["first_share_pct"].value < mild


@pytest.mark.parametrize(("rating", "level"), [(130, "look"), (140, "look"), (100, "look")])
def test_the_panel_never_reads_better_than_a_look(rating, level):
    assert verdict_of(look(main_breaker_a=rating), "panel").level == level


def test_a_service_that_is_clearly_too_small_is_said():
    small = verdict_of(look(main_breaker_a=60), "panel")
    assert not small.sound
    assert "before you quote" in small.do
    assert verdict_of(look(main_breaker_a=200), "panel").to_sign


def test_the_panel_at_its_limit():
    amps = look().values["first_service_a"].value
    assert verdict_of(look(main_breaker_a=amps + 0.1), "panel").sound
    assert not verdict_of(look(main_breaker_a=amps - 0.1), "panel").sound


@pytest.mark.parametrize(("found", "level"), [
    ("not looked", "look"), ("none", "look"), ("slot", "look"), ("round", "look")])
def test_a_crossover_is_looked_at_before_anything_is_promised(found, level):
    assert verdict_of(look(crossover_found=found), "crossover").level == level
    assert verdict_of(look(crossover_found=found, sections="single"), "crossover").level == "fine"


@pytest.mark.parametrize(("width", "level"), [(21.5, "fine"), (20.5, "look")])
def test_a_narrow_closet_is_said_at_the_door(width, level):
    assert verdict_of(look(closet_width_in=width), "closet").level == level


def test_a_furnace_too_small_for_the_load_makes_one_ask():
    load = 0.75 * look().values["first_shortfall_kw"].value
    assert load > 0
    assert verdict_of(look(), "furnace").level == "fine"
    assert verdict_of(look(furnace_input_btuh=25000.0), "furnace").level == "look"


def test_each_part_steps_back_for_its_own_page():
    whole = solve_demo("first-look", ranged=False)
    assert verdict_of(whole, "unit").text.startswith("A unit is chosen")
    assert "Service and panel" in verdict_of(whole, "panel").text
    assert "Which crossover" in verdict_of(whole, "crossover").text
    assert all(v.level == "fine" or v.to_sign for v in whole.verdicts)


def test_without_a_main_breaker_there_is_no_first_look():
    answer = look(main_breaker_a=None)
    assert answer.ok is None
    assert answer.missing == ["main_breaker_a"]
