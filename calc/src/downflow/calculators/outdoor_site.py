"""Where the outdoor unit stands.

High enough for snow and for its own meltwater, far enough from walls for air, from
windows for sleep, and never where its water runs to a walk: defrost water freezes again.
"""

from __future__ import annotations

from downflow import drawing
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts.outdoors import (
    CLEARANCES,
    MELT_PATH,
    OUTDOOR_SUPPORT,
    QUIET_NIGHT,
    ROOF_EDGE,
    SNOW_HEIGHT,
    SOUND_DISTANCE,
)
from downflow.physics import condensate, outdoor_site
from downflow.sources import ARITHMETIC, GEOMETRY

CALCULATOR = Calculator(
    id="outdoor-site",
    title="Site of the outdoor unit",
    phase="fit",
    question="How high, how far, and where does its water run?",
    reads=("snow_in", "unit_base_in", "site_clearances", "roof_drip", "sound_power_dba",
           "sound_walls", "neighbor_ft", "window_ft", "quiet_dba", "melt_way", "melt_area_ft2",
           "walk_ft", "melt_gal_day"),
    gives=("base_height_in", "neighbor_dba", "window_dba", "quiet_distance_ft", "melt_ice_in"),
)

METER_FT = 0.3048
NEAR_WALK_FT = 10.0
FACTORS = {"open": 2.0, "wall": 4.0, "corner": 8.0}


def solve(job: Readings, paper: Paper) -> None:
    height = paper.step("H = s + 3", SNOW_HEIGHT, "in", outdoor_site.base_height_in(job.snow_in),
                        s=job.snow_in, what="Height that the unit's bottom needs")
    factor = FACTORS[job.sound_walls]
    paper.lookup("Share of space that the sound goes into", SOUND_DISTANCE, "", factor,
                 row=[("open ground", 2.0), ("one wall", 4.0), ("corner", 8.0)])
    levels = {}
    for name, label in (("neighbor", "the neighbour's window"), ("window", "the bedroom window")):
        feet = getattr(job, f"{name}_ft")
        levels[name] = paper.step(
            "L = W + 10 * log10(k / (4 * pi * (0.3048 * r) ** 2))", SOUND_DISTANCE, "dB(A)",
            outdoor_site.pressure_from_power_db(job.sound_power_dba, METER_FT * feet, factor),
            W=job.sound_power_dba, k=factor, r=feet, what=f"Sound at {label}")
    quiet = paper.step(
        "R = sqrt(k / (4 * pi) * 10 ** ((W - N) / 10)) / 0.3048", SOUND_DISTANCE, "ft",
        outdoor_site.quiet_distance_m(job.sound_power_dba, job.quiet_dba, factor) / METER_FT,
        k=factor, W=job.sound_power_dba, N=job.quiet_dba,
        what="Distance at which the allowed level is reached")
    pounds = paper.step("m = 8.337 * g", ARITHMETIC, "lb",
                        condensate.WATER_LB_GAL * job.melt_gal_day, g=job.melt_gal_day,
                        what="Defrost water of a wet cold day")
    ice = paper.step("i = 12 * m / (57.2 * a)", GEOMETRY, "in",
                     outdoor_site.ice_depth_in(pounds, job.melt_area_ft2), m=pounds,
                     a=job.melt_area_ft2, what="Ice that it makes on the patch it wets")
    paper.give("base_height_in", height)
    paper.give("neighbor_dba", levels["neighbor"])
    paper.give("window_dba", levels["window"])
    paper.give("quiet_distance_ft", quiet)
    paper.give("melt_ice_in", ice)
    _stands(job, paper, height)
    _sounds(job, paper, levels, quiet)
    _water(job, paper, ice)


def _stands(job: Readings, paper: Paper, height: float) -> None:
    paper.limit("above-ground", job.unit_base_in, at_least=outdoor_site.DRAIN_RISE_IN, unit="in",
                decimals=0, source=OUTDOOR_SUPPORT,
                fine="Defrost water can leave from under it.",
                hold="The unit's bottom is {value} above the ground; {limit} is the least, so that "
                     "defrost water can leave.",
                do="Raise it before it runs in winter.")
    paper.limit("above-snow", job.unit_base_in, at_least=height, of="base_height_in",
                source=SNOW_HEIGHT, beyond="look",
                fine="It stands above the usual snow.",
                look="The unit's bottom is {value} above the ground; with the usual snow {limit} "
                     "are needed.",
                do="Take a higher stand, or the owner clears snow after every fall.")
    tight = [r for r in job.site_clearances if r["have_in"] < r["need_in"]]
    worst = min(job.site_clearances, key=lambda r: r["have_in"] - r["need_in"])
    paper.limit("clearances", worst["have_in"], at_least=worst["need_in"], unit="in", decimals=0,
                source=CLEARANCES,
                fine="Every side has the air that the data sheet asks for.",
                hold="Too close: {sides}. The tightest has {value} and needs {limit}.",
                do="Move the unit or what stands beside it.",
                sides=", ".join(r["id"] for r in tight) or worst["id"])
    paper.verdict("roof", "look" if job.roof_drip else "fine",
                  "Roof water or sliding snow falls on it." if job.roof_drip else
                  "Nothing falls on it from the roof.", source=ROOF_EDGE,
                  do="Move it, or lead the roof's water away and hold the snow." if job.roof_drip
                  else "")


