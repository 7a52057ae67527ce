"""The lesson's sheets: lettering apart on every sample, what a teacher looks for on them, and hostile names as plain text."""

from __future__ import annotations

import io
from pathlib import Path
from xml.etree import ElementTree

import pypdf
import pytest
from hypothesis import given, settings

from tests.drawing.sheets import faults_of
from tests.long_run import examples
from tests.strategies import lesson_texts
from tests.teaching.lessons import SAMPLES, hostile, laid, lesson, sample, words_on
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE
from wallplan.drawing.pdf import draw_pdf
from wallplan.drawing.primitives import Drawing, Outlines, Page, Strokes, Text
from wallplan.drawing.svg import draw_svg
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan
from wallplan.planner import LESSON, draw_lesson
from wallplan.rules.check import check
from wallplan.teaching.folding import fold_courses
from wallplan.teaching.lap_lines import DOTTED
from wallplan.teaching.lesson import draw_lesson_sheets
from wallplan.teaching.runs import read_runs
from wallplan.teaching.why import why_course


def pages_of(drawing: Drawing, begin: str) -> list[Page]:
    return [page for page in drawing.pages if page.name.startswith(begin)]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sheet_of_every_sample_keeps_its_lettering_apart(path: Path) -> None:
    for page in lesson(path).pages:
        assert faults_of(page) == [], page.name


@pytest.mark.parametrize("paper", ["letter", "tabloid", "A4", "A3"])
def test_so_it_does_on_every_paper(paper: str) -> None:
    for page in lesson(sample("ticket-kiosk"), paper).pages:
        assert page.paper.name == paper and faults_of(page) == [], page.name


@settings(max_examples=examples(4))
@given(lesson_texts())
def test_and_of_random_plans(plan: str) -> None:
    layout = lay(read_plan(plan, "landing.toml"))
    for page in draw_lesson_sheets(layout, check(layout), None, LESSON).pages:
        assert faults_of(page) == [], page.name


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_each_course_that_differs_has_its_page_and_all_others_are_named(path: Path) -> None:
    for wall in laid(path).walls:
        folds = fold_courses(wall)
        assert sorted(number for fold in folds for number in (fold.course.number, *fold.alike)) == [
            course.number for course in wall.courses]
        for fold in folds:
            for number in fold.alike:
                pieces = [(p.left, p.length, p.piece, p.shape) for p in wall.courses[number - 1].pieces]
                assert pieces == [(p.left, p.length, p.piece, p.shape) for p in fold.course.pieces]
                assert number % 2 == fold.course.number % 2
            heads = [words_on(page).split("\n") for page in pages_of(lesson(path), "build-up")]
            number = fold.course.number
            assert any(line.startswith(f"COURSE {number}") for lines in heads for line in lines)


def test_the_build_up_is_strong_where_new_thin_where_old_and_says_why() -> None:
    # The ticket kiosk's courses 1, 2, 6, 7, 12 and 13 differ; 3 and 5 are laid as 1, 4 as 2.
    drawing, layout = lesson(sample("ticket-kiosk")), laid(sample("ticket-kiosk"))
    pages = pages_of(drawing, "build-up")
    heads = [next(line for line in words_on(page).split("\n") if line.startswith("COURSE")) for page in pages]
    assert heads == ["COURSE 1", "COURSE 2 ON 1", "COURSE 6 ON 1 TO 5", "COURSE 7 ON 1 TO 6", "COURSE 12 ON 1 TO 11",
                     "COURSE 13 ON 1 TO 12"]
    assert "Laid alike: courses 3, 5." in words_on(pages[0])
    # Course 2: half, full, full, half | full to the end, half: 14 pieces; 13 of course 1 lie under it.
    boxes = {item.width: len(item.boxes) for item in pages[1].ink if isinstance(item, Outlines) and len(item.boxes) > 3}
    assert (boxes[HEAVY_LINE], boxes[THIN_LINE]) == (14, 13)
    dotted = [item for item in pages[1].ink if isinstance(item, Strokes) and item.dash == DOTTED]
    assert dotted and '8"' in words_on(pages[1]).split("\n")
    flat = " ".join(words_on(pages[1]).split())
    for line in why_course(read_runs(layout, 0), 2):
        assert line in flat


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_answer_is_the_blank_sheet_with_units_and_nothing_else(path: Path) -> None:
    blanks, answers = pages_of(lesson(path), "blank"), pages_of(lesson(path), "answer")
    assert len(blanks) == len(answers) > 0
    for blank, answer in zip(blanks, answers, strict=True):
        first = len(blank.ink)
        differing = [(one, other) for one, other in zip(blank.ink, answer.ink[:first], strict=True) if one != other]
        assert all(isinstance(one, Text) and isinstance(other, Text) and "Sheet " in one.text and "Sheet " in other.text
                   for one, other in differing)
        assert len(answer.ink) > first


def test_answers_stand_on_sheets_of_their_own_after_all_others() -> None:
    names = [page.name for page in lesson(sample("ticket-kiosk")).pages]
    ends = [name.startswith(("answer", "quiz-answers", "key")) for name in names]
    assert ends == sorted(ends) and any(ends)


def test_rules_that_are_broken_are_told_on_the_build_up() -> None:
    assert "RULES ARE BROKEN" in words_on(pages_of(lesson(sample("breaks-a-rule")), "build-up")[0])
    assert "RULES ARE BROKEN" not in words_on(pages_of(lesson(sample("pier")), "build-up")[0])


def test_markup_in_names_reaches_svg_and_pdf_as_text() -> None:
    _, drawing = hostile()
    for page in drawing.pages:
        root = ElementTree.fromstring(draw_svg(page))
        tags = {element.tag.split("}")[-1] for element in root.iter()}
        assert tags <= {"svg", "title", "desc", "text", "path", "circle", "g", "defs", "rect"}, tags
        assert not [name for element in root.iter() for name in element.attrib if name.startswith("on") or "href" in name]
        texts = [element.text for element in root.iter() if element.tag.endswith("}text")]
        assert texts == [item.text for item in page.ink if isinstance(item, Text)]
        assert faults_of(page) == [], page.name
    text = " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(draw_pdf(drawing))).pages)
    for words in ("<script>alert('1')</script>", "<img src=x onerror=alert(2)>", "<script>alert(3)</script>",
                  "</text><script>alert(4)</script> & door"):
        assert words in " ".join(text.split())


def test_the_files_of_a_lesson_and_of_one_kind_alone() -> None:
    layout = laid(sample("pier"))
    files = draw_lesson(layout, (), None, ())
    assert "gate-pier-lesson.pdf" in files and "gate-pier-lesson-build-up-pier.svg" in files
    assert set(draw_lesson(layout, (), None, ("quiz",))) == {"gate-pier-lesson-quiz.svg", "gate-pier-lesson.pdf"}


def test_the_same_bytes_twice() -> None:
    layout = laid(sample("pier"))
    assert draw_lesson(layout, (), None, ()) == draw_lesson(layout, (), None, ())
