"""The fit report as text: the sizes that do not fit, and what to do about them; one line where all fit."""

from __future__ import annotations

from wallplan.advice.fit import Size, measure_fit
from wallplan.advice.names import size_text
from wallplan.advice.remedies import find_remedies, tell_off
from wallplan.lists.columns import wrap_text
from wallplan.plan.job import Job, Wall

MOST_TOLD = 12
TAKEN = {"unnoticed": "joints take it unseen", "noticed": "joints take it, and it shows", "broken": "no joint takes it"}


def report_fit(job: Job, width: int) -> dict[str, str]:
    """For each wall by name, its sizes against module and coursing. A job without walls gives {}."""
    sizes = measure_fit(job)
    return {wall.name: _report([size for size in sizes if size.wall == wall.name], job, width) for wall in job.walls}


def report_fit_shortly(job: Job, width: int) -> dict[str, str]:
    """For each wall with sizes off the module or the coursing, those sizes, a line each; a wall that fits is left out."""
    sizes, told = measure_fit(job), dict[str, str]()
    for wall in job.walls:
        misfits = [size for size in sizes if size.wall == wall.name and size.taken != "fits"]
        lines = [wrap_text(f"off    {_tell_size(size, job)}", width, indent="  ") for size in misfits[:MOST_TOLD]]
        if lines:
            more = [f"  ... and {len(misfits) - MOST_TOLD} more"] if len(misfits) > MOST_TOLD else []
            told[wall.name] = "\n".join([*lines, *more, "      what to do about them: wallplan lay, wallplan advise"])
    return told


def tell_bays(wall: Wall, job: Job) -> list[str]:
    """A line for each bay between piers that does not come out, in bonds with headers for each length of masonry and
    opening: by how much, and what would; [] where all do."""
    told = ("bay", "length", "pier", "width") if job.masonry.one_brick else ("bay",)
    return [_tell(size, job) for size in measure_fit(job)
            if size.wall == wall.name and size.what in told and size.taken != "fits"]


def _report(sizes: list[Size], job: Job, width: int) -> str:
    misfits = [size for size in sizes if size.taken != "fits"]
    if not misfits:
        return "Fit: every length, opening, sill and head stands on the module."
    told = [wrap_text(_tell(size, job), width, indent="  ") for size in misfits[:MOST_TOLD]]
    more = [f"  ... and {len(misfits) - MOST_TOLD} more"] if len(misfits) > MOST_TOLD else []
    one = f"size{'s' * (len(sizes) > 1)} {'is' if len(misfits) == 1 else 'are'}"
    head = f"Fit: {len(misfits)} of {len(sizes)} {one} off the module or the coursing. Try the first remedy first."
    return "\n".join([wrap_text(head, width), *told, *more])


def _tell(size: Size, job: Job) -> str:
    return f"{_tell_size(size, job)}: {'; else '.join(find_remedies(size, job))}"


def _tell_size(size: Size, job: Job) -> str:
    name = "" if size.what in ("length", "height") else f" {size.name}"
    return f"{size.what}{name}, {size_text(size.size, job.measure)}: {tell_off(size, job)}; {TAKEN[size.taken]}"
