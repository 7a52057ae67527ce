"""Choices made together: the same as trying every combination."""

from __future__ import annotations

import random
from itertools import product

import pytest

from wallplan.layout.choices import Party, choose


@pytest.mark.parametrize("number", range(40))
def test_the_least_of_all_combinations_is_found(number: int) -> None:
    chance = random.Random(number)
    names = [f"choice {n}" for n in range(chance.randint(1, 7))]
    values = {name: tuple(range(chance.randint(1, 3))) for name in names}
    parties = []
    for _ in range(chance.randint(1, 8)):
        about = tuple(chance.sample(names, chance.randint(1, min(3, len(names)))))
        keys = list(product(*(values[name] for name in about)))
        parties.append(Party(about, {key: chance.randint(0, 9) for key in keys if chance.random() < 0.9}))

    def cost(given: dict[object, object]) -> int | None:
        parts = [party.costs.get(tuple(given[name] for name in party.names)) for party in parties]
        return None if None in parts else sum(part for part in parts if part is not None)

    every = [cost(dict(zip(names, row, strict=True))) for row in product(*(values[name] for name in names))]
    possible = [one for one in every if one is not None]
    if possible:
        assert cost(dict(choose(parties, values))) == min(possible)
    else:
        with pytest.raises(ValueError, match="no choice"):
            choose(parties, values)


def test_of_equals_the_first_value_is_taken() -> None:
    parties = [Party(("a", "b"), dict.fromkeys(product((1, 0), repeat=2), 0))]
    assert choose(parties, {"a": (1, 0), "b": (0, 1)}) == {"a": 1, "b": 0}


def test_no_choices_choose_nothing() -> None:
    assert choose([Party((), {(): 3})], {}) == {}
