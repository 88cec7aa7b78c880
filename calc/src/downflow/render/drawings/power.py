"""Drawings of power and control: supplies and locks, kit, wires, when each heats."""

from __future__ import annotations

from downflow.drawing import Drawing
from downflow.markup import Markup
from downflow.render.drawings.kit import boxed, lock


def lock_out() -> Markup:
    """Every supply of the system, with its lock."""
    d = Drawing(
        "lock-out", "Every supply of the system, each with its lock",
        "From the panel three circuits go out: two to the air handler with its kit, one to the "
        "outdoor unit by way of its disconnect. A lock hangs on each of the three breakers and "
        "on the disconnect. Beside it the meter’s order: known source, then the part, then the "
        "known source again.", 396)
    d.rect(20, 20, 110, 210, "of")
    boxed(d, 32, 30, 86, 30, "main", css="i")
    for y, words in ((76, "kit 1"), (126, "kit 2"), (176, "outside")):
        boxed(d, 32, y, 86, 36, words, css="i")
        lock(d, 140, y + 14)
    d.polyline([(118, 94), (240, 94), (240, 76)], "o")
    d.polyline([(118, 144), (262, 144), (262, 76)], "o")
    d.rect(206, 14, 110, 62, "of")
    d.text(261, 42, "air handler", "m")
    d.text(261, 64, "and kit", "m")
    d.polyline([(118, 194), (220, 194)], "o")
    boxed(d, 220, 174, 34, 40, "", css="of")
    lock(d, 237, 224)
    d.polyline([(254, 194), (274, 194)], "o")
    boxed(d, 274, 160, 58, 40, "unit", css="of")
    d.rect(274, 200, 58, 30, "of")
    d.circle(303, 215, 10, "i")
    d.line(20, 258, 320, 258, "i")
    d.rect(24, 296, 54, 74, "of")
    d.rect(32, 304, 38, 22, "i")
    d.path("M38 370Q38 388 60 386M64 370Q64 380 78 380", "o")
    for x, number, words in ((126, "1", "known"), (210, "2", "part"), (294, "3", "known")):
        d.circle(x, 322, 22, "of")
        d.text(x, 328, number, "b m")
        d.text(x, 366, words, "m")
    d.path("M150 322H186M234 322H270", "i")
    d.text(100, 284, "meter, in this order", "b")
    d.balloon(1, 166, 46, to=(132, 46))
    d.balloon(2, 186, 118, to=(148, 100))
    d.balloon(3, 237, 154, to=(237, 174))
    return d.figure(legend=[
        "panel: its cover is the licensed electrician’s; what feeds it stays live at the lugs",
        "one lock and one tag for each person, on each breaker",
        "outdoor disconnect, locked too: the unit holds a charge after it"])


def kit_in_cabinet() -> Markup:
    """The backup kit in its place, and what proves it."""
    d = Drawing(
        "kit-in-cabinet", "The backup kit in the cabinet, and what proves it",
        "The kit slides into the cabinet below the blower. Its elements hang across the air’s "
        "way, its limit beside them. The wires come through a bushing to breakers on its face. "
        "A jumper or a plug lets the blower start with the elements. The label beside it names "
        "kilowatts, amps, breaker and the least airflow.", 340)
    d.rect(60, 14, 200, 300, "of")
    d.circle(160, 84, 44, "o")
    d.circle(160, 84, 9, "i")
    d.path("M60 142H130M190 142H260", "i")
    d.rect(72, 166, 176, 96, "i")
    for y in (186, 206, 226, 246):
        d.path(f"M84 {y}l8-8 10 16 10-16 10 16 10-16 10 16 10-16 10 16 10-16 10 16 10-16 10 16 "
               "10-8", "i")
    d.add("rect", x="84", y="176", width="138", height="78", fill=d.fill_of("backup"))
    d.rect(226, 176, 16, 20, "of")
    d.rect(226, 206, 16, 40, "of")
    d.path("M260 214H318M260 228H318", "o")
    d.circle(260, 221, 11, "of")
    d.supply(110, 264, 110, 304)
    d.supply(200, 264, 200, 304)
    d.rect(20, 180, 30, 42, "of")
    d.path("M26 190H44M26 200H44M26 210H38", "pl")
    d.balloon(1, 36, 84, to=(116, 84))
    d.balloon(2, 36, 254, to=(86, 236))
    d.balloon(3, 300, 164, to=(242, 184))
    d.balloon(4, 304, 268, to=(240, 240))
    d.balloon(5, 308, 196, to=(268, 216))
    d.balloon(6, 34, 150, to=(34, 180))
    return d.figure(legend=[
        "blower, before the elements in the air’s way",
        "elements: none touches metal, none sags",
        "limit: opens when the air fails, closes again by itself or by hand as labelled",
        "breakers or terminals of the kit, turned to the torque on the label",
        "bushing; copper, its size from the label and the plan",
        "label: kW and its voltage, amps, largest breaker, least airflow"])


