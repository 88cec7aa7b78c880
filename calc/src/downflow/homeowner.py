"""The homeowner's link: a plan's figures in a few short slots, and nothing else.

The page behind the link is a plain file with both languages in it. The link brings only
figures as they are shown, dates and choices; sentences stand on the page and are chosen by
codes. All of it lies in the fragment of the address, which no browser sends anywhere.

    #1.<base64url of: check, newline, slots joined by newlines>

A slot that is not known is empty; empty slots at the end are left out. The check is three
characters over the rest, so that a link cut short by a message program says so instead of
showing half a number.
"""

from __future__ import annotations

import base64
import datetime
import functools
import json
import math
import pkgutil
import re
from typing import Any, NamedTuple

from downflow.facts import all_facts
from downflow.facts.job import Job
from downflow.plan import plan
from downflow.units import convert, shown_unit

VERSION = "1"
LONGEST_FRAGMENT = 1200
ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

_TEMPERATURE = r"-?[0-9]{1,3}"
_MONTH = r"20[0-9]{2}(?:0[1-9]|1[0-2])"
_DAY = r"20[0-9]{2}(?:0[1-9]|1[0-2])(?:0[1-9]|[12][0-9]|3[01])"
_MONEY = r"(?:[1-9][0-9]?,)?[0-9]{1,3}"
_MARKS = r"[0-9A-Za-z][0-9A-Za-z,+ -]{0,9}"
# Nothing that steers the direction of writing, and nothing that cannot be seen.
_FREE = (r"[^\u0000-\u001f\u007f-\u00a0\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e"
         r"\u2060-\u206f\ufe00-\ufe0f\ufeff\ufff0-\uffff]")


class Slot(NamedTuple):
    """One slot of the link.

    Attributes:
        name: What the page calls it.
        kind: How the page shows it: `code` is never shown, it chooses sentences.
        pattern: What it may hold, the same for Python and the page's script.
        longest: Most characters.
        free: Whether it is text that a person typed.
    """

    name: str
    kind: str
    pattern: str
    longest: int
    free: bool = False


SLOTS: tuple[Slot, ...] = (
    Slot("made", "day", _DAY, 8),
    Slot("units", "code", "[is]", 1),
    Slot("language", "code", "[es]", 1),
    Slot("sections", "code", "[sdt]", 1),
    Slot("fuel", "code", "[pgoe]", 1),
    Slot("burns", "code", "n|[wrds]{1,4}", 4),
    Slot("burns_gas", "code", "[yn]", 1),
    Slot("capped", "code", "[y]", 1),
    Slot("capped_on", "day", _DAY, 8),
    Slot("day", "temperature", _TEMPERATURE, 4),
    Slot("run_before", "number", "[0-9]{1,2}", 2),
    Slot("run_after", "number", "[0-9]{1,2}", 2),
    Slot("air_before", "temperature", _TEMPERATURE, 4),
    Slot("air_after", "temperature", _TEMPERATURE, 4),
    Slot("aux_below", "temperature", _TEMPERATURE, 4),
    Slot("aux_call", "temperature", _TEMPERATURE, 4),
    Slot("em_holds", "temperature", _TEMPERATURE, 4),
    Slot("em_times", "number", r"[0-9](?:\.[0-9])?", 3),
    Slot("design", "temperature", _TEMPERATURE, 4),
    Slot("setting", "temperature", _TEMPERATURE, 4),
    Slot("rests_above", "temperature", _TEMPERATURE, 4),
    Slot("back_h", "number", r"[0-9]{1,2}(?:\.[0-9])?", 4),
    Slot("filter", "size", r"[0-9]{1,2}x[0-9]{1,2}x[0-9](?:\.[0-9])?", 9),
    Slot("filter_place", "code", "[dsg]", 1),
    Slot("filter_next", "month", _MONTH, 6),
    Slot("filter_months", "number", "[1-9]|1[0-2]", 2),
    Slot("breaker_in", "text", _MARKS, 10),
    Slot("breaker_out", "text", _MARKS, 10),
    Slot("panel", "code", "[hukbo]", 1),
    Slot("disconnect", "code", "[y]", 1),
    Slot("fuel_off", "code", "[tm]", 1),
    Slot("water_off", "code", "[hscmw]", 1),
    Slot("cable", "code", "[yn]", 1),
    Slot("alarms", "code", "[sc]{1,2}", 2),
    Slot("cost_before", "money", _MONEY, 6),
    Slot("cost_after", "money", _MONEY, 6),
    Slot("fuel_price", "price", r"[0-9]{1,2}\.[0-9]{2}", 5),
    Slot("electric_price", "price", r"[0-9]\.[0-9]{2,3}", 5),
    Slot("peak_month", "month_name", "[1-9]|1[0-2]", 2),
    Slot("peak_kwh", "number", _MONEY, 6),
    Slot("kit_kw", "number", r"[0-9]{1,2}(?:\.[0-9])?", 4),
    Slot("visit", "month", _MONTH, 6),
    Slot("chart", "chart", r"[0-9]{1,3}(?:\.[0-9]{1,3}){7}", 31),
    Slot("home", "text", _FREE + "{1,40}", 40, free=True),
    Slot("model", "text", _FREE + "{1,24}", 24, free=True),
    Slot("contact", "text", _FREE + "{1,60}", 60, free=True),
    Slot("capped_by", "text", _FREE + "{1,40}", 40, free=True),
)
NAMES = tuple(slot.name for slot in SLOTS)
BROKEN = "This link is not whole."
NEWER = "This link was made by a newer handbook."


