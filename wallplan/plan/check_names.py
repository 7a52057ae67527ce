"""Titles and names: not empty, not endless, nothing that is no text, and no two that cannot be told apart."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from wallplan.plan.found import print_found, print_name
from wallplan.plan.notebook import KeyPath, Notebook

if TYPE_CHECKING:
    from wallplan.plan.schema import OpeningTable, PlanTable, WallTable

LONGEST_NAME = 80


def check_names(plan: PlanTable, notebook: Notebook) -> None:
    """Note every title, name and date that cannot be printed, and names that are taken. Absent ones are left alone."""
    _check_text(("title",), plan.title, notebook)
    _check_date(plan.date, notebook)
    if plan.own_unit is not None:
        _check_text(("own_unit", "key"), plan.own_unit.key, notebook)
        _check_text(("own_unit", "name"), plan.own_unit.name, notebook)
    walls = plan.wall or []
    for number, wall in enumerate(walls):
        _check_text(("wall", number, "name"), wall.name, notebook)
        _check_openings(("wall", number), wall.opening or [], notebook)
        for place, pier in enumerate(wall.pier or []):
            _check_text(("wall", number, "pier", place, "name"), _given(pier.name), notebook)
    _check_walls(walls, notebook)
    if plan.order is not None:
        _check_text(("order", "currency"), _given(plan.order.currency), notebook)
        for number, item in enumerate(plan.order.item or []):
            _check_text(("order", "item", number, "name"), _given(item.name), notebook)


def _given(name: str | None) -> str | None:
    """A name that may be left out; None where nothing is written."""
    return name if name and name.strip() else None


def file_word(name: str) -> str:
    """What is left of a name in a file's name: its letters and digits, small. Empty where it has none."""
    return "".join(letter for letter in name.casefold() if letter.isalnum())


def _check_text(path: KeyPath, text: str | None, notebook: Notebook) -> bool:
    if text is None:
        return False
    if not text.strip():
        notebook.note(path, "empty; write what it is called")
    elif len(text) > LONGEST_NAME:
        notebook.note(path, f"{len(text):,} characters; write at most {LONGEST_NAME}")
    elif not text.isprintable():
        notebook.note(path, f"{print_found(text)} holds a character that cannot be printed; "
                      "write letters, digits and signs on one line")
    else:
        return True
    return False


def _check_date(value: object, notebook: Notebook) -> None:
    if isinstance(value, str):
        _check_text(("date",), value, notebook)
    elif value is not None and not isinstance(value, date):
        notebook.note(("date",), f"{print_found(value)} is not a date; write date = 2031-04-02, or a text in quotes")


def _check_walls(walls: Sequence[WallTable], notebook: Notebook) -> None:
    taken: dict[str, str] = {}
    for number, wall in enumerate(walls):
        if wall.name is None or not wall.name.strip() or len(wall.name) > LONGEST_NAME or not wall.name.isprintable():
            continue
        word, path = file_word(wall.name), ("wall", number, "name")
        if not word:
            notebook.note(path, f"{print_found(wall.name)} has no letter or digit to name a file after; write one")
        elif word in taken:
            same = "is the name of another wall" if taken[word] == wall.name else (
                f'and "{print_name(taken[word])}" would name the same file')
            notebook.note(path, f"{print_found(wall.name)} {same}; write another name")
        else:
            taken[word] = wall.name


def _check_openings(wall: KeyPath, openings: Sequence[OpeningTable], notebook: Notebook) -> None:
    taken: set[str] = set()
    for number, opening in enumerate(openings):
        name = f"opening {number + 1}" if opening.name is None else opening.name
        path = (*wall, "opening", number, "name")
        if opening.name is not None and not _check_text(path, opening.name, notebook):
            continue
        if name in taken:
            notebook.note(path, f"{print_found(name)} is the name of another opening of this wall; write another name")
        taken.add(name)
