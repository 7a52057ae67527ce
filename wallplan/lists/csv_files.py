"""Lists as CSV: RFC 4180, UTF-8, units in the header."""

from __future__ import annotations

import csv
import io

from wallplan.layout.explain import print_courses
from wallplan.lengths import Measure, print_length, print_size, to_mm
from wallplan.lists.cuts import Cut

SAW_HEADER = ("mark", "length ({unit})", "height ({unit})", "count", "saw from", "shape", "offcut ({unit})",
              "offcut serves", "of these from offcuts", "walls", "courses", "length (mm, exact)",
              "top length ({unit})", "low side ({unit})", "left hand", "right hand", "notch ({unit})")


def write_saw_csv(cuts: tuple[Cut, ...], measure: Measure) -> str:
    """The saw list as CSV text with CRLF line ends; the header alone where nothing is cut."""
    unit = "in" if measure == "feet" else "mm"
    rows = [[title.format(unit=unit) for title in SAW_HEADER]]
    rows.extend(_saw_row(cut, measure) for cut in cuts)
    text = io.StringIO(newline="")
    csv.writer(text).writerows(rows)
    return text.getvalue()


def _saw_row(cut: Cut, measure: Measure) -> list[str]:
    return [
        cut.mark, _figure(cut.length, measure), "" if cut.height is None else _figure(cut.height, measure),
        str(cut.count), cut.stock, cut.shape, _figure(cut.offcut, measure), cut.serves or "",
        str(cut.served) if cut.served else "", "; ".join(cut.walls), print_courses(list(cut.courses)),
        f"{to_mm(cut.length):.2f}", *_sawn(cut, measure),
    ]


def _sawn(cut: Cut, measure: Measure) -> tuple[str, ...]:
    """What a raked or notched cut has besides; empty for a square one."""
    piece = cut.sample
    if piece is not None and piece.rake is not None:
        sides = (piece.rake.top_length, min(piece.rake.left, piece.rake.right))
        return (*(_figure(ticks, measure) for ticks in sides), *map(str, cut.hands), "")
    if piece is not None and piece.notch is not None:
        sizes = (piece.notch.right - piece.notch.left, piece.notch.height)
        return ("", "", "", "", " x ".join(_figure(ticks, measure) for ticks in sizes))
    return ("", "", "", "", "")


def _figure(ticks: int, measure: Measure) -> str:
    """A length as a plain figure, its unit in the header: 7 5/8, or 193.5."""
    return print_size(ticks, measure).rstrip('"') if measure == "feet" else print_length(ticks, measure)
