"""The homeowner link: short, the same from every side, and whole or refused."""

import base64
import json
import os
import random
import subprocess
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from downflow import homeowner as link
from downflow.demo import demo_job
from downflow.facts.job import Entry, write_job
from downflow.testing import changed

CLOSED = [s for s in link.SLOTS if not s.free]


def test_the_demo_link_comes_back_as_it_was(demo_slots):
    assert link.decode(link.encode(demo_slots)) == demo_slots


def test_the_link_is_at_most_400_characters_without_free_text(demo_slots):
    closed = {n: t for n, t in demo_slots.items() if not link._slot(n).free}
    assert len(link.encode(closed)) <= 400


def test_even_with_every_slot_at_its_longest():
    """Check, newline, every closed slot full, a newline after each; then base64 by thirds."""
    longest = 4 + sum(s.longest for s in CLOSED) + len(CLOSED) - 1
    assert 3 + -(-longest * 4 // 3) <= 400


def test_the_same_job_gives_the_same_link_from_the_shell(tmp_path):
    """The browser runs this very code; the shell must give its bytes."""
    file = tmp_path / "job.json"
    file.write_text(write_job(demo_job()), encoding="utf-8")
    site = "https://handbook.example.org/downflow"
    done = subprocess.run(
        [sys.executable, "-m", "downflow", "link", str(file), "--site", site],
        capture_output=True, text=True, check=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "PYTHONHASHSEED": "7"})
    assert done.stdout.strip() == link.link(demo_job(), site)
    assert done.stdout.startswith("https://handbook.example.org/downflow/h/#1.")


def test_the_link_of_another_unit_system_shows_other_figures(demo_slots):
    si = link.slots_of(demo_job(), "si")
    assert (si["units"], demo_slots["units"]) == ("s", "i")
    assert (si["day"], demo_slots["day"]) == ("-4", "25")
    assert si["chart"] == demo_slots["chart"]


def test_a_job_without_facts_still_has_a_link():
    from downflow.facts.job import Job

    slots = link.slots_of(Job("a", "A home"))
    assert slots == {"units": "i", "home": "A home"}
    assert link.decode(link.encode(slots)) == slots


def test_what_is_not_recorded_is_not_in_the_link():
    slots = link.slots_of(changed(fuel_line_capped=None, stove_fuel=None, water_heater_fuel=None,
                                  heat_cable=None))
    assert not {"capped", "capped_on", "burns", "burns_gas", "cable", "fuel_off"} & set(slots)


def test_a_flame_that_is_left_is_said_though_the_rest_is_unknown():
    slots = link.slots_of(changed(range_fuel="gas", stove_fuel=None, dryer_fuel=None))
    assert slots["burns"] == "wr"
    assert slots["burns_gas"] == "y"


def test_nothing_burns_only_where_each_is_recorded():
    slots = link.slots_of(changed(water_heater_fuel="electric"))
    assert (slots["burns"], slots["burns_gas"]) == ("n", "n")


def test_wood_burns_but_is_no_gas():
    slots = link.slots_of(changed(water_heater_fuel="electric", stove_fuel="wood"))
    assert (slots["burns"], slots["burns_gas"]) == ("s", "n")


def test_typed_text_is_cut_and_cleaned_of_what_steers_writing():
    job = demo_job().with_entry("crew_contact", Entry("call  the\tcrew " + "x" * 90, "measured"))
    assert link.slots_of(job)["contact"] == ("call the crew " + "x" * 90)[:60]
    hostile = demo_job().with_entry("crew_contact", Entry("abc\u202edef", "measured"))
    assert "contact" not in link.slots_of(hostile)


@pytest.mark.parametrize(("typed", "slot"), [
    ("16x25x4", "16x25x4"), ("16 × 25 × 4 in", "16x25x4"), ("20 X 20 x 1", "20x20x1"),
    ("about 16", None), ("<b>1</b>", None)])
def test_a_filter_size_is_taken_as_printed_or_left_out(typed, slot):
    assert link.slots_of(changed(filter_size=typed)).get("filter") == slot


@pytest.mark.parametrize(("day", "months", "expected"), [
    ("2026-10-20", 6, "202704"), ("2026-12-31", 1, "202701"), ("2026-01-31", 12, "202701")])
def test_the_next_filter_month(day, months, expected):
    assert link.month_after(day, months) == expected


def test_aux_is_called_about_well_above_the_balance_point(demo_slots):
    assert int(demo_slots["aux_call"]) >= int(demo_slots["aux_below"]) + 12


def test_the_charts_places_lie_within_its_frame(demo_slots):
    rests, ends, furnace, backup, height, day, *_ = map(int, demo_slots["chart"].split("."))
    assert 44 <= backup <= day <= rests <= ends <= 328
    assert 50 <= furnace <= 250
    assert 50 <= height <= 250


def _texts(slot, rng):
    import re

    for _ in range(200):
        text = "".join(rng.choice("0123456789-.,xyesnwrdigpho") for _ in range(
            rng.randint(1, slot.longest)))
        if re.fullmatch(slot.pattern, text):
            return text
    return ""


def test_any_slots_come_back_as_they_were():
    rng = random.Random(5)
    for _ in range(300):
        slots = {s.name: t for s in link.SLOTS if rng.random() < 0.5 and (t := _texts(s, rng))}
        assert link.decode(link.encode(slots)) == slots


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=300))
def test_no_text_is_taken_for_a_link(text):
    with pytest.raises(link.BadLink):
        link.decode(text if text.startswith("#") else "#" + text)


