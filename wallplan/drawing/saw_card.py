"""One cut as it is sawn: the unit to scale with what is kept, the kerf and the offcut, how many, and a box to tick."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from wallplan.drawing.board import Board
from wallplan.drawing.hatching import hatch_half
from wallplan.drawing.lettering import (
    DOTS,
    FIGURES,
    LARGE_FIGURES,
    SMALLEST,
    centre_text,
    clean,
    measure,
    measure_text,
    wrap,
)
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Anchor, Area, Box, Segment, Text
from wallplan.drawing.wall_shape import hatch_rest
from wallplan.layout.explain import print_courses
from wallplan.layout.model import Piece
from wallplan.lengths import Measure, print_size
from wallplan.lists.cuts import Cut
from wallplan.lists.sawn_size import tell_count, tell_size
from wallplan.plan.job import Masonry

TITLE_HEIGHT = 7.0
"""Of a cut's letter, mm."""

WIDEST = 74.0
"""Of a card's words, mm."""

_GAP = 8.0
_TICK = 6.0
_HEAD = 11.0
_LINE = 4.2


@dataclass(frozen=True)
class Card:
    """A cut at a scale, its upper left corner at (``x``, ``y``) on the sheet, mm."""

    cut: Cut
    masonry: Masonry
    measured: Measure
    scale: Scale
    kerf: int
    x: float
    y: float

    @property
    def stock(self) -> tuple[int, int]:
        """Length and height of the unit that it is sawn from, ticks."""
        unit = self.masonry.unit
        name = self.cut.stock.removeprefix("half-high ")
        length = next((piece.length for piece in unit.pieces if piece.name == name), unit.length)
        low = self.cut.stock != name and unit.half_high is not None
        return max(length, self.cut.length), unit.half_high if low and unit.half_high else unit.height

    @property
    def head(self) -> tuple[str, str]:
        """Size and count as they are lettered beside the letter."""
        size, sample = print_size(self.cut.length, self.measured), self.cut.sample
        if sample is not None and sample.notch is not None:
            size = tell_size(sample, self.measured, self.masonry.unit.height)
        elif sample is not None and sample.rake is not None:
            size += f" / {print_size(sample.rake.top_length, self.measured)}"
        elif self.cut.height is not None:
            size += f" x {print_size(self.cut.height, self.measured)} high"
        own = self.cut.count - self.cut.served
        return size, f"saw {own}" if own else f"{self.cut.count} from offcuts"

    @property
    def lines(self) -> tuple[str, ...]:
        """What is told under the unit."""
        cut = self.cut
        source = cut.stock if cut.served < cut.count else f"offcuts of {cut.stock}"
        lines = [f"From {source}, {cut.shape}.", *_tell_rake(self), _tell_end(cut),
                 f"{clean(', '.join(cut.walls))}: {_tell_courses(cut)}."]
        if cut.offcut:
            served = f": saw {cut.serves} from it" if cut.serves else ""
            lines.append(f"Offcut {print_size(cut.offcut, self.measured)}{served}.")
        if 0 < cut.served < cut.count:
            lines.append(f"{cut.served} more of {cut.count} from offcuts.")
        return tuple(part for line in lines for part in wrap(line, SMALLEST, WIDEST))

    @property
    def size(self) -> tuple[float, float]:
        """Width and height with all lettering, mm."""
        length, height = (self.scale.on_paper(ticks) for ticks in self.stock)
        told = max(measure(line, SMALLEST) for line in self.lines)
        head = _starts(self)[2] + _TICK
        return max(length, told, head) + _GAP, _HEAD + height + _LINE * len(self.lines) + _GAP


def _starts(card: Card) -> tuple[float, float, float]:
    """Where size, count and box begin, from the card's left, mm."""
    size = measure(card.cut.mark, TITLE_HEIGHT) + 3.5
    count = size + measure(card.head[0], LARGE_FIGURES) + 4.0
    return size, count, count + measure(card.head[1], LARGE_FIGURES) + 3.0


def _tell_courses(cut: Cut) -> str:
    return print_courses(list(cut.courses)).replace("…", DOTS)


def _tell_rake(card: Card) -> list[str]:
    """Both lengths of a raked cut, and how many are of which hand."""
    sample = card.cut.sample
    if sample is None or sample.rake is None:
        return []
    size = tell_size(sample, card.measured, card.masonry.unit.height)
    return [f"{size[0].upper()}{size[1:]}.", f"Raked cuts {tell_count(card.cut.count, card.cut.hands)}."]


