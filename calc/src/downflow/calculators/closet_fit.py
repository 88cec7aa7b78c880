"""Does it fit the closet.

First what plate and manual allow: nothing is measured until each of those is answered. Then the
tape: cabinet, filter, box and lines against width, depth, height and door, with the clearances
of the plate.
"""

from __future__ import annotations

from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.drawing import Drawing
from downflow.physics import floor_box
from downflow.sources import GEOMETRY, HUD_PLENUM, LABEL

CALCULATOR = Calculator(
    id="closet-fit",
    title="Does it fit the closet",
    phase="survey",
    question="May this cabinet stand in this closet, and does it fit with its box and lines?",
    reads=("downflow_allowed", "downflow_parts", "home_use_allowed", "floor_base",
           "collar_listed_nearer", "kit_sizes", "clear_sides_in", "clear_back_in",
           "clear_front_in", "clear_outlet_in", "service_front_in", "cabinet_width_in",
           "cabinet_depth_in", "cabinet_height_in", "filter_cabinet_in", "air_space_above_in",
           "line_space_in", "closet_width_in", "closet_depth_in", "closet_height_in",
           "closet_door_in", "front_space_in", "box_height_in", "box_width_in", "box_depth_in",
           "outlet_to_elements_in", "metal_to_collar_ft"),
    may_read=("kit_chosen_kw",),
    gives=("closet_height_spare_in", "closet_side_spare_in", "closet_depth_spare_in",
           "closet_door_spare_in", "metal_run_ft"),
)

GATES = (
    ("downflow_allowed", "downflow-allowed",
     "Downflow with this coil and this kit is allowed.",
     "Downflow with this coil and this kit is not allowed.",
     "Choose a cabinet, coil or kit that is listed for downflow."),
    ("downflow_parts", "downflow-parts", "The parts for downflow are fitted.",
     "The parts that the manual asks for downflow are not fitted.",
     "Get and fit them before the cabinet goes in."),
    ("home_use_allowed", "home-use-allowed",
     "Use in a manufactured home and a closet is allowed.",
     "Use in a manufactured home or a closet is not allowed.",
     "Choose equipment that is listed for it."),
)


def solve(job: Readings, paper: Paper) -> None:
    for name, id_, yes, no, do in GATES:
        _gate(paper, id_, getattr(job, name), yes, no, do)
    _base(job, paper)
    _kit(job, paper)
    side = paper.step(
        "s = W - w - 2 * c - l", GEOMETRY, "in",
        floor_box.spare_in(job.closet_width_in, max(job.cabinet_width_in, 0.0),
                           2 * job.clear_sides_in + job.line_space_in),
        W=job.closet_width_in, w=job.cabinet_width_in, c=job.clear_sides_in,
        l=job.line_space_in, what="To spare across: clearance at both sides, and the lines")
    deep = paper.step(
        "d = D - p - b - f", GEOMETRY, "in",
        floor_box.spare_in(job.closet_depth_in, job.cabinet_depth_in,
                           job.clear_back_in + job.clear_front_in),
        D=job.closet_depth_in, p=job.cabinet_depth_in, b=job.clear_back_in, f=job.clear_front_in,
        what="To spare front to back")
    tall = paper.step(
        "h = H - x - k - n - a", GEOMETRY, "in",
        floor_box.spare_in(job.closet_height_in, job.cabinet_height_in,
                           job.box_height_in + job.filter_cabinet_in + job.air_space_above_in),
        H=job.closet_height_in, x=job.box_height_in, k=job.cabinet_height_in,
        n=job.filter_cabinet_in, a=job.air_space_above_in,
        what="To spare in height: box, cabinet, filter, and space for the air to turn in")
    door = paper.step("o = O - w", GEOMETRY, "in",
                      floor_box.spare_in(job.closet_door_in,
                                         min(job.cabinet_width_in, job.cabinet_depth_in), 0.0),
                      O=job.closet_door_in, w=min(job.cabinet_width_in, job.cabinet_depth_in),
                      what="To spare in the door, the narrow side first")
    metal = paper.step("m = (e + x) / 12 + t", HUD_PLENUM, "ft",
                       floor_box.metal_run_ft(job.outlet_to_elements_in, job.box_height_in,
                                              job.metal_to_collar_ft),
                       e=job.outlet_to_elements_in, x=job.box_height_in,
                       t=job.metal_to_collar_ft,
                       what="Metal along the air from the elements to the first flexible duct")
    paper.give("closet_height_spare_in", tall)
    paper.give("closet_side_spare_in", side)
    paper.give("closet_depth_spare_in", deep)
    paper.give("closet_door_spare_in", door)
    paper.give("metal_run_ft", metal)
    _fits(job, paper, side, deep, tall, door)
    _metal(job, paper, metal)


