"""The way back.

Air that is blown into a room must come out again. With its door shut a room without a way back
stands under pressure, gets less air and pushes it outdoors; the closet behind its louvers
stands below the home by as much as they cost.
"""

from __future__ import annotations

from typing import Any

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import air, air_path, ducts, return_path
from downflow.sources import (
    CLOSED_ROOM,
    GEOMETRY,
    HUD_RETURN,
    HUD_SHARED_CLOSET,
    LOUVERS,
    ORIFICE,
    PRACTICE,
    STANDARD_ATMOSPHERE,
    VELOCITY_LIMITS,
)

CALCULATOR = Calculator(
    id="way-back",
    title="The way back",
    phase="air",
    question="Can the air come back from every closed room and into the closet?",
    reads=("rooms", "room_flows", "supply_airflow_cfm", "drop_closet_inwc", "elevation_ft",
           "return_air_f", "louver_face_in2", "louver_kind", "closet_other_free_in2",
           "closet_burner"),
    may_read=("louver_free_pct", "water_heater_fuel", "range_fuel", "dryer_fuel",
              "stove_fuel"),
    gives=("way_back_worst_pa", "way_back_cut_in2", "closet_free_in2", "closet_pa",
           "closet_face_fpm", "way_back"),
    shows=("way_back_worst_pa", "way_back_cut_in2", "closet_free_in2", "closet_pa",
           "closet_face_fpm"),
)

CLOSET_LIMIT_PA = 12.0
FUELED = ("water_heater", "range", "dryer", "stove")
BURNING = ("gas", "propane", "oil", "wood")


def solve(job: Readings, paper: Paper) -> None:
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.350 * (t + 459.67))",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft, job.return_air_f),
        z=job.elevation_ft, t=job.return_air_f, what="Density of the air in the home")
    gets = {row["id"]: row["airflow_cfm"] for row in job.room_flows}
    rows: list[dict[str, Any]] = []
    found: dict[str, return_path.ClosedRoom] = {}
    hud_short: list[str] = []
    for room in job.rooms:
        if not room["closes"] or room["toilet"] or room["id"] not in gets:
            continue
        under = return_path.undercut_area_in2(room.get("door_width_in") or 0.0,
                                              room.get("undercut_in") or 0.0)
        transfer = room.get("transfer_in2") or 0.0
        one = return_path.closed_room(gets[room["id"]], under, transfer, density)
        found[room["id"]] = one
        hud = return_path.hud_room_opening_in2(room["floor_area_ft2"])
        credit = return_path.hud_undercut_credit_in2(room.get("door_width_in") or 0.0,
                                                     room.get("undercut_deck_in") or 0.0)
        if transfer + credit < hud:
            hud_short.append(room["id"])
        row = {"id": room["id"], "airflow_cfm": gets[room["id"]], "there_in2": one.there_in2,
               "needed_in2": one.needed_in2, "cut_in2": one.to_cut_in2, "hud_in2": hud}
        if one.pressure_pa is not None:
            row["pressure_pa"] = one.pressure_pa
        rows.append(row)
    paper.give_table("way_back", rows)
    blocked = [name for name, one in found.items() if one.pressure_pa is None]
    worst = paper.decide("worst room", max(
        (n for n in found if found[n].pressure_pa is not None),
        key=lambda n: (found[n].pressure_pa or 0.0) / found[n].limit_pa, default=""))
    if worst and found[worst].pressure_pa is not None:
        pressure = _worst_steps(paper, worst, found[worst], gets[worst], density)
        paper.give("way_back_worst_pa", pressure)
    total = paper.total("Free area still to cut", ORIFICE, "in²",
                        sum(one.to_cut_in2 for one in found.values()),
                        [(name, one.to_cut_in2) for name, one in found.items()]) if found else 0.0
    paper.give("way_back_cut_in2", total)
    _closet(job, paper)
    paper.draw(rooms=[(name, one.there_in2, one.needed_in2) for name, one in found.items()])
    _verdicts(job, paper, found, worst, blocked, hud_short)


