"""Photos on the lot page: offered, kept, looked at large, taken back."""

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QImage, QPixmap
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Refusal
from studio_log.services.commands import Undo
from studio_log.services.pictures import AddPhoto, Picture, PictureFor
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.lots.photos_thumbs import read_picture
from studio_log.ui.lots.photos_view import LargePicture
from tests.support.tree import TREE
from tests.ui.fake_studio import NOW, FakeStudio, sheet
from tests.ui.window_kit import WrittenAsk, bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
MADE = TREE / "tests" / "reference" / "pictures"


class PhotoStudio(FakeStudio):
    """Also looks pictures over; those named refused.* are refused."""

    def _PictureFor(self, of: PictureFor) -> Picture:  # noqa: N802
        name = of.name or (of.path.name if of.path else "")
        if name.startswith("refused"):
            raise Refusal(f"{name} breaks off. Nothing was changed.")
        taken = NOW if name == "turned.jpg" else None
        return Picture(name, "64 × 48, 0.1 MB", taken, "Tue 9 June 13:08" if taken else "")


def photo(entry: int, name: str) -> dict[str, object]:
    return {
        "entry": entry,
        "hash": name,
        "file": str(MADE / name),
        "name": name,
        "step": "Bean soak",
        "note": "",
        "when": "Tue 9 June 14:02",
    }


class Kit:
    """A sheet over a studio with two photos."""

    def __init__(self, qtbot: QtBot) -> None:
        self.qtbot, self.studio = qtbot, PhotoStudio()
        two = [photo(7, "turned.jpg"), photo(8, "cloth.png")]
        self.studio.sheet = replace(sheet(), data={"photos": two})
        self.sheet = LotSheetPage(bridge_over(self.studio), WrittenAsk())
        self.photos = self.sheet.photos
        qtbot.addWidget(self.sheet)
        self.sheet.resize(700, 600)
        self.sheet.show()
        self.sheet.choose("26-031")
        settle()
        self.sheet.photos_tab.click()
        qtbot.waitUntil(lambda: all(not one.icon().isNull() for one in self.photos.view.thumbs))

    def drop(self, *names: str) -> None:
        mime = QMimeData()
        mime.setUrls([QUrl.fromLocalFile(str(MADE / name)) for name in names])
        assert self.photos.take(mime)
        settle()


@pytest.fixture
def kit(qtbot: QtBot) -> Kit:
    return Kit(qtbot)


def test_the_tab_says_how_many_and_the_photos_are_shown(kit: Kit) -> None:
    assert kit.sheet.photos_tab.text() == "P&hotos (2)"
    assert [one.accessibleName() for one in kit.photos.view.thumbs] == [
        "Photo, Tue 9 June 14:02 · Bean soak"
    ] * 2


def test_a_dropped_photo_is_offered_with_its_time_and_kept(kit: Kit, qtbot: QtBot) -> None:
    kit.drop("turned.jpg")
    offer = kit.photos.offer
    assert offer.isVisible()
    assert offer.taken.text() == "taken Tue 9 June 13:08: use that time"
    assert kit.studio.sent(AddPhoto) == [], "nothing is kept before it is said so"
    qtbot.keyClicks(offer.note, "a fold")
    offer.keep_button.click()
    settle()
    (command,) = kit.studio.sent(AddPhoto)
    assert (command.code, command.at, command.note) == ("26-031", NOW, "a fold")
    assert command.path == MADE / "turned.jpg"
    assert not offer.isVisible()


def test_each_offer_shows_its_own_picture(kit: Kit, qtbot: QtBot) -> None:
    look = kit.photos.offer.look
    kit.drop("cloth.png", "turned.jpg")
    qtbot.waitUntil(lambda: not look.pixmap().isNull())
    assert look.pixmap().width() == look.pixmap().height()
    kit.photos.offer.leave_button.click()
    settle()
    qtbot.waitUntil(lambda: 0 < look.pixmap().width() < look.pixmap().height())


def test_several_come_one_after_the_other_and_each_refusal_is_said(kit: Kit) -> None:
    kit.drop("refused-1.jpg", "plain.jpg", "refused-2.jpg")
    assert "refused-1.jpg breaks off" in kit.photos.said.words.text()
    assert "plain.jpg" in kit.photos.offer.words.text()
    kit.photos.offer.leave_button.click()
    settle()
    assert "refused-1.jpg" in kit.photos.said.words.text()
    assert "refused-2.jpg" in kit.photos.said.words.text()
    assert not kit.photos.offer.isVisible()
    assert kit.studio.sent(AddPhoto) == []


def test_a_pasted_picture_is_kept_as_it_was_pasted(kit: Kit) -> None:
    image = QImage(20, 10, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.blue)
    mime = QMimeData()
    mime.setImageData(image)
    assert kit.photos.take(mime)
    settle()
    kit.photos.offer.keep_button.click()
    settle()
    (command,) = kit.studio.sent(AddPhoto)
    back = QImage.fromData(command.content)
    assert (back.width(), back.height()) == (20, 10)
    assert back.pixelColor(3, 3) == image.pixelColor(3, 3)


def test_text_that_is_pasted_is_no_picture(kit: Kit) -> None:
    mime = QMimeData()
    mime.setText("71 F")
    assert not kit.photos.take(mime)


