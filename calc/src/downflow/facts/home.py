"""Facts about the home itself, from its data plate and a tape."""

from downflow.facts.definition import Choice, Fact, share, within

FACTS: tuple[Fact, ...] = (
    Fact("sections", "Sections", "choice", where="plate",
         how="One certification label for each section.",
         choices=(Choice("single", "single"), Choice("double", "double"),
                  Choice("triple", "triple")), first=True),
    Fact("year_built", "Year built", "number", "", 1950, 2035, 0,
         "On the data plate near the main panel.", "plate", first=True,
         spread={"estimated": within(4.0)}),
    Fact("floor_area_ft2", "Floor area", "number", "ft²", 200, 5000, 0,
         "Length times width of the heated floor, tongue of the frame not counted.", "plate",
         first=True, spread={"estimated": share(0.05), "measured": share(0.01)}),
)
