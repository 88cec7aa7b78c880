"""The box under the air handler.

The cabinet blows down into a sheet-metal box, and the box into an opening in the floor that is
seldom where the outlet is. The box covers both, is tall enough for the air to turn in and for
the heat kit to stay above the wooden floor, and is laid out flat here to be cut.
"""

from __future__ import annotations

import math
from typing import Any

from downflow import tables
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.drawing import Drawing
from downflow.facts import Spread
from downflow.physics import ducts, floor_box
from downflow.sources import FITTING_LOSSES, GEOMETRY, HUD_PLENUM, LABEL

CALCULATOR = Calculator(
    id="floor-box",
    title="The box under the air handler",
    phase="fit",
    question="How tall must the box be, what does it cost, and how is it cut?",
    reads=("outlet_width_in", "outlet_depth_in", "opening_width_in", "opening_depth_in",
           "opening_right_in", "opening_behind_in", "elements_above_floor_in",
           "outlet_to_elements_in", "collar_down_in", "sheet_length_in"),
    gives=("box_height_in", "box_height_need_in", "box_width_in", "box_depth_in",
           "box_overlap_pct", "floor_box_loss_c", "box_cut_list"),
    shows=("box_height_in", "box_height_need_in", "box_width_in", "box_depth_in",
           "box_overlap_pct", "floor_box_loss_c"),
)

LEAST_HEIGHT_IN = 4.0
# What a tape and a brake may be off.
ROOM_TO_SPARE_IN = 0.5


def solve(job: Readings, paper: Paper) -> None:
    box = floor_box.plan(job.outlet_width_in, job.outlet_depth_in, job.opening_width_in,
                         job.opening_depth_in, job.opening_right_in, job.opening_behind_in)
    width = paper.step(
        "W = max(a / 2, x + b / 2) - min(-a / 2, x - b / 2)", GEOMETRY, "in", box.width_in,
        a=job.outlet_width_in, b=job.opening_width_in, x=job.opening_right_in,
        what="Width of the box over outlet and opening")
    depth = paper.step(
        "D = max(c / 2, y + d / 2) - min(-c / 2, y - d / 2)", GEOMETRY, "in", box.depth_in,
        c=job.outlet_depth_in, d=job.opening_depth_in, y=job.opening_behind_in,
        what="Its depth")
    opening = job.opening_width_in * job.opening_depth_in
    side = depth if abs(job.opening_right_in) >= abs(job.opening_behind_in) else width
    turn = paper.step("h = A * (1 - s) / w", GEOMETRY, "in",
                      floor_box.turning_height_in(opening, box.overlap_share, side),
                      A=opening, s=box.overlap_share, w=side,
                      what="Height for the air that has to move sideways")
    kit = paper.step("k = max(0, e - o)", LABEL, "in",
                     floor_box.kit_height_in(job.elements_above_floor_in,
                                             job.outlet_to_elements_in),
                     e=job.elements_above_floor_in, o=job.outlet_to_elements_in,
                     what="Height that keeps the elements above the floor")
    need = paper.step("H = max(h, k, 4)", GEOMETRY, "in", max(turn, kit, LEAST_HEIGHT_IN),
                      h=turn, k=kit, what="The height that it needs")
    height = paper.decide("height", float(math.ceil(need + ROOM_TO_SPARE_IN)))
    entered = job.entered("box_height_in")
    built = job.box_height_in if entered else height
    loss = floor_box.loss_c(job.outlet_width_in * job.outlet_depth_in, width * depth, opening,
                            box.overlap_share)
    _loss_steps(job, paper, box, opening, loss)
    paper.give("box_height_in", height)
    paper.give("box_height_need_in", need)
    paper.give("box_width_in", width)
    paper.give("box_depth_in", depth)
    paper.give("box_overlap_pct", 100 * box.overlap_share)
    half = (loss.high - loss.low) / 2
    paper.give("floor_box_loss_c", loss.middle, model=Spread(half, half, False, FITTING_LOSSES))
    try:
        pattern = floor_box.flat_pattern(width, depth, built, job.sheet_length_in)
    except ValueError:
        job.refuse("sheet_length_in", "is too short for half of the wrap. The box would need more "
                   "than two pieces.")
        return
    pieces = floor_box.cut_list(box, pattern, (job.outlet_width_in, job.outlet_depth_in),
                                (job.opening_width_in, job.opening_depth_in), job.collar_down_in)
    metal = floor_box.metal_thickness_in(max(width, depth), tables.rows("metal_thickness"),
                                         "exposed rectangular")
    paper.lookup("Least thickness of the metal", HUD_PLENUM, "in", metal,
                 row=[("exposed, rectangular", metal)],
                 note="Every seam is sealed with mastic or listed tape.")
    paper.give_table("box_cut_list", [
        {"piece": p.name, "count": p.number, "length_in": p.length_in, "width_in": p.width_in,
         "hole_length_in": p.hole_length_in, "hole_width_in": p.hole_width_in, "metal_in": metal}
        for p in pieces])
    paper.draw(box=box, pattern=pattern, height=built)
    _verdicts(job, paper, box, need, built)


