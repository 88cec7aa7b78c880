"""The air path of a home as a network: closet, plant, box, trunks, crossovers, registers, leaks.

A trunk is a straight duct along the home. It is fed at one place, from the box above it or by a
crossover, and gives its air off at registers on both sides of that place. Rooms stand open to
each other (doors open): `return_path` looks at closed ones.
"""

import itertools
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from downflow.physics import ducts, return_path
from downflow.physics.network import (
    Branch,
    ConstantAirflowFan,
    Law,
    Network,
    Node,
    PowerLaw,
    Solution,
    duct,
    fan_table,
    leak,
    measured_point,
    opening,
)

MAIN = "main"
BELLY = "belly"
BOX = "box"
# Loss of the straight run past a takeoff, on the velocity pressure after it (tables 10, 11, 15
# of the 2021 duct chapter: 0.13 to 0.20).
RUN_PAST_TAKEOFF_C = 0.15
# Entry into a crossover collar: flush 0.5, projecting 1.0 (entry tables); between the two.
COLLAR_ENTRY_LOW_C = 0.5
COLLAR_ENTRY_HIGH_C = 1.0
COLLAR_EXIT_C = 1.0
# Share of the duct leakage that sits at the box and its joints; the rest at the trunks.
LEAK_AT_BOX_SHARE = 0.4
# Rooms: within the greater of a share of the target and a flow. Halves and totals: a share.
ROOM_SHARE = 0.20
ROOM_CFM = 25.0
TOTAL_SHARE = 0.15
# Rooms are brought within this part of their tolerance: the rest is for what is not known.
AIM_WITHIN = 0.6
MOST_BALANCING_ROUNDS = 16
# Dampers that cost more than this much of the airflow are not set.
KEPT_AIRFLOW_SHARE = 0.95
# Nor dampers that raise the static in the box beyond this many times what it was: they roar.
MOST_STATIC_RISE = 2.0
# A wet coil's loss grows with flow to a power of 1.75 to 1.9.
COIL_EXPONENT = 1.8
# A box no wider than the outlet is a sharp turn (mitered elbow 1.2 to 1.3).
SHARP_BOX_C = 1.3


class Air(NamedTuple):
    """Density [lb/ft³] and viscosity [lb/(ft s)] of the air in the path."""

    density_lb_ft3: float
    viscosity_lb_ft_s: float


@dataclass(frozen=True, slots=True)
class Trunk:
    """A trunk under one section of the home; places along it count from its front end."""

    id: str
    width_in: float
    height_in: float
    length_ft: float
    feed_ft: float
    roughness_ft: float
    under_box: bool


@dataclass(frozen=True, slots=True)
class Register:
    """A register on a trunk: opening area, loss coefficient on its velocity pressure."""

    id: str
    trunk: str
    room: str
    at_ft: float
    area_in2: float
    loss_c: float
    damper_c: float = 0.0


@dataclass(frozen=True, slots=True)
class Crossover:
    """A duct from the box (or from a place on a trunk) to a place on another trunk."""

    id: str
    to_trunk: str
    to_ft: float
    diameter_in: float
    area_in2: float
    length_ft: float
    roughness_ft: float
    flex_factor: float
    loss_c: float
    from_trunk: str = ""
    from_ft: float = 0.0


@dataclass(frozen=True, slots=True)
class Plant:
    """From the main body of the home through closet, cabinet and box to the trunks.

    Attributes:
        fan: Law of the fan.
        parts: Filter, coil, kit: those that the fan's table does not hold. Name and law.
        closet_free_in2: Free area of the closet's louvers and openings. [in²]
        opening_in2: Floor opening under the box. [in²]
        box_c: Loss of the box on the velocity pressure of the floor opening. [-]
        turn_c: Loss of the turn into a trunk, on the trunk's velocity pressure. [-]
        leakage_cfm25: Supply leakage at 25 Pa. [ft³/min]
        leak_exponent: Its power of pressure. [-]
    """

    fan: Law
    parts: tuple[tuple[str, Law], ...]
    closet_free_in2: float
    opening_in2: float
    box_c: float
    turn_c: float
    leakage_cfm25: float
    leak_exponent: float = ducts.LEAK_EXPONENT


@dataclass(frozen=True, slots=True)
class AirPath:
    """A whole path."""

    air: Air
    plant: Plant
    trunks: tuple[Trunk, ...]
    registers: tuple[Register, ...]
    crossovers: tuple[Crossover, ...]


