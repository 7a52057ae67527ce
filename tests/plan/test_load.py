"""Files that are no plans: one clear line each, in well under a second."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from tests.plan.kiosk import KIOSK, changed
from wallplan.findings import PlanError
from wallplan.plan.load import LARGEST_FILE, MOST_TOLD, load_plan, read_plan
from wallplan.plan.syntax import MOST_COMMAS

SOON = 10.0
"""Seconds: a guard against hanging, with much room for a busy machine; speed itself is for the benchmarks."""


def refusal_of(path: Path) -> str:
    """The one line that a file is refused with."""
    started = time.perf_counter()
    with pytest.raises(PlanError) as refused:
        load_plan(path)
    assert time.perf_counter() - started < SOON
    (mistake,) = refused.value.mistakes
    assert str(mistake).isprintable()
    assert str(refused.value) == str(mistake)
    return str(mistake).removeprefix(str(path))


def written(folder: Path, data: bytes | str) -> Path:
    path = folder / "kiosk.toml"
    path.write_bytes(data.encode() if isinstance(data, str) else data)
    return path


def test_a_plan_is_loaded(tmp_path: Path) -> None:
    assert load_plan(written(tmp_path, KIOSK)) == read_plan(KIOSK, "elsewhere.toml")


def test_a_mark_of_byte_order_is_taken_off(tmp_path: Path) -> None:
    assert load_plan(written(tmp_path, KIOSK.encode("utf-8-sig"))).title == "Ferry landing"


def test_mistakes_name_the_file(tmp_path: Path) -> None:
    path = written(tmp_path, changed("courses = 13", "courses = 0"))
    with pytest.raises(PlanError) as refused:
        load_plan(path)
    assert str(refused.value).startswith(f'{path}:28: wall "Water side": courses: 0 is not')


def test_a_missing_file(tmp_path: Path) -> None:
    assert refusal_of(tmp_path / "no.toml").startswith(": no such file; check its name")


def test_a_folder(tmp_path: Path) -> None:
    assert refusal_of(tmp_path) == ": a folder, not a file; name the plan file in it"


def test_a_file_used_as_a_folder(tmp_path: Path) -> None:
    assert refusal_of(written(tmp_path, KIOSK) / "plan.toml")


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert refusal_of(tmp_path / "pipe") == ": not an ordinary file; name a plan file"


def test_a_name_that_no_file_may_have() -> None:
    assert "null" in refusal_of(Path("a\0b"))


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read every file")
def test_a_file_that_may_not_be_read(tmp_path: Path) -> None:
    path = written(tmp_path, KIOSK)
    path.chmod(0)
    assert "may not be read" in refusal_of(path)


def test_fifty_megabytes_of_garbage(tmp_path: Path) -> None:
    path = written(tmp_path, b"")
    os.truncate(path, 50_000_000)
    assert refusal_of(path).startswith(f": over {LARGEST_FILE:,} bytes")


@pytest.mark.parametrize("encoding", ["latin-1", "utf-16", "utf-16-le"])
def test_text_that_is_not_utf_8(tmp_path: Path, encoding: str) -> None:
    path = written(tmp_path, KIOSK.replace("Water", "Fähre").encode(encoding))
    line = 26 if encoding == "latin-1" else 1
    assert refusal_of(path) == f":{line}: not UTF-8 text; save the plan as plain text in UTF-8"


@pytest.mark.parametrize(("old", "new", "line", "said"), [
    ("length = \"20'\"", "length = 20' 4", 9, "more on the line than one value; put texts and lengths in quotes"),
    ("length = \"20'\"", 'length = "20\' 4""', 9, "a length that ends in an inch mark is written '4\"'"),
    ("length = \"20'\"", 'length = "20\'', 9, "a text whose closing quote is missing"),
    ("length = \"20'\"", "length =", 9, "no value that can be read"),
    ("length = \"20'\"", "length", 9, "a key without an equals sign"),
    ("length = \"20'\"", "length = 20\nlength = 21", 10, "a key given twice"),
    ("length = \"20'\"", "länge = 20", 9, 'länge: "ä" may not stand in a key; write key = value, with plain letters'),
    ("length = \"20'\"", "length = 12-4", 9, "more on the line than one value"),
    ("[masonry]", "[masonry", 4, "a heading that is not closed"),
    ("[masonry]", "[]", 4, '"[]": a heading without a name'),
    ("[masonry]", '[masonry]\nunit = "block-8"\n[masonry]', 6, "a table given twice"),
    ('title = "Ferry landing"', 'title = "Ferry\\landing"', 1, "a backslash in a text"),
    ("courses = 13", "courses = [13", 29, ""),
    ("courses = 13", 'courses = """13', 28, "a text whose closing quote is missing"),
    ("courses = 13", "courses = " + "9" * 5000, 28, "a number of more than 1,000 digits"),
    ("courses = 13", "a." * 30 + "b = 1", 28, "a key of more than 20 parts"),
    ("courses = 13", "x = 1\ncourses = " + "[" * 50_000 + "]" * 50_000, None, "lists or tables inside each other too deep"),
])
def test_text_that_is_not_toml(tmp_path: Path, old: str, new: str, line: int | None, said: str) -> None:
    told = refusal_of(written(tmp_path, changed(old, new)))
    assert said in told
    assert told.startswith(f":{line}: " if line and said else ":")


