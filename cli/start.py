"""Where the command ``wallplan`` begins and ends: what the terminal, the shell or the disk may do to it, in one line each.

130: stopped by Ctrl-C. By a reader of its output that has gone away it is ended as the system ends any command.
"""

from __future__ import annotations

import atexit
import errno
import gc
import io
import os
import signal
import sys
from contextlib import suppress
from pathlib import Path
from types import FrameType
from typing import NoReturn

UNWRITTEN, STOPPED = 3, 130
STOPPED_WORDS = "stopped; no file is half written"


class Stopped(BaseException):
    """Ctrl-C. No Exception, so that nothing on the way takes it for a fault and goes on."""


def main() -> None:
    """Run the command line; ends the process with 0, 1, 2, 3 or 130, or as a lost reader ends any command."""
    stopping = list[bool]()
    # What a command makes is nearly all kept to its end: looking through it for what is not costs a twelfth of its time.
    gc.set_threshold(100_000, 50, 50)
    try:
        _heed_ctrl_c(os.getpid(), stopping)
        _open_streams()
        # Looking for other packages' plug-ins to pydantic costs a tenth of a command's start, and the schema wants none.
        os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
        status = _run()
    except BaseException as end:
        if stopping:  # whatever came of it: Stopped is lost where Python is tidying up
            _end(STOPPED, STOPPED_WORDS)
        if _is_reader_gone(end):
            _end_quietly()
        if isinstance(end, OSError):  # files tell their own faults; what is left is standard output's
            if _is_folder_gone():
                _end(UNWRITTEN, "the folder that you stand in is not there any more; go to another, and call again")
            full = "the disk is full" if end.errno == errno.ENOSPC else end.strerror or str(end)
            _end(UNWRITTEN, f"standard output: cannot be written: {full}")
        raise
    # All is said and tidied up: Python need not take a hundred modules apart first.
    atexit._run_exitfuncs()
    os._exit(status)


def _run() -> int:
    """The command line's status, with all that it says written out; raises what hinders it."""
    from wallplan_cli.main import app  # only now, so that Ctrl-C is heeded while it is imported

    try:
        app()
    except SystemExit as end:
        if not isinstance(end.code, int) or not isinstance(sys.stdout, io.TextIOBase):
            raise
        sys.stdout.flush()
        with suppress(OSError):
            sys.stderr.flush()
        return end.code
    return 0


def _heed_ctrl_c(own: int, stopping: list[bool]) -> None:
    def stop(number: int, frame: FrameType | None) -> None:
        if os.getpid() != own:
            os._exit(STOPPED)  # a helper process: the one that started it tells
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        stopping.append(True)
        if "multiprocessing" in sys.modules:
            _end_soon()
        sys.unraisablehook = lambda missed: None
        raise Stopped

    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:  # not where the shell lets it be ignored
        signal.signal(signal.SIGINT, stop)


def _end_soon() -> None:
    """Give what is being written a second to be cleared away; helpers may take longer, and end by themselves."""
    from threading import Timer

    watch = Timer(1.0, _end, (STOPPED, STOPPED_WORDS))
    watch.daemon = True
    watch.start()


def _is_reader_gone(end: BaseException) -> bool:
    """Whether nobody reads standard output any more; typer then puts something in its place that is no stream."""
    return isinstance(end, BrokenPipeError) or (
        isinstance(end, SystemExit) and not isinstance(sys.stdout, io.TextIOBase))


def _is_folder_gone() -> bool:
    try:
        Path.cwd()
    except OSError:
        return True
    return False


def _end_quietly() -> NoReturn:
    signal.signal(signal.SIGPIPE, signal.SIG_DFL)
    os.kill(os.getpid(), signal.SIGPIPE)
    os._exit(128 + signal.SIGPIPE)


def _open_streams() -> None:
    """Make the three streams fit for use: a letter that the terminal cannot show becomes ?, and a closed one is told."""
    if sys.stderr is None:
        sys.stderr = io.StringIO()
    if sys.stdout is None:
        _end(UNWRITTEN, "standard output: cannot be written: it is closed")
    if sys.stdin is None:
        sys.stdin = io.StringIO()
    for stream, errors in ((sys.stdout, "replace"), (sys.stdin, "surrogateescape")):
        if isinstance(stream, io.TextIOWrapper) and stream.errors == "strict":
            stream.reconfigure(errors=errors)


def _end(status: int, message: str) -> NoReturn:
    try:
        sys.stderr.write(f"{message}\n")
        sys.stderr.flush()
    finally:
        os._exit(status)  # at once: what standard output still holds cannot be written
