"""Question drills: numbers, which is wrong, what next. Endless by seed; the engine answers.

A question is data: its text, what is given, what may be answered. Its explanation comes from the
calculator's own working, from the rule that was broken, or from the engine's own choice of what to
measure next.
"""

from __future__ import annotations

import functools
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from downflow.demo import demo_job
from downflow.engine.answer import Answer
from downflow.engine.chain import Study
from downflow.facts import all_facts
from downflow.facts.job import Entry, Job
from downflow.plan import the_chain
from downflow.practice import bench as benches
from downflow.practice import measures, plant
from downflow.practice.chance import Chance, a_seed
from downflow.practice.faults import CALL, FAULTS, RANKS, Fault
from downflow.practice.skills import SKILLS
from downflow.units import Quantity

KITS_KW = (5.0, 8.0, 10.0)
Values = dict[str, Quantity | str]
NUMERIC, WRONG, NEXT = "number", "which-is-wrong", "what-next"
KINDS: dict[str, str] = {NUMERIC: "A number", WRONG: "Which is wrong", NEXT: "What next"}


class Varied(NamedTuple):
    """A fact that a question varies: `low` to `high` in steps, in `scale` of its unit."""

    name: str
    low: int
    high: int
    step: int = 1
    scale: float = 1.0


class Template(NamedTuple):
    """A question about a number.

    Attributes:
        id: Its name.
        skill: What it practises.
        calculator, output: Who answers it.
        text: The question.
        varied: What changes from one to the next.
        given: Facts that are told besides.
        relative, absolute: Tolerance, the wider of the two.
        procedure: The procedure that teaches it.
    """

    id: str
    skill: str
    calculator: str
    output: str
    text: str
    varied: tuple[Varied, ...]
    given: tuple[str, ...]
    relative: float
    absolute: float
    procedure: str


