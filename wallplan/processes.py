"""Processes that help the one that was called: they end when it does, however it ends, and leave Ctrl-C to it."""

from __future__ import annotations


def end_with_the_first() -> None:
    """To be called first in a helping process. In the process that was called it only has Ctrl-C ignored."""
    import os
    import signal
    from multiprocessing import parent_process
    from multiprocessing.connection import wait
    from threading import Thread

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    first = parent_process()
    if first is not None:
        sentinel = first.sentinel

        def follow() -> None:
            wait([sentinel])
            os._exit(1)

        Thread(target=follow, daemon=True).start()
