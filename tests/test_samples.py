"""Each sample does the whole main job, and its sheets hold every distance that a mason marks."""

import csv
import html
import io
import re
from pathlib import Path

import pytest

from wallplan.layout.model import Layout
from wallplan.lengths import print_length
from wallplan.planner import draw_set, lay_plan, name_broken_rules, prove

SAMPLES = sorted((Path(__file__).parents[1] / "samples").glob("*.toml"))


@pytest.fixture(scope="module", params=SAMPLES, ids=lambda path: path.stem)
def layout(request: pytest.FixtureRequest) -> Layout:
    return lay_plan(request.param)


def is_broken_on_purpose(layout: Layout) -> bool:
    return "as first drawn" in layout.job.title


def test_the_check_holds_every_rule_but_in_the_one_that_breaks_some_on_purpose(layout: Layout) -> None:
    broken = [finding for finding in prove(layout) if not finding.held]
    assert bool(broken) is is_broken_on_purpose(layout)
    assert tuple(broken) == name_broken_rules(layout)


def test_the_sheets_show_every_distance_to_be_marked(layout: Layout) -> None:
    files = draw_set(layout, prove(layout), None, ("wall",))
    drawn = html.unescape(b"".join(files[name] for name in sorted(files) if name.endswith(".svg")).decode())
    texts = set(re.findall(r">([^<>]+)</text>", drawn))
    measure = layout.job.measure
    for laid in layout.walls:
        wall = laid.wall
        jambs = [side for opening in wall.openings for side in (opening.left, opening.right)]
        for place in (*jambs, *wall.control_joints, wall.length):
            assert print_length(place, measure) in texts or f"overall {print_length(place, measure)}" in texts
        assert any(text.endswith(wall.name) for text in texts)


def test_the_saw_list_counts_the_cuts_that_are_laid(layout: Layout) -> None:
    (text,) = (data for name, data in draw_set(layout, (), None, ("saw-list",)).items() if name.endswith(".csv"))
    rows = list(csv.DictReader(io.StringIO(text.decode(), newline="")))
    laid = [piece for wall in layout.walls for course in wall.courses for piece in course.bricks if piece.mark]
    laid += [one.piece for wall in layout.walls for pier in wall.piers for course in pier.courses for one in course.pieces
             if one.piece.mark]
    assert sum(int(row["count"]) for row in rows) == len(laid)


def test_the_same_plan_gives_the_same_bytes(layout: Layout) -> None:
    findings = prove(layout)
    assert draw_set(layout, findings, "A4", ()) == draw_set(layout, findings, "A4", ())