TEMPLATES: tuple[Template, ...] = (
    Template("rise", "air", "airflow-by-heat-rise", "heat_rise_cfm",
             "Only the elements are on. How much air does the system move, in actual cfm?",
             (Varied("kit_volts", 236, 243), Varied("kit_amps", 200, 420, 5, 0.1),
              Varied("rise_supply_f", 940, 1080, 5, 0.1), Varied("elevation_ft", 0, 8000, 100)),
             ("rise_return_f", "blower_watts", "clamp_holds_blower"), 0.03, 0.0, "start-up"),
    Template("rise-standard", "air", "airflow-by-heat-rise", "heat_rise_scfm",
             "Only the elements are on. How much standard air is that, as the kit's label counts "
             "it?",
             (Varied("kit_volts", 236, 243), Varied("kit_amps", 200, 420, 5, 0.1),
              Varied("rise_supply_f", 940, 1080, 5, 0.1)),
             ("rise_return_f", "blower_watts", "clamp_holds_blower"), 0.03, 0.0, "start-up"),
    Template("static", "air", "airflow-by-static", "static_read_inwc",
             "What is the external static in the air of the fan table, standard air?",
             (Varied("static_supply_inwc", 4, 22, 1, 0.01),
              Varied("static_return_inwc", 6, 30, 1, 0.01),
              Varied("elevation_ft", 0, 8000, 100)), ("rise_return_f",), 0.03, 0.01,
             "yearly-visit"),
    Template("night", "heat", "furnace-run-time", "night_ua_btuh_f",
             "One cold night was counted. What does the home lose for each degree?",
             (Varied("burner_minutes", 120, 380, 4), Varied("night_outdoor_f", -8, 24),
              Varied("furnace_input_btuh", 50, 95, 5, 1000.0)),
             ("night_minutes", "night_indoor_f", "furnace_efficiency_pct", "delivery_before_pct",
              "internal_gains_btuh"), 0.03, 0.0, "load-and-equipment"),
    Template("vent", "heat", "close-old-furnace", "open_vent_btuh",
             "The old vent stands open. What does it take on the design night?",
             (Varied("vent_in", 4, 7), Varied("vent_rise_ft", 11, 16),
              Varied("design_heating_f", -14, 22)),
             ("indoor_design_f", "elevation_ft", "vent_discharge", "leakage_area_in2"), 0.04, 0.0,
             "close-the-openings"),
    Template("balance", "cold", "heat-pump-match", "hp_balance_f",
             "Down to which outdoor temperature does the heat pump alone hold the home?",
             (Varied("home_ua_btuh_f", 300, 620, 5),),
             ("hp_points", "hp_altitude_factor_pct", "delivery_efficiency_pct", "indoor_design_f",
              "season_balance_f"), 0.0, 2.0, "load-and-equipment"),
    Template("alone", "cold", "backup-kit", "kit_alone_holds_to_f",
             "The heat pump is down. To which outdoor temperature does the kit alone hold the "
             "home?",
             (Varied("home_ua_btuh_f", 260, 620, 5), Varied("supply_v", 228, 244)),
             ("kit_planned_kw", "kit_rated_v", "indoor_design_f", "delivery_efficiency_pct"),
             0.0, 1.5, "install-the-kit"),
    Template("tie", "homeowner", "price-tie", "break_even_cop",
             "At which COP does a unit of heat from the heat pump cost as much as from the "
             "furnace?",
             (Varied("propane_usd_gal", 180, 420, 5, 0.01),
              Varied("electricity_usd_kwh", 90, 260, 5, 0.001)),
             ("heating_fuel", "furnace_efficiency_pct"), 0.03, 0.0, "hand-over-talk"),
    Template("kit-amps", "electricity", "kit-circuit", "kit_amps_here_a",
             "Which current does this kit draw at the voltage that is there?",
             (Varied("supply_v", 226, 246), Varied("kit_planned_kw", 0, 2)),
             ("kit_rated_v",), 0.02, 0.0, "electrical"),
    Template("service", "electricity", "service-load", "service_load_a",
             "Compressor and kit run together. What is the load of the service, by the sum for an "
             "existing dwelling?",
             (Varied("floor_area_ft2", 900, 2000, 20), Varied("outdoor_unit_a", 12, 28),
              Varied("kit_planned_kw", 0, 2)),
             ("appliances", "kitchen_circuits", "laundry_circuits", "indoor_blower_a"), 0.03, 0.0,
             "electrical"),
    Template("trap", "water", "condensate-trap", "trap_total_in",
             "How high must the trap be in all, from the pan's outlet to its lowest point?",
             (Varied("pan_suction_inwc", 30, 130, 5, 0.01),), ("drain_pipe",), 0.04, 0.1,
             "condensate-trap"),
    Template("drain", "water", "condensate-trap", "drain_need_in",
             "How far must this drain fall?", (Varied("drain_run_ft", 6, 48),), (), 0.03, 0.1,
             "condensate-trap"),
    Template("subcooling", "refrigerant", "superheat-subcooling", "subcooling_f",
             "What is the subcooling? The table of pressure and temperature is in the handbook.",
             (Varied("liquid_psig", 235, 330), Varied("liquid_line_f", 700, 860, 2, 0.1),
              Varied("elevation_ft", 0, 8000, 500)), ("refrigerant",), 0.0, 1.2,
             "pressure-and-vacuum"),
    Template("superheat", "refrigerant", "superheat-subcooling", "superheat_f",
             "What is the superheat? The table of pressure and temperature is in the handbook.",
             (Varied("suction_psig", 100, 135), Varied("suction_line_f", 500, 640, 2, 0.1),
              Varied("elevation_ft", 0, 8000, 500)), ("refrigerant",), 0.0, 1.2,
             "pressure-and-vacuum"),
    Template("line-charge", "refrigerant", "line-set", "charge_change_oz",
             "How much charge is added for the line set?",
             (Varied("lineset_ft", 12, 96), Varied("charge_rate_oz_ft", 30, 80, 1, 0.01)),
             ("lineset_included_ft",), 0.02, 0.1, "line-set-and-brazing"),
    Template("nitrogen", "safety", "pressure-test", "nitrogen_expected_psig",
             "The system is tight. What does the gauge read the next morning?",
             (Varied("nitrogen_start_psig", 300, 520, 5), Varied("nitrogen_start_f", 48, 96),
              Varied("nitrogen_end_f", 14, 66)), ("elevation_ft",), 0.006, 0.0,
             "pressure-and-vacuum"),
)
"""Every question about a number."""


