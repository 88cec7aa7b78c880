"""Steady flow of air in a network of ducts, openings and fans.

Nodes carry a total pressure against the reference room [in. w.c.]; each branch relates its
flow [ft³/min] to the pressure that is lost along it by one monotone *law*. The flows that
satisfy every law and balance at every node are the minimum of a convex function of the flows
(the *content*, the sum of the areas under the laws), so there is one answer and a safeguarded
Newton step always finds it.

Method: each step replaces every law by its tangent, which leaves a symmetric positive system
for the node pressures, and takes the flows that follow from it. After the first step the flows
balance at every node, so each further step goes downhill on the content; a step that goes past
the lowest point along its direction is shortened. The system is eliminated node by node, always
the node with the fewest neighbours: on duct systems, which are trees with a few loops, nothing
is filled in and the cost is proportional to the number of branches.

Holds for: incompressible steady flow at one density; pressures far below atmospheric.
Source: DUCT_NETWORK (Newton's method on flows and heads, Todini and Pilati 1988).
"""

import heapq
import itertools
import math
from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any, Protocol

from downflow.physics import ducts

# Below this flow every power law is taken as a straight line, so that a branch that carries
# nothing keeps a finite resistance. The pressure there is some 1e-10 in. w.c. [ft³/min]
CREEP_CFM = 0.01
# The constant-airflow fan gives up this share of its set airflow between no load and its limit.
SET_POINT_SPREAD = 1e-7
# No law is taken as flatter than this. [in. w.c. per ft³/min]
LEAST_SLOPE_INWC_PER_CFM = 1e-10
# Where to begin when there is no last solution. [ft³/min]
FIRST_GUESS_CFM = 100.0
# A step changes no flow by more than this share of the largest flow: the next one is the last.
SETTLED_SHARE = 1e-7
# Largest error of the balance at a node, as a share of the fan's (or the largest) flow.
MASS_BALANCE_SHARE = 1e-6
MOST_STEPS = 120
# Two laws belong to the same air if their densities agree to this share.
SAME_DENSITY_SHARE = 1e-6


class NetworkError(ValueError):
    """A network that has no answer, with the reason.

    Attributes:
        kind: One of `unknown-node`, `twice`, `bad-number`, `disconnected`, `no-path`,
            `no-way-back`, `density`, `fan-table`, `not-settled`.
        nodes: Ids of the nodes concerned.
        branches: Ids of the branches concerned.
        row: Row of the fan table, from zero, where there is one.
        column: Column of that row: `airflow_cfm` or `static_inwc`.
    """

    def __init__(
        self,
        kind: str,
        message: str,
        nodes: Iterable[str] = (),
        branches: Iterable[str] = (),
        row: int | None = None,
        column: str | None = None,
    ) -> None:
        super().__init__(message)
        self.kind = kind
        self.nodes = tuple(nodes)
        self.branches = tuple(branches)
        self.row = row
        self.column = column


# ---------------------------------------------------------------------------- laws

_friction = ducts.friction_factor_and_slope


class Law(Protocol):
    """Pressure lost along a branch as a function of its flow; never falling."""

    def drop(self, flow_cfm: float) -> tuple[float, float]:
        """Loss [in. w.c.] at a flow, and its slope [in. w.c. per ft³/min]."""
        ...


def _positive(name: str, value: float) -> None:
    if not (math.isfinite(value) and value > 0.0):
        raise NetworkError("bad-number", f"{name} must be above zero, not {value:g}")


def _not_negative(name: str, value: float) -> None:
    if not (math.isfinite(value) and value >= 0.0):
        raise NetworkError("bad-number", f"{name} must not be below zero, not {value:g}")


@dataclass(frozen=True, slots=True)
class PowerLaw:
    """Loss that grows with a power of the flow: fittings, grilles, filters, coils, leaks.

    Args:
        resistance: Loss at one cubic foot a minute. [in. w.c. per (ft³/min)ⁿ]
        exponent: The power n: 2 for fittings and grilles, about 1.2 for filter media,
            1.5 for leaks (1 / 0.65). At least 1 and at most 3. [-]
        density_lb_ft3: Density at which the resistance was taken; None if it does not matter.
            [lb/ft³]

    Holds for: the flow range in which the exponent was measured.
    """

    resistance: float
    exponent: float = 2.0
    density_lb_ft3: float | None = None

    def __post_init__(self) -> None:
        _positive("resistance", self.resistance)
        if not 1.0 <= self.exponent <= 3.0:
            raise NetworkError("bad-number", f"exponent must be 1 to 3, not {self.exponent:g}")

    def drop(self, flow_cfm: float) -> tuple[float, float]:
        size = -flow_cfm if flow_cfm < 0.0 else flow_cfm
        n = self.exponent
        if size < CREEP_CFM:
            slope = self.resistance * CREEP_CFM ** (n - 1.0)
            return slope * flow_cfm, slope
        ratio = self.resistance * (size if n == 2.0 else size ** (n - 1.0))
        return ratio * flow_cfm, n * ratio


