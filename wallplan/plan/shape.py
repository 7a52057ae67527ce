"""Holds a plan's tables against the schema: unknown keys, wrong types, words that are not allowed, missing keys."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from pydantic_core import ValidationError

from wallplan.plan.found import print_name
from wallplan.plan.mending import mend
from wallplan.plan.notebook import KeyPath, Wrong
from wallplan.plan.schema import (
    MODELS,
    REQUIRED,
    PlanTable,
    Table,
    WallTable,
    default_of,
    example_of,
    list_keys,
    read_table,
)
from wallplan.plan.wrong_value import explain_value

_MOST_HINTS = 200
"""Looking for the nearest word takes time: in a file with more mistakes than this, the later ones go without."""

_FIRST_TABLES, _ORDERS_TABLES = ("masonry", "own_unit", "advice", "teaching", "order"), ("mix", "steel", "cap")
"""Tables that a place is called by: a plan's and its order's."""


class Shape(NamedTuple):
    """A plan as far as its keys and types are right, all that is wrong with them, and its tables as they were read.

    ``taken_for`` has the paths of misspelt keys, each with the one that its value is read at.
    """

    plan: PlanTable
    wrongs: tuple[Wrong, ...]
    tables: dict[str, Any]
    taken_for: tuple[tuple[KeyPath, KeyPath], ...] = ()


def read_shape(raw: dict[str, Any]) -> Shape:
    """The plan as far as its keys and types are right.

    A value that is wrong is left out of the plan, as if it were not given; nothing is reported as missing for it.
    """
    try:
        plan = read_table(PlanTable, raw)
        return Shape(plan, tuple(_find_missing(plan)), raw)
    except ValidationError:
        mended = mend(raw)
    problems = list(_find_problems(mended.tables))
    values = (explain_value(problem, near=number < _MOST_HINTS) for number, problem in enumerate(problems))
    wrongs = (*mended.wrongs, *values)
    plan = read_table(PlanTable, _without(mended.tables, wrongs))
    at_fault = {wrong.path for wrong in wrongs} | mended.instead
    missing = tuple(wrong for wrong in _find_missing(plan) if not _covered(wrong.path, at_fault)
                    and not (wrong.path[-1] == "height" and (*wrong.path[:-1], "courses") in at_fault))
    return Shape(plan, wrongs + missing, mended.tables, tuple(mended.taken_for))


def _find_problems(tables: dict[str, Any]) -> Iterable[Mapping[str, Any]]:
    try:
        read_table(PlanTable, tables)
    except ValidationError as error:
        return error.errors(include_url=False)
    return ()


def _covered(path: KeyPath, wrong_paths: set[KeyPath]) -> bool:
    return any(path[:end] in wrong_paths for end in range(1, len(path) + 1))


def _without(value: Any, wrongs: tuple[Wrong, ...]) -> Any:
    """A copy of the plan's tables without the values at the wrong paths.

    A table in a list becomes an empty one, so that its neighbours keep their places; any other list goes as a whole.
    """
    bare = _copy_tables(value)
    for wrong in wrongs:
        *around, last = wrong.path
        if isinstance(last, int) and around[-1] not in MODELS:
            *around, last = around
        inside: Any = bare
        for step in around:
            inside = inside[step] if _holds(inside, step) else None
        if isinstance(inside, dict):
            inside.pop(last, None)
        elif isinstance(inside, list) and _holds(inside, last):
            inside[int(last)] = {}
    return bare


def _holds(inside: Any, step: str | int) -> bool:
    if isinstance(inside, dict):
        return step in inside
    return isinstance(inside, list) and isinstance(step, int) and step < len(inside)


def _copy_tables(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _copy_tables(inner) for key, inner in value.items()}
    return [_copy_tables(inner) for inner in value] if isinstance(value, list) else value


def _find_missing(plan: PlanTable) -> Iterator[Wrong]:
    yield from _missing_in(plan, ())
    if plan.masonry is not None:
        yield from _missing_in(plan.masonry, ("masonry",))
    if plan.own_unit is not None:
        yield from _missing_in(plan.own_unit, ("own_unit",))
    if plan.order is not None and plan.order.mix is not None:
        yield from _missing_in(plan.order.mix, ("order", "mix"))
    if plan.order is not None and plan.order.cap is not None:
        yield from _missing_in(plan.order.cap, ("order", "cap"))
    for number, item in enumerate((plan.order and plan.order.item) or ()):
        yield from _missing_in(item, ("order", "item", number))
    if plan.wall == []:
        yield Wrong(("wall",), "no wall; write [[wall]] with a name, a length and a height")
    for number, wall in enumerate(plan.wall or ()):
        yield from _missing_in(wall, ("wall", number))
        if wall.height is None and wall.courses is None:
            yield Wrong(("wall", number, "height"), f"missing; write {example_of(WallTable, 'height')}, or courses = 13")
        for key in ("opening", "step", "top_step", "gable", "abuts", "pier"):
            for place, table in enumerate(getattr(wall, key) or ()):
                yield from _missing_in(table, ("wall", number, key, place))


def _missing_in(table: Table, path: KeyPath) -> Iterator[Wrong]:
    model = type(table)
    for key in list_keys(model):
        if getattr(table, key) is None and default_of(model, key) == REQUIRED:
            yield Wrong((*path, key), f"missing; write {example_of(model, key)}")


def name_place(raw: Mapping[str, Any], path: KeyPath) -> str:
    """The table of a path in words: ``wall "North", opening "Door"``. Empty for the plan itself.

    A wall or opening without a usable name is called by its number.
    """
    words = []
    inside: Any = raw
    for place, step in enumerate(path[:-1] if isinstance(path[-1], str) else path):
        inside = inside[step] if _holds(inside, step) else None
        if isinstance(step, int) and path[place - 1] in MODELS:
            name = inside.get("name") if isinstance(inside, dict) else None
            shown = f'"{print_name(name)}"' if isinstance(name, str) and name.strip() else f"{step + 1}"
            words.append(f"{path[place - 1]} {shown}")
        elif step in (_FIRST_TABLES if place == 0 else _ORDERS_TABLES):
            words.append(str(step))
    return ", ".join(words)
