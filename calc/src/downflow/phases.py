"""The phases of a job, from the first visit to the yearly one.

The order is the order of the work and the order on every page that lists it.
"""

from typing import NamedTuple


class Phase(NamedTuple):
    """One phase: `id` is used in addresses and front matter, `title` on the page."""

    id: str
    title: str


PHASES: tuple[Phase, ...] = (
    Phase("survey", "Survey"),
    Phase("prove", "Prove"),
    Phase("papers", "Papers"),
    Phase("out", "Old furnace out"),
    Phase("fit", "Fit"),
    Phase("air", "Air"),
    Phase("water", "Water"),
    Phase("power", "Power"),
    Phase("refrigerant", "Refrigerant"),
    Phase("commission", "Commission"),
    Phase("hand-over", "Hand over"),
    Phase("come-back", "Come back"),
)


def phase(phase_id: str) -> Phase:
    """The phase with this id; ValueError with the known ids if there is none."""
    for candidate in PHASES:
        if candidate.id == phase_id:
            return candidate
    known = ", ".join(p.id for p in PHASES)
    raise ValueError(f"no phase {phase_id!r}; the phases are {known}")


def phase_number(phase_id: str) -> int:
    """Place of the phase in the job, from 1."""
    return PHASES.index(phase(phase_id)) + 1
