"""What earlier runs left in a folder: named after each run, and removed where that is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from wallplan_cli.faults import refuse

if TYPE_CHECKING:
    from wallplan.batch import Drawn

Tidy = Annotated[
    bool, typer.Option("--tidy", help="Remove what an earlier run left in the folder, if nobody changed it since.")
]


def refuse_partial_tidy(tidy: bool, only: list[str] | None) -> bool:
    """Whether to tidy; refused where only some sheets are drawn, since all others would go."""
    if tidy and only:
        raise refuse("--tidy is for the whole set: it would remove all sheets that --only leaves out; give one of the two")
    return tidy


@dataclass(frozen=True)
class Earlier:
    """How files that earlier runs of a ``kind`` of set left are met."""

    kind: str
    tidy: bool

    def write(self, folder: Path, drawn: Drawn, *, own: bool) -> tuple[tuple[Path, ...], dict[str, str]]:
        """Write what came of a plan with its record; its paths, and what earlier runs left. Raises FileFault.

        In the plan's ``own`` folder that is also what was left under an earlier title.
        """
        from wallplan.files import write_files
        from wallplan.left_over import find_left, find_records, may_record, name_record, write_record

        record = name_record(drawn.job, self.kind)
        left = find_left(folder, {record, *(find_records(folder, self.kind) if own else ())}, drawn.files)
        kept = {} if self.tidy else left
        noted = {record: write_record(drawn.files, kept)} if may_record(folder, record) else {}
        paths = write_files(folder, {**drawn.files, **noted})
        return paths[: len(drawn.files)], left

    def tell(self, folder: Path, left: dict[str, str]) -> None:
        """Name what earlier runs left, a line each, or remove it."""
        from wallplan.left_over import remove_left

        if self.tidy:
            for path in remove_left(folder, left):
                typer.echo(f"removed, left from an earlier run: {path}", err=True)
            return
        for name in left:
            typer.echo(f"left from an earlier run, not drawn now: {folder / name}", err=True)
        if left:
            typer.echo("these may no longer be right: do not tape them up; --tidy removes them", err=True)
