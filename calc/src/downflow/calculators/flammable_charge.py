"""Mildly flammable refrigerant in a closet.

How much charge the room at the closet may hold if it leaks, how much floor the blower
must spread it over, and what the unit's own label asks for. A formula can fail a home; it
can never pass one: the label, the manual and the adopted code decide, and where one of
them must and has not been read, this holds.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.engine.paper import Level
from downflow.facts.flammable import (
    FLAMMABILITY,
    LOUVERS,
    MIXED_CHARGE,
    ROOM_CHARGE,
    ROOM_LABEL,
    STRICT_MIXING,
    TECHNOLOGY_RULE,
)
from downflow.physics import flammable
from downflow.sources import GEOMETRY, UNITS
from downflow.units import convert

CALCULATOR = Calculator(
    id="flammable-charge",
    title="Flammable refrigerant in a closet",
    phase="papers",
    question="May this home hold this charge if it leaks?",
    reads=("refrigerant", "charge_total_lb", "closet_floor_ft2", "closet_openings",
           "room_beside_ft2", "supply_outlets", "ceiling_height_ft", "floor_area_ft2",
           "leak_detector", "flame_near"),
    may_read=("louver_edge_in", "louver_foot_in2", "louver_low_in2", "louver_high_in2",
              "louver_need_in2", "leak_airflow_cfm", "label_room_ft2_lb", "label_total_ft2_lb",
              "label_cfm_lb"),
    gives=("leak_room_ft2", "leak_counted_ft2", "leak_holds_lb", "leak_free_lb",
           "leak_served_ft2", "leak_mixed_pct", "leak_label_room_ft2", "leak_label_total_ft2",
           "leak_label_cfm"),
)

SIGNS = "technician certified for flammable refrigerant"
HEIGHTS_M = {"floor": 0.6, "wall": 1.8, "ceiling": 2.2}
MIXING = 0.5
STRICT = 0.25
KG_LB = 0.45359237
M2_FT2 = 0.09290304
M_FT = 0.3048
EDGE_IN = 4.0
FOOT_SHARE = 0.5
UPPER_SHARE = 0.5
LEAST_CLOSET_FT2 = 7.0


def solve(job: Readings, paper: Paper) -> None:
    limit = next(r.limit_kg_m3 for r in tables.rows("flammability")
                 if r.refrigerant == job.refrigerant)
    _refusals(job)
    if limit is None:
        _not_flammable(job, paper)
        return
    paper.lookup("Lower flammability limit", FLAMMABILITY, "kg/m³", limit,
                 row=[(job.refrigerant, limit)])
    charge = paper.step("m = 0.45359237 * c", UNITS, "kg", KG_LB * job.charge_total_lb,
                        c=job.charge_total_lb, what="Charge of the whole system")
    free = paper.step("m1 = 6 * L", ROOM_CHARGE, "kg", flammable.least_charge_kg(limit), L=limit,
                      what="Charge up to which no room size is asked for")
    height = HEIGHTS_M[job.supply_outlets]
    room_m2 = paper.step(
        "A = max((m / (2.5 * L ** 1.25 * h)) ** 2, m / (0.75 * L * h))", ROOM_CHARGE, "m²",
        flammable.room_area_m2(charge, limit, height), m=charge, L=limit, h=height,
        what="Least room without detector, the larger of two legs")
    room = paper.step("Af = A / 0.09290304", UNITS, "ft²", room_m2 / M2_FT2, A=room_m2,
                      what="The same in square feet")
    counted, joined = _counted(job, paper)
    holds = paper.step(
        "mr = min(2.5 * L ** 1.25 * h * sqrt(A), 0.75 * L * h * A) / 0.45359237", ROOM_CHARGE,
        "lb", flammable.room_charge_kg(limit, height, counted * M2_FT2) / KG_LB, L=limit,
        h=height, A=counted * M2_FT2, what="Charge that the room at the closet may hold without "
                                            "detector")
    tall = job.ceiling_height_ft * M_FT
    served_m2 = paper.step("As = m / (0.5 * L * min(H, 2.2))", MIXED_CHARGE, "m²",
                           flammable.mixed_area_m2(charge, limit, tall, MIXING), m=charge,
                           L=limit, H=tall,
                           what="Served floor that detector and blower must spread it over")
    served = paper.step("Asf = As / 0.09290304", UNITS, "ft²", served_m2 / M2_FT2, As=served_m2,
                        what="The same in square feet")
    mixed = paper.step(
        "p = 100 * m / (min(H, 2.2) * F * 0.09290304) / L", GEOMETRY, "%",
        100 * flammable.mixed_concentration_kg_m3(charge, tall, job.floor_area_ft2 * M2_FT2)
        / limit, m=charge, H=tall, F=job.floor_area_ft2, L=limit,
        what="The whole charge mixed in the home, as a share of the flammable limit")
    paper.give("leak_room_ft2", room)
    paper.give("leak_free_lb", free / KG_LB)
    paper.give("leak_counted_ft2", counted)
    paper.give("leak_holds_lb", holds)
    paper.give("leak_served_ft2", served)
    paper.give("leak_mixed_pct", mixed)
    large = flammable.large_charge_kg(limit) / KG_LB
    _rooms(job, paper, free=free / KG_LB, holds=holds, served=served, large=large, joined=joined)
    _label(job, paper, small=charge <= free)
    _around(job, paper)


def _refusals(job: Readings) -> None:
    foot, low = job.louver_foot_in2, job.louver_low_in2
    if foot is not None and low is not None:
        job.refuse_unless(low >= foot, "louver_low_in2",
                          "is smaller than the area below 8 in, which is part of it. Were the two "
                          "swapped?")
    if job.leak_detector == "none":
        job.refuse_unless(job.leak_airflow_cfm is None, "leak_airflow_cfm",
                          "is an airflow at a leak, but there is no detector to start the blower.")


def _not_flammable(job: Readings, paper: Paper) -> None:
    paper.step("p = 1000 * c / (H * F)", GEOMETRY, "",
               1000 * job.charge_total_lb / (job.ceiling_height_ft * job.floor_area_ft2),
               c=job.charge_total_lb, H=job.ceiling_height_ft, F=job.floor_area_ft2,
               what="Pounds for each 1,000 ft³ of the home, were all of it to leak")
    paper.verdict("not-flammable", "fine",
                  "{name} is not flammable: no room size follows from it. It still displaces air "
                  "in a closet.", source=FLAMMABILITY, best="look", signs=SIGNS,
                  name=job.refrigerant,
                  do="Read the plate again, and keep to the manual.")
    paper.verdict("which-refrigerant", "look",
                  "New split systems with a refrigerant of high warming potential may no longer be "
                  "installed, but for a stock exception that may have changed.",
                  source=TECHNOLOGY_RULE, best="look", signs=SIGNS,
                  do="Check the rule in force on the day before you order.")
    _around(job, paper)


def _counted(job: Readings, paper: Paper) -> tuple[float, bool | None]:
    """Floor that counts at the closet, and whether the openings join it to the room beside."""
    joined = _joined(job)
    both = job.closet_floor_ft2 + job.room_beside_ft2
    if joined:
        paper.total("Room that counts: the openings make one room of two", GEOMETRY, "ft²", both,
                    [("closet", job.closet_floor_ft2), ("room beside it", job.room_beside_ft2)])
        return both, joined
    paper.lookup("Room that counts: the closet alone", LOUVERS, "ft²", job.closet_floor_ft2,
                 row=[("closet", job.closet_floor_ft2), ("with the room beside it", both)])
    return job.closet_floor_ft2, joined


def _joined(job: Readings) -> bool | None:
    """Whether the openings count; `None` where the manual's figure or a reading is missing."""
    if job.closet_openings != "low and high" or job.closet_floor_ft2 < LEAST_CLOSET_FT2:
        return False
    need, edge, foot = job.louver_need_in2, job.louver_edge_in, job.louver_foot_in2
    low, high = job.louver_low_in2, job.louver_high_in2
    if edge is not None and edge > EDGE_IN:
        return False
    if need is None or edge is None or foot is None or low is None or high is None:
        return None
    return bool(low >= need and foot >= FOOT_SHARE * need and high >= UPPER_SHARE * need)


