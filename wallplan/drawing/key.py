"""The key: what hatches and lines mean, of those that stand on the wall."""

from __future__ import annotations

from wallplan.drawing.elevation import BEAM_DASH, LINTEL_LINE, MATCH_DASH
from wallplan.drawing.hatching import hatch_cut, hatch_half, hatch_part
from wallplan.drawing.lettering import SMALLEST, measure
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.panel import PADDING, Panel
from wallplan.drawing.primitives import Box, Outlines, Primitive, Segment, Strokes, Text, move
from wallplan.drawing.tally import Tally
from wallplan.layout.model import WallLayout

_SAMPLE = Box(0, 0, 8.0, 4.2)
_PITCH = 6.0


def set_key(wall: WallLayout, counted: Tally, width: float, *, split: bool = False) -> Panel:
    """The key in a panel ``width`` mm wide, in rows; an empty panel where the wall is all whole units. ``split`` is whether
    match lines stand on the sheet."""
    x, y = PADDING, PADDING
    ink: list[Primitive] = []
    entries = _entries(wall, counted)
    if split:
        entries.append(("match line", [Strokes((Segment(0, 2.1, 8, 2.1),), HEAVY_LINE, MATCH_DASH)]))
    for words, sample in entries:
        taken = _SAMPLE.width + 1.5 + measure(words, SMALLEST)
        if x > PADDING and x + taken > width - PADDING:
            x, y = PADDING, y + _PITCH
        ink += [move(item, x, y) for item in sample]
        ink.append(Text(x + _SAMPLE.width + 1.5, y + (_SAMPLE.height + SMALLEST) / 2, words, SMALLEST))
        x += taken + 4.0
    return Panel(width, y + _PITCH if ink else 0.0, tuple(ink))


def _entries(wall: WallLayout, counted: Tally) -> list[tuple[str, list[Primitive]]]:
    names = {kind for kind, _ in counted.kinds}
    inner = _SAMPLE.shrunk(UNIT_LINE / 2)
    box = Outlines((_SAMPLE,), UNIT_LINE)
    middle = (Segment(0, 2.1, 8, 2.1),)
    entries: list[tuple[str, list[Primitive]]] = []
    if names & {"cut", "closer"}:
        entries.append(("cut, see its letter", [box, Strokes(tuple(hatch_cut(inner, None)), THIN_LINE)]))
    if "half" in names:
        entries.append(("half", [box, Strokes(tuple(hatch_half(inner)), THIN_LINE)]))
    if names & {"three-quarter", "quarter"}:
        entries.append(("three-quarter or quarter", [box, Strokes(tuple(hatch_part(inner)), THIN_LINE)]))
    if counted.led:
        stair = (Segment(0, 4.2, 2, 4.2), Segment(2, 4.2, 2, 2.1), Segment(2, 2.1, 6, 2.1), Segment(6, 2.1, 6, 0))
        entries.append(("edge of a lead", [Strokes(stair, HEAVY_LINE)]))
    if wall.wall.bond_beams:
        entries.append(("bond beam", [box, Strokes(middle, UNIT_LINE, BEAM_DASH)]))
    if counted.shapes & {"lintel", "precast"}:
        entries.append(("lintel", [Outlines((_SAMPLE,), LINTEL_LINE + 0.2)]))
    if wall.wall.control_joints:
        entries.append(("CJ control joint", [Strokes((Segment(3, 0, 3, 4.2), Segment(4, 0, 4, 4.2)), UNIT_LINE)]))
    return entries
