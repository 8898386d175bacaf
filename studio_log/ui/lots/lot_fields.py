"""The fields of the new-lot form: what each means, what was typed there last, and the draft."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QDialog, QLineEdit, QPlainTextEdit, QPushButton

from studio_log.domain.methods import Method
from studio_log.domain.number_text import plain
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.words import moment
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.form_layout import Field
from studio_log.ui.lots.lot_reading import PiecesRead, read_pieces
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.draft_keeper import DraftKeeper, Kept
from studio_log.ui.widgets.last_values import LastValues
from studio_log.ui.widgets.lines_before import LinesBefore
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words, button
from studio_log.ui.widgets.readers import volume, weight
from studio_log.ui.widgets.short_box import ShortBox

DRAFT: Final = "new lot"
"""The name under which the form is kept half typed."""
PIECE_EXAMPLE: Final = "2 x linen runners 180x45cm 185g/m2"
WEIGHED: Final = (
    (tr_later("not said"), None),
    (tr_later("before scouring"), "before"),
    (tr_later("after scouring"), "after"),
)
NO_NAME: Final = tr_later("A lot needs a name, as in “Linen table runners”.")


class LotFields:
    """Makes the fields and knows what stands in them; where they go the layout says."""

    def __init__(self, form: QDialog, bridge: Bridge, vessel_litres: float) -> None:
        self._bridge = bridge
        self._bucket = f"{plain(vessel_litres, 1)} L"
        self.read = PiecesRead((), "")
        self.name = _line(tr("Linen table runners"))
        self.method_box, self.weighed, self.cure = ShortBox(), QComboBox(), ShortBox()
        self.pieces = QPlainTextEdit()
        self.pieces.setPlaceholderText(PIECE_EXAMPLE)
        self.pieces.setTabChangesFocus(True)
        self.lines_before = LinesBefore(self.pieces, "pieces")
        self.weight = _line(tr("off the scale, if weighed: 412 g, 14.5 oz"))
        for words, value in WEIGHED:
            self.weighed.addItem(tr(words), value)
        self.vessel = _line("10 L, 2.5 gal", self._bucket)
        self.vessel_name = _line(tr("blue tub, if lots share it"))
        self.place = _line(tr("shelf, line or room, if you like"))
        self.start = MomentLine(
            bridge, name=tr("First step started"), blank=tr("leave it blank while it has not begun")
        )
        self.start.line.setPlaceholderText(tr("at eight last night, 13:08, -3h"))
        for box in (self.method_box, self.weighed, self.cure):
            calm(box)
        self.by_name = {
            "name": Field(tr("&Name"), self.name),
            "method": Field(tr("Me&thod"), self.method_box),
            "pieces": Field(tr("&Pieces, one line each"), self.pieces, self.lines_before),
            "weight": Field(tr("&Weight of the whole, dry"), self.weight),
            "weighed": Field(tr("We&ighed"), self.weighed),
            "cure": Field(tr("&Cure"), self.cure),
            "vessel": Field(tr("&Bucket"), self.vessel),
            "vessel_name": Field(tr("Bucket’s na&me"), self.vessel_name),
            "place": Field(tr("P&lace"), self.place),
            "start": Field(tr("&First step started"), self.start),
        }
        self._last = [
            LastValues(line, slug)
            for slug, line in (
                ("weight", self.weight), ("bucket", self.vessel), ("place", self.place),
                ("vessel", self.vessel_name),
            )
        ]  # fmt: skip
        self.left = Words(tone="ochre_ink", size="small")
        self.afresh: QPushButton = button(tr("Start a&fresh"), kind="quiet")
        self._keep = self._draft_keeper(form)
        form.rejected.connect(self._keep.keep_now)

    @property
    def grams(self) -> float | None:
        """Dry weight in grams: as weighed, else worked out from the pieces."""
        return weight(self.weight.text()).value or self.read.grams

    @property
    def litres(self) -> float | None:
        """What the bucket holds."""
        return volume(self.vessel.text()).value

    def say_what_is_understood(self) -> None:
        """Say beneath each field what was understood of it, or what was not."""
        self.read = read_pieces(self.pieces.toPlainText())
        self.by_name["pieces"].understand(self.read.understood, self.read.fault)
        for slug, read in (
            ("weight", weight(self.weight.text())),
            ("vessel", volume(self.vessel.text())),
        ):
            self.by_name[slug].understand(read.words, read.fault)
        self.by_name["weighed"].setVisible(bool(self.weight.text().strip()))

    def checked(self) -> bool:
        """Say whether every field was understood; leads to the first that was not."""
        self.say_what_is_understood()
        self.start.read_again()
        name = "" if self.name.text().strip() else tr(NO_NAME)
        self.by_name["name"].understand("", name)
        wrong = [field.target for field in self.by_name.values() if field.fault]
        wrong += [] if self.start.ok else [self.start.line]
        if wrong:
            wrong[0].setFocus(Qt.FocusReason.OtherFocusReason)
        return not wrong

    def offer_cure(self, method: Method | None) -> None:
        """Offer the views of a method's cure, and name its first step."""
        self.cure.clear()
        plan = method.cure if method is not None else None
        self.by_name["cure"].setVisible(plan is not None)
        if plan is not None:
            for view in plan.views:
                days = counted(view.days, tr_later("{n} day"), tr_later("{n} days"))
                said = view.title if days in view.title else f"{days} — {view.title}"
                self.cure.offer(said, days, view.days)
            self.cure.setCurrentIndex(max(self.cure.findData(plan.default_days), 0))
        if method is not None and method.steps:
            title = method.steps[0].title
            self.by_name["start"].name(tr("&First step: “{title}” started", title=title))

    def bring_back(self) -> None:
        """Put back what was typed before and not made into a lot."""
        draft = self._keep.turn_to(DRAFT)
        if draft is None:
            self._say_left("")
            return
        when = moment(draft.at, self._bridge.now(), self._bridge.zone())
        self._say_left(tr("Typed {when}, not made into a lot yet.", when=when))

    def start_afresh(self) -> None:
        """Empty the form of what was put back."""
        self._keep.forget(DRAFT)
        self.vessel.setText(self._bucket)
        self._say_left("")
        self.name.setFocus(Qt.FocusReason.OtherFocusReason)

    def taken(self) -> None:
        """Offer the values of a lot that was made another time, and keep no draft of it."""
        for last in self._last:
            last.remember()
        self.start.remember()
        self.lines_before.remember()
        self._keep.forget(DRAFT)

    def _say_left(self, words: str) -> None:
        self.left.show_words(words)
        self.afresh.setVisible(bool(words))

    def _draft_keeper(self, form: QDialog) -> DraftKeeper:
        fields: dict[str, Kept] = {
            "name": self.name,
            "method": self.method_box,
            "pieces": self.pieces,
            "weight": self.weight,
            "weighed": self.weighed,
            "cure": self.cure,
            "vessel": self.vessel,
            "vessel_name": self.vessel_name,
            "place": self.place,
            "start": self.start.line,
        }
        count = ("name", "pieces", "weight", "vessel_name", "place", "start")
        return DraftKeeper(fields, self._bridge.now, count=count, parent=form)


def _line(hint: str, text: str = "") -> QLineEdit:
    made = QLineEdit(text)
    made.setMaxLength(200)
    made.setPlaceholderText(hint)
    return made
