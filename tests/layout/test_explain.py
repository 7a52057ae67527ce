"""Why the bound is not reached, in sentences."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_masonry
from wallplan.layout.explain import Share, explain, print_courses
from wallplan.plan.job import Bond


@pytest.mark.parametrize(("courses", "words"), [
    ([4], "course 4"), ([1, 2, 3], "courses 1 to 3"), ([2, 4, 6, 8], "courses 2, 4 … 8"), ([1, 3], "courses 1, 3"),
    ([1, 2, 4, 7, 9, 11, 12, 20], "courses 1, 2, 4, 7, 9, 11, 12, 20"),
    ([1, 3, 5, 7, 9, 11, 29, 31], "courses 1, 3 … 11, 29, 31"), ([2, 3, 4, 8, 10, 12, 14], "courses 2 to 4, 8, 10 … 14"),
    ([*range(1, 40, 3)], "courses 1, 4, 7, 10, 13, 16, 19, 22, 25, 28 and 3 more"),
])
def test_courses_are_named_as_a_mason_says_them(courses: list[int], words: str) -> None:
    assert print_courses(courses) == words


def test_nothing_is_said_where_the_bound_is_reached() -> None:
    assert explain({Share(0, inches(48), 1, 1, layered=False): [1, 3]}, make_masonry(), "feet") == ()


def test_each_reason_has_its_sentence() -> None:
    stock, short, rips = (
        Share(0, inches(48), 1, 0, layered=False), Share(0, inches(36), 2, 1, layered=False),
        Share(inches(60), inches(100), 5, 0, layered=True),
    )
    told = explain({rips: [6], short: [1, 3], stock: [2]}, make_masonry(), "feet")
    assert len(told) == 3
    assert told[0].startswith("0\" to 3'-0\", courses 1, 3: 2 in each, at least 1") and "short" in told[0]
    assert told[1].startswith("0\" to 4'-0\", course 2: 1 in each, at least 0") and '4"' in told[1]
    assert told[2].endswith("rips beside a sill, a head or a step off the coursing are not in the bound")


@pytest.mark.parametrize(("bond", "kept"), [("half", True), ("third", False), ("quarter", False)])
def test_a_bond_that_is_kept_is_the_reason_and_not_the_least_lap(bond: Bond, kept: bool) -> None:
    # The least lap may well be had without a cut: it is the bond that asks for it.
    stock = Share(0, inches(48), 1, 0, layered=False)
    (told,) = explain({stock: [2]}, make_masonry("block-12", bond, keep_bond=kept), "feet")
    assert told.endswith(f"but not with {bond} bond kept throughout and plumb with the other courses")
