"""What permits and rebate programs usually ask for, as rows: for print and as CSV.

Every row comes from the job sheet or from an answer. What nobody has said stands there as
not known, so that a gap is seen before the form goes out.
"""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass

from downflow.facts import Fact, fact
from downflow.facts.job import Job
from downflow.plan import Plan
from downflow.units import Quantity, convert, shown_decimals, shown_unit, typed_text, unit

UNKNOWN = "not known yet"
RECORD = "commissioning-record"

SECTIONS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("The home", ("place_name", "postal_code", "state", "sections", "year_built",
                  "floor_area_ft2", "elevation_ft", "bedrooms")),
    ("What was there", ("heating_fuel", "furnace_input_btuh", "furnace_efficiency_pct",
                        "old_refrigerant", "old_recovered", "fuel_line_capped",
                        "fuel_capped_by", "fuel_capped_on", "vent_state")),
    ("What goes in", ("equipment_model", "hp_rated_together", "refrigerant", "charge_total_lb",
                      "rating_cooling_95f_btuh", "cooling_seer2", "hspf2_printed", "hspf2_worked",
                      "hp_cutout_f", "kit_chosen_kw", "leak_detector")),
    ("Load and size", ("design_heating_f", "design_cooling_f", "indoor_design_f",
                       "home_ua_btuh_f", "design_load_btuh", "cooling_design_btuh",
                       "hp_load_btuh", "hp_capacity_design_btuh", "hp_share_pct",
                       "hp_balance_f", "season_backup_pct")),
    ("Ducts and air", ("air_target_cfm", "airflow_read_cfm", "leakage_before_cfm25",
                       "leakage_cfm25", "fresh_average_cfm", "fresh_home_cfm")),
    ("Power", ("main_breaker_a", "service_load_a", "code_edition", "kit_breaker_a",
               "kit_wire_planned", "outdoor_mca_a", "outdoor_mocp_a", "outdoor_breaker_a",
               "outdoor_wire")),
)
"""Facts, entered or worked out, in the order in which forms ask for them."""


NAMES = {"kit_breaker_a": "Breaker of the kit", "kit_chosen_kw": "Backup kit"}
"""Names that would say too little outside their own page."""


@dataclass(frozen=True)
class Line:
    """One row: what is asked, what is known, where from.

    Attributes:
        section: Its heading.
        item: What is asked.
        value: In the reader's units, without the unit.
        unit: The unit's label.
        origin: `measured`, `data sheet`, `estimated`, `worked out`, or empty.
    """

    section: str
    item: str
    value: str
    unit: str = ""
    origin: str = ""

    @property
    def known(self) -> bool:
        """Whether there is anything to hand in."""
        return self.value != UNKNOWN


def lines(made: Plan, system: str = "ip") -> list[Line]:
    """Every row for a job's permit and rebate papers."""
    out: list[Line] = []
    for title, names in SECTIONS:
        out += [_line(title, name, made, system) for name in names]
    out += _readings(made, system)
    out += _photos(made.job)
    return out


def csv_text(made: Plan, system: str = "ip") -> str:
    """The rows as CSV with a head, for a spreadsheet."""
    text = io.StringIO()
    table = csv.writer(text)
    table.writerow(("section", "item", "value", "unit", "from"))
    table.writerow(("Job", "Name", _safe(made.job.name), "", ""))
    for row in lines(made, system):
        table.writerow((row.section, row.item, _safe(row.value), row.unit, row.origin))
    return text.getvalue()


def _safe(text: str) -> str:
    """A text that a spreadsheet takes for a text, never for a formula."""
    return "'" + text if text[:1] in "=+@\t\r" or (
        text[:1] == "-" and not text[1:2].isdigit()) else text


def _line(section: str, name: str, made: Plan, system: str) -> Line:
    one = fact(name)
    label = NAMES.get(name, one.label)
    entry = made.job.entry(name)
    if entry is not None:
        return Line(section, label, _value(one, entry.value, system), _unit(one, system),
                    entry.origin)
    for answer in made.answers.values():
        if name in answer.values:
            value = _value(one, answer.values[name].value, system, rounded=True)
            return Line(section, label, value, _unit(one, system), "worked out")
    if one.assumption is not None:
        return Line(section, label, _value(one, one.assumption.value, system),
                    _unit(one, system), "assumed")
    return Line(section, label, UNKNOWN)


def _unit(one: Fact, system: str) -> str:
    return unit(shown_unit(one.unit, system)).label if one.kind == "number" else ""


def _value(one: Fact, value: object, system: str, *, rounded: bool = False) -> str:
    if one.kind == "number" and isinstance(value, (int, float)):
        to = shown_unit(one.unit, system)
        shown = convert(float(value), one.unit, to)
        decimals = shown_decimals(one.decimals, one.unit, to)
        exact = to == one.unit and not rounded
        text = typed_text(shown, decimals) if exact else f"{shown:.{decimals}f}"
        return text.replace("−", "-")
    if one.kind == "yesno":
        return "yes" if value else "no"
    if one.kind == "choice":
        return next((c.label for c in one.choices if c.value == value), str(value))
    return str(value)


def _readings(made: Plan, system: str) -> list[Line]:
    answer = made.answers.get(RECORD)
    if answer is None or not answer.ok:
        return [Line("Readings", "Commissioning record", UNKNOWN)]
    out: list[Line] = []
    for row in answer.tables["record_table"]:
        label, state = str(row["reading"]), str(row["state"])
        if "read" in row:
            said = Quantity(row["read"], str(row["unit"]), int(row["decimals"]))
            to = shown_unit(said.unit, system)
            decimals = shown_decimals(int(row["decimals"]), said.unit, to)
            out.append(Line("Readings", label, f"{convert(said.value, said.unit, to):.{decimals}f}",
                            unit(to).label, "measured"))
        else:
            out.append(Line("Readings", label, str(row.get("note") or state)
                            if state == "taken" else state))
    return out


def _photos(job: Job) -> list[Line]:
    count = len(job.photos)
    return [Line("Photos", "Photos kept with the job", str(count) if count else "none")]
