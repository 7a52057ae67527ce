"""Units: each of the kind that its place asks for, in the wall that counts it, and sawn only where the wall wants it.

What a place asks for is read off the plan and the finished courses: a bond beam, a lintel, a plain end, a control joint.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from wallplan.findings import Finding
from wallplan.rules.as_laid import CONTROL, ROUNDING, AsLaid, Flags, Ints
from wallplan.rules.reporting import Break, report_breaks, report_held
from wallplan.rules.sources import UNITS

PLAIN = ("stretcher", "corner", "sash", "bond beam")
"""Kinds of which a place asks for just one; the others have a place where they may be."""

CORNERS = ("outside corner", "inside corner")

LIMIT = "the kind that its place asks for"


def check_units(wall: AsLaid) -> tuple[Finding, ...]:
    """Every piece's kind against its place, as far as the unit's family has that kind. A wall without pieces: held."""
    breaks = [*_other_than_asked(wall), *_out_of_place(wall), *_sawn_for_nothing(wall), *_counted_elsewhere(wall)]
    figure = f"{len(wall.left)} pieces, each of the kind that its place asks for"
    return report_breaks(wall, "units", UNITS, breaks) or (report_held(wall, "units", UNITS, figure, LIMIT),)


def _other_than_asked(wall: AsLaid) -> Iterator[Break]:
    """Stretchers, corner, sash and bond-beam units that stand where another of these is asked for."""
    asked, at_end = np.full(len(wall.left), "stretcher", dtype="U16"), _show_an_end(wall, ROUNDING)
    for kind, there in (("corner", at_end), ("sash", _stand_at(wall, CONTROL)), ("bond beam", _in_beams(wall))):
        if kind in wall.masonry.unit.shapes:
            asked[there] = kind
    # What ends nearly at a jamb or an end is for the cover to judge.
    plain = np.isin(wall.shape, PLAIN) & (at_end | ~_show_an_end(wall, wall.masonry.widest_joint))
    if wall.outline is not None:
        # Under a slope and over a step an end is seen or not as the other wall comes up there.
        near, own = 2 * wall.masonry.thickness, wall.layout.wall
        plain &= (wall.left > near) | (own.left_end == "end")
        plain &= (wall.right < own.length - near) | (own.right_end == "end")
    for piece in np.flatnonzero(plain & (wall.shape != asked)).tolist():
        laid, wanted = str(wall.shape[piece]), str(asked[piece])
        yield Break(int(wall.course[piece]), int(wall.left[piece]), f"{_called(laid)} where {_called(wanted)} is asked for",
                    LIMIT, f"lay {_called(wanted)}")


def _called(shape: str) -> str:
    return {"corner L": "an L corner unit", "precast": "a precast lintel", "return": "another wall's end",
            "bond beam": "a bond-beam unit"}.get(shape, f"a {shape}" if shape in ("stretcher", "header", "closer")
                                                 else f"a {shape} unit")


def _in_beams(wall: AsLaid) -> Flags:
    numbers = np.array([course.number for course in wall.layout.courses], dtype=np.int64)
    found: Flags = np.isin(numbers[wall.course], wall.layout.wall.bond_beams)
    return found


def _stand_at(wall: AsLaid, kind: int) -> Flags:
    """The pieces beside a gap of a kind."""
    gaps, found = wall.gaps, np.zeros(len(wall.left), dtype=bool)
    here = gaps.kind == kind
    found[gaps.before[here]] = True
    found[gaps.after[here]] = True
    return found


def _show_an_end(wall: AsLaid, near: int) -> Flags:
    """The pieces that end so near to a jamb beside its opening, to the wall's own end, or there to another wall's unit."""
    found = np.zeros(len(wall.left), dtype=bool)
    for opening in wall.layout.wall.openings:
        beside = (wall.bottom < opening.top) & (wall.top > opening.bottom)
        found |= beside & ((np.abs(wall.right - opening.left) <= near) | (np.abs(wall.left - opening.right) <= near))
    found |= (np.abs(wall.left - wall.start) <= near) | (np.abs(wall.right - wall.end) <= near)
    found[_beside_others(wall)] = True
    return found


def _beside_others(wall: AsLaid) -> Ints:
    """The pieces beside the unit of a wall that this one meets at an end."""
    rows, own, others = wall.rows, wall.layout.wall, wall.shape == "return"
    found = [np.array([], dtype=np.int64)]
    for at, inward, end in ((rows.start[:-1], 1, own.left_end), (rows.start[1:] - 1, -1, own.right_end)):
        if end != "end":
            beside = at[others[rows.piece[at]]] + inward
            found.append(rows.piece[np.clip(beside, 0, len(rows.piece) - 1)])
    return np.concatenate(found)


def _out_of_place(wall: AsLaid) -> Iterator[Break]:
    """Lintels, other walls' ends, L corner units, headers and closers where none can be."""
    for shape, may in (("lintel", _under_lintels(wall, "block")), ("precast", _under_lintels(wall, "precast")),
                       ("return", _where_walls_meet(wall)), ("corner L", _at_corners(wall)),
                       *((shape, np.full(len(wall.left), wall.masonry.one_brick)) for shape in ("header", "closer"))):
        for piece in np.flatnonzero((wall.shape == shape) & ~may).tolist():
            yield Break(int(wall.course[piece]), int(wall.left[piece]), f"{_called(shape)} where none belongs", LIMIT,
                        "lay a plain unit")


