"""Why the cutting reached is more than the bound: one sentence for each run that cuts more than it must."""

from __future__ import annotations

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


MOST_PARTS = 10
"""Course numbers and runs of them that are told; of more, how many they are."""


def print_courses(courses: list[int]) -> str:
    """Course numbers as a mason says them: single ones, runs, and every other one from a first to a last."""
    parts = _find_runs(courses)
    told = ", ".join(_print_run(run) for run in parts[:MOST_PARTS])
    rest = sum(len(run) for run in parts[MOST_PARTS:])
    return f"course{'s' if len(courses) > 1 else ''} {told}" + (f" and {rest} more" if rest else "")


def _find_runs(courses: list[int]) -> list[list[int]]:
    """The courses in runs by one (three at least) or by two (four at least), and what lies between alone."""
    runs: list[list[int]] = []
    left = list(courses)
    while left:
        found = left[:1]
        for step, least in ((1, 3), (2, 4)):
            count = 1
            while count < len(left) and left[count] - left[count - 1] == step:
                count += 1
            if count >= max(least, len(found) + 1):
                found = left[:count]
        runs.append(found)
        left = left[len(found):]
    return runs


def _print_run(run: list[int]) -> str:
    if len(run) == 1:
        return str(run[0])
    return f"{run[0]} to {run[-1]}" if run[1] == run[0] + 1 else f"{run[0]}, {run[1]} … {run[-1]}"
