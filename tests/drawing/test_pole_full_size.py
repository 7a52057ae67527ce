"""The full-size pole: true to a tenth of a millimetre, joined without a gap, every mark told once."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.full_size_strip import BAND, OVERLAP, WIDTH
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.pole_full_size import plan_full_size_sheets
from wallplan.drawing.primitives import Page, Segment, Strokes
from wallplan.layout.build import lay
from wallplan.lengths import TICKS_PER_MM, print_length
from wallplan.lists.pole import list_poles
from wallplan.plan.load import load_plan, read_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def strips_of(page: Page) -> list[tuple[Segment, list[Segment]]]:
    """Each strip's left side, and the lines across it, joins too, from its foot up."""
    lines = [(item.width, item.dash, line) for item in page.ink if isinstance(item, Strokes) for line in item.segments]
    sides = [line for width, dash, line in lines if width == 0.7 and line.x1 == line.x2]
    lefts = sorted(sides, key=lambda line: line.x1)[::2]
    return [(left, sorted((line for _, _, line in lines if line.y1 == line.y2 and abs(line.x1 - left.x1) < 1e-6
                           and abs(line.x2 - left.x1 - BAND) < 1e-6), key=lambda line: -line.y1)) for left in lefts]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", PLANS)
def test_strips_keep_their_lettering_apart_on_every_paper(name: str, paper: str) -> None:
    for page in number_sheets(plan_full_size_sheets(laid(name)[0], paper)):
        assert faults_of(page) == []


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_joined_strips_carry_every_course_at_its_height(path: Path) -> None:
    """Laid foot to head, with nothing added and nothing lost, course tops stand where the layout has them, within 0.1 mm."""
    layout = lay(load_plan(path))
    (pole, *others) = list_poles(layout)
    if others:
        return
    height, found = 0.0, set[float]()
    for page in number_sheets(plan_full_size_sheets(layout, None)):
        for side, across in strips_of(page):
            foot, head = max(side.y1, side.y2), min(side.y1, side.y2)
            found |= {round(height + foot - line.y1, 4) for line in across}
            assert all(head - OVERLAP - 1e-6 <= line.y1 <= foot + OVERLAP + 1e-6 for line in across)
            height += foot - head
    assert height == pytest.approx(max([*pole.tops, *(level.height for level in pole.levels)]) / TICKS_PER_MM, abs=0.1)
    for top in pole.tops:
        assert min(abs(line - top / TICKS_PER_MM) for line in found) <= 0.1


def test_what_laps_over_at_a_join_stands_on_both_strips() -> None:
    plan = ('title = "Mast"\nmeasure = "metric"\n[masonry]\nunit = "brick-nf"\n[[wall]]\nname = "Mast"\nlength = "2 m"\n'
            'height = "9 m"\n')  # courses of 83 1/3 mm, joins at whole centimetres: some tops stand near a join
    layout = lay(read_plan(plan, "mast.toml"))
    strips = [strip for page in number_sheets(plan_full_size_sheets(layout, "A4")) for strip in strips_of(page)]
    shared = 0
    for (lower, below), (upper, above) in pairwise(strips):
        head, foot = min(lower.y1, lower.y2), max(upper.y1, upper.y2)
        here, there = ({round(end - line.y1, 4) for line in lines if abs(line.y1 - end) <= OVERLAP}
                       for end, lines in ((head, below), (foot, above)))
        assert here == there
        shared += len(here - {0.0})
    assert shared >= 5


def test_every_height_is_told_once_and_joins_are_numbered_in_pairs() -> None:
    layout = laid("kiosk")[0]
    pages = number_sheets(plan_full_size_sheets(layout, None))
    texts = [text.text for page in pages for text in texts_of(page)]
    (pole,) = list_poles(layout)
    for top in pole.tops:
        assert texts.count(print_length(top, "feet")) == 1
    for number in range(1, len(pole.tops) + 1):
        assert str(number) in texts
    joins = [text for text in texts if text.startswith("join ")]
    assert sorted(set(joins), key=lambda join: int(join[5:])) == [f"join {n}" for n in range(1, len(joins) // 2 + 1)]
    assert all(joins.count(join) == 2 for join in joins)


@pytest.mark.parametrize(("name", "length"), [("kiosk", 101.6), ("shelter", 100.0)])
def test_a_line_to_measure_stands_upright_and_one_lies_level(name: str, length: float) -> None:
    for page in number_sheets(plan_full_size_sheets(laid(name)[0], None)):
        lines = [line for item in page.ink if isinstance(item, Strokes) and item.width == 0.35 for line in item.segments]
        for along, away in ((0, 1), (1, 0)):
            assert any(abs(abs(line[2 + along] - line[along]) - length) < 1e-6 and line[away] == line[2 + away]
                       for line in lines)
        assert any("Full size." in text.text for text in texts_of(page))
        assert max(text.x for text in texts_of(page)) < page.paper.width - 15
        assert int((page.paper.width - 30) // WIDTH) >= len(strips_of(page)) > 0


def test_a_pole_higher_than_the_sheets_reach_says_where_it_ends() -> None:
    plan = ('title = "Mast"\nmeasure = "metric"\n[masonry]\nunit = "brick-uk"\n[[wall]]\nname = "Mast"\nlength = 890\n'
            'height = "75 m"\n')
    pages = number_sheets(plan_full_size_sheets(lay(read_plan(plan, "mast.toml")), "A4"))
    told = " ".join(text.text for text in texts_of(pages[0]))
    assert re.search(r"Drawn up to \d+ only\.", told)
    assert len(pages) == 60
