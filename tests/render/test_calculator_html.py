"""A painted calculator: well-formed, the same twice, honest about whose numbers it shows."""

from __future__ import annotations

import dataclasses
import json

import pytest
from render.pages import HOSTILE, Node, read, seeded_job, whole
from render.rework import number_in, result_in, rework

from downflow.bridge import handle
from downflow.calculators import all_calculators
from downflow.demo import demo_job, with_example
from downflow.engine.formula import round_digits
from downflow.facts import all_facts
from downflow.facts.job import Entry, Job, Release, write_job
from downflow.plan import the_chain
from downflow.render.calculator import REGIONS, calculator_html, paint, regions

IDS = sorted(all_calculators())


def ask(op: str, **request: object) -> dict[str, object]:
    reply = json.loads(handle(json.dumps({"op": op, **request})))
    assert isinstance(reply, dict)
    return reply


@pytest.mark.parametrize("id_", IDS)
@pytest.mark.parametrize("system", ["ip", "si"])
def test_every_calculator_is_painted_well_formed(id_: str, system: str) -> None:
    tree = whole(calculator_html(id_, None, system))
    assert {n.attributes["data-region"] for n in tree.with_attribute("data-region")} == set(REGIONS)
    assert tree.find("df-example"), "the example says that it is one"


@pytest.mark.parametrize("id_", IDS)
def test_painted_and_recomputed_regions_are_the_same_bytes(id_: str) -> None:
    first = 5 * IDS.index(id_)      # all 20 seeds take their turn over the calculators
    for job in [None, *(seeded_job(seed % 20) for seed in range(first, first + 5))]:
        painted = calculator_html(id_, job, "ip")
        text = None if job is None else write_job(job)
        reply = ask("calculator", id=id_, job=text, units="ip")
        assert reply["ok"], reply
        again = reply["regions"]
        assert isinstance(again, dict)
        assert set(again) == set(REGIONS)
        for name, html in again.items():
            assert f'data-region="{name}"' in painted
            assert html in painted, f"{name} of {id_}"
            read(html)
        assert str(reply["pin"]) in painted


def test_a_recomputation_leaves_the_form_alone() -> None:
    job = write_job(demo_job())
    reply = ask("change", id="heat-pump-match", job=job, name="hp_cutout_f", typed="-20",
                units="ip", at="2026-01-01T00:00:00Z", ranged=False, **{"from": "measured"})
    assert reply["ok"]
    assert "form" not in reply["regions"]  # type: ignore[operator]


# ---- the working, re-worked by hand -------------------------------------------------------

@pytest.mark.parametrize("id_", IDS)
def test_each_shown_step_reworked_by_hand_gives_the_shown_result(id_: str) -> None:
    for job in (demo_job(), seeded_job(3), seeded_job(11)):
        answer = the_chain().solve(id_, job, ranged=False)
        if not answer.ok:
            continue
        done = paint(id_, job, "ip", ranged=False)
        lines = read(done.regions["working"]).find("df-line")
        for step, line in zip(answer.working, lines, strict=False):
            if step.kind == "formula":
                cells = line.find("df-line__eq")[0].children
                spans = [c for c in cells if isinstance(c, Node) and c.name == "span"]
                put_in, result = (spans[1] if step.values else spans[0]), spans[-1]
                worked = rework(_inside(done.regions["working"], put_in))
                shown = result_in(result)
                assert round_digits(worked, 4) == pytest.approx(shown, rel=1e-12), step.formula
                assert shown == pytest.approx(round_digits(step.result, 4), rel=1e-12)
            elif step.kind == "sum":
                numbers = [number_in(n.text()) for n in line.find("n")]
                decimals = max(len(n.text().partition(".")[2]) for n in line.find("n"))
                assert round(sum(numbers[:-1]), decimals) == pytest.approx(numbers[-1])


def _inside(html: str, node: Node) -> str:
    """The markup of an element, written again from the tree."""
    def write(one: Node | str) -> str:
        if isinstance(one, str):
            return one.replace("&", "&amp;").replace("<", "&lt;")
        said = "".join(f' {k}="{v}"' for k, v in one.attributes.items())
        return f"<{one.name}{said}>{''.join(write(c) for c in one.children)}</{one.name}>"

    return "".join(write(c) for c in node.children)


