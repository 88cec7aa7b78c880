"""Every sentence of the homeowner page, English and Spanish side by side.

Marks inside a text:

    **bold**
    {slot}              the figure of a slot, as the page shows it
    [A|B]               A where every slot in it is known, else B; `[A]` is A or nothing
    [?capped: A|B]      A where the slot is known; `?burns=n`, `?burns~w` (holds the letter),
                        `?!burns` (not known); slots within A are asked for too

Without a link every `A` falls away, and what is left is true of every home. Nothing here
sells; where a sentence could hurt if it were wrong, it says the careful thing.
"""

from __future__ import annotations

from typing import NamedTuple


class Both(NamedTuple):
    """One text in both languages."""

    en: str
    es: str


class Item(NamedTuple):
    """One entry of a list.

    Attributes:
        id: Its name, the same in both languages.
        text: What it says.
        term: Its head, in a list of words.
        level: `hold`, `look` or `fine`, in the list of calls.
        when: Condition for the whole entry, as after `?` in a text; `&` joins two.
    """

    id: str
    text: Both
    term: Both = Both("", "")
    level: str = ""
    when: str = ""


class Block(NamedTuple):
    """A paragraph, a list or a drawing.

    Attributes:
        kind: `p`, `big`, `list`, `steps`, `words`, `calls`, `figure`, `buttons`.
        id: Its name.
        text: For a paragraph.
        items: For a list.
        when: Condition for the whole block.
    """

    kind: str
    id: str
    text: Both = Both("", "")
    items: tuple[Item, ...] = ()
    when: str = ""


class Section(NamedTuple):
    """One heading and what stands under it."""

    id: str
    title: Both
    blocks: tuple[Block, ...]
    when: str = ""


def p(id_: str, en: str, es: str, when: str = "") -> Block:
    """A paragraph."""
    return Block("p", id_, Both(en, es), when=when)


NOTHING = Both("", "")


def item(id_: str, en: str, es: str, *, term: Both = NOTHING, level: str = "",
         when: str = "") -> Item:
    """An entry of a list."""
    return Item(id_, Both(en, es), term, level, when)


TITLE = Both("Your heat pump, in plain words", "Su bomba de calor, en palabras sencillas")
YOUR_HOME = Both("[Your home: {home}]", "[Su casa: {home}]")
GENERAL = Both(
    "This page speaks of homes like yours. A link from your crew adds your own numbers.",
    "Esta página habla de casas como la suya. El enlace de su técnico agrega sus números.")
BROKEN = Both(
    "This link is not whole: a part was cut off or changed. Ask for it again. What follows is "
    "true for every home.",
    "Este enlace no está completo: se cortó o se cambió una parte. Pídalo otra vez. Lo que "
    "sigue vale para toda casa.")
NEWER = Both(
    "This link was made by a newer handbook. Open it again with the internet on. What follows "
    "is true for every home.",
    "Este enlace es de un manual más nuevo. Ábralo otra vez con internet. Lo que sigue vale "
    "para toda casa.")
MADE = Both("[Numbers of {made}.]", "[Números del {made}.]")
WRONG = Both("Something wrong? When to call", "¿Algo anda mal? Cuándo llamar")
PRINT = Both("Print this page", "Imprimir esta página")
CALENDAR = Both("Put it in my calendar", "Ponerlo en mi calendario")
FILTER_EVENT = Both("Change the furnace filter", "Cambiar el filtro")
VISIT_EVENT = Both("Heat pump: yearly visit", "Bomba de calor: visita anual")

SYSTEM = Section("system", Both("Your system", "Su sistema"), (
    Block("figure", "system", Both(
        "Outdoor unit on a stand, indoor unit in the closet, ducts under the floor.",
        "Unidad exterior sobre una base, unidad interior en el armario, ductos bajo el piso."),
        (
            item("outdoor", "Outdoor unit. Takes heat from the air, even in the cold.",
                 "Unidad exterior. Toma calor del aire, aun con frío."),
            item("indoor", "Indoor unit, in the closet. Blows the warm air down.",
                 "Unidad interior, en el armario. Sopla el aire caliente hacia abajo."),
            item("filter-place",
                 "Filter[?filter_place=d: , behind the louvered door][?filter_place=s: , in a "
                 "slot of the indoor unit][?filter_place=g: , behind the big air grille].",
                 "Filtro[?filter_place=d: , detrás de la puerta de rejilla][?filter_place=s: , "
                 "en una ranura de la unidad interior][?filter_place=g: , detrás de la rejilla "
                 "grande]."),
            item("thermostat", "Thermostat.", "Termostato."),
            item("ducts", "Ducts under the floor[?sections=d: , on both sides].",
                 "Ductos bajo el piso[?sections=d: , en los dos lados]."),
            item("registers", "Vents. Keep them open and clear. Closed vents make noise and cost "
                 "you money.",
                 "Rejillas de aire. Déjelas abiertas y libres. Las rejillas cerradas hacen ruido y "
                 "le cuestan dinero."),
        )),
))