@dataclass(frozen=True, slots=True)
class Flows:
    """What a path settles at.

    Attributes:
        airflow_cfm: Through the fan. [ft³/min]
        register_cfm: Of each register.
        crossover_cfm: Of each crossover.
        leak_cfm: Lost to the belly and the crawl space.
        supply_static_inwc: Box against the rooms.
        return_static_inwc: Closet against the rooms, below zero.
        drop_inwc: Closet, each part, box and supply (box to rooms). All above zero.
        fan_rise_inwc: What the fan makes.
        trunk_fpm: Fastest air in each trunk.
        solution: Of the network, to begin the next from.
        limited: Whether a constant-airflow fan cannot hold its air.
        outside_table: Whether the flow lies beyond the fan table.
    """

    airflow_cfm: float
    register_cfm: dict[str, float]
    crossover_cfm: dict[str, float]
    leak_cfm: float
    supply_static_inwc: float
    return_static_inwc: float
    drop_inwc: dict[str, float]
    fan_rise_inwc: float
    trunk_fpm: dict[str, float]
    solution: Solution
    limited: bool
    outside_table: bool

    @property
    def delivered_cfm(self) -> float:
        """Sum of the registers. [ft³/min]"""
        return math.fsum(self.register_cfm.values())


def crossover(
    id: str,
    to_trunk: str,
    to_ft: float,
    *,
    diameter_in: float = 0.0,
    width_in: float = 0.0,
    height_in: float = 0.0,
    length_ft: float,
    roughness_ft: float,
    flex_factor: float = 1.0,
    bends: float = 0.0,
    bend_c: float = 0.0,
    from_trunk: str = "",
    from_ft: float = 0.0,
    entry_c: float = (COLLAR_ENTRY_LOW_C + COLLAR_ENTRY_HIGH_C) / 2.0,
) -> Crossover:
    """A crossover, round (`diameter_in`) or a slot (`width_in`, `height_in`).

    Args:
        id: Its name.
        to_trunk: Trunk that it feeds.
        to_ft: Where on that trunk. [ft]
        diameter_in: Of a round one. [in]
        width_in: Of a slot. [in]
        height_in: Of a slot. [in]
        length_ft: Installed length. [ft]
        roughness_ft: Of its wall. [ft]
        flex_factor: Loss against the fully stretched duct. [-]
        bends: Number of right-angle bends. [-]
        bend_c: Loss coefficient of each. [-]
        from_trunk: Trunk that it leaves; the box if empty.
        from_ft: Where on that trunk. [ft]
        entry_c: Loss of its entry. [-]
    """
    if diameter_in > 0.0:
        equivalent, area = diameter_in, ducts.round_area_in2(diameter_in)
    else:
        equivalent = ducts.rectangular_equivalent_in(width_in, height_in)
        area = width_in * height_in
    loss = entry_c + bends * bend_c + COLLAR_EXIT_C
    return Crossover(id, to_trunk, to_ft, equivalent, area, length_ft, roughness_ft, flex_factor,
                     loss, from_trunk, from_ft)


def build(path: AirPath) -> Network:
    """The network of a path.

    Raises:
        NetworkError: sizes that make no sense, or parts that are not connected.
    """
    air, plant = path.air, path.plant
    nodes = [Node(MAIN, 0.0), Node("closet")]
    law = opening(plant.closet_free_in2, air.density_lb_ft3)
    branches = [Branch("closet", MAIN, "closet", law)]
    last = "closet"
    for name, part in plant.parts:
        nodes.append(Node(f"after {name}"))
        branches.append(Branch(name, last, f"after {name}", part))
        last = f"after {name}"
    nodes.append(Node("plenum"))
    branches.append(Branch("fan", last, "plenum", plant.fan))
    nodes.append(Node(BOX))
    branches.append(Branch("floor box", "plenum", BOX, PowerLaw(
        max(1e-12, ducts.fitting_resistance(plant.box_c, plant.opening_in2, air.density_lb_ft3)))))
    leaking = plant.leakage_cfm25 > 0.0
    if leaking:
        nodes.append(Node(BELLY, 0.0))
        branches.append(Branch("leak box", BOX, BELLY, leak(
            LEAK_AT_BOX_SHARE * plant.leakage_cfm25, plant.leak_exponent)))
    whole = math.fsum(t.length_ft for t in path.trunks)
    fed = fed_trunks(path)
    for trunk in path.trunks:
        if trunk.id not in fed:
            continue
        _add_trunk(path, trunk, nodes, branches)
        if leaking:
            at = trunk.feed_ft if trunk.under_box else min(
                c.to_ft for c in path.crossovers if c.to_trunk == trunk.id)
            branches.append(Branch(f"leak {trunk.id}", _spot(trunk.id, at), BELLY, leak(
                (1.0 - LEAK_AT_BOX_SHARE) * plant.leakage_cfm25 * trunk.length_ft / whole,
                plant.leak_exponent)))
    for one in path.crossovers:
        start = _spot(one.from_trunk, one.from_ft) if one.from_trunk else BOX
        branches.append(Branch(f"crossover {one.id}", start, _spot(one.to_trunk, one.to_ft), duct(
            one.diameter_in, one.length_ft, one.roughness_ft, air.density_lb_ft3,
            air.viscosity_lb_ft_s, one.loss_c, one.area_in2, one.flex_factor)))
    return Network(nodes, branches)


