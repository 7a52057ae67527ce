"""Tables of plain text, as wide as the terminal: no colour, no boxes, so that they survive a printer and a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from itertools import zip_longest

GAP = 2

NARROWEST = 20
"""A last column that would get less room than this stands below its row instead."""


def set_columns(rows: Sequence[Sequence[str]], width: int, *, right: frozenset[int] = frozenset(), indent: int = 0) -> str:
    """Rows as aligned columns within ``width``; "" for no rows.

    ``right`` columns align right. The last column wraps; where no room is left for it, so does the widest of the others that
    align left, or the last column stands below its row.
    """
    return "\n".join(set_rows(rows, width, right=right, indent=indent))


def set_rows(rows: Sequence[Sequence[str]], width: int, *, right: frozenset[int] = frozenset(),
             indent: int = 0) -> list[str]:
    """The rows as ``set_columns`` sets them, each of one line or more; [] for no rows."""
    count = max((len(row) for row in rows), default=0)
    filled = [[*row, *[""] * (count - len(row))] for row in rows]
    wide = [max(len(row[column]) for row in filled) for column in range(count)]
    taken = indent + sum(wide[:-1]) + GAP * (count - 1)
    least = min(NARROWEST, wide[-1]) if rows else 0
    if taken + least > width:
        left = [column for column in range(count - 1) if column not in right]
        widest = max(left, key=lambda column: wide[column], default=0)
        if not left or wide[widest] - (taken + least - width) < NARROWEST:
            return ["\n".join(_set_below(row, wide, width, right, indent)) for row in filled]
        wide[widest] -= taken + least - width
        taken = width - least
    return ["\n".join(_set_row(row, wide, max(1, width - taken), right, indent)) for row in filled]


def _set_row(row: Sequence[str], wide: Sequence[int], room: int, right: frozenset[int], indent: int) -> list[str]:
    last = len(row) - 1
    heads = _set_heads(row, wide, right, indent)
    final = row[last].rjust(wide[last]) if last in right else row[last]
    lines = _wrap(final, room) or [""]
    heads += [" " * len(heads[0])] * (len(lines) - len(heads))
    return [(head + line).rstrip() for head, line in zip_longest(heads, lines, fillvalue="")]


def _set_below(row: Sequence[str], wide: Sequence[int], width: int, right: frozenset[int], indent: int) -> list[str]:
    below = " " * (indent + 2 * GAP)
    under = _wrap(row[-1], width, below, below)
    return [*(head.rstrip() for head in _set_heads(row, wide, right, indent)), *under]


def _set_heads(row: Sequence[str], wide: Sequence[int], right: frozenset[int], indent: int) -> list[str]:
    """All columns of a row but the last, each within its width: a line, or as many as a long cell takes."""
    cells = [_wrap_cell(cell, wide[column]) for column, cell in enumerate(row[:-1])]
    return [" " * indent + "".join(
        (part.rjust(wide[column]) if column in right else part.ljust(wide[column])) + " " * GAP
        for column, part in enumerate(parts)) for parts in zip_longest(*cells, fillvalue="")] or [" " * indent]


def _wrap_cell(cell: str, wide: int) -> list[str]:
    if len(cell) <= wide:
        return [cell]
    return _wrap(cell, wide, "", " " * (len(cell) - len(cell.lstrip()) + GAP))


def wrap_text(text: str, width: int, *, indent: str = "") -> str:
    """A paragraph within ``width``, each line after the first indented two more than the first."""
    return "\n".join(_wrap(text, width, indent, indent + "  "))


def _wrap(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """Lines of at most ``width``. A word that is longer is broken, but an address, which is to be copied, is not."""
    return textwrap.wrap(text, width, initial_indent=first, subsequent_indent=rest, break_long_words="://" not in text,
                         break_on_hyphens=False)
