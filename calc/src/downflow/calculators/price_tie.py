"""Where the two ways of heating cost the same.

Prices move. This page gives no promise but the line on which old fuel and new electricity
tie: above it one is cheaper, below it the other. Cost is per million Btu handed to the
ducts, so that furnaces, kits and heat pumps stand on one scale.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import cost
from downflow.sources import ARITHMETIC, PRACTICE, UNITS, Source

CALCULATOR = Calculator(
    id="price-tie",
    title="Price of heat, and where it ties",
    phase="prove",
    question="At which prices do the old fuel and the heat pump cost the same?",
    reads=("heating_fuel", "furnace_efficiency_pct", "electricity_usd_kwh", "season_cop"),
    may_read=("propane_usd_gal", "gas_usd_therm", "oil_usd_gal", "installed_usd", "rebate_usd",
              "year_cost_before_usd", "year_cost_after_usd", "price_year", "grid_co2_lb_mwh",
              "delivery_before_pct", "delivery_efficiency_pct"),
    gives=("break_even_cop", "hp_mmbtu_usd", "fuel_mmbtu_usd", "kit_mmbtu_usd",
           "tie_electric_usd_kwh", "tie_fuel_usd", "payback_years", "tie_grid_lb_mwh"),
)

TIE = Source("Equal cost per heat handed over", "", "definition")
FUEL_CO2 = Source("40 CFR 98 subpart C", "table C-1", "regulation")
ROWS = {"propane": "propane", "gas": "natural gas", "oil": "heating oil no. 2",
        "electric": "electricity"}
PRICES = {"propane": "propane_usd_gal", "gas": "gas_usd_therm", "oil": "oil_usd_gal",
          "electric": "electricity_usd_kwh"}
UNIT = {"propane": "$/gal", "gas": "$/therm", "oil": "$/gal", "electric": "$/kWh"}


def solve(job: Readings, paper: Paper) -> None:
    fuel = job.heating_fuel
    content = next(float(r.heat_content_btu) for r in tables.rows("fuels") if r.fuel == ROWS[fuel])
    efficiency = job.furnace_efficiency_pct / 100
    job.refuse_unless(fuel != "electric" or job.furnace_efficiency_pct >= 95,
                      "furnace_efficiency_pct", "electric resistance gives all its power as "
                      "heat. Is the old heat really electric?")
    plain = paper.step("cr = pe / 3412.142 * 1e6", UNITS, "$/MMBtu",
                       cost.electric_heat_cost_mmbtu(job.electricity_usd_kwh, 1.0),
                       pe=job.electricity_usd_kwh, what="Heat from plain electric backup")
    pump = paper.step("ch = cr / k", TIE, "$/MMBtu",
                      cost.electric_heat_cost_mmbtu(job.electricity_usd_kwh, job.season_cop),
                      cr=plain, k=job.season_cop, what="Heat from the heat pump, over the season")
    tied = paper.step(
        "pt = pe * H * e / 100 / (3412.142 * k)", TIE, UNIT[fuel],
        cost.tie_fuel_price(job.electricity_usd_kwh, content, efficiency, job.season_cop),
        pe=job.electricity_usd_kwh, H=content, e=job.furnace_efficiency_pct, k=job.season_cop,
        what="Fuel price at which both cost the same")
    paper.give("kit_mmbtu_usd", plain)
    paper.give("hp_mmbtu_usd", pump)
    paper.give("tie_fuel_usd", tied)
    price = getattr(job, PRICES[fuel])
    if price is not None:
        old = paper.step("cf = pf / (H * e / 100) * 1e6", TIE, "$/MMBtu",
                         cost.fuel_heat_cost_mmbtu(price, content, efficiency),
                         pf=price, H=content, e=job.furnace_efficiency_pct,
                         what="Heat from the old fuel")
        even = paper.step("kb = cr / cf", TIE, "",
                          cost.break_even_cop(job.electricity_usd_kwh, price, content, efficiency),
                          cr=plain, cf=old, what="Heat per electricity at which both tie")
        electric = paper.step(
            "pte = cf * 3412.142 * k / 1e6", TIE, "$/kWh",
            cost.tie_electric_price(price, content, efficiency, job.season_cop),
            cf=old, k=job.season_cop, what="Electricity price at which both cost the same")
        paper.give("fuel_mmbtu_usd", old)
        paper.give("break_even_cop", even)
        paper.give("tie_electric_usd_kwh", electric)
        paper.limit(
            "above-the-tie", job.season_cop, at_least=even, of="season_cop", source=TIE,
            beyond="look",
            fine="At these prices a unit of heat costs less from the heat pump: it needs {limit} "
                 "units of heat per unit of electricity, and the season brings {value}.",
            look="At these prices a unit of heat costs more from the heat pump: it needs {limit} "
                 "units of heat per unit of electricity, and the season brings {value}.",
            do="Show the owner the line, not one number. Better ducts move both sides.")
    _emissions(job, paper, fuel, efficiency)
    _payback(job, paper)
    if job.price_year is not None:
        guessed = "estimated" in _origins(job)
        paper.verdict("price-age", "look" if guessed else "fine",
                      "Prices are of {year}. Ask again when they are two years old.",
                      source=PRACTICE,
                      do="Ask for the last bill and the last ticket." if guessed else "",
                      year=f"{job.price_year:.0f}")
    paper.draw(content=content, efficiency=efficiency, price=price)


def _origins(job: Readings) -> list[str]:
    return [job.origin("electricity_usd_kwh"), job.origin(PRICES[job.heating_fuel])]


def _emissions(job: Readings, paper: Paper, fuel: str, efficiency: float) -> None:
    if fuel == "electric":
        return
    tie = paper.step("gt = m / (e / 100) * k * 3.412142 * 2.204623", FUEL_CO2, "lb CO2/MWh",
                     cost.pounds(cost.tie_grid_kg_mwh(cost.kg_per_mmbtu(fuel), efficiency,
                                                      job.season_cop)),
                     m=cost.kg_per_mmbtu(fuel), e=job.furnace_efficiency_pct, k=job.season_cop,
                     what="Grid at which both emit the same")
    paper.give("tie_grid_lb_mwh", tie)
    if job.grid_co2_lb_mwh is not None:
        paper.limit("cleaner", job.grid_co2_lb_mwh, at_most=tie, of="tie_grid_lb_mwh",
                    source=FUEL_CO2, beyond="look",
                    fine="With this region's power, {value}, the heat pump emits less.",
                    look="With this region's power, {value}, the heat pump emits more than the "
                         "old fuel did.",
                    do="Do not sell it as the cleaner way here; grids change from year to year.")


def _payback(job: Readings, paper: Paper) -> None:
    if None in (job.installed_usd, job.year_cost_before_usd, job.year_cost_after_usd):
        return
    rebate = job.rebate_usd or 0.0
    saved = job.year_cost_before_usd - job.year_cost_after_usd
    years = cost.payback_years(job.installed_usd, rebate, saved)
    if years is None:
        paper.verdict("payback", "look",
                      "At these prices nothing comes back in a year: {saved}.", source=ARITHMETIC,
                      do="Say so before the owner signs.", saved=Quantity(saved, "$/year", 0))
        return
    paper.give("payback_years", paper.step(
        "y = max(0, P - r) / (cb - ca)", ARITHMETIC, "year", years, P=job.installed_usd,
        r=rebate, cb=job.year_cost_before_usd, ca=job.year_cost_after_usd,
        what="Simple payback: what is paid, over what a year saves",
        note="It leaves out what a new furnace would have cost, and that prices change."))
    paper.verdict("payback", "fine",
                  "Simple payback counts today's prices and nothing else. A worn-out furnace "
                  "would have cost money too.", source=ARITHMETIC)


def figure(sheet: Sheet) -> str:
    """The tie line over electricity and fuel price, with this home's prices marked."""
    job = sheet.job
    content, efficiency = sheet.drawn["content"], sheet.drawn["efficiency"]
    assert isinstance(content, float)
    assert isinstance(efficiency, float)
    fuel, price, season = job.heating_fuel, sheet.drawn["price"], job.season_cop
    here = job.electricity_usd_kwh

    def tie(electric: float, cop: float) -> float:
        return cost.tie_fuel_price(electric, content, efficiency, cop)

    most = max(0.30, 1.3 * here)
    lines = [drawing.Line("plain backup", [(0.0, 0.0), (most, tie(most, 1.0))], "old"),
             drawing.Line("heat pump", [(0.0, 0.0), (most, tie(most, season))], "air")]
    tied = tie(here, season)
    said = [(tied, sheet.text(tied, UNIT[fuel], 2))]
    words = f"At {sheet.text(here, '$/kWh', 3)} the two tie at {said[0][1]}."
    if isinstance(price, float) and fuel != "electric":
        said.append((price, f"today {sheet.text(price, UNIT[fuel], 2)}"))
        words += f" Today's fuel price is {sheet.text(price, UNIT[fuel], 2)}."
    return drawing.chart(
        "price-tie", "Where fuel and electricity tie",
        f"{words} Above the line the heat pump's heat is cheaper.",
        x=("electricity", "$/kWh"), y=("fuel", UNIT[fuel]), lines=lines,
        mark=drawing.Mark(here, said), system=sheet.system,
    ).figure(f"{words} Above the solid line the heat pump is cheaper; above the dashed one even "
             "plain backup is.")
