"""A first plan from a few answers: the questions, each with an answer ready, and the commented file they make."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from wallplan.catalogue.load import UnknownUnit, find_unit
from wallplan.lengths import LengthError, Measure, read_length

Answers = Mapping[str, str]
MOST_OPENINGS = 9


@dataclass(frozen=True)
class Question:
    """One question: the key its answer goes by, its text, the answer ready, and what is wrong with an answer, if it is."""

    key: str
    text: str
    ready: str
    find_fault: Callable[[str], str | None]


def next_question(answers: Answers) -> Question | None:
    """The first question that is not answered yet; None when the plan can be written."""
    return next((question for question in _questions(answers) if question.key not in answers), None)


def _questions(answers: Answers) -> list[Question]:
    feet = answers.get("measure", "feet") == "feet"
    asked = [
        Question("title", "What is the job called?", "Ticket kiosk", _find_name_fault),
        Question("measure", "Feet or metric?", "feet", lambda given: _one_of(given, ("feet", "metric"))),
        Question("unit", "Which unit? (all of them: wallplan units)", "block-8" if feet else "brick-uk", _find_unit_fault),
        Question("bond", "Bond: half, third, quarter or stack?", "half",
                 lambda given: _one_of(given, ("half", "third", "quarter", "stack"))),
        Question("name", "What is the wall called?", "Front", _find_name_fault),
        Question("length", "How long is it, out to out?", "19' 11 5/8" if feet else "6 m", _sized(answers)),
        Question("height", "How high, from the top of the footing?", "8' 8" if feet else "2400", _sized(answers)),
        Question("openings", "How many openings has it?", "0", _find_count_fault),
    ]
    for index in range(1, int(answers.get("openings", "0")) + 1):
        asked += _opening_questions(index, answers, feet)
    return asked


def _opening_questions(index: int, answers: Answers, feet: bool) -> list[Question]:
    place = f"Opening {index}: "
    left = ("4'" if feet else "1125") if index == 1 else "0"
    return [
        Question(f"{index}.name", f"{place}what is it called?", "Door" if index == 1 else f"Window {index}",
                 _find_name_fault),
        Question(f"{index}.from_left", f"{place}how far from the wall's left end to its left jamb?", left, _sized(answers)),
        Question(f"{index}.width", f"{place}how wide, jamb to jamb?", "3' 4 3/8" if feet else "1010", _sized(answers)),
        Question(f"{index}.sill", f"{place}how high is its sill above the footing?", "0" if index == 1 else
                 ("3' 4" if feet else "900"), _sized(answers, least=0)),
        Question(f"{index}.height", f"{place}how high from sill to lintel?", "7' 4" if feet else "2100", _sized(answers)),
    ]


def _find_name_fault(given: str) -> str | None:
    if not given.strip() or not given.isprintable() or len(given) > 80:
        return "That cannot be a name: write 1 to 80 characters."
    return None


def _one_of(given: str, allowed: tuple[str, ...]) -> str | None:
    return None if given in allowed else f'"{given[:40]}" is not one of {", ".join(allowed)}.'


def _find_unit_fault(given: str) -> str | None:
    try:
        find_unit(given)
    except UnknownUnit as error:
        return str(error)
    return None


def _find_count_fault(given: str) -> str | None:
    fits = given.isascii() and given.isdecimal() and int(given[:3]) <= MOST_OPENINGS and len(given) < 3
    return None if fits else f'"{given[:40]}" is not a number from 0 to {MOST_OPENINGS}.'


def _sized(answers: Answers, least: int = 1) -> Callable[[str], str | None]:
    measure: Measure = "metric" if answers.get("measure") == "metric" else "feet"

    def find_fault(given: str) -> str | None:
        try:
            ticks = read_length(given, measure)
        except LengthError as error:
            return f"{error}."
        return None if ticks >= least else "It must be more than nothing."

    return find_fault


def write_draft(answers: Answers) -> str:
    """The plan file of all answers, with a comment wherever a beginner would ask. KeyError for a missing answer."""
    told = {key: json.dumps(value.strip(), ensure_ascii=False) for key, value in answers.items()}
    parts = [_HEAD.format(**{key: told[key] for key in ("title", "measure", "unit", "bond", "name", "length", "height")})]
    for index in range(1, int(answers["openings"]) + 1):
        keys = ("name", "from_left", "width", "sill", "height")
        parts.append(_OPENING.format(**{key: told[f"{index}.{key}"] for key in keys}))
    return "\n".join(parts)


_HEAD = """\
# A plan for wallplan. What follows a # is a note; change anything else as you like.
title   = {title}
measure = {measure}            # "feet": feet and inches; "metric": millimetres
sizes   = "actual"          # "nominal" if your sizes are given on the module

[masonry]
unit = {unit}            # wallplan units shows them all
bond = {bond}               # half, third, quarter, stack; of brick also flemish, english ...
# joint = ...               # the unit's own joint, unless you aim for another
# tightest_joint = ...      # how far head joints may close
# widest_joint = ...        # and how far they may open

# One [[wall]] for each wall, left to right as seen from outside.
[[wall]]
name   = {name}
length = {length}           # out to out of the masonry
height = {height}           # from the top of the footing; or courses = ...
# control_joints = [...]    # from the left end to the joint's centre, where the designer wants them
# bond_beams = ["top"]      # course numbers, where the designer wants them
"""

_OPENING = """\
  [[wall.opening]]
  name      = {name}
  from_left = {from_left}   # from the wall's left end to the left jamb
  width     = {width}       # jamb to jamb, masonry opening
  sill      = {sill}        # from the top of the footing; 0 for a door
  height    = {height}      # from the sill to the underside of the lintel
  # lintel and bearing: have them sized by whoever answers for the structure
"""
