"""The search of a pier's courses against OR-tools CP-SAT: all small sizes, every joint, cut and bat counted alike."""

from __future__ import annotations

import pytest

from tests.oracle.pier_model import Sizes, solve
from wallplan.bond.pier import BAT, CUT, FACE, INNER, WALL, PierGrid, bond_pier

HALF_BRICK = [Sizes(columns, rows, front, 2, 2, 4, (2, 4)) for columns in (2, 3, 4, 5, 6) for rows in (3, 4, 5, 6)
              for front in {0, (rows - 2) // 2 if rows % 2 == 0 else 0, rows - 2}]
ONE_BRICK = [Sizes(columns, rows, front, 4, 2, 4, (2, 4)) for columns, rows, front in
             ((2, 6, 0), (4, 6, 0), (4, 6, 2), (4, 6, 1), (4, 8, 2), (6, 6, 1), (6, 6, 2))]
OTHER_UNITS = [Sizes(4, 4, 0, 1, 1, 4, (2, 4)), Sizes(3, 3, 1, 1, 1, 4, (2, 4)), Sizes(6, 6, 0, 3, 3, 4, (2, 4)),
               Sizes(3, 6, 0, 3, 3, 4, (2, 4)), Sizes(3, 3, 1, 1, 1, 3, (3,)), Sizes(4, 4, 0, 2, 2, 4, (4,)),
               Sizes(4, 6, 2, 2, 2, 4, (1, 2, 3, 4))]


@pytest.mark.parametrize("sizes", sorted({*HALF_BRICK, *ONE_BRICK, *OTHER_UNITS}), ids=lambda sizes: "-".join(map(str, sizes[:6])))
def test_no_pier_bonds_better_than_the_one_that_is_found(sizes: Sizes) -> None:
    found, least = bond_pier(PierGrid(*sizes)), solve(sizes)
    if least is None:
        assert found is None
        return
    assert found is not None
    counted = (found.cost // FACE, found.cost % FACE // CUT, found.cost % CUT // BAT, found.cost % BAT // WALL,
               found.cost % WALL // INNER)
    assert counted == least if found.proven else counted >= least


def test_most_small_sizes_are_proven() -> None:
    found = [bond_pier(PierGrid(*sizes)) for sizes in (*HALF_BRICK, *ONE_BRICK)]
    proven = sum(bond is not None and bond.proven for bond in found)
    assert 2 * proven > sum(bond is not None for bond in found)
