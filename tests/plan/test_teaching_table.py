"""``[teaching]``: the usual where it is silent, and its mistakes."""

from tests.jobs import INCH, MM
from tests.plan.kiosk import KIOSK, mistakes_in
from wallplan.plan.job import Tolerances
from wallplan.plan.load import read_plan


def kiosk_with(lines: str) -> str:
    """The kiosk's plan with a [teaching] table of these lines."""
    return KIOSK.replace("[[wall]]", f"[teaching]\n{lines}\n\n[[wall]]", 1)


def test_the_usual_in_feet_and_in_metric() -> None:
    eighth = INCH // 8
    assert read_plan(KIOSK, "kiosk.toml").teaching == Tolerances(eighth, eighth, eighth, INCH // 16, eighth)
    metric = KIOSK.replace('"feet"', '"metric"').replace("block-8", "block-uk-140")
    assert read_plan(metric, "kiosk.toml").teaching == Tolerances(3 * MM, 3 * MM, 3 * MM, 2 * MM, 3 * MM)


def test_what_the_plan_sets_counts_and_the_rest_stays() -> None:
    teaching = read_plan(kiosk_with("plumb = '1/4\"'\njoint = '1/8\"'"), "kiosk.toml").teaching
    assert teaching == Tolerances(INCH // 8, INCH // 4, INCH // 8, INCH // 8, INCH // 8)


def test_mistakes_are_told_all_at_once_with_their_lines() -> None:
    told = mistakes_in(kiosk_with('plum = "3"\nlevel = "a bit"\nbond = 0'))
    assert [(line, place, message.split(";")[0]) for line, place, message in told] == [
        (8, "teaching", "plum: unknown key"), (9, "teaching", 'level: "a bit" is not a length'),
        (10, "teaching", 'bond: 0" is nothing')]
