"""The dialog that prints tags: choices, preview, PDF, printer."""

import json
import subprocess
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts
from studio_log.present.tag_stock import all_stock, find_stock
from studio_log.ui.ink import printing as device_printing
from studio_log.ui.tags import printing
from studio_log.ui.tags.stock_fields import SHEET, SINGLE, TAPE
from studio_log.ui.tags.tag_dialog import TagDialog
from tests.ui.test_tag_pdf import a_tag, needs

# Qt's screenless platform says so of every window it shows.
pytestmark = pytest.mark.qt_log_ignore(r"does not support propagateSizeHints\(\)")


def read(path: Path) -> list[list[str]]:
    """Read the codes of every page."""
    stem = path.parent / "page"
    subprocess.run([needs("pdftoppm"), "-r", "200", "-png", path, stem], check=True)
    pages = sorted(path.parent.glob("page-*.png"))
    return [
        sorted(found.text for found in zxingcpp.read_barcodes(Image.open(page))) for page in pages
    ]


def opened(qtbot: QtBot, *tags: TagFacts) -> TagDialog:
    dialog = TagDialog(tags)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitExposed(dialog)
    return dialog


def choose(dialog: TagDialog, slug: str | None) -> None:
    dialog.stock_box.setCurrentIndex(dialog.stock_box.findData(slug))


def pick_path(monkeypatch: pytest.MonkeyPatch, path: str) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (path, ""))


def click(qtbot: QtBot, button: object) -> None:
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def test_the_preview_shows_the_tag_to_a_reader(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag())
    dialog.resize(1400, 900)
    picture = dialog.preview.grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
    raw = bytes(picture.constBits())
    image = Image.frombuffer(
        "L", (picture.width(), picture.height()), raw, "raw", "L", picture.bytesPerLine(), 1
    )
    assert [found.text for found in zxingcpp.read_barcodes(image)] == ["26-031"]
    page = dialog.preview.page_rect()
    assert page.width() / page.height() == pytest.approx(80 / 50)


def test_every_stock_can_be_chosen_and_the_default_comes_first(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag())
    assert dialog.stock().slug == "tag-80x50"
    for stock in all_stock():
        choose(dialog, stock.slug)
        assert dialog.stock() == stock
        assert dialog.start_box.isVisible() == (stock.count > 1)
        assert dialog.start_box.maximum() == stock.count
        assert not dialog.width_box.isVisible()


def test_an_own_size_can_be_typed(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag())
    choose(dialog, SINGLE)
    assert dialog.width_box.isVisible()
    dialog.width_box.setValue(95.5)
    dialog.height_box.setValue(60)
    assert dialog.stock().tag == (95.5, 60.0)


def test_what_does_not_fit_is_said(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag(), a_tag("26-032", "runner " * 400))
    assert dialog.status.text() == "26-032: name shortened."