def _tell_end(cut: Cut) -> str:
    """Which end or side is sawn."""
    if cut.sample is not None and cut.sample.rake is not None:
        return "Left hand shown."
    if cut.sample is not None and cut.sample.notch is not None:
        return "Notch it underneath."
    if cut.height is not None:
        return "Saw off the top; the sawn side to the mortar."
    if cut.shape == "closer":
        return "Rip it along its length; the sawn side to the header."
    if cut.shape in ("corner", "sash"):
        return "Moulded end outward, sawn end inward."
    return "Either end may be sawn."


def draw_card(board: Board, card: Card) -> None:
    """Draw a cut."""
    base = card.y + TITLE_HEIGHT + 0.6
    size, count, box = (card.x + start for start in _starts(card))
    board.letter(Text(card.x, base, card.cut.mark, TITLE_HEIGHT), Text(size, base, card.head[0], LARGE_FIGURES),
                 Text(count, base, card.head[1], LARGE_FIGURES))
    board.outline([Box(box, base - _TICK, box + _TICK, base)], UNIT_LINE)
    top = card.y + _HEAD
    _draw_unit(board, card, top)
    low = top + card.scale.on_paper(card.stock[1]) + 1.2
    for number, line in enumerate(card.lines):
        board.letter(Text(card.x, low + number * _LINE + SMALLEST + 0.6, line, SMALLEST))


def _draw_unit(board: Board, card: Card, top: float) -> None:
    """The whole unit, what is kept of it in a heavy line, the kerf in black and the rest hatched."""
    length, height = (card.scale.on_paper(ticks) for ticks in card.stock)
    kept_wide = card.scale.on_paper(card.cut.length)
    kept_high = height if card.cut.height is None else card.scale.on_paper(card.cut.height)
    kerf = card.scale.on_paper(card.kerf)
    unit = Box(card.x, top, card.x + length, top + height)
    kept = Box(unit.left, unit.bottom - kept_high, unit.left + kept_wide, unit.bottom)
    board.outline([unit], UNIT_LINE)
    if card.cut.sample is not None and (card.cut.sample.rake or card.cut.sample.notch):
        _draw_shape(board, card, card.cut.sample, unit)
        return
    rest = []
    if unit.right - kept.right > kerf:
        board.ink.append(Area(Box(kept.right, unit.top, kept.right + kerf, unit.bottom), "black"))
        rest.append(Box(kept.right + kerf, unit.top, unit.right, unit.bottom))
    if kept.top - unit.top > kerf:
        board.ink.append(Area(Box(unit.left, kept.top - kerf, kept.right, kept.top), "black"))
        rest.append(Box(unit.left, unit.top, kept.right, kept.top - kerf))
    board.stroke([line for box in rest for line in hatch_half(box.shrunk(UNIT_LINE / 2)) if box.width > 0.7 < box.height],
                 THIN_LINE)
    board.outline([kept.shrunk(HEAVY_LINE / 2)], HEAVY_LINE)
    for letter in (LARGE_FIGURES, FIGURES):
        text = centre_text(kept, card.cut.mark, letter)
        if kept.shrunk(1.0).holds(measure_text(text)):
            board.letter(text)
            break


def _draw_shape(board: Board, card: Card, piece: Piece, unit: Box) -> None:
    """A raked or notched cut in its unit: what is kept in a heavy line, its letter in the widest part of it."""
    places = [(0, 0), (0, piece.height), (piece.length, piece.height), (piece.length, 0)]
    if piece.rake is not None:
        rake = piece.rake
        places = [(0, 0), (0, rake.left), (rake.top_left, piece.height), (rake.top_right, piece.height),
                  (piece.length, rake.right), (piece.length, 0)]
    if piece.notch is not None:
        notch = piece.notch
        cut = [(notch.right, 0), (notch.right, notch.height), (notch.left, notch.height), (notch.left, 0)]
        places = [place for place in (*places, *cut) if not (place == (0, 0) and notch.left == 0)
                  and not (place == (piece.length, 0) and notch.right == piece.length)]
    corners = [(unit.left + card.scale.on_paper(x), unit.bottom - card.scale.on_paper(y)) for x, y in places]
    board.stroke(hatch_rest(hatch_half(unit.shrunk(UNIT_LINE / 2)), unit, corners), THIN_LINE)
    board.stroke([Segment(*one, *other) for one, other in pairwise((*corners, corners[0])) if one != other], HEAVY_LINE)
    width = card.scale.on_paper(piece.length)
    x = {"right": 1.8, "ridge": width / 2}.get(piece.hand or "", width - 1.8)
    anchors: dict[str, Anchor] = {"right": "start", "ridge": "middle"}
    board.letter(Text(unit.left + x, unit.bottom - 1.8, card.cut.mark, FIGURES, anchors.get(piece.hand or "", "end")))
