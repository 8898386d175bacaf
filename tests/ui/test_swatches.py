"""The swatches as they are used: cut, read, graded, found by words and by colour, taken back."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QRect, Qt, QUrl
from PySide6.QtGui import QColor, QGuiApplication, QImage, QPixmap
from PySide6.QtWidgets import QComboBox
from pytestqt.qtbot import QtBot

from studio_log.science.colour.lab import Lab
from studio_log.science.colour.shown import shown_as
from studio_log.services.commands import SetLot
from studio_log.services.swatches import NewSwatch, ReadSwatch
from studio_log.ui.bridge import Bridge
from studio_log.ui.swatches.forms import CHANGE, GRADE, LIGHT, NEW, READ, REMARK
from studio_log.ui.swatches.photo_box import PhotoBox
from studio_log.ui.swatches.screen_pick import mean_colour
from studio_log.ui.swatches.swatch_box import SwatchBox
from studio_log.ui.swatches.swatch_dialog import SwatchDialog
from studio_log.ui.swatches.tiles import PAGE
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints|raise\\(|grabbing")
ROSE = Lab(62.0, 24.0, 8.0)


@pytest.fixture
def lot(shop: Workshop) -> str:
    return shop.new()


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge, lot: str) -> Iterator[SwatchBox]:
    made = SwatchBox(bridge, lot=lot)
    qtbot.addWidget(made)
    made.resize(1200, 800)
    made.show()
    settle()
    yield made
    made.close()


def fill(form: SwatchDialog, qtbot: QtBot, **typed: str) -> None:
    for slug, text in typed.items():
        field = form.fields[slug]
        if isinstance(field, QComboBox):
            field.setCurrentIndex(field.findData(text))
        else:
            field.line.clear()
            qtbot.keyClicks(field.line, text)
    qtbot.mouseClick(form.keep, Qt.MouseButton.LeftButton)
    settle()


def pixel(box: SwatchBox) -> str:
    """The colour in the middle of the first tile, as it is on the screen."""
    image = box.pane.grid.viewport().grab().toImage()
    middle = box.pane.grid.visualRect(box.pane.model.index(0)).center()
    return QColor(image.pixel(middle.x(), middle.y() - 20)).name()


def test_an_empty_window_says_how_to_begin(box: SwatchBox) -> None:
    assert box.pane.empty.isVisible()
    assert "New swatch" in box.pane.empty.text()
    assert not box.pane.grid.isVisible()
    assert not box.undo.isEnabled()


def test_a_swatch_is_cut_read_graded_and_taken_back(box: SwatchBox, qtbot: QtBot, lot: str) -> None:
    form = box.open_form(NEW)
    assert form.fields["lot"].text().startswith(lot)  # type: ignore[union-attr]
    fill(form, qtbot, name="first coat", place="drawer 3", test_place="window")
    assert box.code == "W26-001"
    fill(box.open_form(READ), qtbot, lab="62, 24, 8", two_u="0.8", method="bench meter")
    assert pixel(box) == shown_as(ROSE)[0], "the true colour, to the pixel"
    fill(box.open_form(READ), qtbot, lab="66 19 9", half="test")
    assert "test half" in box.view.under.text()
    fill(box.open_form(GRADE), qtbot, test="light", length="4 weeks")
    assert "estimated grade, 4 weeks" in box.view.told()[0]
    fill(box.open_form(REMARK), qtbot, note="dyed in rain water")
    fill(box.open_form(CHANGE), qtbot, place="drawer 4")
    assert "drawer 4" in box.view.facts.text()
    assert "window" in box.view.facts.text(), "what was not changed stays"
    before = len(box.view.told())
    qtbot.mouseClick(box.undo, Qt.MouseButton.LeftButton)
    settle()
    assert len(box.view.told()) == before - 1
    qtbot.mouseClick(box.redo, Qt.MouseButton.LeftButton)
    settle()
    assert len(box.view.told()) == before


def test_a_refusal_keeps_what_was_typed(box: SwatchBox, qtbot: QtBot) -> None:
    form = box.open_form(NEW)
    fill(form, qtbot, lot="26-999", name="long")
    assert form.isVisible()
    assert "26-999" in form.message.words.text()
    fill(form, qtbot, lot="nothing")
    assert form.isVisible()
    assert form.fields["name"].text() == "long"  # type: ignore[union-attr]
    assert box.pane.model.lines == []


def cut(shop: Workshop, lot: str, name: str, lab: Lab | None = None) -> str:
    code = shop.do(NewSwatch(lot, name=name)).code
    if lab is not None:
        shop.do(ReadSwatch(code, lab, "photo"))
    return code


def test_words_find_and_other_programs_are_followed(
    box: SwatchBox, qtbot: QtBot, shop: Workshop, lot: str
) -> None:
    cut(shop, lot, "first coat")
    cut(shop, lot, "with iron")
    box.refresh()
    settle()
    assert len(box.pane.model.lines) == 2
    qtbot.keyClicks(box.search, "iron")
    qtbot.waitUntil(lambda: len(box.pane.model.lines) == 1)
    qtbot.keyClicks(box.search, "xyz")
    qtbot.waitUntil(lambda: not box.pane.model.lines)
    assert "these words" in box.pane.empty.text()
    qtbot.keyClick(box.search, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: len(box.pane.model.lines) == 2)
    box._bridge.do(SetLot(lot, name="curtains"))
    settle()
    assert "curtains" in box.view.lot.text()


def test_a_long_list_comes_in_parts_as_it_is_scrolled(
    box: SwatchBox, qtbot: QtBot, shop: Workshop, lot: str
) -> None:
    with shop.studio.store.work() as work:
        from studio_log.store.values import SwatchLine

        at = shop.clock.at
        work.swatches.put_all(SwatchLine(f"W26-{one:03d}", lot, at) for one in range(1, PAGE + 101))
    box.refresh()
    settle()
    assert len(box.pane.model.lines) == PAGE
    box.pane.grid.scrollToBottom()
    qtbot.waitUntil(lambda: len(box.pane.model.lines) == PAGE + 100)
    assert f"{PAGE + 100} swatches" in box.pane.counted.text()


def test_near_a_swatch_the_nearest_stands_first_and_is_shown(
    box: SwatchBox, qtbot: QtBot, shop: Workshop, lot: str
) -> None:
    far = cut(shop, lot, "far", Lab(30, 0, 0))
    near = cut(shop, lot, "near", Lab(62.5, 24, 8))
    rose = cut(shop, lot, "rose", ROSE)
    box.choose(rose)
    settle()
    found = box.find_near()
    settle()
    codes = [found.tree.topLevelItem(row).data(0, Qt.ItemDataRole.UserRole) for row in range(2)]  # type: ignore[union-attr]
    assert codes == [near, far], "and not the swatch itself"
    qtbot.mouseClick(found.show_it, Qt.MouseButton.LeftButton)
    settle()
    assert box.code == near
    found.lab.setText("30, 0, 0")
    qtbot.waitUntil(
        lambda: found.tree.topLevelItem(0).data(0, Qt.ItemDataRole.UserRole) == far  # type: ignore[union-attr]
    )
    found.take_code(shown_as(ROSE)[0])
    settle()
    first = found.tree.topLevelItem(0)
    assert first is not None
    assert first.data(0, Qt.ItemDataRole.UserRole) == rose
    assert float(first.text(0)) < 0.5
    found.close()


def test_a_click_on_the_screen_picks_its_colour(
    box: SwatchBox, qtbot: QtBot, shop: Workshop, lot: str
) -> None:
    cut(shop, lot, "rose", ROSE)
    shot = QPixmap(200, 100)
    shot.fill(QColor("#336699"))
    found = box.find_near()
    settle()
    assert found.pick.begin([(QGuiApplication.primaryScreen(), shot)]) == ""
    (layer,) = found.pick.layers
    qtbot.mouseMove(layer, QPoint(20, 20))
    layer.grab()
    with qtbot.waitSignal(found.pick.picked) as picked:
        qtbot.mouseClick(layer, Qt.MouseButton.LeftButton, pos=QPoint(20, 20))
    assert picked.args == ["#336699"]
    assert found.pick.layers == []
    assert found.pick.begin([(QGuiApplication.primaryScreen(), shot)]) == ""
    qtbot.keyClick(found.pick.layers[0], Qt.Key.Key_Escape)
    assert found.pick.layers == []
    assert "does not let" in found.pick.begin([]), "where nothing is seen, it is said"
    found.close()


def test_the_colour_about_the_pointer_is_mixed_as_light() -> None:
    """Half white, half black gives #bcbcbc by IEC 61966-2-1, not the mean code #808080."""
    image = QImage(3, 2, QImage.Format.Format_RGB32)
    image.fill(QColor("black"))
    for x in range(3):
        image.setPixelColor(x, 1, QColor("white"))
    assert mean_colour(image, QPoint(1, 0)).name() == "#bcbcbc"
    assert not mean_colour(image, QPoint(90, 90)).isValid()
    assert QRect(0, 0, 3, 2).contains(QPoint(1, 0))


