"""How a rule reports: a held finding for the wall, or one for each broken place; equal ones of several courses merge."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from wallplan.findings import Finding, RuleName
from wallplan.lengths import print_length, print_size
from wallplan.rules.as_laid import AsLaid

MOST = 200
"""So many broken places of one rule are told one by one in a wall; the rest are counted."""


@dataclass(frozen=True)
class Break:
    """One broken place: index of the course, ticks from the left end, and what the finding will say."""

    course: int | None
    at: int | None
    figure: str
    limit: str
    remedy: str


def size(wall: AsLaid, ticks: int) -> str:
    """A length as the plan measures it."""
    return print_size(int(ticks), wall.job.measure)


def height(wall: AsLaid, ticks: int) -> str:
    """A height over the footing, in feet and inches or in millimetres, as the pole has it."""
    return print_length(int(ticks), wall.job.measure) if wall.job.measure == "feet" else size(wall, ticks)


def exact(wall: AsLaid, ticks: int, limit: int) -> str:
    """A length that is off its limit; in decimals where rounding would print both alike."""
    printed = size(wall, ticks)
    if ticks == limit or printed != size(wall, limit):
        return printed
    return f"{ticks / 24_384:.4f} in." if wall.job.measure == "feet" else f"{ticks / 960:.3f} mm"


def report_held(wall: AsLaid, rule: RuleName, source: str, figure: str, limit: str, notice: str = "") -> Finding:
    """A rule that holds in the wall, with the figure reached, and what the wall's sheet is to tell of it."""
    return Finding(rule, True, wall.name, None, None, figure, limit, source, "", notice)


def note_first(findings: tuple[Finding, ...], notice: str) -> tuple[Finding, ...]:
    """The findings, the first of them with a notice; () for none."""
    return (replace(findings[0], notice=notice), *findings[1:]) if findings and notice else findings


def report_breaks(wall: AsLaid, rule: RuleName, source: str, breaks: Iterable[Break]) -> tuple[Finding, ...]:
    """A finding for each broken place; () for none. Places equal but for their course become one finding."""
    places: dict[Break, list[int]] = {}
    for one in breaks:
        places.setdefault(replace(one, course=None), []).append(-1 if one.course is None else one.course)
    findings = []
    for one, courses in places.items():
        lowest, several = min(courses), len(set(courses))
        findings.append(Finding(
            rule, False, wall.name, None if lowest < 0 else wall.number(lowest), one.at,
            one.figure + (f" (so in {several} courses)" if several > 1 else ""), one.limit, source, one.remedy,
        ))
    told, rest = findings[:MOST], findings[MOST:]
    if rest:
        told.append(replace(rest[0], figure=f"{len(rest)} more places", remedy="mend the places told first"))
    return tuple(told)