class BadLink(ValueError):
    """A fragment that is no link of ours, or not a whole one."""


# ---- the codec ----------------------------------------------------------------------------

def check_of(body: str) -> str:
    """Three characters over the slots: a sum in which place and value both count."""
    total = 0
    for byte in body.encode():
        total = (total * 131 + byte + 1) % 262_144
    return ALPHABET[total >> 12] + ALPHABET[(total >> 6) & 63] + ALPHABET[total & 63]


def fits(slot: Slot, text: str) -> bool:
    """Whether a text may stand in a slot."""
    return len(text) <= slot.longest and re.fullmatch(slot.pattern, text) is not None


def encode(slots: dict[str, str]) -> str:
    """The fragment, with its `#`.

    Raises:
        ValueError: A slot that there is not, or a text that does not fit its slot.
    """
    unknown = [name for name in slots if name not in NAMES]
    if unknown:
        raise ValueError(f"no slot is called {unknown[0]}")
    for slot in SLOTS:
        text = slots.get(slot.name, "")
        if text and not fits(slot, text):
            raise ValueError(f"{slot.name}: {text!r} does not fit the slot")
    body = "\n".join(slots.get(name, "") for name in NAMES).rstrip("\n")
    data = f"{check_of(body)}\n{body}".encode()
    return f"#{VERSION}." + base64.urlsafe_b64encode(data).decode().rstrip("=")


def decode(fragment: str) -> dict[str, str]:
    """The slots of a fragment, empty ones left out. The page's script does the same.

    Raises:
        BadLink: With the words that the page shows.
    """
    found = re.fullmatch(r"#([0-9]{1,3})\.([A-Za-z0-9_-]*)", fragment)
    if found is None or len(fragment) > LONGEST_FRAGMENT:
        raise BadLink(BROKEN)
    if found.group(1) != VERSION:
        raise BadLink(NEWER)
    text = found.group(2)
    if len(text) % 4 == 1:
        raise BadLink(BROKEN)
    try:
        body = base64.urlsafe_b64decode(text + "=" * (-len(text) % 4)).decode()
    except ValueError as error:
        raise BadLink(BROKEN) from error
    check, newline, rest = body.partition("\n")
    if not newline or check != check_of(rest):
        raise BadLink(BROKEN)
    parts = rest.split("\n")
    if len(parts) > len(SLOTS):
        raise BadLink(BROKEN)
    slots: dict[str, str] = {}
    for slot, part in zip(SLOTS, parts, strict=False):
        if part and not fits(slot, part):
            raise BadLink(BROKEN)
        if part:
            slots[slot.name] = part
    if encode(slots) != fragment:
        raise BadLink(BROKEN)
    return slots


def table() -> list[list[Any]]:
    """What the page's script checks by: name, kind, pattern, length of each slot."""
    return [[s.name, s.kind, s.pattern, s.longest] for s in SLOTS]


# ---- sentences ----------------------------------------------------------------------------
# The words live with the page's maker; the few that label and letter need come as data, made
# from the same place. A text holds {slots} and brackets: [A|B] is A where every slot in it is
# known, else B; [?burns=n: A|B] asks for a choice as well.

