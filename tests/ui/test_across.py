"""Across the room: read at five metres, answered by one key, and never by a slip of the foot.

The sizes are those asked for: the least letter a fortieth of the screen's height, a countdown an
eighth, both measured as the height of capitals. Contrast: W3C, WCAG 2.2, 1.4.3, at least 4.5:1.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import timedelta
from itertools import combinations

import pytest
from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QKeyEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Question, Refusal
from studio_log.present.hues import PALETTES, contrast
from studio_log.services.commands import AnswerReminder, Outcome, Undo
from studio_log.services.questions import Bench, BenchFor
from studio_log.services.settings import Settings
from studio_log.ui.across.across_view import AcrossView
from studio_log.ui.across.letters import Text
from studio_log.ui.across.looks import NIGHT, look_of
from studio_log.ui.chime import Chime
from studio_log.ui.theme.look import apply_theme
from tests.ui.fake_studio import DRY, NOW, SILENT, SPIN, STIR, FakeStudio, HandClock, bench
from tests.ui.window_kit import bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
"""The off-screen platform says this of every window that it shows."""

SIZES = [(1440, 900), (1024, 700), (1920, 1080), (800, 1280)]
LONG = "Table runners for the long room with a border of hemp in three widths " * 2
EIGHT_H = timedelta(hours=11)
KEY = Qt.Key


def titled(card: object, act: str, name: str) -> object:
    """Give a card whose title reads as the studio writes it."""
    return replace(card, title=f"{act} {card.lot} {name}")  # type: ignore[attr-defined, type-var]


BENCHES = {
    "two due": bench(),
    "counting": replace(bench(), now=(replace(SPIN, raised=True), STIR, DRY)),
    "counting third": replace(bench(), now=(STIR, DRY, SPIN)),
    "three dips": replace(bench(), now=(SPIN, replace(SPIN, key="b"), replace(SPIN, key="c"))),
    "long": replace(bench(), now=(titled(STIR, "Stir", LONG), titled(DRY, "Is it dry?", LONG))),
    "long acts": replace(
        bench(),
        now=(
            titled(STIR, "Too long: turn the heat down to a simmer", "Calico lengths × 2"),
            titled(DRY, "Paint within two days:", "Linen panels × 4"),
            titled(
                replace(SPIN, countdown_to=None),
                "From now on: drain the beans",
                "Hemp sampler, six swatches",
            ),
        ),
    ),
    "one word": replace(bench(), now=(titled(STIR, "Stir", "x" * 200),)),
    "next": replace(bench(), now=()),
    "none": Bench((), (), (), "", ""),
}


@dataclass
class HandAwake:
    """Keeps the screen on in the test's own mind."""

    on: bool = False
    told: list[bool] = field(default_factory=list)

    def keep(self, on: bool) -> str:
        """Note it."""
        self.on = on
        self.told.append(on)
        return "The screen stays on." if on else "The screen may rest."


class Stand:
    """The view over a fake studio; nothing is held back as it begins."""

    def __init__(self, qtbot: QtBot, studio: FakeStudio, size: tuple[int, int] = SIZES[0]) -> None:
        self.qtbot = qtbot
        self.studio = studio
        self.clock = HandClock()
        self.bridge = bridge_over(studio, self.clock)
        self.awake = HandAwake()
        self.view = AcrossView(self.bridge, Chime(), awake=self.awake)
        self.view.resize(*size)
        qtbot.addWidget(self.view)
        self.view.show()
        settle()
        self.view.answering.guard.let_go()

    def press(self, key: Qt.Key) -> None:
        """Press a key once and let what it does come home."""
        self.qtbot.keyClick(self.view, key)
        settle()

    def answers(self) -> list[AnswerReminder]:
        """Give the answers sent."""
        return self.studio.sent(AnswerReminder)

    def texts(self) -> list[tuple[Text, QRectF]]:
        """Give all words with where they stand in the view."""
        found = [(text, text.rect) for text in self.view.sheet.texts]
        for button in (self.view.answer, self.view.second):
            if button.isVisible():
                at = button.pos()
                found += [(text, text.rect.translated(at.x(), at.y())) for text in button.texts]
        return found


