"""The fields of the form: each named, with what was understood and what is amiss beneath it."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.method_lines import Path
from studio_log.language.words import tr
from studio_log.ui.methods.sorts import LINE, Sort
from studio_log.ui.theme.dress import dress_label
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, em, mark


@dataclass(frozen=True)
class FieldSpec:
    """One field of the form: where it stands in its block, its name, what may be typed."""

    path: Path
    words: str
    sort: Sort = LINE
    hint: str = ""
    said: str = "{span}"
    """What was understood, around its words: "may end after {span}"."""
    choices: tuple[tuple[str, str], ...] = ()
    """Value and words of each, where one is chosen."""
    flag: bool | None = None
    """For a tick box: what holds where nothing is written."""
    prose: float = 0.0
    """For sentences: so many lines are seen at once."""
    wide: float = 9.0
    """Least width, in line heights."""


class Field(QWidget):
    """A field; `written` tells its path in the block and the value that was put in."""

    written = Signal(tuple, object)
    left = Signal(tuple)
    """The keyboard went on; its path."""
    undo_wanted = Signal(bool)
    """True to take back, False to do again: one history for form and text."""

    def __init__(self, spec: FieldSpec, box: QWidget, *, labelled: bool = True) -> None:
        super().__init__()
        self.spec, self.box = spec, box
        self.fault = ""
        self._put: object = None
        self.said = Words(tone="soft", size="small")
        self.wrong = Words(tone="danger_ink", size="small")
        for words in (self.said, self.wrong):
            policy = words.sizePolicy()
            policy.setHorizontalPolicy(QSizePolicy.Policy.Ignored)  # words move no field
            words.setSizePolicy(policy)
            words.hide()
        box.setAccessibleName(tr(spec.words))
        box.installEventFilter(self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        if labelled:
            label = QLabel(tr(spec.words))
            dress_label(label, "body")
            label.setBuddy(box)
            column.addWidget(label)
        for widget in (box, self.said, self.wrong):
            column.addWidget(widget)
        column.addStretch()
        self.setMinimumWidth(em(self, spec.wide))

    def show_value(self, value: object) -> None:
        """Show what the text says; what is just being typed stays as it is typed."""
        if not (self.box.hasFocus() and value == self._put):
            self._show(value)
        understood = self.spec.sort.words(value)
        self.say(tr(self.spec.said, span=understood) if understood else "", self.fault)

    def forget(self) -> None:
        """Forget what was typed here: the field now stands for another block."""
        self._put = None

    def say(self, understood: str, fault: str) -> None:
        """Say what was understood, and what is amiss."""
        self.fault = fault
        self.said.show_words("" if fault else understood)
        self.wrong.show_words(fault)
        mark(self.box, "wrong", bool(fault))
        self.box.setAccessibleDescription(fault or understood)

    def put(self, value: object) -> None:
        """Tell what was put in."""
        self._put = value
        self.written.emit(self.spec.path, value)

    @override
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.FocusOut and isinstance(event, QFocusEvent):
            self._put = None
            self.left.emit(self.spec.path)
        if event.type() not in (QEvent.Type.KeyPress, QEvent.Type.ShortcutOverride):
            return False
        if not isinstance(event, QKeyEvent):
            return False
        back = event.matches(QKeySequence.StandardKey.Undo)
        if not back and not event.matches(QKeySequence.StandardKey.Redo):
            return False
        event.accept()
        if event.type() == QEvent.Type.KeyPress:
            self._put = None
            self.undo_wanted.emit(back)
        return True

    def _show(self, value: object) -> None:
        raise NotImplementedError


class LineField(Field):
    """One line."""

    def __init__(self, spec: FieldSpec) -> None:
        self.line = QLineEdit()
        self.line.setMaxLength(2_000)
        self.line.setPlaceholderText(tr(spec.hint))
        self.line.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        super().__init__(spec, self.line)
        self.line.textEdited.connect(self._edited)

    def _edited(self, typed: str) -> None:
        self.put(self.spec.sort.value(typed))

    @override
    def _show(self, value: object) -> None:
        text = self.spec.sort.text(value)
        if text != self.line.text():
            self.line.setText(text)
            self.line.setCursorPosition(0)


class ProseField(Field):
    """Sentences."""

    def __init__(self, spec: FieldSpec) -> None:
        self.area = QPlainTextEdit()
        self.area.setTabChangesFocus(True)
        self.area.setPlaceholderText(tr(spec.hint))
        super().__init__(spec, self.area)
        self.area.setFixedHeight(em(self, spec.prose + 1))
        self.area.textChanged.connect(self._edited)

    @override
    def show_value(self, value: object) -> None:
        typing = self.box.hasFocus() and self.spec.sort.text(value) == self.spec.sort.text(
            self._put
        )
        if typing:
            self._put = value
        super().show_value(value)

    def _edited(self) -> None:
        self.put(self.spec.sort.value(" ".join(self.area.toPlainText().split())))

    @override
    def _show(self, value: object) -> None:
        text = self.spec.sort.text(value)
        if text != " ".join(self.area.toPlainText().split()):
            self.area.blockSignals(True)
            self.area.setPlainText(text)
            self.area.blockSignals(False)


class ChoiceField(Field):
    """One of a few."""

    def __init__(self, spec: FieldSpec) -> None:
        self.choice = QComboBox()
        calm(self.choice)
        super().__init__(spec, self.choice)
        self.offer(spec.choices)
        self.choice.activated.connect(self._chosen)

    def offer(self, choices: Sequence[tuple[str, str]]) -> None:
        """Offer other choices; what is written stays shown."""
        before = self.choice.currentData()
        self.choice.clear()
        for value, words in choices:
            self.choice.addItem(tr(words), value)
        self.choice.setCurrentIndex(self.choice.findData(before))

    def _chosen(self, at: int) -> None:
        self.put(self.choice.itemData(at) or None)

    @override
    def _show(self, value: object) -> None:
        at = self.choice.findData(value or "")
        if at < 0 and isinstance(value, str):
            self.choice.addItem(value, value)
            at = self.choice.count() - 1
        self.choice.setCurrentIndex(at)


class FlagField(Field):
    """Yes or no; what holds anyway is not written."""

    def __init__(self, spec: FieldSpec) -> None:
        self.tick = QCheckBox(tr(spec.words))
        super().__init__(spec, self.tick, labelled=False)
        self.tick.clicked.connect(self._clicked)

    def _clicked(self, ticked: bool) -> None:  # noqa: FBT001 - Qt hands it on so
        self.put(None if ticked is self.spec.flag else ticked)

    @override
    def _show(self, value: object) -> None:
        self.tick.setChecked(value if isinstance(value, bool) else bool(self.spec.flag))


def made(spec: FieldSpec) -> Field:
    """Give the field of a description."""
    if spec.flag is not None:
        return FlagField(spec)
    if spec.choices:
        return ChoiceField(spec)
    return ProseField(spec) if spec.prose else LineField(spec)
