"""Jobs for tests in a line each, measured in inches or millimetres, and what a layout looks like in words."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise
from typing import Any

from wallplan.catalogue.load import find_unit
from wallplan.findings import Finding
from wallplan.layout.model import Layout, Piece
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.job import Bond, Job, LintelKind, Masonry, Opening, Wall

INCH, MM = TICKS_PER_INCH, TICKS_PER_MM


def inches(value: float | Fraction | str) -> int:
    """Inches in ticks; must come out whole. A text may be a fraction: "15 5/8"."""
    exact = sum(Fraction(part) for part in value.split()) if isinstance(value, str) else Fraction(value)
    assert (exact * INCH).denominator == 1, f"{value} in. is no whole number of ticks"
    return int(exact * INCH)


def make_masonry(unit_key: str = "block-8", bond: Bond = "half", *, joints_move: bool = True, **changes: Any) -> Masonry:
    """Masonry with a plan's defaults; with joints that cannot open or close where ``joints_move`` is False."""
    unit = find_unit(unit_key)
    values: dict[str, Any] = {
        "unit": unit, "bond": bond, "joint": unit.joint,
        "tightest_joint": unit.tightest_joint if joints_move else unit.joint,
        "widest_joint": unit.widest_joint if joints_move else unit.joint,
        "least_lap": unit.module // 4, "least_piece": unit.module // 4, "leads": unit.leads,
    }
    return Masonry(**{**values, **changes})


def make_opening(left: int, right: int, bottom: int, top: int, lintel: LintelKind = "block", bearing: int = 8 * INCH,
                 name: str = "Door") -> Opening:
    """An opening from its jambs, sill and head in ticks."""
    return Opening(name, left, right, bottom, top, lintel, bearing)


def make_wall(length: int, height: int, openings: Iterable[Opening] = (), *, control_joints: Iterable[int] = (),
              bond_beams: Iterable[int] = (), name: str = "Landing") -> Wall:
    """A straight wall in ticks."""
    return Wall(name, length, height, "end", "end", tuple(control_joints), tuple(bond_beams), tuple(openings))


def make_job(masonry: Masonry, *walls: Wall, measure: Measure = "feet") -> Job:
    """A job of these walls."""
    return Job("Ferry landing", measure, "actual", None, masonry, walls)


def pump_house() -> Job:
    """20 ft 0 in. less a joint by 8 ft 8 in., a door and a window on the module and the coursing, a bond beam on top.

    Joints are fixed, so that every figure follows from the block alone.
    """
    openings = (
        # Nominal opening widths stand between jambs one joint further apart (NAVEDTRA 14043): 48 to 88 and 144 to 192.
        make_opening(inches("47 5/8"), inches(88), 0, inches(88), name="Door"),
        make_opening(inches("143 5/8"), inches(192), inches(40), inches(88), name="Window"),
    )
    wall = make_wall(inches("239 5/8"), inches(104), openings, bond_beams=(13,))
    return make_job(make_masonry(joints_move=False), wall)


def nominal_lengths(layout: Layout, course: int, step: int = INCH, wall: int = 0) -> list[Fraction | int]:
    """Lengths of a course's pieces with a joint each, in inches (or ``step`` ticks), left to right."""
    joint = layout.job.masonry.joint
    exact = [Fraction(piece.length + joint, step) for piece in pieces_of(layout, course, wall)]
    return [int(length) if length.denominator == 1 else length for length in exact]


def pieces_of(layout: Layout, course: int, wall: int = 0) -> tuple[Piece, ...]:
    """The pieces of a course, by its number."""
    return layout.walls[wall].courses[course - 1].pieces


def count_units(layout: Layout, course: int | None = None, wall: int = 0) -> Fraction:
    """Whole units, two halves to one, in a course or the whole wall; asserts that nothing else is laid."""
    pieces = [piece for one in layout.walls[wall].courses if course in (None, one.number) for piece in one.pieces]
    assert {piece.piece for piece in pieces} <= {"full", "half"}
    return sum((Fraction(1 if piece.piece == "full" else "1/2") for piece in pieces), Fraction(0))


def broken(findings: Iterable[Finding]) -> list[Finding]:
    """The findings of broken rules."""
    return [finding for finding in findings if not finding.held]


def heads_of(layout: Layout, course: int, wall: int = 0) -> list[int]:
    """Left edges of a course's head joints: gaps no wider than the widest joint."""
    pieces, widest = pieces_of(layout, course, wall), layout.job.masonry.widest_joint
    return [one.right for one, two in pairwise(pieces) if 0 <= two.left - one.right <= widest]
