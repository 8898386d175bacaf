"""The form of a method: what was understood, faults beside fields, one history with the text."""

import re
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studio_log.domain.cautions import read_cautions
from studio_log.domain.methods import Basis, StepKind
from studio_log.services.commands import ImportMethod
from studio_log.services.questions import MethodFor, SettingsFor
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.methods.editor import FORM, TEXT, MethodEditor
from studio_log.ui.methods.fields import Field
from studio_log.ui.methods.form_tables import BASES, CURE, HEAD, KINDS, STEP
from studio_log.ui.methods.method_box import MethodBox
from studio_log.ui.methods.paper import paper_document, pdf_bytes
from studio_log.ui.methods.sorts import NUMBER, SPAN, SPANS
from tests.support.builders import LONG
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
TREE = Path(__file__).parents[2]
CAUTIONS = TREE / "resources" / "cautions.toml"
READER = TREE / "studio_log" / "domain" / "method_text.py"


@pytest.fixture
def box(qtbot: QtBot, shop: Workshop) -> Iterator[MethodBox]:
    shop.studio.cautions = read_cautions(CAUTIONS.read_text("utf-8"))
    with closing(Bridge(InlineWorker(), shop.studio, shop.clock)) as bridge:
        made = MethodBox(bridge, slug=LONG)
        qtbot.addWidget(made)
        made.resize(1200, 800)
        made.show()
        settle()
        made.copy.click()
        settle()
        yield made


def field(editor: MethodEditor, *path: str | int) -> Field:
    (found,) = [one for one in editor.form.page.fields() if one.spec.path == path]
    return found


def type_in(found: Field, words: str) -> None:
    found.box.setFocus()
    found.box.selectAll()
    QTest.keyClicks(found.box, words)
    settle()
    editor = found.parent()
    while not isinstance(editor, MethodEditor):
        editor = editor.parent()
    editor.check()


def test_a_length_is_typed_as_people_say_it_and_written_as_files_do(box: MethodBox) -> None:
    editor = box.editor
    editor.form.steps.choose(0)
    aim = field(editor, "lasts", "aim")
    type_in(aim, "half a day")
    type_in(aim, "13h30")
    assert aim.said.text() == "best after 13 h 30 min"
    assert aim.box.text() == "13h30", "what is being typed stays as it is typed"
    assert 'aim = "810 min"' in editor.draft.text
    assert editor.save.isEnabled()


def test_a_fault_stands_beside_its_field_and_in_the_list_and_nothing_typed_is_lost(
    box: MethodBox,
) -> None:
    editor = box.editor
    editor.form.steps.choose(0)
    aim = field(editor, "lasts", "aim")
    type_in(aim, "much")
    assert "is no length of time" in aim.wrong.text()
    assert aim.box.accessibleDescription() == aim.wrong.text()
    assert 'aim = "much"' in editor.draft.text
    assert "1 to mend" in editor.form.steps.list.item(1).text()
    assert not editor.save.isEnabled()
    editor.form.steps.choose(5)
    editor.preview.mend.click()
    assert editor.form.steps.place == 0
    assert aim.box.text() == "much"


def test_a_latest_before_the_aim_is_told_at_the_latest(box: MethodBox) -> None:
    editor = box.editor
    editor.form.steps.choose(0)
    latest = field(editor, "lasts", "latest")
    type_in(latest, "9 h")
    assert "is before the aim, 12 h" in latest.wrong.text()


