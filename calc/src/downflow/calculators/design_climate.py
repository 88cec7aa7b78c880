"""Design temperatures.

The coldest night that the heating must carry, and the hottest afternoon. Both come from
decades of weather, and the local code prints them. What the place data hold is one
typical year: its cold point only stands in until the code official's value is known.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.place import TMY3, TYPICAL_COLD, TYPICAL_YEAR_NORMALS
from downflow.physics import climate_year, design_climate
from downflow.sources import LOCAL_CODE, PRACTICE, STANDARD_ATMOSPHERE, Source

CALCULATOR = Calculator(
    id="design-climate",
    title="Design temperatures",
    phase="survey",
    question="How cold a night must the heating carry, and how hot an afternoon the cooling?",
    reads=("tmy_p0_4_f",),
    may_read=("elevation_ft", "station_elevation_ft", "station_miles", "tmy_p99_f",
              "tmy_mcwb_f", "monthly_means", "degree_days_65"),
    gives=("design_heating_f", "design_cooling_f", "design_cooling_wb_f",
           "months_degree_days_65"),
)

MONTHS_METHOD = Source("Erbs, Klein and Beckman, ASHRAE Journal 25(6), 1983",
                       "degree days from monthly means", "study")
STATION_PAIRS = Source("TMY3 station pairs", "506 pairs up to 100 miles apart in nine mountain "
                       "states", "data")

FAR_ABOVE_FT = 1000.0
CODE_NEAR_STATION_F = 15.0
MONTHS_AGREE_SHARE = 0.20
MONTHS_AGREE_LEAST = 650.0
MONTHS_SPREAD = Spread(0.05, 0.05, True, MONTHS_METHOD)
MONTH_NAMES = ("January", "February", "March", "April", "May", "June", "July", "August",
               "September", "October", "November", "December")


def solve(job: Readings, paper: Paper) -> None:
    both_heights = job.elevation_ft is not None and job.station_elevation_ft is not None
    home_ft = float(job.elevation_ft) if both_heights else 0.0
    station_ft = float(job.station_elevation_ft) if both_heights else 0.0
    if job.tmy_p99_f is not None:
        job.refuse_unless(job.tmy_p99_f > job.tmy_p0_4_f, "tmy_p99_f",
                          "must be warmer than the cold point. Are the two swapped?")
        if job.tmy_mcwb_f is not None:
            job.refuse_unless(job.tmy_mcwb_f <= job.tmy_p99_f, "tmy_mcwb_f",
                              "a wet bulb is never above the dry bulb.")

    heating = design_climate.heating_design_f(job.tmy_p0_4_f, home_ft, station_ft)
    if both_heights:
        paper.step("td = tp - 0.00356616 * max(0, z - zs)", STANDARD_ATMOSPHERE, "°F", heating,
                   tp=job.tmy_p0_4_f, z=home_ft, zs=station_ft,
                   what="Cold point of the typical year, brought up to the home",
                   note="Colder where the home is higher. Where it is lower nothing is credited: "
                        "cold air settles in valleys.")
    else:
        paper.lookup("Cold point of the typical year, as at the station", TMY3, "°F", heating,
                     row=(("99.6 % of hours are warmer than", job.tmy_p0_4_f),))
    share = design_climate.carried_share(job.station_miles, home_ft, station_ft)
    paper.give("design_heating_f", heating, _carried(
        share, design_climate.HEATING_BELOW_F, design_climate.HEATING_ABOVE_F))
    _cooling(job, paper, home_ft, station_ft, both_heights, share)
    _months(job, paper)
    _code_verdicts(job, paper, heating)
    if both_heights:
        paper.limit(
            "station-height", abs(home_ft - station_ft), at_most=FAR_ABOVE_FT, of="elevation_ft",
            source=PRACTICE, beyond="look",
            fine="Home and climate station stand at nearly one height.",
            look="Home and climate station are {value} apart in height. Their winters can differ "
                 "by more than the range shown.",
            do="Look for a station nearer in height, even if it is farther off.")
    paper.draw(heating=heating)


def _carried(share: float, below_f: float, above_f: float) -> Spread | None:
    if share == 0:
        return None
    return Spread(share * below_f, share * above_f, False, STATION_PAIRS)


def _cooling(job: Readings, paper: Paper, home_ft: float, station_ft: float,
             both_heights: bool, share: float) -> None:
    if job.tmy_p99_f is None:
        return
    cooling = design_climate.cooling_design_f(job.tmy_p99_f, home_ft, station_ft)
    if both_heights:
        paper.step("tc = th - 0.00356616 * (z - zs)", STANDARD_ATMOSPHERE, "°F", cooling,
                   th=job.tmy_p99_f, z=home_ft, zs=station_ft,
                   what="Hot point of the typical year, brought to the home's height")
    else:
        paper.lookup("Hot point of the typical year, as at the station", TMY3, "°F", cooling,
                     row=(("1 % of hours are hotter than", job.tmy_p99_f),))
    model = _carried(share, design_climate.COOLING_F, design_climate.COOLING_F)
    paper.give("design_cooling_f", cooling, model)
    if job.tmy_mcwb_f is not None:
        # A home far above its station may come out with less dry bulb than wet.
        paper.give("design_cooling_wb_f", min(job.tmy_mcwb_f, cooling), model)


def _months(job: Readings, paper: Paper) -> None:
    if job.monthly_means is None:
        return
    means = [row["mean_f"] for row in job.monthly_means]
    yearly = climate_year.yearly_spread_f(means)
    days = [climate_year.heating_degree_days(65.0, mean,
                                             climate_year.monthly_spread_f(mean, yearly), count)
            for mean, count in zip(means, climate_year.DAYS_OF_MONTH, strict=True)]
    year = paper.total("Degree days worked out from the monthly means", MONTHS_METHOD, "°F day",
                       sum(days), tuple(zip(MONTH_NAMES, days, strict=True)),
                       note="A second road, to see whether months and degree days belong "
                            "together.")
    paper.give("months_degree_days_65", year, MONTHS_SPREAD)
    if not job.degree_days_65:
        return
    paper.limit(
        "months-belong", abs(year - job.degree_days_65),
        at_most=max(MONTHS_AGREE_SHARE * job.degree_days_65, MONTHS_AGREE_LEAST),
        of="degree_days_65", source=TYPICAL_YEAR_NORMALS, beyond="look",
        fine="Monthly means and degree days tell of one climate.",
        look="Degree days from the monthly means come to {months}, those entered are {entered}. "
             "They are not of one place or one convention.",
        do="Take both from one station.",
        months=Quantity(year, "°F day", 0), entered=Quantity(job.degree_days_65, "°F day", 0))


def _code_verdicts(job: Readings, paper: Paper, heating: float) -> None:
    colder, warmer = Quantity(4, "°F diff", 0), Quantity(9, "°F diff", 0)
    if job.origin("design_heating_f") == "data sheet":
        paper.verdict("code-value", "fine", "The local code's winter design temperature is "
                      "entered, and it counts.", source=LOCAL_CODE)
    else:
        paper.verdict(
            "code-value", "look",
            "The design temperature is not the local code's. A typical year's cold point is no "
            "design temperature: at 31 stations the published one lay between {colder} colder "
            "and {warmer} warmer.", source=TYPICAL_COLD,
            do="Ask the code official for the winter design temperature, and enter it as from "
               "a data sheet. It wins over this estimate.", colder=colder, warmer=warmer)
    if job.origin("design_heating_f"):
        paper.limit(
            "code-near-station", abs(job.design_heating_f - heating),
            at_most=CODE_NEAR_STATION_F, unit="°F diff", decimals=0, source=PRACTICE,
            beyond="look",
            fine="The value entered and the station agree about the kind of winter.",
            look="The value entered, {entered}, is {value} away from what the station suggests.",
            do="Check the station and its height, and the entered value with the code official.",
            entered=Quantity(job.design_heating_f, "°F", 0))


def figure(sheet: Sheet) -> str:
    """The twelve months between the design temperatures; without months, the estimate alone."""
    heating = sheet.values["design_heating_f"]
    low = sheet.low.get("design_heating_f", heating)
    high = sheet.high.get("design_heating_f", heating)
    months = sheet.job.monthly_means
    if months is None:
        return drawing.rule("design-climate", "Heating design temperature", heating, "°F",
                            low=low, high=high, decimals=0, system=sheet.system).figure()
    points = [(float(row["month"]), float(row["mean_f"])) for row in months]
    lines = [drawing.Line("monthly mean", points),
             drawing.Line("heating design", [(1.0, heating), (12.0, heating)], "limit")]
    coldest = min(points, key=lambda p: p[1])
    warmest = max(points, key=lambda p: p[1])
    desc = (f"Monthly means run from {sheet.text(coldest[1], '°F', 0)} in "
            f"{MONTH_NAMES[int(coldest[0]) - 1]} to {sheet.text(warmest[1], '°F', 0)} in "
            f"{MONTH_NAMES[int(warmest[0]) - 1]}. The heating design temperature is "
            f"{sheet.text(heating, '°F', 0)}")
    cooling = sheet.values.get("design_cooling_f")
    if cooling is not None:
        lines.append(drawing.Line("cooling design", [(1.0, cooling), (12.0, cooling)], "old"))
        desc += f", the cooling design temperature {sheet.text(cooling, '°F', 0)}"
    return drawing.chart(
        "design-climate", "Monthly means between the design temperatures", desc + ".",
        x=("month", "month"), y=("outdoors", "°F"), lines=lines, system=sheet.system,
        zero=False).figure("The design night lies far below the coldest month's mean.")
