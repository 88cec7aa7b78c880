"""Reading level, measured: at or below seventh grade, in English and in Spanish.

English by Flesch and Kincaid, as a school grade. Spanish by Fernández Huerta and by
Szigriszt-Pazos (INFLESZ), made for Spanish: 70 and more, and 65 and more, read as easy as
sixth to seventh grade. Library: textstat 0.7.4, which works without a network.
"""

import pytest
from homeowner_page import page
from textstat import textstat

from downflow import homeowner as link
from downflow.testing import changed

GRADE = 7.0
HUERTA = 70.0
SZIGRISZT = 65.0
SHORT = 9  # Words: below this a formula made for whole texts says nothing.


def _slots(which, demo_slots):
    if which == "demo":
        return demo_slots
    if which == "electric":
        return link.slots_of(changed(water_heater_fuel="electric", heating_fuel="electric",
                                     furnace_efficiency_pct=100.0))
    if which == "si":
        from downflow.demo import demo_job

        return link.slots_of(demo_job(), "si")
    return {}


def _text(tongue, slots):
    said = [t for _, t in page.sentences(tongue, slots)]
    return " ".join(t if t[-1] in ".?!”" else t + "." for t in said)


@pytest.mark.parametrize("which", ["general", "demo", "electric", "si"])
def test_english_reads_at_seventh_grade_or_below(which, demo_slots):
    textstat.set_lang("en")
    slots = _slots(which, demo_slots)
    assert textstat.flesch_kincaid_grade(_text("en", slots)) <= GRADE
    for name, said in page.sentences("en", slots):
        if len(said.split()) >= SHORT:
            assert textstat.flesch_kincaid_grade(said) <= GRADE, (name, said)


@pytest.mark.parametrize("which", ["general", "demo", "electric", "si"])
def test_spanish_reads_easily_by_formulas_made_for_spanish(which, demo_slots):
    textstat.set_lang("es")
    slots = _slots(which, demo_slots)
    text = _text("es", slots)
    assert textstat.fernandez_huerta(text) >= HUERTA
    assert textstat.szigriszt_pazos(text) >= SZIGRISZT
    for name, said in page.sentences("es", slots):
        if len(said.split()) >= 2 * SHORT:
            assert textstat.fernandez_huerta(said) >= HUERTA, (name, said)


def test_the_measure_itself_tells_hard_text_from_easy():
    textstat.set_lang("en")
    hard = ("Residential equipment incorporating variable-capacity compression technology "
            "necessitates reconsideration of conventional temperature-setback recommendations.")
    assert textstat.flesch_kincaid_grade(hard) > 12
    textstat.set_lang("es")
    dificil = ("La implementación de tecnologías de climatización de capacidad variable requiere "
               "la reconsideración de las recomendaciones convencionales de programación térmica.")
    assert textstat.fernandez_huerta(dificil) < 50