@pytest.fixture
def make(qtbot: QtBot) -> Callable[..., Stand]:
    """Give a maker of stands."""

    def made(studio: FakeStudio | None = None, size: tuple[int, int] = SIZES[0]) -> Stand:
        return Stand(qtbot, studio or FakeStudio(), size)

    return made


def cap(text: Text) -> float:
    """Give the height of its capitals in pixels, by the font that paints it."""
    return QFontMetricsF(text.layout.font()).capHeight()


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", BENCHES)
def test_all_is_large_enough_and_whole_and_apart(
    make: Callable[..., Stand], size: tuple[int, int], name: str
) -> None:
    stand = make(FakeStudio(bench=BENCHES[name], status=SILENT), size)
    width, height = size
    assert stand.view.sheet.is_whole
    assert stand.texts()
    for text, rect in stand.texts():
        assert cap(text) >= height / 40 - 0.5, text.words
        assert QRectF(0, 0, width, height).contains(rect), text.words
        broken = "".join(
            text.words[line.textStart() : line.textStart() + line.textLength()]
            for line in map(text.layout.lineAt, range(text.layout.lineCount()))
        )
        assert broken == text.words
    for (one, first), (other, second) in combinations(stand.texts(), 2):
        assert not first.adjusted(0, 1, 0, -1).intersects(second), (one.words, other.words)
    boxes = [box for called, box in stand.view.sheet.boxes if not called.startswith("bar")]
    outside = [rect for text, rect in stand.texts() if text in stand.view.sheet.texts]
    assert not any(box.intersects(rect) for box in boxes for rect in outside)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["counting", "counting third", "three dips"])
def test_a_countdown_takes_an_eighth_of_the_height_and_one_line(
    make: Callable[..., Stand], size: tuple[int, int], name: str
) -> None:
    stand = make(FakeStudio(bench=BENCHES[name]), size)
    counts = [text for text in stand.view.sheet.texts if text.words == "12:05"]
    wide = size[0] > size[1]
    # Three such countdowns do not stand one above another on a screen that is high and narrow.
    assert len(counts) == {"three dips": 3 if wide else 2}.get(name, 1)
    hidden = [text.words for text in stand.view.sheet.texts if text.words.startswith("And 1 more")]
    assert bool(hidden) is (name == "three dips" and not wide)
    assert all(cap(text) >= size[1] / 8 - 0.5 for text in counts)
    assert all(text.layout.lineCount() == 1 for text in counts)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["two due", "long acts", "counting", "counting third", "next"])
def test_the_next_three_are_there(
    make: Callable[..., Stand], size: tuple[int, int], name: str
) -> None:
    stand = make(FakeStudio(bench=BENCHES[name]), size)
    words = " ".join(text.words for text in stand.view.sheet.texts)
    assert all(thing.act in words for thing in stand.view.scene.things)
    assert len(stand.view.scene.things) == 3


def test_letters_follow_the_screen_and_not_the_size_of_text(make: Callable[..., Stand]) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    plain = [cap(text) for text, _ in make().texts()]
    try:
        apply_theme(app, "light", 200)
        large = [cap(text) for text, _ in make().texts()]
    finally:
        apply_theme(app, "light", 100)
    assert plain == large


def test_every_pair_of_colours_is_read_by_day_and_by_night() -> None:
    looks = [look_of(palette, night=False) for palette in PALETTES.values()]
    pairs = [pair for look in (*looks, NIGHT) for pair in look.pairs()]
    assert len(pairs) == 12 * (len(PALETTES) + 1)
    assert [pair for pair in pairs if contrast(*pair) < 4.5] == []


def test_quiet_hours_dim_it_and_say_until_when(make: Callable[..., Stand]) -> None:
    stand = make()
    assert stand.view.look is not NIGHT
    stand.clock.at = NOW + EIGHT_H
    stand.view.refresh()
    settle()
    assert stand.view.look is NIGHT
    assert stand.view.scene.states[0] == "quiet hours until 07:00"


@pytest.mark.parametrize("key", [KEY.Key_Space, KEY.Key_Return, KEY.Key_Enter, KEY.Key_PageDown])
def test_one_key_answers_what_rings(make: Callable[..., Stand], key: Qt.Key) -> None:
    stand = make()
    stand.press(key)
    assert stand.answers() == [AnswerReminder(STIR.key, "done")]