def _gate(paper: Paper, id_: str, answer: str, yes: str, no: str, do: str) -> None:
    if answer == "yes":
        paper.verdict(id_, "fine", yes, source=LABEL)
    elif answer == "no":
        paper.verdict(id_, "hold", no, source=LABEL, do=do)
    else:
        paper.verdict(id_, "hold", "Nobody has read this in plate and manual yet.", source=LABEL,
                      do="Read it before anything is ordered: " + yes[0].lower() + yes[1:])


def _base(job: Readings, paper: Paper) -> None:
    if job.floor_base in ("not asked", "fitted"):
        paper.verdict("floor-base", "fine",
                      "No base is asked for." if job.floor_base == "not asked"
                      else "The base for a combustible floor is fitted.", source=LABEL)
    else:
        paper.verdict("floor-base", "hold",
                      "A base for a combustible floor is asked for and not there."
                      if job.floor_base == "missing"
                      else "Nobody has read whether a base for a combustible floor is asked for.",
                      source=LABEL, do="Read the manual on combustible floors; fit its base.")


def _kit(job: Readings, paper: Paper) -> None:
    sizes = [row["kit_kw"] for row in job.kit_sizes]
    chosen = job.kit_chosen_kw
    if chosen is None or chosen in sizes:
        paper.verdict("kit-on-plate", "fine", "Only kits marked on the plate are planned.",
                      source=LABEL)
    else:
        paper.verdict("kit-on-plate", "hold", "The kit planned is not marked on the plate.",
                      source=LABEL, do="Take one that is marked; no other may go in.")


def _fits(job: Readings, paper: Paper, side: float, deep: float, tall: float,
          door: float) -> None:
    for id_, value, of, what, do in (
        ("fits-across", side, "closet_side_spare_in", "across, with its clearances and the lines",
         "Lead the lines elsewhere, or choose a narrower cabinet."),
        ("fits-deep", deep, "closet_depth_spare_in", "front to back, with its clearances",
         "Move the door out, or choose a shallower cabinet."),
        ("fits-tall", tall, "closet_height_spare_in",
         "in height, with box, filter and space for the air",
         "Put the filter in the door, or choose a shorter cabinet. Never a lower box than the kit "
         "needs."),
        ("fits-door", door, "closet_door_spare_in", "through the door",
         "Take the door frame out, or bring the cabinet in by sections."),
    ):
        paper.limit(id_, value, at_least=0.0, of=of, source=LABEL,
                    fine=f"It fits {what}.", look=f"It is tight {what}: {{value}} to spare.",
                    hold=f"It does not fit {what}: {{value}} to spare.", do=do)
    paper.limit(
        "box-clear-of-wood",
        (job.closet_width_in - job.box_width_in) / 2, at_least=job.clear_outlet_in, unit="in",
        decimals=1, source=LABEL, safety=True,
        fine="The box keeps its clearance to wood.",
        hold="The box comes within {value} of wood at the sides; the plate asks for {limit}.",
        do="Make the box narrower or move the cabinet; clearance is never filled with insulation "
           "unless the manual says so.")
    upright = floor_box.tilt_height_in(
        job.cabinet_height_in, min(job.cabinet_width_in, job.cabinet_depth_in))
    paper.limit(
        "stands-up", upright, at_most=job.closet_height_in, unit="in", decimals=1,
        source=GEOMETRY, beyond="look",
        fine="It can be stood up from lying flat.",
        look="Stood up from lying flat it takes {value} of height, the ceiling is at {limit}.",
        do="Carry it in upright, or by its sections.")
    paper.limit(
        "service-in-front", job.front_space_in, at_least=job.service_front_in, unit="in",
        decimals=0, source=LABEL, beyond="look",
        fine="There is room in front for service.",
        look="There are {value} in front; the manual asks for {limit}.",
        do="Plan how coil and blower come out before the cabinet goes in.")