def _under_lintels(wall: AsLaid, kind: str) -> Flags:
    """Where a lintel of a kind may lie: within a course of a head, and as far out as its bearings go."""
    found, joint, gauge = np.zeros(len(wall.left), dtype=bool), wall.masonry.widest_joint, wall.masonry.unit.gauge
    for opening in wall.layout.wall.openings:
        if opening.lintel == kind:
            left, right = opening.left - opening.bearing - joint, opening.right + opening.bearing + joint
            found |= (np.abs(wall.bottom - opening.top) < gauge) & (wall.left < right) & (wall.right > left)
    return found


def _where_walls_meet(wall: AsLaid) -> Flags:
    """Where another wall's unit may show: at corners, at ends that abut, where another wall abuts this one, and at piers."""
    thick, own = wall.masonry.thickness, wall.layout.wall
    places = [(one.at, one.at + thick) for other in wall.job.walls for one in other.abuts if one.meets == own.name]
    places += [(pier.left, pier.right) for pier in own.piers]
    if own.left_end not in ("end", "straight"):
        places.append((-thick, thick))
    if own.right_end not in ("end", "straight"):
        places.append((own.length - thick, own.length + thick))
    return _lie_in(wall, places)


def _at_corners(wall: AsLaid) -> Flags:
    own, places = wall.layout.wall, list[tuple[int, int]]()
    if wall.masonry.corner_unit != "plain":
        places += [(wall.start, wall.start + 1)] if own.left_end in CORNERS else []
        places += [(wall.end - 1, wall.end)] if own.right_end in CORNERS else []
    return _lie_in(wall, places)


def _lie_in(wall: AsLaid, places: list[tuple[int, int]]) -> Flags:
    found = np.zeros(len(wall.left), dtype=bool)
    for left, right in places:
        found |= (wall.left < right) & (wall.right > left)
    return found


def _sawn_for_nothing(wall: AsLaid) -> Iterator[Break]:
    """Slopes and notches in a wall without slope or step, and a back behind a wall that has none."""
    sawn: Ints = np.flatnonzero(wall.raked | (wall.notched > 0)) if wall.outline is None else np.array([], dtype=np.int64)
    for piece in sawn.tolist():
        yield Break(int(wall.course[piece]), int(wall.left[piece]), "sawn to a slope or notched in a wall without either",
                    "square", "lay it square")
    if not wall.masonry.one_brick:
        for index, course in enumerate(wall.layout.courses):
            if course.backing:
                yield Break(index, course.backing[0].left, f"{len(course.backing)} pieces behind the face", "none",
                            "the wall is one unit thick: leave them out")


def _counted_elsewhere(wall: AsLaid) -> Iterator[Break]:
    """Own pieces that another wall counts, and other walls' ends that this one counts."""
    own = wall.name
    for index, course in enumerate(wall.layout.courses):
        if {(piece.shape == "return", piece.of) for piece in course.bricks} <= {(False, own)}:
            continue
        for piece in course.bricks:
            if (piece.of == own) is (piece.shape == "return"):
                yield Break(index, piece.left, f"counted in {piece.of}", "counted in the wall that lays it",
                            "count it where it is laid")