RUN = Section("run", Both("Why does it run all the time?", "¿Por qué funciona todo el tiempo?"), (
    p("run-normal",
      "Your old furnace made a lot of heat in short bursts. The heat pump makes just the heat "
      "your home is losing, so it keeps going. **Long runs are normal while the room holds its "
      "setting.** Call if the room falls behind, or if Aux stays on [when it is warmer than "
      "{aux_call} outside|in mild weather].",
      "Su calefactor viejo daba mucho calor por ratos cortos. La bomba de calor da justo el "
      "calor que la casa pierde, y por eso sigue. **Funcionar mucho tiempo es normal mientras el "
      "cuarto mantiene su temperatura.** Llame si el cuarto se queda atrás, o si Aux sigue "
      "encendido [con más de {aux_call} afuera|cuando hace poco frío]."),
    p("run-hours",
      "[On a {day} day the furnace ran about **{run_before} hours**. The heat pump may run "
      "**{run_after}**, at low power.|On mild days it slows down and uses less power.] [When it "
      "is warmer than about {rests_above} outside, it rests now and "
      "then.]",
      "[En un día de {day} el calefactor trabajaba unas **{run_before} horas**. La bomba de calor "
      "puede trabajar **{run_after}**, con poca potencia.|En días suaves baja su fuerza y gasta "
      "menos.] [Con más de unos {rests_above} afuera, descansa a ratos.]"),
    Block("figure", "chart", Both(
        "Hours of running a day against the temperature outside. The old furnace ran in short "
        "bursts. The heat pump runs all day in the cold and rests when it is mild. In deep cold "
        "the backup helps.",
        "Horas de marcha al día según la temperatura de afuera. El calefactor viejo trabajaba por "
        "ratos. La bomba de calor trabaja todo el día con frío y descansa cuando hace poco frío. "
        "Con mucho frío ayuda el respaldo."), when="chart"),
))

AIR = Section("air", Both("Why does the air feel cooler?",
                          "¿Por qué el aire se siente menos caliente?"), (
    p("air-warm",
      "It is warm, but less hot than before[: about **{air_after}**, not {air_before}|: about 85 "
      "to 105 °F]. It comes for more of the day. On your hand it can feel cool, because it "
      "moves. Look at the room thermometer. If the room holds its setting, all is well.",
      "Es tibio, menos caliente que antes[: unos **{air_after}**, no {air_before}|: de 85 a 105 "
      "°F]. Sale por más horas del día. En la mano se puede sentir fresco, porque se mueve. Mire "
      "el termómetro del cuarto. Si el cuarto mantiene su temperatura, todo está bien."),
    p("air-cold",
      "Call if the air is cooler than the room for more than 15 minutes while it heats.",
      "Llame si el aire sale más frío que el cuarto por más de 15 minutos mientras calienta."),
))