def test_form_and_text_are_one_draft_with_one_history(box: MethodBox) -> None:
    editor = box.editor
    before = editor.draft.text
    editor.form.steps.choose(0)
    title = field(editor, "title")
    type_in(title, "Soak of the beans")
    after = editor.draft.text
    assert 'title = "Soak of the beans"' in after
    QTest.keyClick(title.box, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    settle()
    assert editor.draft.text == before, "one word typed is one step back"
    assert title.box.text() == "Bean soak"
    editor.redo.click()
    assert editor.draft.text == after
    editor.tabs.setCurrentIndex(TEXT)
    editor.text.setPlainText(after.replace("Soak of the beans", "Steeping"))
    editor.check()
    editor.tabs.setCurrentIndex(FORM)
    assert title.box.text() == "Steeping"


def test_a_text_that_cannot_be_read_leaves_the_form_still_and_says_so(box: MethodBox) -> None:
    editor = box.editor
    editor.text.setPlainText(f"{editor.draft.text}\n[[[")
    editor.check()
    assert not editor.form.isEnabled()
    assert "mended" in editor._no_form.text()
    editor.preview.mend.click()
    assert editor.tabs.currentIndex() == TEXT
    assert editor.text.textCursor().block().text() == "[[["


def test_the_keys_of_the_list_add_repeat_move_and_take_out(box: MethodBox) -> None:
    editor = box.editor
    rows = editor.form.steps

    def slugs() -> list[str]:
        return [step["slug"] for step in editor.draft.reading().data["steps"]]

    begun = slugs()
    rows.choose(1)
    QTest.keyClick(rows.list, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert slugs()[1:3] == ["strain", "blend"]
    assert rows.place == 2
    QTest.keyClick(rows.list, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    assert slugs() == begun
    QTest.keyClick(rows.list, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert slugs()[:4] == ["bean-soak", "blend", "blend-2", "strain"]
    assert rows.place == 2
    QTest.keyClick(rows.list, Qt.Key.Key_Delete)
    assert slugs() == begun
    QTest.keyClick(rows.list, Qt.Key.Key_Insert)
    assert slugs()[rows.place] == "new-step"
    for _ in range(5):
        editor.undo.click()
    assert slugs() == begun


def test_the_step_before_and_after_are_reached_from_the_fields(box: MethodBox) -> None:
    editor = box.editor
    box.activateWindow()
    editor.form.steps.choose(3)
    title = field(editor, "title")
    title.box.setFocus()
    settle()
    for keys, place in (("Key_PageDown", 4), ("Key_PageUp", 3), ("Key_PageUp", 2)):
        QTest.keyClick(title.box, getattr(Qt.Key, keys), Qt.KeyboardModifier.ControlModifier)
        settle()
        assert editor.form.steps.place == place
    assert title.box.text() == "Strain"


def test_a_new_step_takes_its_short_name_from_its_title(box: MethodBox) -> None:
    editor = box.editor
    editor.form.steps.choose(2)
    editor.form.steps.buttons["add"].click()
    title = field(editor, "title")
    type_in(title, "Rest in the shade")
    field(editor, "do").box.setFocus()
    settle()
    assert field(editor, "slug").box.text() == "rest-in-the-shade"


def test_amounts_are_added_and_say_what_they_come_to(box: MethodBox) -> None:
    editor = box.editor
    editor.form.steps.choose(0)
    assert field(editor, "amounts", 0, "value").said.text() == "30 g on 100 g of cloth"
    type_in(field(editor, "amounts", 0, "value"), "25")
    assert field(editor, "amounts", 0, "value").said.text() == "25 g on 100 g of cloth"
    assert field(editor, "amounts", 0, "of").isHidden()
    assert not field(editor, "amounts", 1, "of").isHidden(), "times the volume of the beans"
    assert field(editor, "amounts", 1, "unit").isHidden()
    rows = editor.form.pages[0]._lists[0]
    rows.add.click()
    settle()
    assert field(editor, "amounts", 2, "slug").box.text() == "new-amount"
    assert editor.save.isEnabled()
    rows.out_wanted.emit(("amounts", 2))
    assert len(editor.draft.reading().data["steps"][0]["amounts"]) == 2


def test_cautions_are_ticked_and_kept_in_their_order(box: MethodBox) -> None:
    editor = box.editor
    editor.form.steps.choose(0)
    ticks = editor.form.pages[0].cautions
    assert ticks is not None
    assert ticks._ticks["soy-allergen"].isChecked()
    ticks._ticks["mildew"].click()
    step = editor.draft.reading().data["steps"][0]
    assert step["cautions"] == ["soy-allergen", "dye-vessels", "sds", "mildew"]


def test_what_the_form_made_is_saved_and_is_what_was_asked(box: MethodBox, shop: Workshop) -> None:
    editor = box.editor
    editor.form.steps.choose(3)
    type_in(field(editor, "tending", "offsets"), "5 min, 20 min")
    editor.save.click()
    settle()
    own = shop.studio.ask(MethodFor(f"{LONG}-own"))
    assert own.steps[3].tending is not None
    assert [at.total_seconds() for at in own.steps[3].tending.offsets] == [300, 1200]
    assert shop.studio.ask(SettingsFor()).method_draft == ""


def test_a_draft_outlives_the_window_and_the_program(
    box: MethodBox, shop: Workshop, qtbot: QtBot
) -> None:
    type_in(field(box.editor, "title"), "Half a thought")
    box.close()
    settle()
    assert "Half a thought" in shop.studio.ask(SettingsFor()).method_draft
    again = MethodBox(box._bridge)
    qtbot.addWidget(again)
    again.show()
    settle()
    again.copy.click()
    assert "Half a thought" in again.editor.draft.text
    again.editor.give_up.click()
    settle()
    assert shop.studio.ask(SettingsFor()).method_draft == ""


def test_a_draft_is_kept_a_moment_after_the_last_change_and_at_the_end_of_the_program(
    box: MethodBox, shop: Workshop, qapp: QApplication
) -> None:
    type_in(field(box.editor, "title"), "One")
    assert box._safe.isActive()
    box._safe.timeout.emit()
    settle()
    assert 'title = "One"' in shop.studio.ask(SettingsFor()).method_draft
    type_in(field(box.editor, "title"), "Two")
    qapp.aboutToQuit.emit()
    settle()
    assert 'title = "Two"' in shop.studio.ask(SettingsFor()).method_draft


def test_a_file_dropped_on_a_draft_leaves_it_one_undo_away(box: MethodBox, tmp_path: Path) -> None:
    draft = box.editor.draft.text
    path = tmp_path / "other.toml"
    path.write_text(draft.replace("(our own)", "(theirs)"), encoding="utf-8")
    box.take_file(path)
    assert "(theirs)" in box.editor.draft.text
    box.editor.undo.click()
    assert box.editor.draft.text == draft


def test_escape_turns_back_to_the_page_and_keeps_the_window(box: MethodBox) -> None:
    QTest.keyClick(box.editor.form.steps.list, Qt.Key.Key_Escape)
    assert box.isVisible()
    assert box.turns.currentIndex() == 0


def test_every_field_kind_and_basis_of_a_method_is_in_the_form() -> None:
    """The reader of methods is the judge: what it asks for can be filled in."""
    in_form = {
        name
        for section in (*HEAD, *STEP, *CURE)
        for row in (*section.rows, *(section.listed.rows if section.listed else ()))
        for spec in row
        for name in spec.path
        if isinstance(name, str)
    }
    reader = READER.read_text("utf-8")
    asked = {
        one or other
        for one, other in re.findall(r'table\.\w+\(\s*"(\w+)"|_inside\(table, "(\w+)"', reader)
    }
    lists = {"steps", "cure", "views", "amounts", "readings", "cautions"}
    assert len(asked) > 40
    assert asked - lists - in_form == set()
    assert {basis for basis, _words in BASES} == set(Basis)
    assert {kind for kind, _words in KINDS} == {kind.value for kind in StepKind}


@pytest.mark.parametrize(
    ("sort", "typed", "value"),
    [
        (SPAN, "1h30", "90 min"),
        (SPAN, "an hour and a half", "90 min"),
        (SPAN, "2 days", "48 h"),
        (SPAN, "30 s", "30 s"),
        (SPAN, "", None),
        (SPANS, "10 min, 30 min and 1h", ["10 min", "30 min", "1 h"]),
        (NUMBER, "2,5", 2.5),
        (NUMBER, "30", 30),
        (NUMBER, "lots", "lots"),
    ],
)
def test_what_is_typed_becomes_what_files_hold(sort, typed, value) -> None:
    assert sort.value(typed) == value


def test_the_page_on_paper_is_a_pdf_of_letters(box: MethodBox, tmp_path: Path) -> None:
    page = box.page.page
    assert page is not None
    data = pdf_bytes(page)
    assert data.startswith(b"%PDF-1.")  # ISO 32000-1, 7.5.2
    assert b"/FontFile2" in data, "words are letters, not dots"
    path = tmp_path / "page.pdf"
    box.files.write_pdf_to(path)
    assert path.stat().st_size > 10_000
    assert "is written to" in box.said.text()


def test_no_step_is_torn_between_two_pages(box: MethodBox) -> None:
    page = box.page.page
    assert page is not None
    tall = 900.0
    document = paper_document(page, tall)
    layout = document.documentLayout()
    begun: dict[str, set[int]] = {}
    block, step = document.begin(), ""
    while block.isValid():
        if block.blockFormat().headingLevel():
            step = block.text()
        rect = layout.blockBoundingRect(block)
        ends = {int(rect.top() // tall), int((rect.bottom() - 1) // tall)}
        begun.setdefault(step, set()).update(ends)
        block = block.next()
    steps = {name: pages for name, pages in begun.items() if name[:1].isdigit()}
    assert len(steps) == len(page.steps)
    assert {name: pages for name, pages in steps.items() if len(pages) > 1} == {}
    assert document.pageCount() > 3
    words = document.toPlainText()
    assert [words.count(step.do) for step in page.steps] == [
        sum(one.do == step.do for one in page.steps) for step in page.steps
    ], "every step is there once"


def test_a_text_of_the_form_is_what_import_takes(box: MethodBox, shop: Workshop) -> None:
    editor = box.editor
    editor.form.steps.choose(7)
    editor.form.steps.buttons["repeat"].click()
    shop.do(ImportMethod(text=editor.draft.text, name="own"))
    assert len(shop.studio.ask(MethodFor(f"{LONG}-own")).steps) == 17