def measured_point(
    drop_inwc: float, airflow_cfm: float, exponent: float, density_lb_ft3: float | None = None
) -> PowerLaw:
    """Law through one measured or printed point: a filter, a coil, a grille, a register.

    Args:
        drop_inwc: Loss at the point, above zero. [in. w.c.]
        airflow_cfm: Flow at the point, above zero. [ft³/min]
        exponent: How the loss grows with flow. [-]
        density_lb_ft3: Density of the air at the point. [lb/ft³]

    Raises:
        NetworkError: a number that is not above zero.
    """
    _positive("drop_inwc", drop_inwc)
    _positive("airflow_cfm", airflow_cfm)
    return PowerLaw(drop_inwc / airflow_cfm**exponent, exponent, density_lb_ft3)


def leak(leakage_cfm25: float, exponent: float = ducts.LEAK_EXPONENT) -> PowerLaw:
    """Law of leaks known by the flow that holds 25 Pa across them.

    Args:
        leakage_cfm25: Flow at 25 Pa, above zero. [ft³/min]
        exponent: Power of the pressure in the flow, 0.5 to 1. [-]

    Source: F21_DUCT_LEAKAGE.
    """
    _positive("leakage_cfm25", leakage_cfm25)
    at_25_pa = ducts.LEAK_REFERENCE_PA / ducts.PA_PER_INWC
    return PowerLaw(at_25_pa / leakage_cfm25 ** (1.0 / exponent), 1.0 / exponent)


def opening(
    free_area_in2: float,
    density_lb_ft3: float = ducts.STANDARD_DENSITY_LB_FT3,
    discharge: float = ducts.ORIFICE_DISCHARGE,
) -> PowerLaw:
    """Law of a transfer opening, an undercut or a hole.

    Args:
        free_area_in2: Area that air can pass, above zero. [in²]
        density_lb_ft3: Density of the air. [lb/ft³]
        discharge: Discharge coefficient. [-]

    Source: ORIFICE.
    """
    _positive("free_area_in2", free_area_in2)
    flow = ducts.orifice_flow_cfm(free_area_in2, 1.0, density_lb_ft3, discharge)
    return PowerLaw(1.0 / ducts.PA_PER_INWC / flow**2, 2.0, density_lb_ft3)


@dataclass(frozen=True, slots=True)
class DuctLaw:
    """Friction along a straight duct, rigid or flexible, and the fittings on it.

    Build it with `duct`. The fields are the constants of the duct worked out once.
    """

    reynolds_per_cfm: float
    relative_roughness: float
    friction_inwc_per_cfm2: float
    fittings_inwc_per_cfm2: float
    density_lb_ft3: float

    def drop(self, flow_cfm: float) -> tuple[float, float]:
        size = -flow_cfm if flow_cfm < 0.0 else flow_cfm
        if size < CREEP_CFM:
            value, _ = self.drop(CREEP_CFM)
            slope = value / CREEP_CFM
            return slope * flow_cfm, slope
        per_cfm = self.reynolds_per_cfm
        factor, slope_f = _friction(size * per_cfm, self.relative_roughness)
        friction = self.friction_inwc_per_cfm2
        ratio = (friction * factor + self.fittings_inwc_per_cfm2) * size
        slope = 2.0 * ratio + friction * slope_f * per_cfm * size * size
        return (ratio * size if flow_cfm > 0.0 else -ratio * size), slope


def duct(
    diameter_in: float,
    length_ft: float,
    roughness_ft: float,
    density_lb_ft3: float,
    viscosity_lb_ft_s: float,
    fittings_c: float = 0.0,
    area_in2: float | None = None,
    flex_factor: float = 1.0,
) -> DuctLaw:
    """Law of a duct of constant section.

    Args:
        diameter_in: Inside diameter; for a rectangular or oval duct the round one with the same
            friction at the same flow (`ducts.rectangular_equivalent_in`), above zero. [in]
        length_ft: Installed length, above zero. [ft]
        roughness_ft: Absolute roughness. [ft]
        density_lb_ft3: Density of the air in it. [lb/ft³]
        viscosity_lb_ft_s: Dynamic viscosity. [lb/(ft s)]
        fittings_c: Sum of the loss coefficients on the velocity pressure of this duct. [-]
        area_in2: True area for that velocity pressure; the circle's if not given. [in²]
        flex_factor: Loss against the fully stretched duct, 1 for a rigid one. [-]

    Raises:
        NetworkError: a size, length or density that is not above zero.

    Source: F21_DARCY, F21_COLEBROOK, F21_FLEX.
    """
    for name, value in (
        ("diameter_in", diameter_in),
        ("length_ft", length_ft),
        ("density_lb_ft3", density_lb_ft3),
        ("viscosity_lb_ft_s", viscosity_lb_ft_s),
        ("flex_factor", flex_factor),
    ):
        _positive(name, value)
    _not_negative("roughness_ft", roughness_ft)
    _not_negative("fittings_c", fittings_c)
    round_in2 = ducts.round_area_in2(diameter_in)
    true_in2 = round_in2 if area_in2 is None else area_in2
    _positive("area_in2", true_in2)
    per_cfm2_round = ducts.velocity_pressure_inwc(144.0 / round_in2, density_lb_ft3)
    per_cfm2_true = ducts.velocity_pressure_inwc(144.0 / true_in2, density_lb_ft3)
    return DuctLaw(
        reynolds_per_cfm=ducts.reynolds(
            144.0 / round_in2, diameter_in, density_lb_ft3, viscosity_lb_ft_s
        ),
        relative_roughness=12.0 * roughness_ft / diameter_in,
        friction_inwc_per_cfm2=flex_factor * 12.0 * length_ft / diameter_in * per_cfm2_round,
        fittings_inwc_per_cfm2=fittings_c * per_cfm2_true,
        density_lb_ft3=density_lb_ft3,
    )