def test_a_picture_is_kept_and_shown(
    box: SwatchBox, shop: Workshop, lot: str, tmp_path: Path
) -> None:
    picture = tmp_path / "swatch.png"
    image = QImage(60, 40, QImage.Format.Format_RGB32)
    image.fill(QColor("#883344"))
    image.save(str(picture))
    cut(shop, lot, "rose")
    box.refresh()
    settle()
    box.keep_picture(str(picture))
    settle()
    assert box.page is not None
    assert len(box.page.photos) == 1
    broken = tmp_path / "broken.jpg"
    broken.write_bytes(b"nothing")
    box.keep_picture(str(broken))
    settle()
    assert "damaged" in box.message.words.text() or "not a JPEG" in box.message.words.text()
    assert len(box.page.photos) == 1


def test_the_plane_shows_true_colours_and_is_walked_and_saved(
    box: SwatchBox, qtbot: QtBot, shop: Workshop, lot: str
) -> None:
    rose = cut(shop, lot, "rose", ROSE)
    dark = cut(shop, lot, "dark", Lab(30, -20, 30))
    cut(shop, lot, "not read")
    box.refresh()
    settle()
    qtbot.mouseClick(box.pane.looks.button(1), Qt.MouseButton.LeftButton)
    settle()
    view = box.pane.plot
    assert view.isVisible()
    assert not box.pane.grid.isVisible()
    dots = {dot.code: dot for dot in view.plot.panels[0].dots}
    assert set(dots) == {rose, dark}
    image = view.grab().toImage()
    for code, lab in ((rose, ROSE), (dark, Lab(30, -20, 30))):
        at = QPoint(round(dots[code].x), round(dots[code].y))
        assert QColor(image.pixel(at)).name() == shown_as(lab)[0]
        qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=at)
        settle()
        assert box.code == code
    qtbot.keyClick(view, Qt.Key.Key_Right)
    settle()
    assert box.code == rose, "from one hue to the next"


