"""``[[wall.step]]``, ``[[wall.top_step]]`` and ``[[wall.gable]]`` read into ticks, as far as they can be."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from wallplan.plan.found import print_found
from wallplan.plan.notebook import KeyPath, Notebook

if TYPE_CHECKING:
    from wallplan.plan.outline_schema import GableTable, StepTable, TopStepTable
    from wallplan.plan.schema import WallTable

_SLOPE = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(?:/|in|:)\s*(\d+(?:\.\d+)?)\s*")
_DEGREES = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(?:deg|degrees|°)\s*")


@dataclass(frozen=True)
class ReadStep:
    """One step: its distance from the wall's left end, and how much higher (lower where negative) what is right of it is."""

    path: KeyPath
    at: int
    rise: int


@dataclass(frozen=True)
class ReadGable:
    """One gable: its feet and its ridge as distances from the wall's left end, and its rise over the eaves."""

    path: KeyPath
    left: int
    right: int
    ridge: int
    rise: int


@dataclass(frozen=True)
class ReadOutline:
    """What a wall's tables say of its outline: the sound steps and gables, in the order of the file."""

    steps: tuple[ReadStep, ...] = ()
    top_steps: tuple[ReadStep, ...] = ()
    gables: tuple[ReadGable, ...] = ()

    def joined(self, other: ReadOutline, shift: int) -> ReadOutline:
        """This outline with that of a wall which begins ``shift`` ticks from its left end."""
        steps, tops = (tuple(replace(step, at=step.at + shift) for step in given)
                       for given in (other.steps, other.top_steps))
        gables = tuple(replace(gable, left=gable.left + shift, right=gable.right + shift, ridge=gable.ridge + shift)
                       for gable in other.gables)
        return ReadOutline((*self.steps, *steps), (*self.top_steps, *tops), (*self.gables, *gables))


def read_outline(table: WallTable, path: KeyPath, length: int | None, joint: int, shift: int,
                 notebook: Notebook) -> ReadOutline:
    """The outline of one wall. ``joint`` is what a nominal plan counts with a piece, else 0; ``shift`` as for openings.

    On the module a step stands where a piece ends: courses that run to it from the left end a joint before it.
    """
    steps = [_read_step(step, (*path, "step", place), (shift, shift - joint), notebook)
             for place, step in enumerate(table.step or ())]
    tops = [_read_step(step, (*path, "top_step", place), (shift - joint, shift), notebook)
            for place, step in enumerate(table.top_step or ())]
    gables = [_read_gable(gable, (*path, "gable", place), length, joint, shift, notebook)
              for place, gable in enumerate(table.gable or ())]
    return ReadOutline(tuple(step for step in steps if step), tuple(step for step in tops if step),
                       tuple(gable for gable in gables if gable))


def _read_step(table: StepTable | TopStepTable, path: KeyPath, shifts: tuple[int, int],
               notebook: Notebook) -> ReadStep | None:
    """``shifts`` go onto the distance of a step down and of a step up."""
    at = notebook.read((*path, "at"), table.at)
    up, down = (notebook.read((*path, key), value, least=1) for key, value in (("up", table.up), ("down", table.down)))
    told = notebook.knows(*((*path, key) for key in ("up", "down", "height", "rise")))  # the last two: no keys of a step
    if (table.up is None) == (table.down is None) and not told:
        found = "neither up nor down is given" if table.up is None else "both up and down are given"
        notebook.note((*path, "up"), f"{found}; write one of them, as the step is met from the left")
        return None
    rise = up if up is not None else -down if down is not None else None
    return None if at is None or rise is None else ReadStep(path, at + shifts[rise > 0], rise)


def _read_gable(table: GableTable, path: KeyPath, length: int | None, joint: int, shift: int,
                notebook: Notebook) -> ReadGable | None:
    from_left = 0 if table.from_left is None else notebook.read((*path, "from_left"), table.from_left)
    width = None if table.width is None else notebook.read((*path, "width"), table.width, least=1)
    ridge = None if table.ridge is None else notebook.read((*path, "ridge"), table.ridge)
    rise = None if table.rise is None else notebook.read((*path, "rise"), table.rise, least=1)
    slope = None if table.pitch is None else _read_pitch(table.pitch, (*path, "pitch"), notebook)
    if (table.rise is None) == (table.pitch is None) and not notebook.knows((*path, "rise"), (*path, "pitch")):
        found = "neither rise nor pitch is given" if table.rise is None else "both rise and pitch are given"
        notebook.note((*path, "rise"), f"{found}; write one of them")
        return None
    wrong = (from_left is None, table.width is not None and width is None, table.ridge is not None and ridge is None,
             rise is None and slope is None, length is None)
    if any(wrong) or from_left is None or length is None:
        return None
    left = from_left + (shift if from_left else 0)
    right = length if width is None else from_left + width - joint + shift
    if right <= left:
        notebook.note((*path, "from_left"), "no masonry is left for the gable; write a shorter distance")
        return None
    return _place_ridge(path, (left, right), joint, ridge, rise, slope, notebook)


def _place_ridge(path: KeyPath, feet: tuple[int, int], joint: int, from_foot: int | None, rise: int | None,
                 slope: Fraction | None, notebook: Notebook) -> ReadGable | None:
    left, right = feet
    ridge = (left + right) // 2 if from_foot is None else left + from_foot
    if right < ridge <= right + joint + notebook.step:
        ridge = right
    if ridge > right:
        notebook.note((*path, "ridge"), f"{notebook.show(ridge - left)} is past the gable's right foot, which is "
                      f"{notebook.show(right - left)} from its left one; write at most that")
        return None
    sides = sorted({ridge - left, right - ridge} - {0})
    if slope is not None and len(sides) == 2 and sides[1] - sides[0] > 1:
        notebook.note((*path, "pitch"), "the ridge is not in the middle, so the two slopes differ; write rise in place of "
                      "pitch")
        return None
    risen = rise if rise is not None else round(sides[-1] * (slope or 0))
    if risen <= 0:
        notebook.note((*path, "pitch"), "this pitch rises by nothing; write a steeper one, or no gable")
        return None
    return ReadGable(path, left, right, ridge, risen)


def _read_pitch(text: str, path: KeyPath, notebook: Notebook) -> Fraction | None:
    """Rise for each length along, from ``8/12`` or ``35 deg``."""
    if found := _SLOPE.fullmatch(text):
        rise, run = Fraction(found[1]), Fraction(found[2])
        if rise > 0 and run and rise <= 100 * run:
            return rise / run
    elif (found := _DEGREES.fullmatch(text)) and 0 < float(found[1]) < 89:
        return Fraction(math.tan(math.radians(float(found[1])))).limit_denominator(10**6)
    notebook.note(path, f'{print_found(text)} is no pitch; write inches up and inches along, "8/12", or degrees, "34 deg"')
    return None


def in_order(steps: Sequence[ReadStep]) -> tuple[ReadStep, ...]:
    """Steps from left to right."""
    return tuple(sorted(steps, key=lambda step: step.at))
