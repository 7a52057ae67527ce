"""A plan's tables as they were likely meant: what hangs on a misspelt key is told with it, and not told as missing."""

from __future__ import annotations

from typing import Any, NamedTuple

from wallplan.plan.found import make_plain
from wallplan.plan.notebook import KeyPath, Wrong
from wallplan.plan.schema import MODELS, PlanTable, Table, list_keys, words_of
from wallplan.plan.unknown_key import counts_as, explain_unknown

_MOST_HINTS = 200
"""Looking for what was meant takes time: in a file with more unknown keys than this, the later ones go without."""


class Mended(NamedTuple):
    """The tables without unknown keys, what is told of those, and which path was taken for which, in that order.

    ``instead`` are the paths of known keys that are not missing, as an unknown one stands in their place.
    """

    tables: dict[str, Any]
    wrongs: list[Wrong]
    taken_for: list[tuple[KeyPath, KeyPath]]
    instead: set[KeyPath]


def mend(raw: dict[str, Any]) -> Mended:
    """The plan's tables as meant; ``raw`` stays as it is. A word known but for big letters and hyphens is that word."""
    mended = Mended({}, [], [], set())
    mended.tables.update(_mend_table(raw, PlanTable, (), mended))
    return mended


def _mend_table(raw: dict[str, Any], table: type[Table], path: KeyPath, mended: Mended) -> dict[str, Any]:
    known, words = list_keys(table), words_of(table)
    given = {key: value for key, value in raw.items() if key in known}
    for key, value in raw.items():
        if key not in known:
            _take_unknown(key, value, table, path, given, mended)
    return {key: _mend_value(key, value, words.get(key, ()), (*path, key), mended) for key, value in given.items()}


def _take_unknown(key: str, value: Any, table: type[Table], path: KeyPath, given: dict[str, Any], mended: Mended) -> None:
    where = (*path, key)
    if len(mended.wrongs) >= _MOST_HINTS:
        mended.wrongs.append(Wrong(where, "unknown key"))
        return
    meant = explain_unknown(key, table, value)
    mended.wrongs.append(Wrong(where, meant.said))
    mended.instead.update((*path, one) for one in meant.instead_of)
    if meant.key is not None and counts_as(meant, table, given, value):
        given[meant.key] = value
        mended.taken_for.append((where, (*path, meant.key)))


def _mend_value(key: str, value: Any, words: tuple[str, ...], path: KeyPath, mended: Mended) -> Any:
    if isinstance(value, str) and value not in words:
        return next((word for word in words if make_plain(word) == make_plain(value)), value)
    if key in MODELS and isinstance(value, dict):
        return _mend_table(value, MODELS[key], path, mended)
    if isinstance(value, list):
        return [_mend_table(one, MODELS[key], (*path, number), mended) if key in MODELS and isinstance(one, dict) else one
                for number, one in enumerate(value)]
    return value
