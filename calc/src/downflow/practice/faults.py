"""The faults that a practice home may have: what each is, what shows it, what mends it.

A fault changes true facts and conditions; every reading follows from those. The order of work is
the order of `rank`: what can hurt somebody first, then the path of the air, then the machine in
that air, the charge last, because a charge can only be judged with the air right.
"""

from __future__ import annotations

from typing import NamedTuple

SURVEY, CALL = "survey", "call"
BOTH = (SURVEY, CALL)

SAFETY, WATER, AIR, SIZE, CONTROL, CHARGE = 1, 2, 3, 4, 5, 6
RANKS: dict[int, str] = {
    SAFETY: "What can hurt somebody comes before everything else.",
    WATER: "Water that ruins floor and wiring comes before comfort.",
    AIR: "The path of the air comes before anything that is judged in that air.",
    SIZE: "Sizes are chosen once the load and the path of the air are known.",
    CONTROL: "What switches the heat is set once the air is right.",
    CHARGE: "The charge comes last: gauges only tell the truth with the right air over the coil.",
}
"""Why the order is what it is."""


class Fault(NamedTuple):
    """One fault.

    Attributes:
        id: Its name.
        label: Its name for a learner.
        visits: At which kind of visit it can be met.
        rank: Its place in the order of work: a key of `RANKS`.
        skill: The skill that it asks for.
        holds: Whether the engine holds on it: nobody goes on before it is put right.
        shown_by: Measurements that show it, each by itself.
        verdict: Calculator and verdict by which the plan says it, or two empty words where only
            a reading does.
        tells: What it looks like, and what it does.
        do: What puts it right.
        procedure: The procedure that teaches it.
        owner: What an owner may say about it.
    """

    id: str
    label: str
    visits: tuple[str, ...]
    rank: int
    skill: str
    holds: bool
    shown_by: tuple[str, ...]
    verdict: tuple[str, str]
    tells: str
    do: str
    procedure: str
    owner: str