def _worst_steps(paper: Paper, name: str, one: return_path.ClosedRoom, gets: float,
                 density: float) -> float:
    assert one.pressure_pa is not None
    flow = paper.step(
        "q1 = 0.6 * 1 / 144 * 1097 * sqrt(1 / 249.08891 / rho)", ORIFICE, "cfm",
        ducts.orifice_flow_cfm(1.0, 1.0, density), rho=density,
        what="What a square inch of opening passes at one pascal")
    paper.step("A = q / (q1 * sqrt(p))", ORIFICE, "in²", one.needed_in2, q=gets, q1=flow,
               p=one.limit_pa, what=f"Free area that {name} needs")
    return paper.step("dp = (q / (q1 * a)) ** 2", ORIFICE, "Pa", one.pressure_pa, q=gets, q1=flow,
                      a=one.there_in2, what=f"Pressure in {name} now, door shut")


def _closet(job: Readings, paper: Paper) -> None:
    share = job.louver_free_pct
    if share is None:
        share = 100 * (return_path.WOOD_LOUVER_SHARE if job.louver_kind == "wood"
                       else return_path.METAL_LOUVER_SHARE)
    free = paper.step(
        "F = f * s / 100 + o", LOUVERS, "in²",
        air_path.closet_free_in2(job.louver_face_in2, job.louver_kind, job.louver_free_pct,
                                 job.closet_other_free_in2),
        f=job.louver_face_in2, s=share, o=job.closet_other_free_in2,
        what="Free area into the closet")
    below = paper.step("pc = d * 249.08891", ORIFICE, "Pa",
                       job.drop_closet_inwc * ducts.PA_PER_INWC, d=job.drop_closet_inwc,
                       what="Closet below the home")
    paper.give("closet_free_in2", free)
    paper.give("closet_pa", below)
    if job.louver_face_in2 > 0:
        speed = paper.step("v = 144 * Q / f", GEOMETRY, "ft/min",
                           ducts.velocity_fpm(job.supply_airflow_cfm, job.louver_face_in2),
                           Q=job.supply_airflow_cfm, f=job.louver_face_in2,
                           what="Air at the louvers' face")
        paper.give("closet_face_fpm", speed)


def _verdicts(job: Readings, paper: Paper, found: dict[str, return_path.ClosedRoom], worst: str,
              blocked: list[str], hud_short: list[str]) -> None:
    if blocked:
        paper.verdict("rooms-can-breathe", "hold",
                      "No way back at all with the door shut: {rooms}.", source=HUD_RETURN,
                      do="Cut a transfer opening of the area in the table, high on one side and "
                         "low on the other, or over the door.", rooms=", ".join(blocked))
    else:
        paper.verdict("rooms-can-breathe", "fine",
                      "Every closed room has some way back.", source=HUD_RETURN)
    if worst and found[worst].pressure_pa is not None:
        one = found[worst]
        paper.limit(
            "rooms-pressure", one.pressure_pa or 0.0, at_most=one.limit_pa,
            of="way_back_worst_pa", source=CLOSED_ROOM,
            fine="With doors shut no room stands above {limit}.",
            look="With its door shut {room} stands at {value}; {limit} is the most.",
            hold="With its door shut {room} stands at {value}; {limit} is the most.",
            do="Cut the areas in the table: transfer grilles, or a duct from ceiling to hall.",
            room=worst)
    # Where airflow asks for a cut already, the table names the area.
    alone = paper.decide("short by the rule alone",
                         [name for name in hud_short if found[name].to_cut_in2 <= 0])
    if alone:
        paper.verdict("federal-room-area", "look",
                      "Enough for the airflow, and below what the federal rule for new homes asks, "
                      "one square inch for each five square feet of floor: {rooms}.",
                      source=HUD_RETURN,
                      do="Ask the local official whether the rule is applied to this home.",
                      rooms=", ".join(alone))
    elif hud_short:
        paper.verdict("federal-room-area", "fine",
                      "Rooms below the federal rule for new homes are cut for their airflow; cut "
                      "the larger of the two areas in the table: {rooms}.", source=HUD_RETURN,
                      rooms=", ".join(hud_short))
    else:
        paper.verdict("federal-room-area", "fine",
                      "Openings reach the federal rule for new homes.", source=HUD_RETURN)
    paper.limit(
        "closet-pressure", job.drop_closet_inwc * ducts.PA_PER_INWC, at_most=CLOSET_LIMIT_PA,
        of="closet_pa", source=PRACTICE, beyond="look",
        fine="The louvers let the air in without pulling on the closet.",
        look="The closet stands {value} below the home; {limit} is an often-used most.",
        do="Fit a metal louvered door or a larger grille.")
    if job.louver_face_in2 > 0:
        place = next(r for r in tables.rows("velocity_limits") if r.place == "return grille")
        paper.limit(
            "louver-speed", ducts.velocity_fpm(job.supply_airflow_cfm, job.louver_face_in2),
            at_most=place.maximum_fpm, of="closet_face_fpm", source=VELOCITY_LIMITS,
            beyond="look",
            fine="Air at the louvers is slow and quiet.",
            look="Air meets the louvers at {value}; {limit} is the most for a quiet return.",
            do="Enlarge the louvered face.")
    else:
        paper.verdict("louver-speed", "look", "The closet has no louvers.", source=PRACTICE,
                      do="Name the openings by which its air comes, and measure them.")
    _burner(job, paper)


