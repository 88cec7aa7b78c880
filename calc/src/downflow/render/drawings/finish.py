"""Drawing of the settings: which heat may run at which outdoor temperature."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup


def two_limits() -> Markup:
    """Heat pump and backup over the outdoor temperature, with the two lockouts."""
    d = Drawing(
        "two-limits", "Which heat may run at which outdoor temperature",
        "Outdoor temperature runs upwards. The heat pump runs from its own lowest temperature, C, "
        "up to mild weather. The backup may help below the lockout, L, which lies a little above "
        "the balance point, B, and never above 40 °F, except in defrost. Between C and L both may "
        "run together. Below C only the backup is left. Emergency heat, chosen by a person, is the "
        "backup alone at any temperature.", 380)
    d.path("M44 346V24M39 34L44 22 49 34", "i")
    d.text(52, 30, "warm")
    d.text(52, 344, "cold")
    d.rect(116, 60, 60, 216, "of")
    d.text(146, 50, "heat pump", "m halo")
    d.hatch(196, 150, 60, 186, "backup")
    d.rect(196, 150, 60, 186, "o")
    d.text(226, 140, "backup", "m halo")
    d.rect(276, 60, 44, 276, "h")
    d.text_up(304, 210, "emergency", "m halo")
    d.path("M36 276H190", "w")
    d.path("M36 150H262", "w")
    d.path("M36 186H262", "c")
    d.text(22, 282, "C", "b m")
    d.text(22, 156, "L", "b m")
    d.text(22, 192, "B", "b m")
    d.balloon(1, 84, 116)
    d.balloon(2, 84, 216)
    d.balloon(3, 84, 310)
    d.balloon(4, 186, 104, to=(150, 104))
    d.balloon(5, 150, 310, to=(200, 310))
    return d.figure(
        "L: set on the thermostat or the board. B: from the plan. C: from the data sheet.", legend=[
            "above L: heat pump alone, backup only in defrost",
            "between C and L: heat pump always, backup for what is missing",
            "below C: backup alone, and the owner knows it",
            "no lockout of the compressor above C: it gives more than it takes",
            "every hour in this bar costs two to three times as much"])


DRAWINGS = {"two-limits": two_limits}