_BRACKET = re.compile(r"\[([^\[\]]*)\]")
_PLACE = re.compile(r"\{([a-z_]+)\}")
_BOLD = re.compile(r"\*\*([^*]+)\*\*")
TONGUES = ("en", "es")


def slots_in(text: str) -> list[str]:
    """The slots that a text shows."""
    return _PLACE.findall(text)


def split(inside: str) -> tuple[str, str, str]:
    """Condition, text where it holds, text where it does not, of one bracket.

    Raises:
        ValueError: A bracket that asks for nothing.
    """
    condition = ""
    if inside.startswith("?"):
        condition, inside = inside[1:].split(": ", 1)
    yes, _, no = inside.partition("|")
    asked = [c for c in (condition, *slots_in(yes)) if c]
    if not asked:
        raise ValueError(f"[{inside}] asks for nothing")
    return "&".join(dict.fromkeys(asked)), yes, no


def holds(condition: str, slots: dict[str, str]) -> bool:
    """Whether a condition holds, as the page's script decides it.

    Raises:
        ValueError: It names no slot.
    """
    for one in condition.split("&"):
        negated, name = one.startswith("!"), one.lstrip("!")
        found = re.fullmatch(r"([a-z_]+)(?:([=~])([a-z]))?", name)
        if found is None or found.group(1) not in NAMES:
            raise ValueError(f"the condition {one!r} names no slot")
        value = slots.get(found.group(1), "")
        said = value != "" if not found.group(2) else (
            value == found.group(3) if found.group(2) == "=" else found.group(3) in value)
        if said == negated:
            return False
    return True


@functools.cache
def statements() -> dict[str, Any]:
    """The statements that label and letter share with the page, and the months' names."""
    raw = pkgutil.get_data("downflow", "data/homeowner_statements.json")
    if raw is None:
        raise ValueError("data/homeowner_statements.json is missing")
    found: dict[str, Any] = json.loads(raw)
    return found


def shown(name: str, slots: dict[str, str], tongue: str) -> str:
    """A slot as the page shows it."""
    text = slots.get(name, "")
    kind = _slot(name).kind
    if kind == "temperature":
        return f"{text.replace('-', '−')}\u00a0{'°C' if slots.get('units') == 's' else '°F'}"
    if kind == "size":
        return "\u00a0×\u00a0".join(text.split("x")) + "\u00a0in"
    if kind in ("month", "day", "month_name") and text:
        names: list[str] = statements()["months"][tongue]
        if kind == "month_name":
            return names[int(text) - 1]
        month = names[int(text[4:6]) - 1]
        if kind == "month":
            return f"{month}{' de ' if tongue == 'es' else ' '}{text[:4]}"
        return (f"{int(text[6:])} de {month} de {text[:4]}" if tongue == "es"
                else f"{month} {int(text[6:])}, {text[:4]}")
    if kind == "text":
        return re.sub(r"(?<=[0-9])-(?=[0-9])", "–", text)
    return text


def say(text: str, slots: dict[str, str], tongue: str, *, bold: bool = False) -> str:
    """A text with its conditions decided and its slots filled.

    Args:
        text: With brackets and slots.
        slots: What is known.
        tongue: `en` or `es`.
        bold: Whether `**` stays in it.
    """
    def decided(match: re.Match[str]) -> str:
        condition, yes, no = split(match.group(1))
        return yes if holds(condition, slots) else no

    out = _PLACE.sub(lambda m: shown(m.group(1), slots, tongue), _BRACKET.sub(decided, text))
    out = out if bold else _BOLD.sub(r"\1", out)
    return re.sub(r" +([.,:])", r"\1", re.sub(r"  +", " ", out)).strip()


def statement(name: str, slots: dict[str, str], tongue: str) -> str:
    """One statement in words, or nothing where it does not apply. `**` marks what stands bold."""
    one = statements()["statements"][name]
    if one["when"] and not holds(one["when"], slots):
        return ""
    return say(one[tongue], slots, tongue, bold=True)


# ---- the slots of a job -------------------------------------------------------------------

CHART = {"left": 44.0, "right": 328.0, "top": 50.0, "base": 250.0, "cold_f": -10.0,
         "warm_f": 65.0, "hours": 24.0}
