"""Service, feeder and panel.

The electrical code's sum for an existing dwelling, with the old blower and cooling taken
out and the new loads added. Compressor and backup kit are counted together, because they
run together. Beside it the manufactured-home sum leg by leg, the breaker spaces, what
fits if it does not fit, and what a generator would have to give.

The arithmetic may hold; a licensed electrician signs.
"""

from __future__ import annotations

from typing import Any

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.engine.paper import Level
from downflow.facts.panel import (
    EXISTING_DWELLING,
    GENERATOR_START,
    HOME_FEEDER,
    PANEL_LINES,
    PANEL_SPACES,
    RECORDED_DEMAND,
    SUPPLY_CORD,
)
from downflow.physics import outdoor_circuit, service_load
from downflow.sources import ARITHMETIC

CALCULATOR = Calculator(
    id="service-load",
    title="Service and panel",
    phase="power",
    question="Can this service and this panel carry the new system?",
    reads=("main_breaker_a", "supply_kind", "panel_line", "panel_spaces_free",
           "panel_spaces_freed", "kit_circuits", "floor_area_ft2", "appliances",
           "kitchen_circuits", "laundry_circuits", "old_blower_a", "old_cooling_a",
           "outdoor_unit_a", "indoor_blower_a", "kit_chosen_kw", "kit_sizes",
           "controls_part_them"),
    may_read=("demand_record_a", "generator_kva", "compressor_lra_a"),
    gives=("service_load_a", "service_left_a", "service_before_a", "service_apart_a",
           "service_kit_room_kw", "feeder_leg_a", "feeder_leg_b", "panel_spaces_left",
           "record_load_a", "generator_blower_kva", "generator_heat_pump_kva",
           "generator_start_kva"),
    shows=("service_load_a", "service_left_a", "feeder_leg_a", "feeder_leg_b",
           "panel_spaces_left", "service_kit_room_kw"),
)

VOLTS = 240.0
LEG_VOLTS = 120.0
SPACES_PER_CIRCUIT = 2
SIGNS = "licensed electrician"
MOTORS = ("motor",)
HEATERS = ("heater",)
FIXED = ("oven", "cooktop", "dryer", "water heater", "dishwasher", "disposer", "microwave",
         "other")


def solve(job: Readings, paper: Paper) -> None:
    general = _general(job, paper)
    compressor = VOLTS * job.outdoor_unit_a
    kit = 1000 * job.kit_chosen_kw
    blower = VOLTS * job.indoor_blower_a
    together = not job.controls_part_them
    heat = _heat(paper, compressor, kit, blower, together)
    load = paper.step("I = (G + H) / 240", EXISTING_DWELLING, "A",
                      service_load.amps(general + heat, VOLTS), G=general, H=heat,
                      what="Load of the service with the new system")
    left = paper.step("L = R - I", ARITHMETIC, "A", job.main_breaker_a - load,
                      R=job.main_breaker_a, I=load, what="Left on the service")
    before = paper.step(
        "Ib = (G + 120 * b + 240 * c) / 240", EXISTING_DWELLING, "A",
        service_load.amps(general + LEG_VOLTS * job.old_blower_a + VOLTS * job.old_cooling_a,
                          VOLTS),
        G=general, b=job.old_blower_a, c=job.old_cooling_a,
        what="The same sum before: old blower and old cooling still in")
    apart = service_load.amps(
        general + service_load.existing_heat_va(compressor, kit, blower, together=False), VOLTS)
    room = paper.step(
        "K = (240 * R - G - C - B) / 1000", ARITHMETIC, "kW",
        service_load.room_left_va(job.main_breaker_a, VOLTS, general, compressor + blower) / 1000,
        R=job.main_breaker_a, G=general, C=compressor, B=blower,
        what="Largest kit that this service has room for")
    paper.give("service_load_a", load)
    paper.give("service_left_a", left)
    paper.give("service_before_a", before)
    paper.give("service_apart_a", apart)
    paper.give("service_kit_room_kw", room)
    leg_a, leg_b = _legs(job, paper)
    spaces = _spaces(job, paper)
    record = _record(job, paper, heat)
    _generator(job, paper)
    paper.draw(general=general / VOLTS, compressor=compressor / VOLTS, kit=kit / VOLTS,
               blower=blower / VOLTS)
    _verdicts(job, paper, load=load, apart=apart, room=room, larger=max(leg_a, leg_b),
              spaces=spaces, record=record)


