"""Facts about fresh air: the duct into the blower cabinet, its damper, or a fan of its own."""

from downflow.facts.definition import Assumption, Choice, Fact, given, share, within
from downflow.sources import Source

HOME_VENTILATION = Source("24 CFR 3280", "3280.103(b): 0.035 cfm for each ft², 50 cfm at least",
                          "regulation")
VENTILATION_CONTROL = Source("24 CFR 3280",
                             "3280.103(b)(3)–(5): runs without heating or cooling, labelled",
                             "regulation")
VENTILATION_PATH = Source("24 CFR 3280", "3280.103(b)(2): straight from outdoors", "regulation")
VENTILATION_PRESSURE = Source("24 CFR 3280",
                              "3280.103(b)(1): not pressed in zones 2 and 3, not drawn in zone 1",
                              "regulation")
NATIONAL_VENTILATION = Source("ASHRAE 62.2", "0.03 cfm for each ft² and 7.5 cfm for each person",
                              "standard")
DUCT_PRESSURE = Source("Fundamentals handbook 2021, ch. 21", "pressure loss of ducts and fittings",
                       "handbook")
INTAKE_LOSS = Source("A maker's table for a fresh-air intake",
                     "hood with screen, two elbows, damper: 6.5 velocity heads", "data")
LOST_INTAKE = Source("24 CFR 3280", "3280.103(b)(3): ventilation through the heating system",
                     "regulation")

FACTS: tuple[Fact, ...] = (
    Fact("fresh_before", "Fresh air before the job", "choice", where="closet",
         how="Look for a small duct from the roof into the old furnace or its closet.",
         choices=(Choice("duct", "a duct into the old furnace"), Choice("fan", "a fan of its own"),
                  Choice("none", "none found"))),
    Fact("fresh_path", "Fresh air after the job", "choice", where="closet",
         how="As planned.",
         choices=(Choice("duct", "a duct into the blower cabinet"),
                  Choice("fan", "a fan of its own that blows in"), Choice("none", "none"))),
    Fact("intake_from", "The air comes from", "choice", where="outdoors",
         how="Follow the duct to its hood.",
         choices=(Choice("outdoors", "outdoors, straight"), Choice("crawl", "the crawl space"),
                  Choice("cavity", "a roof or wall cavity"))),
    Fact("intake_diameter_in", "Fresh-air duct, inside diameter", "number", "in", 2, 12, 1,
         "Inside.", "closet", spread={"measured": within(0.1), "estimated": within(0.5)}),
    Fact("intake_length_ft", "Fresh-air duct, length", "number", "ft", 1, 60, 0,
         "From hood to cabinet.", "closet",
         spread={"measured": within(0.5), "estimated": share(0.25)}),
    Fact("intake_wall", "Fresh-air duct, wall", "choice", where="closet", how="Look and feel.",
         choices=(Choice("galvanized", "smooth metal"), Choice("flex", "flexible"))),
    Fact("intake_loss_c", "Loss of hood, screen, bends and damper", "number", "", 1, 20, 1,
         "In velocity heads, added up from the parts.", "closet", spread={"estimated": share(0.3)},
         assumption=Assumption(6.5, "hood with screen, two elbows and a damper", INTAKE_LOSS,
                               within(2.0, INTAKE_LOSS))),
    Fact("intake_suction_inwc", "Suction where the duct ends", "number", "in w.c.", 0.005, 1, 3,
         "Below outdoor pressure, as a positive number, blower at its usual speed.", "closet",
         spread={"measured": within(0.01), "data sheet": share(0.15), "estimated": share(0.4)}),
    Fact("intake_damper", "Damper in the duct", "choice", where="closet", how="Look in the duct.",
         choices=(Choice("motor", "motor damper, opens with the control"),
                  Choice("hand", "hand damper"), Choice("none", "none"))),
    Fact("fresh_fan_cfm", "Fan of its own, blowing in", "number", "cfm", 5, 400, 0,
         "Measured at its grille, or from its label.", "closet",
         spread={"measured": share(0.10), "data sheet": share(0.25), "estimated": share(0.4)}),
    Fact("fresh_minutes_h", "It runs", "number", "min/h", 0, 60, 0,
         "Minutes in each hour that the control is set to; with no control, that the blower runs.",
         "closet", spread={"estimated": within(8.0)}),
    Fact("fresh_alone", "It can run without heating or cooling", "yesno", where="closet",
         how="Try it: the control starts blower or fan alone."),
    Fact("fresh_label", "Its switch is labelled", "yesno", where="closet",
         how="A permanent label that says whole-house ventilation."),
    given("fresh_home_cfm", "By the rule for manufactured homes", "cfm", 0),
    given("fresh_national_cfm", "By the national standard", "cfm", 0),
    given("fresh_running_cfm", "While it runs", "cfm", 0),
    given("fresh_average_cfm", "Fresh air on the average", "cfm", 0),
    given("fresh_minutes_need", "Minutes each hour for the rule", "min/h", 0),
    given("fresh_heat_btuh", "Heat for it on the design night", "Btu/h", 0),
    given("fresh_season_mmbtu", "Heat for it in a year", "MMBtu", 1),
    given("fresh_season_kwh", "Electricity for it in a year", "kWh", 0),
    given("fresh_season_usd", "It costs", "$/year", 0),
)
