"""The title block: what wall this is, of which units, how it was measured, at which scale, and what is proven."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from wallplan.drawing.cautions import USUAL
from wallplan.drawing.face import OUTSIDE, Face
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, fit_heading, tie
from wallplan.drawing.panel import PADDING, Line, Panel, set_lines
from wallplan.drawing.paper import Scale
from wallplan.findings import Finding
from wallplan.layout.model import WallLayout
from wallplan.lengths import print_length, print_size
from wallplan.plan.job import Job

_ENDS = {"end": "free end", "outside corner": "outside corner", "inside corner": "inside corner",
         "straight": "runs on straight", "abuts": "abuts another wall"}
_BONDS = {"half": "Half bond", "third": "Third bond", "quarter": "Quarter bond", "stack": "Stack bond",
          "flemish": "Flemish bond, one brick thick", "english": "English bond, one brick thick",
          "flemish garden wall": "Flemish garden wall bond, one brick thick",
          "english garden wall": "English garden wall bond, one brick thick", "common": "Common bond, one brick thick",
          "header": "Header bond, one brick thick"}


@dataclass(frozen=True)
class Sheet:
    """A sheet's place in the set, its number and count among the sheets of its title, and what of a split wall it shows."""

    number: int
    count: int
    part: tuple[int, int] = (1, 1)
    shows: str = ""


def set_title_block(wall: WallLayout, job: Job, scale: Scale, sheet: Sheet, width: float, face: Face = OUTSIDE) -> Panel:
    """The title block as a panel ``width`` mm wide."""
    room = width - 2 * PADDING
    lines = [
        Line(*fit_heading(f"{'INSIDE of' if face.name == 'inside' else 'WALL'} {clean(wall.wall.name)}",
                          (LARGE_FIGURES, FIGURES, SMALLEST), room)),
        Line(*fit_heading(clean(job.title), (FIGURES, SMALLEST), room)),
        Line(print_face(wall, face)),
        *(Line(words) for words in (print_stems(wall, job),) if words),
        Line(print_unit(job)),
        Line(print_bond((wall,), job)),
        Line(print_sizes(job)),
        Line(print_place(job, scale, sheet)),
    ]
    if sheet.shows:
        lines.append(Line(sheet.shows))
    return set_lines(tuple(lines), width)


def tell_part(left: str, right: str, courses: tuple[int, int] | None) -> str:
    """Which part of a split wall a sheet shows, from printed distances and course numbers (None for all courses)."""
    rows = f", courses {courses[0]} to {courses[1]}" if courses else ""
    return f"This sheet: {tie(left)} to {tie(right)} from the left end{rows}; what both sheets show is built once."


def print_unit(job: Job) -> str:
    """The unit with its specified size, in a line."""
    unit, measure = job.masonry.unit, job.measure
    thick, high, long = (tie(print_size(size, measure)) for size in (unit.thickness, unit.height, unit.length))
    return f"Unit: {clean(unit.name)}, specified {thick} thick, {high} high, {long} long."


def _tell_end(wall: WallLayout, end: str) -> str:
    kind = wall.wall.left_end if end == "left" else wall.wall.right_end
    met = [one.meets for one in wall.wall.abuts if one.end == end]
    return f"abuts {clean(met[0])}" if met else _ENDS[kind]


def print_stems(wall: WallLayout, job: Job) -> str:
    """The walls that abut this one, and where, in a line; "" for none."""
    unit = " mm" if job.measure == "metric" else ""
    told = [f"{clean(other.name)} abuts on the {'inside' if one.inside else 'outside'} at "
            f"{tie(print_length(one.at, job.measure))}{unit}" for other in job.walls for one in other.abuts
            if one.meets == wall.wall.name]
    return "; ".join(told) + "." if told else ""


def print_face(wall: WallLayout, face: Face = OUTSIDE) -> str:
    """Which face is seen, how it ends on the left and on the right, and where distances start. ``wall`` is as it is seen."""
    ends = f"Left: {_tell_end(wall, 'left')}. Right: {_tell_end(wall, 'right')}."
    if face.name == "outside":
        return f"Outside face. {ends} Distances from the left."
    return (f"INSIDE face, the wall's left end on the right. {ends} Distances, openings too, as on the outside face: "
            "from the end here on the right. Overall: inside.")