def _general(job: Readings, paper: Paper) -> float:
    appliances = paper.total("Appliances that stay, by nameplate", EXISTING_DWELLING, "VA",
                             sum(row["va"] for row in job.appliances),
                             [(row["id"], row["va"]) for row in job.appliances] or [("none", 0.0)])
    general = paper.step(
        "g = 3 * a + 1500 * (k + n) + p", EXISTING_DWELLING, "VA",
        service_load.general_va(job.floor_area_ft2, job.kitchen_circuits, job.laundry_circuits,
                                appliances),
        a=job.floor_area_ft2, k=job.kitchen_circuits, n=job.laundry_circuits, p=appliances,
        what="General load: floor area, kitchen and laundry circuits, appliances")
    return paper.step("G = min(g, 8000) + 0.40 * max(g - 8000, 0)", EXISTING_DWELLING, "VA",
                      service_load.existing_general_va(general), g=general,
                      what="After the demand step: 8,000 whole, the rest at 40 %")


def _heat(paper: Paper, compressor: float, kit: float, blower: float, together: bool) -> float:
    heat = service_load.existing_heat_va(compressor, kit, blower, together=together)
    if together:
        return paper.total("Heating counted whole: compressor and kit run together",
                           EXISTING_DWELLING, "VA", heat,
                           [("compressor and outdoor fan", compressor), ("backup kit", kit),
                            ("blower", blower)])
    return paper.step("H = max(C, K) + B", EXISTING_DWELLING, "VA", heat, C=compressor, K=kit,
                      B=blower, what="Heating counted whole: controls keep the two apart")


def _on_leg(row: dict[str, Any], leg: str) -> float:
    if row["leg"] == "both":
        return float(row["va"]) / VOLTS
    return float(row["va"]) / LEG_VOLTS if row["leg"] == leg else 0.0


def _legs(job: Readings, paper: Paper) -> tuple[float, float]:
    lighting_va = service_load.general_va(job.floor_area_ft2, job.kitchen_circuits,
                                          job.laundry_circuits, 0.0)
    lighting = paper.step(
        "l = (min(g, 3000) + 0.35 * max(g - 3000, 0)) / 240", HOME_FEEDER, "A",
        service_load.amps(service_load.feeder_lighting_va(lighting_va), VOLTS), g=lighting_va,
        what="Manufactured-home sum: lighting and circuits on each leg")
    ranges = [row["va"] for row in job.appliances if row["appliance"] == "range"]
    rows = tables.rows("range_demand")
    for rating in ranges:
        job.refuse_unless(rating <= rows[-1].rating_max_va, "appliances",
                          "a range above the largest rating of the code's table. Read its plate "
                          "again, or enter oven and cooktop by themselves.")
    cooking = sum(service_load.amps(service_load.range_va(rating, rows), VOLTS)
                  for rating in ranges if rating <= rows[-1].rating_max_va)
    fixed = [row for row in job.appliances if row["appliance"] in FIXED]
    moving = [row for row in job.appliances if row["appliance"] in (*MOTORS, *HEATERS)]
    new = job.outdoor_unit_a + job.indoor_blower_a + 1000 * job.kit_chosen_kw / VOLTS
    largest = max([job.outdoor_unit_a,
                   *(_on_leg(row, leg) for row in job.appliances for leg in ("A", "B")
                     if row["appliance"] in MOTORS)])
    out = []
    for leg in ("A", "B"):
        motors = new + sum(_on_leg(row, leg) for row in moving)
        appliances = sum(_on_leg(row, leg) for row in fixed)
        share = service_load.appliance_share(len(fixed))
        out.append(paper.step(
            "J = l + m + 0.25 * q + d * f + r", HOME_FEEDER, "A",
            service_load.leg_amps(lighting, motors, largest, appliances, len(fixed), cooking, 0.0),
            l=lighting, m=motors, q=largest, d=share, f=appliances, r=cooking,
            what=f"Leg {leg}: lighting, motors and heaters, a quarter of the largest motor, "
                 "fixed appliances, range"))
    paper.give("feeder_leg_a", out[0])
    paper.give("feeder_leg_b", out[1])
    return out[0], out[1]


