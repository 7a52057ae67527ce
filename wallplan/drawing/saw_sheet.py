"""The saw list as a sheet: each cut drawn to scale in the unit that it is sawn from, one saw setting after the other."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from wallplan.drawing.cautions import DUST
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import tie
from wallplan.drawing.packing import Stand, pack
from wallplan.drawing.paper import Paper, Scale, find_paper
from wallplan.drawing.pole_sheet import POLE_SCALES
from wallplan.drawing.primitives import Page
from wallplan.drawing.saw_card import Card, draw_card
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lengths import Measure, print_size
from wallplan.lists.cuts import Cut, list_cuts
from wallplan.lists.order.line import Sawing
from wallplan.lists.order.notes import tell_nesting
from wallplan.lists.order.sawing import nest_cuts

CARD_SCALES: dict[Measure, tuple[Scale, ...]] = {
    "feet": (Scale("3 in = 1 ft", 4), Scale("1 1/2 in = 1 ft", 8), *POLE_SCALES["feet"]),
    "metric": (Scale("1:5", 5), *POLE_SCALES["metric"]),
}
"""A unit is small: it has room for the scales of details."""

LARGEST_UNIT = 55.0
"""A unit is drawn at most this long, mm."""

SMALLEST_UNIT = 25.0
"""... and at least this long, mm, where that spares a sheet."""

MOST_SHEETS = 40

INSET = 1.5
"""Between the border and a card's lines, mm."""


def plan_saw_sheets(layout: Layout, paper: str | None, sawings: tuple[Sawing, ...] | None = None) -> tuple[Draft, ...]:
    """The saw list's sheets; () where nothing is cut. Raises UnknownPaper. ``sawings`` as ``list_cuts`` takes them."""
    sheet = find_paper(paper, layout.job.measure)
    cuts = list_cuts(layout, sawings)
    if not cuts:
        return ()
    heading = _make_heading(layout, cuts, tell_nesting(nest_cuts(layout) if sawings is None else sawings))
    way, scale, sheets = _choose(layout, cuts, heading, sheet)
    return tuple(Draft("Saw list", (number, len(sheets)), partial(_draw_page, layout, cuts, heading, (way, scale), stands))
                 for number, stands in enumerate(sheets, start=1))


def _choose(layout: Layout, cuts: tuple[Cut, ...], heading: Heading,
            paper: Paper) -> tuple[Paper, Scale, tuple[tuple[Stand, ...], ...]]:
    """The paper held, and a scale whose units are drawn neither too long nor too small, that take the fewest sheets; the
    largest of such scales."""
    scales, length = CARD_SCALES[layout.job.measure], layout.job.masonry.unit.length
    found: list[tuple[Paper, Scale, tuple[tuple[Stand, ...], ...]]] = []
    for scale in scales:
        if scale.on_paper(length) > LARGEST_UNIT and scale != scales[-1]:
            continue
        if found and scale.on_paper(length) < SMALLEST_UNIT:
            break
        sizes = [_make_card(layout, cut, scale, 0, 0).size for cut in cuts]
        for way in (paper, paper.turned()):
            room = find_room(layout, way, heading, scale)
            sheets = pack(sizes, room.width - INSET, room.height)
            if sheets:
                found.append((way, scale, sheets[:MOST_SHEETS]))
    if found:
        return min(found, key=lambda choice: len(choice[2]))
    return paper, scales[-1], tuple((Stand(number, 0.0, 0.0),) for number in range(min(len(cuts), MOST_SHEETS)))


def _make_card(layout: Layout, cut: Cut, scale: Scale, x: float, y: float) -> Card:
    return Card(cut, layout.job.masonry, layout.job.measure, scale, layout.job.order.kerf, x, y)


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'s' * (number != 1)}"


def _make_heading(layout: Layout, cuts: tuple[Cut, ...], nested: Iterable[str]) -> Heading:
    kerf = tie(print_size(layout.job.order.kerf, layout.job.measure))
    total, spared = sum(cut.count for cut in cuts), sum(cut.served for cut in cuts)
    told = (
        f"{_count(total, 'cut')} in {_count(len(cuts), 'saw setting')}, the longest first; {spared or 'none'} from offcuts. "
        f"Kerf {kerf}, black.",
        "Heavy outline: what is kept. Hatched: what is left. Set the saw once, saw one, lay it dry, then the rest; tick.",
        *nested,
    )
    return Heading("SAW LIST", "Each unit seen on its face. Actual sizes.", told, DUST, layout.walls)


def _draw_page(layout: Layout, cuts: tuple[Cut, ...], heading: Heading, drawn: tuple[Paper, Scale],
               stands: tuple[Stand, ...], place: Sheet) -> Page:
    paper, scale = drawn
    board = frame_sheet(layout, paper, heading, scale, place)
    room = find_room(layout, paper, heading, scale)
    for stand in stands:
        draw_card(board, _make_card(layout, cuts[stand.number], scale, room.left + INSET + stand.x, room.top + stand.y))
    told = "; ".join(f"{cut.mark} {print_size(cut.length, layout.job.measure)}, {cut.count} from {cut.stock}"
                     for cut in (cuts[stand.number] for stand in stands))
    return make_page(layout, board, "saw-list", heading, place, f"Saw list: {told}.")
