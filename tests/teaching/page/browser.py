"""A headless browser for tests: where it is, or why there is none; what it asked of a network and what it complained of."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from selenium import webdriver
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service

FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)
NEEDED = "WALLPLAN_NEEDS_BROWSER"
"""Where this is set a missing browser is a failure: the suite's own run installs one."""

Driver = webdriver.Chrome


def find_browser() -> tuple[str, str]:
    """The paths of chromium and its driver; skips the test where one is missing, fails it where they are needed."""
    found = shutil.which("chromium"), shutil.which("chromedriver")
    if found[0] is None or found[1] is None:
        missing = "no chromium" if found[0] is None else "no chromedriver"
        reason = f"{missing} here: apt-get install chromium chromium-driver"
        if os.environ.get(NEEDED):
            pytest.fail(reason)
        pytest.skip(reason)
    return found[0], found[1]


@contextmanager
def open_browser(profile: Path) -> Iterator[Driver]:
    """A browser with a new profile, its console and all that it asks of a network written down."""
    chromium, driver = find_browser()
    options = Options()
    options.binary_location = chromium
    for flag in (*FLAGS, f"--user-data-dir={profile}"):
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    opened = webdriver.Chrome(options=options, service=Service(driver))
    try:
        yield opened
    finally:
        opened.quit()


def set_screen(driver: Driver, width: int, height: int, *, touch: bool = False) -> None:
    """A screen of so many CSS pixels; a phone's where ``touch``."""
    driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
        "width": width, "height": height, "deviceScaleFactor": 1, "mobile": touch})
    driver.execute_cdp_cmd("Emulation.setTouchEmulationEnabled", {"enabled": touch})


def read_console(driver: Driver) -> list[str]:
    """What the browser complained of since it was last asked."""
    return [str(entry["message"]) for entry in driver.get_log("browser")]


def read_requests(driver: Driver) -> list[str]:
    """Addresses that pages from files asked for since it was last asked; a page's own file is no request, nor is data."""
    messages: list[dict[str, Any]] = [json.loads(entry["message"])["message"] for entry in driver.get_log("performance")]
    sent = [message["params"] for message in messages if message["method"] == "Network.requestWillBeSent"]
    asked = [(str(one["request"]["url"]), str(one["documentURL"])) for one in sent]
    return [url for url, page in asked if page.startswith("file:") and url != page and not url.startswith("data:")]
