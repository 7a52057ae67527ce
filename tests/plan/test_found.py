"""What a message shows of a plan, and the nearest known word."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.strategies import JUNK
from wallplan.plan.found import find_nearest, print_choices, print_found, print_name


@pytest.mark.parametrize(("value", "shown"), [
    (True, "true"), (False, "false"), ("a\nb", '"a?b"'), (3, "3"), (0.5, "0.5"), ([1], "a list"), ({}, "a table"),
    (10**5000, "a number of over 60 digits"), (-(10**60), "a number of over 60 digits"), ("", '""'),
], ids=lambda value: type(value).__name__)
def test_a_value_is_shown_as_it_was_written(value: object, shown: str) -> None:
    assert print_found(value) == shown


@given(st.one_of(JUNK, st.text(min_size=50), st.lists(st.text())))
def test_what_is_shown_is_short_and_on_one_line(value: object) -> None:
    assert print_found(value).isprintable()
    assert len(print_found(value)) <= 62


def test_a_long_name_is_cut() -> None:
    assert print_name("x" * 61) == "x" * 57 + "..."
    assert print_name("x" * 60) == "x" * 60


@pytest.mark.parametrize(("choices", "shown"), [((), ""), (("a",), "a"), (("a", "b"), "a or b"), ("abc", "a, b or c")])
def test_choices_read_as_a_sentence(choices: tuple[str, ...], shown: str) -> None:
    assert print_choices(choices) == shown


@pytest.mark.parametrize(("word", "near"), [
    ("lenght", "length"), ("from-left", "from_left"), ("From Left", "from_left"), ("zzz", None), ("", None), ("x" * 10**6, None),
])
def test_the_nearest_known_word(word: str, near: str | None) -> None:
    assert find_nearest(word, ("name", "length", "from_left")) == near