def _rooms(job: Readings, paper: Paper, *, free: float, holds: float, served: float,
           large: float, joined: bool | None) -> None:
    detector = job.leak_detector == "factory"
    words: dict[bool | None, tuple[Level, str, str]] = {
        True: ("fine", "By the numbers entered, closet and room beside it count as one room.",
               "Show the openings to whoever signs; they must not be closed later."),
        None: ("look", "Whether the closet counts with the room beside it is not known, so it "
                       "counts alone.",
               "Read the manual's clause on openings, and measure the free areas."),
        False: ("fine", "The closet counts alone: its openings do not make one room with the room "
                        "beside it.",
                "Openings low and high, that cannot be shut, as the manual draws them, would join "
                "the two."),
    }
    level, text, do = words[joined]
    paper.verdict("openings", level, text, source=LOUVERS, do=do, best="look", signs=SIGNS)
    paper.limit(
        "too-large", job.charge_total_lb, at_most=large, unit="lb", decimals=1,
        source=ROOM_CHARGE, safety=True, best="look", signs=SIGNS,
        fine="The charge, {value}, is within what these room rules reach, {limit}.",
        hold="The charge, {value}, is above what these room rules reach, {limit}.",
        do="Stop: this needs a design of its own.")
    small = job.charge_total_lb <= free
    if small:
        paper.verdict("room", "fine",
                      "The charge, {charge}, is not above {free}: this rule asks for no room size.",
                      source=ROOM_CHARGE, best="look", signs=SIGNS, free=Quantity(free, "lb", 2),
                      charge=Quantity(job.charge_total_lb, "lb", 2))
    elif detector:
        paper.verdict("room", "fine",
                      "Without detector the room at the closet may hold {holds}; the system holds "
                      "{charge}. Detector and blower spread what leaks.",
                      source=ROOM_CHARGE, best="look", signs=SIGNS,
                      do="Never disable or move the detector.",
                      holds=Quantity(max(holds, free), "lb", 2),
                      charge=Quantity(job.charge_total_lb, "lb", 2))
    else:
        paper.limit(
            "room", job.charge_total_lb, at_most=max(holds, free), of="leak_holds_lb",
            source=ROOM_CHARGE, safety=True, beyond="hold", best="look", signs=SIGNS,
            fine="Without detector the room at the closet may hold {limit}.",
            hold="The room at the closet may hold {limit}; the system holds {value}, and no "
                 "factory detector is known.",
            do="Take equipment with a factory detector, or read on the plate that it has one.")
    texts = {
        "factory": "A factory detector stands at the coil.",
        "none": "There is no refrigerant detector.",
        "unknown": "Whether there is a refrigerant detector is not known.",
    }
    stands: Level = "fine" if detector or (small and job.leak_detector == "none") else \
        "look" if small else "hold"
    paper.verdict("detector", stands, texts[job.leak_detector],
                  source=ROOM_LABEL, best="look", signs=SIGNS, safety=True,
                  do="Test it at start-up: it must start the blower and stop the compressor."
                  if detector else "Read it on the plate and in the wiring diagram.")
    paper.limit(
        "home", job.floor_area_ft2, at_least=served, of="leak_served_ft2", source=MIXED_CHARGE,
        safety=True, best="look", signs=SIGNS,
        fine="Spread by the blower over {value}, the charge stays within half of the flammable "
             "limit; {limit} would do.",
        hold="The blower must spread the charge over {limit}; the ducts serve {value}.",
        do="Ask the maker for what the manual adds: mechanical ventilation, or less charge.")
    paper.limit(
        "home-strict", job.floor_area_ft2, at_least=served * MIXING / STRICT,
        of="leak_served_ft2", source=STRICT_MIXING, beyond="look", best="look", signs=SIGNS,
        fine="It holds by the stricter text too, a quarter of the limit: {limit}.",
        look="By a stricter text, a quarter of the limit, {limit} would be needed.",
        do="Ask which text the adopted code follows.")