@dataclass(frozen=True)
class Option:
    """One answer that can be chosen."""

    id: str
    text: str
    values: Values = field(default_factory=dict)


@dataclass(frozen=True)
class Given:
    """Something told with a question."""

    label: str
    value: Any
    unit: str = ""
    decimals: int = 0
    fact: str = ""


@dataclass(frozen=True)
class Question:
    """One question.

    Attributes:
        seed, kind: Which one.
        skill: What it practises.
        text: The question.
        given: What is told.
        unit, decimals: Of the number asked for; no unit and -1 where one is chosen.
        options: What can be chosen.
        right: The right option's id, or nothing.
        truth, tolerance: The right number.
        why: Explanation; `{name}` stands for a value.
        values: Those values.
        answer: The calculator's answer, whose working explains it.
        procedure: The procedure that teaches it.
    """

    seed: int
    kind: str
    skill: str
    text: str
    given: tuple[Given, ...]
    unit: str = ""
    decimals: int = -1
    options: tuple[Option, ...] = ()
    right: str = ""
    truth: float = 0.0
    tolerance: float = 0.0
    why: str = ""
    values: Values = field(default_factory=dict)
    answer: Answer | None = None
    procedure: str = ""

    def is_right(self, said: float | str) -> bool:
        """Whether an answer counts."""
        if self.options:
            return said == self.right
        return isinstance(said, (int, float)) and abs(said - self.truth) <= self.tolerance


def question(seed: int, kind: str = "", skill: str = "") -> Question:
    """The question of a number.

    Args:
        seed: Which one.
        kind: Of which kind; the number chooses where it is empty.
        skill: On which skill; any where it is empty.

    Raises:
        ValueError: No such kind or skill, or no question of that kind on that skill.
    """
    a_seed(seed)
    if kind and kind not in KINDS:
        raise ValueError(f"no kind of question is called {kind!r}")
    if skill and skill not in {s.id for s in SKILLS}:
        raise ValueError(f"no skill is called {skill!r}")
    return _question(seed, kind, skill)


@functools.lru_cache(maxsize=64)
def _question(seed: int, kind: str, skill: str) -> Question:
    chance = Chance(seed, "drill", kind, skill)
    kinds = [kind] if kind else list(KINDS)
    makers = [(k, maker) for k in kinds for maker in _makers(k, skill)]
    if not makers:
        raise ValueError(f"there is no question of kind {kind!r} on {skill!r}")
    first = chance.pick(sorted({k for k, _ in makers}))
    _, maker = chance.pick([m for m in makers if m[0] == first])
    return maker(seed, chance)  # type: ignore[no-any-return]


def _makers(kind: str, skill: str) -> list[Any]:
    if kind == NUMERIC:
        return [functools.partial(_numeric, t) for t in TEMPLATES if skill in ("", t.skill)]
    if kind == WRONG:
        return [functools.partial(_which_wrong, w) for w in WRONGS if skill in ("", w.skill)]
    out: list[Any] = []
    faults = [f for f in FAULTS if CALL in f.visits]
    if any(skill in ("", f.skill) for f in faults):
        out += [functools.partial(_which_first, skill), functools.partial(_which_reading, skill)]
    if skill in ("", "heat"):
        out.append(_narrows_most)
    return out


# ---- numbers ----------------------------------------------------------------------------

