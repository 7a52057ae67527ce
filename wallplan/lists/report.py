"""What the terminal tells of a layout: the bond, its pieces, cuts and joints, what is proven, what is broken."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from wallplan.findings import Finding
from wallplan.layout.model import Layout, Piece, WallLayout
from wallplan.lengths import TICKS_PER_MM, print_joint, print_length, print_size
from wallplan.lists.bond_drawing import LEGEND, draw_bond
from wallplan.lists.columns import set_columns, wrap_text
from wallplan.lists.piers import tell_piers
from wallplan.lists.sawn_size import count_hands, tell_count, tell_size
from wallplan.plan.job import Job

CAUTION = (
    "A layout, not a structural design: local codes and licensed designers go first. Dry-lay course 1 and measure "
    "your own units before you cut."
)


def report_layout(layout: Layout, broken: Sequence[Finding], width: int, notes: Mapping[str, str] | None = None) -> str:
    """The whole report of ``wallplan lay``. ``notes`` are told after the figures of the wall of that name."""
    parts = [wrap_text(layout.job.title, width)]
    for wall in layout.walls:
        parts.append(_report_wall(wall, layout.job, [one for one in broken if one.wall == wall.wall.name], width,
                                  (notes or {}).get(wall.wall.name)))
    parts.append(wrap_text(CAUTION, width))
    return "\n\n".join(parts)


def _report_wall(wall: WallLayout, job: Job, broken: Sequence[Finding], width: int, note: str | None) -> str:
    shapes: set[str] = {piece.shape for course in wall.courses for piece in course.pieces}
    shapes |= {"control joint"} if wall.wall.control_joints else set()
    signs = ["| head joint", *(LEGEND[shape] for shape in LEGEND if shape in shapes)]
    signs += ["A, B ... cuts"] if wall.cutting else []
    told = [
        wrap_text(_head(wall, job), width), "", *draw_bond(wall, job.masonry, width), "", _set_legend(signs, width), "",
        set_columns(_figures(wall, job), width),
    ]
    if note:
        told += ["", note]
    if wall.why:
        told += ["", "Where the bound is not reached:", *(wrap_text(line, width, indent="  ") for line in wall.why)]
    told += ["", *_tell_rules(broken, job, width)]
    return "\n".join(told)


def _set_legend(signs: Sequence[str], width: int) -> str:
    """What the signs of the drawing mean, under its first column; no sign is parted from its meaning."""
    lines = [""]
    for sign in signs:
        together = f"{lines[-1]}   {sign}" if lines[-1] else f"     {sign}"
        lines[-1:] = [together] if len(together) <= width else [lines[-1], f"     {sign}"]
    return "\n".join(lines)


def _head(wall: WallLayout, job: Job) -> str:
    size = f"{print_length(wall.wall.length, job.measure)} long, {print_length(wall.wall.height, job.measure)} high"
    unit = "mm, " if job.measure == "metric" else ""
    unit += "one brick thick, " if job.masonry.one_brick else ""
    courses = count_courses(len(wall.courses))
    return (
        f"{wall.wall.name}: {size}, {unit}{courses} of {job.masonry.unit.name}, {job.masonry.bond_name}. "
        "Seen from outside; course 1 stands on the footing."
    )


def count_courses(courses: int) -> str:
    """So many courses, in words."""
    return f"{courses} course{'' if courses == 1 else 's'}"


def _figures(wall: WallLayout, job: Job) -> list[list[str]]:
    masonry, measure = job.masonry, job.measure
    low, high = (print_joint(joint, measure) for joint in wall.joints)
    aimed = print_size(masonry.joint, measure)
    rows = [[name, counted] for name, counted in _count_pieces(wall, job)]
    rows += [[f"cut {mark}", told] for mark, told in _tell_cuts(wall, job)]
    precast = [piece for course in wall.courses for piece in course.pieces if piece.shape == "precast"]
    rows += [["precast", f"1 of {print_size(piece.length, measure)} long, {print_size(piece.height, measure)} high"]
             for piece in precast]
    joints = f"all {low}" if low == high else f"{low} to {high}"
    rows.append(["head joints", f"{joints} (aimed for {aimed})"])
    rows.append(["bed joints", f"{print_size(wall.bed, measure)}; {print_courses_rise(wall, job)}"])
    rows.append(["cutting", _tell_cutting(wall, job)])
    return [*rows, *tell_piers(wall, job)]


def print_courses_rise(wall: WallLayout, job: Job) -> str:
    """How high the first courses rise, of brick so many as the trade states its gauge in: a check for the rule on site.

    A first course that is lower is told by itself.
    """
    first, rest = wall.courses[0], wall.courses
    low = ""
    if len(rest) > 1 and first.top - first.bottom < rest[1].top - rest[1].bottom - TICKS_PER_MM:
        low, rest = f"course 1 rises {print_size(first.top - first.bottom, job.measure)}, then ", rest[1:]
    unit = job.masonry.unit
    stated = unit.coursing[0] if unit.coursing is not None and 1 < unit.coursing[0] <= len(rest) else 3
    courses = rest[: min(len(rest), stated if unit.kind == "brick" else 1)]
    rise = print_size(courses[-1].top - courses[0].bottom, job.measure)
    return f"{low}{len(courses)} {'courses rise' if len(courses) > 1 else 'course rises'} {rise}"


def _count_pieces(wall: WallLayout, job: Job) -> list[tuple[str, str]]:
    counted: dict[str, Counter[str]] = {}
    for course in wall.courses:
        for piece in course.bricks:
            if piece.mark is None and piece.shape not in ("precast", "return"):
                low = "half-high " if piece.height < job.masonry.unit.height else ""
                counted.setdefault(low + piece.piece, Counter())[piece.shape] += 1
    return [
        (name, f"{shapes.total()}" + (f" ({', '.join(f'{n} {shape}' for shape, n in shapes.most_common())})"))
        for name, shapes in counted.items()
    ]


def _tell_cuts(wall: WallLayout, job: Job) -> list[tuple[str, str]]:
    found: dict[str, list[Piece]] = {}
    for course in wall.courses:
        for piece in course.bricks:
            if piece.mark is not None:
                found.setdefault(piece.mark, []).append(piece)
    return [(mark, _tell_cut(found[mark], job)) for mark in sorted(found, key=lambda mark: (len(mark), mark))]


def _tell_cut(pieces: list[Piece], job: Job) -> str:
    if pieces[0].piece == "closer":
        wide = print_size(pieces[0].length, job.measure)
        return f"{len(pieces)} queen closers, {wide} wide: a brick ripped along its length"
    size = tell_size(pieces[0], job.measure, job.masonry.unit.height, " long, ")
    high = " high" if " long, " in size else ""
    hands = count_hands(pieces)
    return f"{len(pieces)} of {size}{high}" + (f" ({tell_count(len(pieces), hands).split(': ')[-1]})" if any(hands) else "")


def _tell_cutting(wall: WallLayout, job: Job) -> str:
    if not wall.cutting:
        return "none: every piece is a stock length"
    proof = "which is the bound" if wall.cutting == wall.cutting_at_least else (
        f"the bound, run by run, is {wall.cutting_at_least}")
    settings = "" if wall.settings_proven else "; fewer saw settings at the same cutting are not ruled out"
    told = "; runs beside openings were laid one after another: less may do" if job.masonry.one_brick else (
        "; with so many places for a joint not all were tried: less may do")
    places = "" if wall.everywhere else told
    counts = "a sawn pair counts two" if job.masonry.one_brick else "a cut shorter than half a unit counts two"
    return f"{wall.cutting} ({counts}); {proof}{places}{settings}"


def _tell_rules(broken: Sequence[Finding], job: Job, width: int) -> list[str]:
    if not broken:
        return ["Every rule is held. To have each measured: wallplan check"]
    return [f"{len(broken)} broken {'rule' if len(broken) == 1 else 'rules'}:",
            *(line for finding in broken for line in _tell_broken(finding, job, width))]


def _tell_broken(finding: Finding, job: Job, width: int) -> list[str]:
    at = "" if finding.at is None else f", {print_length(finding.at, job.measure)} from the left end"
    course = "" if finding.course is None else f", course {finding.course}"
    return [
        wrap_text(f"BROKEN {finding.rule}{course}{at}: {finding.figure}; limit {finding.limit}", width, indent="  "),
        wrap_text(f"mend: {finding.remedy}", width, indent="      "),
    ]


def report_findings(layout: Layout, findings: Sequence[Finding], width: int, notes: Mapping[str, str] | None = None) -> str:
    """The whole report of ``wallplan check``: every rule in every wall, with its source.

    ``notes`` are told after the rules of the wall of that name.
    """
    told = [wrap_text(layout.job.title, width)]
    for wall in layout.walls:
        told += ["", wrap_text(wall.wall.name, width)]
        for finding in findings:
            if finding.wall == wall.wall.name:
                told += _tell_held(finding, width) if finding.held else _tell_broken(finding, layout.job, width)
                told.append(wrap_text(f"source: {finding.source}", width, indent="      "))
        told += [note] if (note := (notes or {}).get(wall.wall.name)) else []
    broken = sum(not finding.held for finding in findings)
    told += ["", f"{broken} broken, {len(findings) - broken} held"]
    return "\n".join(told)


def _tell_held(finding: Finding, width: int) -> list[str]:
    told = [wrap_text(f"held   {finding.rule}: {finding.figure}; limit {finding.limit}", width, indent="  ")]
    return [*told, wrap_text(f"better: {finding.remedy}", width, indent="      ")] if finding.remedy else told
