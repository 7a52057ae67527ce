"""Piers in the lists: counted once, their mortar by pencil, told in words."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from tests.jobs import MM, make_job, make_masonry, make_wall
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.cuts import list_cuts
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.mortar import measure_mortar
from wallplan.lists.piers import tell_piers, tell_units
from wallplan.plan.job import Pier


def mm(value: str) -> int:
    return int(Fraction(value) * MM)


def lay_with(*piers: Pier, courses: int = 4) -> Layout:
    masonry = make_masonry("brick-uk")
    wall = make_wall(mm("4715"), masonry.unit.height_of_courses(courses), name="Wall")
    return lay(make_job(masonry, replace(wall, piers=piers), measure="metric"))


GATE = Pier("Gate pier", mm("2250"), mm("440"), 0, mm("337.5"))


def test_the_mortar_along_a_piers_units_is_what_a_pencil_makes_of_it() -> None:
    # 440 x 440 less eight bricks of 215 x 102.5 and a head joint of 102.5 x 10 for each: 193,600 - 176,300 - 8,200 = 9,100 sq mm,
    # 910 mm of joint. With the wall going on, 440 x 337.5 less six: 148,500 - 132,225 - 6,150 = 10,125, 1,012.5 mm. Two of each.
    assert "between units of piers, side by side: 3845 mm long in all x 65 x 10" in measure_mortar(lay_with(GATE)).why
    assert "piers" not in measure_mortar(lay_with()).why


def test_the_order_has_the_bricks_of_piers() -> None:
    # Two courses of 8 and two of 6 more than in the wall; the wall less what the pier takes of it in two courses: 2 bricks each.
    units = {name: next(line.net for line in list_order(layout).lines if line.item == "brick-uk full")
             for name, layout in (("with", lay_with(GATE)), ("without", lay_with()))}
    assert abs(units["with"] - units["without"] - (2 * 8 + 2 * 6 - 2 * 2)) <= 2  # of which some may be cut beside it


def test_cuts_of_piers_are_in_the_saw_list() -> None:
    # Centred on the wall, 327.5 by 327.5, three-quarters tie it in.
    layout = lay_with(replace(GATE, width=mm("327.5"), front=mm("112.5"), back=mm("112.5")))
    laid = sum(one.piece.mark is not None for pier in layout.walls[0].piers for course in pier.courses for one in course.pieces)
    own = sum(piece.mark is not None for course in layout.walls[0].courses for piece in course.pieces)
    assert laid > 0
    assert sum(cut.count for cut in list_cuts(layout)) == laid + own


def test_piers_alike_are_told_together() -> None:
    one, other = replace(GATE, left=0), replace(GATE, name="Far pier", left=mm("4275"))
    layout = lay_with(one, other)
    ((name, told),) = tell_piers(layout.walls[0], layout.job)
    assert name == "piers"
    assert told.startswith("2 of 440 mm x 440 mm, 337.5 mm out of the inside face, at 0, 4275 from the left end; each 28 full; "
                           "tied in by ")
    assert tell_units(["full", "A", "full"]) == "2 full, 1 cut A"
    assert tell_units([]) == "nothing"
