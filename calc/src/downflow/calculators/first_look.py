"""A first look, from a dozen facts.

Before a unit is chosen and a panel is read: what a heat pump of the usual size would cover of
the design load, which kit that leaves to be found, whether the service can carry both, and what
stands in the way. Everything here is wide on purpose. Each part steps back as soon as its own
calculator has what it needs.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.first_look import USUAL_UNIT
from downflow.facts.panel import EXISTING_DWELLING
from downflow.physics import backup, first_look, heat_loss, heat_pump, service_load
from downflow.sources import ARITHMETIC, DUCT_DELIVERY, LOAD_LINE, PRACTICE, UNITS

CALCULATOR = Calculator(
    id="first-look",
    title="A first look",
    phase="survey",
    question="What would a usual heat pump cover here, with which kit, on this service?",
    reads=("design_load_btuh", "delivery_efficiency_pct", "design_heating_f",
           "hp_altitude_factor_pct", "floor_area_ft2", "first_nominal_btuh",
           "first_cold_share_pct", "first_appliances_va", "main_breaker_a", "sections",
           "crossover_found", "closet_width_in"),
    may_read=("furnace_input_btuh", "heating_fuel", "hp_points", "appliances", "trunks",
              "cabinet_width_in"),
    gives=("first_share_pct", "first_shortfall_kw", "first_kit_kw", "first_service_a"),
)

KITS_KW = (5.0, 8.0, 10.0, 15.0, 20.0)
"""Kits as they are usually sold for such cabinets."""
BASIC_CIRCUITS = 3.0
"""Two for the kitchen and one for the laundry: the code counts no fewer."""
UNIT_A_PER_BTUH = 20.0 / 36000.0
BLOWER_A = 4.5
SUM_OFF_A = 8.0
CABINET_IN = 21.0
VOLTS = 240.0
FURNACE_PCT = 80.0
FURNACE_SHORT = 0.75


def solve(job: Readings, paper: Paper) -> None:
    load = paper.step("Q = q / (e / 100)", DUCT_DELIVERY, "Btu/h",
                      heat_loss.equipment_load_btuh(job.design_load_btuh,
                                                    job.delivery_efficiency_pct / 100),
                      q=job.design_load_btuh, e=job.delivery_efficiency_pct,
                      what="Heat the equipment must make on the design night")
    kept = paper.step("k = max(0, c / 100 + (1 - c / 100) * (t - 5) / (47 - 5))", LOAD_LINE, "",
                      first_look.kept_share(job.design_heating_f,
                                            min(job.first_cold_share_pct, 100.0) / 100),
                      c=min(job.first_cold_share_pct, 100.0), t=job.design_heating_f,
                      what="Share of its heat that such a unit keeps on that night")
    made = paper.step("C = n * k * f / 100", LOAD_LINE, "Btu/h",
                      job.first_nominal_btuh * kept * job.hp_altitude_factor_pct / 100,
                      n=job.first_nominal_btuh, k=kept, f=job.hp_altitude_factor_pct,
                      what="Heat that it makes then, up here")
    share = paper.step("s = 100 * min(1, C / Q)", LOAD_LINE, "%",
                       100 * heat_pump.share_covered(load, made), C=made, Q=load,
                       what="Share of the design load that it covers")
    short = paper.step("w = max(0, Q - C) / 3412.142", UNITS, "kW",
                       backup.kw_of_btuh(backup.shortfall_btuh(load, made)), Q=load, C=made,
                       what="Left for a backup kit, as electric power")
    kit = paper.decide("kit", backup.smallest_kit_kw(KITS_KW, short) or KITS_KW[-1])
    paper.lookup("The next usual kit", USUAL_UNIT, "kW", kit,
                 row=[("smallest", KITS_KW[0]), ("largest", KITS_KW[-1])])
    paper.give("first_share_pct", share)
    paper.give("first_shortfall_kw", short)
    paper.give("first_kit_kw", kit)
    amps = _service(job, paper, kit)
    paper.draw(load=load, made=made)
    _verdicts(job, paper, share=share, short=short, kit=kit, amps=amps, load=load)


def _service(job: Readings, paper: Paper, kit: float) -> float:
    general = service_load.general_va(job.floor_area_ft2, 2.0, 1.0, job.first_appliances_va)
    after = paper.step(
        "G = min(3 * a + 1500 * 3 + p, 8000) + 0.40 * max(3 * a + 1500 * 3 + p - 8000, 0)",
        EXISTING_DWELLING, "VA", service_load.existing_general_va(general), a=job.floor_area_ft2,
        p=job.first_appliances_va,
        what="General load after the demand step, appliances guessed")
    unit = paper.step("u = 20 * n / 36000", PRACTICE, "A",
                      UNIT_A_PER_BTUH * job.first_nominal_btuh, n=job.first_nominal_btuh,
                      what="Current of an outdoor unit of that size")
    amps = paper.step("I = G / 240 + u + 4.5 + 1000 * k / 240", EXISTING_DWELLING, "A",
                      after / VOLTS + unit + BLOWER_A + 1000 * kit / VOLTS, G=after, u=unit,
                      k=kit, what="With unit, blower and kit together: they run together")
    return paper.give("first_service_a", amps, Spread(SUM_OFF_A, SUM_OFF_A, False, PRACTICE))


def _verdicts(job: Readings, paper: Paper, *, share: float, short: float, kit: float,
              amps: float, load: float) -> None:
    if job.hp_points is not None:
        paper.verdict("unit", "fine", "A unit is chosen: its numbers stand under Heat pump "
                      "against the home.", source=ARITHMETIC)
    else:
        paper.verdict(
            "unit", "fine" if short <= KITS_KW[-1] else "look",
            "A unit of {size} would cover {share} of the design load; a kit of {kit} would make "
            "the rest." if short <= KITS_KW[-1] else
            "A unit of {size} would cover {share} of the design load, and no usual kit makes the "
            "rest.", source=LOAD_LINE,
            do="" if short <= KITS_KW[-1] else
            "Seal the ducts and close the shell first, then look again.",
            size=Quantity(job.first_nominal_btuh, "Btu/h", 0), share=Quantity(share, "%", 0),
            kit=Quantity(kit, "kW", 0))
    _panel(job, paper, amps)
    _crossover(job, paper)
    if job.cabinet_width_in is None:
        paper.limit(
            "closet", job.closet_width_in, at_least=CABINET_IN, of="closet_width_in",
            source=USUAL_UNIT, beyond="look",
            fine="The closet is {value} wide: usual cabinets of that size go in.",
            look="The closet is {value} wide; usual cabinets of that size ask for {limit}.",
            do="Look for a narrow cabinet before anything is promised.")
    if job.furnace_input_btuh is not None:
        furnace = job.furnace_input_btuh if job.heating_fuel == "electric" else \
            FURNACE_PCT / 100 * job.furnace_input_btuh
        paper.limit(
            "furnace", furnace, at_least=FURNACE_SHORT * load, unit="Btu/h", decimals=0,
            source=PRACTICE, beyond="look",
            fine="The old furnace makes {value}: the load found here can be true.",
            look="The old furnace makes only {value}, and {asked} are asked for here: either the "
                 "home was cold, or the load is too high.",
            do="Ask whether it kept up in the coldest nights, and look at the insulation.",
            asked=Quantity(load, "Btu/h", 0))


def _panel(job: Readings, paper: Paper, amps: float) -> None:
    signs = "licensed electrician"
    if job.appliances is not None:
        paper.verdict("panel", "fine", "The appliances are listed: the sum stands under Service "
                      "and panel.", source=EXISTING_DWELLING)
        return
    paper.limit(
        "panel", amps, at_most=job.main_breaker_a, of="first_service_a",
        source=EXISTING_DWELLING, beyond="look", best="look", signs=signs,
        fine="Service of {limit}: about {value} with unit and kit. List the appliances to be sure.",
        look="Service of {limit}: about {value} with unit and kit, appliances guessed.",
        do="List the appliances by their plates before you quote: a smaller kit, controls or a "
           "new service may be part of the job.")


def _crossover(job: Readings, paper: Paper) -> None:
    if job.sections == "single":
        paper.verdict("crossover", "fine", "One section: no crossover is needed.",
                      source=PRACTICE)
    elif job.trunks is not None:
        paper.verdict("crossover", "fine", "The trunks are measured: the choice stands under "
                      "Which crossover.", source=PRACTICE)
    else:
        text, do = {
            "not looked": ("Nobody has looked whether a crossover is there.",
                           "Look before anything is promised: the far half may get no air."),
            "none": ("No crossover: the far half gets no air from the closet.",
                     "Plan one, and measure both trunks."),
            "slot": ("A shallow slot feeds the far half: it seldom passes enough for a heat pump.",
                     "Measure it and both trunks before you promise even heat."),
            "round": ("A round crossover is there.",
                      "Inspect it along its whole length and measure it."),
        }[job.crossover_found]
        paper.verdict("crossover", "look", text, source=PRACTICE, do=do)


def figure(sheet: Sheet) -> str:
    """What is asked for on the design night beside what a usual unit makes."""
    load, made = sheet.drawn["load"], sheet.drawn["made"]
    assert isinstance(load, float)
    assert isinstance(made, float)
    return drawing.bars(
        "first-look", "The design night, before a unit is chosen",
        [("the home asks for", load), ("a usual unit makes", made)], "Btu/h",
        head="on the design night", keep_order=True, system=sheet.system,
    ).figure("What is between the two is left for a backup kit.")