@dataclass(frozen=True, slots=True)
class Series:
    """Laws one after the other along one branch: the losses add."""

    parts: tuple[Law, ...]

    def __post_init__(self) -> None:
        if not self.parts:
            raise NetworkError("bad-number", "a series needs at least one part")

    @property
    def density_lb_ft3(self) -> float | None:
        for part in self.parts:
            density: float | None = getattr(part, "density_lb_ft3", None)
            if density is not None:
                return density
        return None

    def drop(self, flow_cfm: float) -> tuple[float, float]:
        value = slope = 0.0
        for part in self.parts:
            part_value, part_slope = part.drop(flow_cfm)
            value += part_value
            slope += part_slope
        return value, slope


@dataclass(frozen=True, slots=True)
class FanCurve:
    """Fan whose pressure falls with a power of its flow: rise = shutoff − a Qⁿ.

    Args:
        shutoff_inwc: Rise at no flow, above zero. [in. w.c.]
        coefficient: The factor a, above zero. [in. w.c. per (ft³/min)ⁿ]
        exponent: The power n. [-]
        density_lb_ft3: Density of the air in the fan. [lb/ft³]
    """

    shutoff_inwc: float
    coefficient: float
    exponent: float = 2.0
    density_lb_ft3: float | None = None

    def __post_init__(self) -> None:
        _positive("shutoff_inwc", self.shutoff_inwc)
        _positive("coefficient", self.coefficient)
        if not 1.0 <= self.exponent <= 3.0:
            raise NetworkError("bad-number", f"exponent must be 1 to 3, not {self.exponent:g}")

    def drop(self, flow_cfm: float) -> tuple[float, float]:
        size = abs(flow_cfm)
        ratio = self.coefficient * max(size, CREEP_CFM) ** (self.exponent - 1.0)
        slope = ratio if size < CREEP_CFM else self.exponent * ratio
        return ratio * flow_cfm - self.shutoff_inwc, slope


@dataclass(frozen=True, slots=True)
class FanTable:
    """Fan known by the maker's table of airflow against external static pressure.

    Build it with `fan_table`, which checks the rows and brings them to the density of the air.
    Between rows the pressure is interpolated on a straight line; beyond them the end line is
    carried on and the solution says so.
    """

    airflow_cfm: tuple[float, ...]
    static_inwc: tuple[float, ...]
    density_lb_ft3: float | None = None

    def drop(self, flow_cfm: float) -> tuple[float, float]:
        flows = self.airflow_cfm
        k = min(max(bisect_right(flows, flow_cfm) - 1, 0), len(flows) - 2)
        low, rise = flows[k], self.static_inwc[k]
        slope = (rise - self.static_inwc[k + 1]) / (flows[k + 1] - low)
        return slope * (flow_cfm - low) - rise, slope

    def outside(self, flow_cfm: float) -> bool:
        """Whether a flow lies beyond the rows of the table."""
        return not self.airflow_cfm[0] <= flow_cfm <= self.airflow_cfm[-1]


def fan_table(
    rows: Sequence[tuple[float, float]],
    density_lb_ft3: float | None = None,
    table_density_lb_ft3: float = ducts.STANDARD_DENSITY_LB_FT3,
) -> FanTable:
    """Fan law from rows of (airflow [ft³/min], static pressure [in. w.c.]) at one speed.

    Args:
        rows: At least two rows, in any order. Static pressure must fall as airflow rises.
        density_lb_ft3: Density of the air that the fan moves; the table's if not given. [lb/ft³]
        table_density_lb_ft3: Density at which the table was taken. [lb/ft³]

    Raises:
        NetworkError: fewer than two rows, a number below zero, or a pressure that does not
            fall; `row` and `column` say where.

    Holds for: a given wheel speed; the same actual flow at a pressure in proportion to density.
    Source: FAN_LAWS.
    """
    if len(rows) < 2:
        raise NetworkError("fan-table", f"a fan table needs at least two rows, not {len(rows)}")
    _positive("table_density_lb_ft3", table_density_lb_ft3)
    for k, (airflow, static) in enumerate(rows):
        for column, value in (("airflow_cfm", airflow), ("static_inwc", static)):
            if not (math.isfinite(value) and value >= 0.0):
                raise NetworkError(
                    "fan-table", f"row {k + 1}: {value:g} must not be below zero",
                    row=k, column=column,
                )
    order = sorted(range(len(rows)), key=lambda k: rows[k][0])
    for before, after in itertools.pairwise(order):
        if rows[after][0] == rows[before][0]:
            raise NetworkError(
                "fan-table", f"rows {before + 1} and {after + 1} give the same airflow, "
                f"{rows[after][0]:g} cfm", row=after, column="airflow_cfm",
            )
        if rows[after][1] >= rows[before][1]:
            raise NetworkError(
                "fan-table",
                f"row {after + 1}: static pressure must fall as airflow rises, but "
                f"{rows[after][1]:g} in. w.c. at {rows[after][0]:g} cfm is not below "
                f"{rows[before][1]:g} at {rows[before][0]:g} cfm",
                row=after, column="static_inwc",
            )
    scale = 1.0
    if density_lb_ft3 is not None:
        _positive("density_lb_ft3", density_lb_ft3)
        scale = density_lb_ft3 / table_density_lb_ft3
    return FanTable(
        tuple(rows[k][0] for k in order), tuple(rows[k][1] * scale for k in order), density_lb_ft3
    )