def _numeric(template: Template, seed: int, chance: Chance) -> Question:
    job = demo_job()
    told: list[Given] = []
    for varied in template.varied:
        raw = chance.whole(varied.low, varied.high, varied.step)
        value = raw if varied.scale == 1.0 else round(raw * varied.scale, 4)
        name, value = varied.name, float(value)
        if name == "kit_planned_kw":
            value = KITS_KW[int(value)]
        job = job.with_entry(name, Entry(value, "measured"))
        told.append(_told(name, value))
    for name in template.given:
        entry = job.entry(name)
        fact = all_facts()[name]
        if entry is not None:
            told.append(_told(name, entry.value))
        elif fact.assumption is not None:
            told.append(_told(name, fact.assumption.value))
        else:
            value_of = _worked_out(job, name)
            told.append(_told(name, value_of))
    answer = Study(the_chain(), job).answer(template.calculator, ranged=False)
    if not answer.ok:
        raise ValueError(f"{template.id}: {answer.errors or answer.missing}")
    found = answer.values[template.output]
    tolerance = max(template.relative * abs(found.value), template.absolute)
    return Question(
        seed, NUMERIC, template.skill, template.text, tuple(told), found.unit, found.decimals,
        truth=found.value, tolerance=tolerance,
        why="{truth}. Within {off} counts. Line by line:",
        values={"truth": Quantity(found.value, found.unit, found.decimals),
                "off": Quantity(tolerance, _difference(found.unit), found.decimals + 1)},
        answer=answer, procedure=template.procedure)


def _difference(unit: str) -> str:
    """The unit of a difference of two such numbers."""
    return "°F diff" if unit == "°F" else unit


def _told(name: str, value: Any) -> Given:
    fact = all_facts()[name]
    return Given(fact.label, value, fact.unit, fact.decimals, name)


def _worked_out(job: Job, name: str) -> float:
    """A fact that another calculator gives, as it stands for this job."""
    chain = the_chain()
    answer = Study(chain, job).answer(chain.giver[name], ranged=False)
    return answer.values[name].value


# ---- which is wrong ---------------------------------------------------------------------

class Wrong(NamedTuple):
    """A reading that can be wrong among others of one system.

    Attributes:
        id: Its name.
        skill: What it practises.
        label, unit, decimals: Of the reading.
        why: What the others say; `{said}` and `{should}` stand for the two numbers.
        procedure: The procedure that teaches it.
    """

    id: str
    skill: str
    label: str
    unit: str
    decimals: int
    why: str
    procedure: str


WRONGS: tuple[Wrong, ...] = (
    Wrong("amps", "electricity", "Current of the kit, all stages", "A", 1,
          "A kit of {kit} made for {rated} draws {should} at {volts}, and {said} was read. Is one "
          "element open, or does the clamp hold another wire?", "install-the-kit"),
    Wrong("supply", "air", "Supply air, elements alone", "°F", 0,
          "With {amps} at {volts} and {flow} moved, air of {back} leaves at {should}; {said} was "
          "read. Does the probe see the elements, or a place where the air is not mixed?",
          "start-up"),
    Wrong("liquid", "refrigerant", "Liquid line", "°F", 1,
          "At {pressure} it condenses at {condenses}: the line can only be colder, and {said} was "
          "read. Is the clamp on the wrong line, or in the sun?", "pressure-and-vacuum"),
    Wrong("suction", "refrigerant", "Suction line", "°F", 1,
          "At {pressure} it boils at {boils}: the line can only be as warm or warmer, and {said} "
          "was read. Were the clamps swapped, or is the hose not open?", "pressure-and-vacuum"),
    Wrong("before", "air", "Static before the cabinet", "in w.c.", 2,
          "The filter alone takes {filter}, and the closet's louvers some more: {said} before the "
          "cabinet is too little. Is the tap above the filter?", "yearly-visit"),
)
"""Readings that can be wrong."""


