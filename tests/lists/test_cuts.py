"""The saw list: what is cut, from what, and what offcuts serve."""

import csv
import io

from tests.lists.walls import BRICK, PIER, lay_text
from wallplan.lengths import from_mm, print_inches
from wallplan.lists.csv_files import write_saw_csv
from wallplan.lists.cuts import KERF, count_pieces, list_cuts


def test_the_pier_saws_six_of_one_length() -> None:
    # 38 in. = 7 5/8 + 14 + 15 5/8 and two joints of 3/8: one cut of 14 in. a course, six courses.
    (cut,) = list_cuts(lay_text(PIER))
    assert (cut.mark, print_inches(cut.length), cut.count, cut.stock, cut.height) == ("A", '14"', 6, "full", None)
    # What is left of a 15 5/8 in. block after 14 in. and the saw's 1/8 in.
    assert print_inches(cut.offcut) == '1 1/2"'
    assert cut.courses == (1, 2, 3, 4, 5, 6)


def test_every_piece_is_counted_once_and_cuts_agree_with_the_layout() -> None:
    layout = lay_text(BRICK)
    pieces = [piece for wall in layout.walls for course in wall.courses for piece in course.pieces]
    assert count_pieces(layout).total() == len(pieces)
    assert sum(cut.count for cut in list_cuts(layout)) == sum(piece.piece == "cut" for piece in pieces)


def test_an_offcut_serves_only_what_it_is_long_enough_for() -> None:
    cuts = {cut.mark: cut for cut in list_cuts(lay_text(BRICK))}
    for cut in cuts.values():
        if cut.serves:
            assert cuts[cut.serves].length <= from_mm(215) - cut.length - KERF
            assert cuts[cut.serves].served <= cuts[cut.serves].count


def test_a_wall_without_cuts_has_an_empty_list() -> None:
    layout = lay_text(PIER.replace('38"', '39 5/8"'))
    assert list_cuts(layout) == ()
    assert write_saw_csv((), "feet").count("\r\n") == 1


def test_the_csv_is_rfc_4180_with_units_in_its_header() -> None:
    text = write_saw_csv(list_cuts(lay_text(PIER)), "feet")
    assert text.endswith("\r\n") and "\n" not in text.replace("\r\n", "")
    header, row = csv.reader(io.StringIO(text, newline=""))
    assert header[1] == "length (in)" and row[1] == "14"
    assert dict(zip(header, row, strict=True))["length (mm, exact)"] == "355.60"


def test_names_with_commas_and_quotes_stay_one_field() -> None:
    text = write_saw_csv(list_cuts(lay_text(PIER.replace('name = "Pier"', "name = 'North, \"gate\"'"))), "feet")
    rows = list(csv.reader(io.StringIO(text, newline="")))
    assert rows[1][rows[0].index("walls")] == 'North, "gate"'