@pytest.mark.parametrize("text", [
    "x" * 999_000, "[" * 999_000, '"' * 999_000, "a.b." * 240_000 + "c = 1", '"a".' * 240_000 + "c = 1", "a = {" * 190_000,
    "# " * 400_000, "9" * 999_000, "a = 0x" + "f" * 900_000, f"bond_beams = [{'1,' * 450_000}]", "\n" * 900_000, "\0" * 900_000,
    "{" * 999_000, "'" * 999_000, "a = '''" + "'" * 900_000, "\\" * 999_000, "=" * 999_000, "[a" * 400_000, "a\n" * 400_000,
    "".join(f"k{n} = 1\n" for n in range(80_000)), "[[wall]]\n" * 100_000, "".join(f"k{n} = 1\n" for n in range(19_000)),
    "[[wall]]\n" * 19_000, "wall = [" + "{}," * 19_000 + "]", "x = {" + ",".join(f"k{n} = 1" for n in range(19_000)) + "}",
    "[masonry]\n" + "".join(f"bont{n} = '{'x' * 30}'\n" for n in range(19_000)),
    'title="x"\nmeasure="feet"\n[masonry]\nunit="block-8"\n[[wall]]\nname="w"\nlength="1000"\nheight="1000"\n'
    + "[[wall.opening]]\nfrom_left=9\nwidth=990\nheight=990\n" * 200,
    'title="x"\nmeasure="feet"\n[masonry]\nunit="block-8"\n' + "".join(
        f'[[wall]]\nname="w{n}"\nlength="1000"\nheight="1000"\n'
        + "[[wall.opening]]\nfrom_left=9\nwidth=980\nheight=990\n" * 24 for n in range(90)),
])
def test_a_megabyte_of_anything_is_refused_soon(tmp_path: Path, text: str) -> None:
    started = time.perf_counter()
    with pytest.raises(PlanError) as refused:
        load_plan(written(tmp_path, text))
    assert time.perf_counter() - started < SOON
    assert str(refused.value.mistakes[0]).isprintable()


def test_many_mistakes_are_told_up_to_a_number_and_then_counted(tmp_path: Path) -> None:
    with pytest.raises(PlanError) as refused:
        load_plan(written(tmp_path, KIOSK + "".join(f"k{n} = 1\n" for n in range(700))))
    assert len(refused.value.mistakes) == MOST_TOLD + 1
    assert str(refused.value.mistakes[-1]).endswith(": 200 more mistakes; mend these first")


def test_a_wall_of_a_million_courses(tmp_path: Path) -> None:
    assert ":28: wall \"Water side\": courses: 1000000 is not" in refusal_of(
        written(tmp_path, changed("courses = 13", "courses = 1_000_000")))
    assert "is over 3,000 m" in refusal_of(written(tmp_path, changed("courses = 13", "height = 8_000_000")))


def test_a_list_of_as_many_bond_beams_as_may_be_read(tmp_path: Path) -> None:
    beams = "1," * (MOST_COMMAS - 10)
    assert "bond_beams: more than 5,000" in refusal_of(
        written(tmp_path, changed("courses = 13", f"courses = 13\nbond_beams = [{beams}]")))


def test_a_thousand_units_by_a_thousand_courses_is_a_plan() -> None:
    job = read_plan(changed("length = \"12'\"", "length = 15_999").replace("courses = 13", "courses = 1000"), "mole.toml")
    assert job.walls[1].height == 1000 * job.masonry.unit.gauge


def test_more_walls_or_openings_than_are_laid_are_refused_in_one_line(tmp_path: Path) -> None:
    walls = "".join(f'[[wall]]\nname = "w{n}"\nlength = 99\nheight = 99\n' for n in range(199))
    assert ": wall: more than 200 are not laid" in refusal_of(written(tmp_path, KIOSK + walls))
    openings = "".join(f"[[wall.opening]]\nfrom_left = {n}\nwidth = 1\nheight = 1\n" for n in range(201))
    assert "opening: more than 200 are not laid" in refusal_of(written(tmp_path, KIOSK + openings))