NORMAL = Section("normal", Both("What is normal", "Lo que es normal"), (
    Block("list", "normal-list", items=(
        item("steam", "**A white cloud** from the outdoor unit in damp cold. It is melting its "
             "frost. The fan stops, you may hear a whoosh, and the cloud ends in 2 to 15 minutes. "
             "It is only water vapor.",
             "**Una nube blanca** de la unidad exterior cuando hay frío y humedad. Derrite su "
             "escarcha. El ventilador para, se oye un soplido, y la nube se acaba en 2 a 15 "
             "minutos. Es solo vapor de agua."),
        item("water", "**Water under the outdoor unit** after that. It is melted frost. In the "
             "cold it turns to ice again, so watch your step there.",
             "**Agua bajo la unidad exterior** después. Es escarcha derretida. Con el frío se "
             "vuelve a helar: cuidado al pisar ahí."),
        item("frost", "**A thin white coat** of frost. It melts by itself. Never chip it, and use "
             "no salt and no hot water.",
             "**Una capa blanca y fina** de escarcha. Se derrite sola. Nunca la pique, y no use "
             "sal ni agua caliente."),
        item("dust-smell", "**A dusty smell** for up to an hour, the first time backup runs each "
             "year. Dust burns off the heater.",
             "**Olor a polvo** hasta por una hora, la primera vez del año que trabaja el "
             "respaldo. Se quema el polvo del calentador."),
        item("sounds", "**A soft hum** most of the day. A whoosh and a click when it melts frost. "
             "A gurgle when it stops.",
             "**Un zumbido suave** casi todo el día. Un soplido y un clic al derretir la escarcha. "
             "Un gorgoteo al parar."),
        item("summer-water", "**In summer, water from a drain pipe.** Where the air is dry there "
             "may be none.",
             "**En verano, agua de un tubo de desagüe.** Donde el aire es seco puede no haber."),
    )),
))

THERMOSTAT = Section("thermostat", Both("Words on your thermostat", "Palabras de su termostato"), (
    Block("words", "thermostat-words", items=(
        item("heat", "The heat pump warms the home.", "La bomba de calor calienta la casa.",
             term=Both("Heat", "Heat (calor)")),
        item("aux", "The electric backup helps. It comes on by itself. Normal "
             "[below about {aux_below} outside|in deep cold], after you raise the setting, or "
             "while "
             "frost melts. [If it stays on above {aux_call}, call.|If it stays on in mild weather, "
             "call.]",
             "El respaldo eléctrico ayuda. Se prende solo. Es normal [bajo unos {aux_below} "
             "afuera|con mucho frío], al subir la temperatura o al derretir escarcha. [Si sigue "
             "encendido sobre {aux_call}, llame.|Si sigue encendido cuando hace poco frío, llame.]",
             term=Both("Aux (auxiliary)", "Aux (auxiliar)")),
        item("emergency", "Backup only; the heat pump is off. It costs "
             "[about {em_times} times as much|two to three times as much] for the same heat. Use "
             "it only if the outdoor unit is broken or badly iced, and call. [It holds {setting} "
             "inside down to about {em_holds} outside.|In deep cold it may not hold the home "
             "alone.]",
             "Solo respaldo; la bomba de calor está apagada. El mismo calor cuesta "
             "[unas {em_times} veces|de dos a tres veces] lo usual. Úselo solo si la unidad "
             "exterior falla o tiene mucho hielo, y llame. [Mantiene {setting} adentro "
             "hasta unos {em_holds} afuera.|Con mucho frío puede no bastar.]",
             term=Both("Em heat (emergency)", "Em heat (emergencia)")),
        item("away", "Lowers the heat a little. In winter 1 to 3 degrees is enough. A big drop "
             "brings on the backup when you come home.[ From your usual drop it needs about "
             "{back_h} hours to come back.]",
             "Baja un poco la temperatura. En invierno basta de 1 a 3 grados. Si baja mucho, al "
             "volver se prende el respaldo.[ De su baja usual tarda unas {back_h} horas en "
             "volver.]",
             term=Both("Away", "Away (fuera)")),
        item("off", "Everything stops. Pipes can freeze, so do not leave it off in winter.",
             "Todo para. Los tubos se pueden helar: no lo deje así en invierno.",
             term=Both("Off", "Off (apagado)")),
    )),
    p("below-zero",
      "Does it heat in deep cold? Yes.[ Yours was picked for {design}.] The colder it gets, the "
      "more power it takes, and the backup fills the gap.",
      "¿Calienta con mucho frío? Sí.[ La suya se eligió para {design}.] Cuanto más frío, más "
      "corriente gasta, y el respaldo pone lo que falta."),
))

