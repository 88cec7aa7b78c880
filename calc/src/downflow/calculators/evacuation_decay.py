"""The vacuum, after the pump is closed off.

A dry, tight system stays. Water left inside boils, and the pressure rises and levels
off. A leak lets it climb on and on. The readings are told apart by the slopes of their
two halves, and where they level off, the level is fitted. In the cold a low reading
proves little: ice gives off too little vapor to be seen.
"""

from __future__ import annotations

import math

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.engine.paper import Level
from downflow.facts.pressure_test import (
    LEAST_SQUARES,
    VACUUM_PASS,
    VACUUM_RISE,
    VACUUM_WATER,
)
from downflow.physics import moist_air
from downflow.physics import pressure_test as physics
from downflow.sources import ARITHMETIC, UNITS

CALCULATOR = Calculator(
    id="evacuation-decay",
    title="Evacuation and its decay",
    phase="refrigerant",
    question="Is the system dry and tight, wet, or leaking?",
    reads=("vacuum_readings", "vacuum_pull_micron", "vacuum_limit_micron", "vacuum_need_min"),
    may_read=("vacuum_coldest_f",),
    gives=("vacuum_end_micron", "vacuum_rise_micron", "vacuum_start_slope", "vacuum_end_slope",
           "vacuum_level_micron", "vacuum_water_micron"),
)

ATMOSPHERE_MICRON = 760_000.0
LEAST_MICRON = 20.0
COLD_MARGIN = 4.0
"""Water shows only where its own pressure is several times what must not be passed."""


def solve(job: Readings, paper: Paper) -> None:
    rows = job.vacuum_readings
    minutes = [row["minutes"] for row in rows]
    microns = [row["pressure_micron"] for row in rows]
    job.refuse_unless(max(microns) >= LEAST_MICRON, "vacuum_readings",
                      "no field gauge reads a whole run this low. Are these torr or mbar?")
    job.refuse_unless(max(microns) < ATMOSPHERE_MICRON, "vacuum_readings",
                      "760,000 micron is the air of the room: the system is open.")
    job.stop_if_refused()
    found = physics.read_rise(minutes, microns)
    points = list(zip(minutes, microns, strict=True))
    rise = paper.step("r = pe - ps", ARITHMETIC, "micron", found.rise_micron, pe=microns[-1],
                      ps=microns[0], what="Rise from the first reading to the last")
    slopes = []
    for words, half, value in zip(("first", "second"), physics.halves(points),
                                  (found.start_slope, found.end_slope), strict=True):
        products, squares = physics.slope_sums(half)
        slopes.append(paper.step("b = n / d", LEAST_SQUARES, "micron/min", value, n=products,
                                 d=squares, what=f"Slope of the {words} half of the readings"))
    if not math.isnan(found.level_micron):
        _levels(paper, found, points)
    paper.give("vacuum_end_micron", microns[-1])
    paper.give("vacuum_rise_micron", rise)
    paper.give("vacuum_start_slope", slopes[0])
    paper.give("vacuum_end_slope", slopes[1])
    if not math.isnan(found.level_micron):
        paper.give("vacuum_level_micron", found.level_micron)
    if job.vacuum_coldest_f is not None:
        pressure = moist_air.vapor_pressure_psia(job.vacuum_coldest_f)
        water = paper.step("w = p * 760000 / 14.6959", UNITS, "micron",
                           physics.microns_from_psia(pressure), p=pressure,
                           what="Vapor pressure of water or ice at the coldest place",
                           note="The pressure itself, in psia, is the published equation's.")
        paper.give("vacuum_water_micron", water)
    paper.draw(points=points, level=found.level_micron, kind=found.kind)
    _verdicts(job, paper, minutes, microns, found)


def _levels(paper: Paper, found: physics.Rise, points: list[tuple[float, float]]) -> None:
    shape = [math.exp(-(t - points[0][0]) / found.time_min) for t, _ in points]
    mean_s, mean_p = sum(shape) / len(shape), sum(p for _, p in points) / len(points)
    step = -sum((s - mean_s) * (p - mean_p)
                for s, (_, p) in zip(shape, points, strict=True)) / sum(
                    (s - mean_s) ** 2 for s in shape)
    paper.step("L = pm + k * sm", LEAST_SQUARES, "micron", found.level_micron, pm=mean_p, k=step,
               sm=mean_s, what="Where the rise levels off",
               note=f"The curve p = L - k exp(-t / {found.time_min:.3g} min) fitted to the "
                    "readings; pm and sm are the means of pressure and of the exponential.")


