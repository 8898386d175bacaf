"""From an instrument in the window: pasted, opened, dropped, written with its spectrum."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, Qt, QUrl
from pytestqt.qtbot import QtBot

from studio_log.services.swatches import NewSwatch, SwatchFor, SwatchPage
from studio_log.ui.bridge import Bridge
from studio_log.ui.swatches.instrument_box import STRENGTH, InstrumentBox
from tests.support.fixtures import Workshop
from tests.support.reference import REFERENCE, rows

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
SPECTRA = REFERENCE / "reflectance_spectra.csv"


@pytest.fixture
def code(shop: Workshop) -> str:
    return shop.do(NewSwatch(shop.new())).code


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge, code: str) -> Iterator[InstrumentBox]:
    made = InstrumentBox(bridge, code)
    qtbot.addWidget(made)
    made.show()
    yield made
    made.close()


def page(shop: Workshop, code: str) -> SwatchPage:
    return shop.studio.ask(SwatchFor(code))


def test_a_spectrum_is_written_with_its_colour_and_depth(
    box: InstrumentBox, qtbot: QtBot, shop: Workshop, code: str
) -> None:
    """Chart "moderate red": L*a*b* and K/S of reflectance_expected.csv (E308, D65, 10 degree)."""
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(SPECTRA))])
    box.take(mime)
    assert box.tree.topLevelItemCount() == 4
    item = box.tree.topLevelItem(2)
    assert item is not None
    assert item.text(2) == "4.66 (530 nm)"
    box.tree.setCurrentItem(item)
    box.method.setText("bench meter")
    with qtbot.waitSignal(box.read):
        qtbot.mouseClick(box.write, Qt.MouseButton.LeftButton)
    found = page(shop, code)
    (reading,) = found.swatch.readings
    assert [reading.lab.lightness, reading.lab.a, reading.lab.b] == pytest.approx(
        [50.4637, 42.4386, 13.9862], abs=0.005
    )
    assert (reading.white, reading.method) == ("D65/10", "bench meter")
    assert len(reading.reflectance) == 31
    assert "K/S 4.66 at 530 nm" in found.history[0].words


def test_what_is_pasted_is_read_as_it_stands_and_a_mistake_takes_nothing_away(
    box: InstrumentBox, qtbot: QtBot, tmp_path: Path
) -> None:
    assert not box.write.isEnabled()
    box.text.setPlainText("52.1, 31.8, 24.0")
    qtbot.waitUntil(lambda: box.found is not None)
    assert "assumed" in box.notes.text()
    box.text.setPlainText("52.1, 31.8, grey")
    qtbot.waitUntil(lambda: box.found is None)
    assert box.text.toPlainText() == "52.1, 31.8, grey"
    assert box.message.isVisible()
    bad = tmp_path / "bad.csv"
    bad.write_bytes(b"\x00\x01")
    box.open_file(bad)
    assert "no text" in box.message.words.text()
    assert not box.write.isEnabled()
    box.open_file(tmp_path)
    assert "no file" in box.message.words.text()


def test_samples_are_written_as_spots_of_one_cloth(
    box: InstrumentBox, qtbot: QtBot, shop: Workshop, code: str, tmp_path: Path
) -> None:
    """Cloth "red B" of levelness_expected.csv: mean 0.55 CIEDE2000, RUI 0.36."""
    lines = (REFERENCE / "levelness_readings.csv").read_text("utf-8").splitlines()
    path = tmp_path / "red-b.csv"
    path.write_text("\n".join(one for one in lines if one.startswith(("cloth", "red B"))), "utf-8")
    assert not box.spots.isEnabled()
    box.open_file(path)
    box.spots.setChecked(True)
    assert "0.55 CIEDE2000 from their mean" in box.even.text()
    assert "RUI 0.36: good" in box.even.text()
    with qtbot.waitSignal(box.read):
        qtbot.mouseClick(box.write, Qt.MouseButton.LeftButton)
    found = page(shop, code)
    assert len(found.swatch.readings[0].spots) == 10
    assert found.even_words.casefold() + "." == box.even.text().casefold()


@pytest.mark.parametrize("row", rows("ks_strength.csv"), ids=lambda row: row["n"])
def test_strength_is_told_to_the_standard_that_is_chosen(
    box: InstrumentBox, qtbot: QtBot, row: dict[str, str]
) -> None:
    """Two flat spectra of the table's reflectances: K/S by Kubelka and Munk, their ratio."""
    nm = ",".join(f"R{at}" for at in range(400, 701, 10))
    flat = (",".join([name, *[row[f"R_{name}"]] * 31]) for name in ("standard", "batch"))
    box.text.setPlainText("\n".join((f"name,{nm}", *flat)))
    qtbot.waitUntil(lambda: box.tree.topLevelItemCount() == 2)
    assert box.tree.isColumnHidden(STRENGTH)
    box.standard.setCurrentIndex(box.standard.findText("standard"))
    told = [box.tree.topLevelItem(at).text(STRENGTH) for at in (0, 1)]  # type: ignore[union-attr]
    assert told[0] == "100 %"
    assert float(told[1].removesuffix(" %")) == pytest.approx(float(row["strength_pct"]), abs=0.051)


def test_colours_without_spectra_have_no_strength(box: InstrumentBox, qtbot: QtBot) -> None:
    box.text.setPlainText("52.1, 31.8, 24.0")
    qtbot.waitUntil(lambda: box.tree.topLevelItemCount() == 1)
    assert not box.standard.isVisible()
    assert box.tree.isColumnHidden(STRENGTH)
