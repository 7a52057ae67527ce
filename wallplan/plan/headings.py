"""Headings that are none: what was meant, and the text with them as they were meant, so that reading can go on."""

from __future__ import annotations

import re
from typing import NamedTuple

from wallplan.plan.found import find_nearest, make_plain, print_name

_AT_LINE = re.compile(r"at line (\d+),")
_ANY = re.compile(r"^\s*[\[({<]")
_SINGLE = re.compile(r"^\s*\[\s*([A-Za-z_]+(?:\s*\.\s*[A-Za-z_]+)*)\s*\]\s*(?:#.*)?$")
_KEYS = re.compile(r"([A-Za-z_]\w*)\s*=")
_REST = re.compile(r"[\])}>]+\s*:?\s*([A-Za-z_]\w*\s*=.*)$")


class HeadingMistake(NamedTuple):
    """One heading that is wrong: its line, what is said of it, and keys on its line that are lost."""

    line: int
    said: str
    names: tuple[str, ...] = ()


class MendedHeadings(NamedTuple):
    """The mistakes, in the order of their lines, and the text in which they are mended."""

    mistakes: tuple[HeadingMistake, ...]
    text: str


def mend_headings(text: str, error: str) -> MendedHeadings | None:
    """What is wrong with the heading that an error of TOML's reader is of. None where its line is no heading that a plan
    has, or it is not seen what is wrong with it.
    """
    lines, at = text.split("\n"), _AT_LINE.search(error)
    number = int(at[1]) if at else len(lines)
    if number > len(lines):
        return None
    line = lines[number - 1]
    meant = _find_heading(line)
    if meant is None or not _ANY.match(line):
        return None
    taken = error.startswith(("Cannot declare", "Cannot overwrite"))
    if taken and meant.startswith("[["):
        return _mend_singles(lines) or _mend_early(lines, number, meant)
    if line.strip() == meant or error.startswith("Cannot"):  # taken, or what is wrong stands on another line
        return None
    lines[number - 1] = meant
    names = tuple(_KEYS.findall(line)) if _REST.search(line) else ()
    mistake = HeadingMistake(number, f'"{print_name(line.strip())}": {_say(line, meant)}', names)
    return MendedHeadings((mistake,), "\n".join(lines))


def _say(line: str, meant: str) -> str:
    if rest := _REST.search(line):
        return f"more on the line than the heading; write {print_name(rest[1])} on a line of its own"
    if line.strip().startswith(meant):
        return "more on the line than the heading; leave the rest out"
    if line.strip().startswith("[") and line.count("]") < meant.count("]"):
        return f"a heading that is not closed; write {meant}"
    named = meant.startswith("[[") and len(re.findall(r"\w+", line)) > meant.count(".") + 1
    return f"no heading that can be read; write {meant}" + (", and name = ... on a line of its own" if named else "")


def _find_heading(line: str) -> str | None:
    """The heading of a plan that a line's first words name, or nearly so."""
    from wallplan.plan.schema import TABLES

    known = {make_plain(heading.strip("[]").replace(".", "_")): heading for heading, _ in TABLES if heading}
    words = re.findall(r"[A-Za-z_]+", line.partition("=")[0].partition("#")[0])
    for count in range(min(len(words), 3), 0, -1):
        asked = "_".join(words[:count])
        near = find_nearest(asked, known, least=0.85)
        if near is not None and near.count("_") >= count - 1:
            return known[near]
    return None


def _mend_singles(lines: list[str]) -> MendedHeadings | None:
    """Walls, openings and the like in single brackets, all of them."""
    told = []
    for number, line in enumerate(lines, start=1):
        meant = _find_heading(line) if _SINGLE.match(line) else None
        if meant is not None and meant.startswith("[["):
            told.append(HeadingMistake(number, f'"{print_name(line.strip())}": one pair of brackets; write {meant}'))
            lines[number - 1] = meant
    return MendedHeadings(tuple(told), "\n".join(lines)) if told else None


def _mend_early(lines: list[str], number: int, meant: str) -> MendedHeadings | None:
    """What stands above the first ``[[wall]]``, the line ``number``, and belongs under one. It is left out."""
    told, out = [], False
    for place, line in enumerate(lines[: number - 1]):
        if _ANY.match(line):
            inner = _find_heading(line)
            out = inner is not None and inner.startswith(meant.removesuffix("]]") + ".")
            if out:
                where = f"stands above every {meant}; put it below the {meant} it belongs to"
                told.append(HeadingMistake(place + 1, f'"{print_name(line.strip())}": {where}'))
        if out:
            lines[place] = ""
    return MendedHeadings(tuple(told), "\n".join(lines)) if told else None
