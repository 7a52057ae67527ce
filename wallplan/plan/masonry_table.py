"""``[masonry]`` with every default filled in, and what its joints, lap and least piece must hold to."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from wallplan.catalogue.unit import Unit
from wallplan.lengths import TICKS_PER_INCH, to_inches
from wallplan.plan.check_one_brick import check_unit
from wallplan.plan.job import HEADER_COURSES, ONE_BRICK, CornerUnit, Masonry
from wallplan.plan.notebook import KeyPath, Notebook

if TYPE_CHECKING:
    from wallplan.plan.schema import MasonryTable

_MOST_LEADS = 50
MOST_STRETCHER_COURSES = 12
"""More would stand without a tie over any code's height; common practice, no source: 3 to 6."""

_PARTS = {"half": 2, "third": 3, "quarter": 4}


def read_masonry(table: MasonryTable, unit: Unit, notebook: Notebook) -> Masonry:
    """The masonry of a plan. What is wrong is noted, and the unit's default stands in for it."""
    path: KeyPath = ("masonry",)
    joints = {key: notebook.read((*path, key), getattr(table, key))
              for key in ("joint", "tightest_joint", "widest_joint")}
    joint, tightest, widest = _settle_joints(unit, joints, notebook)
    bond = table.bond or "half"
    stretchers = _read_stretcher_courses(table.stretcher_courses, bond, notebook)
    if bond in ONE_BRICK and not check_unit(bond, unit, (joint, tightest, widest), notebook):
        bond = "half"
    if bond in ONE_BRICK:
        return _read_one_brick(table, Masonry(unit, bond, joint, tightest, widest, 0, 0, 0,
                                               stretcher_courses=stretchers), notebook)
    module = unit.length + joint
    lap = notebook.read((*path, "least_lap"), table.least_lap)
    piece = notebook.read((*path, "least_piece"), table.least_piece, least=1)
    if lap is not None:
        _refuse_over_half("least_lap", "no bond laps more than half", lap, module, notebook)
    if piece is not None:
        _refuse_over_half("least_piece", "halves could not be laid", piece, module, notebook)
    return Masonry(
        unit=unit, bond=bond, joint=joint, tightest_joint=tightest, widest_joint=widest,
        least_lap=_usual_lap(bond, unit, joint) if lap is None else lap,
        least_piece=_usual_least(unit, joint) if piece is None else piece,
        leads=_read_leads(table.leads, unit, notebook), keep_bond=bool(table.keep_bond),
        corner_unit=_read_corner_unit(table.corner_unit, unit, notebook),
    )


def _read_one_brick(table: MasonryTable, given: Masonry, notebook: Notebook) -> Masonry:
    """Masonry in a bond with headers: laps of a quarter, no piece but a closer under a header."""
    quarter, half = given.unit.length // 4, given.module // 2
    lap = notebook.read(("masonry", "least_lap"), table.least_lap)
    piece = notebook.read(("masonry", "least_piece"), table.least_piece, least=1)
    if lap is not None and lap > quarter:
        notebook.note(("masonry", "least_lap"), f"{notebook.show_size(lap)} is over a quarter of the unit and its joint: "
                      f"{given.bond} bond laps no more; write at most {notebook.show_most(quarter)}")
    if piece is not None and not half <= piece <= given.module:
        notebook.note(("masonry", "least_piece"), f"{notebook.show_size(piece)}: in {given.bond} bond no piece but a closer "
                      f"is under a header; write {notebook.show_least(half)}, or leave it out")
    return replace(
        given, least_lap=quarter if lap is None else lap, least_piece=half if piece is None else piece,
        leads=_read_leads(table.leads, given.unit, notebook), keep_bond=bool(table.keep_bond),
        corner_unit=_read_corner_unit(table.corner_unit, given.unit, notebook))


def _read_stretcher_courses(asked: int | None, bond: str, notebook: Notebook) -> int:
    """Courses of stretchers between two of headers; 0 in bonds that have none such."""
    usual, path = HEADER_COURSES.get(bond, 0), ("masonry", "stretcher_courses")
    if asked is None:
        return usual
    if not usual:
        bonds = " or ".join(f'"{one}"' for one in HEADER_COURSES)
        notebook.note(path, f"{bond} bond has no courses of headers after so many of stretchers; leave it out, or write "
                            f"bond = {bonds}")
    elif not 1 <= asked <= MOST_STRETCHER_COURSES:
        notebook.note(path, f"{asked}; a course of headers comes after 1 to {MOST_STRETCHER_COURSES} courses of stretchers; "
                            f"write stretcher_courses = {usual}")
    else:
        return asked
    return usual


