"""One browser for all tests of the page, each on a page of its own layout."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.teaching.page.browser import Driver, open_browser, read_console, read_requests, set_screen
from wallplan.layout.model import Layout
from wallplan.teaching.page.build import write_page

Show = Callable[[Layout], Driver]


@pytest.fixture(scope="session")
def driver(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Driver]:
    with open_browser(tmp_path_factory.mktemp("profile")) as opened:
        yield opened


@pytest.fixture
def show(driver: Driver, tmp_path: Path) -> Iterator[Show]:
    """Opens a layout's page on a phone's screen; afterwards nothing may have been asked of a network or complained of."""
    read_console(driver)
    read_requests(driver)

    def open_page(layout: Layout) -> Driver:
        path = tmp_path / "page.html"
        path.write_bytes(write_page(layout))
        set_screen(driver, 360, 740, touch=True)
        driver.get(path.as_uri())
        return driver

    yield open_page
    assert read_console(driver) == []
    assert read_requests(driver) == []