def test_copies_and_the_first_place_reach_the_pdf(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "tags.pdf"
    pick_path(monkeypatch, str(path))
    dialog = opened(qtbot, a_tag(), a_tag("26-032"))
    choose(dialog, "a4-2x4")
    dialog.copies_box.setValue(2)
    dialog.start_box.setValue(7)
    assert dialog.page_box.maximum() == 2
    with qtbot.waitSignal(dialog.printed) as sent:
        click(qtbot, dialog.pdf_button)
    assert sent.args == [["26-031", "26-032"]]
    assert read(path) == [["26-031", "26-031"], ["26-032", "26-032"]]
    assert dialog.status.text() == f"Saved as {path}."


def test_the_second_page_can_be_looked_at(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag(), a_tag("26-032"))
    assert dialog.page_box.isVisible()
    first = dialog.preview.grab().toImage()
    dialog.page_box.setValue(2)
    assert dialog.preview.grab().toImage() != first


def test_changing_ones_mind_about_the_file_does_nothing(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pick_path(monkeypatch, "")
    monkeypatch.chdir(tmp_path)
    dialog = opened(qtbot, a_tag())
    with qtbot.assertNotEmitted(dialog.printed):
        click(qtbot, dialog.pdf_button)
    assert dialog.status.text() == ""
    assert not list(tmp_path.iterdir())


def test_a_folder_that_is_gone_is_said_and_nothing_counts_as_printed(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pick_path(monkeypatch, str(tmp_path / "gone" / "tag.pdf"))
    dialog = opened(qtbot, a_tag())
    with qtbot.assertNotEmitted(dialog.printed):
        click(qtbot, dialog.pdf_button)
    assert "could not be written" in dialog.status.text()


def test_without_a_printer_the_pdf_is_offered(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(printing, "any_printer", lambda: False)
    dialog = opened(qtbot, a_tag())
    with qtbot.assertNotEmitted(dialog.printed):
        click(qtbot, dialog.print_button)
    assert "No printer is set up" in dialog.status.text()
    assert "PDF" in dialog.status.text()


def to_file(path: Path) -> QPrinter:
    """A printer that prints into a file: the print road without a print system."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    return printer


def test_a_printer_gets_the_tags(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "printed.pdf"
    monkeypatch.setattr(printing, "any_printer", lambda: True)
    monkeypatch.setattr(printing, "choose_printer", lambda *_: to_file(path))
    dialog = opened(qtbot, a_tag(), a_tag("26-032"))
    with qtbot.waitSignal(dialog.printed) as sent:
        click(qtbot, dialog.print_button)
    assert sent.args == [["26-031", "26-032"]]
    assert read(path) == [["26-031"], ["26-032"]]


def test_changing_ones_mind_about_the_printer_prints_nothing(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(printing, "any_printer", lambda: True)
    monkeypatch.setattr(printing, "choose_printer", lambda *_: None)
    dialog = opened(qtbot, a_tag())
    with qtbot.assertNotEmitted(dialog.printed):
        click(qtbot, dialog.print_button)
    assert dialog.status.text() == ""


@pytest.mark.usefixtures("qapp")
def test_a_printer_that_swaps_the_page_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "printed.pdf"
    printer = to_file(path)
    a4 = printer.pageLayout()
    monkeypatch.setattr(device_printing, "page_layout", lambda *_: a4)
    assert a4.pageSize().name() != find_stock("tag-80x50").title
    with pytest.raises(Refusal, match="no page of 80 × 50 mm"):
        printing.print_tags(printer, [a_tag()], find_stock("tag-80x50"))
    assert not path.exists()


def test_close_closes(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag())
    click(qtbot, dialog.close_button)
    assert not dialog.isVisible()


def test_everything_is_reached_by_the_keyboard(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag())
    fields = [dialog.stock_box, dialog.copies_box, dialog.print_button, dialog.pdf_button,
              dialog.close_button]  # fmt: skip
    for field in fields:
        assert field.focusPolicy() & Qt.FocusPolicy.TabFocus, field


def test_no_lot_leaves_nothing_to_print(qtbot: QtBot) -> None:
    dialog = opened(qtbot)
    assert "no lot" in dialog.status.text()
    assert not dialog.print_button.isEnabled()
    assert not dialog.pdf_button.isEnabled()


@pytest.mark.parametrize("accepted", [True, False])
def test_the_system_dialog_decides(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, accepted: bool
) -> None:
    monkeypatch.setattr(printing.QPrintDialog, "exec", lambda _: int(accepted))
    dialog = opened(qtbot, a_tag())
    printer = printing.choose_printer(dialog, find_stock("tag-80x50"))
    assert (printer is not None) == accepted
    if printer is not None:
        size = printer.pageLayout().fullRect(printer.pageLayout().Unit.Millimeter).size()
        assert (size.width(), size.height()) == pytest.approx((80, 50), abs=0.1)


def test_a_machine_without_printers_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(device_printing.QPrinterInfo, "availablePrinters", list)
    assert not printing.any_printer()
    monkeypatch.setattr(device_printing.QPrinterInfo, "availablePrinters", lambda: ["one"])
    assert printing.any_printer()


def test_a_tape_is_cut_where_its_words_end(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag())
    choose(dialog, TAPE)
    dialog.width_box.setValue(24)
    length, width = dialog.stock().page
    assert width == 24
    for box in dialog.chosen.values():
        box.setChecked(False)
    assert dialog.stock().page[0] < length
    assert "26-031" not in dialog.status.text()


def test_a_sheet_is_typed_in_by_its_measures_and_remembered(qtbot: QtBot) -> None:
    dialog = opened(qtbot, a_tag())
    slug = "sheet:210x297:48.5x25.4:4x11:8,8.8:48.5,25.4"
    dialog.choose(slug, "name,rows")
    assert dialog.stock_box.currentData() == SHEET
    wanted = {"tag_stock": slug, "tag_fields": "name,rows", "tag_printers": ""}
    assert dialog.choices == wanted
    assert "no room for: Times to write in" in dialog.status.text()
    dialog.fields.sheet["label_w"].setValue(60)
    assert "overlap" in dialog.status.text()
    assert not dialog.pdf_button.isEnabled()
    dialog.choose("tape-12@180", "name")
    assert (dialog.stock_box.currentData(), dialog.stock().dots) == (TAPE, 180)
    dialog.choose("gone", "name")
    assert dialog.stock_box.currentData() == TAPE


def test_a_printer_brings_its_own_stock(qtbot: QtBot) -> None:
    fresh = opened(qtbot, a_tag())
    fresh.choose("tag-80x50", "name")
    assert not fresh.printer_box.isVisible(), "nothing was printed yet"
    sheet, label = (one.slug for one in all_stock() if one.count > 1), "tag-80x50"
    sheet_slug = next(sheet)
    kept = json.dumps({"Office": sheet_slug, "Labels": label})
    dialog = opened(qtbot, a_tag())
    dialog.choose(label, "name", kept)
    rows = [dialog.printer_box.itemText(row) for row in range(dialog.printer_box.count())]
    assert rows == ["Labels", "Office", "Another one, or a PDF"]
    assert dialog.printer_box.currentText() == "Labels"
    dialog.printer_box.setCurrentIndex(1)
    dialog.printer_box.activated.emit(1)
    assert dialog.stock().slug == sheet_slug


def test_a_sheet_goes_on_with_its_next_free_label(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    class Printer:
        def printerName(self) -> str:  # noqa: N802 - as Qt names it
            return "Office"

    def choose(_parent: object, _stock: object, wanted: str = "") -> Printer:
        asked.append(wanted)
        return Printer()

    monkeypatch.setattr(printing, "any_printer", lambda: True)
    monkeypatch.setattr(printing, "choose_printer", choose)
    monkeypatch.setattr(printing, "print_tags", lambda *_, **__: None)
    dialog = opened(qtbot, a_tag(), a_tag("26-032"))
    dialog.choose("a4-2x4", "name", '{"Office": "a4-2x4", "Labels": "tag-80x50"}')
    dialog.printer_box.setCurrentIndex(1)
    dialog.printer_box.activated.emit(1)
    dialog.start_box.setValue(5)
    click(qtbot, dialog.print_button)
    assert asked == ["Office"]
    # Two tags from the fifth of eight labels on: the seventh is free.
    assert dialog.status.text() == "Sent to Office."
    kept = dialog.choices["tag_printers"]
    assert list(json.loads(kept).items()) == [("Labels", "tag-80x50"), ("Office", ["a4-2x4", 7])]
    again = opened(qtbot, a_tag())
    again.choose("a4-2x4", "name", kept)
    assert (again.printer_box.currentText(), again.start_box.value()) == ("Office", 7)
    again.printer_box.setCurrentIndex(1)
    again.printer_box.activated.emit(1)
    assert (again.stock().slug, again.start_box.value()) == ("tag-80x50", 1)