def fed_trunks(path: AirPath) -> set[str]:
    """Trunks that the box reaches, by itself or through crossovers."""
    fed = {t.id for t in path.trunks if t.under_box}
    while True:
        more = {c.to_trunk for c in path.crossovers
                if not c.from_trunk or c.from_trunk in fed} - fed
        if not more:
            return fed
        fed |= more


def _spot(trunk: str, at_ft: float) -> str:
    return f"{trunk} {at_ft:.3f}"


def _add_trunk(path: AirPath, trunk: Trunk, nodes: list[Node], branches: list[Branch]) -> None:
    air = path.air
    mine = [r for r in path.registers if r.trunk == trunk.id]
    places = {r.at_ft for r in mine} | ({trunk.feed_ft} if trunk.under_box else set())
    arriving = {c.to_ft for c in path.crossovers if c.to_trunk == trunk.id}
    places |= arriving | {c.from_ft for c in path.crossovers if c.from_trunk == trunk.id}
    order = sorted({round(place, 3) for place in places})
    fed = {round(place, 3) for place in arriving | (
        {trunk.feed_ft} if trunk.under_box else set())}
    equivalent = ducts.rectangular_equivalent_in(trunk.width_in, trunk.height_in)
    area = trunk.width_in * trunk.height_in
    nodes.extend(Node(_spot(trunk.id, place)) for place in order)
    for before, after in itertools.pairwise(order):
        # Air turns into the trunk beside each place where it is fed; elsewhere it runs past a
        # takeoff.
        loss = path.plant.turn_c if before in fed or after in fed else RUN_PAST_TAKEOFF_C
        branches.append(Branch(
            _run(trunk.id, before, after), _spot(trunk.id, before), _spot(trunk.id, after),
            duct(equivalent, after - before, trunk.roughness_ft, air.density_lb_ft3,
                 air.viscosity_lb_ft_s, loss, area)))
    if trunk.under_box:
        # Box and trunk meet at the floor opening; the turn counts on the runs beside it.
        branches.append(Branch(f"into {trunk.id}", BOX, _spot(trunk.id, trunk.feed_ft), PowerLaw(
            ducts.fitting_resistance(0.02, path.plant.opening_in2, air.density_lb_ft3))))
    for register in mine:
        branches.append(Branch(
            f"register {register.id}", _spot(trunk.id, register.at_ft), MAIN,
            PowerLaw(ducts.fitting_resistance(
                register.loss_c + register.damper_c, register.area_in2, air.density_lb_ft3)),
            supply=True))


def _run(trunk: str, before: float, after: float) -> str:
    return f"run {trunk} {before:.3f} to {after:.3f}"


