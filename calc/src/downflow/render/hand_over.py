"""The hand-over: the homeowner's link with its code, a cabinet label and a letter.

Everything vital stands in words on both papers, for the day when the address is gone.
"""

from __future__ import annotations

import re

from downflow import homeowner
from downflow.demo import demo_job
from downflow.facts import fact
from downflow.facts.job import Job
from downflow.markup import Markup, tag, together
from downflow.render import pages
from downflow.render.calculator import EXAMPLE, cover_html
from downflow.render.marks import verdict_mark

LABEL_CODE_MM = 36.8
"""Width of the code on the 4 by 6 inch label: 1.45 in."""

RECORDED: tuple[tuple[str, str], ...] = (
    ("filter", "filter_size"), ("filter_next", "filter_changed_on"),
    ("filter_months", "filter_every_months"), ("filter_place", "filter_place"),
    ("breaker_in", "indoor_breaker_marks"), ("breaker_out", "outdoor_breaker_marks"),
    ("panel", "panel_place"), ("water_off", "water_off_place"), ("cable", "heat_cable"),
    ("burns", "water_heater_fuel"), ("burns", "range_fuel"), ("burns", "dryer_fuel"),
    ("burns", "stove_fuel"), ("capped", "fuel_line_capped"), ("visit", "yearly_visit_on"),
    ("language", "owner_language"), ("alarms", "smoke_alarms"), ("alarms", "co_alarm"),
)
"""Facts that the homeowner page speaks of; where one is missing its sentence stays general."""


def hand_over_html(job: Job | None, system: str = "ip", site: str = "",
                   depth: int = pages.TOP_DEPTH) -> Markup:
    """The link, its code, the label and the letter of a job.

    Args:
        job: The job; nothing for the worked example.
        system: `ip` or `si`: the figures go into the link as the crew sees them.
        site: Address of the handbook, for others to open. Empty: no code is made.
        depth: How many folders down the page lies.
    """
    return tag(
        "df-hand-over", cover_html(), _address(),
        tag("div", hand_over_inner_html(job, system, site, depth), data_region="hand-over"),
        data_units=system, data_depth=str(depth), data_whose="job" if job else "example")


def painted_hand_over_html() -> Markup:
    """The hand-over as it is built: the worked example's, without an address."""
    return hand_over_html(None)


def _address() -> Markup:
    """Where the handbook can be reached by others: asked for, and kept on this device."""
    return tag(
        "div", tag("label", "Address of this handbook, as others open it", for_="df-site"),
        tag("div", tag("input", type="text", id="df-site", inputmode="url", autocomplete="off",
                       spellcheck="false", data_site=True), class_="df-fact__line"),
        tag("p", "Such as https://handbook.example.org/. It is kept on this device. The figures of "
                 "the home ride behind it and are never sent to it.", class_="df-help"),
        class_="df-fact df-live")


def address_problem(site: str) -> str:
    """Why an address cannot be used, or nothing."""
    if not site.strip():
        return ("Without an address the link opens on this device only: others cannot open it, and "
                "no code is made.")
    if re.fullmatch(r"https?://[A-Za-z0-9.\-]+(:[0-9]{1,5})?(/[A-Za-z0-9._~%\-/]*)?",
                    site.strip()) is None:
        return ("This is not a whole address. It starts with https:// and has no blanks; no code "
                "is made.")
    if re.match(r"https?://(localhost|127\.|0\.|10\.|192\.168\.)", site.strip()):
        return "This address is of this network alone: others cannot open it. No code is made."
    return ""


def hand_over_inner_html(job: Job | None, system: str, site: str,
                         depth: int = pages.TOP_DEPTH) -> Markup:
    """What changes with the job, the units or the address."""
    shown = job if job is not None else demo_job()
    slots = homeowner.slots_of(shown, system)
    fragment = homeowner.encode(slots)
    fault = address_problem(site)
    address = homeowner.link(shown, site, system) if not fault else ""
    preview = f"{'../' * depth}h/{fragment}"
    code = Markup(homeowner.qr_svg(address)) if address else None
    return together(
        tag("p", tag("b", EXAMPLE), class_="df-example") if job is None else None,
        tag("h2", "The link", id="link"),
        tag("p", fault, class_="df-error") if fault else tag(
            "p", address, class_="df-link", data_link=address),
        tag("p", f"{len(fragment)} characters ride behind the address. They hold figures, dates "
                 "and choices; no name, address or telephone is needed.", class_="df-small"),
        tag("div",
            tag("a", "See what the homeowner sees", class_="df-button df-button--main",
                href=preview, target="_blank", rel="noopener"),
            tag("button", "Copy", type="button", class_="df-button", data_copy=True,
                disabled=bool(fault)),
            tag("button", "Share", type="button", class_="df-button", data_share=True,
                disabled=bool(fault)),
            class_="df-row df-live"),
        tag("p", data_said=True, role="status", class_="df-small"),
        _missing(shown, slots, depth),
        tag("h2", "The code", id="code"),
        _code(address, code),
        tag("h2", "Cabinet label", id="label"),
        tag("div", tag("button", "Print the label", type="button", class_="df-button",
                       data_print="label"), class_="df-row df-live"),
        label_html(shown, slots, code if address and fits_label(address) else None),
        tag("h2", "Hand-over letter", id="letter"),
        tag("div", tag("button", "Print the letter", type="button", class_="df-button",
                       data_print="letter"), class_="df-row df-live"),
        letter_html(shown, slots, code))