def print_bond(walls: tuple[WallLayout, ...], job: Job) -> str:
    """The bond, and the joints as laid in these walls. Raises ValueError for no walls."""
    heads = [joint for wall in walls for joint in wall.joints]
    beds = [wall.bed for wall in walls]
    return (f"{_BONDS[job.masonry.bond]}. Head joints as laid {_print_range(min(heads), max(heads), job)}, "
            f"bed joints {_print_range(min(beds), max(beds), job)}.")


def print_sizes(job: Job) -> str:
    """Which sizes are nominal and which actual, and the datum."""
    stepped = any(wall.outline is not None and len(wall.outline.footing) > 2 for wall in job.walls)
    return f"Plan sizes {job.sizes}, this sheet actual. Heights from 0, top of {'lowest ' if stepped else ''}footing."


def print_place(job: Job, scale: Scale | None, sheet: Sheet) -> str:
    """Scale, the sheet's place in its set, and the date where the plan gives one."""
    drawn = "Not to scale." if scale is None else "Full size." if scale.ratio == 1 else f"Scale {scale.name}."
    part = f", part {sheet.part[0]} of {sheet.part[1]}" if sheet.part[1] > 1 else ""
    return f"{drawn} Sheet {sheet.number} of {sheet.count}{part}.{f' Date {clean(job.date)}.' if job.date else ''}"


def _print_range(least: int, most: int, job: Job) -> str:
    narrow, wide = (tie(print_size(joint, job.measure)) for joint in (least, most))
    return narrow if narrow == wide else f"{narrow} to {wide}"


def print_proof(wall: WallLayout, findings: tuple[Finding, ...]) -> str:
    """What was reached and proven of the wall's cutting, and the rules held and broken, in a line or two."""
    own = [finding for finding in findings if finding.wall == wall.wall.name]
    broken = Counter(finding.rule for finding in own if not finding.held)
    held = {finding.rule for finding in own if finding.held} - set(broken)
    least = ("which is proven the least" if wall.cutting <= wall.cutting_at_least
             else f"proven at least {wall.cutting_at_least}")
    counts = "a sawn pair" if any(course.backing for course in wall.courses) else "a piece under half a unit"
    told = f"Cutting {wall.cutting} ({counts} counts two), {least}."
    if not own:
        return f"{told} Rules: not checked."
    if not broken:
        return f"{told} Rules: all {len(held)} held."
    places = ", ".join(f"{rule} ({count} {'place' if count == 1 else 'places'})" for rule, count in broken.items())
    return f"{told} Rules: {len(held)} held, {len(broken)} BROKEN: {places}."


def set_notes(wall: WallLayout, findings: tuple[Finding, ...], notes: tuple[str, ...], width: float) -> Panel:
    """Proof, what publications ask over the plan, what could be better though every rule is held, what found no room on the
    drawing, and the cautions."""
    asked = (clean(finding.notice) for finding in findings if finding.notice and finding.wall == wall.wall.name)
    better = (f"{finding.figure[:1].upper()}{finding.figure[1:]}: {finding.remedy}." for finding in findings
              if finding.held and finding.remedy and finding.wall == wall.wall.name)
    lines = (print_proof(wall, findings), *asked, *better, *notes, USUAL)
    return set_lines(tuple(Line(line) for line in lines), width)


def describe(wall: WallLayout, job: Job, kinds: tuple[tuple[str, int], ...], sheet: Sheet, face: Face = OUTSIDE) -> str:
    """The sheet in words, for who cannot see it."""
    counted = ", ".join(f"{count} {name}" for name, count in kinds)
    openings = "; ".join(
        f"opening {clean(opening.name)} from {print_length(left, job.measure)} to "
        f"{print_length(left + opening.right - opening.left, job.measure)}"
        for opening in wall.wall.openings for left in (face.told_left(opening.left, opening.right),))
    length, height = (print_length(size, job.measure) for size in (wall.wall.length, wall.wall.height))
    unit = " mm" if job.measure == "metric" else ""
    return (f"Elevation of wall {clean(wall.wall.name)}, {face.name} face, {length}{unit} long, {height}{unit} high, "
            f"{len(wall.courses)} courses of {clean(job.masonry.unit.name)}; pieces: {counted or 'none'}"
            f"{f'; {openings}' if openings else ''}. Sheet {sheet.number} of {sheet.count}. {sheet.shows}").strip()