FILTER = Section("filter", Both("Filter", "Filtro"), (
    Block("big", "filter-size", Both("[{filter}]", "[{filter}]"), when="filter"),
    p("filter-when",
      "[Change it by **{filter_next}**, then every **{filter_months}** months.|Change it at least "
      "every 3 months, or as your crew said.] Look at it once a month. Change it sooner with pets, "
      "smoke or building dust.",
      "[Cámbielo antes de **{filter_next}**, luego cada **{filter_months}** meses.|Cámbielo al "
      "menos cada 3 meses, o como dijo su técnico.] Mírelo una vez al mes. Cámbielo antes si hay "
      "mascotas, humo o polvo de obra."),
    Block("steps", "filter-how", items=(
        item("filter-off", "Set the thermostat to Off.", "Ponga el termostato en Off."),
        item("filter-out", "Take the old one out. See how its arrow points.",
             "Saque el viejo. Vea hacia dónde apunta su flecha."),
        item("filter-in", "Put the new one in. Its arrow points to the unit, the way the air "
             "moves.",
             "Ponga el nuevo. Su flecha apunta a la unidad, como va el aire."),
        item("filter-on", "Set the thermostat back to Heat or Cool. Never run it without a filter.",
             "Ponga el termostato otra vez en Heat o Cool. Nunca lo use sin filtro."),
    )),
    Block("buttons", "calendar", when="filter_next"),
))

OFF = Section("off", Both("Where to turn it off", "Dónde se apaga"), (
    Block("words", "shut-offs", items=(
        item("off-thermostat", "Set it to Off. Do this first for an odd noise.",
             "Póngalo en Off. Haga esto primero si hay un ruido raro.",
             term=Both("Thermostat", "Termostato")),
        item("off-indoor", "One double breaker[, marked {breaker_in}|, marked for the air "
             "handler][?panel=h: , panel in the hall][?panel=u: , panel in the utility "
             "room][?panel=k: , panel in the kitchen][?panel=b: , panel in a bedroom][?panel=o: , "
             "panel outside]. Some units have two.",
             "Un interruptor doble[, marcado {breaker_in}|, marcado para la unidad "
             "interior][?panel=h: , tablero del pasillo][?panel=u: , tablero del cuarto de "
             "servicio][?panel=k: , tablero de la cocina][?panel=b: , tablero de una "
             "recámara][?panel=o: , tablero de afuera]. Algunas unidades tienen dos.",
             term=Both("Indoor unit", "Unidad interior")),
        item("off-outdoor", "[?disconnect: Gray box on the wall beside it. ]One double breaker[, "
             "marked {breaker_out}|, marked for the heat pump].",
             "[?disconnect: Caja gris en la pared, al lado. ]Un interruptor doble[, marcado "
             "{breaker_out}|, marcado para la bomba de calor].",
             term=Both("Outdoor unit", "Unidad exterior")),
        item("off-all", "The main breaker, the largest one. Never touch it with wet hands or on "
             "wet ground.",
             "El interruptor principal, el más grande. Nunca lo toque con manos mojadas ni sobre "
             "suelo mojado.",
             term=Both("All power", "Toda la luz")),
        item("off-fuel", "[?fuel_off=t: The valve on the tank, under its lid.][?fuel_off=m: The "
             "valve at the gas meter.] Turn it only if you can do so safely, and never to stop a "
             "fire.",
             "[?fuel_off=t: La válvula del tanque, bajo su tapa.][?fuel_off=m: La válvula del "
             "medidor de gas.] Ciérrela solo si es seguro, y nunca para parar un fuego.",
             term=Both("Fuel that is left", "Combustible que queda"), when="fuel_off"),
        item("off-water", "[?!water_off: Know where your main valve is, and try it once.]"
             "[?water_off=h: Beside the water heater.][?water_off=s: Under a "
             "sink.][?water_off=c: Under the home, behind a panel of the skirting.][?water_off=m: "
             "At the water meter.][?water_off=w: At the well tank.]",
             "[?!water_off: Sepa dónde está su válvula principal, y pruébela una vez.]"
             "[?water_off=h: Al lado del calentador de agua.][?water_off=s: Bajo un "
             "fregadero.][?water_off=c: Bajo la casa, detrás de un panel del "
             "faldón.][?water_off=m: En el medidor de agua.][?water_off=w: En el tanque del pozo.]",
             term=Both("Water", "Agua")),
    )),
    p("breaker-once",
      "If a breaker trips, switch it on once. If it trips again, leave it off and call. Do not "
      "open the panels of the units: the parts behind them can kill you.",
      "Si un interruptor se dispara, préndalo una vez. Si se dispara otra vez, déjelo apagado y "
      "llame. No abra las tapas de las unidades: lo que hay detrás puede matar."),
))

