"""Run a program as one who must heed leave (file modes), also where the tests run as root, who need not."""

from __future__ import annotations

import ctypes
import os
import resource
from collections.abc import Callable

DROP_CAPABILITY, OVERRIDE_LEAVE, READ_ANYTHING = 24, 1, 2
"""PR_CAPBSET_DROP, CAP_DAC_OVERRIDE and CAP_DAC_READ_SEARCH of the Linux kernel's prctl(2) and capabilities(7)."""


def heed_leave() -> None:
    """For ``preexec_fn``: root's right to write where the mode says no is given up. Others never had it."""
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        for right in (OVERRIDE_LEAVE, READ_ANYTHING):
            if ctypes.CDLL(None).prctl(DROP_CAPABILITY, right, 0, 0, 0):
                raise OSError("root's rights cannot be given up here")


def limit_files(size: int) -> Callable[[], None]:
    """For ``preexec_fn``: no file may grow over so many bytes, as if the disk were full."""
    return lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
