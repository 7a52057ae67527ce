"""What the terminal and the shell do to a command: Ctrl-C, a reader that goes away, streams that are closed."""

import os
import resource
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.cli.running import ROOT, SAMPLES, run, start

WALLPLAN = [sys.executable, "-m", "wallplan_cli"]


def in_shell(line: str, **variables: str) -> subprocess.CompletedProcess[bytes]:
    """A line of bash in which $W is the command and $K a sample."""
    return subprocess.run(
        ["bash", "-c", line], capture_output=True, check=False, cwd=ROOT,
        env={**os.environ, **variables, "W": " ".join(WALLPLAN), "K": str(SAMPLES / "pier.toml")},
    )


def test_a_reader_that_has_seen_enough_ends_the_command_quietly() -> None:
    shown = in_shell('( $W units --json -; echo "ended with $?" >&2 ) | head -c 1')
    # 13 is SIGPIPE: by it any command of the system ends there. A quick one may have said all before.
    assert shown.stdout == b"{" and shown.stderr in (b"ended with 141\n", b"ended with 0\n")


def test_standard_output_that_is_closed_is_told_and_nothing_is_done(tmp_path: Path) -> None:
    shown = in_shell(f"$W sheets $K --into {tmp_path}/out >&-")
    assert (shown.returncode, shown.stderr) == (3, b"standard output: cannot be written: it is closed\n")
    assert not list(tmp_path.iterdir())


def test_standard_error_that_is_closed_hinders_nothing() -> None:
    assert in_shell("$W lay $K 2>&-").stdout == in_shell("$W lay $K").stdout
    assert in_shell("$W lay none.toml 2>&-").returncode == 2


def test_new_without_a_terminal_to_ask_at(tmp_path: Path) -> None:
    for line in ("$W new {}/wall.toml <&-", "$W new {}/wall.toml </dev/null"):
        shown = in_shell(line.format(tmp_path))
        assert shown.returncode == 2 and shown.stderr.endswith(b"stopped: nothing is written\n")
        assert b"Traceback" not in shown.stderr and not list(tmp_path.iterdir())


def test_answers_that_are_no_text_are_asked_again(tmp_path: Path) -> None:
    shown = in_shell(f"printf '\\xff\\n\\nfeet\\n' | $W new {tmp_path}/wall.toml")
    assert shown.returncode == 2 and b"That cannot be a name" in shown.stderr


def test_a_terminal_that_lacks_letters_is_shown_what_it_can_show(tmp_path: Path) -> None:
    plan = tmp_path / "plan.toml"
    text = (SAMPLES / "pier.toml").read_text(encoding="utf-8").replace('"Gate pier"', '"Bootshaus Südłe"')
    plan.write_text(text, encoding="utf-8")
    shown = in_shell(f"$W lay {plan}", PYTHONIOENCODING="latin-1")
    assert (shown.returncode, shown.stderr) == (0, b"") and shown.stdout.startswith(b"Bootshaus S\xfcd?e\n")
    told = in_shell(f"$W lay {plan} --json -", PYTHONIOENCODING="latin-1")
    assert '"title":"Bootshaus Südłe"'.encode() in told.stdout


def test_a_name_that_is_no_text(tmp_path: Path) -> None:
    plan = os.fsencode(tmp_path) + b"/\xff.toml"
    Path(os.fsdecode(plan)).write_bytes((SAMPLES / "pier.toml").read_bytes())
    shown = in_shell(f"$W sheets {tmp_path}/*.toml --only order")
    assert (shown.returncode, shown.stderr) == (0, b"")


def test_ctrl_c_at_a_question(tmp_path: Path) -> None:
    asking = start("new", tmp_path / "wall.toml")
    assert asking.stderr
    told = b""
    while b"Press Enter" not in told:
        told += os.read(asking.stderr.fileno(), 1000)
    time.sleep(0.1)
    asking.send_signal(signal.SIGINT)
    told += asking.stderr.read()
    assert asking.wait(30) == 130
    assert told.splitlines()[-1].endswith(b"stopped; no file is half written")
    assert b"Traceback" not in told and not list(tmp_path.iterdir())


@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="this system does not show a process's helpers")
@pytest.mark.parametrize("group", [True, False], ids=["to all processes, as a terminal does", "to one process"])
def test_ctrl_c_while_several_processes_work(group: bool, tmp_path: Path) -> None:
    plan = tmp_path / "plan.toml"
    openings = "".join(f'[[wall.opening]]\nname="{n}"\nfrom_left="{5 + 9 * n}\' 5"\nwidth="3\' 1"\nheight="7\' 3"\n' for n in range(4))
    plan.write_text('title="Quay"\nmeasure="feet"\n[masonry]\nunit="block-8"\n' + "".join(
        f'[[wall]]\nname="{name}"\nlength="45\' 3"\nheight="9\'"\n{openings}' for name in ("North", "South")), encoding="utf-8")
    working = subprocess.Popen(
        [*WALLPLAN, "advise", str(plan), "--thorough"], cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        start_new_session=True, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (30, 30)))  # never left at work
    helpers = Path(f"/proc/{working.pid}/task/{working.pid}/children")
    for _ in range(1000):
        if len(found := helpers.read_text(encoding="ascii").split()) > 1:
            break
        time.sleep(0.01)
    else:
        pytest.skip("one processor: no helpers")
    (os.killpg if group else os.kill)(working.pid, signal.SIGINT)
    out, told = working.communicate(timeout=30)
    assert (working.returncode, out, told) == (130, b"", b"stopped; no file is half written\n")
    for _ in range(100):
        if not any(Path(f"/proc/{helper}").exists() for helper in found):
            return
        time.sleep(0.05)
    pytest.fail("a helper works on")


def test_status_of_a_command_that_ends_by_itself_is_kept() -> None:
    assert [run(*words).returncode for words in (("lay", SAMPLES / "breaks-a-rule.toml"), ("lay",), ("--help",))] == [1, 2, 0]
