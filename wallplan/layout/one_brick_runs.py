"""The runs of walls one brick thick: between which ends, in which courses, and what those are of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import product
from typing import NamedTuple

from wallplan.bond.one_brick_figures import NEITHER, End, Rule
from wallplan.layout.corners import WallEnd, WallEnds, parity_of
from wallplan.layout.tracks import Span as Clear
from wallplan.plan.job import Masonry, Wall

BY_COURSES: tuple[Rule, Rule] = ("stretchers", "headers")
"""What the courses of a bond are that has a course of headers after several of stretchers."""


class BondRun(NamedTuple):
    """A stretch between two fixed ends on the face, with the odd and the even courses (bits) that have it. At a corner it
    holds the other wall's quoin header too. ``ends`` are None where either track may begin with a stretcher.
    ``of`` is what all its courses are of, where a bond has a course of headers after several of stretchers.
    """

    left: int
    right: int
    courses: tuple[int, int]
    ends: tuple[End | None, End | None]
    of: Rule | None = None


def gather_runs(masonry: Masonry, clear: tuple[tuple[Clear, ...], ...], ends: WallEnds) -> list[BondRun]:
    """The runs of a wall, the longest first. ``clear`` are each course's runs between its own ends; [] for none."""
    parts = [part for run in _gather(clear, ends) for part in _part(run, masonry, ends, len(clear))]
    return sorted(parts, key=lambda run: (run.left - run.right, run.left))


def _gather(clear: tuple[tuple[Clear, ...], ...], ends: WallEnds) -> Iterator[BondRun]:
    found: dict[tuple[int, int], list[int]] = {}
    for number, spans in enumerate(clear, start=1):
        for span in spans:
            left = min(ends.left.at) if span.left == ends.left.at_in(number) else span.left
            right = max(ends.right.at) if span.right == ends.right.at_in(number) else span.right
            found.setdefault((left, right), [0, 0])[parity_of(number)] |= 1 << number
    for (left, right), (odd, even) in found.items():
        yield BondRun(left, right, (odd, even), (_given(ends.left, left), _given(ends.right, right)))


def _part(run: BondRun, masonry: Masonry, ends: WallEnds, courses: int) -> Iterator[BondRun]:
    """A run as that of its courses of stretchers and that of its courses of headers, where the bond has such."""
    if masonry.stretcher_courses == 0:
        yield run
        return
    headers = sum(1 << number for number in list_header_courses(masonry, ends, courses))
    for mask, of in zip((~headers, headers), BY_COURSES, strict=True):
        odd, even = (bits & mask for bits in run.courses)
        if odd or even:
            yield run._replace(courses=(odd, even), of=of)


def list_header_courses(masonry: Masonry, ends: WallEnds, courses: int) -> range:
    """The courses of headers of a wall: after so many of stretchers, at a corner one course lower where that has its quoin
    headers in odd courses, so that the course of headers begins with a header and a closer."""
    repeat = masonry.stretcher_courses + 1
    corner = next((end for end in (ends.left, ends.right) if end.returns is not None), None)
    first = repeat - 1 if corner is not None and repeat % 2 == 0 and not corner.through[0] else repeat
    return range(first, courses + 1, repeat)


def _given(end: WallEnd, at: int) -> End | None:
    """The end of a run that a corner gives, None at a free end, a jamb or a control joint.

    Over a lower wall a run goes on as below it, with a quoin of its own.
    """
    if end.returns is None or at not in (min(end.at), max(end.at)):
        return None
    return End(0 if end.through[0] else 1, True)


def list_sides(runs: Sequence[BondRun], wall: Wall, masonry: Masonry) -> Iterable[tuple[int, int]]:
    """Which parity begins with a stretcher at the wall's left and right end, where they are free.

    In English bond one course is all stretchers, so that one answer holds for every end.
    """
    if masonry.bond == "english":
        given = [end.stretcher for run in runs for end in run.ends if end is not None]
        return [(given[0], given[0])] if given else [(0, 0), (1, 1)]
    if len(runs) > 1 and all(end is None for run in runs for end in run.ends):
        return [(0, 0), (0, 1)]  # odd and even courses change places in the others
    left = any(run.left <= 0 and run.ends[0] is not None for run in runs)
    right = any(run.right >= wall.length and run.ends[1] is not None for run in runs)
    return list(product((0,) if left else (0, 1), (0,) if right else (0, 1)))


def settle_free(runs: Sequence[BondRun], wall: Wall, sides: tuple[int, int], masonry: Masonry) -> list[BondRun]:
    """The runs with the wall's free ends settled; in English bond all ends."""
    settled = []
    for run in runs:
        left, right = run.ends
        if run.of == "headers":
            settled.append(run._replace(ends=(left or End(NEITHER), right or End(NEITHER))))
            continue
        if left is None and (run.left == 0 or masonry.bond == "english"):
            left = End(sides[0])
        if right is None and (run.right == wall.length or masonry.bond == "english"):
            right = End(sides[1])
        settled.append(run._replace(ends=(left, right)))
    return settled
