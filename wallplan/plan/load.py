"""Plan file in, Job out, or every mistake at once."""

from __future__ import annotations

import stat
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from wallplan.findings import PlanError, PlanMistake
from wallplan.plan.found import print_name
from wallplan.plan.job import Job
from wallplan.plan.notebook import Notebook, Wrong
from wallplan.plan.syntax import Reading, SyntaxMistake, read_toml

if TYPE_CHECKING:
    from wallplan.plan.shape import Shape

LARGEST_FILE = 1_000_000
"""Bytes of a plan file; a larger one is refused without being read."""

_NO_TEXT = "not UTF-8 text; save the plan as plain text in UTF-8"

_NAMED = ("wall", "opening", "step", "top_step", "gable")
"""Tables that are called by name or number, so that no key is told for them."""

MOST_TOLD = 500
"""Mistakes that are told of one file; a last line says how many more there are."""


def load_plan(path: Path) -> Job:
    """The job of a plan file. Raises PlanError, with every mistake in file order, for one that cannot be used."""
    file = _printable(str(path))
    try:
        data = _read_bytes(path)
        text = _decode(data)
    except UnicodeDecodeError as error:
        raise _refuse(file, _NO_TEXT, data.count(b"\n", 0, error.start) + 1) from None
    except FileNotFoundError:
        raise _refuse(file, f"no such file; {_find_alike(path)}") from None
    except PermissionError:
        raise _refuse(file, "may not be read; give yourself leave to read it") from None
    except (OSError, ValueError) as error:
        raise _refuse(file, getattr(error, "strerror", None) or str(error)) from None
    return read_plan(text, file)


def read_plan(text: str, file: str) -> Job:
    """The job of a plan's text; ``file`` is what mistakes call it. Raises PlanError with every mistake in file order."""
    reading = read_toml(text)
    if reading.tables is None:
        raise PlanError(tuple(PlanMistake(file, one.line, "", _say_unread(one)) for one in reading.mistakes))
    read = _read_tables(reading.tables, shape_only=reading.doubtful)
    if read.job is None or read.wrongs or reading.mistakes:
        raise PlanError(_place(read, reading, file))
    return read.job


def _say_unread(mistake: SyntaxMistake) -> str:
    return f"{mistake.key}: {mistake.message}" if mistake.key else mistake.message


class _Read(NamedTuple):
    job: Job | None
    wrongs: list[Wrong]
    shape: Shape


def _read_tables(raw: dict[str, Any], *, shape_only: bool) -> _Read:
    from wallplan.plan.build import build_job  # with the schema, and so pydantic: only where a plan is read
    from wallplan.plan.shape import read_shape

    shape = read_shape(raw)
    measure = shape.plan.measure
    if shape_only or measure is None:
        hint = "lengths are looked at when this is mended"
        wrongs = [Wrong(one.path, f"{one.message}; {hint}") if one.path == ("measure",) else one for one in shape.wrongs]
        return _Read(None, wrongs, shape)
    notebook = Notebook(measure, shape.wrongs)
    return _Read(build_job(shape.plan, notebook), notebook.wrongs, shape)


def _place(read: _Read, reading: Reading, file: str) -> tuple[PlanMistake, ...]:
    """The mistakes by their lines. Of a line that could not be read nothing more is told."""
    from wallplan.plan.lines import find_lines, line_of
    from wallplan.plan.shape import name_place

    lines = dict(find_lines(reading.text))
    paths = {line: path for path, line in lines.items()}
    for misspelt, meant in read.shape.taken_for:
        lines |= {meant + path[len(misspelt):]: line for path, line in lines.items() if path[:len(misspelt)] == misspelt}
    unread = {one.line or 1: one for one in reading.mistakes}
    tables = read.shape.tables
    found = [(line, name_place(tables, paths[line]) if line in paths else "", _say_unread(one))
             for line, one in unread.items()]
    lost = {(*around, name) for line, one in unread.items() if line in paths for name in one.names
            for around in (paths[line], paths[line][:-1])}
    found += [(line, name_place(tables, wrong.path), _say(wrong)) for wrong in read.wrongs
              if (line := line_of(lines, wrong.path)) not in unread and wrong.path not in lost]
    ordered = sorted(found, key=lambda one: one[0])
    told = tuple(PlanMistake(file, *one) for one in ordered[:MOST_TOLD])
    rest = len(ordered) - len(told)
    return (*told, PlanMistake(file, None, "", f"{rest:,} more mistakes; mend these first")) if rest else told


def _say(wrong: Wrong) -> str:
    """The message with its key: ``control_joints, 2nd of the list`` is plain enough as ``control_joints 2``."""
    *_, table, last = ("", *wrong.path)
    if isinstance(last, int):
        return wrong.message if table in _NAMED else f"{table} {last + 1}: {wrong.message}"
    return f"{print_name(last)}: {wrong.message}"


def _find_alike(path: Path) -> str:
    """What to do about a file that is not there: take the one beside it whose name is nearly the same."""
    from wallplan.plan.found import find_nearest

    try:
        plans = [one.name for one in path.parent.glob("*.toml")]
    except (OSError, ValueError):
        plans = []
    near = find_nearest(path.name, plans, least=0.75) or find_nearest(f"{path.name}.toml", plans, least=0.9)
    return (f"there is {_printable(str(path.with_name(near)))}" if near else
            "check its name, or write a plan with wallplan new")


def _decode(data: bytes) -> str:
    if b"\0" in data[:2]:  # UTF-16 without its mark has every other byte nought
        raise UnicodeDecodeError("utf-8", data, 0, 1, "")
    return data.decode("utf-8-sig")


def _read_bytes(path: Path) -> bytes:
    with path.open("rb") if _is_file(path) else _no_file() as plan:
        data = plan.read(LARGEST_FILE + 1)
    if len(data) > LARGEST_FILE:
        raise OSError(f"over {LARGEST_FILE:,} bytes, no plan file; write a shorter one")
    return data


def _is_file(path: Path) -> bool:
    mode = path.stat().st_mode
    if stat.S_ISDIR(mode):
        raise OSError("a folder, not a file; name the plan file in it")
    return stat.S_ISREG(mode)


def _no_file() -> Any:
    raise OSError("not an ordinary file; name a plan file")


def _refuse(file: str, message: str, line: int | None = None) -> PlanError:
    return PlanError((PlanMistake(file, line, "", message),))


def _printable(name: str) -> str:
    return "".join(letter if letter.isprintable() else "?" for letter in name)
