"""Cooling load on the design afternoon, sensible and latent.

The simplified residential method of the handbook: each surface has a factor for sun, for
temperature difference and for the cool of the night; windows take the sun by side, shade
and screen; people and appliances add; the ducts gain. Thin air carries less of both heats.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Quantity, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.envelope import RLF, RLF_ACCURACY
from downflow.physics import air, cooling_load, moist_air
from downflow.sources import GEOMETRY, PRACTICE, SENSIBLE_HEAT, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="cooling-load",
    title="Cooling load",
    phase="survey",
    question="How much cooling does the home need on a hot afternoon, and how much of it dries?",
    reads=("floor_area_ft2", "home_perimeter_ft", "ceiling_height_ft", "window_area_ft2",
           "door_area_ft2", "wall_u_btuh_ft2_f", "ceiling_u_btuh_ft2_f", "floor_u_btuh_ft2_f",
           "window_u_btuh_ft2_f", "door_u_btuh_ft2_f", "infiltration_cooling_cfm",
           "design_cooling_f", "design_cooling_wb_f", "indoor_cooling_f", "daily_range_f",
           "latitude_deg", "elevation_ft", "bedrooms", "roof_kind", "roof_form",
           "interior_shade", "duct_state"),
    may_read=("windows_by_side", "window_kind"),
    gives=("cooling_design_btuh", "cooling_sensible_btuh", "cooling_latent_btuh",
           "cooling_sensible_share"),
)

INDOOR_HUMIDITY_PCT = 50.0
SHADE_CLOSED = 0.5
METHOD_OFF = 0.15
SHGC_UNKNOWN = 0.66
EVEN = ("N", "E", "S", "W")


def solve(job: Readings, paper: Paper) -> None:
    job.refuse_unless(job.design_cooling_wb_f <= job.design_cooling_f, "design_cooling_wb_f",
                      "a wet bulb is never above the dry bulb.")
    driest = moist_air.driest_wet_bulb_f(job.design_cooling_f, air.pressure_psia(job.elevation_ft))
    job.refuse_unless(job.design_cooling_wb_f >= driest, "design_cooling_wb_f",
                      "is lower than even bone-dry air would show.")
    job.refuse_unless(cooling_load.LOWEST_LATITUDE <= job.latitude_deg
                      <= cooling_load.HIGHEST_LATITUDE, "latitude_deg",
                      "the method holds from 20 to 60 degrees north.")
    gross = job.home_perimeter_ft * job.ceiling_height_ft
    job.refuse_unless(job.window_area_ft2 + job.door_area_ft2 < gross, "window_area_ft2",
                      "windows and doors are larger than the outside walls.")
    job.stop_if_refused()
    difference = job.design_cooling_f - job.indoor_cooling_f
    gains = [*_opaque(job, paper, difference, gross), _windows(job, paper, difference)]
    density = paper.step(
        "rho = 144 * 14.696 * (1 - 6.8754e-6 * z) ** 5.2559 / (53.35 * 529.67)",
        STANDARD_ATMOSPHERE, "lb/ft³", air.density_lb_ft3(job.elevation_ft), z=job.elevation_ft,
        what="Density of dry air at 70 °F up here")
    gains.append(("air leaks", paper.step(
        "q = 60 * 0.24 * rho * Q * dT", SENSIBLE_HEAT, "Btu/h",
        cooling_load.air_sensible_btuh(job.infiltration_cooling_cfm, difference, density),
        rho=density, Q=job.infiltration_cooling_cfm, dT=difference,
        what="Sensible heat of outdoor air")))
    people = job.bedrooms + 1
    gains.append(("people and appliances", paper.step(
        "q = 3.412142 * (136 + 2.2 * A * 0.3048 ** 2 + 22 * n)", RLF, "Btu/h",
        cooling_load.internal_sensible_btuh(job.floor_area_ft2, people), A=job.floor_area_ft2,
        n=people, what="People, lights and appliances; bedrooms plus one")))
    inside = paper.total("Sensible gains of the home", RLF, "Btu/h", sum(v for _, v in gains),
                         gains)
    factor = _duct_factor(job)
    paper.lookup("Gain of ducts in the crawl space, share of the load", RLF, "", factor,
                 row=(("leaky ducts, R-4", 0.12), ("sealed ducts, R-4", 0.06)))
    sensible = paper.step("qs = q * (1 + F)", RLF, "Btu/h",
                          cooling_load.with_ducts_btuh(inside, factor), q=inside, F=factor,
                          what="With the ducts' gain on top")
    latent = _latent(job, paper, density, people)
    model = Spread(METHOD_OFF, METHOD_OFF, True, RLF_ACCURACY)
    paper.give("cooling_sensible_btuh", sensible, model)
    paper.give("cooling_latent_btuh", latent, model)
    total = paper.total("Sensible and latent together", RLF, "Btu/h", sensible + latent,
                        [("sensible", sensible), ("latent", latent)])
    paper.give("cooling_design_btuh", total, model)
    if total > 0:
        paper.give("cooling_sensible_share", paper.step(
            "r = qs / (qs + ql)", SENSIBLE_HEAT, "",
            cooling_load.sensible_heat_ratio(sensible, latent), qs=sensible, ql=latent,
            what="Sensible share: how dry the load is"))
    paper.draw(gains=[(n, v) for n, v in [*gains, ("ducts", sensible - inside),
                                          ("moisture", latent)]])
    _verdicts(job, paper, latent)


def _surface(name: str) -> tables.OpaqueFactor:
    return next(r for r in tables.typed("rlf_opaque", tables.OpaqueFactor) if r.surface == name)


def _opaque(job: Readings, paper: Paper, difference: float,
            gross: float) -> list[tuple[str, float]]:
    material, _, colour = job.roof_kind.rpartition(", ")
    alpha = next(r.absorptance for r in tables.typed("roof_absorptance", tables.RoofAbsorptance)
                 if (r.material, r.colour) == (material, colour))
    walls = paper.step("Aw = P * H - Ag - Ad", GEOMETRY, "ft²",
                       gross - job.window_area_ft2 - job.door_area_ft2, P=job.home_perimeter_ft,
                       H=job.ceiling_height_ft, Ag=job.window_area_ft2, Ad=job.door_area_ft2,
                       what="Outside wall without its openings")
    out: list[tuple[str, float]] = []
    for label, area, u, kind, shine in (
            ("ceiling", job.floor_area_ft2, job.ceiling_u_btuh_ft2_f, job.roof_form, alpha),
            ("walls", walls, job.wall_u_btuh_ft2_f, "wall or door in the sun", 0.0),
            ("doors", job.door_area_ft2, job.door_u_btuh_ft2_f, "wall or door in the sun", 0.0),
            ("floor", job.floor_area_ft2, job.floor_u_btuh_ft2_f, "floor over crawl space", 0.0)):
        row = _surface(kind)
        out.append((label, paper.step(
            "q = A * U * (t * dT + 1.8 * (ba * a + b) + r * DR)", RLF, "Btu/h",
            area * cooling_load.opaque_factor_btuh_ft2(u, difference, job.daily_range_f, row,
                                                       shine),
            A=area, U=u, t=row.of_t, dT=difference, ba=row.of_b_alpha_k, a=shine, b=row.of_b_k,
            r=row.of_r, DR=job.daily_range_f, what=f"Through the {label}",
            note="Below zero where the cool of the night is still in it.")))
    return out


def _windows(job: Readings, paper: Paper, difference: float) -> tuple[str, float]:
    shgc = _shgc(job)
    closed = 1.0
    if job.interior_shade != "none":
        closed = next(r.attenuation for r in tables.typed("interior_shading",
                                                          tables.InteriorShading)
                      if r.panes == _panes(job) and r.glazing == "clear"
                      and r.shade == job.interior_shade)
    inside = paper.step("i = 1 + 0.5 * (c - 1)", RLF, "",
                        cooling_load.interior_attenuation(closed, SHADE_CLOSED), c=closed,
                        what="What shades half closed let through")
    sides = job.windows_by_side
    if sides is None:
        sides = [{"side": s, "area_ft2": job.window_area_ft2 / len(EVEN)} for s in EVEN]
    terms: list[tuple[str, float]] = []
    for row in sides:
        side = next(r for r in tables.typed("rlf_window", tables.WindowExposure)
                    if r.exposure == row["side"])
        shaded = 0.0
        if row.get("overhang_ft") and row.get("height_ft"):
            line = cooling_load.shade_line_factor(side, job.latitude_deg)
            shaded = paper.step(
                "F = min(1, max(0, SLF * D / h))", RLF, "",
                cooling_load.shaded_share(line, row["overhang_ft"], 0.0, row["height_ft"]),
                SLF=line, D=row["overhang_ft"], h=row["height_ft"],
                what=f"Share of the {row['side']} windows in the overhang's shade")
        sun = cooling_load.exterior_irradiance_w_m2(
            cooling_load.total_irradiance_w_m2(job.latitude_deg, side.azimuth_from_south_deg),
            cooling_load.diffuse_irradiance_w_m2(job.latitude_deg, side.azimuth_from_south_deg),
            shaded, cooling_load.INSECT_SCREEN)
        factor = cooling_load.window_factor_btuh_ft2(
            job.window_u_btuh_ft2_f, difference, job.daily_range_f, sun, shgc, inside,
            side.solar_load_factor)
        terms.append((f"{row['side']} windows", paper.step(
            "q = A * (U * (dT - 0.46 * DR) + 3.412142 * 0.3048 ** 2 * E * g * i * f)", RLF,
            "Btu/h", row["area_ft2"] * factor, A=row["area_ft2"], U=job.window_u_btuh_ft2_f,
            dT=difference, DR=job.daily_range_f, E=sun, g=shgc, i=inside,
            f=side.solar_load_factor,
            what=f"{row['side']} windows; E is the peak sun past screen and shade, W/m²")))
    total = paper.total("Windows together", RLF, "Btu/h", sum(v for _, v in terms), terms)
    return "windows", total


def _panes(job: Readings) -> int:
    return 1 if job.window_kind is not None and job.window_kind.startswith("single") else 2


def _shgc(job: Readings) -> float:
    if job.window_kind is None:
        return SHGC_UNKNOWN
    glazing, _, frame = job.window_kind.rpartition(", ")
    return next(r.shgc for r in tables.typed("glazing", tables.Glazing)
                if (r.glazing, r.frame) == (glazing, frame))


def _duct_factor(job: Readings) -> float:
    leak = 5 if job.duct_state == "sealed" else 11
    return next(r.loss_factor for r in tables.typed("duct_loss", tables.DuctLoss)
                if (r.leakage_pct_per_side, r.duct_r_ip, r.season) == (leak, 4, "cooling"))


def _latent(job: Readings, paper: Paper, density: float, people: float) -> float:
    pressure = air.pressure_psia(job.elevation_ft)
    outside = moist_air.ratio_from_wet_bulb(job.design_cooling_f, job.design_cooling_wb_f, pressure)
    inside = moist_air.ratio_from_humidity(job.indoor_cooling_f, INDOOR_HUMIDITY_PCT, pressure)
    wet = paper.step(
        "q = 60 * rho * 1076 * Q * max(0, wo - wi)", RLF, "Btu/h",
        cooling_load.air_latent_btuh(job.infiltration_cooling_cfm, outside, inside, density),
        rho=density, Q=job.infiltration_cooling_cfm, wo=outside, wi=inside,
        what="Moisture of outdoor air, over a room at 50 % humidity",
        note="Dry outdoor air brings none.")
    own = paper.step(
        "q = 3.412142 * (20 + 0.22 * A * 0.3048 ** 2 + 12 * n)", RLF, "Btu/h",
        cooling_load.internal_latent_btuh(job.floor_area_ft2, people), A=job.floor_area_ft2,
        n=people, what="Moisture of people, cooking and bathing")
    return paper.total("Latent load", RLF, "Btu/h", wet + own,
                       [("outdoor air", wet), ("the household", own)])


def _verdicts(job: Readings, paper: Paper, latent: float) -> None:
    paper.limit(
        "summer-height", job.elevation_ft, at_most=cooling_load.HIGHEST_FT, of="elevation_ft",
        source=RLF, beyond="look",
        fine="Within the heights that the method was made for.",
        look="At {value} the method is beyond its height of {limit}.",
        do="Take the result as an estimate; nights up here are cold.")
    if job.windows_by_side is None:
        paper.verdict("sides-known", "look",
                      "The windows are spread evenly over four sides. West glass counts nearly "
                      "twice what east glass does.", source=RLF,
                      do="Enter the window area on each side, with overhangs.")
    else:
        area = sum(r["area_ft2"] for r in job.windows_by_side)
        paper.limit(
            "sides-known", abs(area - job.window_area_ft2), at_most=0.1 * job.window_area_ft2 + 5,
            of="window_area_ft2", source=PRACTICE, beyond="look",
            fine="Windows by side add up to all windows.",
            look="Windows by side add up to {sides}, all windows are {all}.",
            do="Measure the sides again.", sides=Quantity(area, "ft²", 0),
            all=Quantity(job.window_area_ft2, "ft²", 0))
    if latent <= 0:
        paper.verdict("dry", "fine", "No moisture to take out.", source=RLF)


def figure(sheet: Sheet) -> str:
    """Gains as bars, largest first; what cools stays out."""
    gains = sheet.drawn["gains"]
    assert isinstance(gains, list)
    shown = [(n, v) for n, v in gains if v > 0]
    total = sheet.values["cooling_design_btuh"]
    return drawing.bars(
        "cooling-load", "Where the heat comes in on the design afternoon", shown, "Btu/h",
        head=f"{sheet.text(total, 'Btu/h', 0)} in all", system=sheet.system,
    ).figure("Shade on the west windows takes more off than anything in the attic.")
