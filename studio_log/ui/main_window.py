"""The window: lots at the left, time and the chosen lot in the middle, the bench at the right."""

from typing import Any, Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import (
    QAction,
    QCloseEvent,
    QGuiApplication,
    QKeyEvent,
    QResizeEvent,
    QSessionManager,
    QShowEvent,
)
from PySide6.QtWidgets import QApplication, QMainWindow, QStackedWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.commands import Outcome
from studio_log.services.ports import NoticeText
from studio_log.services.questions import Bench, LotSheet, SettingsFor
from studio_log.services.settings import Settings
from studio_log.ui import actions
from studio_log.ui.act_icons import dress_acts
from studio_log.ui.ask import Ask, Dialogs
from studio_log.ui.bench.bench_page import BenchPage
from studio_log.ui.bench.reminder_bar import ReminderBar
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.chime import Chime
from studio_log.ui.closing import ask_about_closing, step_back
from studio_log.ui.errors import MessageBar
from studio_log.ui.lot_acts import LotActs
from studio_log.ui.lots.lot_list import LotList
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.menu_acts import TITLE, MenuActs, Places
from studio_log.ui.panes import LOW, Panes
from studio_log.ui.passing import Passing
from studio_log.ui.refreshing import Refreshing, Shown
from studio_log.ui.scanning import Scanner
from studio_log.ui.status_line import StatusLine
from studio_log.ui.theme.icons import program_icon
from studio_log.ui.theme.look import apply_theme, theme
from studio_log.ui.timeline.timeline_page import TimelinePage
from studio_log.ui.top_bar import TopBar
from studio_log.ui.tray import Tray
from studio_log.ui.welcome.welcome_page import WelcomePage
from studio_log.ui.widgets import style
from studio_log.ui.window_layout import Parts, first_size, lay_out, order_keys

LEAST_SIZE: Final = (960, 640)
OF_A_LOT: Final = (
    "split", "join", "go_on", "change", "milk", "stop", "print_tags", "print_card", "print_record",
    "card_times",
)  # fmt: skip
"""Acts that need a chosen lot."""


