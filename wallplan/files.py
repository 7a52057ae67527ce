"""Files written whole or not at all: beside their place first, then renamed over it."""

from __future__ import annotations

import os
import re
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path


class FileFault(Exception):
    """A file that cannot be written; what was there is still there. The message is one line."""


def write_files(folder: Path, contents: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write files into a folder, which is made if need be: all beside their places, then each renamed over its own.

    Returns their paths. Raises FileFault, with nothing of its own left behind, if any cannot be written.
    """
    written: dict[str, Path] = {}
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in contents.items():
            if (folder / name).is_dir():
                raise FileFault(f"{folder / name}: cannot be written: a folder of that name is there")
            written[name] = _write_beside(folder, content)
        for name, path in written.items():
            os.replace(path, folder / name)
    except OSError as fault:
        raise FileFault(f"{fault.filename2 or fault.filename or folder}: cannot be written: {fault.strerror}") from fault
    finally:
        for path in written.values():
            with suppress(OSError):
                path.unlink()
    return tuple(folder / name for name in contents)


def write_file(path: Path, content: bytes) -> None:
    """Write one file as ``write_files`` does. A link is followed, so that what it points to is renewed."""
    target = path.resolve() if path.is_symlink() else path
    if target.parent.exists() and not target.parent.is_dir():
        raise FileFault(f"{path}: cannot be written: {target.parent} is no folder")
    write_files(target.parent, {target.name: content})


def _write_beside(folder: Path, content: bytes) -> Path:
    import tempfile  # with much behind it; most commands write no file

    handle, name = tempfile.mkstemp(prefix=".wallplan-", suffix=".part", dir=folder)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(name, 0o666 & ~_umask())
    except BaseException:
        with suppress(OSError):
            os.unlink(name)
        raise
    return Path(name)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def slug(name: str) -> str:
    """A name as it may stand in a file's name: letters and digits, all else a dash; "job" where nothing is left."""
    return re.sub(r"[^\w]+|_+", "-", name.casefold()).strip("-")[:60] or "job"