@dataclass(frozen=True, slots=True)
class ConstantAirflowFan:
    """Fan that holds a set airflow up to a static limit and then gives way.

    Below the limit the airflow is the set one (to one part in ten million); at the limit the
    pressure rises no further than on a straight line to `shutoff_inwc` at no flow.

    Args:
        set_cfm: Airflow that the motor holds, above zero. [ft³/min]
        limit_inwc: Largest rise at which it can still hold it, above zero. [in. w.c.]
        shutoff_inwc: Rise at no flow, at least the limit; the limit itself if not given.
            [in. w.c.]
        density_lb_ft3: Density of the air in the fan. [lb/ft³]

    Raises:
        NetworkError: a number that is not above zero, or a shutoff below the limit.
    """

    set_cfm: float
    limit_inwc: float
    shutoff_inwc: float | None = None
    density_lb_ft3: float | None = None

    def __post_init__(self) -> None:
        _positive("set_cfm", self.set_cfm)
        _positive("limit_inwc", self.limit_inwc)
        if self.shutoff_inwc is not None and not self.shutoff_inwc >= self.limit_inwc:
            raise NetworkError(
                "bad-number",
                f"shutoff_inwc must be at least the limit, {self.limit_inwc:g}, "
                f"not {self.shutoff_inwc:g}",
            )

    def drop(self, flow_cfm: float) -> tuple[float, float]:
        limit = self.limit_inwc
        corner = self.set_cfm * (1.0 - SET_POINT_SPREAD)
        if flow_cfm < corner:
            shutoff = limit if self.shutoff_inwc is None else self.shutoff_inwc
            slope = (shutoff - limit) / corner
            return slope * flow_cfm - shutoff, slope
        slope = limit / (self.set_cfm * SET_POINT_SPREAD)
        return slope * (flow_cfm - self.set_cfm), slope

    def at_limit(self, flow_cfm: float) -> bool:
        """Whether the motor can no longer hold its set airflow."""
        return flow_cfm < self.set_cfm * (1.0 - 2.0 * SET_POINT_SPREAD)


# ------------------------------------------------------------------------- network


@dataclass(frozen=True, slots=True)
class Node:
    """A place with one pressure.

    Args:
        id: Its name.
        pressure_inwc: Its pressure where that is known (the reference room, outdoors, the
            belly); None where the network decides it. [in. w.c.]
        inflow_cfm: Air put in from outside the network, negative if taken out. [ft³/min]
        room: Whether it is a closed room: refused without a way back for its air.
    """

    id: str
    pressure_inwc: float | None = None
    inflow_cfm: float = 0.0
    room: bool = False


@dataclass(frozen=True, slots=True)
class Branch:
    """A law between two nodes; flow is positive from `start` to `end`.

    Args:
        id: Its name.
        start: Id of the node it leaves.
        end: Id of the node it reaches.
        law: Its pressure against flow.
        supply: Whether it brings supply air into a room: it does not count as a way back.
    """

    id: str
    start: str
    end: str
    law: Law
    supply: bool = False


@dataclass(frozen=True, slots=True)
class Solution:
    """What a network settles at.

    Attributes:
        flow_cfm: Flow of each branch, positive from its start to its end. [ft³/min]
        pressure_inwc: Total pressure of each node. [in. w.c.]
        drop_inwc: Pressure lost along each branch; a fan's is negative. [in. w.c.]
        steps: Newton steps taken.
        mass_residual_cfm: Largest error of the balance at a node. [ft³/min]
        energy_residual_inwc: Largest difference between a law and the pressures at the ends of
            its branch. [in. w.c.]
        outside_table: Fans whose flow lies beyond their table.
        at_limit: Constant-airflow fans that cannot hold their set airflow.
    """

    flow_cfm: dict[str, float]
    pressure_inwc: dict[str, float]
    drop_inwc: dict[str, float]
    steps: int
    mass_residual_cfm: float
    energy_residual_inwc: float
    outside_table: tuple[str, ...] = ()
    at_limit: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Pivot:
    """One node of the elimination: its remaining neighbours and where they are stored."""

    node: int
    others: tuple[tuple[int, int], ...]
    pairs: tuple[tuple[int, int, int], ...]


