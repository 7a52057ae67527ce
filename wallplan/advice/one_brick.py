"""Which lengths of masonry bonds with headers fill without a header or stretcher out of turn, and without sawn pairs."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.plan.job import Masonry


@dataclass(frozen=True)
class Repeat:
    """Quarters of a stretcher after which a bond repeats, and those that are over in masonry whose ends are alike, in
    masonry whose ends differ (() where that is not laid), and in openings that the bond runs past."""

    quarters: int
    alike: tuple[int, ...]
    in_turn: tuple[int, ...]
    open: tuple[int, ...]


REPEATS = {
    "flemish": Repeat(6, (4,), (7,), (2,)), "english": Repeat(4, (4,), (), (4,)),
    "flemish garden wall": Repeat(14, (10, 14, 18), (17, 21, 25), (4, 10, 14)),
    "english garden wall": Repeat(4, (4,), (), (4,)), "common": Repeat(4, (4,), (), (4,)),
    "header": Repeat(2, (4,), (), (4,)),
}
"""Flemish, ends alike: stretcher, and header and stretcher so often; in turn: stretcher, closer, quoin header besides.
English: stretchers, or headers between two closers and quoin headers. Flemish garden wall: one or two stretchers and a
header at each end, three stretchers and a header between. English garden wall and common: stretchers. Header: headers
between two stretchers."""


def list_fitting(masonry: Masonry, nominal: int, *, alike: bool = True) -> tuple[int, ...]:
    """The nominal lengths of masonry nearest to one, under and over it, that the bond fills; the nearer first.

    ``alike`` False asks for those whose ends differ: () in English bond. Ticks, with one joint.
    """
    repeat = REPEATS[masonry.bond]
    return _nearest(masonry, nominal, repeat.alike if alike else repeat.in_turn, repeat.quarters)


def list_open(masonry: Masonry, nominal: int) -> tuple[int, ...]:
    """The widths less a joint, nearest to one, of openings over and under which the bond runs on as beside them."""
    repeat = REPEATS[masonry.bond]
    return _nearest(masonry, nominal, repeat.open, repeat.quarters)


def _nearest(masonry: Masonry, nominal: int, leasts: tuple[int, ...], step: int) -> tuple[int, ...]:
    """The nearest under a length and the nearest over it; the nearest two over it where none is under."""
    known = sorted({least + step * (max(0, (nominal * 4 // masonry.module - least) // step) + more)
                    for least in leasts for more in (0, 1)})
    lengths = [masonry.module * quarters // 4 for quarters in known]
    under = [length for length in lengths if length <= nominal][-1:]
    over = [length for length in lengths if length > nominal][:2 - len(under)]
    return tuple(sorted((*under, *over), key=lambda length: (abs(length - nominal), length)))
