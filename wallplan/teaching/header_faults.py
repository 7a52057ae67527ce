"""Ways to spoil a wall one brick thick, each as edits of a layout: a closer out of place or left out, bricks out of turn.

Candidates are found by what stands beside what; whether one is really found, and nothing besides it, the rules say.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from wallplan.layout.model import Course, Piece, WallLayout
from wallplan.layout.runs import set_out
from wallplan.layout.stock import stock_lengths
from wallplan.plan.job import Masonry
from wallplan.teaching.runs import Run, WallRuns, is_layered

LEAST_RUN = 6
"""Bricks of a run that is laid out of turn from end to end."""

IN_TURN = ("flemish", "flemish garden wall")
"""Bonds with headers and stretchers in every course."""

LEAST_ALIKE = 3
"""Courses with the same run, of which one is spoiled: of two, either might be the one out of plumb."""

THREE_QUARTERS = "P"


class Spoiled(NamedTuple):
    """A wall with a fault: in which course, at which joint (ticks), how far from that it may show (None: all along)."""

    course: int
    at: int
    reach: int | None
    wall: WallLayout


def back_up(course: Course, pieces: tuple[Piece, ...]) -> Course:
    """A course with other pieces, behind each of its stretchers the like; what stood alone before (a quoin) does still."""
    backed = {(one.left, one.length) for one in course.backing}
    alone = {piece for piece in course.pieces if piece.shape == "stretcher" and (piece.left, piece.length) not in backed}
    backing = tuple(piece._replace(leaf="back", mark=None) for piece in pieces
                    if piece.shape == "stretcher" and piece not in alone)
    return replace(course, pieces=pieces, backing=backing)


def relay(wall: WallLayout, number: int, old: Sequence[Piece], kinds: str, masonry: Masonry) -> WallLayout:
    """The wall with bricks of a course laid anew between the same two sides: S, H, C, or P for three quarters of a brick."""
    course, first = wall.courses[number - 1], old[0]
    lengths = [_length(kind, masonry) for kind in kinds]
    placed = set_out(lengths, first.left, old[-1].right)
    new = [_make(kind, left, length, first, masonry) for kind, (left, length) in zip(kinds, placed, strict=True)]
    kept = [piece for piece in course.pieces if piece not in old]
    courses = list(wall.courses)
    courses[number - 1] = back_up(course, tuple(sorted((*kept, *new), key=lambda piece: (piece.bottom, piece.left))))
    return replace(wall, courses=tuple(courses))


def _length(kind: str, masonry: Masonry) -> int:
    quarter = masonry.module // 4
    return {"S": masonry.unit.length, "H": masonry.unit.thickness, "C": quarter - masonry.joint}.get(
        kind, 3 * quarter - masonry.joint)


def _make(kind: str, left: int, length: int, like: Piece, masonry: Masonry) -> Piece:
    made = like._replace(left=left, length=length, mark=None, lead=None)
    match kind:
        case "H":
            return made._replace(piece="full", shape="header", leaf="through")
        case "C":
            return made._replace(piece="closer", shape="closer", leaf="through")
        case _:
            return made._replace(piece=stock_lengths(masonry).get(length, "cut"), shape="stretcher", leaf="front")


def spell(pieces: Sequence[Piece]) -> str:
    """Bricks in letters: S and H whole, C a closer, P sawn or anything else."""
    kinds = {("header", "full"): "H", ("closer", "closer"): "C", ("stretcher", "full"): "S"}
    return "".join(kinds.get((piece.shape, piece.piece), "P") for piece in pieces)


def _plain_runs(runs: WallRuns) -> Iterator[tuple[int, Run, str]]:
    """Runs with their letters, in courses with one over and one under, and with others of their kind to be plumb with."""
    alike = Counter((number % 2, run.left, run.right, _is_of_headers(run)) for number, found in enumerate(runs.runs, start=1)
                    for run in found)
    for course, above in zip(runs.wall.courses[1:], runs.wall.courses[2:], strict=False):
        if not is_layered(course) and not is_layered(above):
            for run in runs.runs[course.number - 1]:
                if alike[course.number % 2, run.left, run.right, _is_of_headers(run)] >= LEAST_ALIKE:
                    yield course.number, run, spell(run.pieces)


def _is_of_headers(run: Run) -> bool:
    kinds = spell(run.pieces)
    return kinds.count("H") > len(kinds) // 2


def displace_closers(runs: WallRuns) -> Iterator[Spoiled]:
    """A closer at the end itself, before its header; or one brick farther in than beside the header."""
    masonry = runs.job.masonry
    for number, run, kinds in _plain_runs(runs):
        pieces = run.pieces
        for place in (place for place, kind in enumerate(kinds) if kind == "C"):
            for first in (place - 1, place):
                pair = pieces[first:first + 2] if first >= 0 else ()
                if len(pair) == 2 and kinds[first:first + 2] in ("HC", "CH", "CS", "SC") and pieces[0].leaf != "front":
                    wall = relay(runs.wall, number, pair, kinds[first:first + 2][::-1], masonry)
                    yield Spoiled(number, pieces[place].left, masonry.module, wall)


def leave_out_closers(runs: WallRuns) -> Iterator[Spoiled]:
    """A closer left out, the bricks after it moved up to the header, a three-quarter to make up for it: a straight joint. In
    bonds with several courses of stretchers also a header, stretcher and header for two stretchers."""
    if runs.job.masonry.stretcher_courses > 1:
        yield from _turn(runs, {"SS": "HSH"})
    for number, run, kinds in _plain_runs(runs):
        for mirrored in (False, True):
            pieces, letters = (run.pieces[::-1], kinds[::-1]) if mirrored else (run.pieces, kinds)
            place = letters[:2].find("C")
            header = letters.find("H", place + 2) if place >= 0 else -1
            if place < 0 or not 0 < header - place <= 4 or set(letters[place + 1:header]) - set("SH"):
                continue
            old = pieces[place:header + 1]
            new = letters[place + 1:header] + THREE_QUARTERS
            if mirrored:
                old, new = old[::-1], new[::-1]
            masonry = runs.job.masonry
            at = old[-1].right - _length(new[-1], masonry) if mirrored else old[0].left + _length(new[0], masonry)
            yield Spoiled(number, at, 2 * masonry.module, relay(runs.wall, number, old, new, masonry))


def turn_bricks(runs: WallRuns) -> Iterator[Spoiled]:
    """A header and a stretcher that changed places; in a course of stretchers two that gave way to header, stretcher,
    header; in a course of headers a stretcher for two of them."""
    bond = runs.job.masonry.bond
    others = {"SS": "HSH"} if bond == "english" else {"HH": "S"}
    yield from _turn(runs, {"SH": "HS", "HS": "SH"} if bond in IN_TURN else others)


def _turn(runs: WallRuns, others: dict[str, str]) -> Iterator[Spoiled]:
    """Two bricks side by side, away from a run's ends, that give way to others as long."""
    masonry = runs.job.masonry
    for number, run, kinds in _plain_runs(runs):
        for place in range(2, len(kinds) - 3):
            other = others.get(kinds[place:place + 2])
            if other:
                old = run.pieces[place:place + 2]
                yield Spoiled(number, old[0].right, masonry.module, relay(runs.wall, number, old, other, masonry))