"""The page's chart, in its own units: outdoor temperature across, hours a day upwards."""


class _Facts:
    """A plan's values and a job's facts by name."""

    def __init__(self, job: Job, units: str) -> None:
        self.job = job
        self.units = units
        self.values: dict[str, float] = {}
        self.tables: dict[str, list[dict[str, Any]]] = {}
        for answer in plan(job, ranged=False).answers.values():
            self.values |= {n: v.value for n, v in answer.values.items()}
            self.tables |= answer.tables

    def value(self, name: str) -> Any:
        """A value that was entered, or worked out, or nothing."""
        entry = self.job.entry(name)
        return entry.value if entry is not None else self.values.get(name)

    def shown(self, name: str, decimals: int = 0) -> str:
        """A number as the page shows it, in the reader's units; empty where it is not known."""
        value = self.value(name)
        return "" if value is None else self.number(float(value), all_facts()[name].unit, decimals)

    def number(self, value: float, unit: str, decimals: int = 0) -> str:
        """A number in the reader's units, `-` for minus, no minus zero."""
        number = convert(value, unit, shown_unit(unit, self.units))
        text = f"{number:,.{decimals}f}"
        return text[1:] if text.startswith("-") and not text.strip("-0.,") else text

    def code(self, name: str, letters: dict[str, str]) -> str:
        """The letter of a choice, empty where it is not known or has none."""
        value = self.value(name)
        return letters.get(value, "") if isinstance(value, str) else ""


def slots_of(job: Job, units: str = "ip") -> dict[str, str]:
    """The slots of a job, from its plan.

    Args:
        job: The job.
        units: `ip` or `si`, as the crew chose.

    Returns:
        Text by slot name; what is not known is left out. The same job gives the same slots.
    """
    facts = _Facts(job, units)
    one = {"made": _made(job), "units": "s" if units == "si" else "i"}
    one |= _choices(facts)
    one |= _figures(facts)
    one |= _upkeep(facts)
    one["chart"] = _chart(facts)
    for name, fact in (("home", None), ("model", "equipment_model"), ("contact", "crew_contact"),
                       ("capped_by", "fuel_capped_by")):
        text = job.name if fact is None else facts.value(fact)
        one[name] = _free(str(text or ""), _slot(name))
    return {name: text for name, text in one.items() if text and fits(_slot(name), text)}


def _slot(name: str) -> Slot:
    return SLOTS[NAMES.index(name)]


def _free(text: str, slot: Slot) -> str:
    """Typed text with blanks made single; whoever typed more than fits sees it cut."""
    return " ".join(text.split())[: slot.longest].strip()


def _made(job: Job) -> str:
    """The day the link speaks of: the latest visit, or the latest entry."""
    days = [v.date for v in job.visits] + [e.at[:10] for e in job.facts.values() if e.at]
    latest = max((d for d in days if re.fullmatch(r"20\d\d-\d\d-\d\d", d)), default="")
    return latest.replace("-", "")


BURNERS = (("w", "water_heater_fuel"), ("r", "range_fuel"), ("d", "dryer_fuel"),
           ("s", "stove_fuel"))
FLAMES = ("gas", "propane", "oil", "wood")


def _choices(facts: _Facts) -> dict[str, str]:
    known = [(letter, facts.value(name)) for letter, name in BURNERS]
    burning = "".join(letter for letter, value in known if value in FLAMES)
    all_known = all(value is not None for _, value in known)
    gas = any(value in ("gas", "propane") for _, value in known)
    yes = {True: "y", False: "n"}
    alarms = [letter for letter, name in (("s", "smoke_alarms"), ("c", "co_alarm"))
              if facts.value(name) is True]
    return {
        "language": facts.code("owner_language", {"en": "e", "es": "s"}),
        "sections": facts.code("sections", {"single": "s", "double": "d", "triple": "t"}),
        "fuel": facts.code("heating_fuel", {"propane": "p", "gas": "g", "oil": "o",
                                            "electric": "e"}),
        "burns": burning or ("n" if all_known else ""),
        "burns_gas": "y" if gas else "n" if all_known else "",
        "capped": "y" if facts.value("fuel_line_capped") is True else "",
        "capped_on": _compact(facts.value("fuel_capped_on"))
        if facts.value("fuel_line_capped") is True else "",
        "filter_place": facts.code("filter_place", {"door": "d", "slot": "s", "grille": "g"}),
        "panel": facts.code("panel_place", {"hall": "h", "utility": "u", "kitchen": "k",
                                            "bedroom": "b", "outside": "o"}),
        "disconnect": "y" if facts.value("disconnect_outdoors") is True else "",
        "fuel_off": facts.code("fuel_off_place", {"tank": "t", "meter": "m"}) if burning else "",
        "water_off": facts.code("water_off_place", {"heater": "h", "sink": "s", "crawl": "c",
                                                    "meter": "m", "well": "w"}),
        "cable": yes.get(facts.value("heat_cable"), ""),
        "alarms": "".join(alarms),
    }