def test_the_plane_is_saved_as_drawing_picture_and_figures(
    box: SwatchBox, qtbot: QtBot, shop: Workshop, lot: str, tmp_path: Path
) -> None:
    cut(shop, lot, "rose", ROSE)
    box.refresh()
    settle()
    qtbot.mouseClick(box.pane.looks.button(1), Qt.MouseButton.LeftButton)
    settle()
    for kind, begins in (("svg", b"<?xml"), ("png", b"\x89PNG"), ("csv", b"\xef\xbb\xbfcode")):
        path = tmp_path / f"plane.{kind}"
        box.pane.save_as(path)
        assert path.read_bytes().startswith(begins)
    saved = QImage(str(tmp_path / "plane.png"))
    wanted = QColor(shown_as(ROSE)[0])
    pixels = (saved.pixelColor(x, y) for x in range(0, saved.width(), 3)
              for y in range(0, saved.height(), 3))  # fmt: skip
    assert any(one == wanted for one in pixels)
    box.pane.save_as(tmp_path / "nowhere" / "plane.svg")
    assert "be written" in box.message.words.text()
    qtbot.mouseClick(box.pane.looks.button(2), Qt.MouseButton.LeftButton)
    settle()
    view = box.pane.plot
    assert [panel.title for panel in view.plot.panels] == [f"{lot} runners"]


def test_a_photo_dropped_on_the_window_is_read_for_the_chosen_swatch(
    box: SwatchBox, shop: Workshop, lot: str, tmp_path: Path
) -> None:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(tmp_path / "swatch.jpg"))])
    box.take(mime)
    assert box.dialog is None, "there is no swatch to read it for"
    code = cut(shop, lot, "rose")
    box.refresh()
    settle()
    box.take(mime)
    assert isinstance(box.dialog, PhotoBox)
    assert code in box.dialog.windowTitle()
    box.dialog.close()


def test_a_light_test_is_begun_and_ended_where_there_are_halves(
    box: SwatchBox, shop: Workshop, lot: str
) -> None:
    shop.do(NewSwatch(lot, test_place="window"))
    box.refresh()
    settle()
    light, end = box.view.buttons["light"], box.view.buttons["light_end"]
    assert (light.isVisible(), end.isVisible()) == (True, False)
    form = box.open_form(LIGHT)
    form.submit()
    settle()
    assert box.page is not None
    assert box.page.swatch.light_begun == shop.clock.at
    assert (light.isVisible(), end.isVisible()) == (False, True)
    end.click()
    settle()
    assert (light.isVisible(), end.isVisible()) == (True, False)
    shop.do(NewSwatch(lot))
    box.choose("W26-002")
    settle()
    assert not light.isVisible()


def test_swatches_are_drawn_by_the_age_of_their_cure(
    box: SwatchBox, qtbot: QtBot, shop: Workshop, lot: str, tmp_path: Path
) -> None:
    rose = cut(shop, lot, "rose", ROSE)
    shop.walk_to(lot, "cure")
    shop.clock.move(days=20)
    aged = cut(shop, lot, "later", Lab(40, 30, 10))
    box.refresh()
    settle()
    qtbot.mouseClick(box.pane.looks.button(3), Qt.MouseButton.LeftButton)
    settle()
    view = box.pane.plot
    chroma, lightness = ({dot.code: dot for dot in panel.dots} for panel in view.plot.panels)
    assert chroma[rose].x < chroma[aged].x, "what was not cured stands at the left"
    assert chroma[rose].y > chroma[aged].y
    assert lightness[rose].y < lightness[aged].y
    at = QPoint(round(chroma[aged].x), round(chroma[aged].y))
    assert QColor(view.grab().toImage().pixel(at)).name() == shown_as(Lab(40, 30, 10))[0]
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=at)
    settle()
    assert box.code == aged
    box.pane.save_as(tmp_path / "ages.svg")
    assert "by the age of their cure" in (tmp_path / "ages.svg").read_text("utf-8")
