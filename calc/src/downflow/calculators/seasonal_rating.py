"""The seasonal rating, worked again from its test points.

HSPF2 is what the certificate prints. It belongs to a standard house in a standard
climate: its load line hangs on the unit's own cooling capacity. Working it again shows
whether sheet and certificate belong together; it never says what this home will take.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.physics import rating
from downflow.sources import Source

CALCULATOR = Calculator(
    id="seasonal-rating",
    title="Seasonal rating, worked again",
    phase="prove",
    question="Does the printed HSPF2 follow from the test points?",
    reads=("rating_kind", "rating_cooling_95f_btuh", "rating_points", "hp_cycling_loss",
           "defrost_demand"),
    may_read=("rating_off_f", "rating_on_f", "hspf2_printed"),
    gives=("hspf2_worked", "rating_resistance_pct"),
)

METHOD = Source("10 CFR 430 subpart B", "appendix M1, section 4.2, region IV", "regulation")
PRINTED = Source("AHRI 210/240-2023", "section 6.5: published in steps; tolerance of 5 %",
                 "memory")
AGREE_SHARE = 0.05
NEEDED = {
    "single": ("full-47", "full-17"),
    "two": ("low-62", "low-47", "low-35", "low-17", "full-47", "full-17"),
    "variable": ("low-62", "low-47", "middle-35", "full-47", "full-17"),
}
CREDIT_AVERAGE_H = 1.5
CREDIT_LONGEST_H = 12.0


def solve(job: Readings, paper: Paper) -> None:
    tests = {row["test"]: (row["capacity_btuh"], row["power_w"]) for row in job.rating_points}
    lacking = [t for t in NEEDED[job.rating_kind] if t not in tests]
    job.refuse_unless(not lacking, "rating_points",
                      f"this kind of compressor also needs the tests {', '.join(lacking)}.")
    if job.rating_on_f is not None:
        job.refuse_unless(job.rating_off_f is not None and job.rating_on_f >= job.rating_off_f,
                          "rating_on_f", "must not be below the temperature at which it turns off.")
    job.stop_if_refused()
    at_35 = tests.get("full-35")
    if at_35 is None:
        at_35 = rating.default_35f(tests["full-17"], tests["full-47"])
        paper.step("c35 = 0.90 * (c17 + 0.6 * (c47 - c17))", METHOD, "Btu/h", at_35[0],
                   c17=tests["full-17"][0], c47=tests["full-47"][0],
                   what="Capacity at 35 °F with frost, which was not tested")
    credit = rating.defrost_credit(CREDIT_AVERAGE_H, CREDIT_LONGEST_H) \
        if job.defrost_demand else 1.0
    found = _rate(job, tests, at_35, credit)
    load = paper.total("Heat of the standard season, by hour", METHOD, "Btu/h", found.load_btuh,
                       _rows(found, "load"))
    pump = paper.total("Power of the heat pump, by hour", METHOD, "W", found.heat_pump_w,
                       _rows(found, "pump"))
    rest = paper.total("Resistance heat, by hour", METHOD, "W", found.resistance_w,
                       _rows(found, "rest"))
    paper.give("hspf2_worked", paper.step(
        "h = L / (P + R) * f", METHOD, "Btu/Wh", found.hspf2, L=load, P=pump, R=rest, f=credit,
        what="HSPF2, region IV",
        note="The defrost credit is the highest there is: 90 minutes between defrosts."
        if job.defrost_demand else ""))
    paper.give("rating_resistance_pct", paper.step(
        "s = 100 * R / (P + R)", METHOD, "%",
        100 * found.resistance_w / (found.heat_pump_w + found.resistance_w), R=rest, P=pump,
        what="Share of the energy that is resistance heat"))
    paper.draw(rows=found.rows)
    if job.hspf2_printed is None:
        paper.verdict("printed", "look", "The printed rating is not entered.", source=PRINTED,
                      do="Read it on the certificate that names both model numbers.")
    else:
        paper.limit(
            "printed", 100 * abs(found.hspf2 - job.hspf2_printed) / job.hspf2_printed,
            at_most=100 * AGREE_SHARE, unit="%", decimals=1, source=PRINTED, beyond="look",
            fine="Certificate and test points belong together: {value} apart.",
            look="Certificate and test points are {value} apart.",
            do="Check that both are of this pair of indoor and outdoor unit.")
    paper.verdict("not-the-home", "fine",
                  "A rating compares units. This home's own season is on its own page.",
                  source=METHOD)


def _rate(job: Readings, tests: dict[str, rating.Point], at_35: rating.Point,
          credit: float) -> rating.Rating:
    bins = tables.rows("hspf2_bins")
    loss, off, on = job.hp_cycling_loss, job.rating_off_f, job.rating_on_f
    cooling = job.rating_cooling_95f_btuh
    if job.rating_kind == "single":
        return rating.single_speed(bins, cooling, tests["full-47"], at_35, tests["full-17"],
                                   loss, off, on, credit)
    if job.rating_kind == "two":
        return rating.two_stage(bins, cooling, tests["low-62"], tests["low-47"], tests["low-35"],
                                tests["low-17"], tests["full-47"], at_35, tests["full-17"],
                                tests.get("full-5"), loss, off, on, credit)
    low_35 = rating.low_speed(35, tests["low-47"], tests["low-62"])
    job.refuse_unless(low_35[0] < tests["middle-35"][0] < at_35[0], "rating_points",
                      "at 35 °F the intermediate speed must lie between lowest and full speed.")
    job.stop_if_refused()
    return rating.variable_speed(bins, cooling, tests["low-62"], tests["low-47"],
                                 tests["middle-35"], tests["full-47"], at_35, tests["full-17"],
                                 tests.get("full-5"), loss, off, on, credit)


def _rows(found: rating.Rating, which: str) -> list[tuple[str, float]]:
    return [(f"{row.outdoor_f:.0f} °F, {100 * row.share:.1f} % of the hours, {row.running}",
             {"load": row.load_btuh, "pump": row.heat_pump_w, "rest": row.resistance_w}[which])
            for row in found.rows]


def figure(sheet: Sheet) -> str:
    """Power over the standard season's temperatures: heat pump and resistance."""
    rows = sheet.drawn["rows"]
    assert isinstance(rows, tuple)
    ordered = sorted(rows, key=lambda r: r.outdoor_f)
    pump = [(r.outdoor_f, r.heat_pump_w) for r in ordered]
    rest = [(r.outdoor_f, r.resistance_w) for r in ordered]
    shown = sheet.text(sheet.values["hspf2_worked"], "Btu/Wh", 2)
    peak = max(pump, key=lambda p: p[1])
    words = (f"Worked again: {shown}. The heat pump takes most of its energy near "
             f"{sheet.text(peak[0], '°F', 0)}.")
    return drawing.chart(
        "seasonal-rating", "Where the rating's energy goes", words, x=("outside", "°F"),
        y=("power by hour of season", "W"),
        lines=[drawing.Line("resistance", rest, "limit", backup=True),
               drawing.Line("heat pump", pump, "air")],
        system=sheet.system).figure(words)
