"""Files written whole or not at all: beside their place first, then renamed over it.

What is being written stands in a scratch folder within the folder that it is meant for, so that the rename cannot fail for
want of room. A run that is killed leaves its scratch folder behind; the next run into that folder clears it away. Scratch
folders of runs that are still at work are locked, and left alone.
"""

from __future__ import annotations

import errno
import os
import re
import stat
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from itertools import count
from pathlib import Path

_SCRATCH = re.compile(r"\.wallplan-\d+-\d+")
_PLAIN_WORDS = {
    errno.ENOSPC: "the disk is full", errno.EDQUOT: "your share of the disk is full",
    errno.EFBIG: "the file grows too large",
    errno.EACCES: "you have no leave to write there", errno.EPERM: "you have no leave to write there",
    errno.EROFS: "the disk can only be read", errno.ENAMETOOLONG: "the name is too long",
    errno.ENOTDIR: "a file stands where a folder is wanted", errno.EEXIST: "a file stands where a folder is wanted",
    errno.ELOOP: "a link leads back to itself",
}


class FileFault(Exception):
    """A file that cannot be written; what was there is still there. The message is one line."""


def write_files(folder: Path, contents: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write files into a folder, which is made if need be: all beside their places, then each renamed over its own.

    Returns their paths. Raises FileFault, with nothing of its own left behind, if any cannot be written. What stands there
    keeps its leave (who may read and write it); a file that may not be written, a folder or a device is never replaced.
    """
    at = folder
    made = list[Path]()
    try:
        made = _make_folder(folder)
        with _scratch(folder) as scratch:
            for name, content in contents.items():
                at = folder / name
                _write(scratch / name, content, _find_leave(at))
            for name in contents:
                at = folder / name
                os.replace(scratch / name, at)
    except (OSError, ValueError) as fault:
        raise explain_fault(at, fault) from None
    finally:
        _remove_empty(made)
    return tuple(folder / name for name in contents)


def write_file(path: Path, content: bytes) -> None:
    """Write one file as ``write_files`` does. A link is followed, so that what it points to is renewed; a device or a pipe
    is written to as it is.
    """
    try:
        if path.exists() and not path.is_file() and not path.is_dir():
            path.write_bytes(content)
            return
        target = path.resolve() if path.is_symlink() else path
    except (OSError, RuntimeError, ValueError) as fault:  # RuntimeError: how Python tells of a link that leads to itself
        raise explain_fault(path, fault) from None
    write_files(target.parent, {target.name: content})


def write_new_file(path: Path, content: bytes) -> None:
    """Write a file that is not there yet. Raises FileFault, and leaves it alone, where anything has its name."""
    made = list[Path]()
    try:
        made = _make_folder(path.parent)
        with _scratch(path.parent) as scratch:
            _write(scratch / path.name, content, None)
            _link(scratch / path.name, path)
    except FileExistsError:
        raise FileFault(f"{path}: is there already and stays as it is; give another name, or move it away first") from None
    except (OSError, ValueError) as fault:
        raise explain_fault(path, fault) from None
    finally:
        _remove_empty(made)


def explain_fault(path: Path | str, fault: Exception) -> FileFault:
    """The fault in one line: what cannot be written, and why, in plain words."""
    number = fault.errno if isinstance(fault, OSError) else errno.ELOOP if isinstance(fault, RuntimeError) else None
    said = _PLAIN_WORDS.get(number or 0) or getattr(fault, "strerror", None) or str(fault)
    return FileFault(f"{path}: cannot be written: {said}")


def _make_folder(folder: Path) -> list[Path]:
    """The folder with those above it; those that were not there are returned, outermost first."""
    wanted = [path for path in (*reversed(folder.parents), folder) if not path.exists()]
    made = []
    for path in wanted:
        with suppress(FileExistsError):  # another run was quicker
            path.mkdir()
            made.append(path)
    if not folder.is_dir():
        raise NotADirectoryError(errno.ENOTDIR, "", str(folder))
    return made


def _remove_empty(made: list[Path]) -> None:
    """Remove folders that were made for what was then not written."""
    for path in reversed(made):
        with suppress(OSError):
            path.rmdir()


def _find_leave(path: Path) -> int | None:
    """Who may read and write what stands at a path, None where nothing does. Raises FileFault for what must stay."""
    try:
        mode = path.stat(follow_symlinks=False).st_mode
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(mode):
        raise FileFault(f"{path}: cannot be written: a folder of that name is there")
    if stat.S_ISLNK(mode):
        return None
    if not stat.S_ISREG(mode):
        raise FileFault(f"{path}: cannot be written: what has that name is no ordinary file")
    if not mode & 0o222:
        raise FileFault(f"{path}: cannot be written: the file there may only be read")
    return stat.S_IMODE(mode)


def _write(path: Path, content: bytes, leave: int | None) -> None:
    with path.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    if leave is not None:
        path.chmod(leave)


def _link(path: Path, target: Path) -> None:
    """Give a file a second name, unless that name is taken."""
    try:
        os.link(path, target)
    except FileExistsError:
        raise
    except OSError:  # a disk without second names, such as a memory stick's
        if os.path.lexists(target):
            raise FileExistsError(errno.EEXIST, "", str(target)) from None
        path.rename(target)


@contextmanager
def _scratch(folder: Path) -> Iterator[Path]:
    """A scratch folder, locked while it is used and gone with all in it afterwards. Those of killed runs go too."""
    _clear_left_over(folder)
    scratch, lock = next(found for number in count() if (found := _take_scratch(folder, number)))
    try:
        yield scratch
    finally:
        _remove(scratch)
        if lock is not None:
            os.close(lock)


def _take_scratch(folder: Path, number: int) -> tuple[Path, int | None] | None:
    """A new scratch folder and its lock; None where the name is taken, or another run cleared it as it was made."""
    scratch = folder / f".wallplan-{os.getpid()}-{number}"
    try:
        scratch.mkdir()
    except FileExistsError:
        return None
    lock = _lock(scratch, wait=True)
    if lock is not None and not scratch.exists():
        os.close(lock)
        return None
    return scratch, lock


def _clear_left_over(folder: Path) -> None:
    for path in folder.iterdir():
        if _SCRATCH.fullmatch(path.name) and (lock := _lock(path, wait=False)) is not None:
            _remove(path)
            os.close(lock)


def _lock(scratch: Path, *, wait: bool) -> int | None:
    """A lock on a folder, None where it is held by another or there are no locks; then nothing is cleared away."""
    try:
        import fcntl  # not on every system
    except ImportError:
        return None
    lock = None
    try:
        lock = os.open(scratch, os.O_RDONLY | os.O_DIRECTORY | os.O_NOFOLLOW)
        fcntl.flock(lock, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    except OSError:
        if lock is not None:
            os.close(lock)
        return None
    return lock


def _remove(scratch: Path) -> None:
    with suppress(OSError):
        for path in scratch.iterdir():
            path.unlink()
        scratch.rmdir()


def slug(name: str) -> str:
    """A name as it may stand in a file's name: letters and digits, all else a dash; "job" where nothing is left.

    At most 60 characters, and 100 bytes, so that a job's and a wall's name fit into one file's.
    """
    short = re.sub(r"[^\w]+|_+", "-", name.casefold()).strip("-")[:60]
    return short.encode()[:100].decode(errors="ignore") or "job"
