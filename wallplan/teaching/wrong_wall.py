"""A wall with five faults seeded in it, each found by the rules, and nothing else found.

The faults are the same whenever the plan is the same. Where a plan's own walls have no room for all five, or are broken
already, a practice wall of the same unit takes their place.
"""

from __future__ import annotations

import zlib
from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from wallplan.findings import Finding
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, WallLayout
from wallplan.plan.job import Job, Masonry, Opening, Wall
from wallplan.teaching.fault_kinds import BROKEN, Edit, FaultKind, find_edits, list_kinds
from wallplan.teaching.runs import read_runs

MOST_TRIED = 24
"""So many places are tried for each kind of fault in a wall."""

MOST_CHECKED = 60
"""So many times a wall is put to the rules before it is given up."""

MOST_PIECES = 3_000
"""A wall of more pieces is not searched for places."""


class Fault(NamedTuple):
    """A seeded fault: its kind, the course that was spoiled, where (ticks from the left end), and what the rules find."""

    kind: FaultKind
    course: int
    at: int
    findings: tuple[Finding, ...]


class WrongWall(NamedTuple):
    """The spoiled wall as a layout of one wall, and its faults from the foot up. ``own`` is False for a practice wall.

    ``right`` is the same wall as it should be.
    """

    layout: Layout
    right: Layout
    faults: tuple[Fault, ...]
    own: bool


def seed_faults(layout: Layout) -> WrongWall | None:
    """The first wall of a plan that takes five faults, or else a practice wall; None where even that takes none."""
    own_walls = tuple(_single_walls(layout))
    for number, single in enumerate((*own_walls, *_practice_walls(layout.job))):
        own = number < len(own_walls)
        if sum(len(course.pieces) for course in single.walls[0].courses) > MOST_PIECES or _broken(single):
            continue
        wrong = _seed(single, own)
        if wrong is not None:
            return wrong
    return None


def _single_walls(layout: Layout) -> Iterator[Layout]:
    """Each wall as a job of its own: what other walls show at its corners stays in it as they lay it. A wall that others
    meet, or that meets another, between ends is left out: alone it would not be judged whole."""
    meeting = {abutment.meets for wall in layout.walls for abutment in wall.wall.abuts}
    for wall in layout.walls:
        if not wall.wall.abuts and wall.wall.name not in meeting:
            yield Layout(replace(layout.job, walls=(wall.wall,)), (wall,))


