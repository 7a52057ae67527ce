"""Values that may not stand at their key: what was found, what is allowed, and what to write instead."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, get_type_hints

from wallplan.plan.found import find_nearest, make_plain, print_choices, print_found
from wallplan.plan.notebook import KeyPath, Wrong
from wallplan.plan.schema import MODELS, TABLES, PlanTable, Table, example_of, list_keys, words_of

_WANTED = {
    "string_type": "text in quotes", "int_type": "a whole number", "int_from_float": "a whole number",
    "float_type": "a number", "finite_number": "a number",
    "bool_type": "true or false", "list_type": "a list in brackets", "model_type": "a table",
    "model_attributes_type": "a table", "dict_type": "a table",
}
_CORNERS = {"outside corner": "outside external exterior outer ext outside_angle", "straight": "straight_on continues on",
            "inside corner": "inside internal interior inner int reentrant re_entrant", "end": "free free_end open stop"}
_OTHER_WORDS: dict[str, dict[str, str]] = {
    "measure": {"metric": "mm cm m millimetres millimeters metres meters si", "feet": "ft foot in inch inches imperial us"},
    "bond": {"half": "running stretcher 1/2 0.5", "common": "american", "third": "1/3", "quarter": "1/4 0.25",
             "stack": "stacked"},
    "lintel": {"precast": "concrete pcc", "steel": "angle plate iron", "block": "cmu masonry u_block bond_beam lintel_block",
               "none": "no false"},
    "left": _CORNERS, "right": _CORNERS, "face": {"outside": "front", "inside": "back"},
    "kind": {"block": "cmu blockwork", "brick": "brickwork"},
}
"""What else the words of a key are called; what is asked first is named first."""

_PAIRS = ("mortar_per_100", "output")
"""Lists of a low and a high figure: one alone is not yet right in brackets."""

_TRUE, _FALSE = frozenset({"true", "yes", "y", "on", "1"}), frozenset({"false", "no", "n", "off", "0", "none"})
_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")


def explain_value(problem: Mapping[str, Any], *, near: bool) -> Wrong:
    """A problem that the schema found, in plain words; words are sought that are near where ``near`` is True."""
    path: KeyPath = tuple(problem["loc"])
    kind, found = problem["type"], problem["input"]
    table, key = _model_at(path), str(path[-1])
    if kind == "too_long":
        limit = problem["ctx"]["max_length"]
        pair = f"more than a low and a high figure; write {example_of(table, key)}"
        return Wrong(path, pair if limit == 2 else f"more than {limit:,} are not laid; write at most {limit:,}")
    if isinstance(path[-1], int):
        table_wanted = len(path) > 1 and path[-2] in MODELS
        wanted = "a table" if table_wanted else _WANTED.get(kind, "text in quotes")
        return Wrong(path, f"{print_found(found)} is not {wanted}")
    if kind == "literal_error":
        choices = words_of(table)[key]
        hint = _hint_word(key, found, choices) if near else None
        hint = hint or f"write one of them, such as {example_of(table, key)}"
        return Wrong(path, f"{print_found(found)} is not known; allowed: {print_choices(choices)}; {hint}")
    if kind == "list_type" and key in MODELS and isinstance(found, dict):
        return Wrong(path, f"one table; write its heading in double brackets, {example_of(table, key)}")
    return Wrong(path, f"{print_found(found)} is not {_WANTED.get(kind, 'what may stand here')}; write "
                       f"{_write_instead(kind, table, key, found)}")


def _write_instead(kind: str, table: type[Table], key: str, found: object) -> str:
    """What to write for a value of the wrong kind: as it was likely meant, else the key's example."""
    example = example_of(table, key)
    if kind == "list_type" and key not in MODELS and isinstance(found, str | int | float) and key not in _PAIRS:
        return f"{key} = [{print_found(found)}]"
    if kind == "string_type" and isinstance(found, int | float) and not isinstance(found, bool) and key in ("name", "title"):
        return f'{key} = "{print_found(found)}"'
    if kind == "bool_type" and not isinstance(found, list | dict):
        said = print_found(found).strip('"').casefold()
        return f"{key} = {'false' if said in _FALSE else 'true'}" if said in _TRUE | _FALSE else f"{key} = true or false"
    numbers = _NUMBER.findall(found) if isinstance(found, str) else ()
    if kind in ("int_type", "float_type") and len(numbers) == 1 and len(numbers[0]) < 20:
        number = numbers[0].replace(",", ".")
        return f"{key} = {number}" if kind == "float_type" or number.isdigit() else example
    if kind in ("int_type", "int_from_float") and isinstance(found, float) and found.is_integer() and abs(found) < 1e9:
        return f"{key} = {found:.0f}"
    return example


def _hint_word(key: str, found: object, choices: tuple[str, ...]) -> str | None:
    """What to write in place of a word: what is also called so, what it is a word of, or the nearest. None for none."""
    if isinstance(found, list | dict):
        return None
    word = make_plain(print_found(found).strip('"')).removesuffix("_bond")
    others = _OTHER_WORDS.get(key, {})
    near = [name for name, called in others.items() if word in called.split()]
    near = near or [one for one in choices if len(word) > 3 and one.endswith(f" {word}")]
    near = near or [one for one in choices if one in word.split("_") and "garden" not in word]
    near = near or [name for name, called in others.items() if set(word.split("_")) & set(called.split())]
    near = near or [one for one in (find_nearest(word, choices),) if one]
    return f"write {key} = {print_choices(print_found(one) for one in near)}" if near else None


def kind_of(key: str) -> str:
    """What a key holds in the first table that has it: "number", "list", "yes or no", or "" for anything else and no key."""
    for _, table in TABLES:
        if key in list_keys(table):
            hint = str(get_type_hints(table)[key])
            kinds = (("list[", "list"), ("int", "number"), ("float", "number"), ("bool", "yes or no"))
            return next((kind for name, kind in kinds if hint.startswith(name)), "")
    return ""


def _model_at(path: KeyPath) -> type[Table]:
    names = [step for step in path[:-1] if isinstance(step, str)]
    return MODELS.get(names[-1], PlanTable) if names else PlanTable