@pytest.mark.parametrize("id_", IDS)
def test_the_range_shown_is_the_root_of_the_squares_shown(id_: str) -> None:
    answer = the_chain().solve(id_, demo_job())
    if not answer.terms or not answer.shown():
        return
    value = answer.values[answer.shown()[0]]
    low = sum(d * d for d, _ in answer.terms.values()) ** 0.5
    assert value.value - value.low == pytest.approx(low, rel=1e-6, abs=1e-9)


# ---- whose numbers ------------------------------------------------------------------------

def test_a_borrowed_number_is_marked_and_never_enters_the_job() -> None:
    begun = ask("change", id="heat-pump-match", job=None, new={"id": "a", "name": "Mine"},
                name="hp_cutout_f", typed="-20", units="ip", at="2026-01-01T00:00:00Z",
                ranged=False, example=True, **{"from": "measured"})
    assert begun["ok"]
    sheet = json.loads(str(begun["job"]))
    assert set(sheet["facts"]) == {"hp_cutout_f"}
    job, borrowed = with_example(Job("a", "Mine", {"hp_cutout_f": Entry(-20.0, "measured")}))
    form = read(regions("heat-pump-match", job, example=borrowed)["form"])
    fields = {n.attributes["data-fact"]: n for n in form.with_attribute("data-fact")}
    assert "data-example" not in fields["hp_cutout_f"].attributes
    assert "data-example" in fields["hp_rated_together"].attributes
    messages = regions("heat-pump-match", job, example=borrowed)["messages"]
    assert "not yours" in messages


def test_the_examples_table_is_for_reading_only() -> None:
    form = read(regions("heat-pump-match", None)["form"])
    field = next(n for n in form.with_attribute("data-fact")
                 if n.attributes["data-fact"] == "hp_points")
    filled = [n for n in field.all() if n.name == "input" and n.attributes.get("value")]
    assert not filled, "a table of one's own starts empty"
    assert "−13" in field.text()


def test_a_missing_fact_leaves_the_answer_out_and_is_named() -> None:
    done = paint("heat-pump-match", Job("a", "Mine"), "ip")
    assert done.answer.ok is None
    assert "No answer yet" in done.regions["answer"]
    assert "missing" in done.regions["answer"]
    assert done.regions["verdicts"] == ""


# ---- pending, released, signed ------------------------------------------------------------

@pytest.mark.parametrize("id_", IDS)
def test_nothing_with_a_limit_reads_fine_before_its_range_is_in(id_: str) -> None:
    answer = the_chain().solve(id_, demo_job(), ranged=False)
    tree = read(paint(id_, demo_job(), "ip", ranged=False).regions["verdicts"])
    levels = {n.attributes["data-verdict"]: n.attributes["data-level"]
              for n in tree.with_attribute("data-verdict")}
    for verdict in answer.verdicts:
        if verdict.value is not None:
            assert levels[f"{id_}#{verdict.id}"] != "fine"


def test_a_released_hold_names_who_released_it() -> None:
    id_, job = "heat-pump-match", demo_job().with_entry(
        "hp_rated_together", Entry(False, "data sheet"))
    held = read(regions(id_, job)["verdicts"])
    verdict = held.find("df-verdict--hold")[0]
    assert [n for n in verdict.all() if n.attributes.get("data-release")]
    one = Release(id_, "one-combination", HOSTILE, "Licence 1", "Reason", "2026-02-03")
    released = regions(id_, dataclasses.replace(job, released=(one,)))["verdicts"]
    assert "<script" not in released
    text = read(released).text()
    assert f"Released by {HOSTILE} (Licence 1) on 2026-02-03: Reason" in text
    assert "hold, released" in text