def _verdicts(job: Readings, paper: Paper, minutes: list[float], microns: list[float],
              found: physics.Rise) -> None:
    paper.limit(
        "pulled", microns[0], at_most=job.vacuum_pull_micron, of="vacuum_end_micron",
        source=VACUUM_PASS, beyond="look",
        fine="Pulled down to {value} before closing off.",
        look="Closed off at {value}; {limit} was to be reached first.",
        do="Pull on: cores out, large hoses, fresh oil, gauge far from the pump.")
    paper.limit(
        "waited", minutes[-1] - minutes[0], at_least=job.vacuum_need_min, unit="min", decimals=0,
        source=VACUUM_PASS,
        fine="Watched for {value}.", hold="Watched for only {value}; {limit} is the least.",
        do="Keep it closed off and go on reading.")
    paper.limit(
        "end", microns[-1], at_most=job.vacuum_limit_micron, of="vacuum_end_micron",
        source=VACUUM_PASS,
        fine="At the end {value}, not above {limit}.",
        look="At the end {value}, close to {limit}.",
        hold="At the end {value}, above {limit}.",
        do="Open nothing and charge nothing: read the shape of the rise below.")
    shapes: dict[str, tuple[Level, str, str]] = {
        "flat": ("fine", "It stays: dry and tight.", ""),
        "levelling": ("look", "It rises and levels off at {settles}: moisture, or refrigerant "
                              "still coming out of the oil.",
                      "Break the vacuum with dry nitrogen, warm the lines, pull and wait again."),
        "climbing": ("hold", "It climbs on at {slope}: a leak in the system, a hose or the gauge.",
                     "Close off the hoses to tell which, then test with nitrogen again."),
        "between": ("look", "It rises and does not yet say whether it levels off.",
                    "Keep it closed off and go on reading."),
    }
    level, text, do = shapes[found.kind]
    settles = 0.0 if math.isnan(found.level_micron) else found.level_micron
    paper.verdict("shape", level, text, source=VACUUM_RISE, do=do,
                  settles=Quantity(settles, "micron", 0),
                  slope=Quantity(found.end_slope, "micron/min", 1))
    if job.vacuum_coldest_f is None:
        paper.verdict("cold", "look", "How cold the lines were is not known; ice hides from the "
                                      "gauge.", source=VACUUM_WATER,
                      do="Put a probe on the coldest place of the lines.")
    else:
        paper.limit(
            "cold", physics.microns_from_psia(
                moist_air.vapor_pressure_psia(job.vacuum_coldest_f)),
            at_least=COLD_MARGIN * job.vacuum_limit_micron, of="vacuum_water_micron",
            source=VACUUM_WATER, beyond="look",
            fine="At the coldest place water would boil at {value}: it would have shown.",
            look="At the coldest place water or ice holds only {value}: a low reading does not "
                 "prove that it is dry.",
            do="Warm the lines, or evacuate three times and break with dry nitrogen between.")


def figure(sheet: Sheet) -> str:
    """The readings over time, and where they level off."""
    points, level = sheet.drawn["points"], sheet.drawn["level"]
    assert isinstance(points, list)
    assert isinstance(level, float)
    limit = sheet.job.vacuum_limit_micron
    first, last = points[0], points[-1]
    lines = [drawing.Line("not above", [(first[0], limit), (last[0], limit)], "limit")]
    if not math.isnan(level):
        lines.append(drawing.Line("levels off", [(first[0], level), (last[0], level)], "guide"))
    lines += [drawing.Line("", points, "thin"), drawing.Line("", points, "dots")]
    said = {"flat": "It stays.", "levelling": "It levels off.", "climbing": "It climbs on.",
            "between": "It does not yet say which."}[str(sheet.drawn["kind"])]
    return drawing.chart(
        "evacuation-decay", "Vacuum after closing off",
        f"From {sheet.text(first[1], 'micron', 0)} to {sheet.text(last[1], 'micron', 0)} in "
        f"{sheet.text(last[0] - first[0], 'min', 0)}. {said}",
        x=("closed off for", "min"), y=("gauge", "micron"), lines=lines,
        mark=drawing.Mark(last[0], [(last[1], sheet.text(last[1], "micron", 0))]),
        system=sheet.system).figure("Stays: dry and tight. Levels off: moisture. Climbs: a leak.")
