"""Piers built into a wall, in words: their size, their units, how they are tied in and how they bond."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from wallplan.layout.model import PierLayout, WallLayout
from wallplan.lengths import print_length, print_size
from wallplan.plan.job import Job


def tell_piers(wall: WallLayout, job: Job) -> list[list[str]]:
    """A row of name and words for the piers of a wall that are alike, with where they stand; [] for none."""
    alike: dict[object, list[PierLayout]] = {}
    for pier in wall.piers:
        alike.setdefault(replace(pier.pier, name="", left=0), []).append(pier)
    return [["piers" if len(piers) > 1 else "pier", _tell(piers, job)] for piers in alike.values()]


def _tell(piers: list[PierLayout], job: Job) -> str:
    first, measure = piers[0], job.measure
    places = ", ".join(print_length(pier.pier.left, measure) for pier in piers)
    odd = next((course.number % 2 == 1 for course in first.courses if course.tied), True)
    told = [f"{len(piers)} of {pier_size(first, job)}, at {places} from the left end",
            f"each {tell_units(one.piece.mark or one.piece.piece for course in first.courses for one in course.pieces)}",
            f"tied in by {'odd' if odd else 'even'} courses"]
    on_faces, inside = first.straight
    if on_faces:
        told.append(f"{print_size(on_faces, measure)} of joint show over a joint on its faces")
    if inside:
        told.append(f"inside, {print_size(inside, measure)} of joint stand over a joint in each two courses, on the faces "
                    f"{'too' if on_faces else 'none'}")
    return "; ".join(told)


def pier_size(pier: PierLayout, job: Job) -> str:
    """``440 x 440`` and how far it stands out of which face."""
    one, measure = pier.pier, job.measure
    deep = one.front + job.masonry.thickness + one.back
    faces = ((one.front, "outside"), (one.back, "inside"))
    out = [f"{print_size(far, measure)} out of the {face} face" for far, face in faces if far]
    return f"{print_size(one.width, measure)} x {print_size(deep, measure)}, {' and '.join(out)}"


def tell_units(names: Iterable[str]) -> str:
    """``12 full, 4 half, 2 cut A``; pieces by name, cuts by their letter. "nothing" for none."""
    told = [f"{count} {'cut ' if name.isupper() else ''}{name}" for name, count in Counter(names).most_common()]
    return ", ".join(told) or "nothing"
