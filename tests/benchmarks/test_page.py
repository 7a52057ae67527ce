"""How large the page for the phone is, and how soon a browser has drawn it: its own clock, from asking for the file on."""

from __future__ import annotations

import statistics
from pathlib import Path

import pytest

from tests.teaching.page.browser import Driver, open_browser, set_screen
from wallplan.planner import lay_plan
from wallplan.teaching.page.build import write_page

ROOT = Path(__file__).parents[2]
LOADS = 9
FIRST_DRAWN = """
const paint = performance.getEntriesByName("first-contentful-paint")[0], drawn = performance.getEntriesByName("drawn")[0];
return paint && drawn ? Math.max(paint.startTime, drawn.startTime) : null;
"""
"""Milliseconds until something is painted and the wall is drawn, whichever is later; nothing while either is to come."""


def time_loads(driver: Driver, page: Path) -> float:
    """Median milliseconds until the page is drawn; the first load only fills caches."""
    found = []
    for _ in range(LOADS + 1):
        driver.get("about:blank")
        driver.get(page.as_uri())
        taken = None
        for _ in range(100):
            taken = driver.execute_script(FIRST_DRAWN)
            if taken is not None:
                break
        assert taken is not None, "the page was never painted"
        found.append(float(taken))
    return statistics.median(found[1:])


def test_the_page_of_a_20_ft_wall_of_13_courses_is_small_and_soon_drawn(tmp_path: Path) -> None:
    layout = lay_plan(ROOT / "samples" / "ticket-kiosk.toml")
    assert len(layout.walls[0].courses) == 13
    page = tmp_path / "page.html"
    page.write_bytes(write_page(layout))
    size = page.stat().st_size
    with open_browser(tmp_path / "profile") as driver:
        set_screen(driver, 360, 740, touch=True)
        soon = time_loads(driver, page)
        driver.execute_cdp_cmd("Emulation.setCPUThrottlingRate", {"rate": 4})
        slow = time_loads(driver, page)
    print(f"\n{size / 1000:.0f} kB, drawn after {soon:.0f} ms; by a processor of a quarter of the speed after {slow:.0f} ms")
    assert size < 500_000
    assert soon < 300


@pytest.mark.parametrize("sample", ["kiosk-with-porch", "boat-store", "pump-house"])
def test_pages_of_whole_buildings_are_small(sample: str) -> None:
    assert len(write_page(lay_plan(ROOT / "samples" / f"{sample}.toml"))) < 500_000
