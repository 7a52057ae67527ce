"""Holds a plan's tables against the schema: unknown keys, wrong types, words that are not allowed, missing keys."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic_core import ValidationError

from wallplan.plan.abuts_schema import AbutsTable, PierTable
from wallplan.plan.found import find_nearest, print_choices, print_found, print_name
from wallplan.plan.notebook import KeyPath, Wrong
from wallplan.plan.order_schema import CapTable, ItemTable, MixTable, OrderTable, SteelTable
from wallplan.plan.outline_schema import GableTable, StepTable, TopStepTable
from wallplan.plan.schema import (
    REQUIRED,
    TABLES,
    AdviceTable,
    MasonryTable,
    OpeningTable,
    OwnUnitTable,
    PlanTable,
    Table,
    TeachingTable,
    WallTable,
    default_of,
    example_of,
    list_keys,
    read_table,
)

_WANTED = {
    "string_type": "text in quotes", "int_type": "a whole number", "int_from_float": "a whole number",
    "float_type": "a number", "finite_number": "a number",
    "bool_type": "true or false", "list_type": "a list in brackets", "model_type": "a table",
    "model_attributes_type": "a table", "dict_type": "a table",
}
_MOST_HINTS = 200
"""Looking for the nearest word takes time: in a file with more mistakes than this, the later ones go without."""

_FIRST_TABLES, _ORDERS_TABLES = ("masonry", "own_unit", "advice", "teaching", "order"), ("mix", "steel", "cap")
"""Tables that a place is called by: a plan's and its order's."""

_MODELS: dict[str, type[Table]] = {
    "masonry": MasonryTable, "own_unit": OwnUnitTable, "wall": WallTable, "opening": OpeningTable,
    "step": StepTable, "top_step": TopStepTable, "gable": GableTable, "abuts": AbutsTable, "pier": PierTable,
    "order": OrderTable, "mix": MixTable, "steel": SteelTable, "cap": CapTable, "item": ItemTable,
    "advice": AdviceTable, "teaching": TeachingTable,
}


def read_shape(raw: dict[str, Any]) -> tuple[PlanTable, tuple[Wrong, ...]]:
    """The plan as far as its keys and types are right, and all that is wrong with them.

    A value that is wrong is left out of the plan, as if it were not given; nothing is reported as missing for it.
    """
    wrongs: tuple[Wrong, ...] = ()
    try:
        plan = read_table(PlanTable, raw)
    except ValidationError as error:
        problems = error.errors(include_url=False)
        wrongs = tuple(_explain(problem, near=number < _MOST_HINTS) for number, problem in enumerate(problems))
        plan = read_table(PlanTable, _without(raw, wrongs))
    wrong_paths = {wrong.path for wrong in wrongs}
    missing = tuple(wrong for wrong in _find_missing(plan) if not _covered(wrong.path, wrong_paths)
                    and not (wrong.path[-1] == "height" and (*wrong.path[:-1], "courses") in wrong_paths))
    return plan, wrongs + missing


def _covered(path: KeyPath, wrong_paths: set[KeyPath]) -> bool:
    return any(path[:end] in wrong_paths for end in range(1, len(path) + 1))


def _without(value: Any, wrongs: tuple[Wrong, ...]) -> Any:
    """A copy of the plan's tables without the values at the wrong paths.

    A table in a list becomes an empty one, so that its neighbours keep their places; any other list goes as a whole.
    """
    bare = _copy_tables(value)
    for wrong in wrongs:
        *around, last = wrong.path
        if isinstance(last, int) and around[-1] not in _MODELS:
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


def _explain(problem: Mapping[str, Any], *, near: bool) -> Wrong:
    path: KeyPath = tuple(problem["loc"])
    kind, found = problem["type"], problem["input"]
    table, key = _model_at(path), str(path[-1])
    if kind == "extra_forbidden":
        return Wrong(path, _explain_unknown(key, table) if near else "unknown key")
    if kind == "too_long":
        limit = problem["ctx"]["max_length"]
        return Wrong(path, f"more than {limit:,} are not laid; write at most {limit:,}")
    if isinstance(path[-1], int):
        table_wanted = len(path) > 1 and path[-2] in _MODELS
        wanted = "a table" if table_wanted else _WANTED.get(kind, "text in quotes")
        return Wrong(path, f"{print_found(found)} is not {wanted}")
    if kind == "literal_error":
        choices = _choices(problem["ctx"]["expected"])
        hint = _hint_word(key, found, choices) if near and isinstance(found, str) else None
        hint = hint or f"write {example_of(table, key)}"
        return Wrong(path, f"{print_found(found)} is not known; allowed: {print_choices(choices)}; {hint}")
    if kind == "list_type" and key in _MODELS and isinstance(found, dict):
        heading = example_of(table, key)
        return Wrong(path, f"one table; write its heading in double brackets, {heading}")
    wanted = _WANTED.get(kind, "what may stand here")
    single = kind == "list_type" and key not in _MODELS and isinstance(found, str | int | float)
    example = f"{key} = [{print_found(found)}]" if single else example_of(table, key)
    return Wrong(path, f"{print_found(found)} is not {wanted}; write {example}")


_METRIC_WORDS = frozenset({"mm", "cm", "m", "millimetres", "millimeters", "metres", "meters", "si"})


def _hint_word(key: str, found: str, choices: tuple[str, ...]) -> str | None:
    """What to write in place of a word: those that it is the end of, or the nearest. None where none is near."""
    word = found.strip().casefold()
    if key == "measure" and word in _METRIC_WORDS:
        return 'write measure = "metric"'
    whole = [choice for choice in choices if len(word) > 3 and choice.endswith(f" {word}")]
    near = whole or [one for one in (find_nearest(found, choices),) if one]
    return f"write {key} = {print_choices(print_found(one) for one in near)}" if near else None


def _choices(expected: str) -> tuple[str, ...]:
    return tuple(part.strip(" '") for part in expected.replace(" or ", ",").split(","))


def _model_at(path: KeyPath) -> type[Table]:
    names = [step for step in path[:-1] if isinstance(step, str)]
    return _MODELS.get(names[-1], PlanTable) if names else PlanTable


def _explain_unknown(key: str, table: type[Table]) -> str:
    known = list_keys(table)
    if "angle" in key.casefold() and table is WallTable:
        return "walls are laid that meet square, at outside and inside corners; a wall at another angle is written as one " \
               "that stands free, and its corner set out by hand: leave this out"
    for heading, other in TABLES:
        if key in list_keys(other):
            nested = f", below a heading [[wall.{key}]]" if other is WallTable and key in _MODELS else ""
            return f"unknown key here; it belongs {f'under {heading}{nested}' if heading else 'above the first heading'}"
    if near := find_nearest(key, known):
        return f"unknown key; the nearest is {near}"
    return f"unknown key; known here: {print_choices(known)}"


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
        if isinstance(step, int) and path[place - 1] in _MODELS:
            name = inside.get("name") if isinstance(inside, dict) else None
            shown = f'"{print_name(name)}"' if isinstance(name, str) and name.strip() else f"{step + 1}"
            words.append(f"{path[place - 1]} {shown}")
        elif step in (_FIRST_TABLES if place == 0 else _ORDERS_TABLES):
            words.append(str(step))
    return ", ".join(words)