class MainWindow(QMainWindow):
    """Shows what the studio answers and sends what the dyer asks; refreshed by changes only."""

    quit_wanted = Signal()
    """The program is to end; whoever runs it closes down."""

    def __init__(self, bridge: Bridge, *, ask: Ask | None = None, tray: Tray | None = None) -> None:
        super().__init__()
        self._bridge = bridge
        self._ask: Ask = ask or Dialogs(bridge)
        self._settings = Settings()
        self._quitting = False
        self._dressed: object = None
        self.chime = Chime()
        self.tray = tray or Tray(self)
        self.actions_by_slug = actions.build(self)
        self._make_parts()
        self.minute = Passing(bridge, self)
        self.scanner = Scanner(self)
        self.scanner.scanned.connect(self._scanned)
        self.refreshing = Refreshing(self, bridge, self.minute, self._shown())
        self.setWindowTitle(tr(TITLE))
        self.setWindowIcon(program_icon())
        self.setMinimumSize(*LEAST_SIZE)
        self.resize(first_size(self.screen()))
        self._lay_out()
        self._connect()
        self._dress()

    def start(self) -> None:
        """Ask for everything, and follow the clock from now on."""
        self.top_bar.tick()
        self.tray.show()
        self._bridge.ask(SettingsFor(), self._show_settings)
        self.refreshing.all()
        self.minute.start()
        self.lots.rows.setFocus(Qt.FocusReason.OtherFocusReason)

    def bring_forward(self) -> None:
        """Show the window before all others."""
        if self.isMinimized():
            self.showNormal()
        self.show()
        self.raise_()
        self.activateWindow()

    def quit(self) -> None:
        """End for good."""
        self._quitting = True
        self.minute.stop()
        self.tray.hide()
        self.close()
        self.quit_wanted.emit()

    def end_session(self, _manager: QSessionManager | None = None) -> None:
        """Let the desktop log out: the next close really closes."""
        self._quitting = True

    def on_changed(self, outcome: Outcome) -> None:
        """Refresh what a change touches; the pages see to themselves."""
        if outcome.settings or outcome is FOREIGN:
            self._bridge.ask(SettingsFor(), self._show_settings)
        if outcome.advice:
            self.message.advise(" ".join(outcome.advice))
        if outcome.wants_milk:
            self.acts.record_milk(outcome.wants_milk)
        self.refreshing.after(outcome)

    def choose_lot(self, code: str) -> None:
        """Choose one lot everywhere."""
        self.lots.choose(code)
        self.timeline.choose(code)
        self.sheet.choose(code)

    def choose_step(self, code: str, step: int | None = None) -> None:
        """Choose a lot and open one of its steps; a bath, swatch or trial opens among its own."""
        if code.startswith("B"):
            self.menu_acts.open_baths(code)
            return
        if code.startswith("W"):
            self.menu_acts.open_swatches(code)
            return
        if code.startswith("T"):
            self.menu_acts.open_trials(code)
            return
        self.choose_lot(code)
        if step is not None:
            self.panes.go("lot")
            self.sheet.choose_step(step)

    def _make_parts(self) -> None:
        bridge = self._bridge
        self.top_bar = TopBar(bridge)
        self.message = MessageBar(bridge)
        self.reminder_bar = ReminderBar()
        self.lots = LotList(bridge)
        self.timeline = TimelinePage()
        self.sheet = LotSheetPage(bridge, self._ask)
        self.bench = BenchPage(bridge, self._ask, self.chime)
        self.status_line = StatusLine(bridge)
        self.welcome = WelcomePage(bridge)
        self.acts = LotActs(self, bridge, self._ask)
        self.pages = QStackedWidget()
        self.panes = Panes(self.lots, self.timeline, self.sheet, self.bench)
        self.menu_acts = MenuActs(
            self,
            bridge,
            self._ask,
            Places(
                self.lots,
                self.timeline.view,
                self.sheet,
                self.bench,
                self.panes,
                self.message,
                self.chime,
            ),
        )

    def _shown(self) -> Shown:
        return Shown(
            self.top_bar,
            self.reminder_bar,
            self.lots,
            self.timeline,
            self.sheet,
            self.bench,
            self.status_line,
            self.panes,
        )

    def _lay_out(self) -> None:
        bars = (self.reminder_bar, self.message)
        lay_out(Parts(self.pages, self.welcome, self.top_bar, bars, self.panes, self.status_line))
        self.setCentralWidget(self.pages)
        lots, sheet = self.lots, self.sheet
        order_keys(
            (*lots.stops, self.timeline.view,
             sheet.steps_tab, sheet.journal_tab, sheet.photos_tab)
        )  # fmt: skip

    def _connect(self) -> None:
        self._connect_bridge()
        self._connect_lots()
        self._connect_reminders()
        for slug, action in self.actions_by_slug.items():
            action.setData(slug)
            action.triggered.connect(self._triggered)
        self.top_bar.new_lot.clicked.connect(self.acts.new_lot)
        self.top_bar.undo.clicked.connect(self.acts.undo)
        self.top_bar.print_tags.clicked.connect(self._print_tags)
        self.panes.turned.connect(self._turned)
        self.panes.narrowed.connect(self._cover_bar)
        self.welcome.done.connect(self._welcomed)
        self.tray.open_wanted.connect(self.bring_forward)
        self.tray.quit_wanted.connect(self.quit)
        app = QGuiApplication.instance()
        if isinstance(app, QGuiApplication):
            app.commitDataRequest.connect(self.end_session)

    def _connect_bridge(self) -> None:
        self.message.listen()
        self._bridge.changed.connect(self.on_changed)
        self._bridge.raised.connect(self._raised)

    def _connect_lots(self) -> None:
        chosen = (self.lots.lot_chosen, self.timeline.lot_chosen, self.sheet.lot_wanted)
        for signal in (*chosen, self.acts.lot_made):
            signal.connect(self.choose_lot)
        self.lots.lot_opened.connect(self._opened)
        self.lots.other_opened.connect(self.choose_step)
        self.lots.new_wanted.connect(self.acts.new_lot)
        self.lots.room_wanted.connect(self.panes.give_lots)
        self.timeline.step_chosen.connect(self.choose_step)
        self.timeline.plan_wanted.connect(self.acts.plan)
        self.sheet.shown.connect(self._sheet_shown)
        self.sheet.act_wanted.connect(self.acts.do)
        self.sheet.method_wanted.connect(self.menu_acts.open_method)
        self.menu_acts.lot_wanted.connect(self.acts.new_lot_by)
        self.menu_acts.lot_shown.connect(self.choose_lot)

    def _connect_reminders(self) -> None:
        self.bench.shown.connect(self._bench_shown)
        self.bench.lot_wanted.connect(self.choose_step)
        self.reminder_bar.answered.connect(self.bench.answer)
        self.reminder_bar.put_off.connect(self.bench.put_off)
        self.reminder_bar.test_wanted.connect(self._ring_test)

    def _show_settings(self, settings: Settings) -> None:
        before, self._settings = self._settings, settings
        self.menu_acts.settings = settings
        self.chime.on, self.chime.volume = settings.chime, settings.chime_volume
        self.acts.vessel_litres, self.acts.settings = settings.vessel_litres, settings
        self.top_bar.show_studio(settings.studio)
        look = (settings.theme, settings.text_percent)
        if look != (before.theme, before.text_percent):
            self._apply_look(settings)
        self.actions_by_slug["dark"].setChecked(theme().is_dark)
        if not settings.welcomed:
            self.welcome.show_settings(settings)
        self.pages.setCurrentIndex(1 if settings.welcomed else 0)

    def _apply_look(self, settings: Settings) -> None:
        app = QApplication.instance()
        wish: Any = settings.theme
        if isinstance(app, QApplication):
            apply_theme(app, wish, settings.text_percent, family=theme().font().family())
        self._dress()

    def _dress(self) -> None:
        """Dress the window's own parts where the theme has changed."""
        now = theme()
        if now is not self._dressed:
            self._dressed = now
            self.setStyleSheet(style.sheet(now))
            dress_acts(self.actions_by_slug, self.top_bar.buttons)
            self._fit()

    def _fit(self) -> None:
        """Give the legend's room away in a low window; let the panes see to their widths."""
        self.timeline.legend.setVisible(not self._is_low())
        self.panes.fit()
        self.panes.share(self.timeline.wanted_height())
        self._cover_bar()

    def _cover_bar(self) -> None:
        on_bench = self.panes.page == "bench" if self.panes.narrow else self._is_low()
        self.reminder_bar.cover(covered=on_bench)

    def _is_low(self) -> bool:
        return self.height() < LOW * theme().metrics.line

    def _turned(self, page: str) -> None:
        """Give the keyboard to the page that was turned to."""
        self._cover_bar()
        if self.panes.narrow:
            self.menu_acts.take_keyboard(page)

    def _sheet_shown(self, sheet: LotSheet) -> None:
        self.acts.sheet = sheet
        self._offer_undo()

    def _bench_shown(self, bench: Bench) -> None:
        self.acts.take_back = bench.take_back
        self.minute.learn(bench)
        self.reminder_bar.show_bench(bench)
        self.tray.show_bench(bench)
        self._offer_undo()

    def _offer_undo(self) -> None:
        words = self.acts.undo_words()
        self.top_bar.undo.setEnabled(bool(words))
        self.top_bar.undo.setToolTip(
            tr("Take back: {words}", words=words) if words else tr("Nothing to take back")
        )
        self.actions_by_slug["undo"].setEnabled(bool(words))
        sheet = self.acts.sheet
        self.actions_by_slug["redo"].setEnabled(bool(sheet is not None and sheet.redo))
        for slug in OF_A_LOT:
            self.actions_by_slug[slug].setEnabled(sheet is not None)
        self.top_bar.print_tags.setEnabled(sheet is not None)

    def _raised(self, notice: NoticeText) -> None:
        self.chime.sound("spoils" if notice.urgency == "spoiling" else "rings")
        self.bench.refresh()
        QApplication.alert(self)

    def _triggered(self) -> None:
        action = self.sender()
        slug = str(action.data()) if isinstance(action, QAction) else ""
        if slug == "quit":
            self.quit()
        elif not self.menu_acts.do(slug):
            self.acts.do(slug)

    def _print_tags(self) -> None:
        self.acts.do("print_tags")

    def _opened(self, _code: str) -> None:
        self.menu_acts.do("to_steps")

    def _scanned(self, code: str) -> None:
        if self.pages.currentIndex() == 1:
            if code[0].isalpha():
                self.choose_step(code)
            else:
                self.lots.open_code(code)

    def _ring_test(self) -> None:
        self.menu_acts.do("ring_test")

    def _welcomed(self) -> None:
        self.lots.rows.setFocus(Qt.FocusReason.OtherFocusReason)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        # Space reaches the window only where no field or button wanted it.
        if event.key() == Qt.Key.Key_Space and self.pages.currentIndex() == 1:
            if not event.isAutoRepeat():
                self.bench.answer_top()
            event.accept()
            return
        super().keyPressEvent(event)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.minute.watch(self.windowHandle())
        self.scanner.watch(self.windowHandle())
        self.minute.come_back()

    @override
    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.ApplicationFontChange):
            self._dress()
        elif event.type() is QEvent.Type.WindowStateChange and self.refreshing.seen:
            self.minute.come_back()

    @override
    def closeEvent(self, event: QCloseEvent) -> None:
        if self._quitting:
            event.accept()
            return
        event.ignore()
        answer: str | None = "keep"
        if not self._settings.closing_said:
            answer = ask_about_closing(self._ask, self, self._bridge, to_tray=self.tray.available)
        if answer == "keep":
            step_back(self, to_tray=self.tray.available)
        elif answer == "quit":
            self.quit()
