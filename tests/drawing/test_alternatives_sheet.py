"""The alternatives on one sheet: each drawn with its figures over it, cuts hatched, nothing on top of anything."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.jobs import INCH, inches, make_job, make_masonry, make_wall
from wallplan.advice.compare import Alternative, compare
from wallplan.drawing.alternatives_sheet import draw_alternatives
from wallplan.drawing.primitives import Outlines, Page
from wallplan.layout.build import lay
from wallplan.plan.load import load_plan

SAMPLES = Path(__file__).parents[2] / "samples"


def draw(alternatives: tuple[Alternative, ...], paper: str | None = None) -> Page:
    """The one sheet of alternatives."""
    assert alternatives[0].layout is not None
    (page,) = draw_alternatives(alternatives[0].layout, alternatives, paper).pages
    return page


@pytest.mark.parametrize("sample", ["pier", "ticket-kiosk", "boat-store", "pump-shed-closed"])
@pytest.mark.parametrize("paper", ["letter", "A3"])
def test_every_alternative_stands_there_with_its_cutting_and_no_fault(sample: str, paper: str) -> None:
    alternatives = compare(load_plan(SAMPLES / f"{sample}.toml"))
    page = draw(alternatives, paper)
    assert faults_of(page) == []
    told = " ".join(text.text for text in texts_of(page))
    for one in alternatives:
        assert one.name in told
        assert one.figures is None or f"cutting {one.figures.cutting}," in told


def test_a_wall_of_101_inches_is_drawn_with_all_its_pieces() -> None:
    """By hand: 101 in. nominal in block of 16 take seven pieces a course; three courses of them in one elevation."""
    job = make_job(make_masonry(joints_move=False), make_wall(inches("100 5/8"), 24 * INCH))
    page = draw((Alternative("as planned", compare(job)[0].figures, lay(job)),))
    pieces = sum(len(item.boxes) for item in page.ink if isinstance(item, Outlines) and len(item.boxes) > 2)
    assert pieces == 3 * 7


def test_what_cannot_be_laid_is_named_and_not_drawn() -> None:
    planned = compare(load_plan(SAMPLES / "pier.toml"))[0]
    told = " ".join(text.text for text in texts_of(draw((planned, Alternative("brick on end", None)))))
    assert "Cannot be laid so: brick on end." in told


def test_perpends_that_wander_save_what_the_bound_leaves() -> None:
    """By hand: nine courses of 101 in. have a cut each whatever the bond, and a sliver's course counts no more."""
    job = make_job(make_masonry(joints_move=False), make_wall(inches("100 5/8"), 72 * INCH))
    planned = compare(job)[0]
    assert planned.wandering == 9
    assert planned.figures is not None and planned.figures.cutting >= 9
