"""Caps and coping, only where the plan asks for them: along the tops of walls, whole ones and cuts nested."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from wallplan.layout.model import Layout, WallLayout
from wallplan.lengths import print_size
from wallplan.lists.order.line import Line
from wallplan.lists.order.nesting import Nesting, nest
from wallplan.lists.order.patterns import PLAIN, Sort, Stock
from wallplan.lists.order.steel import print_bar
from wallplan.lists.order.units import add_spare
from wallplan.plan.job import Job
from wallplan.plan.order_wishes import CapWish


class Top(NamedTuple):
    """A level stretch of a wall's top: its ends from the left end, and its height; ticks."""

    left: int
    right: int
    height: int


def find_tops(wall: WallLayout, widest_joint: int) -> tuple[Top, ...]:
    """What of a wall is seen from above, left to right: level stretches with nothing over them; () for no courses.

    Sills are none: an opening that reaches the top is left out. What another wall's pieces cover belongs to that wall.
    """
    covered: list[tuple[int, int]] = []
    tops: list[Top] = []
    for course in reversed(wall.courses):
        for piece in sorted(course.pieces, key=lambda piece: -piece.top):
            for left, right in _spare(piece.left, piece.right, covered, widest_joint):
                if piece.of == wall.wall.name and not _is_sill(wall, left, right, piece.top):
                    tops.append(Top(left, right, piece.top))
            covered.append((piece.left, piece.right))
        covered = _merge(covered, widest_joint)
    return _join(sorted(tops), widest_joint)


def _spare(left: int, right: int, covered: list[tuple[int, int]], widest_joint: int) -> list[tuple[int, int]]:
    """The parts of a stretch that nothing covers; what is no wider than a joint is none."""
    free = [(left, right)]
    for begins, ends in covered:
        free = [part for low, high in free for part in ((low, min(high, begins)), (max(low, ends), high))
                if part[1] - part[0] > widest_joint]
    return free


def _merge(covered: list[tuple[int, int]], widest_joint: int) -> list[tuple[int, int]]:
    merged: list[tuple[int, int]] = []
    for left, right in sorted(covered):
        if merged and left - merged[-1][1] <= widest_joint:
            merged[-1] = merged[-1][0], max(merged[-1][1], right)
        else:
            merged.append((left, right))
    return merged


def _is_sill(wall: WallLayout, left: int, right: int, top: int) -> bool:
    middle = (left + right) // 2
    return any(opening.left <= middle <= opening.right and top <= opening.bottom for opening in wall.wall.openings)


def _join(tops: list[Top], widest_joint: int) -> tuple[Top, ...]:
    joined: list[Top] = []
    for top in tops:
        if joined and joined[-1].height == top.height and top.left - joined[-1].right <= widest_joint:
            joined[-1] = Top(joined[-1].left, max(joined[-1].right, top.right), top.height)
        else:
            joined.append(top)
    return tuple(joined)


def order_caps(layout: Layout) -> Iterator[Line]:
    """The line of caps; none where the plan asks for none or no wall has a top."""
    job, cap = layout.job, layout.job.order.cap
    if cap is None:
        return
    joint = job.masonry.joint if cap.joint < 0 else cap.joint
    wanted = Counter(_reach(top, wall, cap) for wall in layout.walls if not cap.walls or wall.wall.name in cap.walls
                     for top in find_tops(wall, job.masonry.widest_joint))
    whole, rests, told = 0, Counter[int](), list[str]()
    for length, count in sorted(wanted.items(), reverse=True):
        each, cuts = _divide(length, cap.length, joint)
        whole += each * count
        rests.update({cut: cuts.count(cut) * count for cut in cuts})
        cut = f" and {' + '.join(print_size(cut, job.measure) for cut in cuts)}" if cuts else ""
        told.append(f"{count} of {print_bar(length, job)}, {each} whole{cut}")
    nesting = nest(Stock(cap.length, job.order.kerf), [Sort(print_size(rest, job.measure), rest, 0, PLAIN, count)
                                                       for rest, count in rests.items() if rest])
    if whole + nesting.units:
        yield _order(whole, nesting, told, cap, job)


def _divide(length: int, cap: int, joint: int) -> tuple[int, tuple[int, ...]]:
    """Whole caps along a length, and the cuts that fill it: where one would be under a quarter, two of more than half."""
    each = (length + joint) // (cap + joint)
    rest = max(0, length - each * (cap + joint))
    if not rest:
        return each, ()
    if 4 * rest < cap and each:
        return each - 1, ((rest + cap + 1) // 2, (rest + cap) // 2)
    return each, (rest,)


def _order(whole: int, nesting: Nesting, told: list[str], cap: CapWish, job: Job) -> Line:
    net = whole + nesting.units
    name = f"{cap.name}, {print_size(cap.length, job.measure)} long"
    why = [f"tops of walls: {'; '.join(told)}"]
    for pattern, times in nesting.patterns:
        cuts = " + ".join(sort.name for sort, n in zip(nesting.sorts, pattern, strict=True) for _ in range(n))
        why.append(f"sawn: {times} as {cuts}")
    why.append(f"{whole} + {nesting.units} = {net}")
    why.append("the mortar under them is not counted")
    return add_spare("other", name, "each", Fraction(net), "; ".join(why), job)


def _reach(top: Top, wall: WallLayout, cap: CapWish) -> int:
    """Length that caps cover, with what stands out past free ends."""
    free = (top.left <= 0 and wall.wall.left_end == "end") + (top.right >= wall.wall.length and wall.wall.right_end == "end")
    return top.right - top.left + free * cap.overhang
