"""The shell of the home: how large its surfaces are, and how well each holds heat.

What is seen counts; what has not been seen stands in by the date of construction, with a
range as wide as those years built. Framing is a second path beside the insulation.
Squeezed insulation keeps a share of its printed R, and an open belly is a hole in it.
"""

from __future__ import annotations

from downflow import drawing, tables
from downflow.calculators import Calculator, Paper, Readings, Sheet
from downflow.facts import Spread
from downflow.facts.envelope import (
    ENVELOPE_BY_DATE,
    GLAZING,
    HUD_COMPRESSED,
    HUD_FRAMING,
    HUD_SHORTS,
    LAYERS,
    PARALLEL_PATH,
    WIDTH_BY_SECTIONS,
    WINDOW_SHARE,
)
from downflow.physics import heat_loss
from downflow.sources import ARITHMETIC, GEOMETRY, UNITS

CALCULATOR = Calculator(
    id="shell",
    title="The shell and its insulation",
    phase="survey",
    question="How large are the home's surfaces, and how well does each hold heat?",
    reads=("floor_area_ft2", "sections", "year_built", "wall_stud_in", "belly_open_pct"),
    may_read=("home_width_ft", "wall_insulation_r", "wall_batt_in", "ceiling_insulation_r",
              "ceiling_insulation_in", "ceiling_eave_in", "ceiling_fill", "floor_insulation_r",
              "window_kind", "uo_zone"),
    gives=("wall_u_btuh_ft2_f", "ceiling_u_btuh_ft2_f", "floor_u_btuh_ft2_f",
           "window_u_btuh_ft2_f", "door_u_btuh_ft2_f", "home_perimeter_ft", "window_area_ft2",
           "door_area_ft2"),
)

WIDTH_FT = {"single": 15.0, "double": 27.0, "triple": 40.0}
WIDTH_SHARE_OFF = 0.06
WINDOW_SHARE_OF_FLOOR = 0.12
WINDOW_SHARE_OFF = 0.25
DOORS_FT2 = 38.0
DOORS_OFF_FT2 = 8.0
EAVE_SHARE = 0.15
CHORD_IN = 2.5
JOIST_IN = 5.5
BATT_R_PER_IN = 3.2
METHOD_SHARE = 0.06
W_M2K_PER_IP = 5.678263337
PLACE_BY_ZONE = {"1": 0.75, "2": 0.50, "3": 0.25}
"""Where in the years' band a home lies: each thermal zone was built to a limit of its own."""
PARTS = ("wall", "ceiling", "floor", "window", "door")


def solve(job: Readings, paper: Paper) -> None:
    width = job.home_width_ft
    if width is not None:
        job.refuse_unless(job.floor_area_ft2 / width >= width, "home_width_ft",
                          "is more than the length that the floor area leaves. Are width and "
                          "length swapped?")
    else:
        width = paper.lookup("Usual width of a home of this many sections", WIDTH_BY_SECTIONS,
                             "ft", WIDTH_FT[job.sections],
                             row=((f"{job.sections} section", WIDTH_FT[job.sections]),))
    perimeter = paper.step("P = 2 * (A / w + w)", GEOMETRY, "ft",
                           2 * (job.floor_area_ft2 / width + width), A=job.floor_area_ft2,
                           w=width, what="Outside perimeter of a rectangle")
    paper.give("home_perimeter_ft", perimeter,
               None if job.home_width_ft is not None else
               Spread(WIDTH_SHARE_OFF, WIDTH_SHARE_OFF, True, WIDTH_BY_SECTIONS))
    windows = paper.step("Aw = 0.12 * A", WINDOW_SHARE, "ft²",
                         WINDOW_SHARE_OF_FLOOR * job.floor_area_ft2, A=job.floor_area_ft2,
                         what="Windows, until they are measured")
    paper.give("window_area_ft2", windows,
               Spread(WINDOW_SHARE_OFF, WINDOW_SHARE_OFF, True, WINDOW_SHARE))
    paper.give("door_area_ft2", DOORS_FT2, Spread(DOORS_OFF_FT2, DOORS_OFF_FT2, False,
                                                  WINDOW_SHARE))

    unseen: list[str] = []
    _wall(job, paper, unseen)
    _ceiling(job, paper, unseen)
    _floor(job, paper, unseen)
    _window(job, paper, unseen)
    if not job.entered("door_u_btuh_ft2_f"):
        _by_date(job, paper, "door")
    _verdicts(job, paper, unseen)


def _r(layer: str) -> float:
    rows: tuple[tables.Layer, ...] = tables.typed("layers", tables.Layer)
    return next(row.r_ip for row in rows if row.layer == layer)