CALL = Section("call", Both("When to call", "Cuándo llamar"), (
    Block("calls", "call-list", items=(
        item("fire", "**Smoke or flames: get everyone out and call 911.** Stop for nothing. Do "
             "not stop to turn anything off. Stay out.",
             "**Humo o llamas: saque a todos y llame al 911.** No se detenga por nada. No se "
             "detenga a apagar nada. Quédese afuera.", level="hold"),
        item("alarm", "**An alarm sounds,** smoke or carbon monoxide: everyone out, and call 911 "
             "from outside.",
             "**Suena una alarma,** de humo o de monóxido de carbono: todos afuera, y llame al 911 "
             "desde afuera.", level="hold"),
        item("gas", "**Gas smell**[?burns~w:  (your water heater still burns fuel)][?!burns:  "
             "(where gas or propane is still used)]: touch no switch, light nothing, use no phone "
             "inside. Get everyone out. Call 911 or the gas company from far away.",
             "**Olor a gas**[?burns~w:  (su calentador de agua todavía quema combustible)]"
             "[?!burns:  (donde todavía se usa gas o propano)]: no toque ningún interruptor, no "
             "prenda nada, no use el teléfono adentro. Saque a todos. Llame al 911 o a la compañía "
             "de gas desde lejos.", level="hold", when="!burns_gas=n"),
        item("call-now", "**Turn it off and call today.** Water at the indoor unit. A breaker that "
             "trips twice. Grinding or banging. A sharp burnt smell, or a dusty one that stays "
             "past "
             "an hour: set the thermostat to Off. If you see smoke, get out and call 911.",
             "**Apáguelo y llame hoy.** Agua junto a la unidad interior. Un interruptor que se "
             "dispara dos veces. Ruido de golpes o de metal. Un olor fuerte a quemado, o a polvo "
             "por "
             "más de una hora: ponga el termostato en Off. Si ve humo, salga y llame al 911.",
             level="look"),
        item("call-today", "**Call today.** The room falls more than 3 degrees behind for 2 hours "
             "while it runs. Aux stays on [above {aux_call}|in mild weather]. Thick ice on the "
             "outdoor unit for more than 2 hours. Its fan does not turn while it should heat.",
             "**Llame hoy.** El cuarto se queda más de 3 grados atrás por 2 horas mientras "
             "funciona. Aux sigue encendido [sobre {aux_call}|cuando hace poco frío]. Hielo grueso "
             "en la unidad exterior por más de 2 horas. Su ventilador no gira cuando debe "
             "calentar.", level="look"),
        item("walk-ice", "**Ice on the walk** from the outdoor unit: keep off it, spread sand, and "
             "call. Never chip ice off the unit.",
             "**Hielo en el paso** por el agua de la unidad exterior: no lo pise, eche arena y "
             "llame. Nunca pique el hielo de la unidad.", level="look"),
        item("look-first", "**Look first.** Is the thermostat on Heat? Is the filter clean? Are "
             "the vents open? Is the breaker on? Often that is all.",
             "**Mire primero.** ¿Está el termostato en Heat? ¿Está limpio el filtro? ¿Están "
             "abiertas las rejillas? ¿Está prendido el interruptor? Muchas veces es solo eso.",
             level="fine"),
    )),
    p("say",
      "Say: “[{home}, ][{model}, ]it is … outside and … inside. The thermostat shows …. The "
      "outdoor fan turns, or it does not.” [Call: {contact}]",
      "Diga: “[{home}, ][{model}, ]afuera hay … y adentro …. El termostato muestra …. El "
      "ventilador de afuera gira, o no gira.” [Llame a: {contact}]"),
))