def fits_label(address: str) -> bool:
    """Whether the code can be printed on the label with modules of at least 0.4 mm."""
    return homeowner.qr_width_mm(address) <= LABEL_CODE_MM


def _code(address: str, code: Markup | None) -> Markup:
    if code is None:
        return tag("p", "No code is made: a code that opens nothing for others would only annoy.")
    width = homeowner.qr_width_mm(address)
    words = (f"Print it at least {width:.0f} mm ({width / 25.4:.1f} in) wide, so that each "
             "square is at least 0.4 mm.")
    if not fits_label(address):
        words += (" That is more than the label holds: leave out free text, or use a shorter "
                  "address.")
    return together(tag("div", code, class_="df-code"), tag("p", words, class_="df-small"))


def _missing(job: Job, slots: dict[str, str], depth: int) -> Markup | None:
    gaps = [name for slot, name in RECORDED if slot not in slots and job.entry(name) is None]
    if not gaps:
        return None
    return tag("details",
               tag("summary", f"{len(gaps)} things are not recorded: their sentences stay general"),
               tag("ul", [tag("li", tag("a", fact(name).label,
                                        href=pages.job_sheet_page(depth, name)))
                          for name in gaps]))


# ---- on paper -------------------------------------------------------------------------------

def _bold(text: str) -> Markup:
    """A statement, its `**` set in bold."""
    parts = re.split(r"\*\*([^*]+)\*\*", text)
    return together(*(tag("b", part) if n % 2 else part for n, part in enumerate(parts)))


def _blank() -> Markup:
    return tag("i", class_="ho-blank")


def _said(name: str, slots: dict[str, str], tongue: str) -> str:
    return homeowner.statement(name, slots, tongue)


def label_html(job: Job, slots: dict[str, str], code: Markup | None) -> Markup:
    """The label for the cabinet, 4 by 6 inches: filter, dates, what turns it off, fuel."""
    def show(name: str) -> str:
        return homeowner.shown(name, slots, "en") if name in slots else ""

    size = " × ".join(slots["filter"].split("x")) if "filter" in slots else ""
    made = show("made")
    below = show("aux_below")
    kit = f"{show('kit_kw')} kW" if "kit_kw" in slots else ""
    off = [
        ("Indoor off", ("one double breaker, marked ", tag("b", show("breaker_in")))
         if "breaker_in" in slots else _blank()),
        ("Outdoor off", ("one double breaker, marked ", tag("b", show("breaker_out")),
                         ", and the box on the wall" if "disconnect" in slots else "")
         if "breaker_out" in slots else _blank()),
        ("Backup kit", (tag("b", kit) if kit else _blank(),
                        f"; joins below about {below}" if below else "")),
        ("Em heat", "only if the outdoor unit is broken"),
        ("Filter", "arrow the way the air moves; never run without it"),
    ]
    capped = "capped" in slots
    return tag(
        "article",
        tag("header", tag("b", f"Heat pump{', ' + slots['model'] if 'model' in slots else ''}"),
            tag("span", " · ".join(t for t in (job.name, made) if t))),
        tag("div",
            tag("div", tag("p", "Filter / Filtro", class_="ho-k"),
                tag("p", size or _blank(), class_="ho-size"),
                tag("p", "inches" if size else ""),
                tag("p", f"Every {slots['filter_months']} months / cada {slots['filter_months']} "
                         "meses" if "filter_months" in slots else
                    together("Every ", _blank(), " months / meses"), class_="ho-k"),
                tag("p", tag("b", show("filter_next")), _blank(), _blank(), class_="ho-dates")),
            tag("div", code, tag("p", "How it works / guía", class_="ho-k"),
                class_="ho-code") if code is not None else None,
            class_="ho-top"),
        tag("dl", [together(tag("dt", term), tag("dd", what)) for term, what in off],
            class_="ho-off"),
        tag("div",
            tag("p", "Fuel line capped and leak-tested by ",
                tag("b", slots["capped_by"]) if capped and "capped_by" in slots else _blank(), ","),
            tag("p", "licence ", _blank(), ", date ",
                tag("b", show("capped_on")) if "capped_on" in slots else _blank(), "."),
            tag("p", "Still burning fuel in this home: ", _burning(slots)),
            tag("p", "(carbon monoxide alarm needed)" if slots.get("burns") != "n" else ""),
            class_="ho-fuel"),
        tag("p", tag("b", "Smoke or flames: everyone out, call 911. "),
            "Humo o llamas: todos afuera, llame al 911.", class_="ho-fire"),
        tag("p", tag("b", "Louvered door stays clear. "), "Nothing stored in this closet.",
            class_="ho-clear"),
        tag("footer", "Call: ", slots.get("contact") or _blank(), " ",
            tag("span", "yearly visit: ", show("visit") or _blank())),
        class_="ho-label", data_paper="label")