def _which_wrong(one: Wrong, seed: int, chance: Chance) -> Question:
    facts = dict(benches.bench_facts())
    facts["elevation_ft"] = float(chance.whole(0, 7500, 100))
    facts["kit_planned_kw"] = chance.pick(KITS_KW)
    facts["kit_volts"] = float(chance.whole(234, 242))
    now = plant.Conditions(filter_loading=chance.hundredths(10, 70),
                           outdoor_f=float(chance.whole(66, 96)))
    found = plant.air_of(facts, now, facts["fan_set_cfm"])
    gauges = plant.gauges_of(facts, now, found)
    amps = plant.kit_amps(facts)
    supply = 68.0 + plant.kit_rise_f(facts, found)
    truth = {"amps": round(amps, 1), "supply": float(round(supply)),
             "liquid": round(gauges.liquid_line_f, 1), "suction": round(gauges.suction_line_f, 1),
             "before": round(found.return_inwc, 2)}
    shift = chance.whole(30, 50) / 100
    said = dict(truth)
    said[one.id] = {
        "amps": round(amps * (1 - shift), 1),
        "supply": float(round(supply + (supply - 68.0) * (0.6 + shift))),
        "liquid": round(gauges.state.condensing_f + 4 + 20 * shift, 1),
        "suction": round(gauges.state.evaporating_f - 4 - 20 * shift, 1),
        "before": round(found.filter_inwc * (1 - shift), 2)}[one.id]
    values: Values = {
        "said": Quantity(said[one.id], one.unit, one.decimals),
        "should": Quantity(truth[one.id], one.unit, one.decimals),
        "kit": Quantity(facts["kit_planned_kw"], "kW", 0),
        "rated": Quantity(facts["kit_rated_v"], "V", 0),
        "volts": Quantity(facts["kit_volts"], "V", 0), "amps": Quantity(amps, "A", 1),
        "flow": Quantity(found.flows.airflow_cfm, "cfm", 0), "back": Quantity(68.0, "°F", 0),
        "pressure": Quantity(gauges.liquid_psig if one.id == "liquid" else gauges.suction_psig,
                             "psig", 0),
        "condenses": Quantity(gauges.state.condensing_f, "°F", 1),
        "boils": Quantity(gauges.state.evaporating_f, "°F", 1),
        "filter": Quantity(found.filter_inwc, "in w.c.", 2)}
    told = (
        Given("Height above sea level", facts["elevation_ft"], "ft", 0),
        Given("Kit on the plate", facts["kit_planned_kw"], "kW", 0),
        Given("Kit made for", facts["kit_rated_v"], "V", 0),
        Given("Voltage at the kit", facts["kit_volts"], "V", 0),
        Given("Airflow, by the flow hood and the board", float(round(found.flows.airflow_cfm)),
              "cfm", 0),
        Given("Return air, elements alone", 68.0, "°F", 0),
        Given("Across the filter", round(found.filter_inwc, 2), "in w.c.", 2),
        Given("Suction pressure, cooling", float(round(gauges.suction_psig)), "psig", 0),
        Given("Liquid pressure, cooling", float(round(gauges.liquid_psig)), "psig", 0),
        Given("Refrigerant", facts["refrigerant"]))
    options = tuple(Option(w.id, f"{w.label}: {{said}}",
                           {"said": Quantity(said[w.id], w.unit, w.decimals)}) for w in WRONGS)
    return Question(
        seed, WRONG, one.skill, "One sound system on one day. One of these five readings cannot "
        "be true beside the rest. Which?",
        told, options=options, right=one.id, why=one.why, values=values,
        procedure=one.procedure)


# ---- what next --------------------------------------------------------------------------

def _faults_on(skill: str) -> list[Fault]:
    return [f for f in FAULTS if CALL in f.visits and skill in ("", f.skill)]


def _which_first(skill: str, seed: int, chance: Chance) -> Question:
    """Several faults found: which is put right first?"""
    first = chance.pick(_faults_on(skill))
    others = [f for f in FAULTS if CALL in f.visits and f.rank != first.rank]
    picked = [first]
    while len(picked) < 3 and others:
        one = chance.pick(others)
        others = [f for f in others if f.rank != one.rank]
        picked.append(one)
    right = min(picked, key=lambda f: f.rank)
    shown = chance.some(picked, len(picked))
    return Question(
        seed, NEXT, skill or right.skill,
        "You found all of this at one visit. What is put right first?",
        tuple(Given(f"Found ({n})", f.tells) for n, f in enumerate(shown, 1)),
        options=tuple(Option(f.id, f.label) for f in shown), right=right.id,
        why=f"{right.label}. {RANKS[right.rank]} {right.do}", procedure=right.procedure)


