"""The cuts of a wall: each letter once, with its size, how many and what it is sawn from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import accumulate

from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, measure, wrap
from wallplan.drawing.panel import PADDING, Line, Panel, set_lines
from wallplan.drawing.primitives import Primitive, Text
from wallplan.lists.cuts import WallCut
from wallplan.lists.sawn_size import tell_count, tell_size
from wallplan.plan.job import Job

_PITCH = 1.5


@dataclass(frozen=True)
class Row:
    """One letter: size, count, whether some are sawn from what other cuts leave, and how many are hidden, in words."""

    mark: str
    size: str
    count: int
    offcut: bool
    hands: tuple[int, int] = (0, 0)
    hidden: str = ""

    @property
    def cells(self) -> tuple[str, str, str]:
        """Mark, size and count as they are lettered beside each other; the count is starred where some are from offcuts, and
        says how many the face does not show."""
        hidden = f" ({self.hidden})" if self.hidden else ""
        return self.mark, self.size, f"{tell_count(self.count, self.hands)}{'*' if self.offcut else ''}{hidden}"


def list_rows(cuts: Iterable[WallCut], job: Job, hidden: Mapping[str, str] | None = None) -> tuple[Row, ...]:
    """A wall's cuts as rows; () where nothing is sawn. ``hidden`` tells of a letter how many of its cuts no one sees."""
    return tuple(Row(cut.mark, tell_size(cut.piece, job.measure, job.masonry.unit.height), cut.times, cut.offcut, cut.hands,
                     (hidden or {}).get(cut.mark, "")) for cut in cuts)


def set_cuts(cuts: tuple[Row, ...], width: float, room: float) -> Panel:
    """The table in a panel ``width`` mm wide, lettered 5 mm high if it then stays within ``room`` mm, else 3.5 mm."""
    large = _set_table(cuts, width, LARGE_FIGURES)
    return large if large is not None and large.height <= room else _set_table(cuts, width, FIGURES) or _set_narrow(
        cuts, width)


def _set_table(cuts: tuple[Row, ...], width: float, height: float) -> Panel | None:
    """The table in as many columns as fit; None where not one fits."""
    starts = _starts(cuts, height)
    columns = int((width - PADDING) / starts[-1])
    if columns < 1:
        return None
    rows = -(-len(cuts) // columns)
    head = set_lines((Line(_head(cuts)),), width)
    texts: list[Primitive] = [*head.ink]
    for place, cut in enumerate(cuts):
        x = PADDING + place // rows * starts[-1]
        y = head.height + height + place % rows * _PITCH * height
        texts += [Text(x + start, y, words, height) for start, words in zip(starts[:3], cut.cells, strict=True)]
    return Panel(width, head.height + rows * _PITCH * height, tuple(texts))


def _starts(cuts: tuple[Row, ...], height: float) -> tuple[float, ...]:
    """Where mark, size and count start in a column of the table, and how wide the column is, mm."""
    widths = [max((measure(words, height) for words in column), default=0.0)
              for column in zip(*(cut.cells for cut in cuts), strict=True)]
    return tuple(accumulate((width + gap * height for width, gap in zip(widths, (1.0, 1.2, 2.0), strict=False)),
                            initial=0.0)) if cuts else (0.0, 0.0, 0.0, 1.0)


def _set_narrow(cuts: tuple[Row, ...], width: float) -> Panel:
    """A cut in a row or more: mark, size, and the count at the end of its last line, or under it where that is full."""
    letters = max(measure(cut.mark, FIGURES) for cut in cuts) + FIGURES
    room = width - letters - 2 * PADDING
    head = set_lines((Line(_head(cuts)),), width)
    texts: list[Primitive] = [*head.ink]
    y = head.height
    for cut in cuts:
        mark, size, count = cut.cells
        lines = [*wrap(size, FIGURES, room)]
        beside = measure(lines[-1], FIGURES) + FIGURES + measure(count, FIGURES) <= room
        texts += [Text(PADDING, y + FIGURES, mark, FIGURES),
                  *(Text(PADDING + letters, y + FIGURES * (1.0 + _PITCH * row), line, FIGURES)
                    for row, line in enumerate(lines))]
        y += FIGURES * _PITCH * (len(lines) - beside)
        texts.append(Text(width - PADDING, y + FIGURES, count, FIGURES, "end"))
        y += FIGURES * (_PITCH + 0.1)
    return Panel(width, y, tuple(texts))


def _head(cuts: tuple[Row, ...]) -> str:
    if not cuts:
        return "NO CUTS in this wall"
    kinds = " (length x height)" if any(" x " in cut.size for cut in cuts) else ""
    spare = "; * from offcuts, all or some" if any(cut.offcut for cut in cuts) else ""
    notes = {"behind": "; behind: not on this face", "in piers": "; in piers: see PIERS"}
    told = (note for words, note in notes.items() if any(words in cut.hidden for cut in cuts))
    return f"CUTS: actual size{kinds}, how many{spare}{''.join(told)}"
