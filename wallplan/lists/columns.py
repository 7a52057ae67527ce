"""Tables of plain text, as wide as the terminal: no colour, no boxes, so that they survive a printer and a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

GAP = 2

NARROWEST = 20
"""A last column that would get less room than this stands below its row instead."""


def set_columns(rows: Sequence[Sequence[str]], width: int, *, right: frozenset[int] = frozenset(), indent: int = 0) -> str:
    """Rows as aligned columns within ``width``; the last column wraps, or stands below its row where no room is left for it.

    ``right`` columns align right. "" for no rows.
    """
    if not rows:
        return ""
    count = max(len(row) for row in rows)
    filled = [[*row, *[""] * (count - len(row))] for row in rows]
    wide = [max(len(row[column]) for row in filled) for column in range(count)]
    taken = indent + sum(wide[:-1]) + GAP * (count - 1)
    room = width - taken
    if room < min(NARROWEST, wide[-1]):
        return "\n".join(line for row in filled for line in _set_below(row, wide, width, right, indent))
    return "\n".join(line for row in filled for line in _set_row(row, wide, max(1, room), right, indent))


def _set_row(row: Sequence[str], wide: Sequence[int], room: int, right: frozenset[int], indent: int) -> list[str]:
    last = len(row) - 1
    head = _set_head(row, wide, right, indent)
    final = row[last].rjust(wide[last]) if last in right else row[last]
    lines = textwrap.wrap(final, room, break_long_words=False, break_on_hyphens=False) or [""]
    rest = " " * len(head)
    return [((head if index == 0 else rest) + line).rstrip() for index, line in enumerate(lines)]


def _set_below(row: Sequence[str], wide: Sequence[int], width: int, right: frozenset[int], indent: int) -> list[str]:
    below = " " * (indent + 2 * GAP)
    under = textwrap.wrap(row[-1], width, initial_indent=below, subsequent_indent=below, break_long_words=False,
                          break_on_hyphens=False)
    return [_set_head(row, wide, right, indent).rstrip(), *under]


def _set_head(row: Sequence[str], wide: Sequence[int], right: frozenset[int], indent: int) -> str:
    """All columns of a row but the last."""
    return " " * indent + "".join(
        (cell.rjust(wide[column]) if column in right else cell.ljust(wide[column])) + " " * GAP
        for column, cell in enumerate(row[:-1])
    )


def wrap_text(text: str, width: int, *, indent: str = "") -> str:
    """A paragraph within ``width``, each line after the first indented two more than the first."""
    return "\n".join(textwrap.wrap(text, width, initial_indent=indent, subsequent_indent=indent + "  ",
                                   break_long_words=False, break_on_hyphens=False))