def _label(job: Readings, paper: Paper, *, small: bool) -> None:
    charge = job.charge_total_lb
    asked = (("room", job.label_room_ft2_lb), ("total", job.label_total_ft2_lb),
             ("air", job.label_cfm_lb))
    unread = [name for name, value in asked if value is None]
    must = bool(unread) and not small
    paper.verdict(
        "label-read", "hold" if must else "look" if unread else "fine",
        "The unit's own room-area table or multipliers have not been read, and they decide."
        if must else
        "Below this charge the label asks for no room; read it all the same." if unread else
        "The unit's own label has been read. It, the manual and the adopted code decide, not this "
        "sheet.",
        source=ROOM_LABEL, best="look", signs=SIGNS,
        do="Find the room-area label on the unit or the table in its manual, and enter it."
        if unread else "Take a photo of the label for the record.")
    if job.label_room_ft2_lb is not None:
        need = paper.step("r = c * k", ROOM_LABEL, "ft²",
                          flammable.label_need(charge, job.label_room_ft2_lb), c=charge,
                          k=job.label_room_ft2_lb, what="Smallest room, by the label")
        paper.give("leak_label_room_ft2", need)
    if job.label_total_ft2_lb is not None:
        need = paper.step("t = c * k", ROOM_LABEL, "ft²",
                          flammable.label_need(charge, job.label_total_ft2_lb), c=charge,
                          k=job.label_total_ft2_lb, what="Served floor, by the label")
        paper.give("leak_label_total_ft2", need)
        paper.limit("label-total", job.floor_area_ft2, at_least=need,
                    of="leak_label_total_ft2", source=ROOM_LABEL, safety=True, best="look",
                    signs=SIGNS,
                    fine="The label asks for {limit} of served floor; there are {value}.",
                    hold="The label asks for {limit} of served floor; there are {value}.",
                    do="Ask the maker for what the manual adds, or take less charge.")
    if job.label_cfm_lb is not None:
        need = paper.step("v = c * k", ROOM_LABEL, "cfm",
                          flammable.label_need(charge, job.label_cfm_lb), c=charge,
                          k=job.label_cfm_lb, what="Least airflow at a leak, by the label")
        paper.give("leak_label_cfm", need)
        _air(job, paper, need)


