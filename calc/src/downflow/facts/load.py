"""Facts about how much heat the home needs on the design night."""

from downflow.facts.definition import Assumption, Fact, Spread, given, share, within
from downflow.sources import PRACTICE, Source

TYPICAL_YEAR = Source("Typical-year percentile against published design temperatures",
                      "31 stations", "data")
HUD_INDOOR = Source("24 CFR 3280", "3280.506(b): 70 °F indoors", "regulation")
DELIVERY_STUDY = Source("Duct retrofits in eight manufactured homes, OSTI 20006305",
                        "69 % before, 83 % after sealing", "study")

FACTS: tuple[Fact, ...] = (
    Fact("indoor_design_f", "Indoor temperature to hold", "number", "°F", 55, 80, 0,
         "What the home must hold on the design night. 70 °F unless the owner asks for more.",
         "comfort", assumption=Assumption(70.0, "the temperature the home was built to hold",
                                          HUD_INDOOR)),
    Fact("design_heating_f", "Outdoor design temperature, heating", "number", "°F", -60, 65, 0,
         "The local code's winter design temperature: ask the code official. A typical "
         "year's cold percentile is only an estimate.",
         "place", given=True, first=True,
         spread={"estimated": Spread(4.0, 9.0, False, TYPICAL_YEAR),
                 "measured": within(3.0), "data sheet": within(0.0)}),
    given("home_ua_btuh_f", "Heat loss of the home per degree", "Btu/(h °F)", 0, enterable=True,
          low=20, high=3000, how="From a load report, without duct losses. Or let it be worked "
                                 "out from the envelope and the bills.",
          spread={"data sheet": share(0.10), "estimated": share(0.25), "measured": share(0.10)}),
    given("design_load_btuh", "Heat loss of the home at design", "Btu/h", 0),
    given("delivery_efficiency_pct", "Share of the heat that the ducts deliver", "%", 0,
          enterable=True, low=30, high=100,
          how="From a duct test. Belly ducts of eight homes delivered 69 % as found and 83 % "
              "after sealing.",
          spread={"estimated": Spread(10.0, 10.0, False, DELIVERY_STUDY),
                  "measured": within(4.0), "data sheet": within(5.0)}),
    Fact("internal_gains_btuh", "Heat from people and appliances", "number", "Btu/h", 0, 20000, 0,
         "What the household gives off on a winter night, on average. It counts for the balance "
         "point, never for the design night.", "comfort",
         spread={"estimated": share(0.4, PRACTICE)},
         assumption=Assumption(1500.0, "night-time gains are about 1,000 to 2,000 Btu/h",
                               Source("Night-time internal gains", "", "memory"),
                               Spread(700.0, 700.0, False, PRACTICE))),
)