def solve(path: AirPath, start: Flows | None = None) -> Flows:
    """Flows and pressures of a path.

    Args:
        path: The path.
        start: Those of a like path, to begin from.

    Raises:
        NetworkError: no answer, with the reason.
    """
    network = build(path)
    found = network.solve(None if start is None else start.solution)
    drop, flow, pressure = found.drop_inwc, found.flow_cfm, found.pressure_inwc
    drops = {"closet": drop["closet"]}
    drops.update({name: drop[name] for name, _ in path.plant.parts})
    drops["box"] = drop["floor box"]
    drops["supply"] = pressure[BOX]
    fastest: dict[str, float] = {}
    for trunk in path.trunks:
        area = trunk.width_in * trunk.height_in
        runs = [abs(q) for name, q in flow.items() if name.startswith(f"run {trunk.id} ")]
        fastest[trunk.id] = ducts.velocity_fpm(max(runs, default=0.0), area)
    return Flows(
        airflow_cfm=flow["fan"],
        register_cfm={r.id: flow.get(f"register {r.id}", 0.0) for r in path.registers},
        crossover_cfm={c.id: flow[f"crossover {c.id}"] for c in path.crossovers},
        leak_cfm=math.fsum(q for name, q in flow.items() if name.startswith("leak ")),
        supply_static_inwc=pressure[BOX],
        return_static_inwc=pressure["closet"],
        drop_inwc=drops,
        fan_rise_inwc=-drop["fan"],
        trunk_fpm=fastest,
        solution=found,
        limited=bool(found.at_limit),
        outside_table=bool(found.outside_table),
    )


# ------------------------------------------------------------------------ from plain rows

Rows = Sequence[Mapping[str, Any]]
# Where no second landing place is given: this share of the trunk away from the first.
SECOND_LANDING_SHARE = 1.0 / 3.0


def problems(
    trunks: Rows, registers: Rows, rooms: Rows, home_length_ft: float
) -> list[tuple[str, str]]:
    """What cannot be true of trunks, registers and rooms together: field and reason."""
    out: list[tuple[str, str]] = []
    by_id = {t["id"]: t for t in trunks}
    room_ids = {r["id"] for r in rooms}
    for k, trunk in enumerate(trunks):
        if trunk["length_ft"] > home_length_ft:
            out.append((f"trunks[{k}].length_ft", "is longer than the home."))
        if trunk["feed_ft"] > trunk["length_ft"]:
            out.append((f"trunks[{k}].feed_ft", "lies beyond the end of the trunk."))
    under = [t for t in trunks if t["under_box"]]
    if len(under) != 1:
        out.append(("trunks[0].under_box", "exactly one trunk stands under the air handler."))
    for k, register in enumerate(registers):
        own = by_id.get(register["trunk"])
        if own is None:
            out.append((f"registers[{k}].trunk", f"no trunk is called {register['trunk']}."))
        elif register["at_ft"] > own["length_ft"]:
            out.append((f"registers[{k}].at_ft", "lies beyond the end of its trunk."))
        if register["room"] not in room_ids:
            out.append((f"registers[{k}].room", f"no room is called {register['room']}."))
    for k, trunk in enumerate(trunks):
        if not any(r["trunk"] == trunk["id"] for r in registers):
            out.append((f"trunks[{k}].id", "has no register: no air can leave it."))
    return out


def fan_problems(kind: str, rows: Rows) -> list[tuple[str, str]]:
    """Rows of a fan table that cannot be: at a fixed speed airflow falls as static rises."""
    out: list[tuple[str, str]] = []
    if kind == "speed":
        for k in range(1, len(rows)):
            if rows[k]["airflow_cfm"] >= rows[k - 1]["airflow_cfm"]:
                out.append((f"fan_table[{k}].airflow_cfm",
                            "must fall as static rises. Is it a row of another speed?"))
    return out


def fan_law(
    kind: str,
    rows: Rows,
    set_cfm: float,
    limit_inwc: float | None,
    density_lb_ft3: float,
    table_density_lb_ft3: float,
) -> Law:
    """Law of the fan from its table or its setting.

    Args:
        kind: `constant` or `speed`.
        rows: Rows of the table, static pressure rising.
        set_cfm: Airflow that a constant-airflow fan is set to. [ft³/min]
        limit_inwc: Highest static at which it holds it, as printed; the table's last row if None.
        density_lb_ft3: Of the air that it moves. [lb/ft³]
        table_density_lb_ft3: Of the air in the table. [lb/ft³]

    Holds for: pressure in proportion to density at the same airflow (fan laws).
    """
    if kind == "speed":
        return fan_table([(r["airflow_cfm"], r["static_inwc"]) for r in rows], density_lb_ft3,
                         table_density_lb_ft3)
    limit = rows[-1]["static_inwc"] if limit_inwc is None else limit_inwc
    return ConstantAirflowFan(set_cfm, limit * density_lb_ft3 / table_density_lb_ft3, None,
                              density_lb_ft3)


