"""Tables of plain text, as wide as the terminal: no colour, no boxes, so that they survive a printer and a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

GAP = 2


def set_columns(rows: Sequence[Sequence[str]], width: int, *, right: frozenset[int] = frozenset(), indent: int = 0) -> str:
    """Rows as aligned columns within ``width``; the last column wraps. ``right`` columns align right. "" for no rows."""
    if not rows:
        return ""
    count = max(len(row) for row in rows)
    filled = [[*row, *[""] * (count - len(row))] for row in rows]
    wide = [max(len(row[column]) for row in filled) for column in range(count)]
    taken = indent + sum(wide[:-1]) + GAP * (count - 1)
    room = max(20, width - taken)
    return "\n".join(line for row in filled for line in _set_row(row, wide, room, right, indent))


def _set_row(row: Sequence[str], wide: Sequence[int], room: int, right: frozenset[int], indent: int) -> list[str]:
    last = len(row) - 1
    head = " " * indent + "".join(
        (cell.rjust(wide[column]) if column in right else cell.ljust(wide[column])) + " " * GAP
        for column, cell in enumerate(row[:last])
    )
    final = row[last].rjust(wide[last]) if last in right else row[last]
    lines = textwrap.wrap(final, room, break_long_words=False, break_on_hyphens=False) or [""]
    rest = " " * len(head)
    return [((head if index == 0 else rest) + line).rstrip() for index, line in enumerate(lines)]


def wrap_text(text: str, width: int, *, indent: str = "") -> str:
    """A paragraph within ``width``, each line after the first indented two more than the first."""
    return "\n".join(textwrap.wrap(text, width, initial_indent=indent, subsequent_indent=indent + "  ",
                                   break_long_words=False, break_on_hyphens=False))
