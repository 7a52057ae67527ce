"""The measuring itself: the least counts, a second try is made only where the first is over, and a slow case is seen."""

import time

from tests.benchmarks.measuring import least_ratio, time_in_turn


def test_the_least_of_each_case_counts() -> None:
    waits = iter([0.0, 0.03, 0.001, 0.03])
    taken = time_in_turn({"uneven": lambda: time.sleep(next(waits)), "slow": lambda: time.sleep(0.02)}, rounds=3)
    assert taken["uneven"] < 0.02 <= taken["slow"]


def test_a_ratio_is_measured_again_only_while_it_is_over() -> None:
    tries = iter([3.0, 2.5, 1.2])
    assert least_ratio(lambda: next(tries), 1.5) == 1.2
    assert least_ratio(lambda: 1.4, 1.5) == 1.4
    assert least_ratio(lambda: 1.6, 1.5) == 1.6