@pytest.mark.parametrize("id_", IDS)
def test_every_verdict_has_its_word_its_source_and_a_blank_to_sign(id_: str) -> None:
    answer = the_chain().solve(id_, demo_job())
    tree = read(regions(id_, demo_job())["verdicts"])
    shown = {n.attributes["data-verdict"]: n for n in tree.with_attribute("data-verdict")}
    for verdict in answer.verdicts:
        node = shown[f"{id_}#{verdict.id}"]
        assert node.find("df-verdict__word")[0].text() in ("fine", "look", "hold")
        assert verdict.source.document in node.text()
        if verdict.signs:
            assert node.find("df-blank"), verdict.id
    levels = [n.attributes["data-level"] for n in tree.with_attribute("data-verdict")]
    assert levels == sorted(levels, key=["hold", "look", "fine"].index), "worst first"


# ---- forms ---------------------------------------------------------------------------------

@pytest.mark.parametrize("id_", IDS)
def test_a_caution_stands_before_the_field_that_it_guards(id_: str) -> None:
    above: list[str] = []
    for node in read(regions(id_, demo_job())["form"]).all():
        if "df-caution" in (node.attributes.get("class") or "").split():
            above.append(node.text())
        name = node.attributes.get("data-fact")
        hazard = all_facts()[name].hazard if name else None
        if hazard is not None:
            assert any(hazard.text in text and hazard.level.upper() in text for text in above), name


def test_every_number_field_that_may_be_negative_has_a_way_to_type_a_minus() -> None:
    for id_ in IDS:
        form = read(regions(id_, demo_job())["form"])
        for node in form.with_attribute("data-fact"):
            fact = all_facts()[str(node.attributes["data-fact"])]
            if fact.kind == "number" and fact.low is not None and fact.low < 0:
                assert node.with_attribute("data-sign"), fact.name
                inputs = [n for n in node.all() if n.attributes.get("name") == fact.name]
                assert inputs[0].attributes["inputmode"] == "decimal"


def test_hostile_names_and_notes_are_text() -> None:
    job = demo_job()
    for name in job.names():
        entry = job.entry(name)
        assert entry is not None
        value = HOSTILE if all_facts()[name].kind == "text" else entry.value
        job = job.with_entry(name, Entry(value, entry.origin, entry.at, HOSTILE))
    job = dataclasses.replace(job, name=HOSTILE)
    for id_ in IDS:
        html = calculator_html(id_, job, "ip")
        assert "<script" not in html
        whole(html)


# ---- units ---------------------------------------------------------------------------------

@pytest.mark.parametrize("system", ["ip", "si"])
def test_what_a_field_shows_typed_again_changes_nothing(system: str) -> None:
    from downflow.render.values import typed

    text = write_job(demo_job())
    job = demo_job()
    for name in sorted(job.names()):
        fact, entry = all_facts()[name], job.entry(name)
        assert entry is not None
        if fact.kind == "table":
            rows = [{c.name: typed(c, row.get(c.name), system) for c in fact.columns}
                    for row in entry.value]
            reply = ask("table", job=text, name=name, rows=rows, units=system,
                        at="2027-01-01T00:00:00Z", **{"from": entry.origin})
        else:
            reply = ask("enter", job=text, name=name, typed=typed(fact, entry.value, system),
                        units=system, at="2027-01-01T00:00:00Z", **{"from": entry.origin})
        assert reply["ok"], (name, reply)
        assert reply["changed"] is False, name
        assert reply["job"] == text, name


def test_a_value_typed_in_si_shows_again_as_typed() -> None:
    job = write_job(Job("a", "Mine"))
    reply = ask("enter", job=job, name="hp_cutout_f", typed="-21.5", units="si", at="",
                **{"from": "measured"})
    form = ask("fact", job=reply["job"], name="hp_cutout_f", units="si")
    field = next(n for n in read(str(form["html"])).all()
                 if n.attributes.get("name") == "hp_cutout_f")
    assert field.attributes["value"] == "−21.5"
    stored = json.loads(str(reply["job"]))["facts"]["hp_cutout_f"]
    assert stored["unit"] == "°F"
    assert stored["value"] == pytest.approx(-6.7, abs=1e-12)


def test_the_working_stays_in_the_formulas_own_units() -> None:
    ip, si = (regions("heat-pump-match", demo_job(), s)["working"] for s in ("ip", "si"))
    first = read(ip).find("df-line")[0].text()
    assert first == read(si).find("df-line")[0].text()
    assert "Btu/h" in first
    assert "W" in first, "the result is repeated in SI"
