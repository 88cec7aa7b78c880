"""Facts for the hand-over: what the homeowner needs to find, and what was left behind.

They are records. What is not recorded is not printed.
"""

from downflow.facts.definition import Choice, Fact

_APPLIANCE = (Choice("none", "there is none"), Choice("electric", "electric"),
              Choice("gas", "natural gas"), Choice("propane", "propane"),
              Choice("oil", "oil"), Choice("wood", "wood or pellets"))

MONTHS = tuple(Choice(str(n), f"every {n} months" if n > 1 else "every month")
               for n in (1, 2, 3, 4, 6, 12))


def _burns(name: str, label: str) -> Fact:
    return Fact(name, label, "choice", where="comfort", choices=_APPLIANCE,
                how="After the job. Its fuel decides about gas smell, vents and alarms.")


FACTS: tuple[Fact, ...] = (
    Fact("equipment_model", "Equipment, as you call it", "text", where="comfort",
         how="A short name for the label and the homeowner, at most 24 letters."),
    Fact("owner_language", "Language of the homeowner", "choice", where="comfort",
         how="The page opens in it; both are there.",
         choices=(Choice("en", "English"), Choice("es", "Spanish"))),
    Fact("filter_size", "Filter size, as printed on its frame", "text", where="closet",
         how="Width, length and depth in inches, such as 16x25x4."),
    Fact("filter_place", "Where the filter is", "choice", where="closet",
         how="Where the homeowner will look for it.",
         choices=(Choice("door", "behind the louvered door"), Choice("slot", "in the unit"),
                  Choice("grille", "behind the return grille"))),
    Fact("filter_every_months", "Filter to be changed", "choice", where="closet",
         how="By the size of the filter and the dust of the home: see the filter calculator.",
         choices=MONTHS),
    Fact("filter_changed_on", "Filter put in on", "date", where="closet",
         how="The day of this visit, if a new one went in."),
    Fact("indoor_breaker_marks", "Breaker of the indoor unit, as marked", "text", where="panel",
         how="The numbers beside it in the panel, such as 5-7."),
    Fact("outdoor_breaker_marks", "Breaker of the outdoor unit, as marked", "text",
         where="panel", how="The numbers beside it in the panel, such as 10-12."),
    Fact("panel_place", "Where the panel is", "choice", where="panel",
         how="The panel with these breakers.",
         choices=(Choice("hall", "in the hall"), Choice("utility", "in the utility room"),
                  Choice("kitchen", "in the kitchen"), Choice("bedroom", "in a bedroom"),
                  Choice("outside", "outside, on the wall or a pole"))),
    Fact("disconnect_outdoors", "Switch box beside the outdoor unit", "yesno", where="outdoors",
         how="Within sight of the unit."),
    Fact("fuel_off_place", "Where the remaining fuel is shut off", "choice", where="outdoors",
         how="Only where something still burns fuel.",
         choices=(Choice("tank", "on the tank, under its lid"),
                  Choice("meter", "at the gas meter"), Choice("nothing", "nothing is left"))),
    Fact("water_off_place", "Where the water is shut off", "choice", where="comfort",
         how="The main valve of the home.",
         choices=(Choice("heater", "beside the water heater"), Choice("sink", "under a sink"),
                  Choice("crawl", "under the home, behind a panel of the skirting"),
                  Choice("meter", "at the water meter"), Choice("well", "at the well tank"))),
    Fact("heat_cable", "Heat cable on the water pipes under the home", "yesno", where="crawl",
         how="Plugged in and warm when tried."),
    Fact("fuel_line_capped", "Fuel line closed, capped and leak-tested", "yesno", where="closet",
         how="By a licensed person, who signs for it."),
    Fact("fuel_capped_by", "Fuel line capped by", "text", where="closet",
         how="Name and licence, as on the tag."),
    Fact("fuel_capped_on", "Fuel line capped on", "date", where="closet",
         how="The day on the tag."),
    _burns("water_heater_fuel", "Water heater after the job"),
    _burns("range_fuel", "Range or oven after the job"),
    _burns("dryer_fuel", "Clothes dryer after the job"),
    _burns("stove_fuel", "Stove, fireplace or room heater after the job"),
    Fact("smoke_alarms", "Smoke alarms work", "yesno", where="rooms",
         how="Press the button of each."),
    Fact("co_alarm", "Carbon monoxide alarm works", "yesno", where="rooms",
         how="Press its button. Local code says where one is needed."),
    Fact("yearly_visit_on", "Next yearly visit", "date", where="comfort",
         how="The month is shown to the homeowner."),
    Fact("crew_contact", "Your contact, if you wish it on the page", "text", where="comfort",
         how="Any text of at most 60 letters. It is part of the link: whoever has the link reads "
             "it."),
)
