"""The page as a file: the same for the same layout, in one piece, and its policy."""

from __future__ import annotations

import base64
import hashlib
import re

from tests.jobs import pump_house
from wallplan.layout.build import lay
from wallplan.teaching.page.build import write_page


def test_the_same_layout_gives_the_same_bytes() -> None:
    assert write_page(lay(pump_house())) == write_page(lay(pump_house()))


def test_the_policy_knows_the_one_script_and_the_one_style_by_their_sums() -> None:
    page = write_page(lay(pump_house())).decode()
    policy = re.findall(r'Content-Security-Policy" content="([^"]*)"', page)[0]
    assert policy.startswith("default-src 'none';")
    for kind, element in (("script-src", "<script>"), ("style-src", "<style>")):
        inside = page.partition(element)[2].partition(f"</{element[1:]}")[0]
        digest = base64.b64encode(hashlib.sha256(inside.encode()).digest()).decode()
        assert f"{kind} 'sha256-{digest}'" in policy
    assert "unsafe" not in policy and "http" not in policy


def test_nothing_on_the_page_names_a_place_elsewhere() -> None:
    page = write_page(lay(pump_house())).decode()
    assert re.findall(r"""(?:src|href|action|url)\s*[=(]\s*["']?([^"'>\s)]+)""", page) == ["data:,", "#lesson"]
    assert re.findall(r"https?://[^\"' ]+", page) == ["http://www.w3.org/2000/svg"], "the name of the drawing's own language"


def test_no_style_is_set_where_the_policy_would_forbid_it() -> None:
    assert " style=" not in write_page(lay(pump_house())).decode()
