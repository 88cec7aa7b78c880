"""When to change the filter.

Dust settles on the filter until its loss has eaten the fan's reserve. How fast depends on the
dust in this home, which nobody measures: the answer is an estimate, and its range is wide.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.physics import airflow_reading, ducts
from downflow.sources import ARITHMETIC, FILTER_TESTS, PRACTICE
from downflow.sources import DATA_SHEET as SHEET

CALCULATOR = Calculator(
    id="filter-change",
    title="When to change the filter",
    phase="hand-over",
    question="About how many days does this filter last here?",
    reads=("filters", "filter_planned", "filter_holds_g", "filter_catches_pct", "dust_mg_m3",
           "fan_hours_per_day", "supply_airflow_cfm", "pressure_external_inwc",
           "pressure_reserve_inwc", "drop_filter_inwc"),
    gives=("filter_days", "filter_most_inwc"),
)

SHORTEST_DAYS = 30.0


def solve(job: Readings, paper: Paper) -> None:
    row = next((f for f in job.filters if f["kind"] == job.filter_planned), job.filters[0])
    job.refuse_unless(row["loaded_inwc"] > row["clean_inwc"], "filters[0].loaded_inwc",
                      "must be above the clean loss.")
    job.refuse_unless(job.fan_hours_per_day > 0, "fan_hours_per_day",
                      "must be above zero: a fan that never runs loads no filter.")
    job.stop_if_refused()
    power = ducts.FILTER_MEDIA_EXPONENT
    clean = paper.step(
        "c = p * (Q / a) ** (1 / 0.85)", FILTER_TESTS, "in w.c.",
        ducts.scaled_drop_inwc(row["clean_inwc"], row["at_cfm"], job.supply_airflow_cfm, power),
        p=row["clean_inwc"], Q=job.supply_airflow_cfm, a=row["at_cfm"],
        what="Loss of the clean filter at this airflow, in the table's air")
    loaded = paper.step(
        "l = p * (Q / a) ** (1 / 0.85)", FILTER_TESTS, "in w.c.",
        ducts.scaled_drop_inwc(row["loaded_inwc"], row["at_cfm"], job.supply_airflow_cfm, power),
        p=row["loaded_inwc"], Q=job.supply_airflow_cfm, a=row["at_cfm"],
        what="Loss of the loaded filter")
    most = paper.step("m = c + r", ARITHMETIC, "in w.c.", clean + job.pressure_reserve_inwc,
                      c=clean, r=job.pressure_reserve_inwc,
                      what="Loss at which the fan gives way: the clean loss and its reserve")
    usable = paper.step(
        "s = min(1, max(0, (m - c) / (l - c)))", FILTER_TESTS, "",
        airflow_reading.usable_dust_share(clean, loaded, most), m=most, c=clean, l=loaded,
        what="Share of its dust that may settle before that")
    days = paper.step(
        "d = s * g / (u / 1000 * Q * 0.0283168466 * 60 * h * e / 100)", PRACTICE, "day",
        airflow_reading.filter_days(job.filter_holds_g, job.dust_mg_m3,
                                    job.filter_catches_pct / 100, job.supply_airflow_cfm,
                                    job.fan_hours_per_day, usable),
        s=usable, g=job.filter_holds_g, u=job.dust_mg_m3, Q=job.supply_airflow_cfm,
        h=job.fan_hours_per_day, e=job.filter_catches_pct, what="Days until then")
    paper.give("filter_days", days)
    paper.give("filter_most_inwc", most)
    paper.limit(
        "not-too-soon", days, at_least=SHORTEST_DAYS, of="filter_days", source=PRACTICE,
        beyond="look",
        fine="Longer than a month.",
        look="About {value}: nobody changes a filter that often.",
        do="Take the deep cabinet, or a larger face.")
    paper.verdict(
        "once-a-year", "fine",
        "By dust alone about {days}, an estimate: look after a month, write the interval on the "
        "label, and change it once a year all the same.", source=PRACTICE,
        days=Quantity(days, "day", 0))
    paper.limit(
        "reserve-for-dirt", most, at_least=loaded, of="filter_most_inwc", source=SHEET,
        beyond="look",
        fine="The fan can stand the filter until it is fully loaded.",
        look="The fan gives way at {value}, before the filter is loaded at {limit}.",
        do="Change it by the date above, not by its look; or open the path.")


def figure(sheet: Sheet) -> str:
    """The interval on a rule."""
    return drawing.rule(
        "filter-change", "Days until the filter is due", sheet.values["filter_days"], "day",
        low=sheet.low.get("filter_days"), high=sheet.high.get("filter_days"), decimals=0,
        system=sheet.system,
    ).figure("An estimate: look after a month.")