def _spaces(job: Readings, paper: Paper) -> float:
    spaces = paper.step(
        "S = e + o - 2 * (k + 1)", PANEL_SPACES, "",
        job.panel_spaces_free + job.panel_spaces_freed
        - SPACES_PER_CIRCUIT * (job.kit_circuits + 1),
        e=job.panel_spaces_free, o=job.panel_spaces_freed, k=job.kit_circuits,
        what="Spaces left: empty and given back, less two for each kit circuit and the outdoor "
             "unit")
    paper.give("panel_spaces_left", spaces)
    return spaces


def _record(job: Readings, paper: Paper, heat: float) -> float | None:
    if job.demand_record_a is None:
        return None
    record = paper.step(
        "Ir = 1.25 * p + H / 240", RECORDED_DEMAND, "A",
        service_load.recorded_amps(job.demand_record_a, service_load.amps(heat, VOLTS)),
        p=job.demand_record_a, H=heat, what="Load by the demand on record")
    paper.give("record_load_a", record)
    return record


def _generator(job: Readings, paper: Paper) -> None:
    alone = paper.step("b = 240 * i / 1000", ARITHMETIC, "kVA",
                       VOLTS * job.indoor_blower_a / 1000, i=job.indoor_blower_a,
                       what="Blower alone on a generator")
    both = paper.step("h = b + 240 * c / 1000", ARITHMETIC, "kVA",
                      alone + VOLTS * job.outdoor_unit_a / 1000, b=alone, c=job.outdoor_unit_a,
                      what="Blower and heat pump on a generator, kit locked out")
    paper.give("generator_blower_kva", alone)
    paper.give("generator_heat_pump_kva", both)
    start = None
    if job.compressor_lra_a is not None:
        start = paper.step("s = r * 240 / 1000", ARITHMETIC, "kVA",
                           outdoor_circuit.start_kva(job.compressor_lra_a, VOLTS),
                           r=job.compressor_lra_a, what="The moment the compressor starts")
        paper.give("generator_start_kva", start)
    if job.generator_kva is not None:
        paper.limit(
            "generator", start if start is not None else both, at_most=job.generator_kva,
            unit="kVA", decimals=1, source=GENERATOR_START, beyond="look", best="look",
            signs=SIGNS,
            fine="The generator's rating is above what the heat pump asks for; the kit stays "
                 "locked out.",
            look="The generator gives {limit}; the heat pump asks for {value}. It can run the "
                 "blower, {alone}, and not the heat pump. The kit stays locked out.",
            do="Run the blower alone, or let the maker say whether this generator may start this "
               "unit. Only through listed transfer equipment.",
            alone=Quantity(alone, "kVA", 1))