def _loss_steps(job: Readings, paper: Paper, box: floor_box.Plan, opening: float,
                loss: floor_box.Loss) -> None:
    outlet = job.outlet_width_in * job.outlet_depth_in
    calm = paper.step(
        "c1 = (1 - o / b) ** 2 * (f / o) ** 2 + 0.5", FITTING_LOSSES, "",
        ducts.box_to_trunk_c(outlet, box.width_in * box.depth_in, opening,
                             floor_box.CALM_ENTRY_C),
        o=outlet, b=box.width_in * box.depth_in, f=opening,
        what="A calm box: the outlet's jet is lost, then a flush entry")
    turn = loss.high if loss.high != calm else loss.low
    paper.step("c = (c1 + c2) / 2", FITTING_LOSSES, "", loss.middle, c1=calm, c2=turn,
               what="Half way to sharp turns without vanes",
               note="Nobody has published tests of such boxes: the range holds both ends. Round "
                    "the edge of the opening or set a vane: both cost little and save most of it.")


def _verdicts(job: Readings, paper: Paper, box: floor_box.Plan, need: float,
              built: float) -> None:
    paper.limit(
        "kit-above-floor", built + job.outlet_to_elements_in,
        at_least=job.elements_above_floor_in, of="box_height_in", source=LABEL, safety=True,
        fine="The elements stay {value} above the floor; {limit} are asked for.",
        hold="The elements would be {value} above the floor, and {limit} are asked for.",
        do="Make the box taller.")
    paper.limit(
        "tall-enough-to-turn", built, at_least=need, of="box_height_in", source=GEOMETRY,
        beyond="look",
        fine="Tall enough for the air to turn.",
        look="The box is {value} high; the air wants {limit} to turn without speeding up.",
        do="Make it taller if the closet has the height, or move the opening.")
    paper.limit(
        "opening-under-outlet", 100 * box.overlap_share, at_least=50.0, of="box_overlap_pct",
        source=FITTING_LOSSES, beyond="look",
        fine="Most of the opening lies under the outlet.",
        look="Only {value} of the opening lies under the outlet: the air turns twice.",
        do="Cut the opening nearer to the outlet where floor and trunk allow it; never cut a "
           "joist.")


def figure(sheet: Sheet) -> str:
    """The flat pattern at scale: four sides with seam and flanges, and both plates."""
    box: Any = sheet.drawn["box"]
    pattern: Any = sheet.drawn["pattern"]
    height: Any = sheet.drawn["height"]
    panels = pattern.panels_in if pattern.pieces == 1 else pattern.panels_in[:2]
    scale = 300.0 / pattern.length_in
    plate_scale = min(scale, 130.0 / max(box.width_in, box.depth_in))
    top, flange = 40.0, pattern.flange_in * scale
    tall = height * scale
    plates = top + tall + 2 * flange + 96
    total = plates + (box.depth_in + 2) * plate_scale + 66

    def say(value: float) -> str:
        return sheet.text(value, "in", 1)

    said = (f"{'One wrap' if pattern.pieces == 1 else 'Two like wraps'} of "
            f"{say(pattern.length_in)} by {say(pattern.height_in)}: sides of "
            + ", ".join(say(p) for p in panels)
            + f", a seam of {say(pattern.seam_in)} and flanges of {say(pattern.flange_in)} at top "
            f"and bottom. Plates of {say(box.width_in + 2 * pattern.flange_in)} by "
            f"{say(box.depth_in + 2 * pattern.flange_in)}; the outlet's hole lies "
            f"{say(box.outlet_left_in)} from the left side of the box and "
            f"{say(box.outlet_front_in)} from its front, the floor opening's "
            f"{say(box.opening_left_in)} and {say(box.opening_front_in)}.")
    d = Drawing("floor-box", "Flat pattern of the box", said, total)
    x = 20.0
    d.text(20, 20, "wrap, laid flat" if pattern.pieces == 1 else "wrap, two like pieces", "b")
    d.rect(x, top, pattern.length_in * scale, tall + 2 * flange, "of")
    d.line(x, top + flange, x + pattern.length_in * scale, top + flange, "h")
    d.line(x, top + flange + tall, x + pattern.length_in * scale, top + flange + tall, "h")
    place = x
    for side in panels:
        d.dimension(place, top + tall + 2 * flange + 14, place + side * scale,
                    top + tall + 2 * flange + 14, sheet.text(side, "in", 1), extend=10)
        place += side * scale
        d.line(place, top, place, top + tall + 2 * flange, "h")
    d.dimension(x + 12, top + flange, x + 12, top + flange + tall, sheet.text(height, "in", 1))
    for k, (name, left, front, wide, deep) in enumerate((
            ("top plate", box.outlet_left_in, box.outlet_front_in, sheet.job.outlet_width_in,
             sheet.job.outlet_depth_in),
            ("bottom plate", box.opening_left_in, box.opening_front_in,
             sheet.job.opening_width_in, sheet.job.opening_depth_in))):
        px = 20 + 170 * k
        d.text(px, plates - 10, name, "b")
        d.rect(px, plates, (box.width_in + 2) * plate_scale, (box.depth_in + 2) * plate_scale,
               "of")
        d.hatch(px + (left + 1) * plate_scale, plates + (front + 1) * plate_scale,
                wide * plate_scale, deep * plate_scale)
        d.dimension(px, plates + (box.depth_in + 2) * plate_scale + 14,
                    px + (box.width_in + 2) * plate_scale,
                    plates + (box.depth_in + 2) * plate_scale + 14,
                    sheet.text(box.width_in + 2 * pattern.flange_in, "in", 1), extend=10)
    return d.figure("Full lines are cut, dashed ones bent; hatched: cut out. One scale for the "
                    "wrap, one for the plates. Measure twice; the closet wins over the drawing.")
