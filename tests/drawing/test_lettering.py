"""Lettering is measured as the font's own file has it, and never placed on what is there."""

from __future__ import annotations

import pytest

from tests.drawing.sheets import CAPITALS, advance, font, ink_of
from wallplan.drawing.letter_widths import _RANGES, ADVANCES
from wallplan.drawing.lettering import (
    Placer,
    clean,
    fit_heading,
    font_size,
    measure,
    measure_text,
    meets_box,
    shorten,
    tie,
    wrap,
)
from wallplan.drawing.primitives import Box, Segment, Text


def test_every_advance_is_that_of_the_font_file() -> None:
    assert len(ADVANCES) > 200
    assert {letter: advance(letter) for letter in ADVANCES} == ADVANCES


def test_a_text_is_as_wide_as_its_letters_and_its_capitals_as_high_as_asked() -> None:
    assert measure("", 5) == 0
    assert measure("AH", 5) == pytest.approx((advance("A") + advance("H")) * 5 / CAPITALS)
    assert font_size(5) * CAPITALS / font().units_per_EM == pytest.approx(5)


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
@pytest.mark.parametrize("upright", [False, True])
@pytest.mark.parametrize("words", ["12'-4 5/8\"", "Jamb (gypsy), Qq", "J", "ÄÉ½", "WALL |_@"])
def test_a_texts_box_covers_its_ink(anchor: str, upright: bool, words: str) -> None:
    text = Text(40, 60, words, 3.5, anchor, upright)  # type: ignore[arg-type]
    box, ink = measure_text(text), ink_of(text).bounds
    assert box.left <= ink[0] + 0.02
    assert box.top <= ink[1] + 0.02
    assert box.right >= ink[2] - 0.02
    assert box.bottom >= ink[3] - 0.02
    assert box.width * box.height < 2.5 * (ink[2] - ink[0]) * (ink[3] - ink[1])


def test_lines_are_wrapped_within_the_width_and_no_word_is_lost() -> None:
    words = "Fresh walls fall: brace them, and keep clear of them by their height"
    lines = wrap(words, 2.5, 60)
    assert " ".join(lines) == words
    assert all(measure(line, 2.5) <= 60 for line in lines)
    assert wrap("", 2.5, 60) == ()


def test_a_tied_length_stays_on_one_line() -> None:
    lines = wrap(f"specified {tie('15 5/8')} long", 2.5, measure("specified 15", 2.5) + 0.1)
    assert lines == ("specified", "15 5/8 long")
    assert wrap("specified 15 5/8 long", 2.5, measure("specified 15", 2.5) + 0.1)[0] == "specified 15"


def test_what_is_too_long_is_shortened_and_what_does_not_print_is_shown_as_such() -> None:
    shown = shorten("Ticket window of the ferry landing", 3.5, 30)
    assert shown.endswith("...")
    assert measure(shown, 3.5) <= 30
    assert clean("Kiosk\x00\n") == "Kiosk??"


def test_the_placer_keeps_lettering_apart_and_off_lines_and_on_the_sheet() -> None:
    placer = Placer(Box(0, 0, 100, 100))
    placer.take(Box(10, 10, 20, 20))
    placer.take_lines([Segment(0, 50, 100, 60)])
    assert placer.is_free(Box(21, 10, 30, 20))
    assert not placer.is_free(Box(20.3, 10, 30, 20))
    assert not placer.is_free(Box(40, 52, 50, 56))
    assert not placer.is_free(Box(95, 95, 101, 99))
    assert not placer.is_clear(Segment(0, 0, 30, 30))
    assert placer.is_clear(Segment(0, 21, 30, 21))
    assert placer.crosses(Segment(50, 0, 50, 100))
    assert not placer.crosses(Segment(50, 0, 50, 40))


def test_a_line_is_broken_round_lettering() -> None:
    placer = Placer(Box(0, 0, 100, 100))
    placer.take(Box(10, 10, 20, 20), Box(15, 12, 30, 18))
    assert placer.spare(Segment(0, 15, 50, 15), 1) == [Segment(0, 15, 9, 15), Segment(31, 15, 50, 15)]
    assert placer.spare(Segment(0, 40, 50, 40), 1) == [Segment(0, 40, 50, 40)]


@pytest.mark.parametrize(("line", "meets"), [
    (Segment(0, 0, 10, 10), True), (Segment(0, 5, 10, 5), True), (Segment(4, 5, 6, 5), True),
    (Segment(0, 4, 10, 4), False), (Segment(0, 10, 3, 3), False), (Segment(0, 0, 3, 3), False),
])
def test_a_line_meets_a_box_only_where_it_runs_inside(line: Segment, meets: bool) -> None:
    assert meets_box(line, Box(4, 4, 6, 6)) is meets


def test_every_letter_that_is_drawn_is_in_the_font_and_others_are_shown_as_missing() -> None:
    have = set(font().get_charmap())
    assert [hex(code) for first, last in _RANGES for code in range(first, last + 1)
            if chr(code).isprintable() and code not in have] == []
    assert clean("Öland Łódź Пристань Αθήνα") == "Öland Łódź Пристань Αθήνα"
    assert clean("码头, منصة") == "??, ????"  # blank, or in the wrong order, before


def test_a_long_heading_takes_two_lines_before_it_gets_small() -> None:
    long = "The long wall towards the water and the old slip"
    assert fit_heading(long, (5.0, 3.5, 2.5), 130.0) == (long, 3.5)
    assert fit_heading("Kiosk", (5.0, 3.5, 2.5), 130.0) == ("Kiosk", 5.0)
    assert fit_heading(long * 6, (5.0, 3.5, 2.5), 130.0)[1] == 2.5
