"""The condensate trap and its drain.

A downflow cabinet pulls on its drain pan. Without a column of water deep enough to
withstand that pull, air comes in through the drain and the water stays in the pan, over
the elements. The trap is drawn to dimension from the planned suction, checked against
the reading at start-up, and followed by a drain that falls to a place outside.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts.water import (
    DRAIN_END,
    DRAIN_HANGERS,
    DRAIN_SIZE,
    DRAIN_SLOPE,
    DRAIN_WINTER,
    FITTINGS,
    ORIFICE,
    OVERFLOW,
    PIPE,
    TRAP,
    TRAP_PLACE,
)
from downflow.physics import condensate
from downflow.sources import ARITHMETIC, LABEL

CALCULATOR = Calculator(
    id="condensate-trap",
    title="Condensate trap and drain",
    phase="water",
    question="How deep must the trap be, and does the drain fall?",
    reads=("pan_suction_inwc", "pan_outlet_size", "pan_outlet_in", "drain_pipe", "trap_place",
           "trap_state", "fitting_face_in", "fitting_socket_in", "drain_run_ft",
           "drain_drop_in", "drain_end", "drain_cleanouts", "drain_cold", "drain_winter",
           "float_place"),
    may_read=("pan_suction_read_inwc", "trap_built_head_in", "trap_built_seal_in",
              "float_stops", "float_test"),
    gives=("trap_head_in", "trap_seal_in", "trap_total_in", "trap_down_cut_in",
           "trap_up_cut_in", "trap_holds_inwc", "drain_need_in", "drain_slope_in_ft",
           "drain_hangers", "trap_open_cfm"),
)

LEAST_HEAD_IN = 2.0
LEAST_SEAL_IN = 1.0
SLOPE_IN_FT = 0.125
AIM_IN_FT = 0.25
HANGER_FT = 4.0
PAN_CLEAR_IN = 0.25
MOST_SUCTION_INWC = 4.0
_SIZES = ("3/4", "1", "1-1/4")


def solve(job: Readings, paper: Paper) -> None:
    if job.pan_suction_read_inwc is not None:
        job.refuse_unless(
            job.pan_suction_read_inwc <= MOST_SUCTION_INWC, "pan_suction_read_inwc",
            "is more than any cabinet pulls. Was the meter set to pascals? 250 of them make 1 in "
            "of water.")
        job.stop_if_refused()
    pipe = next(r for r in tables.rows("drain_pipe") if r.size == job.drain_pipe)
    suction = job.pan_suction_inwc
    if job.pan_suction_read_inwc is not None:
        suction = max(suction, job.pan_suction_read_inwc)
    head = paper.step("H = max(s + 1, 2)", TRAP, "in",
                      max(condensate.head_in(suction), LEAST_HEAD_IN), s=suction,
                      what="Drop from the pan's outlet to the trap's outlet",
                      note="The formula gives the suction and 1 in; below 2 in the floor of the "
                           "trade stands.")
    paper.lookup("Outside diameter of the pipe", PIPE, "in", pipe.outside_in,
                 row=[(f"{pipe.size} in, schedule 40", pipe.outside_in)])
    tight = paper.step("k = 2 * e - D / 2", FITTINGS, "in",
                       2 * job.fitting_face_in - pipe.outside_in / 2, e=job.fitting_face_in,
                       D=pipe.outside_in,
                       what="Least seal that elbow and tee, face to face, can make")
    seal = paper.step("J = max(H / 2, 1, k)", TRAP, "in",
                      max(condensate.seal_in(head), LEAST_SEAL_IN, tight), H=head, k=tight,
                      what="Seal of water below the trap's outlet",
                      note="Half of the drop is asked for, 1 in at least; fittings that one can "
                           "buy often make it deeper.")
    total = paper.step("T = H + J + D", TRAP, "in",
                       condensate.total_drop_in(head, seal, pipe.outside_in), H=head, J=seal,
                       D=pipe.outside_in, what="Height that the trap needs below the outlet")
    reach = 2 * (job.fitting_face_in - job.fitting_socket_in)
    down = paper.step("d = H + J + D / 2 - 2 * (e - j)", FITTINGS, "in",
                      head + seal + pipe.outside_in / 2 - reach, H=head, J=seal,
                      D=pipe.outside_in, e=job.fitting_face_in, j=job.fitting_socket_in,
                      what="Cut of the down leg, from socket to socket")
    up = paper.step("u = J + D / 2 - 2 * (e - j)", FITTINGS, "in",
                    seal + pipe.outside_in / 2 - reach, J=seal, D=pipe.outside_in,
                    e=job.fitting_face_in, j=job.fitting_socket_in,
                    what="Cut of the up leg, from socket to socket")
    need = paper.step("f = r / 8", DRAIN_SLOPE, "in",
                      condensate.fall_in(job.drain_run_ft, SLOPE_IN_FT), r=job.drain_run_ft,
                      what="Drop that the drain needs: 1/8 in for each foot")
    slope = paper.step("m = y / r", ARITHMETIC, "", job.drain_drop_in / job.drain_run_ft,
                       y=job.drain_drop_in, r=job.drain_run_ft,
                       what="Slope that it has, in inches for each foot")
    count = paper.step("n = ceil(r / 4 - 0.000000001) + 1", DRAIN_HANGERS, "",
                       condensate.hangers(job.drain_run_ft, HANGER_FT), r=job.drain_run_ft,
                       what="Hangers, one at each end")
    leak = paper.step("Q = 0.6 * 4005 * pi / 4 * (b / 12) ** 2 * sqrt(s)", ORIFICE, "cfm",
                      condensate.open_drain_cfm(suction, pipe.bore_in), b=pipe.bore_in,
                      s=suction, what="Air drawn in through the drain when the trap is empty")
    for name, value in (("trap_head_in", head), ("trap_seal_in", seal), ("trap_total_in", total),
                        ("trap_down_cut_in", down), ("trap_up_cut_in", up),
                        ("drain_need_in", need), ("drain_slope_in_ft", slope),
                        ("drain_hangers", float(count)), ("trap_open_cfm", leak)):
        paper.give(name, value)
    paper.draw(pipe=pipe.outside_in)
    _trap(job, paper, suction=suction, total=total, leak=leak)
    _drain(job, paper, need=need, slope=slope)
    _float(job, paper)


def _trap(job: Readings, paper: Paper, *, suction: float, total: float, leak: float) -> None:
    if suction == 0:
        paper.verdict("trap-place", "look",
                      "The pan is not under suction: read the unit's drawing whether it wants a "
                      "trap.", source=LABEL, do="Follow the unit's drawing.")
    elif job.trap_place == "none":
        paper.verdict("trap-place", "hold",
                      "No trap under suction: air, {leak} of it, comes in through the drain and "
                      "the water stays in the pan.", source=TRAP,
                      do="Build the trap before the blower runs with cooling.",
                      leak=Quantity(leak, "cfm", 0))
    elif job.trap_place == "crawl":
        paper.verdict("trap-place", "look",
                      "The trap is in the crawl space: it freezes there, and nobody sees it.",
                      source=TRAP_PLACE,
                      do="Bring it into the closet above the floor if there is any room.")
    else:
        paper.verdict("trap-place", "fine", "The trap is in the closet above the floor.",
                      source=TRAP_PLACE)
    if job.trap_state == "dry" and job.trap_place != "none" and suction > 0:
        paper.verdict("trap-full", "hold",
                      "The trap is empty: it draws {leak} of air in and lets no water out.",
                      source=TRAP, do="Fill it with water and look for where it ran dry.",
                      leak=Quantity(leak, "cfm", 0))
    elif job.trap_state == "planned":
        paper.verdict("trap-full", "look", "The trap is not built yet.", source=TRAP,
                      do="Build it to the drawing, fill it, and read the suction at start-up.")
    else:
        paper.verdict("trap-full", "fine", "The trap is full of water.", source=TRAP)
    room = job.pan_outlet_in - PAN_CLEAR_IN
    if job.trap_place == "closet":
        paper.limit("trap-fits", total, at_most=room, of="trap_total_in", source=TRAP_PLACE,
                    beyond="look",
                    fine="It fits between the outlet and the floor.",
                    look="It needs {value} below the outlet, and {limit} are there.",
                    do="Raise the cabinet on its base, or lead the trap through the floor and "
                       "protect it from frost.")
    if job.trap_built_head_in is not None and job.trap_built_seal_in is not None:
        holds = paper.step(
            "w = min(Hb, 2 * Jb)", TRAP, "in w.c.",
            condensate.suction_held_inwc(job.trap_built_head_in, job.trap_built_seal_in),
            Hb=job.trap_built_head_in, Jb=job.trap_built_seal_in,
            what="Suction that the trap as built holds")
        paper.give("trap_holds_inwc", holds)
        paper.limit("trap-holds", holds, at_least=suction, of="trap_holds_inwc", source=TRAP,
                    safety=True,
                    fine="The trap as built holds more than the blower pulls.",
                    hold="The trap as built holds {value}; the blower pulls {limit}.",
                    do="Rebuild it to the drawing before cooling runs.")
    read = job.pan_suction_read_inwc
    if read is None:
        paper.verdict("suction-read", "look", "The suction at the pan has not been read.",
                      source=TRAP,
                      do="At start-up, filter dirty or half covered, coil wet, top airflow: read "
                         "it and enter it.")
    else:
        paper.limit("suction-read", read, at_most=job.pan_suction_inwc, unit="in w.c.",
                    decimals=2, source=TRAP, beyond="look",
                    fine="The reading is within what was planned.",
                    look="The blower pulls {value}; at most {limit} was planned.",
                    do="Rebuild the trap to the drawing, which now goes by the reading, and look "
                       "for what chokes the return.")


def _drain(job: Readings, paper: Paper, *, need: float, slope: float) -> None:
    paper.limit("drain-falls", job.drain_drop_in, at_least=need, of="drain_need_in",
                source=DRAIN_SLOPE,
                fine="The drain falls as it must.",
                hold="The drain falls {value} over its run; {limit} is the least.",
                do="Rehang it to fall all the way, with twice that if there is room.")
    large = _SIZES.index(job.drain_pipe) >= _SIZES.index(job.pan_outlet_size)
    paper.verdict("drain-size", "fine" if large else "hold",
                  "The pipe is as large as the pan's outlet." if large else
                  "The pipe is smaller than the pan's outlet.", source=DRAIN_SIZE,
                  do="" if large else "Take the size of the outlet, all the way.")
    paper.verdict("cleanouts", "fine" if job.drain_cleanouts else "look",
                  "Trap and drain can be cleaned without a saw." if job.drain_cleanouts else
                  "Trap and drain cannot be cleaned without a saw.", source=DRAIN_SIZE,
                  do="" if job.drain_cleanouts else
                  "Put a capped tee on both sides of the trap; the cap before it stays on.")
    ends = {
        "beyond": ("fine", "The drain ends beyond the perimeter of the home.", ""),
        "under": ("hold", "The drain ends under the home: mould, settling piers, wet insulation.",
                  "Lead it beyond the perimeter."),
        "walk": ("hold", "The drain ends where people walk: slime in summer, ice in winter.",
                 "Lead it to open ground away from every walk."),
        "sewer": ("look", "A drain into the sewer needs an air gap, or sewer gas comes in.",
                  "Ask the plumbing inspector for an indirect connection."),
        "pump": ("look", "A pump in the crawl space must stop the unit when it fails.",
                 "Wire its alarm contact, try it, and keep the pump from freezing."),
    }
    level, text, do = ends[job.drain_end]
    paper.verdict("drain-end", "fine" if level == "fine" else "hold" if level == "hold" else "look",
                  text, source=DRAIN_END, do=do)
    if job.drain_cold and job.drain_winter == "nothing":
        paper.verdict("drain-winter", "look", "The drain passes a place that freezes, and nothing "
                      "keeps it open.", source=DRAIN_WINTER,
                      do="Let it fall all the way and run empty, insulate it, or use a listed heat "
                         "cable.")
    else:
        paper.verdict("drain-winter", "fine", "Nothing stands in the drain to freeze.",
                      source=DRAIN_WINTER)


def _float(job: Readings, paper: Paper) -> None:
    if job.float_place == "none":
        paper.verdict("float", "hold", "Nothing stops the system when the drain is blocked: the "
                      "pan spills over the elements and into the floor.", source=OVERFLOW,
                      do="Put a float switch in the pan's second port or in the drain before the "
                         "trap.")
        return
    if job.float_test == "failed" or job.float_stops == "nothing":
        paper.verdict("float", "hold", "The float switch does not stop the system.",
                      source=OVERFLOW, do="Find the wire, and test again with the kit locked off.")
    elif job.float_test != "passed" or job.float_stops in (None, "unknown"):
        paper.verdict("float", "look", "The float switch has not been tested.", source=OVERFLOW,
                      do="Lock the kit off, pour water at the drain's cleanout until it trips, and "
                         "write down what it stops.")
    elif job.float_stops == "cooling":
        paper.verdict("float", "look", "The float switch stops cooling only; heating goes on.",
                      source=OVERFLOW, do="Say so on the label and to the owner.")
    else:
        paper.verdict("float", "fine", "The float switch stops heating and cooling, and resets.",
                      source=OVERFLOW, do="Tell the owner: a dead system in summer may be a "
                      "blocked drain.")


def figure(sheet: Sheet) -> str:
    """The trap drawn to its dimensions."""
    head, seal = sheet.values["trap_head_in"], sheet.values["trap_seal_in"]
    total = sheet.values["trap_total_in"]
    pipe = float(str(sheet.drawn["pipe"]))
    scale = 190 / max(total, 3.5)
    wide = max(12.0, pipe * scale)
    top = 92.0
    outlet, bottom = top + head * scale, top + (head + seal) * scale
    left, right = 112.0, 112.0 + 3.0 * wide

    def inches(value: float) -> str:
        return sheet.text(value, "in", 2)

    d = drawing.Drawing(
        "condensate-trap", "The trap, to dimension",
        f"From the pan's outlet {inches(head)} down to the trap's outlet, then {inches(seal)} of "
        f"water below it; {inches(total)} in all with the pipe. A tee with a cap before the trap, "
        "an open tee after it, and the drain falling away.", bottom + wide + 16)
    d.rect(8, top - 46, 62, 46 + wide / 2, "of").text(39, top - 16, "pan", "b m")
    # water stands in the bend up to the outlet
    d.hatch(left, outlet, wide, bottom - outlet + wide, "water")
    d.hatch(right, outlet, wide, bottom - outlet + wide, "water")
    d.hatch(left, bottom, right - left + wide, wide, "water")
    d.polyline([(70, top - wide / 2), (left, top - wide / 2), (left, top - wide / 2 - 26),
                (left + wide, top - wide / 2 - 26), (left + wide, bottom), (right, bottom),
                (right, outlet - wide / 2 - 26)], "o")
    d.polyline([(70, top + wide / 2), (left, top + wide / 2), (left, bottom + wide),
                (right + wide, bottom + wide), (right + wide, outlet + wide / 2),
                (332, outlet + wide / 2 + 6)], "o")
    d.polyline([(right + wide, outlet - wide / 2 - 26), (right + wide, outlet - wide / 2),
                (332, outlet - wide / 2 + 6)], "o")
    d.line(left - 4, top - wide / 2 - 28, left + wide + 4, top - wide / 2 - 28, "o")
    d.dimension(left - 22, top, left - 22, outlet, "", extend=18)
    d.text(left - 30, (top + outlet) / 2 + 6, inches(head), "b e halo")
    d.dimension(left - 22, outlet, left - 22, bottom, "", extend=18)
    d.text(left - 30, (outlet + bottom) / 2 + 6, inches(seal), "b e halo")
    d.balloon(1, left + wide / 2, top - wide / 2 - 50)
    d.balloon(2, right + wide / 2, outlet - wide / 2 - 46)
    d.balloon(3, 310, outlet + wide / 2 + 34)
    return d.figure(legend=["tee with a cap: fill and clean here; it stays closed",
                            "open tee: cleans the drain, lets it breathe",
                            f"drain, {sheet.job.drain_pipe} in pipe, falls all the way; "
                            f"the trap is {inches(total)} high in all"])