def _air(job: Readings, paper: Paper, need: float) -> None:
    if job.leak_airflow_cfm is None:
        paper.verdict("label-air", "hold" if job.leak_detector == "factory" else "look",
                      "The label asks for {need} at a leak; what the blower then gives is not "
                      "known.", source=ROOM_LABEL, best="look", signs=SIGNS,
                      do="Read the blower's airflow at a leak in the manual.",
                      need=Quantity(need, "cfm", 0))
        return
    paper.limit("label-air", job.leak_airflow_cfm, at_least=need, of="leak_label_cfm",
                source=ROOM_LABEL, safety=True, best="look", signs=SIGNS,
                fine="At a leak the blower gives {value}; the label asks for {limit}.",
                hold="At a leak the blower gives {value}; the label asks for {limit}.",
                do="Set the blower as the manual says, and open every register.")


def _around(job: Readings, paper: Paper) -> None:
    flame = job.flame_near
    paper.verdict(
        "flame", "hold" if flame else "fine",
        "A flame or glowing surface stands in the same space or ducts." if flame else
        "No flame or glowing surface in the same space or ducts.",
        source=ROOM_LABEL, best="look", signs=SIGNS, safety=True,
        do="Move it or shut it off from this space, as the manual says." if flame else
        "Keep it so: no pilot, no open element, and closet and ducts shut off from crawl and roof.")


def figure(sheet: Sheet) -> str:
    """The closet's door with the heights between which an opening counts."""
    job = sheet.job
    inches = {n: sheet.text(convert(v, "in", "in"), "in", 0)
              for n, v in (("edge", 4.0), ("foot", 8.0), ("low", 12.0), ("high", 60.0))}
    counted = sheet.values.get("leak_counted_ft2", job.closet_floor_ft2)
    d = drawing.Drawing(
        "flammable-charge", "Openings between closet and room",
        f"The lowest opening starts not above {inches['edge']}. At least half of what the manual "
        f"asks for lies below {inches['foot']}, all of it below {inches['low']}, and at least half "
        f"as much again at {inches['high']} or higher. Floor that counts here: "
        f"{sheet.text(counted, 'ft²', 0)}.", 300)
    floor, scale = 266.0, 2.75
    d.hatch(20, floor, 300, 14).text(330, 296, "closet floor", "e")
    d.rect(70, floor - 80 * scale, 96, 80 * scale, "of")
    for low, high in ((2.0, 12.0), (62.0, 74.0)):
        y = floor - high * scale
        d.rect(84, y, 68, (high - low) * scale, "if")
        for n in range(1, 4):
            d.line(84, y + n * (high - low) * scale / 4, 152, y + n * (high - low) * scale / 4)
    for inch, words, away in ((4.0, inches["edge"], 0.0), (12.0, inches["low"], 0.0),
                              (60.0, inches["high"], 0.0)):
        y = floor - inch * scale
        d.line(56, y, 190, y, "w")
        d.text(196, y + 6 - away, words, "b")
    d.balloon(1, 40, floor - 7 * scale, to=(84, floor - 7 * scale))
    d.balloon(2, 40, floor - 68 * scale, to=(84, floor - 68 * scale))
    return d.figure(legend=[
        f"low opening: from {inches['edge']} or lower, half of its area below {inches['foot']}, "
        f"nothing above {inches['low']} counts",
        f"high opening: at {inches['high']} or higher"])
