"""The saw list as the terminal shows it: each cut, and what each unit is sawn into."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wallplan.layout.explain import print_courses
from wallplan.lengths import print_size
from wallplan.lists.columns import set_columns, set_rows, wrap_text
from wallplan.lists.cuts import Cut, tell_sawn
from wallplan.lists.order.line import Sawing, Sawn
from wallplan.lists.order.notes import tell_nesting
from wallplan.lists.order.sawing import CLOSER, name_unit
from wallplan.lists.sawn_size import tell_count, tell_size
from wallplan.plan.job import Job

CAUTION = "Cut wet or with extraction, and wear a mask: the dust of masonry is silica, and silica kills."


def report_cuts(cuts: Sequence[Cut], sawings: Sequence[Sawing], job: Job, width: int) -> str:
    """The whole report of ``wallplan cuts``."""
    if not cuts:
        return wrap_text(f"{job.title}: nothing is cut.", width)
    rows = [["mark", "length", "height", "count", "from", "shape", "offcut"]]
    for cut in cuts:
        height = "full" if cut.height is None else print_size(cut.height, job.measure)
        rows.append([cut.mark, print_size(cut.length, job.measure), height, str(cut.count), cut.stock, cut.shape,
                     print_size(cut.offcut, job.measure)])
    head, *lines = set_rows(rows, width)
    told = [head]
    for line, cut in zip(lines, cuts, strict=True):
        told += [line, wrap_text(_tell_where(cut, job), width, indent="      ")]
    parts = [wrap_text(f"{job.title}: saw list", width), "\n".join(told)]
    units = [["units", "of", "sawn into", "left of each"], *_list_units(sawings, job)]
    parts += ["What each unit is sawn into:\n" + set_columns(units, width, right=frozenset({0}), indent=2)]
    parts += [wrap_text(note, width) for note in tell_nesting(sawings)]
    return "\n\n".join([*parts, wrap_text(CAUTION, width)])


def tell_length(cut: Cut, job: Job) -> str:
    """The length of a cut, both lengths of a raked one, and its notch where it has one."""
    shaped = cut.sample is not None and (cut.sample.rake or cut.sample.notch)
    return tell_size(cut.sample, job.measure, job.masonry.unit.height) if shaped and cut.sample else print_size(
        cut.length, job.measure)


def _tell_where(cut: Cut, job: Job) -> str:
    where = f"{', '.join(cut.walls)}: {print_courses(list(cut.courses))}"
    size, count = tell_length(cut, job), tell_count(cut.count, cut.hands)
    if count != str(cut.count):
        where = f"{count.split(': ')[-1]}; {where}"
    if size != print_size(cut.length, job.measure):
        where = f"{size}; {where}"
    if cut.served:
        where += f"; {cut.served if cut.served < cut.count else 'all'} from offcuts"
    return where + (f"; its offcut makes {cut.serves}" if cut.serves else "")


def _list_units(sawings: Sequence[Sawing], job: Job) -> Iterator[list[str]]:
    """A row for each way in which units are sawn, with the least that is left; of a rip, strips stand for units."""
    found: dict[tuple[str, str], list[Sawn]] = {}
    for sawing in sawings:
        for sawn in sawing.sawn:
            name = name_unit(job, sawn.piece, sawn.shape, sawing.half_high)
            if sawn.shape == CLOSER:
                name += ", ripped along its length"
            if sawing.rip is not None:
                name = f"strips {print_size(sawing.rip, job.measure)} high of {name}"
            found.setdefault((name, tell_sawn(sawn)), []).append(sawn)
    for (name, into), alike in found.items():
        left = min(sawn.offcut for sawn in alike)
        yield [str(sum(sawn.times for sawn in alike)), name, into, print_size(left, job.measure)]
