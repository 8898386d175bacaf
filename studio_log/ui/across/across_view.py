"""Across the room: the next three things on the whole screen, answered by one key or click."""

from functools import partial
from typing import Final

from PySide6.QtCore import QRectF, Qt, QTimer, Signal, Slot
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QCloseEvent,
    QColor,
    QHideEvent,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QShowEvent,
)
from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.questions import Bench, BenchFor, SettingsFor, Status, StatusFor
from studio_log.services.settings import Settings
from studio_log.ui.across.answer_button import AnswerButton
from studio_log.ui.across.answering import Answering
from studio_log.ui.across.key_rows import ACTS, ANSWER_KEY, DOUBT_KEYS, REFUSAL_KEYS, key_words
from studio_log.ui.across.letters import Letters
from studio_log.ui.across.looks import Look, look_of
from studio_log.ui.across.scene import Heard, Scene, make_scene
from studio_log.ui.across.sheet import Page, Sheet, arrange
from studio_log.ui.across.wakefulness import Awake, Wakefulness
from studio_log.ui.bridge import Bridge
from studio_log.ui.chime import Chime
from studio_log.ui.minute import MinuteClock
from studio_log.ui.theme.look import theme

TITLE: Final = tr_later("Across the room — Studio Log")


class AcrossView(QWidget):
    """A window of its own; Esc or F11 leaves it. It asks and is fed as the bench is."""

    left = Signal()
    """It was closed, by key or by the window's frame."""

    def __init__(
        self,
        bridge: Bridge,
        chime: Chime,
        parent: QWidget | None = None,
        *,
        awake: Awake | None = None,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setWindowTitle(tr(TITLE))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(480, 360)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self._bridge = bridge
        self._bench: Bench | None = None
        self._settings = Settings(chime=chime.on, chime_volume=chime.volume)
        self._status: Status | None = None
        self._story = ""
        self.answer = AnswerButton(self)
        self.second = AnswerButton(self)
        self.answering = Answering(bridge, self)
        self.wakefulness = Wakefulness(awake, self)
        self._second_hand = QTimer(self, interval=1_000)
        self._minute = MinuteClock(bridge, self)
        self.page = self._make_page()
        self.sheet = Sheet([], [], is_whole=True)
        self._connect()

    @property
    def scene(self) -> Scene:
        """What is shown just now."""
        return self.page.scene

    @property
    def look(self) -> Look:
        """The colours in force."""
        return look_of(theme().palette, night=self.scene.night)

    @property
    def counting(self) -> bool:
        """Whether it moves on each second."""
        return self._second_hand.isActive()

    @Slot()
    def refresh(self) -> None:
        """Ask what needs hands, how it rings and how things stand."""
        self._bridge.ask(BenchFor(), self._show_bench, failed=self.answering.failed)
        self._bridge.ask(StatusFor(), self._show_status, failed=self.answering.failed)
        self._bridge.ask(SettingsFor(), self._show_settings, failed=self.answering.failed)

    def act(self, name: str) -> None:
        """Do one act by its name in the table of keys."""
        asked = self.answering.message is not None
        if name == "leave" or (name == "no" and not asked):
            self.close()
        elif name == "awake" and not asked:
            self.wakefulness.toggle()
        else:
            self.answering.act(name, self.scene)

    def _show_bench(self, bench: Bench) -> None:
        before, is_new = self.scene.first, self._bench is None
        self._bench = bench
        self._show()
        after = self.scene.first
        # What stands there as the view opens was read where it was opened from.
        self.answering.came(after if is_new else before, after)
        self._dress_answers()

    def _show_status(self, status: Status) -> None:
        self._status = status
        self._show()

    def _show_settings(self, settings: Settings) -> None:
        self._settings = settings
        self._show()

    def _make_page(self) -> Page:
        heard = Heard(self._bench, self._settings, self._status, self.wakefulness.on)
        scene = make_scene(heard, self._bridge.now(), self._bridge.zone())
        keys = key_words(scene, awake=heard.awake)
        message = self.answering.message
        if message is not None:
            keys = tr(DOUBT_KEYS) if message.is_doubt else tr(REFUSAL_KEYS)
        return Page(scene, keys, self.answering.said, message)

    @Slot()
    def _show(self) -> None:
        """Work out everything anew; cheap enough for each second."""
        if not self.isVisible():
            return
        self.page = self._make_page()
        letters = Letters(theme().font(), self.height())
        self.sheet = arrange(self.page, letters, self.width())
        self._dress_answers()
        self._tell()
        if self.scene.running != self.counting:
            if self.scene.running:
                self._second_hand.start()
            else:
                self._second_hand.stop()
        self.update()

    @Slot()
    def _dress_answers(self) -> None:
        letters = Letters(theme().font(), self.height())
        keys = (tr(ANSWER_KEY), "D")
        urgency = self.scene.first.urgency if self.scene.first else "now"
        held = self.answering.held
        for at, (button, name) in enumerate(((self.answer, "answer"), (self.second, "second"))):
            box = self.sheet.box(name)
            button.setVisible(box is not None)
            if box is None:
                continue
            button.setGeometry(box.toRect())
            look = self.look
            colours = look.fills["calm" if at else urgency]
            button.dress(
                self.page.answers[at], keys[at], letters, look.held if held else colours
            )  # fmt: skip

    def _tell(self) -> None:
        """Tell screen readers what stands here, where it has changed."""
        story = self._words()
        if story == self._story:
            return
        self._story = story
        self.setAccessibleName(story)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, story))

    def _words(self) -> str:
        page, scene = self.page, self.scene
        said = [page.said.removesuffix(".")]
        if page.message is not None:
            said += [page.message.title, page.message.words, page.keys]
            return ". ".join(filter(None, said))
        said += [scene.empty, *(thing.story for thing in scene.things)]
        if scene.first is not None:
            said.insert(2, f"{tr(ANSWER_KEY)}: {scene.first.answer}")
        return ". ".join(filter(None, said))

    def _connect(self) -> None:
        bridge = self._bridge
        self.answer.clicked.connect(partial(self.act, "answer"))
        self.second.clicked.connect(partial(self.act, "damp"))
        self.answering.guard.freed.connect(self._dress_answers)
        self.answering.turned.connect(self._show)
        self.wakefulness.said.connect(self.answering.say)
        self._second_hand.timeout.connect(self._show)
        self._minute.struck.connect(self.refresh)
        for signal in (bridge.changed, bridge.raised, bridge.shown):
            signal.connect(self._heard)

    @Slot(object)
    def _heard(self, _news: object) -> None:
        if self.isVisible():
            self.refresh()

    # -- events ------------------------------------------------------------------------

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        name = ACTS.get(event.key())
        if name is None:
            super().keyPressEvent(event)
        elif not event.isAutoRepeat():
            self.act(name)

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._minute.start()
        self._show()
        self.refresh()
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    @override
    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._minute.stop()
        self._second_hand.stop()

    @override
    def closeEvent(self, event: QCloseEvent) -> None:
        super().closeEvent(event)
        self.answering.forget()
        self._bench = None
        self.wakefulness.release()
        self.left.emit()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._show()

    @override
    def paintEvent(self, _event: QPaintEvent) -> None:
        look = self.look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), QColor(look.ground))
        for name, box in self.sheet.boxes:
            if name.startswith("bar "):
                painter.fillRect(QRectF(box), QColor(look.inks[name.removeprefix("bar ")]))
        inks = {"ink": look.ink, "soft": look.soft, "good": look.good, **look.inks}
        for text in self.sheet.texts:
            text.draw(painter, inks[text.role])
        painter.end()