def part_laws(
    parts: Sequence[tuple[str, float, float, float]], density_lb_ft3: float
) -> tuple[tuple[str, Law], ...]:
    """Laws of filter, coil and kit from printed points.

    Args:
        parts: Name, loss as printed in standard air [in. w.c.], its airflow [ft³/min], exponent.
            A loss of 0 is left out.
        density_lb_ft3: Of the air that passes. [lb/ft³]

    Holds for: losses in proportion to density at the same airflow.
    """
    scale = density_lb_ft3 / ducts.STANDARD_DENSITY_LB_FT3
    return tuple(
        (name, measured_point(drop * scale, at, exponent, density_lb_ft3))
        for name, drop, at, exponent in parts if drop > 0.0
    )


def trunks_from(rows: Rows, roughness_ft: Mapping[str, float]) -> tuple[Trunk, ...]:
    """Trunks from rows of the job sheet."""
    return tuple(
        Trunk(t["id"], t["width_in"], t["height_in"], t["length_ft"], t["feed_ft"],
              roughness_ft[t["material"]], t["under_box"])
        for t in rows
    )


def registers_from(rows: Rows, boot_loss_c: float) -> tuple[Register, ...]:
    """Registers from rows of the job sheet."""
    return tuple(
        Register(r["id"], r["trunk"], r["room"], r["at_ft"], r["width_in"] * r["length_in"],
                 boot_loss_c)
        for r in rows
    )


def base_path(job: Any, density_lb_ft3: float, roughness_ft: Mapping[str, float]) -> AirPath:
    """The path of a job without a crossover.

    Args:
        job: Anything with the readings as attributes, plain numbers and rows.
        density_lb_ft3: Of the air. [lb/ft³]
        roughness_ft: By duct material. [ft]
    """
    planned = next((f for f in job.filters if f["kind"] == job.filter_planned), job.filters[0])
    plant = Plant(
        fan=fan_law(
            job.fan_kind, job.fan_table, job.fan_set_cfm or job.air_target_cfm,
            job.fan_static_limit_inwc, density_lb_ft3, job.fan_table_density_lb_ft3),
        parts=part_laws(
            (("filter", planned["clean_inwc"], planned["at_cfm"], ducts.FILTER_MEDIA_EXPONENT),
             ("coil", job.coil_drop_inwc, job.drops_at_cfm, COIL_EXPONENT),
             ("kit", job.kit_drop_inwc, job.drops_at_cfm, 2.0)), density_lb_ft3),
        closet_free_in2=closet_free_in2(job.louver_face_in2, job.louver_kind, job.louver_free_pct,
                                        job.closet_other_free_in2),
        opening_in2=job.opening_width_in * job.opening_depth_in,
        box_c=SHARP_BOX_C if job.floor_box_loss_c is None else job.floor_box_loss_c,
        turn_c=job.trunk_turn_c,
        leakage_cfm25=job.leakage_cfm25,
    )
    return AirPath(Air(density_lb_ft3, ducts.viscosity_lb_ft_s(job.return_air_f)), plant,
                   trunks_from(job.trunks, roughness_ft),
                   registers_from(job.registers, job.boot_loss_c), ())


def closet_free_in2(
    face_in2: float, kind: str, free_pct: float | None, other_in2: float
) -> float:
    """Free area into the closet: louvers by their free share, and other openings. [in²]

    Args:
        face_in2: Face of the louvers. [in²]
        kind: `wood` or `metal`, for the share where it is not known.
        free_pct: Free share, if known. [%]
        other_in2: Free area of other openings. [in²]

    Source: as `return_path.louver_free_in2`.
    """
    share = free_pct
    if share is None:
        share = 100.0 * (return_path.WOOD_LOUVER_SHARE if kind == "wood"
                         else return_path.METAL_LOUVER_SHARE)
    return return_path.louver_free_in2(face_in2, share / 100.0) + other_in2


def landings(trunk: Trunk, count: int, second_ft: float | None) -> tuple[float, ...]:
    """Where one or two crossovers land on a trunk. [ft]"""
    if count < 2:
        return (trunk.feed_ft,)
    second = second_ft
    if second is None:
        away = SECOND_LANDING_SHARE * trunk.length_ft
        second = trunk.feed_ft - away if trunk.feed_ft >= away else trunk.feed_ft + away
    return (trunk.feed_ft, min(second, trunk.length_ft))


