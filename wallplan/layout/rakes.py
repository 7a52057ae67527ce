"""Raked courses: the bond as it was found for courses that go on, cut off at the slope and laid anew beside it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from wallplan.bond.figures import Terms
from wallplan.bond.raked import ROUNDING, RakedRun, least_cutting, settle_rakes
from wallplan.layout.corners import WallEnds
from wallplan.layout.outline import Bay
from wallplan.layout.runs import LaidRun, LaidTracks
from wallplan.plan.coursing import Row


class _Cut(NamedTuple):
    """A run under a slope as it is known: where it stands, its joints' width, where the piece after each joint of the bond
    begins, and the same as numbers."""

    left: int
    right: int
    joint: int
    after: dict[int, int]
    raked: RakedRun


def cut_to_rakes(tracks: LaidTracks, terms: Terms, rows: tuple[Row, ...], bays: tuple[tuple[Bay, ...], ...],
                 joint: int, ends: WallEnds) -> LaidTracks:
    """The tracks with the runs of raked courses cut off at their slopes; as they are where no course is raked."""
    raked = {row.number: here for row, here in zip(rows, bays, strict=True) if any(any(bay.rakes) for bay in here)}
    if not raked:
        return tracks
    laid: dict[int, list[LaidRun]] = {}
    for number in raked:
        laid[number] = [run for run in tracks.runs if run.courses >> number & 1]
    sizes = joint, terms.least - joint
    cuts = {number: _cut_course(laid[number], here, sizes, _open_ends(ends, number)) for number, here in raked.items()}
    settled = _settle(tracks, terms, cuts, laid, (joint, ends))
    mask = sum(1 << number for number in raked)
    kept = [run._replace(courses=run.courses & ~mask) for run in tracks.runs if run.courses & ~mask]
    for number, found in cuts.items():
        plain = [run for run in laid[number] if not any(cut.left < run.right and run.left < cut.right for cut in found)
                 and any(bay.left <= run.left and run.right <= bay.right for bay in raked[number])]
        kept += [run._replace(courses=1 << number) for run in plain]
        kept += [_lay(cut, joints, number, terms, joint) for cut, joints in zip(found, settled[number], strict=True)]
    return tracks._replace(runs=tuple(kept))


def reach_ends(bays: tuple[Bay, ...], length: int, ends: WallEnds) -> tuple[Bay, ...]:
    """A course's bays, those at the wall's ends on to where its masonry ends: behind the other wall's face at an inside
    corner. One that a slope cuts off there ends where it does."""
    return tuple(bay._replace(left=min(ends.left.at) if bay.left == 0 and not bay.rakes[0] else bay.left,
                              right=max(ends.right.at) if bay.right == length and not bay.rakes[1] else bay.right)
                 for bay in bays)


def _open_ends(ends: WallEnds, number: int) -> tuple[bool, bool]:
    """Whether nothing of the wall that meets this one stands at its left and its right end in a course."""
    return bool(ends.left.out_of_turn.opens >> number & 1), bool(ends.right.out_of_turn.opens >> number & 1)


def _cut_course(laid: list[LaidRun], bays: tuple[Bay, ...], sizes: tuple[int, int],
                open_ends: tuple[bool, bool]) -> list[_Cut]:
    """The runs of a course that a slope shortens, from left to right. ``sizes``: the joint, and the least piece; what is
    shorter between a slope and another wall's end is left to mortar, as the tip of a gable is."""
    joint, least = sizes
    cuts = []
    for bay in bays:
        for run in sorted(laid) if any(bay.rakes) else ():
            width = run.joints[0] or joint
            begin, end, joints = _open_corners(run, laid, bay, joint, open_ends)
            left, right = max(begin, bay.left), min(end, bay.right)
            if right - left < least:
                continue
            rakes = (max(bay.left + bay.rakes[0] - left, 0), max(right - (bay.right - bay.rakes[1]), 0))
            after = {at: beyond for at, beyond in joints if left < at and beyond < right}
            raked = RakedRun(left - width, right, rakes, tuple(after), width - joint, width // 2)
            cuts.append(_Cut(left, right, width, after, raked))
    return cuts


def _open_corners(run: LaidRun, laid: list[LaidRun], bay: Bay, joint: int,
                  open_ends: tuple[bool, bool]) -> tuple[int, int, list[tuple[int, int]]]:
    """A run with its joints as (end of one piece, beginning of the next). Over the eaves no other wall stands at a corner:
    where the run stops for one it goes on, with the joint that it has there."""
    begin, end = run.left, run.right
    joints = [(one[0] + one[1], two[0]) for one, two in pairwise(run.pieces)]
    if open_ends[0] and begin == min(other.left for other in laid) and bay.left < begin:
        joints.insert(0, (begin - joint, begin))
        begin = bay.left
    if open_ends[1] and end == max(other.right for other in laid) and bay.right > end:
        joints.append((end, end + joint))
        end = bay.right
    return begin, end, joints


def _settle(tracks: LaidTracks, terms: Terms, cuts: dict[int, list[_Cut]], laid: dict[int, list[LaidRun]],
            beside_runs: tuple[int, WallEnds]) -> dict[int, tuple[tuple[int, ...], ...]]:
    """The joints of each raked run. Courses that follow each other without a break are settled together.

    ``beside_runs``: the joint, and what has joints of its own in the wall.
    """
    joint, ends = beside_runs
    numbers, found = sorted(cuts), dict[int, tuple[tuple[int, ...], ...]]()
    groups: list[list[int]] = []
    for number in numbers:
        groups[-1].append(number) if groups and groups[-1][-1] == number - 1 else groups.append([number])
    for group in groups:
        beside = [(*_joints_in(tracks, group[0] - 1), *_inner_joints(ends, group[0] - 1, joint))]
        for number in group:
            beside.append((*(at for run in laid[number] for at in _joints_of(run)
                             if not any(cut.left - joint <= at <= cut.right for cut in cuts[number])),
                           *_joined_beside(laid[number], cuts[number], joint), *_inner_joints(ends, number, joint)))
        beside.append((*_joints_in(tracks, group[-1] + 1), *_inner_joints(ends, group[-1] + 1, joint)))
        courses = [tuple(cut.raked for cut in cuts[number]) for number in group]
        found.update(zip(group, settle_rakes(terms, courses, beside), strict=True))
    return found


def _inner_joints(ends: WallEnds, number: int, joint: int) -> Iterator[int]:
    """Middles of the head joints within what runs through the wall in a course."""
    yield from (at + joint // 2 for crossing in ends.crossings if crossing.is_in(number) for at in crossing.inner)


def _joined_beside(laid: list[LaidRun], cuts: list[_Cut], joint: int) -> Iterator[int]:
    """Head joints against another wall at the ends of raked runs that no slope takes away."""
    for run in laid:
        for at in run.joined:
            if any(abs(at - end) <= joint and not rake for cut in cuts
                   for end, rake in zip((cut.left, cut.right), cut.raked.rakes, strict=True)):
                yield at


def _joints_in(tracks: LaidTracks, number: int) -> tuple[int, ...]:
    runs = [run for run in tracks.runs if run.courses >> number & 1] if number > 0 else []
    return tuple(at for run in runs for at in (*_joints_of(run), *run.joined))


def _joints_of(run: LaidRun) -> list[int]:
    return [(one[0] + one[1] + two[0]) // 2 for one, two in pairwise(run.pieces)]


def _lay(cut: _Cut, joints: tuple[int, ...], number: int, terms: Terms, joint: int) -> LaidRun:
    pieces, left = list[tuple[int, int]](), cut.left
    for at in joints:
        length = at - left if at in cut.after else _snap(at - left, terms, joint)
        pieces.append((left, length))
        left = cut.after.get(at, left + length + cut.joint)
    pieces.append((left, cut.right - left))
    return LaidRun(cut.left, cut.right, tuple(pieces), 1 << number, 0, least_cutting(terms, cut.raked))


def _snap(length: int, terms: Terms, joint: int) -> int:
    """A stock length where a piece is one but for rounding."""
    return next((stock - joint for stock in terms.stock if abs(stock - joint - length) <= ROUNDING), length)