AUX_CALL_ABOVE_BALANCE_F = 12.0


def _figures(facts: _Facts) -> dict[str, str]:
    out = {
        "day": facts.shown("typical_day_f"),
        "run_before": facts.shown("run_before_h_day"),
        "run_after": facts.shown("run_after_h_day"),
        "air_before": facts.shown("register_before_f"),
        "air_after": facts.shown("register_after_f"),
        "aux_below": facts.shown("hp_balance_f"),
        "em_holds": facts.shown("kit_alone_holds_to_f"),
        "em_times": facts.shown("season_cop", 1).removesuffix(".0"),
        "design": facts.shown("design_heating_f"),
        "setting": facts.shown("indoor_design_f"),
        "rests_above": facts.shown("hp_cycles_above_f"),
        "back_h": facts.shown("setback_back_h", 1).removesuffix(".0"),
        "kit_kw": facts.shown("kit_chosen_kw", 1).removesuffix(".0"),
    }
    balance = facts.value("hp_balance_f")
    if balance is not None:
        step = 5.0
        call = step * math.ceil((float(balance) + AUX_CALL_ABOVE_BALANCE_F) / step)
        out["aux_call"] = facts.number(call, "°F")
    before, after = facts.value("year_cost_before_usd"), facts.value("year_cost_after_usd")
    if before is not None and after is not None:
        out |= {"cost_before": _money(before), "cost_after": _money(after)}
        fuel = {"propane": "propane_usd_gal", "gas": "gas_usd_therm",
                "oil": "oil_usd_gal"}.get(str(facts.value("heating_fuel")))
        if fuel is not None:
            out["fuel_price"] = f"{float(facts.value(fuel)):.2f}"
        out["electric_price"] = f"{float(facts.value('electricity_usd_kwh')):.3f}"
    months = facts.tables.get("year_months", [])
    if months:
        peak = max(months, key=lambda m: float(m["heat_pump_kwh"] + m["backup_kwh"]))
        kwh = peak["heat_pump_kwh"] + peak["backup_kwh"]
        out |= {"peak_month": f"{peak['month']:.0f}", "peak_kwh": f"{round(kwh, -1):,.0f}"}
    return out


def _money(dollars: float) -> str:
    """Whole tens of dollars: nobody can promise more."""
    return f"{round(dollars, -1):,.0f}"


def _upkeep(facts: _Facts) -> dict[str, str]:
    size = str(facts.value("filter_size") or "").lower().replace("×", "x").replace(" ", "")
    every = facts.value("filter_every_months")
    changed = facts.value("filter_changed_on")
    out = {
        "filter": size.removesuffix("in"),
        "filter_months": str(every or ""),
        "breaker_in": _marks(facts.value("indoor_breaker_marks")),
        "breaker_out": _marks(facts.value("outdoor_breaker_marks")),
        "visit": _compact(facts.value("yearly_visit_on"))[:6],
    }
    if every and changed:
        out["filter_next"] = month_after(str(changed), int(every))
    return out


def _marks(value: Any) -> str:
    return str(value or "").replace("–", "-").replace("−", "-").strip()


def _compact(value: Any) -> str:
    return str(value or "").replace("-", "")


def month_after(day: str, months: int) -> str:
    """The month that lies some months after an ISO day, as YYYYMM."""
    start = datetime.date.fromisoformat(day)
    place = start.year * 12 + start.month - 1 + months
    return f"{place // 12:04d}{place % 12 + 1:02d}"


def _across(outdoor_f: float) -> int:
    share = (outdoor_f - CHART["cold_f"]) / (CHART["warm_f"] - CHART["cold_f"])
    x = CHART["left"] + share * (CHART["right"] - CHART["left"])
    return round(min(max(x, CHART["left"]), CHART["right"]))