def test_one_click_answers_and_a_second_one_does_not(make: Callable[..., Stand]) -> None:
    stand = make()
    for _ in range(2):
        stand.qtbot.mouseClick(stand.view.answer, Qt.MouseButton.LeftButton)
        settle()
    assert stand.answers() == [AnswerReminder(STIR.key, "done")]


def test_what_rings_comes_before_what_is_only_due(make: Callable[..., Stand]) -> None:
    stand = make(FakeStudio(bench=replace(bench(), now=(replace(DRY, raised=False), STIR))))
    assert [thing.key for thing in stand.view.scene.things[:2]] == [STIR.key, DRY.key]


@pytest.mark.parametrize(
    ("key", "span"),
    [
        (KEY.Key_1, timedelta(minutes=10)),
        (KEY.Key_2, timedelta(minutes=30)),
        (KEY.Key_M, None),
    ],
)
def test_a_key_puts_off(make: Callable[..., Stand], key: Qt.Key, span: timedelta | None) -> None:
    stand = make()
    stand.press(key)
    expected = AnswerReminder(STIR.key, "putoff", put_off=span, until_morning=span is None)
    assert stand.answers() == [expected]


def test_putting_off_past_the_limit_says_first_what_it_costs(make: Callable[..., Stand]) -> None:
    stand = make(FakeStudio(bench=replace(bench(), now=(DRY,))))
    stand.press(KEY.Key_1)
    assert stand.answers() == []
    assert stand.view.page.message is not None
    assert stand.view.page.message.words == DRY.put_off_warning
    stand.view.answering.guard.let_go()
    stand.press(KEY.Key_Space)
    assert [one.answer for one in stand.answers()] == ["putoff"]


def test_still_damp_is_answered_where_it_is_offered(make: Callable[..., Stand]) -> None:
    stand = make()
    stand.press(KEY.Key_D)
    assert stand.answers() == []
    drying = make(FakeStudio(bench=replace(bench(), now=(DRY,))))
    drying.press(KEY.Key_D)
    assert drying.answers() == [AnswerReminder(DRY.key, "damp")]


def test_a_slip_and_a_held_key_answer_once(make: Callable[..., Stand]) -> None:
    stand = make()
    stand.press(KEY.Key_Space)
    stand.press(KEY.Key_Space)
    assert len(stand.answers()) == 1
    stand.view.answering.guard.let_go()
    held = QKeyEvent(
        QEvent.Type.KeyPress, KEY.Key_Space, Qt.KeyboardModifier.NoModifier, " ", autorep=True
    )
    QApplication.sendEvent(stand.view, held)
    settle()
    assert len(stand.answers()) == 1
    stand.press(KEY.Key_Space)
    assert len(stand.answers()) == 2


def test_what_comes_first_by_itself_is_not_answered_before_it_can_be_read(
    make: Callable[..., Stand],
) -> None:
    stand = make()
    stand.studio.bench = replace(bench(), now=(replace(SPIN, raised=True), STIR))
    stand.view.refresh()
    settle()
    stand.press(KEY.Key_Space)
    assert stand.answers() == []
    stand.view.answering.guard.let_go()
    stand.press(KEY.Key_Space)
    assert stand.answers() == [AnswerReminder(SPIN.key, "done")]


def test_what_was_written_is_said_for_two_seconds(make: Callable[..., Stand]) -> None:
    studio = FakeStudio(outcomes=[Outcome(lots=frozenset({"26-031"}), subject="26-031")])
    stand = make(studio)
    stand.press(KEY.Key_Space)
    said = "Stirred 26-031 at 13:08 — U takes it back"
    assert said in [text.words for text in stand.view.sheet.texts]
    assert said in stand.view.accessibleName()
    assert stand.view.answering.saying.interval() == 2_000
    stand.view.answering.saying.timeout.emit()
    assert said not in [text.words for text in stand.view.sheet.texts]


def test_u_takes_the_last_act_back(make: Callable[..., Stand]) -> None:
    stand = make()
    stand.press(KEY.Key_U)
    stand.press(KEY.Key_U)
    assert stand.studio.sent(Undo) == [Undo("26-031")]


