"""Facts about condensate: trap, drain, float switch, and the air that the water comes from."""

from downflow.facts.definition import (
    Assumption,
    Choice,
    Fact,
    Hazard,
    given,
    share,
    within,
)
from downflow.sources import PRACTICE, Source

TRAP = Source("Makers' manuals for draw-through air handlers",
              "drop of the suction and 1 in, seal of half of it", "label")
TRAP_FLOOR = Source("Trap depths", "at least 2 in of drop and 1 in of seal", "practice")
TRAP_PLACE = Source("Trap in the heated space", "above the closet floor", "practice")
DRAIN_SLOPE = Source("International Mechanical Code", "307.2.1: 1/8 in for each foot", "code")
DRAIN_SIZE = Source("International Mechanical Code",
                    "307.2.2: 3/4 in, and not smaller than the pan's outlet", "code")
DRAIN_HANGERS = Source("International Mechanical Code", "305.4: PVC every 4 ft", "code")
DRAIN_END = Source("24 CFR 3285", "3285.503(a)(1)(iii)(C): beyond the perimeter of the home",
                   "regulation")
OVERFLOW = Source("International Residential Code",
                  "M1411.3.1 (2018): overflow protection, level switch", "code")
DRAIN_WINTER = Source("Drains in a cold crawl space", "freezing", "practice")
ORIFICE = Source("Fundamentals handbook", "flow through an opening, coefficient 0.6", "handbook")
FITTINGS = Source("ASTM D2466", "socket fittings, centre to bottom of socket", "memory")
PIPE = Source("ASTM D1785", "schedule 40, outside diameters", "standard")
MOIST_AIR = Source("Fundamentals handbook 2021, ch. 1", "psychrometric equations (psychrolib)",
                   "handbook")
WATER = Source("Water", "8.337 lb/gal at 60 °F; 143.4 Btu/lb to melt ice", "handbook")
FROST = Source("Moist air at a frosting coil", "straight line to saturation at the coil",
               "handbook")
COIL_APPROACH = Source("Outdoor coils in frost", "surface 8 to 15 °F below the air", "practice")
DEFROST_TIMES = Source("Defrost controls", "every 30 to 120 minutes in wet cold", "practice")
WET_COIL = Source("Air behind a wet coil", "85 to 95 % relative humidity", "practice")
WET_COLD = Source("Wet cold day", "near freezing, fog or sleet", "practice")
COOLING_HOURS = Source("Hours of cooling on a hot day", "6 to 14", "practice")

CRAWL = Hazard(
    "warning",
    "Under the home: bad air, live wires, animals, a home on jacks. Someone outside who hears you, "
    "a gas check first, lamp, mask, gloves; never under an unblocked home.")
FLOOD = Hazard(
    "warning",
    "Water near live elements. Lock the backup kit off at its breaker and prove it dead before any "
    "water is poured; pour only at the drain's cleanout.")