@lru_cache(maxsize=64)
def _elimination(
    free: int, ends: tuple[tuple[int, int], ...]
) -> tuple[tuple[_Pivot, ...], tuple[int, ...], int]:
    """Order of elimination by fewest neighbours, with every storage place worked out.

    Args:
        free: Number of free nodes; those with a known pressure carry −1.
        ends: Start and end of each branch.

    Returns:
        The pivots, the storage place of each branch (−1 if none) and the number of places.
    """
    near: list[dict[int, int]] = [{} for _ in range(free)]
    places = 0
    place_of: list[int] = []
    for i, j in ends:
        if i < 0 or j < 0 or i == j:
            place_of.append(-1)
            continue
        place = near[i].get(j)
        if place is None:
            place = places
            places += 1
            near[i][j] = near[j][i] = place
        place_of.append(place)
    heap = [(len(near[k]), k) for k in range(free)]
    heapq.heapify(heap)
    done = [False] * free
    pivots: list[_Pivot] = []
    while heap:
        count, node = heapq.heappop(heap)
        if done[node] or count != len(near[node]):
            continue
        done[node] = True
        others = tuple(near[node].items())
        pairs: list[tuple[int, int, int]] = []
        for other, _ in others:
            del near[other][node]
        for a in range(len(others)):
            first = others[a][0]
            for b in range(a + 1, len(others)):
                second = others[b][0]
                place = near[first].get(second)
                if place is None:
                    place = places
                    places += 1
                    near[first][second] = near[second][first] = place
                pairs.append((place, a, b))
        for other, _ in others:
            heapq.heappush(heap, (len(near[other]), other))
        pivots.append(_Pivot(node, others, tuple(pairs)))
    return tuple(pivots), tuple(place_of), places


def _eliminate(
    pivots: tuple[_Pivot, ...], diagonal: list[float], off: list[float], right: list[float]
) -> list[float]:
    """Solve the symmetric system in place; `right` becomes the pressures."""
    for pivot in pivots:
        node = pivot.node
        value = diagonal[node]
        others = pivot.others
        known = right[node]
        if len(others) == 1:
            other, place = others[0]
            share = off[place] / value
            diagonal[other] -= share * off[place]
            right[other] -= share * known
            continue
        for other, place in others:
            share = off[place] / value
            diagonal[other] -= share * off[place]
            right[other] -= share * known
        for place, a, b in pivot.pairs:
            off[place] -= off[others[a][1]] * off[others[b][1]] / value
    for pivot in reversed(pivots):
        node = pivot.node
        total = right[node]
        for other, place in pivot.others:
            total -= off[place] * right[other]
        right[node] = total / diagonal[node]
    return right


def _find_faults(nodes: Sequence[Node], branches: Sequence[Branch], index: dict[str, int]) -> None:
    """Refuse a network in which some air has nowhere to go."""
    ground = len(nodes)
    spot = [ground if node.pressure_inwc is not None else k for k, node in enumerate(nodes)]
    near: list[list[tuple[int, int]]] = [[] for _ in range(ground + 1)]
    back: list[list[int]] = [[] for _ in range(ground + 1)]
    for e, branch in enumerate(branches):
        i, j = spot[index[branch.start]], spot[index[branch.end]]
        if i != j:
            near[i].append((j, e))
            near[j].append((i, e))
            if not branch.supply:
                back[i].append(j)
                back[j].append(i)

    # Every node must reach a known pressure.
    seen = _reach(ground, [[other for other, _ in row] for row in near])
    lost = [node.id for k, node in enumerate(nodes) if spot[k] == k and k not in seen]
    if lost:
        raise NetworkError(
            "disconnected",
            "not connected to anything whose pressure is known: " + ", ".join(lost),
            nodes=lost,
            branches=[b.id for b in branches if b.start in lost or b.end in lost],
        )

    # Every closed room that is supplied must reach it again without going back up a supply.
    home = _reach(ground, back)
    for branch in branches:
        if branch.supply:
            for end in (branch.end, branch.start):
                k = index[end]
                if nodes[k].room and spot[k] == k and k not in home:
                    raise NetworkError(
                        "no-way-back",
                        f"{end} has a supply, {branch.id}, and no way back for its air",
                        nodes=(end,), branches=(branch.id,),
                    )

    # A branch that alone joins a part to the rest can carry nothing into it.
    for k, node in enumerate(nodes):
        if node.inflow_cfm != 0.0 and spot[k] == k:
            near[k].append((ground, -1 - k))
            near[ground].append((k, -1 - k))
    bridge = _first_bridge(ground, near)
    if bridge is not None:
        e, beyond = bridge
        branch = branches[e]
        rooms = [nodes[k].id for k in beyond if nodes[k].room]
        if rooms:
            raise NetworkError(
                "no-way-back",
                f"{rooms[0]} has a supply, {branch.id}, and no way back for its air",
                nodes=rooms, branches=(branch.id,),
            )
        names = [nodes[k].id for k in sorted(beyond)]
        raise NetworkError(
            "no-path",
            f"{branch.id} leads to {', '.join(names)} and from there nowhere: "
            "it can carry no air",
            nodes=names, branches=(branch.id,),
        )