def test_a_refusal_is_said_in_the_view_and_space_goes_on(make: Callable[..., Stand]) -> None:
    stand = make(FakeStudio(refusals=[Refusal("The soak has ended. Nothing was changed.")]))
    stand.press(KEY.Key_Space)
    assert "The soak has ended. Nothing was changed." in stand.view.accessibleName()
    stand.view.answering.guard.let_go()
    stand.press(KEY.Key_Space)
    assert stand.view.page.message is None
    assert len(stand.answers()) == 1
    assert stand.view.isVisible()


@pytest.mark.parametrize(
    ("key", "sent"), [(KEY.Key_Space, [False, True]), (KEY.Key_Escape, [False])]
)
def test_a_doubt_is_answered_by_space_or_escape(
    make: Callable[..., Stand], key: Qt.Key, sent: list[bool]
) -> None:
    stand = make(FakeStudio(refusals=[Question("That is an hour early. Is it so?")]))
    stand.press(KEY.Key_Space)
    stand.press(KEY.Key_Space)  # a slip: the question cannot have been read
    assert len(stand.answers()) == 1
    assert "Space again says yes" in stand.view.accessibleName()
    stand.view.answering.guard.let_go()
    stand.press(key)
    assert [one.sure for one in stand.answers()] == sent
    assert stand.view.page.message is None
    assert stand.view.isVisible()


def test_nothing_due_says_until_when_and_answers_nothing(make: Callable[..., Stand]) -> None:
    later = replace(titled(STIR, "Stir", "Runners"), due_words="today 16:00")  # type: ignore[type-var]
    stand = make(FakeStudio(bench=Bench((), (later,), (), "", "")))
    assert stand.view.accessibleName().startswith("Nothing until 16:00. 16:00: Stir 26-031 Runners")
    assert not stand.view.answer.isVisible()
    stand.press(KEY.Key_Space)
    assert stand.answers() == []
    assert "Nothing is waiting." in make(FakeStudio(bench=BENCHES["none"])).view.accessibleName()


def test_how_it_rings_is_said(make: Callable[..., Stand]) -> None:
    until = (NOW + timedelta(hours=1)).isoformat()
    hushed = Settings(chime=False, hush_until=until)
    stand = make(FakeStudio(settings=hushed, status=SILENT))
    assert stand.view.scene.states == (
        "chime off",
        "do not disturb until 14:08",
        "desktop notices are off: no service answers; ringing here only",
    )
    assert make().view.scene.states == ("chime on, 80 %",)


def test_seconds_are_counted_only_while_a_countdown_runs(make: Callable[..., Stand]) -> None:
    assert not make().view.counting
    stand = make(FakeStudio(bench=BENCHES["counting"]))
    assert stand.view.counting
    stand.clock.at += timedelta(seconds=6)
    stand.view.grab()
    stand.view._second_hand.timeout.emit()
    assert "11:59" in [text.words for text in stand.view.sheet.texts]
    assert "11:59" not in stand.view.accessibleName()
    stand.view.close()
    assert not stand.view.counting


def test_it_asks_only_while_it_is_shown(make: Callable[..., Stand]) -> None:
    stand = make()
    stand.studio.asked.clear()
    stand.bridge.changed.emit(Outcome(lots=frozenset({"26-031"})))
    settle()
    assert BenchFor() in stand.studio.asked
    stand.press(KEY.Key_F11)
    assert not stand.view.isVisible()
    stand.studio.asked.clear()
    stand.bridge.changed.emit(Outcome(lots=frozenset({"26-031"})))
    settle()
    assert stand.studio.asked == []


def test_the_screen_is_kept_on_only_if_asked_and_let_go_on_leaving(
    make: Callable[..., Stand],
) -> None:
    stand = make()
    assert stand.awake.told == []
    stand.press(KEY.Key_W)
    stand.qtbot.waitUntil(lambda: "The screen stays on." in stand.view.accessibleName())
    assert "screen kept awake" in stand.view.scene.states
    stand.press(KEY.Key_Escape)
    stand.qtbot.waitUntil(lambda: stand.awake.told == [True, False])
    stand.view.wakefulness.wait()


def test_where_it_cannot_be_kept_on_it_says_so(qtbot: QtBot) -> None:
    view = AcrossView(bridge_over(FakeStudio()), Chime())
    qtbot.addWidget(view)
    view.show()
    settle()
    view.act("awake")
    assert "cannot be kept on" in view.accessibleName()