def _up(hours: float) -> int:
    share = min(max(hours, 0.0), CHART["hours"]) / CHART["hours"]
    return round(CHART["base"] - share * (CHART["base"] - CHART["top"]))


def _chart(facts: _Facts) -> str:
    """Eight places of the chart: where it starts to rest, where heating ends, the furnace's
    height at the left edge, where backup starts, its height at the left edge, the marked
    day, and the furnace's and the heat pump's height there. 0 where there is none.
    """
    needed = [facts.value(n) for n in ("hp_cycles_above_f", "season_balance_f", "typical_day_f",
                                       "run_after_h_day", "hp_balance_f")]
    if any(v is None for v in needed):
        return ""
    rests, ends, day, after, backup = (float(v) for v in needed)
    before = facts.value("run_before_h_day")
    furnace_left = furnace_day = 0
    if before is not None and ends > day:
        per_degree = float(before) / (ends - day)
        furnace_left, furnace_day = _up(per_degree * (ends - CHART["cold_f"])), _up(float(before))
    backup_x = backup_left = 0
    if backup > CHART["cold_f"] + 1:
        backup_x = _across(backup)
        backup_left = _up(_backup_hours(facts))
    places = (_across(rests), _across(ends), furnace_left, backup_x, backup_left, _across(day),
              furnace_day, _up(after))
    return ".".join(str(p) for p in places)


def _backup_hours(facts: _Facts) -> float:
    """Hours a day that the kit would run at the chart's left edge.

    Between the balance point and the design night what is short grows nearly straight; the
    same slope is carried to the edge.
    """
    short, kit = facts.value("kit_shortfall_kw"), facts.value("kit_real_kw")
    design, balance = facts.value("design_heating_f"), facts.value("hp_balance_f")
    if not short or not kit or design is None or balance is None or balance <= design:
        return 0.0
    slope = float(short) / (float(balance) - float(design))
    need = slope * (float(balance) - CHART["cold_f"])
    return CHART["hours"] * min(1.0, need / float(kit))


# ---- link, code, label --------------------------------------------------------------------

def link(job: Job, site: str = "", units: str = "ip") -> str:
    """The homeowner link of a job.

    Args:
        job: The job.
        site: Address of the handbook, such as `https://example.org/handbook/`. Without one
            the link holds only within the handbook itself.
        units: `ip` or `si`.

    Returns:
        The address with its fragment.
    """
    base = site.strip()
    if base and not base.endswith("/"):
        base += "/"
    return f"{base}h/{encode(slots_of(job, units))}"


def qr_svg(address: str) -> str:
    """A QR code of level M as a drawing, black squares only, four modules of quiet zone.

    Args:
        address: A whole address; it must start with `https://` or `http://`, since a code
            that opens nothing for others is not made.

    Returns:
        An SVG with one path, one unit for each module.

    Raises:
        ValueError: Not a whole address, or too long for a code that can be printed small.
    """
    if not re.match(r"https?://[^\s/]+/", address):
        raise ValueError("the address of the handbook is missing: no code is made")
    import segno

    code = segno.make_qr(address, error="m", boost_error=False)
    rows = [list(row) for row in code.matrix]
    size = len(rows) + 8
    runs: list[str] = []
    for y, row in enumerate(rows):
        x = 0
        while x < len(row):
            if not row[x]:
                x += 1
                continue
            start = x
            while x < len(row) and row[x]:
                x += 1
            runs.append(f"M{start + 4} {y + 4}h{x - start}v1h-{x - start}z")
    return (f'<svg viewBox="0 0 {size} {size}" role="img" aria-label="QR code of the homeowner '
            f'page" shape-rendering="crispEdges"><path d="{"".join(runs)}"></path></svg>')


def qr_modules(address: str) -> int:
    """Modules along one side of the code, its quiet zone counted."""
    import segno

    code = segno.make_qr(address, error="m", boost_error=False)
    return len(list(code.matrix)) + 8


LEAST_MODULE_MM = 0.4


def qr_width_mm(address: str) -> float:
    """Least width of the printed code, so that one module is at least 0.4 mm. [mm]"""
    return LEAST_MODULE_MM * qr_modules(address)