def _reach(start: int, near: Sequence[Sequence[int]]) -> set[int]:
    seen = {start}
    stack = [start]
    while stack:
        for other in near[stack.pop()]:
            if other not in seen:
                seen.add(other)
                stack.append(other)
    return seen


def _first_bridge(
    root: int, near: Sequence[Sequence[tuple[int, int]]]
) -> tuple[int, set[int]] | None:
    """The bridge nearest to the root, and the nodes beyond it (depth-first, low points)."""
    number = {root: 0}
    low = {root: 0}
    order = [root]
    into: dict[int, tuple[int, int]] = {}
    stack = [(root, iter(near[root]), -(10**9))]
    while stack:
        node, edges, came_by = stack[-1]
        for other, edge in edges:
            if edge == came_by:
                continue
            if other in number:
                low[node] = min(low[node], number[other])
            else:
                number[other] = low[other] = len(order)
                order.append(other)
                into[other] = (node, edge)
                stack.append((other, iter(near[other]), edge))
                break
        else:
            stack.pop()
            if stack:
                parent = stack[-1][0]
                low[parent] = min(low[parent], low[node])
    for node in order[1:]:
        parent, edge = into[node]
        if low[node] > number[parent]:
            beyond = {node}
            for later in order[number[node] + 1 :]:
                if into[later][0] in beyond:
                    beyond.add(later)
            return edge, beyond
    return None


# Shapes of networks already found sound: a range solves the same one many times.
MOST_REMEMBERED_SHAPES = 256
_SOUND_SHAPES: set[tuple[Any, ...]] = set()


