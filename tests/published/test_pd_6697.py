"""PD 6697, a British recommendation on masonry, from memory: joints that move 12 m apart at most in clay brick, 6 m in block."""

from __future__ import annotations

import pytest

from tests.jobs import MM, make_job, make_masonry, make_wall
from wallplan.layout.build import lay
from wallplan.rules.check import check


@pytest.mark.parametrize(("key", "length", "told"), [
    ("brick-uk", 11_915, ""), ("brick-uk", 12_140, "12000"), ("block-uk-100", 5_840, ""), ("block-uk-100", 6_290, "6000"),
])
def test_masonry_that_goes_on_too_long_without_a_joint_is_told(key: str, length: int, told: str) -> None:
    layout = lay(make_job(make_masonry(key), make_wall(length * MM, 900 * MM), measure="metric"))
    (finding,) = (one for one in check(layout) if one.rule == "control joints")
    said = f"; {length} mm without one, {told} mm at most by the source: ask the designer" if told else ""
    assert finding.held and finding.figure == f"none asked for{said}"
