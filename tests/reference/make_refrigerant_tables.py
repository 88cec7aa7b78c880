"""Makes the refrigerant pressure and temperature tables from an open property library.

Run it from the project's root with CoolProp and numpy installed:

    python tests/reference/make_refrigerant_tables.py            writes the tables
    python tests/reference/make_refrigerant_tables.py --check    compares, writes nothing

R-410A is the library's pseudo-pure fluid, R-22 and R-32 are pure fluids. R-454B is solved as the
mixture of its two parts. A mixture flash that does not converge, or does not lie on a smooth
curve with its neighbours, is replaced by a quartic in ln p against 1/T through the others.
"""

from __future__ import annotations

import math
import sys
from pathlib import Path
from typing import Any

DATA = Path(__file__).resolve().parents[2] / "calc" / "src" / "downflow" / "data"
TEMPERATURES_F = range(-40, 151)
PSI_PA = 6894.757293168
LB_FT3_KG_M3 = 16.01846337396
SMOOTH = 2e-4          # largest relative distance of a good flash from the smooth curve

FLUIDS = {
    "R-22": ("refrigerant_r22.csv", "R22", "pure fluid"),
    "R-32": ("refrigerant_r32.csv", "R32", "pure fluid"),
    "R-410A": ("refrigerant_r410a.csv", "R410A",
               "pseudo-pure mixture of R-32 and R-125, 50/50 % by mass"),
    "R-454B": ("refrigerant_r454b.csv", "R32&R1234yf",
               "mixture of R-32 and R-1234yf, 68.9/31.1 % by mass"),
}
R454B_MASS = (0.689, 0.311)
HEAD = "temp_f,bubble_psia,dew_psia,liquid_lb_ft3,vapor_lb_ft3"


def kelvin(temp_f: float) -> float:
    return (temp_f + 459.67) / 1.8


def state(fluid: str) -> Any:
    from CoolProp import CoolProp as Library

    made = Library.AbstractState("HEOS", fluid)
    if "&" in fluid:
        made.set_mass_fractions(R454B_MASS)
    return made


def at(fluid: str, temp_f: float, quality: int) -> tuple[float, float]:
    """Saturation pressure [psia] and density [lb/ft³]; not-a-number where the flash fails."""
    from CoolProp import CoolProp as Library

    made = state(fluid)
    try:
        made.update(Library.QT_INPUTS, quality, kelvin(temp_f))
    except ValueError:
        return math.nan, math.nan
    return made.p() / PSI_PA, made.rhomass() / LB_FT3_KG_M3


def mended(column: list[float], bad: set[int] | None = None) -> tuple[list[float], set[int]]:
    """The column with bad points replaced from a smooth curve, and where they were.

    Without `bad`, a point is bad when it is missing or off the curve through the others.
    """
    import numpy as np

    inverse = np.array([1000 / kelvin(t) for t in TEMPERATURES_F])
    log = np.log(np.array(column))
    given = bad is not None
    good = np.isfinite(log) & np.array([i not in (bad or ()) for i in range(len(log))])
    for _ in range(6):
        middle, spread = inverse[good].mean(), inverse[good].std()
        fit = np.polyfit((inverse[good] - middle) / spread, log[good], 8)
        miss = np.abs(np.polyval(fit, (inverse - middle) / spread) - log)
        kept = np.isfinite(log) & (miss < SMOOTH)
        if given or (kept == good).all():
            break
        good = kept
    smooth = np.exp(np.polyval(fit, (inverse - middle) / spread))
    return ([float(value if ok else curve)
             for value, ok, curve in zip(column, good, smooth, strict=True)],
            {i for i, ok in enumerate(good) if not ok})


def rows(name: str) -> tuple[list[tuple[float, ...]], str]:
    _, fluid, _ = FLUIDS[name]
    columns, notes = [], []
    for quality, label in ((0, "bubble"), (1, "dew")):
        points = [at(fluid, t, quality) for t in TEMPERATURES_F]
        pressure, bad = mended([p for p, _ in points])
        density, _ = mended([d for _, d in points], bad)
        columns += [pressure, density]
        if bad:
            where = " ".join(str(TEMPERATURES_F[i]) for i in sorted(bad))
            notes.append(f"{label} at {where} °F from a smooth curve through the other rows")
    bubble, liquid, dew, vapor = columns
    table = [(float(t), *values) for t, values in
             zip(TEMPERATURES_F, zip(bubble, dew, liquid, vapor, strict=True), strict=True)]
    return table, "; ".join(notes) or "every row from the library"


def text(name: str) -> str:
    import CoolProp

    table, note = rows(name)
    _, fluid, what = FLUIDS[name]
    lines = [
        f"# {name}: saturation pressure and density by temperature; {what}.",
        f"# Source: CoolProp {CoolProp.__version__}, HEOS equations of state, {fluid}. {note}.",
        "# Absolute pressure. Bubble: liquid at its boiling point (subcooling). "
        "Dew: vapor at its condensing point (superheat).",
        "# Made by tests/reference/make_refrigerant_tables.py; do not edit by hand.",
        HEAD,
    ]
    for t, bubble, dew, liquid, vapor in table:
        lines.append(f"{t:.0f},{bubble:.3f},{dew:.3f},{liquid:.3f},{vapor:.4f}")
    return "\n".join(lines) + "\n"


def main() -> int:
    wrong = 0
    for name, (file, _, _) in FLUIDS.items():
        made = text(name)
        if "--check" in sys.argv:
            same = (DATA / file).read_text(encoding="utf-8") == made
            print(f"{file}: {'same' if same else 'DIFFERS'}")
            wrong += not same
        else:
            (DATA / file).write_text(made, encoding="utf-8")
            print(f"wrote {file}")
    return wrong


if __name__ == "__main__":
    raise SystemExit(main())