def _metal(job: Readings, paper: Paper, metal: float) -> None:
    if job.collar_listed_nearer:
        paper.verdict("metal-below-elements", "look",
                      "Flexible duct begins {run} from the elements, which its listing allows.",
                      source=HUD_PLENUM, do="Keep the page of the listing with the job.",
                      run=Quantity(metal, "ft", 1))
        return
    paper.limit(
        "metal-below-elements", metal, at_least=floor_box.METAL_FROM_ELEMENTS_FT,
        of="metal_run_ft", source=HUD_PLENUM, safety=True,
        fine="Metal for {value} along the air from the elements; {limit} are asked for.",
        hold="Flexible duct begins {value} along the air from the elements; {limit} of metal are "
             "asked for.",
        do="Put {short} more metal between: a longer metal collar or a rigid piece before the "
           "flexible duct.", short=Quantity(floor_box.metal_short_ft(metal), "ft", 1))


def figure(sheet: Sheet) -> str:
    """Section of closet, cabinet, box and floor, to one scale."""
    job = sheet.job
    tall = job.closet_height_in
    scale = 400.0 / tall
    top, left = 30.0, 130.0
    wide = min(130.0, job.closet_depth_in * scale)
    base = top + 400.0
    box = job.box_height_in * scale
    cabinet = job.cabinet_height_in * scale
    filters = job.filter_cabinet_in * scale

    def say(value: float) -> str:
        return sheet.text(value, "in", 1)

    spare = sheet.values["closet_height_spare_in"]
    said = (f"Closet {say(tall)} high. From the floor up: box {say(job.box_height_in)}, cabinet "
            f"{say(job.cabinet_height_in)}, filter cabinet {say(job.filter_cabinet_in)}, open "
            f"space for the air {say(job.air_space_above_in)}, to spare {say(spare)}. Return air "
            "comes through the louvers and down through the filter; supply air goes down through "
            "the box into the trunk under the floor.")
    d = Drawing("closet-fit", "Section through the closet", said, base + 84)
    d.rect(left, top, wide, 400.0, "o")
    d.hatch(left - 24, base, wide + 48, 14)
    inset = max(4.0, job.clear_back_in * scale)
    body = min(wide - 2 * inset, job.cabinet_depth_in * scale)
    x = left + inset
    y = base - box
    d.rect(x, y, body, box, "of")
    y -= cabinet
    d.rect(x, y, body, cabinet, "of")
    d.hatch(x + 4, base - box - job.outlet_to_elements_in * scale - 8, body - 8, 16, "backup")
    if filters > 0:
        y -= filters
        d.hatch(x, y, body, filters, "filter")
    d.return_air(left + wide + 44, y - 18, x + body / 2 + 14, y - 18)
    d.supply(x + body / 2, base - box / 2 - 20, x + body / 2, base + 40)
    d.rect(left - 24, base + 30, wide + 48, 26, "i")
    d.dimension(left - 96, top, left - 96, base, say(tall))
    level = base
    for number, part in enumerate((job.box_height_in, job.cabinet_height_in,
                                   job.filter_cabinet_in), 1):
        if part > 0:
            middle = level - part * scale / 2
            d.balloon(number, left + wide + 56, middle, to=(x + body - 6, middle))
            level -= part * scale
    return d.figure(
        f"To spare in height: {say(spare)}.",
        legend=[f"box, {say(job.box_height_in)}", f"cabinet, {say(job.cabinet_height_in)}; "
                "crossed: heat kit", f"filter, {say(job.filter_cabinet_in)}"])
