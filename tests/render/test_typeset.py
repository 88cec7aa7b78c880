"""Formulas in type say the same as the formula that is worked out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from render.rework import rework

from downflow.render.typeset import filled_in, formula, number, plain_number, symbol


@pytest.mark.parametrize(("name", "shown"), [
    ("q", "q"), ("ts", "t<sub>s</sub>"), ("rho", "ρ"), ("dT", "ΔT"), ("UA", "UA"),
    ("c35", "c<sub>35</sub>"), ("q_wall", "q<sub>wall</sub>"), ("Uo", "U<sub>o</sub>")])
def test_symbols_are_set_as_on_paper(name: str, shown: str) -> None:
    assert symbol(name) == shown


def test_a_quotient_is_a_fraction_and_a_product_a_cross() -> None:
    assert formula("q / (60 * 0.240 * (ts - tr))") == (
        '<span class="df-frac"><span>q</span><span>60 × 0.240 × (t<sub>s</sub> − t<sub>r</sub>)'
        "</span></span>")


def test_a_written_coefficient_keeps_its_zeros() -> None:
    assert "0.240" in formula("0.240 * x")


def test_a_small_number_has_a_raised_power() -> None:
    assert number("6.8754e-6") == '<span class="df-num">6.8754 × 10<sup>−6</sup></span>'


@pytest.mark.parametrize(("value", "shown"), [
    (33909.0, "33,909"), (-0.7954, "−0.7954"), (0.0, "0"), (1e-6, "1×10^−6"), (0.00012, "0.00012")])
def test_every_digit_of_a_number_is_shown(value: float, shown: str) -> None:
    assert plain_number(value) == shown


EXPRESSIONS = [
    "a - (b - c)", "a - (b + c)", "a - b - c", "a * (b + c)", "(a + b) * c", "a / (b / c)",
    "a / b / c", "(a + b) / (c + 9)", "(a * b) ** 0.5", "a ** 2 / c", "2 ** (a / 10)",
    "a * (-b)", "-a + b", "max(a, b, c) - min(a, b)", "sqrt(a * a + b * b)", "ln(a + 1)",
    "exp(-a / 10)", "abs(b - a)", "ceil(a / 3)", "a - b * c", "1 - 6.8754e-6 * a",
    "(1 - a / 100) ** 5.2559", "a / (b + c / (a + 1))", "a * b / c + c / a"]


@pytest.mark.parametrize("expression", EXPRESSIONS)
@given(a=st.floats(0.5, 90), b=st.floats(0.5, 90), c=st.floats(0.5, 90))
def test_what_is_set_reads_back_as_the_same_arithmetic(expression: str, a: float, b: float,
                                                       c: float) -> None:
    from downflow.engine.formula import parsed, work_out

    _, _, _, names = parsed("r = " + expression)
    values = {n: v for n, v in {"a": a, "b": b, "c": c}.items() if n in names}
    assert rework(filled_in(expression, values)) == pytest.approx(
        work_out("r = " + expression, values), rel=1e-9)


@given(a=st.floats(-90, -0.5), b=st.floats(-90, -0.5))
def test_a_negative_number_put_in_keeps_its_place(a: float, b: float) -> None:
    assert rework(filled_in("a - b * a + b", {"a": a, "b": b})) == pytest.approx(a - b * a + b)
    assert rework(filled_in("(a * b) ** 2", {"a": a, "b": b})) == pytest.approx((a * b) ** 2)
    assert rework(filled_in("a ** 2", {"a": a})) == pytest.approx(a * a)
