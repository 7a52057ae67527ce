"""How much mortar: solid units by geometry, hollow block by published yield, low and high.

Of a solid unit the bed under it and one head joint are filled, (L + j) W j + H W j: confirmed by NAVEDTRA 14045 Table 4-5
and BIA Technical Note 10.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from wallplan.layout.model import Layout, Piece, WallLayout
from wallplan.lengths import TICKS_PER_INCH
from wallplan.lists.order.counted import pieces_in
from wallplan.lists.order.figures import LITRES_PER_CUBIC_FOOT, Scale, scale_of, settle, settle_up, show
from wallplan.lists.order.line import Line
from wallplan.plan.job import Job, Masonry

BLOCK_RUN = 16 * TICKS_PER_INCH
"""The run of one block of the published rules: a 15 5/8 in. unit and its joint."""


HALF_HIGH = 4 * TICKS_PER_INCH
"""Pieces of this height and lower take less mortar to a length of course ..."""

HALF_HIGH_SHARE = settle(Fraction("13.5") / 225 / (Fraction("8.5") / Fraction("112.5")), 2)
"""... this part of it: 13.5 cu ft to 225 block of 4 in. (100 sq ft), 8.5 to 112.5 of 8 in. (NAVEDTRA 14045 Table 4-3)."""


class YieldRule(NamedTuple):
    """A published rule as cubic feet of mortar to 100 block of 8 x 16 in. face, and where it stands."""

    per_100: Fraction
    source: str


YIELD_RULES = (
    YieldRule(Fraction("7.5"), "a supplier's rule: 600 lb of sand to 100 block, at 80 lb to the cu ft"),
    YieldRule(settle(Fraction("8.5") / Fraction("1.125"), 2),
              "NAVEDTRA 14043 Table 8-4: 8.5 cu ft to 100 sq ft of 112.5 block, 10 % waste in it"),
    YieldRule(settle(Fraction(300, 35), 2), "a trade book: 1 bag of masonry cement and 3 cu ft of sand lay 35 block"),
    YieldRule(Fraction("8.75"), "a supplier's rule: 3.5 tons of sand to 1,000 block"),
    YieldRule(Fraction(10), "a supplier's rule: 800 lb of sand to 100 block, at 80 lb to the cu ft"),
)
"""From the least to the most. Damp loose sand makes about its own bulk of mortar (the rule of 38 gives 27 to 28.5 cubic
feet of sand to 27 of mortar), so a rule in sand is a rule in mortar. Face-shell geometry, 1.3, is a fifth of it."""


@dataclass(frozen=True)
class Mortar:
    """Mortar of a job in its measure's volume: least and most, and how each was come to.

    ``blocks`` is how many block of a 16 in. (400 mm) face were reckoned with, None for solid units.
    """

    low: Fraction
    high: Fraction
    why: str
    blocks: Fraction | None = None


def order_mortar(layout: Layout) -> tuple[Line, Mortar] | None:
    """The line of mixed mortar and what it is made of; None for a job without pieces."""
    if not any(pieces_in(course, wall) for wall in layout.walls for course in wall.courses):
        return None
    scale = scale_of(layout.job.measure)
    mortar = measure_mortar(layout)
    return Line("mortar", "mortar, mixed", scale.volume, mortar.low, mortar.high - mortar.low, mortar.why), mortar


def measure_mortar(layout: Layout) -> Mortar:
    """Mortar of all walls."""
    measure = _fill_solid if layout.job.masonry.unit.solid else _by_yield
    return measure(layout.job, layout.walls)


def running_length(walls: Iterable[WallLayout], joint: int) -> int:
    """Ticks of bed that pieces lie on, each with a head joint; 0 for none."""
    return sum(piece.length + joint for piece in _pieces(walls))


def _pieces(walls: Iterable[WallLayout]) -> Iterator[Piece]:
    return (piece for wall in walls for course in wall.courses for piece in pieces_in(course, wall))


def _fill_solid(job: Job, walls: tuple[WallLayout, ...]) -> Mortar:
    scale = scale_of(job.measure)
    volumes, told = list[Fraction](), list[str]()

    def add(words: str, size: Fraction, unit: str, width: int, thick: int) -> None:
        sizes = scale.size(width), scale.size(thick)
        volumes.append(settle(size * sizes[0] * sizes[1] / scale.cube, 2))
        told.append(f"{words}: {show(size)} {unit} x {show(sizes[0])} x {show(sizes[1])} / {scale.cube} = "
                    f"{show(volumes[-1])} {scale.volume}")

    for width, of, leaves in _leaves(job):
        for bed in sorted({wall.bed for wall in walls}):
            alike = [piece for piece in _pieces(wall for wall in walls if wall.bed == bed) if piece.leaf in leaves]
            run = scale.size(sum(piece.length + job.masonry.joint for piece in alike))
            add(f"beds{of}", run, f"{scale.length} of courses", width, bed)
        rise = scale.size(sum(piece.height for piece in _pieces(walls) if piece.leaf in leaves))
        add(f"head joints{of}, one a piece", rise, f"{scale.length} high in all", width, job.masonry.joint)
    if job.masonry.one_brick:
        behind = sum(piece.length for wall in walls for course in wall.courses for piece in course.backing)
        add("between stretchers, front and back", scale.size(behind), f"{scale.length} long in all", job.masonry.unit.height,
            job.masonry.thickness - 2 * job.masonry.unit.thickness)
    if any(wall.piers for wall in walls):
        add("between units of piers, side by side", scale.size(sum(_sides_in_piers(wall, job.masonry) for wall in walls)),
            f"{scale.length} long in all", job.masonry.unit.height, job.masonry.joint)
    net = sum(volumes, Fraction(0))
    told.append(f"{' + '.join(map(show, volumes))} = {show(net)}")
    exact = settle(net * job.order.mortar_waste / 100, 4)
    waste = settle_up(exact, 2)
    told += [f"waste {show(net)} x {show(job.order.mortar_waste)} / 100 = {show(exact)}, up to {show(waste)}",
             f"{show(net)} + {show(waste)} = {show(net + waste)}"]
    return Mortar(net, net + waste, "; ".join(told))


def _sides_in_piers(wall: WallLayout, masonry: Masonry) -> int:
    """How long the joints of a wall's piers are in plan that are no unit's head joint, ticks."""
    area = 0
    for pier in wall.piers:
        one = pier.pier
        for course in pier.courses:
            deep = one.front + one.back + (masonry.thickness if course.tied else 0)
            area += one.width * deep - sum(unit.along * unit.deep + min(unit.along, unit.deep) * masonry.joint
                                           for unit in course.pieces)
    return max(0, area // masonry.joint)


def _leaves(job: Job) -> tuple[tuple[int, str, tuple[str | None, ...]], ...]:
    """How thick what lies side by side in a wall is, in ticks, in words where there is more than one, and its leaves."""
    if not job.masonry.one_brick:
        return ((job.masonry.thickness, "", (None,)),)
    return ((job.masonry.unit.thickness, " of stretchers", (None, "front", "back")),
            (job.masonry.thickness, " of headers and closers", ("through",)))


def _by_yield(job: Job, walls: tuple[WallLayout, ...]) -> Mortar:
    scale = scale_of(job.measure)
    run, told = _reckon_run(job, walls, scale)
    module = scale.size(BLOCK_RUN)
    blocks = settle(run / module, 1)
    low, high = _find_yields(job, scale)
    least, most = (settle(blocks * rule.per_100 / 100, 2) for rule in (low, high))
    why = (f"{told} / {show(module)} {scale.length} = {show(blocks)} block; low: "
           f"{show(blocks)} x {show(low.per_100)} / 100 = {show(least)} {scale.volume} ({low.source}); high: "
           f"{show(blocks)} x {show(high.per_100)} / 100 = {show(most)} {scale.volume} ({high.source}); "
           f"{show(most)} - {show(least)} = {show(most - least)}")
    return Mortar(least, most, why, blocks)


def _reckon_run(job: Job, walls: tuple[WallLayout, ...], scale: Scale) -> tuple[Fraction, str]:
    """The run of full courses that the rules are of, half-high ones counted by their share of it; and the sum in words."""
    joint = job.masonry.joint
    low = sum(piece.length + joint for piece in _pieces(walls) if piece.height <= HALF_HIGH)
    run, half = scale.size(running_length(walls, joint) - low), scale.size(low)
    told = f"{show(run)} {scale.length} of courses"
    if not low:
        return run, told
    whole = settle(run + half * HALF_HIGH_SHARE, 3 if scale.length == "in" else 1)
    return whole, (f"{told} + {show(half)} {scale.length} of courses of half height or less x {show(HALF_HIGH_SHARE)} = "
                   f"{show(whole)} (NAVEDTRA 14045 has 13.5 cu ft to 225 of these, 8.5 to 112.5 full block); {show(whole)}")


def _find_yields(job: Job, scale: Scale) -> tuple[YieldRule, YieldRule]:
    if job.order.mortar_per_100 is not None:
        low, high = (YieldRule(figure, "the plan's own figure") for figure in job.order.mortar_per_100)
        return low, high
    low, high = YIELD_RULES[0], YIELD_RULES[-1]
    if scale.volume == "cu ft":
        return low, high
    litres = [YieldRule(settle(rule.per_100 * LITRES_PER_CUBIC_FOOT, 0), rule.source) for rule in (low, high)]
    return litres[0], litres[1]
