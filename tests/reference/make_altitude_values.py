"""Check values for the bounds of the altitude factor, by an independent library.

Run with fluids 1.3.1 installed:  python tests/reference/make_altitude_values.py
Writes tests/evidence/altitude.json: pressure of the 1976 standard atmosphere, as a share
of its sea-level value, at heights that the calculator takes.
"""

import json
from pathlib import Path

from fluids.atmosphere import ATMOSPHERE_1976

rows = []
for feet in (0, 2500, 5000, 6200, 9000, 14000):
    share = ATMOSPHERE_1976(feet * 0.3048).P / ATMOSPHERE_1976(0).P
    rows.append({
        "id": f"altitude-{feet}", "calculator": "capacity-at-altitude",
        "call": "downflow.physics.heat_pump:altitude_factor_bounds",
        "inputs": {"elevation_ft": feet}, "output": "low",
        "printed": f"{share:.5f}", "unit": "", "relative": 0.0005,
        "document": "US Standard Atmosphere, 1976", "section": "pressure, troposphere",
        "how": "computed", "edge": feet in (0, 14000),
        "note": "fluids 1.3.1, ATMOSPHERE_1976: pressure at height over pressure at sea level; "
                "geometric against geopotential height differs by less than 0.05 %"})
Path(__file__).parents[1].joinpath("evidence", "altitude.json").write_text(
    json.dumps(rows, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
