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

# ---- air ----------------------------------------------------------------------------------
AIRFLOW_FOR_CAPACITY = Source("Airflow for cooling and heating",
                              "300 to 450 cfm of standard air for each 12,000 Btu/h", "practice")
HUD_COOLING_AIR = Source("24 CFR 3280", "3280.715(a)(3)(ii): 300 cfm for each 10,000 Btu/h",
                         "regulation")
HUD_STATIC = Source("24 CFR 3280", "3280.715(a)(2)(i): 90 % of the label's static", "regulation")
HUD_RETURN = Source("24 CFR 3280", "3280.715(b): return air", "regulation")
HUD_CROSSOVER = Source("24 CFR 3280 and 3285", "3280.715(a)(1), (5), (7); 3285.606(e)",
                       "regulation")
HUD_PLENUM = Source("24 CFR 3280", "3280.715(a)(1): metal for 3 ft along the air path",
                    "regulation")
HUD_SHARED_CLOSET = Source("24 CFR 3280", "3280.709(e)(1): no pull on combustion air",
                           "regulation")
DUCT_FRICTION = Source("2021 Fundamentals handbook (SI), chapter 21",
                       "eq. 18 (Darcy) and 19 (Colebrook)", "handbook")
DUCT_NETWORK = Source("A gradient algorithm for the analysis of pipe networks, 1988",
                      "Newton's method on flows and heads", "standard")
ROUND_EQUIVALENT = Source("2021 Fundamentals handbook (SI), chapter 21", "eq. 25 (Huebscher)",
                          "handbook")
VELOCITY_PRESSURE = Source("2021 Fundamentals handbook (SI), chapter 21", "velocity pressure",
                           "handbook")
FLEX_COMPRESSION = Source("2021 Fundamentals handbook (SI), chapter 21",
                          "eq. 22 and 23; above 10 in also the 2013 thesis on 12 to 16 in duct, "
                          "Texas A&M University", "handbook")
BALANCING = Source("Balancing of homes", "rooms within 20 % or 25 cfm, totals within 15 %",
                   "practice")
VELOCITY_LIMITS = Source("Air-conditioning systems design manual, 1993",
                         "table 5-2, residences", "handbook")
ORIFICE = Source("Bernoulli's equation", "opening with discharge coefficient 0.6", "definition")
CLOSED_ROOM = Source("Building science guide of a national laboratory",
                     "transfer grilles: 3 Pa, 5 Pa from 150 cfm", "study")
LOUVERS = Source("National fuel gas code, quoted by a gas utility's guide",
                 "louvers: wood 25 %, metal 75 % free", "code")
FAN_LAWS = Source("Fan laws", "pressure in proportion to density at the same airflow",
                  "definition")
FILTER_TESTS = Source("Mean of published filter tests", "loss by airflow to the power 1/0.85",
                      "data")
FITTING_LOSSES = Source("Handbook of hydraulic resistance and ASHRAE fitting tables", "",
                        "handbook")
DUCT_STANDARD = Source("Residential duct standard (ASHRAE 152)", "delivery effectiveness",
                       "standard")
DUCT_LEAKS = Source("2021 Fundamentals handbook (SI), chapter 21", "eq. 38: leakage by pressure",
                    "handbook")
FLOOR_LEAKAGE = Source("Ducts of 190 manufactured home floors, Florida Solar Energy Center",
                       "6 % of the floor in all, 3 % outside", "study")
ROADS = Source("Two readings of one quantity", "weighted by their own doubt", "definition")
TRAINING_CYCLE = Source("A simple cycle for practice", "directions of any system, sizes of the "
                        "usual order", "practice")
