"""Where the numbers come from: one record for each document and section.

`kind` says how far to trust it: `regulation` and `code` bind somebody, `standard` and
`handbook` are published methods, `study` is measured in the field, `data` is open data,
`library` an independent program, `label` the equipment's own plate or manual,
`definition` arithmetic that needs no authority, `practice` is common practice of the
trade, and `memory` has not been looked up.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Source:
    """A document and the section in it."""

    document: str
    section: str
    kind: str

    def text(self) -> str:
        """One line for a reader."""
        said = self.document + (f", {self.section}" if self.section else "")
        if self.kind == "practice":
            return f"{said} (common practice)"
        if self.kind == "memory":
            return f"{said} (from memory, not looked up)"
        return said


KINDS = ("regulation", "code", "standard", "handbook", "study", "data", "library", "label",
         "definition", "practice", "memory")

# ---- general ----------------------------------------------------------------------------
UNITS = Source("Conversion of units", "", "definition")
ARITHMETIC = Source("Arithmetic", "", "definition")
GEOMETRY = Source("Geometry", "", "definition")
LABEL = Source("The equipment's label and manual", "", "label")
DATA_SHEET = Source("The equipment's data sheet", "", "label")
LOCAL_CODE = Source("The local code and its official", "", "regulation")
PRACTICE = Source("The trade", "", "practice")
METER = Source("Accuracy of common field meters", "", "practice")
STANDARD_ATMOSPHERE = Source("US Standard Atmosphere, 1976", "troposphere", "standard")
SENSIBLE_HEAT = Source("Fundamentals handbook", "psychrometrics: sensible heat of dry air",
                       "handbook")
STANDARD_AIR = Source("Fundamentals handbook", "standard air, 0.075 lb/ft³", "handbook")

# ---- heat pump and backup ---------------------------------------------------------------
LOAD_LINE = Source("Fundamentals handbook 2021, ch. 19", "balance point and bin method",
                   "handbook")
PART_LOAD = Source("Fundamentals handbook 2021, ch. 19", "table 2: cycling factor", "handbook")
RATING_POINTS = Source("10 CFR 430 subpart B", "appendix M1: rating points", "regulation")
CAPACITY_TO_FIELD = Source("Data sheet against field measurement", "± 10 %", "practice")
HUD_COMBINATION = Source("24 CFR 3280", "3280.714(a)(5)", "regulation")
HUD_LOCKOUT = Source("24 CFR 3280", "3280.714(a)(1)(ii)", "regulation")
HUD_LOAD = Source("24 CFR 3280", "3280.509", "regulation")
ALTITUDE_BOUNDS = Source("Bounds of the altitude factor", "density ratio to 1", "practice")
CYCLING_WARMTH = Source("Minimum speed against load", "a well-matched unit modulates below 40 °F",
                        "practice")
OHMS_LAW = Source("Ohm's law", "power of a resistance by voltage", "definition")
ENERGY_BALANCE = Source("Steady energy balance", "", "definition")
LUMPED_HOUSE = Source("One-node model of a house", "C dT/dt = q − UA (T − To)", "handbook")
EMERGENCY = Source("Emergency heat on the design night", "kit alone", "practice")
DUCT_DELIVERY = Source("Fundamentals handbook 2021, ch. 17", "duct loss as a share of load",
                       "handbook")
