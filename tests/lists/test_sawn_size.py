"""What a sawn piece's size is told as, and how raked cuts are counted, paired and ordered."""

from __future__ import annotations

import csv
import io
import json
from fractions import Fraction

from tests.jobs import inches
from tests.layout.test_outline import BAD_STEPS, GABLE, lay_text
from wallplan.layout.as_json import layout_as_json
from wallplan.layout.model import Notch, Piece, Rake
from wallplan.lists.bond_drawing import draw_bond
from wallplan.lists.csv_files import write_saw_csv
from wallplan.lists.cuts import list_cuts
from wallplan.lists.marks import list_marks
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.sawing import nest_cuts
from wallplan.lists.sawn_size import count_hands, tell_count, tell_size

HIGH = inches("7 5/8")


def piece(length: str, height: str = "7 5/8", rake: Rake | None = None, notch: Notch | None = None) -> Piece:
    return Piece(0, inches(length), 0, inches(height), "cut", "stretcher", "A", None, "Slip", rake, notch)


def raked(left: str, right: str, top_left: str, top_right: str) -> Rake:
    return Rake(*(inches(size) for size in (left, right, top_left, top_right)))


def test_sizes_in_words() -> None:
    cases = {
        '11 5/8"': piece("11 5/8"),
        '15 5/8" x 6 5/8"': piece("15 5/8", "6 5/8"),
        '15 5/8", notch 8" x 1"': piece("15 5/8", notch=Notch(0, inches(8), inches(1))),
        '15 5/8" bottom, 4 3/16" top': piece("15 5/8", rake=raked("0", "7 5/8", "11 7/16", "15 5/8")),
        '11" bottom, to a point 7 3/8" high': piece("11", "7 3/8", raked("0", "7 3/8", "11", "11")),
        '12" bottom, 4" top, low side 3"': piece("12", rake=raked("3", "7 5/8", "8", "12")),
        # A slope that takes more than a unit leaves a piece without a level top: it is known by its two sides.
        '15 5/8", low side 3", high side 6 1/8"': piece("15 5/8", "6 1/8", raked("3", "6 1/8", "15 5/8", "15 5/8")),
        '8", low side 6", high side 7 5/8"': piece("8", rake=raked("6", "7 5/8", "8", "8")),
        '8" bottom, to a point, low side 3"': piece("8", rake=raked("3", "3", "4", "4")),
    }
    for told, cut in cases.items():
        assert tell_size(cut, "feet", HIGH) == told


def test_hands_are_the_side_that_is_sawn_down() -> None:
    left, right = raked("0", "7 5/8", "4", "8"), raked("7 5/8", "0", "0", "4")
    ridge = raked("0", "0", "4", "4")
    cuts = [piece("8", rake=rake) for rake in (left, left, right, ridge)]
    assert [cut.hand for cut in cuts] == ["left", "left", "right", "ridge"]
    assert count_hands(cuts) == (2, 1)
    assert tell_count(4, (2, 1)) == "4: 2 left, 1 right, 1 at the ridge"
    assert tell_count(4, (0, 0)) == "4"
    assert tell_count(2, (2, 0)) == "2: 2 left"


def test_the_gable_takes_no_more_block_than_the_hand_counts_places() -> None:
    """24 ft wide, 8 ft rise: by hand 108 block of area but 120 places. With the perpends kept plumb the courses have more pieces,
    and yet take fewer block: halves, slivers and pairs of triangles come from one."""
    layout = lay_text(GABLE)
    below = lay_text(GABLE.replace("gable =", "# gable ="))
    units = [sum((line.net for line in list_order(one).lines if line.group == "units" and "half" not in line.item), Fraction(0))
             for one in (layout, below)]
    halves = [sum((line.net for line in list_order(one).lines if line.group == "units" and "half" in line.item), Fraction(0))
              for one in (layout, below)]
    assert units[0] - units[1] + (halves[0] - halves[1]) / 2 <= 120


def test_two_triangles_come_from_one_block() -> None:
    """11 1/16 in. along the bottom and none on top: with the kerf on the slope both lie in 15 5/8 in."""
    sawn = [(sawn.cuts, sawn.times) for sawing in nest_cuts(lay_text(GABLE)) for sawn in sawing.sawn]
    pairs = [(cuts[0].split(" + "), times) for cuts, times in sawn if " + " in cuts[0]]
    assert pairs and all(len(set(names)) == 1 and len(names) == 2 for names, _ in pairs)


def test_the_saw_list_gives_both_lengths_and_the_pairs() -> None:
    layout = lay_text(GABLE.replace('rise = "8\'"', 'pitch = "8/12"'))
    rows = list(csv.DictReader(io.StringIO(write_saw_csv(list_cuts(layout), "feet"))))
    found = {(row["length (in)"], row["top length (in)"]): (row["left hand"], row["right hand"])
             for row in rows if row["top length (in)"]}
    # The whole slope is 7 5/8 in. high at 8 in 12, so 11 7/16 in. long: a piece of 15 1/16 is 3 5/8 on top.
    left, right = found["15 1/16", "3 5/8"]
    assert left == right and int(left) > 0


def test_json_adds_keys_to_raked_and_notched_pieces_only() -> None:
    def pieces(text: str) -> list[dict[str, object]]:
        read = json.loads(json.dumps(layout_as_json(lay_text(text), ())))
        return [piece for course in read["walls"][0]["courses"] for piece in course["pieces"]]

    assert sum("top_length" in piece for piece in pieces(GABLE)) == 24
    (notched,) = (piece for piece in pieces(BAD_STEPS) if "notch" in piece)
    assert notched["notch"] == {"left": 0.0, "right": 203.2, "height": 25.4}
    assert "footing" not in layout_as_json(lay_text(BAD_STEPS.replace("step =", "# step =")), ())["walls"][0]  # type: ignore[index]


def test_the_terminal_draws_slopes_and_steps() -> None:
    layout = lay_text(GABLE)
    lines = draw_bond(layout.walls[0], layout.job.masonry, 100)
    assert all(line.count("/") >= 1 and line.count("\\") >= 1 for line in lines[:12])
    assert not any("/" in line for line in lines[12:])
    steps = lay_text(BAD_STEPS)
    course_1 = draw_bond(steps.walls[0], steps.job.masonry, 200)[-1]
    assert course_1.index("|") > len(course_1) // 2


def test_marks_give_each_course_s_raked_ends_at_bottom_and_top() -> None:
    """8 in 12: over 8 ft the slope passes a course's units 3/8 in. up, 9/16 in. in, and their top 8 in. up, 12 in. in."""
    (marks,) = list_marks(lay_text(GABLE.replace('rise = "8\'"', 'pitch = "8/12"')))
    assert [end.course for end in marks.raked] == [course for course in range(13, 25) for _ in (1, 2)]
    first, last = marks.raked[:2]
    assert (first.side, first.bottom, first.top) == ("left", inches("9/16"), inches(12))
    assert (last.side, last.bottom, last.top) == ("right", inches("287 1/16"), inches("275 5/8"))
    (steps,) = list_marks(lay_text(BAD_STEPS))
    assert steps.risers == (inches(120), inches(240), inches(360))