def _practice_walls(job: Job) -> Iterator[Layout]:
    """Twelve courses of ten units in half bond with a window, in the plan's unit; then with the unit's own limits. In a bond
    with headers twelve courses of that bond."""
    unit, module = job.masonry.unit, job.masonry.module
    if job.masonry.one_brick:
        yield lay(replace(job, walls=(_practice_bond(job.masonry),)))
        return
    usual = replace(job.masonry, bond="half", least_lap=module // 4, least_piece=module // 4)
    for masonry in (usual, Masonry(unit, "half", unit.joint, unit.tightest_joint, unit.widest_joint, unit.module // 4,
                                   unit.module // 4, unit.leads)):
        yield lay(replace(job, masonry=masonry, walls=(_practice_wall(masonry),)))


def _practice_wall(masonry: Masonry) -> Wall:
    unit, module = masonry.unit, masonry.module
    lintel = "block" if "lintel" in unit.shapes else "steel"
    window = Opening("Window", 3 * module - masonry.joint, module * 11 // 2, unit.height_of_courses(3),
                     unit.height_of_courses(8), lintel, module // 2)  # type: ignore[arg-type]
    return Wall("Practice wall", 10 * module - masonry.joint, unit.height_of_courses(12), "end", "end", (), (), (window,))


def _practice_bond(masonry: Masonry) -> Wall:
    """A wall and a window on the lengths of its bond: jambs stand where a stretcher ends."""
    quarter, unit = masonry.module // 4, masonry.unit
    left, wide, long = {"flemish": (16, 14, 46), "flemish garden wall": (24, 18, 66)}.get(masonry.bond, (16, 12, 48))
    window = Opening("Window", left * quarter - masonry.joint, (left + wide) * quarter, unit.height_of_courses(4),
                     unit.height_of_courses(9), "steel", masonry.module // 2)
    high = unit.height_of_courses(max(14, 6 * (masonry.stretcher_courses + 1) + 2) if masonry.stretcher_courses else 14)
    return Wall("Practice wall", long * quarter - masonry.joint, high, "end", "end", (), (), (window,))


def _broken(layout: Layout) -> list[Finding]:
    """What the rules find but that the faults' cuts have no letters, which would give them away."""
    from wallplan.rules.check import check

    return [finding for finding in check(layout) if not finding.held and finding.rule != "letters"]


def _seed(right: Layout, own: bool) -> WrongWall | None:
    search = _Search(right)
    found = search.seed(right.walls[0], ())
    if found is None:
        return None
    wall, seeded = found
    findings = _broken(_with(right, wall))
    faults = [Fault(edit.kind, edit.courses[0], edit.at, tuple(f for f in findings if _belongs(f, edit))) for edit in seeded]
    return WrongWall(_with(right, wall), right, tuple(sorted(faults, key=lambda fault: (fault.course, fault.at))), own)


class _Search:
    """Kind after kind a place is taken; where a later kind then finds none, the place before it is given up."""

    def __init__(self, right: Layout) -> None:
        wall = right.walls[0].wall
        self.right = right
        self.turn = zlib.crc32(f"{right.job.title}/{wall.name}/{wall.length}".encode())
        self.left = MOST_CHECKED
        self.between = 0 if right.job.masonry.one_brick else 1
        self.kinds = list_kinds(right.job.masonry)

    def seed(self, wall: WallLayout, seeded: tuple[Edit, ...]) -> tuple[WallLayout, tuple[Edit, ...]] | None:
        """The wall with all kinds seeded from the next one on; None where that cannot be, or too much was tried."""
        if len(seeded) == len(self.kinds):
            return wall, seeded
        edits = list(find_edits(self.kinds[len(seeded)], read_runs(_with(self.right, wall), 0)))
        for edit in edits if self.kinds[len(seeded)] == "course missing the head" else _turned(edits, self.turn):
            if any(_meet(edit, other, self.between) for other in seeded):
                continue
            self.left -= 1
            if self.left < 0:
                return None
            if _is_told_apart(_broken(_with(self.right, edit.wall)), (*seeded, edit)):
                found = self.seed(edit.wall, (*seeded, edit))
                if found is not None:
                    return found
        return None


def _with(layout: Layout, wall: WallLayout) -> Layout:
    return Layout(layout.job, (wall,))


def _turned(edits: list[Edit], turn: int) -> list[Edit]:
    """The candidates from another one on for each plan, far apart first, no more than are tried."""
    if not edits:
        return []
    first, step = turn % len(edits), 7
    while len(edits) % step == 0:
        step += 4
    return [edits[(first + step * place) % len(edits)] for place in range(min(len(edits), MOST_TRIED))]


def _meet(one: Edit, other: Edit, between: int) -> bool:
    """Whether two faults stand so near that what is found of one might be the other's: beside each other, with no more than
    ``between`` courses between theirs."""
    if min(one.courses) > max(other.courses) + between or min(other.courses) > max(one.courses) + between:
        return False
    if one.reach is None or other.reach is None:
        return True
    return abs(one.at - other.at) <= 2 * (one.reach + other.reach)


def _belongs(finding: Finding, edit: Edit) -> bool:
    """Whether a finding is about a fault: in its courses and near it."""
    if finding.rule == "openings":
        return edit.kind == "course missing the head" and finding.at == edit.at
    if edit.kind == "course missing the head" and finding.rule in ("plumb", "lap", "headers", "least piece"):
        return False  # no head joint moves where a course is raised
    near = edit.reach is None or (finding.at is not None and abs(finding.at - edit.at) <= edit.reach)
    return finding.course in edit.courses and near


def _is_told_apart(findings: list[Finding], seeded: tuple[Edit, ...]) -> bool:
    """Whether each finding belongs to one fault, and each fault has its rule broken."""
    owners = [[edit for edit in seeded if _belongs(finding, edit)] for finding in findings]
    told = {(owner.kind, finding.rule) for finding, (owner, *_) in zip(findings, owners, strict=True) if owner} if all(
        owners) else set()
    return all(len(owner) == 1 for owner in owners) and all((edit.kind, BROKEN[edit.kind]) in told for edit in seeded)