FACTS: tuple[Fact, ...] = (
    Fact("pan_suction_inwc", "Suction at the drain pan, planned", "number", "in w.c.", 0, 4, 2,
         "How far the pan lies below room pressure at top airflow with a dirty filter and a wet "
         "coil, as a positive number: filter, coil and return together. 0 where the coil comes "
         "after the blower.", "equipment",
         spread={"data sheet": share(0.10), "estimated": share(0.25), "measured": within(0.03)}),
    Fact("pan_suction_read_inwc", "Suction at the drain pan, read at start-up", "number",
         "in w.c.", 0, 1000, 2,
         "Probe at the pan, blower at top speed, filter half covered or dirty, coil wet.",
         "readings", visit=True, spread={"measured": within(0.03)}),
    Fact("pan_outlet_size", "Outlet of the drain pan", "choice", where="equipment",
         how="Pipe size of the pan's thread.",
         choices=(Choice("3/4", "3/4 in"), Choice("1", "1 in"))),
    Fact("pan_outlet_in", "Height of the pan's outlet above the closet floor", "number", "in",
         0, 72, 1, "From the floor to the middle of the outlet, cabinet on its base.", "closet",
         spread={"measured": within(0.125), "estimated": within(1.0)}),
    Fact("drain_pipe", "Drain pipe", "choice", where="closet",
         how="PVC, schedule 40.",
         choices=(Choice("3/4", "3/4 in"), Choice("1", "1 in"), Choice("1-1/4", "1-1/4 in"))),
    Fact("trap_place", "Where the trap is", "choice", where="closet",
         how="Follow the pipe from the pan.",
         choices=(Choice("closet", "in the closet, above the floor"),
                  Choice("crawl", "in the crawl space"), Choice("none", "there is none"))),
    Fact("trap_state", "State of the trap", "choice", where="closet",
         how="Look, and pour a cup of water.",
         choices=(Choice("planned", "planned"), Choice("primed", "built and full of water"),
                  Choice("dry", "built and empty"))),
    Fact("trap_built_head_in", "Drop of the trap as built", "number", "in", 0, 24, 2,
         "From the middle of the pan's outlet down to the middle of the trap's outlet.", "closet",
         spread={"measured": within(0.125), "estimated": within(0.5)}),
    Fact("trap_built_seal_in", "Seal of the trap as built", "number", "in", 0, 24, 2,
         "From the bottom of the trap's outlet down to the top of the bottom bend.", "closet",
         spread={"measured": within(0.125), "estimated": within(0.5)}),
    Fact("fitting_face_in", "Elbow: centre to face", "number", "in", 0.5, 3, 2,
         "Measure one of the fittings that you bought, from the middle of its other opening to "
         "its face.", "equipment", spread={"measured": within(0.03)},
         assumption=Assumption(1.28, "9/16 in and a socket of 23/32 in for 3/4 in elbows",
                               FITTINGS, within(0.10, FITTINGS))),
    Fact("fitting_socket_in", "Elbow: depth of its socket", "number", "in", 0.4, 1.5, 2,
         "How far a pipe goes in.", "equipment", spread={"measured": within(0.03)},
         assumption=Assumption(0.72, "23/32 in for 3/4 in elbows", FITTINGS,
                               within(0.05, FITTINGS))),
    Fact("drain_run_ft", "Length of the drain after the trap", "number", "ft", 0.5, 120, 1,
         "Along the pipe, to its open end.", "crawl", hazard=CRAWL,
         spread={"measured": within(0.5), "estimated": share(0.15)}),
    Fact("drain_drop_in", "Drop from the trap's outlet to the drain's end", "number", "in",
         0, 96, 2, "With a water level or laser, between the two ends of the pipe.", "crawl",
         hazard=CRAWL, spread={"measured": within(0.25), "estimated": within(1.5)}),
    Fact("drain_end", "Where the drain ends", "choice", where="outdoors",
         how="Follow it to its end.",
         choices=(Choice("beyond", "beyond the perimeter of the home, in the open"),
                  Choice("under", "under the home"),
                  Choice("walk", "on a walk, step or street"),
                  Choice("sewer", "in a sewer or vent pipe"),
                  Choice("pump", "in a pump"))),
    Fact("drain_cleanouts", "Cleanouts with caps on both sides of the trap", "yesno",
         where="closet", how="A tee before and a tee after; the one before the trap is capped."),
    Fact("drain_cold", "The drain passes a place that freezes", "yesno", where="crawl",
         how="A vented crawl space freezes when it is cold outside."),
    Fact("drain_winter", "What keeps it from freezing", "choice", where="crawl",
         how="Cooling makes no water in winter; what is left in the pipe freezes.",
         choices=(Choice("drained", "falls all the way and runs empty"),
                  Choice("insulated", "insulated, short, and falls"),
                  Choice("cable", "listed heat cable"), Choice("nothing", "nothing"))),
    Fact("float_place", "Float switch", "choice", where="closet",
         how="A downflow cabinet has no room for a pan below, so a switch must watch the water.",
         choices=(Choice("port", "in the pan's second port"),
                  Choice("line", "in the drain line before the trap"),
                  Choice("none", "none"))),
    Fact("float_stops", "What the float switch stops", "choice", where="readings", visit=True,
         how="Trip it and watch.",
         choices=(Choice("everything", "heating and cooling"), Choice("cooling", "cooling only"),
                  Choice("nothing", "nothing"), Choice("unknown", "not tried yet"))),
    Fact("float_test", "Test of the float switch", "choice", where="readings", visit=True,
         hazard=FLOOD,
         how="Lock the kit off, close the drain, pour water at the cleanout until the switch "
             "trips, then drain it and see that it resets.",
         choices=(Choice("passed", "tripped and reset, kit locked off"),
                  Choice("failed", "did not trip"), Choice("due", "not done yet"))),
    # ---- where the water comes from ----
    Fact("cooling_airflow_cfm", "Airflow in cooling", "number", "cfm", 150, 3000, 0,
         "Actual airflow with the cooling speed, planned or measured.", "equipment",
         spread={"measured": share(0.07), "data sheet": share(0.10), "estimated": share(0.2)}),
    Fact("cool_return_f", "Air entering the coil in cooling", "number", "°F", 55, 100, 1,
         "Dry bulb of the return air on a cooling day.", "readings",
         spread={"measured": within(0.5), "estimated": within(2.0)},
         assumption=Assumption(75.0, "indoor temperature of the cooling design", PRACTICE,
                               within(2.0))),
    Fact("cool_return_wb_f", "Wet bulb entering the coil", "number", "°F", 35, 90, 1,
         "Wet bulb of the return air. It is below the dry bulb.", "readings",
         spread={"measured": within(0.7), "estimated": within(2.0)}),
    Fact("cool_supply_f", "Air leaving the coil in cooling", "number", "°F", 35, 80, 1,
         "Dry bulb of the supply air, out of sight of the coil.", "readings",
         spread={"measured": within(0.5), "estimated": within(2.0)}),
    Fact("cool_supply_rh_pct", "Humidity leaving the coil", "number", "%", 30, 100, 0,
         "Relative humidity of the supply air; behind a wet coil 85 to 95 %.", "readings",
         spread={"measured": within(3.0), "estimated": within(6.0)},
         assumption=Assumption(92.0, "behind a wet coil", WET_COIL, within(4.0, WET_COIL))),
    Fact("cooling_hours_day", "Hours of cooling on a hot day", "number", "h/day", 0, 24, 0,
         "How long the compressor runs on the hottest days.", "comfort",
         spread={"estimated": share(0.4)},
         assumption=Assumption(9.0, "between 6 and 14 hours", COOLING_HOURS,
                               within(4.0, COOLING_HOURS))),
    Fact("frost_day_f", "Outdoors on a wet cold day", "number", "°F", 5, 45, 0,
         "Outdoor temperature of a day with fog, sleet or wet snow: that is when it frosts most.",
         "place", spread={"estimated": within(3.0)},
         assumption=Assumption(33.0, "frost is heaviest near freezing", WET_COLD, within(3.0))),
    Fact("frost_day_rh_pct", "Humidity of a wet cold day", "number", "%", 20, 100, 0,
         "Relative humidity outdoors.", "place", spread={"estimated": within(8.0)},
         assumption=Assumption(90.0, "fog and sleet", WET_COLD, within(8.0))),
    Fact("coil_below_air_f", "Outdoor coil below the air", "number", "°F diff", 4, 25, 0,
         "Surface of the outdoor coil while it heats, below the outdoor air.", "readings",
         spread={"measured": within(2.0), "estimated": within(4.0)},
         assumption=Assumption(11.0, "8 to 15 °F in frost", COIL_APPROACH,
                               within(3.0, COIL_APPROACH))),
    Fact("defrost_every_min", "Time between two defrosts", "number", "min", 20, 360, 0,
         "Time it in wet cold, or read the control's setting.", "readings",
         spread={"measured": share(0.1), "estimated": share(0.4)},
         assumption=Assumption(60.0, "30 to 120 minutes in wet cold", DEFROST_TIMES,
                               within(25.0, DEFROST_TIMES))),
    Fact("frost_run_pct", "Share of a wet cold day it runs", "number", "%", 5, 100, 0,
         "Near freezing a unit that fits the home runs most of the day.", "comfort",
         spread={"estimated": within(20.0)},
         assumption=Assumption(75.0, "half load with a variable-speed unit is long running",
                               WET_COLD, within(20.0))),
    # ---- given ----
    given("trap_head_in", "Drop from the pan's outlet to the trap's outlet", "in", 2),
    given("trap_seal_in", "Seal below the trap's outlet", "in", 2),
    given("trap_total_in", "Height that the trap needs", "in", 2),
    given("trap_holds_inwc", "Suction that the trap as built holds", "in w.c.", 2),
    given("trap_down_cut_in", "Cut: pipe of the down leg", "in", 2),
    given("trap_up_cut_in", "Cut: pipe of the up leg", "in", 2),
    given("drain_need_in", "Drop that the drain needs", "in", 2),
    given("drain_slope_in_ft", "Slope of the drain", "", 3),
    given("drain_hangers", "Hangers", "", 0),
    given("trap_open_cfm", "Air drawn in through an empty trap", "cfm", 1),
    given("coil_water_gal_h", "Water from the coil", "gal/h", 2),
    given("coil_water_gal_day", "Water from the coil on a hot day", "gal/day", 1),
    given("frost_lb_h", "Frost on the outdoor coil", "lb/h", 1),
    given("melt_lb", "Water of one defrost", "lb", 1),
    given("melt_gal_day", "Defrost water on a wet cold day", "gal/day", 1),
)
