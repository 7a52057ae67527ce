"""Lengths: every example of the plan file's grammar, what is refused, and the way back."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.strategies import SIXTEENTH, Written, feet_lengths, metric_lengths
from wallplan.lengths import (
    LONGEST,
    TICKS_PER_FOOT,
    TICKS_PER_INCH,
    TICKS_PER_MM,
    LengthError,
    Measure,
    from_inches,
    from_mm,
    print_inches,
    print_joint,
    print_length,
    print_size,
    read_length,
    to_inches,
    to_mm,
)

MM = 960
INCH = 24_384


@pytest.mark.parametrize(("written", "feet", "sixty_fourths"), [
    ("12'", 12, 0), ("12 ft", 12, 0), ("12'-0", 12, 0), ("12 feet", 12, 0),
    ("12' 4", 12, 256), ("12'-4\"", 12, 256), ("12 ft 4 in", 12, 256), ("12'4\"", 12, 256),
    ("12' 4 5/8", 12, 296), ("12'-4-5/8\"", 12, 296), ("12' 4.625\"", 12, 296),
    ('4"', 0, 256), ("4", 0, 256), ("4 in", 0, 256), (4, 0, 256), (4.0, 0, 256), ("4''", 0, 256),
    ("3/8", 0, 24), ("15-5/8", 0, 1000), ("15 5/8", 0, 1000), (".5", 0, 32), (0.375, 0, 24),
    ("12′ 4 ⅝″", 12, 296), ("12’ 4”", 12, 256), ("4½", 0, 288), ("½", 0, 32), ("¼", 0, 16), ("¾", 0, 48),
    ("⅜", 0, 24), ("⅝", 0, 40), ("⅞", 0, 56), ("⅛", 0, 8), ("0", 0, 0), (0, 0, 0), ("1/64", 0, 1),
])
def test_feet_and_inches_are_read_exactly(written: object, feet: int, sixty_fourths: int) -> None:
    assert read_length(written, "feet") == feet * 12 * INCH + sixty_fourths * INCH // 64


@pytest.mark.parametrize(("written", "millimetres"), [
    ("300 mm", 300), ("30 cm", 300), ("0.3 m", 300), ("0.3m", 300), ("300MM", 300), ("3.6 m", 3600),
])
@pytest.mark.parametrize("measure", ["feet", "metric"])
def test_metric_lengths_are_read_in_both_measures(written: str, millimetres: int, measure: Measure) -> None:
    assert read_length(written, measure) == millimetres * MM


@pytest.mark.parametrize(("written", "ticks"), [
    (3600, 3600 * MM), ("3600", 3600 * MM), (112.5, 108_000), ("102.5", 98_400), ('4"', 4 * INCH), ("4 in", 4 * INCH),
    ("12' 4", 148 * INCH), ("12'", 144 * INCH), ('3/8"', 9144),
])
def test_a_metric_plan_reads_bare_numbers_as_millimetres_and_marks_as_feet_and_inches(written: object, ticks: int) -> None:
    assert read_length(written, "metric") == ticks


@pytest.mark.parametrize("written", [
    "", " ", "x", "4 5/", "/8", "12'-", "12' '", '4" 3', "4 3/8 mm", "1e3", "1_000", "nan",
    "inf", "--4", "-", "٤٣", "10 km", "4 furlongs", "12' 4\" 5", "0x10", "1" * 50, "x" * 100_000, None, True, False, [], ["4"], {},
    float("nan"), float("inf"), float("-inf"), b"4",
])
@pytest.mark.parametrize("measure", ["feet", "metric"])
def test_anything_else_is_refused_with_what_was_found_and_an_example(written: object, measure: Measure) -> None:
    with pytest.raises(LengthError, match="is not a length; write for example") as refused:
        read_length(written, measure)
    assert len(str(refused.value)) < 160
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize(("written", "measure", "instead"), [
    # 12-4 may be 12 feet 4 or 8 inches; so may 12 4 and 12:4.
    ("12-4", "feet", "feet and inches as \"12' 4\""), ("12 4 5/8", "feet", "feet and inches as \"12' 4 5/8\""),
    ("12:4", "feet", "feet and inches as \"12' 4\""), ("12-4", "metric", 'for example 3600 or "3.6 m"'),
    # Marks of other alphabets and of keyboards that have no foot mark.
    ("20´ 4", "feet", "\"20' 4\""), ("20` 4", "feet", "\"20' 4\""), ("20ʹ 4ʺ", "feet", "\"20' 4\""), ("20＇4＂", "feet", "\"20'4\""),
    ("１２'", "feet", "\"12'\""), ("20'\u200b", "feet", "\"20'\""), ("20' 4' ", "feet", "\"20' 4\""),
    # Units in words, and units that are not read. 4 yards are 12 feet; half a foot is 6 inches.
    ("6.1 metres", "metric", '"6.1 m"'), ("6.1 Meters", "feet", '"6.1 m"'), ("6100 millimetres", "feet", '"6100 mm"'),
    ("610 centimeters", "metric", '"610 cm"'), ("4 yards", "feet", "\"12'\""), ("2 km", "metric", '"2000 m"'), ("1/2'", "feet", "\"0' 6\""),
    ("20 1/2'", "feet", "\"20' 6\""), ("20½ ft", "feet", "\"20' 6\""), ("20 feet and 4 inches", "feet", '"20 feet 4 inches"'),
    ("6 m 10 cm", "metric", '"6.10 m"'), ("6 m 105 mm", "metric", '"6.105 m"'),
    # What is written beside a length.
    ("~20'", "feet", "\"20'\""), ("about 20'", "feet", "\"20'\""), ("20' 8\" (nominal)", "feet", "\"20' 8\""), ("3.6 m wide", "metric", '"3.6 m"'),
    ("2O'", "feet", "\"20'\""), ("l2'", "feet", "\"12'\""), ("20' 4 5 / 8", "feet", "\"20' 4 5/8\""), ("20' 4 ⅕", "feet", "\"20' 4 1/5\""),
    # Thousands as other countries part them.
    ("6 000", "metric", '"6000"'), ("6 000 mm", "metric", '"6000 mm"'), ("6.000,5", "metric", 'a decimal point, no comma, "6000.5"'),
    ("6,5 metres", "metric", 'a decimal point, no comma, "6.5 m"'), ("8'-3,5\"", "feet", "a decimal point, no comma, \"8'-3.5\""),
    ("4,5\"", "feet", "a decimal point, no comma, '4.5\"'"),
])
def test_what_is_no_length_is_told_as_what_was_likely_meant(written: str, measure: Measure, instead: str) -> None:
    with pytest.raises(LengthError) as refused:
        read_length(written, measure)
    assert str(refused.value).endswith(f" is not a length; write {instead}")


@pytest.mark.parametrize("measure", ["feet", "metric"])
@given(st.text(alphabet="0123456789'\"-/ .,ftinmcylo½´(", max_size=14))
def test_what_is_to_be_written_instead_is_a_length_in_quotes_as_the_plan_reads_them(measure: Measure, written: str) -> None:
    try:
        read_length(written, measure)
    except LengthError as refused:
        said = str(refused).partition("is not a length; write ")[2]
        value = said.removeprefix("feet and inches as ").removeprefix("a decimal point, no comma, ").removeprefix("it without the comma, ")
        if value and "for example" not in value:
            read_length(tomllib.loads(f"x = {value}")["x"], measure)


@pytest.mark.parametrize("written", ["-4", "- 4", "−4", "-4'", "–4", "-1/2", -4, -0.5])
def test_a_negative_length_is_named_negative(written: object) -> None:
    with pytest.raises(LengthError, match="is negative; write it as a positive length"):
        read_length(written, "feet")


@pytest.mark.parametrize("written", [1e308, 10**30, "1" * 38, "3001 m", 3_000_001, "9" * 30 + "'"])
def test_a_length_over_3000_m_is_refused(written: object) -> None:
    with pytest.raises(LengthError, match="is over 3,000 m; write a shorter length"):
        read_length(written, "metric")


@pytest.mark.parametrize(("sign", "said"), [(1, "is over 3,000 m"), (-1, "is negative")])
def test_a_number_too_long_to_print_is_refused_too(sign: int, said: str) -> None:
    with pytest.raises(LengthError, match=f"^a number of over 60 digits {said}"):
        read_length(sign * 10**5000, "feet")


def test_3000_m_itself_is_read() -> None:
    assert read_length("3000 m", "feet") == LONGEST == 3_000_000 * MM


@pytest.mark.parametrize("written", ["1/0", "4 5/0", "12' 4 5/00"])
def test_a_fraction_of_nothing_is_refused(written: str) -> None:
    with pytest.raises(LengthError, match="divides by zero; write a fraction such as 5/8"):
        read_length(written, "feet")


def test_unprintable_characters_do_not_reach_the_message() -> None:
    with pytest.raises(LengthError) as refused:
        read_length("4\n\x1b[31m", "feet")
    assert str(refused.value).isprintable()


@pytest.mark.parametrize(("ticks", "feet", "metric"), [
    (0, '0"', "0"),
    (148 * INCH + 15_240, "12'-4 5/8\"", "3775"),
    (144 * INCH, "12'-0\"", "3658"),
    (144 * INCH + INCH // 2, "12'-0 1/2\"", "3670"),
    (9144, '3/8"', "10"),
    (15 * INCH + 15_240, "1'-3 5/8\"", "397"),
    (12 * INCH - 1, "1'-0\"", "305"),
    (108_000, '4 7/16"', "112.5"),
    (-4 * INCH, '-4"', "-102"),
])
def test_lengths_print_as_the_plan_measures_them(ticks: int, feet: str, metric: str) -> None:
    assert print_length(ticks, "feet") == feet
    assert print_length(ticks, "metric") == metric


def test_a_half_millimetre_can_be_rounded_away() -> None:
    assert print_length(108_000, "metric", exact_half=False) == "113"


def test_sizes_print_without_feet() -> None:
    assert print_inches(15 * INCH + 15_240) == '15 5/8"'
    assert print_size(15 * INCH + 15_240, "feet") == '15 5/8"'
    assert print_size(10 * MM, "metric") == "10 mm"


def test_ticks_hold_what_the_trade_measures() -> None:
    assert (TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM) == (12 * INCH, INCH, MM)
    assert INCH * 10 == 254 * MM
    assert INCH % 64 == INCH % 3 == MM % 10 == 0


@pytest.mark.parametrize(("millimetres", "inches"), [(25.4, 1), (304.8, 12), (0, 0)])
def test_floats_go_both_ways(millimetres: float, inches: float) -> None:
    assert from_mm(millimetres) == from_inches(inches)
    assert to_mm(from_mm(millimetres)) == pytest.approx(millimetres)
    assert to_inches(from_inches(inches)) == pytest.approx(inches)


@given(feet_lengths())
def test_every_way_to_write_feet_and_inches_means_the_same(written: Written) -> None:
    assert read_length(written.text, "feet") == written.ticks


@given(metric_lengths())
def test_every_way_to_write_millimetres_means_the_same(written: Written) -> None:
    assert read_length(written.text, "metric") == written.ticks


@given(st.integers(0, LONGEST // SIXTEENTH))
def test_what_is_printed_in_feet_reads_back(sixteenths: int) -> None:
    assert read_length(print_length(sixteenths * SIXTEENTH, "feet"), "feet") == sixteenths * SIXTEENTH


@given(st.integers(0, 3_000_000))
def test_what_is_printed_in_millimetres_reads_back(millimetres: int) -> None:
    assert read_length(print_length(millimetres * MM, "metric"), "metric") == millimetres * MM


@given(st.integers(0, LONGEST - SIXTEENTH))
def test_printing_is_never_off_by_more_than_half_a_step(ticks: int) -> None:
    assert abs(read_length(print_length(ticks, "feet"), "feet") - ticks) <= SIXTEENTH // 2
    assert abs(read_length(print_length(ticks, "metric"), "metric") - ticks) <= MM // 2


@given(st.one_of(st.text(), st.integers(), st.floats(), st.text(alphabet="0123456789'\"-/ .ftinmc½", max_size=14)))
def test_any_value_is_a_length_or_refused_in_one_line(value: object) -> None:
    for measure in ("feet", "metric"):
        try:
            assert 0 <= read_length(value, measure) <= LONGEST
        except LengthError as refused:
            assert str(refused).isprintable()


@pytest.mark.parametrize(("ticks", "measure", "printed"), [
    (from_inches(0.375), "feet", '3/8"'),
    # 3/8 in. shared by the 14 joints of 15 blocks set out at 20 ft: 0.375 + 0.375 / 14.
    (from_inches(0.375) + from_inches(0.375) // 14, "feet", '0.402"'),
    (from_inches(0.380), "feet", '3/8"'),
    (10 * TICKS_PER_MM, "metric", "10 mm"),
    (from_mm(10.5), "metric", "10.5 mm"),
    (from_mm(11.3), "metric", "11.3 mm"),
])
def test_a_joint_as_laid_is_printed_in_decimals_where_it_is_off_the_usual(ticks: int, measure: str, printed: str) -> None:
    assert print_joint(ticks, measure) == printed


def test_a_length_left_of_the_wall_is_printed_with_its_sign() -> None:
    assert print_inches(-from_inches(7.625)) == '-7 5/8"'
