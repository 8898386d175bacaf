"""The whole errand through the window: beans at eight last night to paint and immersion marks."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from studio_log.domain.journal import Act
from studio_log.outside.notices import DesktopNotice
from studio_log.services import questions as q
from studio_log.services.commands import Mark
from studio_log.ui.ask import SplitChoice
from studio_log.ui.bridge import FOREIGN
from studio_log.ui.lots.lot_form import LotForm
from tests.stories.conftest import Person

pytestmark = [
    pytest.mark.story,
    # The off-screen plugin says this of every dialog; it is of no consequence.
    pytest.mark.qt_log_ignore("This plugin does not support propagateSizeHints"),
]


def welcome(person: Person) -> None:
    person.window.welcome.name.setText("Harbour Lane Cloth Studio")
    person.qtbot.keyClick(person.window.welcome.name, Qt.Key.Key_Return)
    person.settle()


def new_lot(person: Person, name: str, pieces: str, started: str) -> str:
    """Fill the form as a person does; gives the code of the lot made."""
    person.qtbot.mouseClick(person.window.top_bar.new_lot, Qt.MouseButton.LeftButton)
    person.settle()
    form = person.window.acts.form
    assert form is not None
    form.method_box.setCurrentIndex(form.method_box.findData("soy-immersion-long"))
    person.qtbot.keyClicks(form.name, name)
    form.pieces.setPlainText(pieces)
    person.qtbot.waitUntil(lambda: "90 g" in shown_words(form))
    person.qtbot.keyClicks(form.start.line, started)
    codes: list[str] = []
    form.made.connect(codes.append)
    person.qtbot.mouseClick(form.make, Qt.MouseButton.LeftButton)
    person.settle()
    assert codes, form.message
    return codes[0]


def shown_words(widget: object) -> str:
    """Give every word a widget shows, joined."""
    from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget

    assert isinstance(widget, QWidget)
    texts = [one.text() for one in widget.findChildren(QLabel) if one.isVisibleTo(widget)]
    texts += [one.text() for one in widget.findChildren(QAbstractButton)]
    return " | ".join(texts)


def answer_by_space(person: Person) -> str:
    """Press Space in the window; gives the title of the card it answered."""
    top = person.window.bench.top()
    assert top is not None
    title = top.title.text()
    person.window.setFocus()
    person.qtbot.keyClick(person.window, Qt.Key.Key_Space)
    person.settle()
    return title


def test_the_whole_errand_through_the_window(person: Person) -> None:
    window, studio = person.window, person.studio
    welcome(person)
    assert studio.settings.studio == "Harbour Lane Cloth Studio"
    assert studio.settings.quiet_start == "22:00"

    # Common practice, no source: 30 % WOF, four volumes of soak water, 100 g/L, one to five.
    code = new_lot(
        person,
        "Linen table runners",
        "2 x linen runners 180 x 45 cm 185 g/m2",
        "at eight last night",
    )
    assert code == "26-001"
    sheet = studio.ask(q.LotSheetFor(code))
    assert sheet.data["grams"] == pytest.approx(299.7)
    shown = {one.slug: one.shown for line in sheet.steps for one in line.amounts}
    assert shown["beans"] == "90 g"
    assert shown["milk"] == "0.9 L"
    assert "0.47 L or more" in shown.values()
    assert "5.4 L" in shown.values()
    assert sheet.steps[0].start == datetime(2026, 6, 8, 19, 0, tzinfo=UTC)
    assert "26-001" in shown_words(window.sheet)

    # The second lot's beans went in at 15:00 yesterday: aim 03:00, best 07:00, and why.
    second = new_lot(person, "Second runners", "2 linen 180x45cm 185g/m2", "yesterday 15:00")
    planned = studio.ask(q.LotSheetFor(second)).steps[0]
    assert "07:00" in planned.why
    assert "03:00" in planned.why
    assert "quiet hours" in planned.why

    person.move_to(person.clock.now())
    assert person.notices.shown, "what fell due is told at once"
    text = person.notices.shown[0]
    assert code in text.title + text.body
    assert second in text.title + text.body
    assert window.reminder_bar.isVisible()
    titles = [answer_by_space(person), answer_by_space(person)]
    assert any(code in title for title in titles)
    assert studio.ask(q.LotSheetFor(code)).steps[0].state == "done"

    blend_and_strain(person, code, second)
    first_soak_to_dry(person, code)
    coats(person, code)
    marks_and_split(person, code)
    closed_and_started_again(person, code)


def act(person: Person, code: str, kind: str, answer: str = "") -> None:
    """Ring on until the lot has a card of the kind, and answer it by its own button."""
    for _ in range(60):
        for view in person.window.bench.views:
            if view.card.lot == code and view.card.kind == kind:
                button = view.second_answer if answer == "damp" else view.answer
                person.qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
                person.settle()
                return
        person.ring()
        others(person, code)
    raise AssertionError(f"no {kind} for {code}")


def others(person: Person, code: str) -> None:
    """Answer whatever else is on the bench, so that only the lot in question is left."""
    for card in person.studio.ask(q.BenchFor()).now:
        if card.lot != code and card.kind != "may_end":
            person.window.bench.answer(card.key)
    person.settle()


def blend_and_strain(person: Person, code: str, second: str) -> None:
    for kind in ("start", "ready", "ready"):
        act(person, code, kind)
    # Straining done, the window proposes the milk: both lots take one, with the beans of both.
    box = person.window.acts.milk_box
    assert box is not None
    assert set(box.chosen()) == {code, second}
    assert (box.beans.text(), box.litres.text()) == ("180 g", "1.8 L")
    person.qtbot.mouseClick(box.take, Qt.MouseButton.LeftButton)
    person.settle()
    assert person.window.acts.milk_box is None
    milk = person.studio.ask(q.MilksFor())[0]
    assert (milk.code, milk.lots) == ("M26-001", (code, second))
    assert milk.litres == pytest.approx(1.8)


def first_soak_to_dry(person: Person, code: str) -> None:
    act(person, code, "start")
    act(person, code, "tend")
    stirred = person.studio.ask(q.LotSheetFor(code)).data["steps"][3]["tended"]
    assert len(stirred) == 1
    # A wrong click is taken back in one place, and done again.
    person.qtbot.mouseClick(person.window.bench.take_back, Qt.MouseButton.LeftButton)
    person.settle()
    assert person.studio.ask(q.LotSheetFor(code)).data["steps"][3]["tended"] == []
    act(person, code, "ready")
    spin = next(view for view in person.window.bench.views if view.card.lot == code)
    assert spin.digits.isVisibleTo(spin), "a step under 15 minutes counts down in large digits"
    assert spin.answer.height() >= 72
    act(person, code, "ready")
    act(person, code, "is_dry", "damp")
    assert person.studio.ask(q.LotSheetFor(code)).data["steps"][5]["state"] == "running"
    act(person, code, "is_dry")
    assert person.studio.ask(q.LotSheetFor(code)).data["steps"][5]["state"] == "done"


def coats(person: Person, code: str) -> None:
    for _coat in (2, 3):
        act(person, code, "start")
        act(person, code, "ready")
        act(person, code, "ready")
        act(person, code, "is_dry")
    sheet = person.studio.ask(q.LotSheetFor(code))
    assert sheet.state == "curing"
    dry = sheet.data["cure"]["fully_dry"]
    # The optional fourth coat voids the marks and starts the cure again from its own drying.
    person.studio.do(Mark(code, "dip-4", Act.START))
    person.bridge.tell_changed(FOREIGN)
    person.settle()
    assert person.studio.ask(q.LotSheetFor(code)).data["cure"]["fully_dry"] is None
    act(person, code, "ready")
    act(person, code, "ready")
    act(person, code, "is_dry")
    after = person.studio.ask(q.LotSheetFor(code)).data["cure"]["fully_dry"]
    assert after > dry


def marks_and_split(person: Person, code: str) -> None:
    dry = datetime.fromisoformat(person.studio.ask(q.LotSheetFor(code)).data["cure"]["fully_dry"])
    person.move_to(dry + timedelta(days=10))
    person.window.choose_lot(code)
    person.settle()
    person.answers.split_choice = SplitChoice((2,), "Painted half")
    person.window.acts.do("split")
    person.settle()
    child = person.studio.ask(q.LotLinesFor(find="Painted half")).lines[0].code
    person.studio.do(Mark(child, "now", Act.USE, note="painted"))
    half = person.studio.ask(q.LotSheetFor(child))
    assert half.state == "used"
    assert half.data["cure"]["age_days"] == pytest.approx(10, abs=0.01)
    person.move_to(dry + timedelta(days=14))
    told = " ".join(text.title + text.body for text in person.notices.shown)
    assert "Paint" in told
    person.move_to(dry + timedelta(days=90, hours=1))
    told = " ".join(text.title + text.body for text in person.notices.shown)
    assert "ready for immersion" in told
    assert person.studio.ask(q.LotSheetFor(code)).state == "ready"
    assert person.studio.ask(q.LotSheetFor(child)).data["cure"]["age_days"] == pytest.approx(
        10, abs=0.01
    ), "a cure age is frozen by the use"
    person.answers.method_slug = "soy-painting-short"
    person.window.choose_lot(code)
    person.settle()
    person.window.acts.do("go_on")
    person.settle()
    methods = person.studio.ask(q.LotSheetFor(code)).data["methods"]
    assert [method["slug"] for method in methods] == ["soy-immersion-long", "soy-painting-short"]


def closed_and_started_again(person: Person, code: str) -> None:
    before = person.studio.ask(q.LotSheetFor(code)).data
    person.close()
    person.open()
    assert person.studio.ask(q.LotSheetFor(code)).data == before
    assert person.studio.check() == []


def test_without_a_notification_service_the_window_rings_and_says_so(person: Person) -> None:
    welcome(person)
    person.studio.notice = DesktopNotice()
    code = new_lot(person, "Runners", "2 x linen 180x45cm 185g/m2", "at eight last night")
    person.move(hours=1)
    status = person.studio.ask(q.StatusFor())
    assert not status.channels_ok
    assert "ringing here only" in status.channels
    assert "ringing here only" in shown_words(person.window.status_line)
    assert person.window.reminder_bar.isVisible()
    assert code in shown_words(person.window.reminder_bar)


BAD_BY_FIELD = {
    "name": ("", "   ", "\x07"),
    "pieces": ("", "0 x linen", "-3 linen 2m", "linen 1e400 m", "\x00", "x" * 5000, "💧"),
    "weight": ("0 g", "-3 kg", "1e400 g", "nan", "9" * 400, "heavy"),
    "vessel": ("0 L", "-2 L", "nan L", "a bucket", "1e99 L"),
    "start": ("banana", "31 Feb", "tomorrow 07:00", "2199-01-01T00:00", "-99999999999d"),
}


@pytest.mark.parametrize("field", BAD_BY_FIELD)
def test_a_form_with_nonsense_keeps_every_word_and_makes_nothing(
    person: Person, field: str
) -> None:
    welcome(person)
    person.qtbot.mouseClick(person.window.top_bar.new_lot, Qt.MouseButton.LeftButton)
    person.settle()
    form = person.window.acts.form
    assert form is not None
    form.method_box.setCurrentIndex(form.method_box.findData("soy-immersion-long"))
    lines = {"name": form.name, "weight": form.weight, "vessel": form.vessel,
             "start": form.start.line}  # fmt: skip
    for bad in BAD_BY_FIELD[field]:
        form.name.setText("Runners")
        form.pieces.setPlainText("2 x linen 180x45cm 185g/m2")
        form.weight.clear()
        form.vessel.setText("10 L")
        form.start.line.clear()
        if field == "pieces":
            form.pieces.setPlainText(bad)
        else:
            lines[field].setText(bad)
        typed = form.pieces.toPlainText() if field == "pieces" else lines[field].text()
        person.qtbot.mouseClick(form.make, Qt.MouseButton.LeftButton)
        person.settle()
        assert person.studio.ask(q.LotLinesFor("all")).lines == (), (field, bad)
        assert form.isVisible(), (field, bad)
        kept = form.pieces.toPlainText() if field == "pieces" else lines[field].text()
        assert kept == typed, (field, bad)
        assert said(form), (field, bad)


def said(form: LotForm) -> str:
    """Give what the form says is wrong: beside a field, at the start's line, or in its bar."""
    faults = [one.fault for one in form.fields.values() if one.fault]
    bar = form.message.isVisibleTo(form) and shown_words(form.message)
    return " ".join(faults) or (bar or "") or ("" if form.start.ok else "start")


def test_the_tag_of_a_lot_is_offered_and_written(person: Person, tmp_path: Path) -> None:
    from studio_log.ui.tags.pdf import write_pdf

    welcome(person)
    code = new_lot(person, "-h & <b>", "2 x linen 180x45cm 185g/m2", "")
    person.window.choose_lot(code)
    person.settle()
    person.window.acts.do("print_tags")
    person.settle()
    assert person.window.acts.tags is not None
    person.window.acts.tags.close()
    path = tmp_path / "tag.pdf"
    write_pdf(path, person.studio.ask(q.TagsFor((code,))), "tag-80x50")
    assert path.read_bytes().startswith(b"%PDF")
    QApplication.processEvents()