_BURNERS = {"w": "water heater", "r": "range", "d": "dryer", "s": "stove or fireplace"}


def _burning(slots: dict[str, str]) -> Markup:
    burns = slots.get("burns", "")
    if not burns:
        return _blank()
    if burns == "n":
        return tag("b", "nothing, when we left")
    return tag("b", ", ".join(_BURNERS[letter] for letter in burns))


_LETTER: dict[str, dict[str, str]] = {
    "title": {"en": "Your new heat pump", "es": "Su nueva bomba de calor"},
    "stays": {"en": "This paper stays with the home. The page behind the code says the same, with "
                    "drawings, in English and Spanish.",
              "es": "Este papel se queda en la casa. La página del código dice lo mismo, con "
                    "dibujos, en español y en inglés."},
    "danger": {"en": "Danger", "es": "Peligro"},
    "normal": {"en": "Normal", "es": "Lo normal"},
    "filter": {"en": "Filter", "es": "Filtro"},
    "off": {"en": "Where to turn it off", "es": "Dónde se apaga"},
    "call": {"en": "When to call", "es": "Cuándo llamar"},
    "fuel": {"en": "Fuel", "es": "Combustible"},
    "winter": {"en": "Winter and power cuts", "es": "Invierno y cortes de luz"},
    "Thermostat": {"en": "Aux and Em heat", "es": "Aux y Em heat"},
    "contact": {"en": "Call", "es": "Llame a"},
    "left": {"en": "Left with you: makers’ booklets, permit, test sheet, this letter",
             "es": "Le dejamos: manuales, permiso, hoja de pruebas, esta carta"},
    "crew": {"en": "For the crew", "es": "Por el equipo"},
    "owner": {"en": "Received by", "es": "Recibido por"},
    "date": {"en": "date", "es": "fecha"},
}

_PARTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("danger", ("fire", "alarm", "gas", "no-grill", "generator")),
    ("call", ("call-now", "call-today", "walk-ice")),
    ("normal", ("run-normal",)),
    ("Thermostat", ("aux", "emergency")),
    ("filter", ("filter-when",)),
    ("off", ("off-indoor", "off-outdoor", "off-fuel", "off-water", "breaker-once")),
    ("fuel", ("no-flame", "capped", "still-burns", "nothing-burns")),
    ("winter", ("cable", "alarms", "visit")),
)
_TERMS = {"off-indoor": {"en": "Indoor unit: ", "es": "Unidad interior: "},
          "off-outdoor": {"en": "Outdoor unit: ", "es": "Unidad exterior: "},
          "off-fuel": {"en": "Fuel that is left: ", "es": "Combustible que queda: "},
          "off-water": {"en": "Water: ", "es": "Agua: "},
          "aux": {"en": "Aux: ", "es": "Aux: "},
          "emergency": {"en": "Em heat: ", "es": "Em heat: "}}


def letter_html(job: Job, slots: dict[str, str], code: Markup | None) -> Markup:
    """The letter that is handed over and signed, in the homeowner's language."""
    tongue = "es" if slots.get("language") == "s" else "en"

    def word(name: str) -> str:
        return _LETTER[name][tongue]

    size = homeowner.shown("filter", slots, tongue) if "filter" in slots else ""
    body: list[Markup] = []
    for part, names in _PARTS:
        lines = []
        for name in names:
            said = _said(name, slots, tongue)
            if said:
                term = _TERMS.get(name, {}).get(tongue, "")
                if name == "filter-when" and size:
                    said = f"**{size}.** {said}"
                lines.append(tag("li", tag("b", term) if term else None, _bold(said)))
        if lines:
            mark = verdict_mark("hold") if part == "danger" else None
            body.append(tag("section", tag("h3", mark, word(part)), tag("ul", lines)))
    return tag(
        "article",
        tag("header",
            tag("div", code, class_="ho-code") if code is not None else None,
            tag("div", tag("h2", word("title")),
                tag("p", " · ".join(t for t in (
                    job.name, slots.get("model", ""),
                    homeowner.shown("made", slots, tongue) if "made" in slots else "") if t)),
                tag("p", word("stays")) if code is not None else None)),
        body,
        tag("p", f"{word('contact')}: ", slots.get("contact") or _blank(), class_="ho-line"),
        tag("p", word("left"), class_="ho-line"),
        tag("p", f"{word('crew')}: ", _blank(), f" {word('owner')}: ", _blank(),
            f" {word('date')}: ", _blank(), class_="ho-line"),
        class_="ho-letter", lang=tongue, data_paper="letter")