def _sounds(job: Readings, paper: Paper, levels: dict[str, float], quiet: float) -> None:
    paper.limit("neighbour", levels["neighbor"], at_most=job.quiet_dba, of="neighbor_dba",
                source=QUIET_NIGHT, beyond="look",
                fine="At the neighbour's window it stays below the level for the night.",
                look="At the neighbour's window {value}, and {limit} are allowed at night; that is "
                     "reached {far} away.",
                do="Stand it elsewhere, or take a unit with a quieter night speed. Ask the town "
                   "for its rule.", far=Quantity(quiet, "ft", 0))
    paper.limit("bedroom", levels["window"], at_most=job.quiet_dba, of="window_dba",
                source=QUIET_NIGHT, beyond="look",
                fine="At the bedroom window it stays below the level for the night.",
                look="At the bedroom window {value}; above {limit} people notice it at night.",
                do="Let the owner hear such a unit, or stand it elsewhere.")


def _water(job: Readings, paper: Paper, ice: float) -> None:
    words = {
        "walk": ("hold", "Defrost water runs toward a walk. On a wet cold day it lays {ice} of ice "
                 "there.", "Move the unit, or lead the water into gravel away from every walk, "
                 "before the first frost."),
        "home": ("hold", "Defrost water runs under the home: ice at the piers, water in the crawl "
                 "space.", "Slope the ground away from the home."),
        "yard": ("look" if job.walk_ft < NEAR_WALK_FT else "fine",
                 "Defrost water runs over the yard and freezes there, {ice} on a wet cold day."
                 + (" A walk is near." if job.walk_ft < NEAR_WALK_FT else ""),
                 "Look at the ice in the first cold spell; a bed of gravel takes it."),
        "gravel": ("fine", "Defrost water sinks into gravel away from walks.",
                   "Keep the gravel open: ice builds up from below."),
    }
    level, text, do = words[job.melt_way]
    paper.verdict("melt-path",
                  "hold" if level == "hold" else "look" if level == "look" else "fine", text,
                  source=MELT_PATH, do=do, safety=True, ice=Quantity(ice, "in", 1))


def figure(sheet: Sheet) -> str:
    """The unit on its stand, with snow, base height and water."""
    job, need = sheet.job, sheet.values["base_height_in"]
    scale = 110 / max(36.0, job.unit_base_in + 12, job.snow_in + 12)
    ground = 236.0
    base, snow = ground - job.unit_base_in * scale, ground - job.snow_in * scale
    d = drawing.Drawing(
        "outdoor-site", "The outdoor unit on its stand",
        f"Its bottom is {sheet.text(job.unit_base_in, 'in', 0)} above the ground; "
        f"{sheet.text(need, 'in', 0)} are needed over {sheet.text(job.snow_in, 'in', 0)} of snow. "
        f"Sound at the bedroom window {sheet.text(sheet.values['window_dba'], 'dB(A)', 0)}, at the "
        f"neighbour's {sheet.text(sheet.values['neighbor_dba'], 'dB(A)', 0)}.", 300)
    if job.snow_in > 0:
        d.hatch_area([(10, snow), (330, snow), (330, ground), (10, ground)], "filter")
        d.line(10, snow, 330, snow, "g")
        d.text(2, snow - 6, f"snow {sheet.text(job.snow_in, 'in', 0)}", "halo")
    d.line(10, ground, 330, ground, "o")
    d.rect(106, base - 104, 106, 104, "of").circle(159, base - 54, 34, "if")
    d.line(118, base, 118, ground, "o").line(200, base, 200, ground, "o")
    d.dimension(262, base, 262, ground, sheet.text(job.unit_base_in, "in", 0), extend=-30)
    d.hatch(118, ground, 82, 10, "water")
    d.balloon(1, 159, ground + 34, to=(159, ground + 6))
    d.line(240, ground - need * scale, 330, ground - need * scale, "w")
    d.text(334, ground - need * scale - 6, f"needs {sheet.text(need, 'in', 0)}", "b e halo")
    return d.figure(legend=[f"defrost water: {sheet.text(sheet.values['melt_ice_in'], 'in', 1)} "
                            "of ice on a wet cold day"])
