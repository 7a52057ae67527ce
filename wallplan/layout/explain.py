"""Why the cutting reached is more than the bound: one sentence for each run that cuts more than it must."""

from __future__ import annotations

import itertools
from typing import NamedTuple

from wallplan.lengths import Measure, print_length, print_size
from wallplan.plan.job import Masonry


class Share(NamedTuple):
    """What a run contributes in one course: its clear ends, cutting reached, and the least that it must be.

    ``layered`` is True where a sill, a head or a course's height off the coursing calls for rips.
    """

    left: int
    right: int
    cutting: int
    at_least: int
    layered: bool


def explain(shares: dict[Share, list[int]], masonry: Masonry, measure: Measure) -> tuple[str, ...]:
    """Sentences, in the order of the runs' left ends; () where the bound is reached."""
    return tuple(
        _explain(share, courses, masonry, measure)
        for share, courses in sorted(shares.items(), key=lambda item: (item[0].left, item[0].right, item[1]))
        if share.cutting > share.at_least
    )


def _explain(share: Share, courses: list[int], masonry: Masonry, measure: Measure) -> str:
    place = f"{print_length(share.left, measure)} to {print_length(share.right, measure)}, {print_courses(courses)}"
    more = f"{share.cutting} in each, at least {share.at_least}"
    if share.layered:
        return f"{place}: {more}: rips beside a sill, a head or a step off the coursing are not in the bound"
    if share.at_least:
        return f"{place}: {more}: one cut piece alone would be short, or would leave too little lap"
    alone = f"{place}: {more}: stock lengths alone would fill it, but not with"
    if masonry.keep_bond or masonry.bond in ("third", "quarter"):
        return f"{alone} {masonry.bond_name} kept throughout and plumb with the other courses"
    lap = print_size(masonry.least_lap, measure)
    return f"{alone} head joints {lap} from those above and below and plumb with the other courses"


def print_courses(courses: list[int]) -> str:
    """Course numbers as a mason says them: single ones, or every other one from first to last."""
    if len(courses) == 1:
        return f"course {courses[0]}"
    steps = {later - earlier for earlier, later in itertools.pairwise(courses)}
    if len(courses) > 3 and steps == {2}:
        return f"courses {courses[0]}, {courses[1]} … {courses[-1]}"
    if len(courses) > 2 and steps == {1}:
        return f"courses {courses[0]} to {courses[-1]}"
    shown = ", ".join(str(course) for course in courses[:6])
    return f"courses {shown}" + (f" and {len(courses) - 6} more" if len(courses) > 6 else "")