def _method() -> Spread:
    return Spread(METHOD_SHARE, METHOD_SHARE, True, PARALLEL_PATH)


def _by_date(job: Readings, paper: Paper, part: str) -> None:
    rows = [r for r in tables.typed("envelope_by_date", tables.EnvelopeByDate)
            if r.component == part and r.from_year <= job.year_built]
    row = max(rows, key=lambda r: r.from_year)
    place = PLACE_BY_ZONE[job.uo_zone or "2"]
    middle = row.low + place * (row.high - row.low)
    paper.lookup(f"U of the {part}, by date: {row.era}", ENVELOPE_BY_DATE, "Btu/(h ft² °F)", middle,
                 row=(("as good as", row.low), ("as poor as", row.high)),
                 note="Half way between, nearer to the good end in the coldest zone and to the "
                      "poor one in the warmest; it stands in until somebody looks.")
    half = (row.high - row.low) / 2
    paper.give(f"{part}_u_btuh_ft2_f", middle, Spread(half, half, False, ENVELOPE_BY_DATE))


def _paths(paper: Paper, part: str, cavity: list[tuple[str, float]],
           frame: list[tuple[str, float]], share: float) -> float:
    """Writes the two paths through a framed part and its U."""
    beside = paper.total(f"Resistance through the insulation of the {part}", LAYERS,
                         "h ft² °F/Btu", sum(r for _, r in cavity), cavity)
    along = paper.total(f"Resistance along the framing of the {part}", LAYERS,
                        "h ft² °F/Btu", sum(r for _, r in frame), frame)
    return paper.step(
        "U = (1 - f) / Rc + f / Rf", HUD_FRAMING, "Btu/(h ft² °F)",
        heat_loss.parallel_path_u_btuh_ft2_f([r for _, r in cavity], [r for _, r in frame], share),
        f=share, Rc=beside, Rf=along, what=f"U of the {part}, two paths side by side")


def _wall(job: Readings, paper: Paper, unseen: list[str]) -> None:
    if job.wall_insulation_r is None:
        if not job.entered("wall_u_btuh_ft2_f"):
            unseen.append("the walls")
        _by_date(job, paper, "wall")
        return
    kept = job.wall_insulation_r
    if job.wall_batt_in is not None and job.wall_batt_in > job.wall_stud_in:
        kept = _squeezed(paper, "wall batt", kept, job.wall_stud_in, job.wall_batt_in,
                         "uniform_batt")
    skin = [("film indoors", _r("film inside wall")), ("panel", _r("wall panel")),
            ("siding", _r("siding")), ("film outdoors", _r("film outdoors winter"))]
    stud = _r("wood per inch") * job.wall_stud_in
    paper.give("wall_u_btuh_ft2_f",
               _paths(paper, "wall", [*skin, ("insulation", kept)], [*skin, ("stud", stud)],
                      heat_loss.WALL_FRAMING_SHARE), _method())


def _squeezed(paper: Paper, what: str, nominal: float, left_in: float, full_in: float,
              kind: str) -> float:
    rows = tables.typed("insulation_compression", tables.InsulationCompression)
    share = heat_loss.kept_share(left_in, full_in, kind, rows)
    percent = 100 * left_in / full_in
    near = [r for r in rows if abs(r.thickness_pct - percent) < 1]
    paper.lookup(f"Share of its R that the {what} keeps", HUD_COMPRESSED, "", share,
                 row=[(f"{r.thickness_pct:.0f} % of its thickness",
                       float(getattr(r, f"{kind}_r_pct")) / 100) for r in near])
    return paper.step("R = Rn * k", HUD_COMPRESSED, "h ft² °F/Btu", nominal * share, Rn=nominal,
                      k=share, what=f"R that the {what} keeps")