STORM = Section("storm", Both("Power out, storm and snow", "Sin luz, tormenta y nieve"), (
    p("outage",
      "When the power comes back, the system starts by itself. It may wait some minutes. After a "
      "long time without power in the cold, Aux may run first. That is normal. Close doors, and "
      "let taps drip so that pipes do not freeze.",
      "Cuando vuelve la luz, el sistema arranca solo. Puede esperar unos minutos. Después de "
      "mucho tiempo sin luz con frío, Aux puede trabajar primero. Es normal. Cierre las puertas, "
      "y deje gotear las llaves para que no se hielen los tubos."),
    p("no-grill",
      "**Never heat with a grill, a camp stove or an oven.** The gas they make, carbon monoxide, "
      "has no smell and kills.",
      "**Nunca caliente con parrilla, estufa de campo ni horno.** El gas que hacen, el monóxido de "
      "carbono, no huele y mata."),
    p("generator",
      "**A generator stays outside,** at least 20 feet from doors, windows and the space under the "
      "home. Never plug it into a wall outlet: it can kill people who work on the lines. Only a "
      "licensed electrician connects it to the home.",
      "**Un generador va afuera,** al menos a 20 pies (6 metros) de puertas, ventanas y del hueco "
      "bajo la casa. Nunca lo enchufe a una toma de la pared: puede matar a quien trabaja en los "
      "cables. Solo un electricista con licencia lo conecta a la casa."),
    p("snow",
      "Keep about 2 feet free around the outdoor unit. Brush snow off by hand. Do not cover it. "
      "After a flood, leave the breakers off and call.",
      "Deje unos 2 pies (60 cm) libres alrededor de la unidad exterior. Quite la nieve con la "
      "mano. "
      "No la tape. Después de una inundación, deje los interruptores apagados y llame."),
))

FUEL = Section("fuel", Both("What changed when the fuel left",
                            "Qué cambió al irse el combustible"), (
    p("no-flame",
      "[?fuel=e: Your old heat was electric, so no flame left the home.][?fuel=p: The new heating "
      "has no flame and needs no vent.][?fuel=g: The new heating has no flame and needs no "
      "vent.][?fuel=o: The new heating has no flame and needs no vent.]",
      "[?fuel=e: Su calefacción vieja era eléctrica: no se fue ninguna llama.][?fuel=p: La "
      "calefacción nueva no tiene llama ni necesita salida de gases.][?fuel=g: La calefacción "
      "nueva no tiene llama ni necesita salida de gases.][?fuel=o: La calefacción nueva no tiene "
      "llama ni necesita salida de gases.]", when="fuel"),
    p("capped",
      "The old furnace’s fuel line was closed, capped and tested for leaks[ on {capped_on}][, by "
      "{capped_by}]. Do not use the cap to hook up anything else.",
      "La línea de combustible del calefactor viejo se cerró, se tapó y se probó[ el "
      "{capped_on}][, por {capped_by}]. No use la tapa para conectar otra cosa.", when="capped"),
    p("still-burns",
      "Still burning fuel: [?burns~w: the water heater. ][?burns~r: the range or oven. "
      "][?burns~d: the clothes dryer. ][?burns~s: the stove or fireplace. ]It needs its vent and "
      "fresh air. **Keep a carbon monoxide alarm.**",
      "Todavía queman combustible: [?burns~w: el calentador de agua. ][?burns~r: la estufa u "
      "horno. ][?burns~d: la secadora. ][?burns~s: la estufa de leña o chimenea. ]Necesitan su "
      "salida y aire fresco. **Tenga una alarma de monóxido de carbono.**",
      when="burns&!burns=n"),
    p("nothing-burns",
      "When we left, nothing in your home burned fuel. A car, a grill or a generator can still "
      "make carbon monoxide. Keep the alarm where your local rules ask for one.",
      "Cuando nos fuimos, nada en su casa quemaba combustible. Un carro, una parrilla o un "
      "generador todavía pueden hacer monóxido de carbono. Deje la alarma donde la ley la pide.",
      when="burns=n"),
    p("fuel-general",
      "If a water heater, range or stove still burns fuel, keep its vent open and let fresh air "
      "in. Keep a carbon monoxide alarm.",
      "Si un calentador de agua o una estufa todavía quema gas, deje abierta su salida y deje "
      "entrar aire fresco. Tenga una alarma de monóxido de carbono.", when="!burns"),
))

WINTER = Section("winter", Both("All winter", "Todo el invierno"), (
    p("cable",
      "**Leave the pipe heat cable under the home plugged in.** Tight ducts leak less "
      "warm air, so the pipes need it.",
      "**Deje enchufado el cable que calienta los tubos bajo la casa.** Los ductos "
      "bien sellados pierden menos aire caliente, y los tubos lo necesitan.", when="!cable=n"),
    p("alarms",
      "Test the smoke and carbon monoxide alarms every month.",
      "Pruebe cada mes las alarmas de humo y de monóxido de carbono."),
    p("setting",
      "Pick a setting you like and leave it. If you turn it down at night, 1 to 3 degrees is "
      "enough.",
      "Elija una temperatura que le guste y déjela. Si la baja de noche, basta de 1 a 3 grados."),
))

