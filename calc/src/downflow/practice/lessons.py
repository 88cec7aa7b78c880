"""The lessons of the learning path: each with one worked number and one check.

The prose stands in the handbook's pages; here stand the calculator that works the number and the
question that closes the lesson.
"""

from __future__ import annotations

import functools
from typing import NamedTuple

from downflow.engine.answer import Answer
from downflow.plan import the_chain
from downflow.practice.drills import Option, Question
from downflow.practice.skills import skill


class Lesson(NamedTuple):
    """One lesson.

    Attributes:
        id: Its name, that of its skill and of its page.
        calculator, output: Who works its number, for Juniper Flat.
        lead: What the number is.
        ask: The check.
        options: Answers: id and text; the first is right, and shown in another order.
        why: Why it is right.
        procedure: The procedure to go on with.
    """

    id: str
    calculator: str
    output: str
    lead: str
    ask: str
    options: tuple[tuple[str, str], ...]
    why: str
    procedure: str


LESSONS: tuple[Lesson, ...] = (
    Lesson("air", "airflow-by-static", "static_read_inwc",
           "Two readings beside the cabinet add up to what the fan works against",
           "The static is high and the airflow, by the fan table, is what it should be. The fan "
           "holds its airflow by itself. What do you know?",
           (("hidden", "Something holds the air back, and the fan hides it by working harder"),
            ("fine", "All is well: the airflow is right"),
            ("charge", "The charge is low"),
            ("speed", "The fan is set too fast")),
           "A constant-airflow fan hides a restriction in the airflow and shows it in the static, "
           "in watts and in noise. The static is the reading that tells.", "start-up"),
    Lesson("heat", "two-roads", "design_load_btuh",
           "Survey, fuel bills and one cold night, each with its own doubt, agree on one loss",
           "The old furnace makes twice what survey and bills agree on. What is the heat pump "
           "sized by?",
           (("load", "By the loss that the roads agree on"),
            ("furnace", "By the furnace: it always kept the home warm"),
            ("between", "By the middle of the two"),
            ("floor", "By floor area and a rule of thumb")),
           "A furnace's size tells what was in stock, not what the home loses. Two roads that "
           "agree within their doubt tell the load.", "load-and-equipment"),
    Lesson("cold", "heat-pump-match", "hp_balance_f",
           "The colder it gets the more the home asks for and the less the machine makes: the two "
           "lines cross",
           "It is colder than the balance point. What does a sound system do?",
           (("both", "The heat pump runs without stopping, and the backup adds what is short"),
            ("switch", "The heat pump stops and the backup takes over"),
            ("all", "The backup runs whenever the heat pump runs, all winter"),
            ("fault", "Nothing sound: running without stopping is a fault")),
           "Below the balance point the heat pump still gives each unit of heat for less than the "
           "elements do. It runs on, and the kit adds only what is short.", "thermostat-set-up"),
    Lesson("electricity", "service-load", "service_load_a",
           "Compressor and kit run together on the design night, so both are counted whole",
           "The sum comes out above the main. What may the crew do?",
           (("stop", "Stop the order and let a licensed electrician plan a smaller kit, a listed "
             "control, or a new service"),
            ("hope", "Go on: everything never runs at once"),
            ("breaker", "Fit a larger main breaker"),
            ("lock", "Tell the owner not to use the dryer")),
           "The sum is the code's way to count what can run together. A larger breaker on the same "
           "wire burns the wire. Nothing is ordered on a promise.", "electrical"),
    Lesson("water", "condensate-trap", "trap_total_in",
           "The blower pulls on the pan: a column of water must stand against it",
           "The trap is dry in January. What happens while the blower runs?",
           (("air", "Air comes in through the drain, and in summer the pan cannot empty"),
            ("nothing", "Nothing: no water is made in winter"),
            ("out", "Warm air blows out through the drain"),
            ("freeze", "The pan freezes")),
           "A downflow cabinet is under suction at its pan. Without a seal of water the drain is "
           "an open hole in it, winter and summer.", "condensate-trap"),
    Lesson("refrigerant", "superheat-subcooling", "subcooling_f",
           "Pressure is a temperature read off a table; the line beside it is colder or warmer",
           "Suction is low and superheat is low. Subcooling is what the plate asks for. What do "
           "you look at first?",
           (("airflow", "The air over the indoor coil: filter, louvers, fan setting"),
            ("add", "Add refrigerant until suction rises"),
            ("take", "Take refrigerant out until superheat rises"),
            ("valve", "Change the expansion valve")),
           "Too little charge loses subcooling and raises superheat. Low suction with low "
           "superheat and sound subcooling is a coil without air. A charge can only be judged "
           "with the air right.", "pressure-and-vacuum"),
    Lesson("homeowner", "how-it-will-feel", "run_after_h_day",
           "On a typical winter day the new system runs far longer than the old one did",
           "In the first cold week the owner calls: it never stops, and the air is only mildly "
           "warm. The rooms hold their temperature. What do you say?",
           (("normal", "That is how it heats: long, with mild air. The rooms tell whether it is "
             "enough. Leave the thermostat alone, and call if they fall"),
            ("setback", "Set it back at night, so that it can rest"),
            ("emergency", "Switch to emergency heat until it warms up outside"),
            ("visit", "Something is wrong: we come at once")),
           "A furnace fires short and hot; a heat pump matches the loss, so it runs long with mild "
           "air. Emergency heat costs two to three times as much for the same warmth.",
           "hand-over-talk"),
)
"""Every lesson, in the order of understanding."""

_BY_ID = {one.id: one for one in LESSONS}


def lesson(id_: str) -> Lesson:
    """The lesson called `id_`; `ValueError` where there is none."""
    found = _BY_ID.get(id_)
    if found is None:
        raise ValueError(f"no lesson is called {id_!r}; there are {', '.join(_BY_ID)}")
    return found


@functools.lru_cache(maxsize=16)
def worked(id_: str) -> Answer:
    """The lesson's number, worked by its calculator for Juniper Flat."""
    from downflow.demo import demo_job

    return the_chain().solve(lesson(id_).calculator, demo_job(), ranged=False)


def question_of(id_: str) -> Question:
    """The check of a lesson."""
    one = lesson(id_)
    place = (LESSONS.index(one) * 3 + 1) % len(one.options)
    rest = list(one.options[1:])
    rest.insert(place, one.options[0])
    return Question(
        0, "lesson", skill(one.id).id, one.ask, (),
        options=tuple(Option(id_, text) for id_, text in rest), right=one.options[0][0],
        why=one.why, procedure=one.procedure)