def lay_other_courses(runs: WallRuns) -> Iterator[Spoiled]:
    """A course of stretchers alone, or of headers alone, where the bond wants another: one run of it from end to end."""
    quarter = runs.job.masonry.module // 4
    for number, run, kinds in _plain_runs(runs):
        if set(kinds) - set("SHC") or run.pieces[0].leaf is None or _meets(run):
            continue
        quarters = round((run.right - run.left + runs.job.masonry.joint) / quarter)
        other = _name_other(runs.job.masonry, kinds, quarters)
        if len(other) < LEAST_RUN:
            continue
        wall = relay(runs.wall, number, run.pieces, other, runs.job.masonry)
        yield Spoiled(number, run.left, None, wall)


def _name_other(masonry: Masonry, kinds: str, quarters: int) -> str:
    """The bricks of a course of another bond as long as a run; "" where there is none."""
    stretchers, rest = divmod(quarters, 4)
    if quarters % 2 or quarters < 8:
        return ""
    if masonry.bond == "english":
        return "" if "C" in kinds else "H" * (quarters // 2)
    if masonry.stretcher_courses:  # a course of headers left out
        return "H" + "S" * ((quarters - 2) // 4) + "H" * ((quarters - 2) % 4 // 2) if kinds.startswith("HCH") else ""
    return "S" * (stretchers - 1) + "H" * (rest // 2) + "S"


def _meets(run: Run) -> bool:
    return run.start.kind in ("corner", "join") or run.end.kind in ("corner", "join")