def flexible(
    trunks: Sequence[Trunk],
    count: int,
    *,
    diameter_in: float,
    length_ft: float,
    roughness_ft: float,
    flex_factor: float,
    bends: float,
    bend_c: float,
    second_ft: float | None = None,
) -> tuple[Crossover, ...]:
    """One or two flexible crossovers from the box to each trunk that it does not stand on."""
    return tuple(
        crossover(f"{trunk.id}{k + 1}", trunk.id, at_ft, diameter_in=diameter_in,
                  length_ft=length_ft, roughness_ft=roughness_ft, flex_factor=flex_factor,
                  bends=bends, bend_c=bend_c)
        for trunk in trunks if not trunk.under_box
        for k, at_ft in enumerate(landings(trunk, count, second_ft))
    )


def slots(
    trunks: Sequence[Trunk], *, width_in: float, height_in: float, length_ft: float,
    roughness_ft: float,
) -> tuple[Crossover, ...]:
    """A shallow slot from the trunk under the box to each other one, at their feeding places."""
    under = next(t for t in trunks if t.under_box)
    return tuple(
        crossover(f"{trunk.id}1", trunk.id, trunk.feed_ft, width_in=width_in,
                  height_in=height_in, length_ft=length_ft, roughness_ft=roughness_ft,
                  from_trunk=under.id, from_ft=under.feed_ft)
        for trunk in trunks if not trunk.under_box
    )


def load_shares(rooms: Rows, loads: Rows | None) -> dict[str, float]:
    """Share of the design load of each room.

    Args:
        rooms: Rows of the list of rooms.
        loads: Loads by room, if they are known.

    Returns:
        By room: loads where they are known, else half by floor area and half by outside wall.
    """
    if loads is not None:
        total = math.fsum(row["load_btuh"] for row in loads)
        known = {row["id"]: row["load_btuh"] / total for row in loads}
        return {room["id"]: known.get(room["id"], 0.0) for room in rooms}
    floor = math.fsum(room["floor_area_ft2"] for room in rooms)
    wall = math.fsum(room["outside_wall_ft2"] for room in rooms)
    return {
        room["id"]: 0.5 * room["floor_area_ft2"] / floor
        + 0.5 * (room["outside_wall_ft2"] / wall if wall else room["floor_area_ft2"] / floor)
        for room in rooms
    }


# ------------------------------------------------------------------------- shares and rooms


def room_flows(path: AirPath, flows: Flows) -> dict[str, float]:
    """Air of each room that has a register. [ft³/min]"""
    out: dict[str, float] = {}
    for register in path.registers:
        out[register.room] = out.get(register.room, 0.0) + flows.register_cfm[register.id]
    return out


def far_share(path: AirPath, flows: Flows) -> float:
    """Share of the delivered air that comes out of trunks not under the box. [-]"""
    far = {t.id for t in path.trunks if not t.under_box}
    return math.fsum(
        flows.register_cfm[r.id] for r in path.registers if r.trunk in far
    ) / flows.delivered_cfm


def far_load_share(path: AirPath, shares: Mapping[str, float]) -> float:
    """Share of the load in rooms fed by trunks not under the box. [-]

    A room with registers on both sides counts by the openings that it has on each.
    """
    far = {t.id for t in path.trunks if not t.under_box}
    total: dict[str, float] = {}
    beyond: dict[str, float] = {}
    for register in path.registers:
        total[register.room] = total.get(register.room, 0.0) + register.area_in2
        if register.trunk in far:
            beyond[register.room] = beyond.get(register.room, 0.0) + register.area_in2
    return math.fsum(shares.get(room, 0.0) * beyond[room] / total[room] for room in beyond)


def halves_fed(far_share: float, far_load_share: float) -> bool:
    """Whether both halves get their share of the air within 15 % of it.

    Args:
        far_share: Share of the air in the far half. [-]
        far_load_share: Share of the load there. [-]

    Source: common practice of air balancing: totals within 15 %.
    """
    far_off = abs(far_share - far_load_share)
    return (far_off <= TOTAL_SHARE * far_load_share
            and far_off <= TOTAL_SHARE * (1.0 - far_load_share))


def room_tolerance_cfm(target_cfm: float) -> float:
    """How far a room may be from its target: the greater of 20 % and 25 cfm. [ft³/min]

    Source: common practice of air balancing for homes.
    """
    return max(ROOM_SHARE * target_cfm, ROOM_CFM)


class Balanced(NamedTuple):
    """A path with its dampers set.

    Attributes:
        path: The path, registers with their damper losses.
        flows: What it settles at.
        dampers: Register and loss coefficient that its damper must add.
        short: Rooms still below their tolerance, dampers set.
    """

    path: AirPath
    flows: Flows
    dampers: dict[str, float]
    short: tuple[str, ...]