COST = Section("cost", Both("What it should cost", "Lo que debe costar"), (
    p("cost-year",
      "Heat for a usual year: about **${cost_after}**[ at ${electric_price} for a unit (kWh) of "
      "power]. Before: about ${cost_before}[?fuel=p:  at ${fuel_price} a gallon][?fuel=o:  at "
      "${fuel_price} a gallon][?fuel=g:  at ${fuel_price} a therm]. Prices and "
      "winters change, so this is not a promise.",
      "Calor de un año usual: unos **${cost_after}**[ a ${electric_price} por unidad (kWh) de "
      "luz]. Antes: unos ${cost_before}[?fuel=p:  a ${fuel_price} el galón][?fuel=o:  a "
      "${fuel_price} el galón][?fuel=g:  a ${fuel_price} el termio]. Los precios y los "
      "inviernos cambian: no es una promesa.", when="cost_after"),
    p("cost-month",
      "Most goes in {peak_month}: about {peak_kwh} units (kWh) for heat. If a month is far above "
      "that, look for Aux on the thermostat and at the filter. Then call.",
      "Lo más se va en {peak_month}: unas {peak_kwh} unidades (kWh) para calor. Si un mes pasa "
      "mucho de eso, busque Aux en el termostato y mire el filtro. Luego llame.",
      when="peak_kwh"),
    p("cost-bill",
      "Your electric bill goes up because the fuel bill went away. Look at both together.",
      "Su recibo de luz sube porque se fue el del combustible. Mire los dos juntos."),
))

YEARLY = Section("yearly", Both("Yearly visit", "Visita anual"), (
    p("visit",
      "Once a year a technician checks the air flow, the wires, the drain and how it melts its "
      "frost.[ Next time: **{visit}**.] You keep the filter clean, the outdoor unit free and the "
      "vents open.",
      "Una vez al año un técnico revisa el aire, los cables, el desagüe y cómo derrite su "
      "escarcha.[ La próxima: **{visit}**.] Usted mantiene limpio el filtro, libre la unidad de "
      "afuera y abiertas las rejillas."),
    p("booklet",
      "The maker’s booklet, your local rules and your crew come before this page.",
      "El manual del fabricante, las reglas locales y su técnico van antes que esta página."),
))

SECTIONS: tuple[Section, ...] = (SYSTEM, RUN, AIR, NORMAL, THERMOSTAT, FILTER, OFF, CALL, STORM,
                                 FUEL, WINTER, COST, YEARLY)

CHART_WORDS: dict[str, Both] = {
    "hours": Both("hours a day", "horas al día"),
    "outside": Both("outside", "afuera"),
    "pump": Both("heat pump", "bomba de calor"),
    "furnace": Both("old furnace", "calefactor viejo"),
    "backup": Both("backup", "respaldo"),
    "title": Both("Run time", "Tiempo de marcha"),
}

MONTHS = (
    Both("January", "enero"), Both("February", "febrero"), Both("March", "marzo"),
    Both("April", "abril"), Both("May", "mayo"), Both("June", "junio"), Both("July", "julio"),
    Both("August", "agosto"), Both("September", "septiembre"), Both("October", "octubre"),
    Both("November", "noviembre"), Both("December", "diciembre"),
)

REQUIRED: tuple[str, ...] = (
    "run-normal", "air-warm", "steam", "water", "dust-smell", "sounds", "aux", "emergency", "away",
    "filter-when", "filter-in", "off-indoor", "off-outdoor", "off-all", "off-water", "cable",
    "no-flame", "still-burns", "nothing-burns", "capped", "fire", "alarm", "gas", "outage",
    "generator", "no-grill", "walk-ice", "call-today", "say", "cost-year", "visit",
)
"""Statements without which the page is not whole: tests look for each in both languages."""

SHARED: tuple[str, ...] = (
    "fire", "alarm", "gas", "call-now", "call-today", "walk-ice", "run-normal", "aux", "emergency",
    "filter-when", "off-indoor", "off-outdoor", "off-fuel", "off-water", "breaker-once",
    "cable", "alarms", "no-grill", "generator", "no-flame", "capped", "still-burns",
    "nothing-burns", "visit",
)
"""Statements that the printed label and letter say in the same words."""
