"""What thin air leaves of a heat pump's capacity.

Data sheets are measured near sea level. Higher up the same fan moves less air by mass
over both coils. Some makers print a factor; where none is known, the answer is a range
between two bounds: capacity falls with the air's density, or does not fall at all.
"""

from downflow.calculators import Calculator, Paper, Readings
from downflow.facts import Spread
from downflow.physics import air, heat_pump
from downflow.sources import ALTITUDE_BOUNDS, ARITHMETIC, LABEL, STANDARD_ATMOSPHERE

CALCULATOR = Calculator(
    id="capacity-at-altitude",
    title="Capacity at altitude",
    phase="prove",
    question="How much of the data sheet's capacity is left up here?",
    reads=("elevation_ft",),
    gives=("hp_altitude_factor_pct",),
)

FACTOR_KNOWN_PCT = 97.0
"""Above this the unknown factor moves the answer less than the data sheet's own error."""


def solve(job: Readings, paper: Paper) -> None:
    ratio = paper.step(
        "r = (1 - 6.8754e-6 * z) ** 5.2559", STANDARD_ATMOSPHERE, "",
        air.pressure_ratio(job.elevation_ft), z=job.elevation_ft,
        what="Density of the air, as a share of sea level's")
    bounds = heat_pump.altitude_factor_bounds(job.elevation_ft)
    middle = (bounds.low + bounds.high) / 2
    paper.step("f = 100 * (min(1, r) + 1) / 2", ARITHMETIC, "%", 100 * middle, r=ratio,
               what="Half way between the two bounds",
               note="Between all of the loss that thin air could bring, and none.")
    half = 100 * (bounds.high - bounds.low) / 2
    paper.give("hp_altitude_factor_pct", 100 * middle,
               model=Spread(half, half, False, ALTITUDE_BOUNDS))
    if job.entered("hp_altitude_factor_pct"):
        paper.verdict("maker-asked", "fine", "The maker's own factor is entered, and is used.",
                      source=LABEL)
        return
    paper.limit(
        "maker-asked", 100 * bounds.low, at_least=FACTOR_KNOWN_PCT, unit="%", decimals=0,
        source=LABEL, beyond="look",
        fine="So low that thin air hardly matters.",
        look="Nobody has said what this unit makes in air this thin: it may keep as little as "
             "{value} or everything.",
        do="Ask the maker for the altitude factor of this model, and enter it.")