def _verdicts(job: Readings, paper: Paper, *, load: float, apart: float, room: float,
              larger: float, spaces: float, record: float | None) -> None:
    cord = job.supply_kind != "feeder"
    paper.verdict(
        "supply", "hold" if cord else "fine",
        "The home hangs on a supply cord. A cord is too small for electric heat, whatever the sum "
        "says." if cord else "The home has a permanent feeder.",
        source=SUPPLY_CORD, best="look", signs=SIGNS,
        do="A new permanent feeder comes first; ask the electrician and the utility." if cord
        else "")
    paper.limit(
        "service-fits", load, at_most=job.main_breaker_a, of="service_load_a",
        source=EXISTING_DWELLING, safety=True, best="look", signs=SIGNS,
        fine="By the sum for an existing dwelling {value} of {limit} are taken. Local code decides "
             "which sum counts.",
        hold="By the sum for an existing dwelling the new system brings the service to {value}; it "
             "is rated {limit}.",
        do=_way_out(job, apart, room), kit=Quantity(_fitting(job, room) or 0.0, "kW", 1),
        apart=Quantity(apart, "A", 1))
    paper.limit(
        "feeder-legs", larger, at_most=job.main_breaker_a, unit="A", decimals=1,
        source=HOME_FEEDER, beyond="look", best="look", signs=SIGNS,
        fine="By the manufactured-home sum the larger leg carries {value}.",
        look="By the manufactured-home sum the larger leg carries {value}, more than {limit}: the "
             "two sums differ.",
        do="Ask the local official which of the two sums is accepted for this job.")
    paper.limit(
        "spaces", spaces, at_least=0, of="panel_spaces_left", source=PANEL_SPACES, best="look",
        signs=SIGNS,
        fine="The panel has room for the new circuits.",
        hold="The panel is short of breaker spaces for the new circuits.",
        do="Have the electrician plan a subpanel, or breakers that the panel's label allows in "
           "half a space, before you quote.")
    words: dict[str, tuple[Level, str, str]] = {
        "ordinary": ("fine", "Breakers without failures on record.", ""),
        "failures": ("hold", "This panel line has breakers that failed to trip.",
                     "Let a licensed electrician judge the panel before you quote."),
        "fuses": ("hold", "A fuse panel has no place for these circuits as it is.",
                  "Let a licensed electrician judge the panel before you quote."),
        "not read": ("look", "Nobody has read which panel this is.",
                     "Read maker and line on the panel's door, and ask the electrician."),
    }
    level, text, do = words[job.panel_line]
    paper.verdict("panel-line", level, text, source=PANEL_LINES, do=do, best="look",
                  signs=SIGNS)
    if record is not None:
        paper.limit(
            "recorded", record, at_most=job.main_breaker_a, of="record_load_a",
            source=RECORDED_DEMAND, beyond="look", best="look", signs=SIGNS,
            fine="By the demand on record {value} of {limit} are taken.",
            look="By the demand on record the load is {value}, above {limit}.",
            do="Ask the local official whether the demand on record may be used.")


def _fitting(job: Readings, room: float) -> float | None:
    fits = [row["kit_kw"] for row in job.kit_sizes if row["kit_kw"] <= room]
    return max(fits) if fits else None


def _way_out(job: Readings, apart: float, room: float) -> str:
    kit = _fitting(job, room)
    first = ("The largest kit on the plate that fits is {kit}; see what it leaves short. "
             if kit is not None else "No kit on the plate fits beside the compressor. ")
    second = ("With a listed control that keeps compressor and kit apart the sum is {apart}. "
              if apart <= job.main_breaker_a else "")
    return (first + second + "Or stage the kit, or change the service. Never rely on everything "
            "not running at once.")


def figure(sheet: Sheet) -> str:
    """What the service carries, part by part."""
    rows = [(name, float(str(sheet.drawn[key]))) for name, key in (
        ("house, by the sum", "general"), ("compressor and fan", "compressor"),
        ("backup kit", "kit"), ("blower", "blower"))]
    total, rating = sheet.values["service_load_a"], sheet.job.main_breaker_a
    words = ", ".join(f"{name} {sheet.text(v, 'A', 1)}" for name, v in rows)
    return drawing.bars(
        "service-load", "What the service carries", rows, "A",
        head=f"A, {sheet.text(total, 'A', 1)} of {sheet.text(rating, 'A', 0)}", decimals=1,
        desc=f"{words}. Together {sheet.text(total, 'A', 1)}; the service is rated "
             f"{sheet.text(rating, 'A', 0)}.",
        system=sheet.system,
    ).figure("Compressor and kit are counted together: they run together.")