def test_every_cut_of_the_demo_link_is_refused(demo_slots):
    whole = link.encode(demo_slots)
    for end in range(1, len(whole)):
        with pytest.raises(link.BadLink):
            link.decode(whole[:end])


def test_every_changed_letter_of_the_demo_link_is_refused(demo_slots):
    whole = link.encode(demo_slots)
    for at in range(3, len(whole)):
        other = "A" if whole[at] != "A" else "B"
        with pytest.raises(link.BadLink):
            link.decode(whole[:at] + other + whole[at + 1:])


def test_a_newer_link_says_so():
    with pytest.raises(link.BadLink, match="newer"):
        link.decode("#2.AAAA")


@pytest.mark.parametrize(("name", "text"), [
    ("day", "1000"), ("day", "25.5"), ("units", "k"), ("filter", "16x25"), ("made", "20261301"),
    ("home", "x" * 41), ("home", "a\nb"), ("contact", "a\u200bb"), ("cost_after", "1,14")])
def test_a_text_that_does_not_fit_is_never_put_in(name, text):
    slot = link._slot(name)
    if name != "cost_after":
        assert not link.fits(slot, text)
    with pytest.raises(ValueError, match=name):
        link.encode({name: text}) if name != "cost_after" else link.encode({name: "1,1400"})


def test_an_unknown_slot_is_refused():
    with pytest.raises(ValueError, match="no slot"):
        link.encode({"phone": "1"})


def test_another_spelling_of_a_good_link_is_refused(demo_slots):
    """One job, one link: base64 with loose bits at its end is no second one."""
    body = "\n".join(demo_slots.get(n, "") for n in link.NAMES).rstrip("\n")
    for tail in ("", "\n"):
        data = f"{link.check_of(body + tail)}\n{body}{tail}".encode()
        text = "#1." + base64.urlsafe_b64encode(data).decode().rstrip("=")
        if tail:
            with pytest.raises(link.BadLink):
                link.decode(text)
        else:
            assert link.decode(text) == demo_slots


def test_the_page_and_python_read_the_same(run_page, demo_slots):
    """Same slots, same refusals, for good links and for spoilt ones."""
    rng = random.Random(11)
    good = [link.encode(demo_slots), link.encode({"units": "i"})]
    good += [link.encode({s.name: t for s in link.SLOTS if rng.random() < 0.4
                          and (t := _texts(s, rng))}) for _ in range(200)]
    spoilt = [g[:rng.randint(0, len(g))] for g in good] + [g + "A" for g in good]
    fragments = [f for f in good + spoilt if f not in ("", "#")]
    found = run_page("page.mjs", {"slots": link.table(), "fragments": fragments})["decoded"]
    for fragment, page in zip(fragments, found, strict=True):
        try:
            mine = link.decode(fragment)
        except link.BadLink as bad:
            mine = "newer" if str(bad) == link.NEWER else "broken"
        assert page == mine, fragment


def test_conditions_mean_the_same_on_the_page_and_here(run_page):

    names = ["burns=n", "!burns=n", "burns~w", "!burns", "burns", "burns&!burns=n", "units=i",
             "fuel=p&fuel_price"]
    slots = [{}, {"burns": "n"}, {"burns": "wr"}, {"fuel": "p", "fuel_price": "2.85"},
             {"units": "i"}]
    asked = [[c, s] for c in names for s in slots]
    said = run_page("page.mjs", {"slots": [], "conditions": asked})["said"]
    assert said == [link.holds(c, s) for c, s in asked]


def test_the_calendar_file_has_both_dates(run_page, demo_slots):
    text = run_page("page.mjs", {"slots": [], "calendar": [
        demo_slots, {"filter": "Change the furnace filter", "visit": "Yearly visit"}]})["calendar"]
    lines = text.split("\r\n")
    assert lines[0] == "BEGIN:VCALENDAR"
    assert lines[-2] == "END:VCALENDAR"
    assert "DTSTART;VALUE=DATE:20280401" in lines
    assert "RRULE:FREQ=MONTHLY;INTERVAL=6" in lines
    assert "SUMMARY:Change the furnace filter 20x25x4" in lines
    assert "DTSTART;VALUE=DATE:20281001" in lines
    assert lines.count("BEGIN:VEVENT") == lines.count("END:VEVENT") == 2
    assert all(len(line.encode()) <= 75 for line in lines)


def test_figures_are_set_in_type_and_not_changed(run_page):
    months = [f"m{n}" for n in range(1, 13)]
    asked = [["temperature", "-2", {"units": "i"}, months, " "],
             ["temperature", "-19", {"units": "s"}, months, " "],
             ["size", "16x25x4", {}, months, " "], ["month", "202704", {}, months, " de "],
             ["day", "20261019", {}, months, " "], ["day", "20261019", {}, months, " de "],
             ["text", "10-12", {}, months, " "], ["money", "1,140", {}, months, " "]]
    assert run_page("page.mjs", {"slots": [], "shown": asked})["shown"] == [
        "−2\u00a0°F", "−19\u00a0°C", "16\u00a0×\u00a025\u00a0×\u00a04\u00a0in", "m4 de 2027",
        "m10 19, 2026", "19 de m10 de 2026", "10–12", "1,140"]


def test_the_table_of_the_page_is_plain_data():
    assert json.loads(json.dumps(link.table())) == link.table()
    assert len({s.name for s in link.SLOTS}) == len(link.SLOTS)
