"""The layout as JSON: the project's interchange, version 1. Lengths in float millimetres, from the wall's left end and
from the top of the footing."""

from __future__ import annotations

from collections.abc import Iterable

from wallplan.findings import Finding
from wallplan.layout.model import Course, Layout, Piece, PierLayout, WallLayout
from wallplan.lengths import to_mm
from wallplan.plan.job import Abutment, Job, Opening, Outline

VERSION = 1


def layout_as_json(layout: Layout, findings: Iterable[Finding]) -> dict[str, object]:
    """The layout and the rules that it breaks, as values that json can write. Findings of held rules are left out."""
    broken = [finding for finding in findings if not finding.held]
    return {
        "wallplan_layout": VERSION,
        "title": layout.job.title,
        "measure": layout.job.measure,
        "walls": [
            _wall(wall, layout.job, [one for one in broken if one.wall == wall.wall.name]) for wall in layout.walls
        ],
    }


def _wall(layout: WallLayout, job: Job, broken: list[Finding]) -> dict[str, object]:
    wall, masonry = layout.wall, job.masonry
    return {
        "name": wall.name,
        "left": wall.left_end,
        "right": wall.right_end,
        "abuts": [_abutment(one) for one in wall.abuts],
        "length": to_mm(wall.length),
        "height": to_mm(wall.height),
        "thickness": to_mm(masonry.thickness),
        "unit": masonry.unit.key,
        "bond": masonry.bond,
        "joint": to_mm(masonry.joint),
        "joints_as_laid": [to_mm(joint) for joint in layout.joints],
        "bed_as_laid": to_mm(layout.bed),
        "least_lap": to_mm(masonry.least_lap),
        "least_piece": to_mm(masonry.least_piece),
        "openings": [_opening(opening) for opening in wall.openings],
        "control_joints": [to_mm(joint) for joint in wall.control_joints],
        "bond_beams": list(wall.bond_beams),
        **_outline(wall.outline),
        "courses": [_course(course) for course in layout.courses],
        **({"piers": [_pier(pier) for pier in layout.piers]} if layout.piers else {}),
        "cutting": layout.cutting,
        "cutting_at_least": layout.cutting_at_least,
        "why": list(layout.why),
        "fewest_settings_proven": layout.settings_proven,
        "joints_tried_everywhere": layout.everywhere,
        "broken_rules": [_finding(finding) for finding in broken],
    }


def _outline(outline: Outline | None) -> dict[str, object]:
    """The lines of footing and top of a wall that is no rectangle, as (distance, height) places."""
    if outline is None:
        return {}
    return {name: [[to_mm(at), to_mm(level)] for at, level in line]
            for name, line in (("footing", outline.footing), ("top", outline.top))}


def _abutment(one: Abutment) -> dict[str, object]:
    return {
        "end": one.end, "meets": one.meets, "at": to_mm(one.at), "face": "inside" if one.inside else "outside",
        "tie": one.tie, "strap_spacing": None if one.strap_spacing is None else to_mm(one.strap_spacing),
    }


def _opening(opening: Opening) -> dict[str, object]:
    return {
        "name": opening.name, "left": to_mm(opening.left), "right": to_mm(opening.right),
        "bottom": to_mm(opening.bottom), "top": to_mm(opening.top), "lintel": opening.lintel,
        "bearing": to_mm(opening.bearing),
    }


def _pier(layout: PierLayout) -> dict[str, object]:
    """A pier built into the wall: where it stands, and its units in plan, ``near`` from the wall's outside face inward."""
    pier = layout.pier
    return {
        "name": pier.name, "left": to_mm(pier.left), "width": to_mm(pier.width), "front": to_mm(pier.front),
        "back": to_mm(pier.back), "cutting": layout.cutting,
        "joint_over_joint": {"on_faces": to_mm(layout.straight[0]), "inside": to_mm(layout.straight[1])},
        "courses": [{"course": course.number, "tied": course.tied, "pieces": [
            {**_piece(one.piece), "near": to_mm(one.near), "along": to_mm(one.along), "deep": to_mm(one.deep)}
            for one in course.pieces]} for course in layout.courses],
    }


def _course(course: Course) -> dict[str, object]:
    return {
        "course": course.number, "bottom": to_mm(course.bottom), "top": to_mm(course.top),
        "pieces": [_piece(piece) for piece in course.pieces],
        **({"backing": [_piece(piece) for piece in course.backing]} if course.backing else {}),
    }


def _piece(piece: Piece) -> dict[str, object]:
    return {
        "left": to_mm(piece.left), "length": to_mm(piece.length), "bottom": to_mm(piece.bottom),
        "height": to_mm(piece.height), "piece": piece.piece, "shape": piece.shape, "mark": piece.mark,
        "lead": piece.lead, "of": piece.of, **_sawn(piece), **({} if piece.leaf is None else {"leaf": piece.leaf}),
    }


def _sawn(piece: Piece) -> dict[str, object]:
    """What a raked or notched piece has besides. A raked one's ``length`` is its bottom's."""
    if piece.rake is not None:
        rake = piece.rake
        return {"hand": piece.hand, "top_length": to_mm(rake.top_length), "top_from": to_mm(rake.top_left),
                "side_heights": [to_mm(rake.left), to_mm(rake.right)]}
    if piece.notch is not None:
        return {"notch": {"left": to_mm(piece.notch.left), "right": to_mm(piece.notch.right),
                          "height": to_mm(piece.notch.height)}}
    return {}


def _finding(finding: Finding) -> dict[str, object]:
    return {
        "rule": finding.rule, "wall": finding.wall, "course": finding.course,
        "at": None if finding.at is None else to_mm(finding.at), "figure": finding.figure, "limit": finding.limit,
        "source": finding.source, "remedy": finding.remedy,
    }
