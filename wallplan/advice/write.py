"""A plan's text with moved figures: only the values change, comments and spacing stay.

Each key is found by the line on which it stands; the value after it is replaced. What comes of it is read back, and must be
the job that was advised.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction

from wallplan.findings import PlanError
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.job import Job, Opening, Wall
from wallplan.plan.lines import find_lines
from wallplan.plan.load import read_plan
from wallplan.plan.notebook import KeyPath

_TOKEN = re.compile(r"""#[^\n]*|"(?:[^"\\\n]|\\.)*"|'[^'\n]*'|[^\s,\[\]{}#"'=]+""")
"""A comment or a value; a comment is passed over."""


class NotWritten(ValueError):
    """A plan whose text cannot be changed in place; the message is one line."""


def write_changes(text: str, old: Job, new: Job) -> str:
    """The plan's text with every length of ``new`` that differs from ``old``, which is the job of the text.

    Raises NotWritten where a key stands in a way that cannot be changed alone.
    """
    changed = text
    for path, ticks in _list_changes(old, new):
        changed = _replace_value(changed, path, ticks, old.measure)
    try:
        walls = read_plan(changed, "advised").walls
    except PlanError as error:
        raise NotWritten(f"the plan cannot be changed in place: {error.mistakes[0].message}") from None
    if walls != new.walls:
        raise NotWritten("the plan cannot be changed in place; write each key on a line of its own")
    return changed


def _list_changes(old: Job, new: Job) -> Iterator[tuple[KeyPath, int]]:
    """The keys that change with their new values in ticks, as the plan gives them: nominal ones with their joint."""
    joint = old.masonry.joint if old.sizes == "nominal" else 0
    for number, (was, becomes) in enumerate(zip(old.walls, new.walls, strict=True)):
        path: KeyPath = ("wall", number)
        before, after = _values_of(was, joint), _values_of(becomes, joint)
        yield from (((*path, *key), after[key]) for key in after if after[key] != before[key])


def _values_of(wall: Wall, joint: int) -> Mapping[KeyPath, int]:
    values: dict[KeyPath, int] = {("length",): wall.length + joint, ("height",): wall.height}
    values |= {("control_joints", number): centre + joint // 2 for number, centre in enumerate(wall.control_joints)}
    for number, opening in enumerate(wall.openings):
        values |= {("opening", number, key): ticks for key, ticks in _values_of_opening(opening, joint).items()}
    return values


def _values_of_opening(opening: Opening, joint: int) -> Mapping[str, int]:
    return {"from_left": opening.left + joint, "width": opening.right - opening.left - joint, "sill": opening.bottom,
            "height": opening.top - opening.bottom}


def _replace_value(text: str, path: KeyPath, ticks: int, measure: Measure) -> str:
    item = path[-1] if isinstance(path[-1], int) else 0
    key_path = path[:-1] if isinstance(path[-1], int) else path
    line = find_lines(text).get(key_path)
    if line is None:
        raise NotWritten(f"{key_path[-1]} is not written in the plan; write it there")
    start = sum(len(one) + 1 for one in text.split("\n")[: line - 1])
    found = re.compile(rf"(?<![\w-])[\"']?{key_path[-1]}[\"']?\s*=").search(text, start)
    if found is None:
        raise NotWritten(f"{key_path[-1]} is not written in the plan; write it there")
    tokens = (token for token in _TOKEN.finditer(text, found.end()) if not token[0].startswith("#"))
    for place, token in enumerate(tokens):
        if place == item:
            written = write_value(ticks, measure, bare=token[0][0] not in "\"'")
            return text[: token.start()] + written + text[token.end():]
    raise NotWritten(f"{key_path[-1]} has no value to change")


def write_value(ticks: int, measure: Measure, *, bare: bool = False) -> str:
    """A length as TOML that reads back to the same tick; ``bare`` leaves off the quotes where a number will do."""
    exact = Fraction(ticks, TICKS_PER_INCH if measure == "feet" else TICKS_PER_MM)
    if bare and exact.denominator == 1:
        return str(exact.numerator)
    if measure == "metric":
        decimal = f"{float(exact):.4f}".rstrip("0").rstrip(".")
        return decimal if bare and Fraction(decimal) == exact else f'"{_mixed(exact)}"'
    feet, inches = divmod(exact, 12)
    if not feet:
        return f"'{_mixed(inches)}\"'"
    return f'"{feet}\'"' if not inches else f'"{feet}\' {_mixed(inches)}"'


def _mixed(number: Fraction) -> str:
    whole, part = divmod(number, 1)
    fraction = f"{part.numerator}/{part.denominator}"
    return str(whole) if not part else f"{whole} {fraction}" if whole else fraction