def _ceiling(job: Readings, paper: Paper, unseen: list[str]) -> None:
    nominal = job.ceiling_insulation_r
    if nominal is None:
        if not job.entered("ceiling_u_btuh_ft2_f"):
            unseen.append("the ceiling")
        _by_date(job, paper, "ceiling")
        return
    skin = [("film under the ceiling", _r("film under ceiling")), ("panel", _r("ceiling panel")),
            ("film above", _r("film in attic"))]
    depth = job.ceiling_insulation_in
    if depth is None:
        depth = max(nominal / BATT_R_PER_IN, 0.1)
    chord = _r("wood per inch") * CHORD_IN + nominal * max(0.0, 1 - CHORD_IN / depth)
    field = _paths(paper, "ceiling", [*skin, ("insulation", nominal)],
                   [*skin, ("chord and what lies on it", chord)],
                   heat_loss.FLOOR_CEILING_FRAMING_SHARE)
    eave = job.ceiling_eave_in
    if eave is not None and job.ceiling_insulation_in is not None and nominal > 0:
        job.refuse_unless(eave <= job.ceiling_insulation_in, "ceiling_eave_in",
                          "is more than in the field. Are the two swapped?")
        if eave < job.ceiling_insulation_in:
            kind = job.ceiling_fill or "nonuniform_blown"
            left = _squeezed(paper, "insulation at the eaves", nominal, eave,
                             job.ceiling_insulation_in, kind)
            skin_r = sum(r for _, r in skin)
            field = paper.step(
                "Ue = 0.85 * U + 0.15 / (Rs + R)", PARALLEL_PATH, "Btu/(h ft² °F)",
                (1 - EAVE_SHARE) * field + EAVE_SHARE / (skin_r + left), U=field, Rs=skin_r,
                R=left, what="U of the ceiling, its low edges counted as a seventh of it")
    paper.give("ceiling_u_btuh_ft2_f", field, _method())


def _floor(job: Readings, paper: Paper, unseen: list[str]) -> None:
    nominal = job.floor_insulation_r
    if nominal is None:
        if not job.entered("floor_u_btuh_ft2_f"):
            unseen.append("the floor")
        _by_date(job, paper, "floor")
        return
    skin = [("film over the floor", _r("film over floor")), ("covering", _r("floor covering")),
            ("deck", _r("floor deck")), ("film outdoors", _r("film outdoors winter"))]
    joist = _r("wood per inch") * JOIST_IN
    whole = _paths(paper, "floor", [*skin, ("insulation", nominal)], [*skin, ("joist", joist)],
                   heat_loss.FLOOR_CEILING_FRAMING_SHARE)
    bare = sum(r for _, r in skin)
    share = job.belly_open_pct / 100
    paper.give("floor_u_btuh_ft2_f", paper.step(
        "Uf = (1 - p / 100) * U + p / 100 / Rs", HUD_SHORTS, "Btu/(h ft² °F)",
        heat_loss.parallel_path_u_btuh_ft2_f([1 / whole], [bare], share), p=job.belly_open_pct,
        U=whole, Rs=bare, what="U of the floor with its bare places"), _method())


def _window(job: Readings, paper: Paper, unseen: list[str]) -> None:
    if job.window_kind is None:
        if not job.entered("window_u_btuh_ft2_f"):
            unseen.append("the windows")
        _by_date(job, paper, "window")
        return
    glazing, _, frame = job.window_kind.rpartition(", ")
    row = next(r for r in tables.typed("glazing", tables.Glazing)
               if (r.glazing, r.frame) == (glazing, frame))
    paper.give("window_u_btuh_ft2_f", paper.step(
        "U = u / 5.678263337", UNITS, "Btu/(h ft² °F)", row.u_w_m2k / W_M2K_PER_IP, u=row.u_w_m2k,
        what=f"U of the windows: {job.window_kind}"), Spread(0.10, 0.10, True, GLAZING))


def _verdicts(job: Readings, paper: Paper, unseen: list[str]) -> None:
    if unseen:
        paper.verdict("insulation-seen", "look",
                      f"Not looked at yet: {_listed(unseen)}. Their U stands in by date of "
                      "construction, and the range is as wide as those years built.",
                      source=ENVELOPE_BY_DATE,
                      do="Look into one wall, the ceiling and the belly; enter what is there.")
    else:
        paper.verdict("insulation-seen", "fine",
                      "Walls, ceiling, floor and windows have been looked at.", source=ARITHMETIC)
    paper.limit(
        "belly-closed", job.belly_open_pct,
        at_most=100 * heat_loss.THERMAL_SHORT_AREA_SHARE, unit="%", decimals=0, source=HUD_SHORTS,
        beyond="look",
        fine="The belly is closed and its insulation hangs where it should.",
        look="{value} of the belly is open or bare: a hole in the floor's insulation, and a way "
             "for air and mice.",
        do="Repair and close the belly in the same visit as the ducts.")


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def figure(sheet: Sheet) -> str:
    """U of each part as a bar."""
    entered = {p: sheet.values[f"{p}_u_btuh_ft2_f"] for p in PARTS}
    names = {"wall": "walls", "ceiling": "ceiling", "floor": "floor", "window": "windows",
             "door": "doors"}
    return drawing.bars(
        "shell", "How fast each part loses heat",
        [(names[p], u) for p, u in entered.items()], "Btu/(h ft² °F)",
        head="per square foot and degree", decimals=3, system=sheet.system,
    ).figure("A window loses several times what a wall of its size does.")