FAULTS: tuple[Fault, ...] = (
    Fault("open-fuel-line", "Fuel line of the old furnace not capped", (CALL,), SAFETY, "safety",
          True, ("closet",), ("close-old-furnace", "fuel-line"),
          "Behind the cabinet the old fuel line ends in a shut valve without a cap.",
          "Nobody works on. A licensed gas person caps it gastight and tests what stays.",
          "furnace-out", "Now and then there is a smell near the hall."),
    Fault("dead-alarm", "No working carbon monoxide alarm while fuel still burns", BOTH, SAFETY,
          "safety", True, ("alarms",), ("close-old-furnace", "alarm"),
          "The button of the carbon monoxide alarm brings no sound, and the water heater burns "
          "fuel.",
          "Put alarms outside each sleeping area before you leave.",
          "before-you-cut", "The alarm chirped all night, so the battery is out."),
    Fault("panel-too-small", "Service too small for compressor and kit", (SURVEY,), SAFETY,
          "electricity", True, ("panel",), ("service-load", "service-fits"),
          "The sum for an existing dwelling, compressor and kit together, is above the main.",
          "No order before a licensed electrician has planned a smaller kit, a listed control that "
          "keeps the two apart, or a new service.",
          "electrical", "With the dryer and the range on, the lights dim."),
    Fault("dry-trap", "Condensate trap missing or dry", (CALL,), WATER, "water", True,
          ("trap",), ("condensate-trap", "trap-full"),
          "Without water in the trap the blower draws air in through the drain, and the pan cannot "
          "empty.",
          "Build it to the drawing, fill it, and see the float switch stop the unit.",
          "condensate-trap", "In summer there was water on the closet floor."),
    Fault("melt-to-walk", "Defrost water runs to a walk or under the home", (CALL,), WATER,
          "water", True, ("outside",), ("outdoor-site", "melt-path"),
          "Meltwater of the outdoor unit runs where people walk, or under the home, and freezes.",
          "Lead it into gravel away from every walk, or move the unit, before the first frost.",
          "outdoor-unit", "It steams now and then. Is that right?"),
    Fault("open-vent", "Old furnace vent left open", (CALL,), AIR, "air", True, ("outside",),
          ("close-old-furnace", "vent"),
          "The old vent still stands in the roof, open or stuffed: warm air and its water go up it "
          "all winter.",
          "Take pipe and jack out, frame and patch the deck, seal the ceiling, insulate, flash.",
          "close-the-openings", "There is a draft in the hall on windy nights."),
    Fault("no-crossover", "No crossover: no air to the far trunk", BOTH, AIR, "air", True,
          ("belly", "registers"), ("crossover-choice", "both-halves"),
          "No duct joins the two trunks: the registers of the far half give nothing.",
          "Add a crossover of the size that feeds both halves, before the floor is closed.",
          "crossover-and-trunk", "The far bedrooms never got warm, from the day we moved in."),
    Fault("crushed-crossover", "Crossover crushed", BOTH, AIR, "air", False,
          ("belly", "registers"), ("", ""),
          "The crossover under the home is squeezed flat: the far half gets far less than its "
          "share.",
          "Hang a new one of the right size, pulled to full stretch, off the ground.",
          "crossover-and-trunk", "The far end has been colder since the plumber was under there."),
    Fault("choked-return", "Return choked", BOTH, AIR, "air", False, ("closet-pressure",),
          ("way-back", "closet-pressure"),
          "The closet stands far below the home: the air cannot come back through its door.",
          "Open the louvers or fit a larger grille until the closet stands within the limit.",
          "return-path", "The closet door slams by itself when it starts."),
    Fault("loaded-filter", "Filter loaded", (CALL,), AIR, "air", False, ("filter",), ("", ""),
          "The filter takes about what its data sheet gives for a loaded one.",
          "Change it, write the date on it, and leave a spare.",
          "filter-cabinet", "It got louder over the winter."),
    Fault("leaky-ducts", "Leaky ducts", BOTH, AIR, "air", False, ("duct-test",),
          ("duct-leakage", "tight-for-the-floor"),
          "At 25 Pa the ducts lose more than a tenth of the floor area's number.",
          "Seal boots, seams, ends and collars with mastic, then test again.",
          "seal-the-ducts", "The ground under the home stays dry and warm in winter."),
    Fault("oversized-furnace", "Old furnace far too large", (SURVEY,), SIZE, "heat", False,
          ("plate",), ("", ""),
          "The old furnace makes far more than the home loses on the design night: its size says "
          "nothing about the load.",
          "Size the heat pump by the load that survey, bills and a night agree on.",
          "load-and-equipment", "It blows very hot for three minutes, then it is off again."),
    Fault("backup-always-on", "Backup heat on whenever the heat pump runs", (CALL,), CONTROL,
          "cold", False, ("heat-call", "thermostat"), ("", ""),
          "On a mild day with the heat pump alone asked for, the kit draws its full current.",
          "Wire the kit to its own terminal and lock it out above the balance point.",
          "thermostat-set-up", "The power bill doubled. We were told it would fall."),
    Fault("wrong-charge", "Wrong charge", (CALL,), CHARGE, "refrigerant", False, ("gauges",),
          ("superheat-subcooling", "subcooling"),
          "With the air right, subcooling is farther from the plate's than its tolerance.",
          "Find why, then bring it to the plate's number by weight; certified people only.",
          "pressure-and-vacuum", "It does not cool as it did in the first weeks."),
)
"""Every fault."""

_BY_ID = {f.id: f for f in FAULTS}


def fault(id_: str) -> Fault:
    """The fault called `id_`; `ValueError` where there is none."""
    found = _BY_ID.get(id_)
    if found is None:
        raise ValueError(f"no fault is called {id_!r}; there are {', '.join(_BY_ID)}")
    return found


def of_visit(visit: str) -> tuple[Fault, ...]:
    """The faults that can be met at a visit."""
    return tuple(f for f in FAULTS if visit in f.visits)


NOTHING_WRONG: tuple[str, ...] = (
    "It runs for hours on cold days. Is it working too hard?",
    "The air at the registers is not as hot as it used to be.",
    "We would like to know what a winter will cost.",
    "Nothing is wrong. The paper said to call once a year.",
)
"""What owners say of sound homes too; of a survey the first two speak of a neighbour's."""
NOTHING_WRONG_SURVEY: tuple[str, ...] = (
    "The furnace is old. We want to know what would fit.",
    "Propane has become dear. Would a heat pump hold the house?",
    "The neighbour's heat pump runs for hours. Is that right?",
    "Nothing is wrong yet. We would like an offer.",
)