class Network:
    """Nodes and branches that can be solved.

    Args:
        nodes: At least one with a known pressure.
        branches: In any order.

    Raises:
        NetworkError: an id used twice or unknown, a number that is not finite, a part that is
            not connected, a closed room with a supply and no way back, a branch with no path,
            or laws at different densities.
    """

    def __init__(self, nodes: Iterable[Node], branches: Iterable[Branch]) -> None:
        self.nodes = tuple(nodes)
        self.branches = tuple(branches)
        index: dict[str, int] = {}
        for node in self.nodes:
            if node.id in index:
                raise NetworkError("twice", f"two nodes are called {node.id}", nodes=(node.id,))
            for value in (node.pressure_inwc, node.inflow_cfm):
                if value is not None and not math.isfinite(value):
                    raise NetworkError(
                        "bad-number", f"{node.id}: {value} is not a number", nodes=(node.id,)
                    )
            index[node.id] = len(index)
        if not self.branches:
            raise NetworkError("no-path", "there is no branch: no air can move")
        names: set[str] = set()
        for branch in self.branches:
            if branch.id in names:
                raise NetworkError(
                    "twice", f"two branches are called {branch.id}", branches=(branch.id,)
                )
            names.add(branch.id)
            for end in (branch.start, branch.end):
                if end not in index:
                    raise NetworkError(
                        "unknown-node", f"{branch.id} ends at {end}, which is not a node",
                        nodes=(end,), branches=(branch.id,),
                    )
            if branch.start == branch.end:
                raise NetworkError(
                    "no-path", f"{branch.id} starts and ends at {branch.start}",
                    nodes=(branch.start,), branches=(branch.id,),
                )
        shape = (
            tuple((node.pressure_inwc is None, node.inflow_cfm != 0.0, node.room)
                  for node in self.nodes),
            tuple((index[b.start], index[b.end], b.supply) for b in self.branches),
        )
        if shape not in _SOUND_SHAPES:
            _find_faults(self.nodes, self.branches, index)
            if len(_SOUND_SHAPES) >= MOST_REMEMBERED_SHAPES:
                _SOUND_SHAPES.clear()
            _SOUND_SHAPES.add(shape)
        self._prepare(index)

    def _prepare(self, index: dict[str, int]) -> None:
        self._check_density()
        free = [k for k, node in enumerate(self.nodes) if node.pressure_inwc is None]
        self._free = free
        place = {k: n for n, k in enumerate(free)}
        self._known = [
            0.0 if node.pressure_inwc is None else node.pressure_inwc for node in self.nodes
        ]
        self._inflow = [self.nodes[k].inflow_cfm for k in free]
        self._ends = tuple(
            (place.get(index[b.start], -1), place.get(index[b.end], -1)) for b in self.branches
        )
        self._known_start = [self._known[index[b.start]] for b in self.branches]
        self._known_end = [self._known[index[b.end]] for b in self.branches]

    def _check_density(self) -> None:
        first: tuple[str, float] | None = None
        for branch in self.branches:
            density: float | None = getattr(branch.law, "density_lb_ft3", None)
            if density is None:
                continue
            if first is None:
                first = (branch.id, density)
            elif abs(density - first[1]) > SAME_DENSITY_SHARE * first[1]:
                raise NetworkError(
                    "density",
                    f"{branch.id} is at {density:.5f} lb/ft³ and {first[0]} at {first[1]:.5f}: "
                    "bring both to the same air",
                    branches=(first[0], branch.id),
                )

    def with_laws(self, laws: Mapping[str, Law]) -> "Network":
        """The same network with some laws replaced.

        Args:
            laws: New law by branch id.

        Raises:
            NetworkError: an id that is not a branch, or a law at another density.
        """
        unknown = set(laws) - {branch.id for branch in self.branches}
        if unknown:
            raise NetworkError("unknown-node", f"no branch is called {min(unknown)}",
                               branches=sorted(unknown))
        other = object.__new__(Network)
        other.__dict__.update(self.__dict__)
        other.branches = tuple(
            replace(branch, law=laws[branch.id]) if branch.id in laws else branch
            for branch in self.branches
        )
        other._check_density()
        return other

    def solve(self, start: Solution | Mapping[str, float] | None = None) -> Solution:
        """Flows and pressures at which every law holds and every node balances.

        Args:
            start: The last solution, or flows by branch id, to begin from; any start converges.

        Raises:
            NetworkError: no convergence (`not-settled`), which no monotone law should cause.
        """
        branches = self.branches
        count = len(branches)
        ends = self._ends
        pivots, place_of, places = _elimination(len(self._free), ends)
        flows = self._first_flows(start)
        drops = [law.drop for law in (branch.law for branch in branches)]
        values, slopes = _at(drops, flows)
        known_start, known_end = self._known_start, self._known_end
        size = len(self._free)
        pressures: list[float] = []
        balanced = False
        settled = False
        steps = 0
        spans = range(count)
        while not settled:
            if steps == MOST_STEPS:
                raise NetworkError("not-settled", f"no answer after {MOST_STEPS} steps")
            steps += 1
            diagonal = [0.0] * size
            off = [0.0] * places
            inflow = list(self._inflow)
            lead = [0.0] * count
            gain = [0.0] * count
            for e in spans:
                i, j = ends[e]
                g = 1.0 / slopes[e]
                gain[e] = g
                base = flows[e] - g * values[e]
                if i >= 0:
                    if j >= 0:
                        off[place_of[e]] -= g
                        diagonal[j] += g
                        inflow[j] += base
                    else:
                        base -= g * known_end[e]
                    diagonal[i] += g
                    inflow[i] -= base
                elif j >= 0:
                    base += g * known_start[e]
                    diagonal[j] += g
                    inflow[j] += base
                else:
                    base += g * (known_start[e] - known_end[e])
                lead[e] = base
            pressures = _eliminate(pivots, diagonal, off, inflow)
            moves = [0.0] * count
            largest = change = 0.0
            for e in spans:
                i, j = ends[e]
                flow = lead[e]
                if i >= 0:
                    flow += gain[e] * (pressures[i] - pressures[j] if j >= 0 else pressures[i])
                elif j >= 0:
                    flow -= gain[e] * pressures[j]
                move = flow - flows[e]
                moves[e] = move
                lead[e] = flow
                move = -move if move < 0.0 else move
                flow = -flow if flow < 0.0 else flow
                if move > change:
                    change = move
                if flow > largest:
                    largest = flow
            settled = change <= SETTLED_SHARE * largest + 1e-12 and balanced
            new_values, new_slopes = _at(drops, lead)
            if balanced and not settled:
                downhill = climb = 0.0
                for e in spans:
                    move = moves[e]
                    downhill -= slopes[e] * move * move
                    climb += (new_values[e] - values[e]) * move
                # Slope of the content at the end of the step: at its start it is `downhill`.
                if downhill + climb > -0.5 * downhill:
                    lead, new_values, new_slopes = _shorten(
                        drops, flows, values, moves, downhill, downhill + climb
                    )
            flows, values, slopes = lead, new_values, new_slopes
            balanced = True
        return self._report(flows, values, pressures, steps)

    def _first_flows(self, start: Solution | Mapping[str, float] | None) -> list[float]:
        if start is None:
            return [
                branch.law.set_cfm if isinstance(branch.law, ConstantAirflowFan)
                else FIRST_GUESS_CFM
                for branch in self.branches
            ]
        known = start.flow_cfm if isinstance(start, Solution) else start
        flows = []
        for branch in self.branches:
            flow = known.get(branch.id, FIRST_GUESS_CFM)
            flows.append(flow if math.isfinite(flow) else FIRST_GUESS_CFM)
        return flows

    def _report(
        self, flows: list[float], values: list[float], pressures: list[float], steps: int
    ) -> Solution:
        pressure = list(self._known)
        for place, k in enumerate(self._free):
            pressure[k] = pressures[place]
        balance = list(self._inflow)
        energy = 0.0
        largest = 0.0
        for e, (i, j) in enumerate(self._ends):
            above = pressures[i] if i >= 0 else self._known_start[e]
            below = pressures[j] if j >= 0 else self._known_end[e]
            energy = max(energy, abs(above - below - values[e]))
            largest = max(largest, abs(flows[e]))
            if i >= 0:
                balance[i] -= flows[e]
            if j >= 0:
                balance[j] += flows[e]
        mass = max((abs(value) for value in balance), default=0.0)
        if mass > MASS_BALANCE_SHARE * largest:
            raise NetworkError(
                "not-settled",
                f"a node is out of balance by {mass:g} cfm: the laws differ too far in size",
            )
        ids = [branch.id for branch in self.branches]
        outside = tuple(
            branch.id for branch, flow in zip(self.branches, flows, strict=True)
            if isinstance(branch.law, FanTable) and branch.law.outside(flow)
        )
        limited = tuple(
            branch.id for branch, flow in zip(self.branches, flows, strict=True)
            if isinstance(branch.law, ConstantAirflowFan) and branch.law.at_limit(flow)
        )
        return Solution(
            flow_cfm=dict(zip(ids, flows, strict=True)),
            pressure_inwc={
                node.id: value for node, value in zip(self.nodes, pressure, strict=True)
            },
            drop_inwc=dict(zip(ids, values, strict=True)),
            steps=steps,
            mass_residual_cfm=mass,
            energy_residual_inwc=energy,
            outside_table=outside,
            at_limit=limited,
        )