def _which_reading(skill: str, seed: int, chance: Chance) -> Question:
    """A suspicion: which reading decides it soonest?"""
    one = chance.pick(_faults_on(skill) or _faults_on(""))
    ways = {m: cost(m) for m in one.shown_by}
    right = min(ways, key=lambda m: (ways[m], m))
    others = [m.id for m in measures.of_visit(CALL)
              if m.id not in one.shown_by and cost(m.id) <= 60]
    shown = chance.some([right, *chance.some(others, 3)], 4)
    steps = [measures.step(s) for s in measures.measure(right).needs]
    first = "".join(f" First: {s.label}." for s in steps)
    return Question(
        seed, NEXT, skill or one.skill,
        "The owner says: “{said}” Which one reading decides best whether it is what you suspect?",
        (Given("You suspect", one.label),),
        options=tuple(Option(m, measures.measure(m).label) for m in shown), right=right,
        why=f"“{measures.measure(right).label}”, {{time}}. {one.tells}{first}",
        values={"said": one.owner, "time": Quantity(float(ways[right]), "min", 0)},
        procedure=one.procedure)


def cost(measure_id: str) -> int:
    """Time of a measurement with the safety steps before it. [min]"""
    one = measures.measure(measure_id)
    return one.minutes + sum(measures.step(s).minutes for s in one.needs)


NARROWING = ("heat-loss", "air-leakage", "furnace-run-time")
"""Calculators that are asked what to measure next."""


def _narrows_most(seed: int, chance: Chance) -> Question:
    """The engine's own choice of what to measure next."""
    id_ = chance.pick(NARROWING)
    job = demo_job()
    chain = the_chain()
    names = [n for n in chain.inputs(id_) if (e := job.entry(n)) is not None
             and all_facts()[n].kind == "number" and all_facts()[n].spread
             and e.origin in ("measured", "estimated")]
    for name in names:
        entry = job.entry(name)
        assert entry is not None
        origin = "estimated" if chance.yes(60) else "measured"
        if origin in all_facts()[name].spread:
            job = job.with_entry(name, Entry(entry.value, origin))
    answer = Study(chain, job).answer(id_, ranged=True)
    following = answer.measure_next
    head = "" if following is None else following.field.partition(".")[0]
    others = [n for n in names if n != head]
    if following is None or head not in names or len(others) < 2:
        return _which_reading("heat", seed, chance)
    shown = chance.some([head, *chance.some(others, 3)], 4)
    value = answer.values[following.answer]
    return Question(
        seed, NEXT, "heat", "{question} Readings are as below. Which one, measured better, would "
        "narrow the answer most?",
        tuple(Given(all_facts()[n].label, entry.value, all_facts()[n].unit,
                    all_facts()[n].decimals, n) for n in shown
              if (entry := job.entry(n)) is not None),
        options=tuple(Option(n, f"{all_facts()[n].label} ({_origin(job, n)})") for n in shown),
        right=head,
        why="{label}: the answer lies between {low} and {high} now, and between about {low_then} "
            "and {high_then} once it is measured. " + following.how,
        values={"question": answer.calculator.question, "label": chain.facts[head].label,
                "low": Quantity(following.now[0], value.unit, value.decimals),
                "high": Quantity(following.now[1], value.unit, value.decimals),
                "low_then": Quantity(following.then[0], value.unit, value.decimals),
                "high_then": Quantity(following.then[1], value.unit, value.decimals)},
        procedure="load-and-equipment")


def _origin(job: Job, name: str) -> str:
    entry = job.entry(name)
    return entry.origin if entry is not None else "assumed"