def _burner(job: Readings, paper: Paper) -> None:
    below = Quantity(job.drop_closet_inwc * ducts.PA_PER_INWC, "Pa", 1)
    burning = [what for what in FUELED if getattr(job, f"{what}_fuel") in BURNING]
    if job.closet_burner == "none" and burning:
        paper.verdict("burners", "look",
                      "The job sheet says that nothing burns fuel, and that this does: {what}. "
                      "Where it takes its air is not known.",
                      source=HUD_SHARED_CLOSET, best="look", signs="licensed gas fitter",
                      do="Say where it takes its air: from outside, from the home, or from this "
                         "closet.", what=", ".join(what.replace("_", " ") for what in burning))
    elif job.closet_burner == "none":
        paper.verdict("burners", "fine", "Nothing burns fuel here after the job.",
                      source=HUD_SHARED_CLOSET)
    elif job.closet_burner == "sealed":
        paper.verdict("burners", "fine",
                      "What still burns takes its air from outside, not from the home.",
                      source=HUD_SHARED_CLOSET, best="look", signs="licensed gas fitter",
                      do="Have the pipes and seals checked with the blower running.")
    else:
        where = "in this closet" if job.closet_burner == "closet" else "in the home"
        paper.verdict("burners", "hold",
                      "An appliance that burns the home's air remains {where}, and the closet "
                      "stands {below} below the home: flue gas may be drawn back.",
                      source=HUD_SHARED_CLOSET, safety=True,
                      do="Stop until a licensed person has it sealed, moved or proved with the "
                         "blower at its highest speed, all doors shut, fans on.",
                      where=where, below=below)


def figure(sheet: Sheet) -> str:
    """Free area there and needed for each closed room."""
    rooms: Any = sheet.drawn["rooms"]
    if not rooms:
        return drawing.bars("way-back", "No room closes", [("to cut", 0.0)], "in²",
                            system=sheet.system).figure("No room with a door gets supply air.")
    rows: list[tuple[str, float]] = []
    short = []
    for name, there, needed in rooms:
        rows.append((f"{name}, there", there))
        rows.append((f"{name}, needed", needed))
        if there < needed:
            short.append(f"{name}, there")
    said = "; ".join(f"{n}: {sheet.text(t, 'in²', 0)} there, {sheet.text(d, 'in²', 0)} needed"
                     for n, t, d in rooms)
    return drawing.bars(
        "way-back", "Free area for the way back, doors shut", rows, "in²",
        head="free area", outside=short, keep_order=True, desc=said, system=sheet.system,
    ).figure("Hatched: too small for the air that the room gets.")