def control_wires() -> Markup:
    """Which wire goes from where to where."""
    d = Drawing(
        "control-wires", "Control wires between thermostat, air handler and outdoor unit",
        "Three strips of terminals side by side: thermostat, air handler, outdoor unit. R, C, Y, "
        "O or B and the defrost wire W run through all three or two of them, G and W2 from "
        "thermostat to air handler only. The float switch breaks R or Y as its maker shows. The "
        "wiring diagram of the equipment decides.", 380)
    columns = ((6, "thermostat"), (126, "air handler"), (244, "outside"))
    for x, words in columns:
        d.text(x + 45, 20, words, "m")
        d.rect(x, 30, 90, 286, "of")
    rows = (("R", 3), ("C", 3), ("Y", 3), ("O/B", 3), ("W, defrost", 2), ("G", 1), ("W2", 1))
    for i, (name, reach) in enumerate(rows):
        y = 56 + 38 * i
        left, middle, right = 51, 171, 289
        where = {3: (left, middle, right), 2: (middle, right), 1: (left, middle)}[reach]
        ends = (where[0] + 34, where[-1] - 34)
        d.line(ends[0], y, ends[1], y, "i")
        for x in where:
            boxed(d, x - 36, y - 14, 72, 28, name if name != "W, defrost" else "W", css="if")
    d.rect(98, 118, 26, 28, "of")
    d.path("M103 138L119 126", "o")
    d.circle(104, 138, 2.5, "x")
    d.balloon(1, 111, 346, to=(111, 147))
    d.balloon(2, 230, 346, to=(230, 209))
    d.balloon(3, 171, 346, to=(171, 300))
    d.text(6, 376, "The unit’s own diagram decides.", "b")
    return d.figure(legend=[
        "float switch: where the diagram puts it, so that it stops what it must",
        "defrost wire: the outdoor unit asks for the kit while it melts its frost",
        "kit call from the thermostat, held back by the lockout"])


def when_each_heats() -> Markup:
    """Who heats at which outdoor temperature."""
    d = Drawing(
        "when-each-heats", "Who heats, by outdoor temperature",
        "A scale of outdoor temperature from cold at the bottom to mild at the top. The "
        "compressor heats over the whole of it, down to its own limit. The kit may help from "
        "the lockout downwards, which stands a little above the balance point. In defrost it "
        "helps at any temperature. Emergency heat is the kit alone, chosen by a person.", 372)
    d.line(150, 20, 150, 340, "o")
    for y in (20, 84, 148, 212, 276, 340):
        d.line(150, y, 160, y, "i")
    d.text(138, 32, "mild", "e")
    d.text(138, 340, "cold", "e")
    d.rect(176, 20, 50, 300, "of")
    d.rect(242, 170, 50, 170, "of")
    d.hatch(242, 170, 50, 170, "backup")
    d.path("M242 100V30M292 100V30", "h")
    d.path("M230 170H330", "w")
    d.path("M140 206H236", "d")
    d.path("M166 320H236", "w")
    d.balloon(1, 201, 90)
    d.balloon(2, 267, 290)
    d.balloon(3, 318, 146, to=(312, 168))
    d.balloon(4, 100, 206, to=(150, 206))
    d.balloon(5, 120, 290, to=(178, 318))
    d.balloon(6, 267, 64)
    return d.figure(legend=[
        "compressor: heats as far down as its maker lets it",
        "kit, with the compressor, when that is not enough",
        "lockout of the kit: a little above the balance point",
        "balance point: heat lost and heat made are equal",
        "lowest temperature of the outdoor unit: below it the kit is alone",
        "defrost: the kit may help here too, so that the air stays warm"])


DRAWINGS = {
    "lock-out": lock_out, "kit-in-cabinet": kit_in_cabinet, "control-wires": control_wires,
    "when-each-heats": when_each_heats,
}
