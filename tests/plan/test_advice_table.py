"""``[advice]``: the usual where it is silent, and its mistakes."""

from tests.jobs import INCH, MM
from tests.plan.kiosk import KIOSK, mistakes_in
from wallplan.plan.advice_table import USUAL_KINDS
from wallplan.plan.job import Movable
from wallplan.plan.load import read_plan


def kiosk_with(lines: str) -> str:
    """The kiosk's plan with an [advice] table of these lines."""
    return KIOSK.replace("[[wall]]", f"[advice]\n{lines}\n\n[[wall]]", 1)


def test_the_usual_is_twelve_inches_and_piers_of_a_unit() -> None:
    assert read_plan(KIOSK, "kiosk.toml").movable == Movable(USUAL_KINDS, 12 * INCH, None, 15 * INCH + INCH * 5 // 8)


def test_a_metric_plan_has_metric_limits() -> None:
    metric = KIOSK.replace('"feet"', '"metric"').replace("block-8", "block-uk-140")
    movable = read_plan(metric, "kiosk.toml").movable
    assert movable == Movable(USUAL_KINDS, 300 * MM, None, 440 * MM)


def test_what_the_plan_sets_counts() -> None:
    text = kiosk_with("farthest = '6\"'\nstep = '1\"'\nleast_pier = '8\"'\nmove = [\"widths\", \"openings\"]")
    assert read_plan(text, "kiosk.toml").movable == Movable(("openings", "widths"), 6 * INCH, INCH, 8 * INCH)


def test_a_word_that_is_not_known_gets_the_nearest_one() -> None:
    ((line, place, message),) = mistakes_in(kiosk_with('move = ["opening"]'))
    assert (line, place) == (8, "advice")
    assert message.startswith('move 1: "opening" is not known; allowed: openings, ') and message.endswith('write "openings"')


def test_too_many_steps_are_refused_with_the_least_step() -> None:
    ((line, place, message),) = mistakes_in(kiosk_with("farthest = \"4'\"\nstep = '1/4\"'"))
    assert (line, place) == (9, "advice")
    assert message.endswith('write a step of at least 1/2", or a shorter farthest')


def test_an_unknown_key_and_a_length_that_is_none() -> None:
    told = mistakes_in(kiosk_with('fartest = "12"\nstep = "a bit"'))
    assert [(line, place, message.split(";")[0]) for line, place, message in told] == [
        (8, "advice", "fartest: unknown key"), (9, "advice", 'step: "a bit" is not a length')]