def _at(drops: Sequence[Any], flows: Sequence[float]) -> tuple[list[float], list[float]]:
    values = []
    slopes = []
    for drop, flow in zip(drops, flows, strict=True):
        value, slope = drop(flow)
        values.append(value)
        slopes.append(slope if slope > LEAST_SLOPE_INWC_PER_CFM else LEAST_SLOPE_INWC_PER_CFM)
    return values, slopes


def _shorten(
    drops: Sequence[Any],
    flows: Sequence[float],
    values: Sequence[float],
    moves: Sequence[float],
    downhill: float,
    uphill: float,
) -> tuple[list[float], list[float], list[float]]:
    """A point along the step where the content is close to its lowest.

    The slope of the content along the step rises steadily from `downhill` (below zero) to
    `uphill` (above zero): close in on its zero between the two, by false position, halving
    where that is slow.
    """
    low, high = 0.0, 1.0
    at_low, at_high = downhill, uphill
    enough = -0.3 * downhill
    trial = list(flows)
    new_values: list[float] = []
    new_slopes: list[float] = []
    for attempt in range(60):
        share = low + (high - low) * (
            0.5 if attempt % 2 else min(max(-at_low / (at_high - at_low), 0.05), 0.95)
        )
        trial = [flow + share * move for flow, move in zip(flows, moves, strict=True)]
        new_values, new_slopes = _at(drops, trial)
        slope = downhill + sum(
            (new - old) * move for new, old, move in zip(new_values, values, moves, strict=True)
        )
        if abs(slope) <= enough:
            break
        if slope < 0.0:
            low, at_low = share, slope
        else:
            high, at_high = share, slope
    return trial, new_values, new_slopes


# ----------------------------------------------------------------- plain-data entry


def law_from_row(row: Mapping[str, Any]) -> Law:
    """A law from plain data, as a file or a check holds it.

    Args:
        row: `law` names it: `power` (resistance, exponent), `point` (drop_inwc, airflow_cfm,
            exponent), `duct` (the arguments of `duct`), `opening`, `leak`, `fan-curve`,
            `fan-table` (rows and densities), `constant-airflow`, `series` (parts).

    Raises:
        NetworkError: a name that is not one of these.
    """
    makers: dict[str, Any] = {
        "power": PowerLaw,
        "point": measured_point,
        "duct": duct,
        "opening": opening,
        "leak": leak,
        "fan-curve": FanCurve,
        "fan-table": fan_table,
        "constant-airflow": ConstantAirflowFan,
    }
    name = row["law"]
    rest = {key: value for key, value in row.items() if key != "law"}
    if name == "series":
        return Series(tuple(law_from_row(part) for part in rest["parts"]))
    if name not in makers:
        raise NetworkError("bad-number", f"no law is called {name}")
    law: Law = makers[name](**rest)
    return law


def from_rows(
    nodes: Iterable[Mapping[str, Any]], branches: Iterable[Mapping[str, Any]]
) -> Network:
    """A network from plain data: see `Node`, `Branch` and `law_from_row` for the keys."""
    return Network(
        [Node(**row) for row in nodes],
        [
            Branch(
                row["id"], row["start"], row["end"], law_from_row(row["law"]),
                bool(row.get("supply", False)),
            )
            for row in branches
        ],
    )


def branch_flow_cfm(
    nodes: Iterable[Mapping[str, Any]], branches: Iterable[Mapping[str, Any]], branch: str
) -> float:
    """Flow of one branch of a network given as plain data. [ft³/min]"""
    return from_rows(nodes, branches).solve().flow_cfm[branch]


def node_pressure_inwc(
    nodes: Iterable[Mapping[str, Any]], branches: Iterable[Mapping[str, Any]], node: str
) -> float:
    """Pressure of one node of a network given as plain data. [in. w.c.]"""
    return from_rows(nodes, branches).solve().pressure_inwc[node]