def balance(path: AirPath, shares: Mapping[str, float], flows: Flows | None = None) -> Balanced:
    """Close register dampers in rooms that get too much until all are well within tolerance.

    Dampers only take air away; a room that stays short after every richer room is brought down
    to its target needs a larger register or boot.

    Args:
        path: The path, dampers open.
        shares: Share of the load of each room; those without a register are left out.
        flows: Flows of the path, if known.
    """
    now = solve(path) if flows is None else flows
    dampers: dict[str, float] = {}
    served = {r.room for r in path.registers}
    known = math.fsum(shares[room] for room in served)
    if any(flow < 1.0 for flow in room_flows(path, now).values()):
        # No damper brings air to a trunk that nothing feeds.
        return Balanced(path, now, dampers, _short_rooms(path, now, shares, known))
    least = KEPT_AIRFLOW_SHARE * now.airflow_cfm
    most = MOST_STATIC_RISE * now.supply_static_inwc
    for round_ in range(MOST_BALANCING_ROUNDS):
        # First the rooms that are far above their share; the others only if that is not enough.
        floor = 0.5 if round_ < 4 else 0.25 if round_ < 8 else 0.05
        rooms = room_flows(path, now)
        total = now.delivered_cfm
        off = {
            room: flow - shares[room] / known * total for room, flow in rooms.items()
        }
        slack = {
            room: AIM_WITHIN * room_tolerance_cfm(shares[room] / known * total) for room in rooms
        }
        short = tuple(room for room in rooms if off[room] < -slack[room])
        over = tuple(room for room in rooms if off[room] > slack[room])
        if not short and not over:
            break
        rich = [room for room in rooms if off[room] > (floor * slack[room] if short else 0.0)]
        if not rich:
            if floor <= 0.05:
                break
            continue
        aim = {
            room: shares[room] / known * total + (0.0 if short else 0.7 * slack[room])
            for room in rich
        }
        registers = []
        trial = dict(dampers)
        for register in path.registers:
            if register.room in aim and rooms[register.room] > aim[register.room]:
                ratio = rooms[register.room] / max(aim[register.room], 0.1 * total / len(served))
                loss = (register.loss_c + register.damper_c) * ratio**2 - register.loss_c
                trial[register.id] = loss
                register = replace(register, damper_c=loss)
            registers.append(register)
        next_path = replace(path, registers=tuple(registers))
        then = solve(next_path, now)
        if then.airflow_cfm < least or then.supply_static_inwc > most:
            break
        path, now, dampers = next_path, then, trial
    return Balanced(path, now, dampers, _short_rooms(path, now, shares, known))


def with_dampers(path: AirPath, dampers: Mapping[str, float]) -> AirPath:
    """The path with these dampers set."""
    return replace(path, registers=tuple(
        replace(r, damper_c=dampers.get(r.id, 0.0)) for r in path.registers))


def crossovers_from(
    rows: Rows, trunks: Sequence[Trunk], *, flex_factor: Callable[[float], float],
    roughness_ft: Mapping[str, float], bends: float, bend_c: Callable[[float], float],
) -> tuple[Crossover, ...]:
    """The crossovers of a plan from its rows: kind, trunk, place, size, length.

    Args:
        rows: Rows of the plan.
        trunks: All trunks; a slot leaves the one under the box.
        flex_factor: Factor by diameter [in].
        roughness_ft: By material. [ft]
        bends: Right-angle bends in each flexible one.
        bend_c: Loss of one by diameter [in].
    """
    under = next(t for t in trunks if t.under_box)
    out = []
    for row in rows:
        size = row["diameter_in"]
        if row["kind"] == "slot":
            out.append(crossover(
                row["id"], row["trunk"], row["at_ft"], width_in=row["width_in"],
                height_in=row["height_in"], length_ft=row["length_ft"],
                roughness_ft=roughness_ft["galvanized"], from_trunk=under.id,
                from_ft=under.feed_ft))
        else:
            out.append(crossover(
                row["id"], row["trunk"], row["at_ft"], diameter_in=size,
                length_ft=row["length_ft"], roughness_ft=roughness_ft["flex"],
                flex_factor=flex_factor(size), bends=bends, bend_c=bend_c(size)))
    return tuple(out)


