"""Lists as CSV: RFC 4180, UTF-8, units in the header."""

from __future__ import annotations

import csv
import io

from wallplan.layout.explain import print_courses
from wallplan.lengths import Measure, print_length, print_size, to_mm
from wallplan.lists.cuts import Cut

SAW_HEADER = ("mark", "length ({unit})", "height ({unit})", "count", "saw from", "shape", "offcut ({unit})",
              "offcut serves", "of these from offcuts", "walls", "courses", "length (mm, exact)")


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
        f"{to_mm(cut.length):.2f}",
    ]


def _figure(ticks: int, measure: Measure) -> str:
    """A length as a plain figure, its unit in the header: 7 5/8, or 193.5."""
    return print_size(ticks, measure).rstrip('"') if measure == "feet" else print_length(ticks, measure)
