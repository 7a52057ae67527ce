"""The whole set: numbers of sheets right for each kind, both renderings alike, the same bytes twice."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pypdfium2
import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from tests.drawing.sheets import faults_of, texts_of, untold
from tests.long_run import LONG, examples
from tests.strategies import sheet_plans
from wallplan.drawing.face import FaceName
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.pdf import draw_pdf
from wallplan.drawing.primitives import Drawing, Outlines, Page, Strokes
from wallplan.drawing.print_check import CHECK_LINE
from wallplan.drawing.sheet_set import DRAWN, draw_sheets
from wallplan.drawing.svg import draw_svg
from wallplan.findings import PlanError
from wallplan.layout.build import lay
from wallplan.plan.load import load_plan, read_plan
from wallplan.rules.check import check

SAMPLES = Path(__file__).parents[2] / "samples"


def drawn(name: str) -> Drawing:
    return draw_sheets(lay(load_plan(SAMPLES / f"{name}.toml")), (), None, DRAWN)


def place_of(page: Page) -> str:
    """What a sheet says of its place, put together again where it stands on two lines."""
    told = " ".join(text.text for text in texts_of(page))
    return re.search(r"Sheet (\d+ of \d+(?:, part \d+ of \d+)?)\.", told)[1]  # type: ignore[index]


@pytest.mark.parametrize("name", ["pump-shed-closed", "kiosk-with-porch", "breaks-a-rule", "boat-store"])
def test_sheets_are_numbered_over_the_whole_set_and_named_apart(name: str) -> None:
    pages = drawn(name).pages
    assert len({page.name for page in pages}) == len(pages)
    assert [place_of(page).split(",")[0] for page in pages] == [
        f"{number} of {len(pages)}" for number in range(1, len(pages) + 1)]
    for page in pages:
        part = re.search(r"part (\d+)", place_of(page))
        assert (re.search(r"-(\d+)$", page.name) or [0, "1"])[1] == (part[1] if part else "1")


@pytest.mark.parametrize("name", ["pump-shed-closed", "boat-store", "reclaimed-brick"])
def test_the_first_sheet_lists_every_sheet_under_its_number(name: str) -> None:
    drawing = drawn(name)
    listed = [text.text for text in texts_of(drawing.pages[0])]
    for number, page in enumerate(drawing.pages[1:], start=2):
        title = page.title.removeprefix(f"{drawing.title}: ").split(", sheet ")[0].casefold()
        rows = [place for place, text in enumerate(listed) if re.fullmatch(rf"{number}( to \d+)?", text)]
        if "part" not in place_of(page):
            assert any(listed[place + 1].casefold().startswith(title.split(" and ")[0]) for place in rows), title
    assert listed.count("SHEETS") == 2


def test_the_first_sheet_counts_cuts_behind_the_face_too() -> None:
    # A three-quarter front and back at either end, in ten odd courses.
    assert any(text.text.endswith("Garden wall: 20 courses, 40 cuts") for text in texts_of(drawn("landing-garden-wall").pages[0]))


def test_the_first_sheet_names_walls_that_break_a_rule() -> None:
    layout = lay(load_plan(SAMPLES / "breaks-a-rule.toml"))
    told = " ".join(text.text for text in texts_of(draw_sheets(layout, check(layout), None, DRAWN).pages[0]))
    assert f"BROKEN rules in {layout.walls[0].wall.name}" in told


def test_one_kind_of_sheet_needs_no_list() -> None:
    layout = lay(load_plan(SAMPLES / "pump-shed-closed.toml"))
    assert [page.name for page in draw_sheets(layout, (), None, ("pole",)).pages] == ["pole"]
    assert [page.name for page in draw_sheets(layout, (), None, ("pole", "leads")).pages] == ["sheets", "pole", "leads"]


def test_a_long_list_goes_on_over_sheets_whose_own_number_counts() -> None:
    walls = "".join(f'[[wall]]\nname = "Stall {number}"\nlength = "8\'"\nheight = "4\'"\n' for number in range(1, 61))
    plan = f'title = "Stalls"\nmeasure = "feet"\n[masonry]\nunit = "block-8"\n{walls}'
    layout = lay(read_plan(plan, "stalls.toml"))
    pages = draw_sheets(layout, (), None, ("wall", "marks")).pages
    lists = [page for page in pages if page.name.startswith("sheets")]
    assert len(lists) > 1 and [faults_of(page) for page in lists] == [[]] * len(lists)
    listed = [text.text for page in lists for text in texts_of(page)]
    assert listed[listed.index("Wall Stall 1") - 1] == str(len(lists) + 1)
    assert listed[listed.index("Marks Stall 60") - 1] == str(len(pages))


@pytest.mark.parametrize("name", ["pump-shed-closed", "kiosk-with-porch", "high-sill"])
def test_svg_and_pdf_hold_the_same_words_in_the_same_order(name: str) -> None:
    drawing = drawn(name)
    document = pypdfium2.PdfDocument(draw_pdf(drawing))
    assert len(document) == len(drawing.pages)
    for number, page in enumerate(drawing.pages):
        told = html.unescape(draw_svg(page).decode())
        lettered = re.findall(r">([^<>]+)</text>", told)
        assert lettered == [text.text for text in texts_of(page)]
        in_pdf = set(re.sub(r"\s", "", document[number].get_textpage().get_text_range()))
        assert set(re.sub(r"\s", "", "".join(lettered))) == in_pdf


@pytest.mark.parametrize("name", ["ticket-kiosk", "kiosk-with-porch"])
def test_every_sheet_has_the_line_to_measure_and_no_line_too_thin(name: str) -> None:
    layout = lay(load_plan(SAMPLES / f"{name}.toml"))
    length, words = CHECK_LINE[layout.job.measure]
    for page in draw_sheets(layout, (), None, DRAWN).pages:
        assert words in [text.text for text in texts_of(page)]
        lines = [line for item in page.ink if isinstance(item, Strokes) for line in item.segments]
        assert any(abs(line.x2 - line.x1 - length) < 1e-6 and line.y1 == line.y2 for line in lines)
        assert min(item.width for item in page.ink if isinstance(item, Strokes | Outlines)) >= 0.25
        assert len(draw_svg(page)) < 300_000


def test_the_same_bytes_twice() -> None:
    one, other = drawn("pump-shed-closed"), drawn("pump-shed-closed")
    assert draw_pdf(one) == draw_pdf(other)
    assert [draw_svg(page) for page in one.pages] == [draw_svg(page) for page in other.pages]


@settings(max_examples=examples(5))
@given(sheet_plans(), st.sampled_from([None, *PAPERS]), st.sampled_from(["outside", "inside"]))
def test_random_plans_keep_all_their_lettering_apart(plan: str, paper: str | None, face: FaceName) -> None:
    """In a long run a hundred plans, every page of each: own units, orders, every bond, both measures."""
    try:
        layout = lay(read_plan(plan, "landing.toml"))
    except PlanError:
        reject()  # a few are told as mistakes
    findings = check(layout)
    marks = {piece.mark for wall in layout.walls for course in wall.courses for piece in course.pieces if piece.mark}
    pages = draw_sheets(layout, findings, paper, DRAWN, face=face, full_size=True).pages
    assert face == "inside" or untold(layout, pages) == set()
    for page in pages:
        assert faults_of(page) == [], page.name
        assert [text for text in texts_of(page) if text.text in marks and text.height < 3.5] == []
        assert len(draw_svg(page)) < 300_000


@pytest.mark.parametrize("paper", PAPERS if LONG else [None])
@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_every_page_of_every_sample_is_fit_to_tape_up(path: Path, paper: str | None) -> None:
    """In a long run on every paper, and both faces."""
    layout = lay(load_plan(path))
    findings = check(layout)
    for face in ("outside", "inside") if LONG else ("outside",):
        drawing = draw_sheets(layout, findings, paper, DRAWN, face=face, full_size=LONG)  # type: ignore[arg-type]
        for page in drawing.pages:
            assert faults_of(page) == [], page.name
            assert len(draw_svg(page)) < 300_000
        assert len(draw_pdf(drawing)) < 300_000 * len(drawing.pages)