def pleated_bend_c(sizes: Sequence[tuple[float, float]], diameter_in: float) -> float:
    """Loss of a pleated bend by diameter: the floor for a bent flexible duct. [-]

    Args:
        sizes: Diameter [in] and loss, rising.
        diameter_in: Of the duct; beyond the table its nearest end holds. [in]
    """
    columns = [d for d, _ in sizes]
    inside = min(max(diameter_in, columns[0]), columns[-1])
    return ducts.interpolate(columns, [c for _, c in sizes], inside)


def _short_rooms(
    path: AirPath, flows: Flows, shares: Mapping[str, float], known: float
) -> tuple[str, ...]:
    total = flows.delivered_cfm
    return tuple(
        room for room, flow in room_flows(path, flows).items()
        if flow < shares[room] / known * total - room_tolerance_cfm(shares[room] / known * total)
    )


# ------------------------------------------------------------------------- temperatures


def register_temperatures_f(
    path: AirPath,
    flows: Flows,
    supply_f: float,
    around_trunk_f: float,
    around_crossover_f: float,
    trunk_r: float,
    crossover_r: float,
) -> dict[str, float]:
    """Temperature of the air at each register, from that at the box.

    Args:
        path: The path.
        flows: What it settles at.
        supply_f: Air in the box. [°F]
        around_trunk_f: Air around the trunks. [°F]
        around_crossover_f: Air around the crossovers. [°F]
        trunk_r: R-value around the trunks, above zero. [h ft² °F/Btu]
        crossover_r: R-value around the crossovers, above zero. [h ft² °F/Btu]

    Returns:
        Temperature at each register. [°F]

    Holds for: steady state; streams that meet mix fully.
    Source: heat balance along a duct.
    """
    density = path.air.density_lb_ft3
    edges: list[tuple[str, str, float, float]] = []
    flow = flows.solution.flow_cfm

    def edge(name: str, start: str, end: str, keep: Callable[[float], float], around: float,
             ) -> None:
        moved = flow[name]
        if moved < 0.0:
            start, end, moved = end, start, -moved
        if moved > 1e-6:
            edges.append((start, end, moved, keep(moved)))
            arounds[(start, end, moved)] = around

    arounds: dict[tuple[str, str, float], float] = {}
    fed = fed_trunks(path)
    for trunk in path.trunks:
        if trunk.id not in fed:
            continue
        around_ft = 2.0 * (trunk.width_in + trunk.height_in) / 12.0
        if trunk.under_box:
            edge(f"into {trunk.id}", BOX, _spot(trunk.id, trunk.feed_ft), lambda q: 1.0,
                 around_trunk_f)
        for name in flow:
            head = f"run {trunk.id} "
            if name.startswith(head):
                before, after = (float(x) for x in name[len(head):].split(" to "))
                area = around_ft * (after - before)
                edge(name, _spot(trunk.id, before), _spot(trunk.id, after),
                     lambda q, area=area: ducts.conduction_share(  # type: ignore[misc]
                         area, trunk_r, q, density), around_trunk_f)
    for one in path.crossovers:
        area = math.pi * one.diameter_in / 12.0 * one.length_ft
        start = _spot(one.from_trunk, one.from_ft) if one.from_trunk else BOX
        edge(f"crossover {one.id}", start, _spot(one.to_trunk, one.to_ft),
             lambda q, area=area: ducts.conduction_share(  # type: ignore[misc]
                 area, crossover_r, q, density), around_crossover_f)
    temperature = _mixed(edges, arounds, supply_f)
    return {
        r.id: temperature.get(_spot(r.trunk, r.at_ft), around_trunk_f) for r in path.registers
    }


def _mixed(
    edges: Sequence[tuple[str, str, float, float]],
    arounds: Mapping[tuple[str, str, float], float],
    supply_f: float,
) -> dict[str, float]:
    """Temperatures downstream of the box, each node after all that flow into it."""
    into: dict[str, list[tuple[str, float, float, float]]] = {}
    for start, end, moved, keep in edges:
        into.setdefault(end, []).append((start, moved, keep, arounds[(start, end, moved)]))
    known = {BOX: supply_f}
    waiting = set(into)
    while waiting:
        ready = [n for n in waiting if all(s in known for s, _, _, _ in into[n])]
        if not ready:
            break
        for node in ready:
            heat = total = 0.0
            for start, moved, keep, around in into[node]:
                heat += moved * (around + (known[start] - around) * keep)
                total += moved
            known[node] = heat / total
            waiting.discard(node)
    return known
