"""Pieces: none under the least, none longer than the unit, none called by a stock length that it has not."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from wallplan.findings import Finding
from wallplan.plan.job import Masonry
from wallplan.rules.as_laid import HEAD, ROUNDING, AsLaid, Ints
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import LEAST_PIECE

PARTS = {"half": (1, 2), "quarter": (1, 4), "three-quarter": (3, 4)}

THINNEST_RIP = 24_000
"""25 mm: a rip lower than this breaks in the saw; common practice, no source."""


def check_pieces(wall: AsLaid) -> tuple[Finding, ...]:
    """Lengths against the least piece, the unit and the stock. Precast and returns' ends are left out, and so are headers
    and closers, which ``headers`` judges."""
    masonry = wall.masonry
    least = size(wall, masonry.least_piece)
    judged = np.flatnonzero(~np.isin(wall.shape, ("precast", "return", "header", "closer")))
    if not len(judged):
        return (report_held(wall, "least piece", LEAST_PIECE, "no pieces", least),)
    length = (wall.right - wall.left)[judged]
    breaks = [
        *_too_short(wall, judged, length), *_too_thin(wall, judged), *_too_long(wall, judged, length),
        *_misnamed(wall, judged, length),
    ]
    figure = size(wall, length.min() + masonry.joint)
    return report_breaks(wall, "least piece", LEAST_PIECE, breaks) or (
        report_held(wall, "least piece", LEAST_PIECE, figure, least),
    )


def _too_short(wall: AsLaid, judged: Ints, length: Ints) -> Iterator[Break]:
    masonry = wall.masonry
    for index in np.flatnonzero(length + masonry.joint < masonry.least_piece - ROUNDING).tolist():
        piece, nominal = int(judged[index]), int(length[index]) + masonry.joint
        yield Break(
            int(wall.course[piece]), int(wall.left[piece]), exact(wall, nominal, masonry.least_piece),
            size(wall, masonry.least_piece), _mend_sliver(wall, piece, nominal),
        )


def _too_thin(wall: AsLaid, judged: Ints) -> Iterator[Break]:
    height = (wall.top - wall.bottom)[judged]
    thin = np.flatnonzero((height < THINNEST_RIP - ROUNDING) & ~wall.raked[judged])
    kinds = np.stack((wall.course[judged[thin]], height[thin]), axis=1)
    for course, high in np.unique(kinds, axis=0).tolist():
        alike = judged[thin[(kinds == (course, high)).all(axis=1)]]
        yield Break(
            course, int(wall.left[alike].min()),
            f"{len(alike)} {'piece' if len(alike) == 1 else 'pieces'} ripped to {size(wall, high)} high",
            size(wall, THINNEST_RIP),
            f"move the sill or head beside it by {size(wall, THINNEST_RIP - high)} or more, to a course line at best",
        )


def _mend_sliver(wall: AsLaid, piece: int, nominal: int) -> str:
    """A mason trades a sliver and its neighbour for two longer cuts; where that fails, an end has to move."""
    masonry, gaps = wall.masonry, wall.gaps
    if masonry.one_brick and not ((gaps.before == piece) | (gaps.after == piece))[gaps.kind == HEAD].any():
        return f"make the masonry here as wide as one brick, {size(wall, masonry.unit.length)}, or leave it out"
    beside = np.flatnonzero((gaps.kind == HEAD) & ((gaps.before == piece) | (gaps.after == piece)))
    for gap in beside.tolist():
        other = int(gaps.after[gap] if gaps.before[gap] == piece else gaps.before[gap])
        both = nominal + int(wall.right[other] - wall.left[other]) + masonry.joint
        if both >= 2 * masonry.least_piece:
            return f"trade it and its neighbour for two cuts of {size(wall, both // 2 - masonry.joint)}"
    return f"move the jamb, joint or end beside it by {size(wall, masonry.least_piece - nominal)}, to lengthen the run"


def _too_long(wall: AsLaid, judged: Ints, length: Ints) -> Iterator[Break]:
    unit = wall.masonry.unit
    for index in np.flatnonzero(length > unit.length).tolist():
        piece, over = int(judged[index]), int(length[index]) - unit.length
        yield Break(
            int(wall.course[piece]), int(wall.left[piece]), exact(wall, int(length[index]), unit.length),
            f"{size(wall, unit.length)}, the unit", f"no unit is so long: shorten it by {size(wall, over)}",
        )


def _misnamed(wall: AsLaid, judged: Ints, length: Ints) -> Iterator[Break]:
    called, stock = wall.called[judged], name_lengths(wall.masonry)
    fits = (length <= wall.masonry.unit.length) & ~wall.raked[judged] & (wall.notched[judged] == 0)
    whole = (wall.top - wall.bottom)[judged] >= wall.masonry.unit.height
    for name in np.unique(called).tolist():
        lengths = stock.get(name, ()) if name != "cut" else tuple(sum(stock.values(), ()))
        near = np.zeros(len(judged), dtype=bool)
        for one in lengths:
            near |= np.abs(length - one) <= (0 if name == "cut" else ROUNDING)  # a cut a hair from a stock length is one
        wrong = (called == name) & (near & whole & fits if name == "cut" else ~near & fits)
        for index in np.flatnonzero(wrong).tolist():
            piece, shown = int(judged[index]), size(wall, length[index])
            limit = " or ".join(size(wall, one) for one in lengths) or f"no {name} is stocked"
            yield Break(
                int(wall.course[piece]), int(wall.left[piece]), f"{shown}, called {name}",
                f"a sawn length, not {shown}" if name == "cut" else limit,
                "call it by the stock length that it has" if name == "cut" else f"call it a cut of {shown}",
            )


def name_lengths(masonry: Masonry) -> dict[str, tuple[int, ...]]:
    """Lengths in ticks that may go by each stock name. A bat that the mason breaks may also suit the plan's own joint."""
    stock = dict[str, tuple[int, ...]]()
    for piece in masonry.unit.pieces:
        lengths = {piece.length}
        if piece.sawn and piece.name in PARTS:
            top, low = PARTS[piece.name]
            lengths.add(masonry.module * top // low - masonry.joint)
        stock[piece.name] = stock.get(piece.name, ()) + tuple(sorted(lengths))
    return stock
