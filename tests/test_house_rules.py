"""The house rules that a test can hold: budgets, docstrings, the order of the rooms, slow imports, words."""

from __future__ import annotations

import ast
import re
import statistics
import subprocess
from collections.abc import Iterator
from itertools import chain
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
SOURCES = sorted(chain((ROOT / "wallplan").rglob("*.py"), (ROOT / "cli").rglob("*.py")))
TREES = {path: ast.parse(path.read_text(encoding="utf-8")) for path in SOURCES}
ROOMS = ("meant_length", "lengths", "findings", "files", "left_over", "processes", "catalogue", "plan", "bond", "layout", "rules", "lists", "advice", "drawing", "teaching", "planner", "batch")
Function = ast.FunctionDef | ast.AsyncFunctionDef


def functions() -> Iterator[tuple[Path, Function]]:
    for path, tree in TREES.items():
        for node in ast.walk(tree):
            if isinstance(node, Function):
                yield path, node


def length(node: Function) -> int:
    """Lines of a function from its ``def``, decorators left out."""
    return (node.end_lineno or node.lineno) - node.lineno + 1


def is_public(name: str) -> bool:
    return not name.startswith("_")


def test_functions_are_short() -> None:
    lengths = sorted(length(node) for _, node in functions())
    longest = max(functions(), key=lambda found: length(found[1]))
    assert length(longest[1]) <= 40, (longest[0], longest[1].name)
    assert statistics.median(lengths) <= 12
    assert lengths[len(lengths) * 9 // 10] <= 30


def test_modules_are_short() -> None:
    lines = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in SOURCES}
    longest = max(lines, key=lambda path: lines[path])
    assert lines[longest] <= 300, longest
    assert statistics.median(lines.values()) <= 120


def test_every_public_name_has_a_docstring_and_annotations() -> None:
    bare = []
    for path, tree in TREES.items():
        if ast.get_docstring(tree) is None:
            bare.append(f"{path.name}: module")
        for owner in (tree, *(node for node in tree.body if isinstance(node, ast.ClassDef) and is_public(node.name))):
            for node in owner.body:
                if isinstance(node, Function | ast.ClassDef) and is_public(node.name) and ast.get_docstring(node) is None:
                    bare.append(f"{path.name}: {node.name}")
                if isinstance(node, Function) and is_public(node.name) and node.returns is None:
                    bare.append(f"{path.name}: {node.name} says not what it returns")
    assert bare == []


def imports_of(path: Path) -> set[str]:
    """Full names of wallplan modules that a module imports anywhere, in functions too."""
    found: set[str] = set()
    for node in ast.walk(TREES[path]):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("wallplan"):
            found.add(node.module)
        elif isinstance(node, ast.Import):
            found.update(alias.name for alias in node.names if alias.name.startswith("wallplan"))
    return found


def test_the_arrow_between_rooms_never_turns() -> None:
    turned = []
    for path in SOURCES:
        parts = path.relative_to(ROOT).with_suffix("").parts
        if parts[0] != "wallplan" or (parts[-1] == "__init__" and len(parts) == 2):
            continue
        for name in imports_of(path):
            room = name.split(".")[1] if "." in name else "planner"
            if room == "wallplan_cli" or ROOMS.index(room) > ROOMS.index(parts[1]):
                turned.append(f"{path.relative_to(ROOT)} imports {name}")
    assert turned == []


def test_no_import_cycles() -> None:
    graph = {
        ".".join(path.relative_to(ROOT).with_suffix("").parts): imports_of(path)
        for path in SOURCES if path.is_relative_to(ROOT / "wallplan")
    }
    done: set[str] = set()

    def walk(name: str, way: tuple[str, ...]) -> None:
        assert name not in way, " -> ".join((*way, name))
        if name not in done:
            for following in graph.get(name, ()):
                walk(following, (*way, name))
            done.add(name)

    for name in graph:
        walk(name, ())


@pytest.mark.parametrize(("library", "known_to"), [
    ("svgwrite", ["drawing/svg.py"]),
    ("matplotlib", ["drawing/pdf.py"]),
    ("scipy", ["lists/order/nest_search.py"]),
    ("typer", []),
    ("rich", []),
])
def test_a_library_is_known_to_one_module(library: str, known_to: list[str]) -> None:
    using = [
        path.relative_to(ROOT / "wallplan").as_posix() for path in SOURCES if path.is_relative_to(ROOT / "wallplan")
        if re.search(rf"^\s*(from|import) {library}\b", path.read_text(encoding="utf-8"), re.MULTILINE)
    ]
    assert using == known_to


def test_commands_and_layout_wait_with_what_is_slow() -> None:
    """Laying a wall that keeps every rule loads neither numpy nor shapely nor matplotlib."""
    code = (
        "import sys; from pathlib import Path; from wallplan.planner import lay_plan, name_broken_rules\n"
        f"assert name_broken_rules(lay_plan(Path({str(ROOT / 'samples' / 'ticket-kiosk.toml')!r}))) == ()\n"
        "print([name for name in ('numpy', 'scipy', 'shapely', 'matplotlib', 'svgwrite', 'typer') if name in sys.modules])"
    )
    import sys

    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert shown.stdout.strip() == "[]"


def test_the_contributors_page_names_what_exists_and_walks_all_rooms() -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = re.findall(r"`((?:wallplan|cli|tests|docs|\.ci)/[\w/.\-]*)`", page)
    assert [name for name in named if not (ROOT / name).exists()] == []
    steps = [int(number) for number in re.findall(r"^(\d+)\. \*\*", page, re.MULTILINE)]
    assert steps == list(range(1, len(steps) + 1))
    places = [page.index(f"wallplan/{room}") for room in ROOMS if room not in ("planner", "files", "left_over", "processes")]
    walked = [page.index(f"`wallplan/{room}", page.index("## The way of a plan")) for room in
              ("lengths", "findings", "catalogue", "plan/", "layout", "bond", "rules/check", "lists", "drawing/wall", "teaching")]
    assert walked == sorted(walked) and len(places) == len(ROOMS) - 4


def test_the_readme_begins_with_the_job_and_gives_two_commands() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    title, job = readme.split("\n\n")[:2]
    assert title.startswith("# wallplan") and len(job.split()) > 80
    commands = [line for block in re.findall(r"```sh\n(.*?)```", readme, re.DOTALL) for line in block.strip().splitlines()]
    assert len(commands) == 2
    assert (ROOT / commands[0].rsplit(" ", 1)[-1]).exists()
    pictures = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", readme)
    assert pictures and all((ROOT / picture).exists() for picture in pictures)


def test_the_repo_speaks_of_walls_only() -> None:
    tracked = subprocess.run(["git", "ls-files"], capture_output=True, text=True, check=False, cwd=ROOT).stdout.split()
    if not tracked:
        pytest.skip("not a checkout: nothing is tracked")
    assert not [name for name in tracked if name.endswith((".lock", "package-lock.json"))]
    for name in tracked:
        path = ROOT / name
        if path.suffix in {".py", ".md", ".toml", ".txt", ""} and path.is_file() and path != Path(__file__):
            text = path.read_text(encoding="utf-8")
            assert not re.search(r"pypi\.org|pythonhosted|/(home|root|tmp)/", text), name
