"""Large piers: what was found once bounds what is still sought, so that courses with all joints clear are come to."""

from __future__ import annotations

import pytest

from wallplan.bond.pier import Block, PierBond, PierGrid, bond_pier

LARGE = (
    PierGrid(columns=10, rows=10, front=8, thick=2, wide=2, full=4, free=(2, 4)),
    PierGrid(columns=10, rows=10, front=4, thick=2, wide=2, full=4, free=(2, 4)),
)
"""Piers of five units each way, at the wall's face and through it."""


def joints(blocks: tuple[Block, ...]) -> tuple[set[tuple[int, int]], set[tuple[int, int]]]:
    """Cells beyond which, and under which, a course has a joint within it."""
    at = {(column, row): number for number, block in enumerate(blocks) for column in range(block.column, block.column + block.columns)
          for row in range(block.row, block.row + block.rows)}
    beyond = {cell for cell in at if at.get((cell[0] + 1, cell[1]), at[cell]) != at[cell]}
    under = {cell for cell in at if at.get((cell[0], cell[1] + 1), at[cell]) != at[cell]}
    return beyond, under


def count_on_faces(bond: PierBond, grid: PierGrid) -> int:
    """Edges of cells on the pier's four faces at which both courses have a joint."""
    (beyond, under), (over, above) = joints(bond.tied), joints(bond.plain)
    return (sum(row in (0, grid.rows - 1) for _, row in beyond & over)
            + sum(column in (0, grid.columns - 1) for column, _ in under & above))


@pytest.mark.parametrize("grid", LARGE, ids=["at a face", "through"])
def test_large_piers_show_no_joint_over_a_joint(grid: PierGrid) -> None:
    bond = bond_pier(grid)
    assert bond is not None
    cells = [(column, row) for block in bond.tied for column in range(block.column, block.column + block.columns)
             for row in range(block.row, block.row + block.rows)]
    assert sorted(cells) == [(column, row) for column in range(grid.columns) for row in range(grid.rows)]
    assert count_on_faces(bond, grid) == bond.on_faces == 0
    assert bond.proven