def _usual_lap(bond: str, unit: Unit, joint: int) -> int:
    """A quarter of the unit's nominal length, never over the bond's own.

    Where a plain corner laps a little less, but a quarter of the unit itself (TMS 402: at least a quarter of the unit), as
    440 mm block 100 mm thick does by 110 mm, that will do: no unit is cut at each corner for a few millimetres.
    """
    module = unit.length + joint
    corner = (unit.thickness + joint) % module
    lap = min(corner, module - corner)
    quarter = lap if unit.length <= 4 * lap < module else module // 4
    return min(quarter, module // _PARTS.get(bond, 4))


def _usual_least(unit: Unit, joint: int) -> int:
    """A quarter of the unit's nominal length, or the shortest moulded length, should that be a little less."""
    return min((unit.length + joint) // 4, *(piece.length + joint for piece in unit.pieces if not piece.sawn))


def _settle_joints(unit: Unit, given: dict[str, int | None], notebook: Notebook) -> tuple[int, int, int]:
    usual = {"joint": unit.joint, "tightest_joint": unit.tightest_joint, "widest_joint": unit.widest_joint}
    settled = {key: usual[key] if ticks is None else ticks for key, ticks in given.items()}
    joint, tightest, widest = (settled[key] for key in ("joint", "tightest_joint", "widest_joint"))
    known = len(notebook.wrongs)
    if joint == 0:
        notebook.note(("masonry", "joint"), f"nothing; write a joint, for this unit {notebook.show_size(unit.joint)}")
    elif max(joint, widest) > unit.length // 4:
        key = "widest_joint" if given["widest_joint"] is not None and widest >= joint else "joint"
        metric = key == "joint" and notebook.measure == "feet" and unit.length < 4 * joint <= 400 * TICKS_PER_INCH
        meant = f', or "{to_inches(joint):g} mm" if millimetres are meant' if metric else ""
        notebook.note(("masonry", key), f"{notebook.show_size(settled[key])} is over a quarter of the unit; "
                      f"write at most {notebook.show_most(unit.length // 4)}{meant}")
    elif tightest > joint or widest < joint:
        _note_range(given, (joint, tightest, widest), notebook)
    if len(notebook.wrongs) > known:
        return unit.joint, unit.tightest_joint, unit.widest_joint
    return joint, tightest, widest


def _note_range(given: dict[str, int | None], settled: tuple[int, int, int], notebook: Notebook) -> None:
    joint, tightest, widest = (notebook.show_size(ticks) for ticks in settled)
    key = next((key for key in ("joint", "tightest_joint", "widest_joint") if given[key] is not None), "joint")
    notebook.note(("masonry", key), f"the range from tightest_joint, {tightest}, to widest_joint, {widest}, does not hold "
                  f"the joint, {joint}; write a range that does" + (", or another joint" if key == "joint" else ""))


def _refuse_over_half(key: str, why: str, ticks: int, module: int, notebook: Notebook) -> None:
    if 2 * ticks > module:
        notebook.note(("masonry", key), f"{notebook.show_size(ticks)} is over half a unit and its joint: {why}; "
                      f"write at most {notebook.show_most(module // 2)}")


def _read_corner_unit(asked: CornerUnit | None, unit: Unit, notebook: Notebook) -> CornerUnit:
    if asked not in (None, "plain") and unit.ell_return is None:
        notebook.note(("masonry", "corner_unit"), f'{unit.key} does not come in L corner units; write "plain", or take a '
                      "unit that does")
        return "plain"
    return asked or "plain"


def _read_leads(leads: int | None, unit: Unit, notebook: Notebook) -> int:
    if leads is None:
        return unit.leads
    if not 1 <= leads <= _MOST_LEADS:
        notebook.note(("masonry", "leads"), f"{leads}; a lead has 1 to {_MOST_LEADS} courses; write leads = {unit.leads}")
        return unit.leads
    return leads
