"""The plane of swatches: true places at one scale, and files that other programs read."""

import csv
import io
import random
import xml.etree.ElementTree as ET

import pytest

from studio_log.present.swatch_files import csv_of, svg_of
from studio_log.present.swatch_plot import MOST_PANELS, Coloured, lay_out_plot, reach_of_axes
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.shown import shown_as

SIZE, LINE = (900.0, 700.0), 18.0
SVG = "{http://www.w3.org/2000/svg}"


def swatch(code: str, lab: Lab, lot: str = "26-001", **more: object) -> Coloured:
    values = {"lot_name": "Runners", "relative": False, "told": f"{code} told"} | more
    return Coloured(code, lot, lab=lab, shown=shown_as(lab)[0], **values)  # type: ignore[arg-type]


def many(count: int = 80) -> list[Coloured]:
    chance = random.Random(2)
    return [
        swatch(
            f"W26-{one:03d}",
            Lab(chance.uniform(20, 90), chance.gauss(10, 20), chance.gauss(15, 20)),
            f"26-{one % 15:03d}",
        )
        for one in range(count)
    ]


@pytest.mark.parametrize(
    ("colours", "end"), [([], 20), ([Lab(50, 19, 0)], 20), ([Lab(50, 20, 0)], 40),
                         ([Lab(50, 3, -61)], 80)],
)  # fmt: skip
def test_the_axes_end_at_the_next_whole_step(colours: list[Lab], end: int) -> None:
    assert reach_of_axes(colours) == end


def test_a_swatch_stands_where_its_colour_says() -> None:
    """By CIELAB: a* to the right, b* up, one step across as long as one up."""
    found = lay_out_plot([swatch("W26-001", Lab(50, 30, -10))], SIZE, LINE)
    (panel,) = found.panels
    (dot,) = panel.dots
    across = (dot.x - panel.left) / panel.side * 2 * found.reach - found.reach
    up = found.reach - (dot.y - panel.top) / panel.side * 2 * found.reach
    assert (across, up) == pytest.approx((30, -10))
    assert dot.shown == shown_as(Lab(50, 30, -10))[0]


@pytest.mark.parametrize("by_lot", [False, True])
@pytest.mark.parametrize("size", [(900.0, 700.0), (400.0, 900.0), (300.0, 200.0)])
def test_nothing_leaves_its_panel_and_no_panel_the_sheet(
    size: tuple[float, float], *, by_lot: bool
) -> None:
    found = lay_out_plot(many(), size, 12.0, by_lot=by_lot)
    assert len(found.panels) == (MOST_PANELS if by_lot else 1)
    assert found.left_out == (3 if by_lot else 0)
    for panel in found.panels:
        for dot in panel.dots:
            assert panel.left <= dot.x <= panel.left + panel.side
            assert panel.top <= dot.y <= panel.top + panel.side
        assert panel.side == found.panels[0].side, "one scale"
    if size[0] > 300:
        for panel in found.panels:
            assert panel.left >= 0
            assert panel.top >= 0
            assert panel.left + panel.side <= size[0]
            assert panel.top + panel.side <= size[1]
            for other in found.panels:
                if other is not panel:
                    assert (
                        abs(other.left - panel.left) >= panel.side
                        or abs(other.top - panel.top) >= panel.side
                    )


def test_light_ones_lie_on_dark_ones() -> None:
    found = lay_out_plot(many(), SIZE, LINE)
    codes = {one.code: one.lab.lightness for one in many()}
    order = [codes[dot.code] for dot in found.panels[0].dots]
    assert order == sorted(order)


def test_the_drawing_is_whole_and_holds_hostile_words_as_words() -> None:
    """Read by Python's own XML parser."""
    hostile = swatch(
        "W26-001", Lab(40, 5, 5), lot_name='</g><script>"&\x00\x0b', told="<b>&\x01\nword"
    )
    relative = swatch("W26-002", Lab(60, -10, 20), relative=True)
    text = svg_of(lay_out_plot([hostile, relative], SIZE, LINE, by_lot=True), "Title & <more>")
    root = ET.fromstring(text)
    assert root.tag == f"{SVG}svg"
    assert root.findall(f".//{SVG}script") == []
    fills = [
        one.get("fill") for one in root.iter(f"{SVG}circle") if one.find(f"{SVG}title") is not None
    ]
    assert fills == [hostile.shown, "none"], "true colour; hollow where relative only"
    titles = [one.text for one in root.iter(f"{SVG}title")]
    assert "Title & <more>" in titles
    assert "<b>&\nword" in titles


def test_the_figures_come_out_as_they_are_and_no_cell_is_a_formula() -> None:
    """Read by Python's own csv module."""
    rows = [
        swatch("W26-001", Lab(52.1234, -31.8, 24.0), lot_name="=1+1"),
        swatch("W26-002", Lab(50, 0, 0), lot_name="-2 \n@x", relative=True),
    ]
    found = list(csv.DictReader(io.StringIO(csv_of(rows))))
    assert [float(found[0][name]) for name in ("L", "a", "b")] == [52.1234, -31.8, 24.0]
    assert found[0]["lot_name"] == "'=1+1"
    assert found[1]["lot_name"] == "'-2 @x"
    assert (found[1]["h"], found[1]["relative_only"]) == ("", "yes")
