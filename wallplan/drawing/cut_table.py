"""The cuts of a wall: each letter once, with its size, how many and what it is sawn from."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, measure
from wallplan.drawing.panel import PADDING, Panel
from wallplan.drawing.primitives import Text
from wallplan.layout.model import Piece, WallLayout
from wallplan.lengths import print_size
from wallplan.plan.job import Job

_PITCH = 1.5


@dataclass(frozen=True)
class Cut:
    """One letter: size, count and stock in words."""

    mark: str
    size: str
    count: int
    stock: str

    @property
    def words(self) -> str:
        """Size, count and stock as they are lettered after the mark."""
        return f"{self.size}   {self.count} from {self.stock}"


def list_cuts(wall: WallLayout, job: Job) -> tuple[Cut, ...]:
    """The wall's cuts in the order of their letters; () where nothing is sawn."""
    counts: dict[str, int] = {}
    samples: dict[str, Piece] = {}
    for course in wall.courses:
        for piece in course.pieces:
            if piece.mark:
                counts[piece.mark] = counts.get(piece.mark, 0) + 1
                samples.setdefault(piece.mark, piece)
    order = sorted(counts, key=lambda mark: (len(mark), mark))
    return tuple(Cut(mark, _print_cut(samples[mark], job), counts[mark], _name_stock(samples[mark], job))
                 for mark in order)


def _print_cut(piece: Piece, job: Job) -> str:
    length = print_size(piece.length, job.measure)
    if piece.height == job.masonry.unit.height:
        return length
    return f"{length} x {print_size(piece.height, job.measure)} high"


def _name_stock(piece: Piece, job: Job) -> str:
    """A piece over half a unit takes a full one; of a shorter one the rest may serve again."""
    ripped = ", ripped" if piece.height < job.masonry.unit.height else ""
    return f"full{ripped}" if 2 * piece.length > job.masonry.unit.length else f"full or offcut{ripped}"


def set_cuts(cuts: tuple[Cut, ...], width: float, room: float) -> Panel:
    """The table in a panel ``width`` mm wide, lettered 5 mm high if it then stays within ``room`` mm, else 3.5 mm."""
    large = _set_table(cuts, width, LARGE_FIGURES)
    return large if large is not None and large.height <= room else _set_table(cuts, width, FIGURES) or _set_narrow(
        cuts, width)


def _set_table(cuts: tuple[Cut, ...], width: float, height: float) -> Panel | None:
    """The table in as many columns as fit; None where not one fits."""
    letters = max((measure(cut.mark, height) for cut in cuts), default=0.0) + height
    column = letters + max((measure(cut.words, height) for cut in cuts), default=0.0) + 1.5 * height
    columns = int((width - PADDING) / column)
    if columns < 1:
        return None
    rows = -(-len(cuts) // columns)
    head = Text(PADDING, PADDING + SMALLEST, _head(cuts), SMALLEST)
    top = PADDING + SMALLEST + 2.0
    texts = [head]
    for place, cut in enumerate(cuts):
        x = PADDING + place // rows * column
        y = top + height + place % rows * _PITCH * height
        texts += [Text(x, y, cut.mark, height), Text(x + letters, y, cut.words, height)]
    return Panel(width, top + rows * _PITCH * height, tuple(texts))


def _set_narrow(cuts: tuple[Cut, ...], width: float) -> Panel:
    """Two rows a cut: letter and size over count and stock."""
    letters = max(measure(cut.mark, FIGURES) for cut in cuts) + FIGURES
    texts = [Text(PADDING, PADDING + SMALLEST, _head(cuts), SMALLEST)]
    y = PADDING + SMALLEST + 2.0
    for cut in cuts:
        texts += [Text(PADDING, y + FIGURES, cut.mark, FIGURES),
                  Text(PADDING + letters, y + FIGURES, cut.size, FIGURES),
                  Text(PADDING + letters, y + FIGURES * 2.5, f"{cut.count} from {cut.stock}", FIGURES)]
        y += FIGURES * 3.1
    return Panel(width, y, tuple(texts))


def _head(cuts: tuple[Cut, ...]) -> str:
    return "CUTS: actual size, how many in this wall" if cuts else "NO CUTS in this wall"