def test_enter_opens_a_photo_large_and_escape_closes_it(kit: Kit, qtbot: QtBot) -> None:
    view = kit.photos.view
    view.open(0)
    qtbot.waitUntil(lambda: not view.large.pixmap().isNull())
    assert not view.thumbs[0].isVisible()
    qtbot.keyClick(view.back, Qt.Key.Key_Right)
    assert view.at == 1
    qtbot.keyClick(view.back, Qt.Key.Key_Escape)
    assert view.at is None
    assert view.thumbs[1].isVisible()


def test_a_large_photo_never_makes_the_page_wide(kit: Kit) -> None:
    kit.photos.view.open(0)
    settle()
    kit.photos.view.large.show_picture(QPixmap(4000, 1000))
    settle()
    assert kit.sheet.area.widget().width() <= kit.sheet.area.viewport().width()


def test_a_large_photo_is_shrunk_and_never_blown_up(qtbot: QtBot) -> None:
    large = LargePicture()
    qtbot.addWidget(large)
    large.show_picture(QPixmap(400, 100))
    assert [large.heightForWidth(width) for width in (200, 400, 800)] == [50, 100, 100]


def test_delete_takes_the_entry_of_the_photo_back(kit: Kit, qtbot: QtBot) -> None:
    kit.photos.view.open(1)
    qtbot.keyClick(kit.photos.view.back, Qt.Key.Key_Delete)
    settle()
    assert kit.studio.sent(Undo) == [Undo("26-031", 8)]


def test_a_photo_whose_file_is_gone_says_so(kit: Kit, qtbot: QtBot) -> None:
    gone = photo(9, "gone.jpg")
    kit.studio.sheet = replace(sheet(), data={"photos": [gone]})
    kit.sheet.refresh()
    settle()
    qtbot.waitUntil(lambda: "missing" in kit.photos.view.thumbs[0].text())


def test_a_picture_made_small_stands_upright() -> None:
    """turned.jpg is 64 × 48 with orientation 6, written by exiftool."""
    image = read_picture(MADE / "turned.jpg", 32)
    assert (image.width(), image.height()) == (24, 32)
    assert read_picture(Path("nowhere.jpg"), 32).isNull()


def test_an_offer_is_brought_in_sight_down_to_the_button_that_keeps_it(kit: Kit) -> None:
    kit.sheet.resize(500, 300)
    settle()
    kit.drop("turned.jpg")
    keep, area = kit.photos.offer.keep_button, kit.sheet.area

    def seen() -> bool:
        bottom = keep.mapTo(area.viewport(), keep.rect().bottomLeft()).y()
        return 0 < bottom <= area.viewport().height()

    kit.qtbot.waitUntil(seen)


def test_the_keyboard_goes_to_the_photo_that_moves_up_when_one_is_taken_back(kit: Kit) -> None:
    kit.sheet.activateWindow()
    kit.photos.view.thumbs[0].setFocus()
    kit.qtbot.waitUntil(kit.photos.view.thumbs[0].hasFocus)
    left = [photo(8, "cloth.png")]
    kit.studio.sheet = replace(kit.studio.sheet, data={"photos": left})
    kit.sheet.refresh()
    settle()
    assert kit.photos.view.thumbs[0].hasFocus()
    assert kit.photos.view.thumbs[0].accessibleName().startswith("Photo, ")
    kit.studio.sheet = replace(kit.studio.sheet, data={"photos": []})
    kit.sheet.refresh()
    settle()
    assert kit.photos.add.hasFocus(), "the last one is gone: the keyboard is where one is added"


def test_a_large_photo_taken_back_leaves_the_keyboard_among_the_others(kit: Kit) -> None:
    kit.sheet.activateWindow()
    kit.photos.view.open(1)
    kit.qtbot.waitUntil(kit.photos.view.back.hasFocus)
    kit.studio.sheet = replace(kit.studio.sheet, data={"photos": [photo(7, "turned.jpg")]})
    kit.sheet.refresh()
    settle()
    assert kit.photos.view.at is None
    assert kit.photos.view.thumbs[0].hasFocus()


def test_photos_that_change_while_the_keyboard_is_elsewhere_leave_it_there(kit: Kit) -> None:
    kit.sheet.activateWindow()
    kit.sheet.journal_tab.setFocus()
    kit.qtbot.waitUntil(kit.sheet.journal_tab.hasFocus)
    kit.studio.sheet = replace(kit.studio.sheet, data={"photos": [photo(7, "turned.jpg")]})
    kit.sheet.refresh()
    settle()
    assert kit.sheet.journal_tab.hasFocus()


def test_pasting_means_the_lot_shown_wherever_the_keyboard_is_but_in_a_field(
    kit: Kit, qtbot: QtBot
) -> None:
    from PySide6.QtGui import QGuiApplication
    from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

    window = QWidget()
    qtbot.addWidget(window)
    elsewhere = QPushButton("a list beside the page")
    row = QHBoxLayout(window)
    row.addWidget(elsewhere)
    row.addWidget(kit.sheet)
    window.show()
    window.activateWindow()
    kit.sheet.steps_tab.click()
    settle()
    QGuiApplication.clipboard().setImage(QImage(str(MADE / "cloth.png")))
    note = kit.sheet.detail.note
    note.setFocus()
    qtbot.waitUntil(note.hasFocus)
    qtbot.keyClick(note, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    settle()
    assert not kit.photos.isVisible(), "a field keeps the key for itself"
    elsewhere.setFocus()
    qtbot.waitUntil(elsewhere.hasFocus)
    qtbot.keyClick(elsewhere, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    settle()
    assert kit.photos.isVisible()
    assert kit.photos.offer.isVisible()
    kit.sheet.setParent(None)  # it is the kit's, and ends with it
