"""What earlier runs left in a folder: files that were written there, that are as they were written, and that are not drawn
now. They are known by a record of each set, in the form that ``sha256sum --check`` reads.
"""

from __future__ import annotations

import re
import stat
from collections.abc import Iterable, Mapping
from contextlib import suppress
from hashlib import sha256
from pathlib import Path

_LINE = re.compile(r"([0-9a-f]{64})  (.+)")


def name_record(job: str, kind: str) -> str:
    """The record's file name for a job, by its slug, and a kind of set. It begins with a dot: it is not for printing."""
    return f".{job}-{kind}.sha256"


def find_records(folder: Path, kind: str) -> tuple[str, ...]:
    """The records of all jobs' sets of a kind in a folder: in a plan's own folder those of its earlier titles too."""
    end = name_record("", kind)[1:]
    with suppress(OSError):
        return tuple(sorted(path.name for path in folder.iterdir()
                            if path.name.startswith(".") and path.name.endswith(end) and _read_record(path)))
    return ()


def find_left(folder: Path, records: Iterable[str], files: Mapping[str, bytes]) -> dict[str, str]:
    """Files that earlier runs left by these records and that ``files`` does not renew: name -> checksum as written.

    Only what is as it was written counts: what was changed, moved or taken over by other files since is nobody's to touch.
    {} where there is no record, or one that cannot be read.
    """
    told = [item for record in records for item in _read_record(folder / record).items()]
    return {name: checksum for name, checksum in sorted(told) if name not in files and _sum_file(folder / name) == checksum}


def write_record(files: Mapping[str, bytes], left: Mapping[str, str]) -> bytes:
    """The record of a run: what it writes, and what earlier ones left."""
    sums = {**left, **{name: sha256(content).hexdigest() for name, content in files.items()}}
    return "".join(f"{told}  {name}\n" for name, told in sorted(sums.items())).encode()


def may_record(folder: Path, record: str) -> bool:
    """Whether nothing stands where the record belongs, or a record does."""
    path = folder / record
    return (not path.exists() and not path.is_symlink()) or bool(_read_record(path))


def remove_left(folder: Path, left: Mapping[str, str]) -> Iterable[Path]:
    """Remove files left by earlier runs, if they still are as they were written; gives those that are gone."""
    for name, told in left.items():
        path = folder / name
        if _sum_file(path) == told:
            with suppress(OSError):
                path.unlink()
                yield path


def _read_record(path: Path) -> dict[str, str]:
    """Name -> checksum; {} for what is no record from end to end."""
    try:
        lines = path.read_text(encoding="utf-8").splitlines() if stat.S_ISREG(path.lstat().st_mode) else []
    except (OSError, ValueError):
        return {}
    found = [_LINE.fullmatch(line) for line in lines]
    named = {match[2]: match[1] for match in found if match is not None}
    plain = all(name == Path(name).name and not name.startswith(".") for name in named)
    return named if plain and None not in found else {}


def _sum_file(path: Path) -> str | None:
    """An ordinary file's checksum; None for anything else, or nothing."""
    try:
        return sha256(path.read_bytes()).hexdigest() if stat.S_ISREG(path.lstat().st_mode) else None
    except (OSError, ValueError):
        return None
