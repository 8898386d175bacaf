"""The window's boot: application, one copy, studio on its thread, window, then the ringing."""

import argparse
import contextlib
import gc
import shutil
import signal
import socket
import sys
import tempfile
from collections.abc import Callable, Sequence
from datetime import timedelta
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QObject, QSocketNotifier, QTimer, Slot
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from studio_log.app.paths import studio_folder
from studio_log.app.single_copy import Door, call_first
from studio_log.app.tongue import LanguageFile, speak_in_window
from studio_log.domain.errors import BadStudio, Refusal
from studio_log.language.words import tr
from studio_log.outside.awake import ScreenAwake
from studio_log.outside.login import LoginStart, command_of_this_program
from studio_log.services.clock import HurriedClock, SystemClock
from studio_log.services.commands import Outcome
from studio_log.services.ports import Clock, Delivery, NoticeText, Raised
from studio_log.services.worker import ThreadWorker
from studio_log.store.faults import WrongPassword
from studio_log.ui.bridge import Bridge
from studio_log.ui.main_window import MainWindow
from studio_log.ui.theme.look import apply_theme
from studio_log.ui.timeline.timeline_page import TimelinePage
from studio_log.ui.tray_duty import TrayDuty
from studio_log.ui.typed import remember_in
from studio_log.ui.window_place import keep_place, place_of, put_back, read_place

if TYPE_CHECKING:
    from concurrent.futures import Future

    from studio_log.app.compose import Ringing
    from studio_log.app.passwords import Passwords
    from studio_log.ui.plan.plan_box import PlanBox

JUMP_AHEAD = timedelta(minutes=10)
"""With a hurried clock, a stretch longer than this in which nobody is needed is jumped."""

PLACE: Final = "window.json"
"""The file of the studio's folder that says where the window stood."""


class LateStudio:
    """Stands for the studio until the worker has opened it; used on the worker only."""

    def __init__(self) -> None:
        self.studio: Any = None
        self.asked_here = False
        """Whether the window itself asks just now: it hears of the outcome by the bridge."""

    def do(self, command: object) -> Outcome:
        """Hand a command on."""
        self.asked_here = True
        try:
            done: Outcome = self.studio.do(command)
        finally:
            self.asked_here = False
        return done

    def ask(self, question: object) -> Any:
        """Hand a question on."""
        return self.studio.ask(question)


class WindowHouse(QObject):
    """Holds what the window needs alive, opens the studio and closes it in order."""

    def __init__(
        self, app: QApplication, options: argparse.Namespace, secret: "Passwords | None" = None
    ) -> None:
        """Begin to open the studio; `secret` knows a password that was asked for."""
        super().__init__(app)
        self._app = app
        self._demo = bool(options.demo)
        self._scratch = tempfile.mkdtemp(prefix="studio-log-demo-") if self._demo else None
        self.folder = Path(self._scratch) if self._scratch else studio_folder(options.studio)
        remember_in(self.folder)
        self._asked = options.studio
        self.secret = secret
        self.clock: Clock = SystemClock()
        self._pace = float(options.pace)
        if self._demo and self._pace > 1:
            self.clock = HurriedClock(SystemClock().now(), self._pace, SystemClock().zone())
        self._worker = ThreadWorker()
        self._late = LateStudio()
        self._ringing: Ringing | None = None
        self.awake = ScreenAwake()
        self._watcher: Any = None
        self._opened: Future[None] = self._worker.submit(self._open)
        self.bridge = Bridge(self._worker, self._late, self.clock, self, ring_test=self._ring_test)
        self._pacer = QTimer(self, interval=1000)
        self._pacer.timeout.connect(self._keep_pace)

    # -- on the worker ---------------------------------------------------------------

    def _open(self) -> None:
        """Open the studio; imports the store here, beside the window's first paint."""
        from studio_log.app import compose
        from studio_log.app.demo import open_demo

        if self._demo:
            studio = open_demo(self.folder, self.clock)
        else:
            self.secret = self.secret or compose.secret_of(self._asked, self.folder)
            studio = compose.open_studio(self.folder, clock=self.clock, secret=self.secret)
        self._late.studio = studio
        self._ringing = compose.Ringing(
            studio, self._worker, demo=self._demo, opened=self._want_window
        )
        studio.listeners.append(self._listen)

    def _listen(self, news: object) -> None:
        if isinstance(news, NoticeText):
            self.bridge.tell_raised(news)
        elif isinstance(news, Raised):
            self.bridge.tell_shown(news)
        elif isinstance(news, Outcome) and not self._late.asked_here:
            self.bridge.tell_changed(news)

    def _heard(self) -> None:
        self._worker.hand_on(self._late.studio.heard_of_change)

    def _want_window(self) -> None:
        self.bridge.want_window()

    def _ring_test(self) -> "Future[Sequence[Delivery]]":
        assert self._ringing is not None  # noqa: S101 - the window is not shown before
        return self._ringing.test()

    def _jump(self) -> None:
        """Put a hurried clock forward to just before somebody is needed next."""
        studio, clock = self._late.studio, self.clock
        at = studio.next_ring()
        if not isinstance(clock, HurriedClock) or at is None:
            return
        if at - clock.now() > JUMP_AHEAD:
            clock.jump(at - timedelta(seconds=2 * self._pace))
            studio.set_alarm()

    # -- in the window's thread --------------------------------------------------------

    def start(self) -> None:
        """Wait for the studio, then let the alarm and the watch begin; may raise Refusal."""
        self._opened.result()
        from studio_log.outside.watcher import FolderWatcher

        self._watcher = FolderWatcher(self.folder, self._heard)
        self._worker.hand_on(partial(self._late.studio.listen, self._heard))
        self._worker.hand_on(self._late.studio.raise_due)
        if isinstance(self.clock, HurriedClock):
            self._pacer.start()

    @Slot()
    def _keep_pace(self) -> None:
        self._worker.hand_on(self._jump)

    def close(self) -> None:
        """End in order: no more news, no more watching, what was asked is done, file closed."""
        self._pacer.stop()
        self.bridge.close()
        self.awake.close()
        if self._watcher is not None:
            self._watcher.close()
        if self._ringing is not None:
            self._ringing.close()
        self._worker.close()
        if self._scratch:
            shutil.rmtree(self._scratch, ignore_errors=True)


class Signals(QObject):
    """Lets SIGINT and SIGTERM end the program as Quit does."""

    def __init__(self, quit_: Callable[[], None], parent: QObject) -> None:
        super().__init__(parent)
        self._quit = quit_
        self._ours, theirs = socket.socketpair()
        self._theirs = theirs
        for end in (self._ours, theirs):
            end.settimeout(0)
        self._before = signal.set_wakeup_fd(theirs.fileno())
        for number in (signal.SIGINT, signal.SIGTERM):
            signal.signal(number, self._taken)
        self._watch = QSocketNotifier(self._ours.fileno(), QSocketNotifier.Type.Read, self)
        self._watch.activated.connect(self._woken)

    @staticmethod
    def _taken(_number: int, _frame: object) -> None:
        """Do nothing here: the wake-up descriptor tells the event loop."""

    @Slot()
    def _woken(self) -> None:
        with contextlib.suppress(BlockingIOError):
            self._ours.recv(64)
        self._quit()


def run_window(options: argparse.Namespace) -> int:
    """Open the window and stay until it is quit; gives the exit code."""
    app = QApplication(["studio-log"])
    app.setApplicationName("studio-log")
    app.setQuitOnLastWindowClosed(False)
    try:
        folder = None if options.demo else studio_folder(options.studio)
        if folder is not None and folder.exists() and call_first(folder):
            print("Studio Log is open on this studio already; its window comes forward.")  # noqa: T201
            return 0
        apply_theme(app, "system", 100)
        speak_in_window(app, folder or Path(), options.language)
        house, window = _begun(app, options)
    except Refusal as refusal:
        print(f"Studio Log cannot open the studio. {refusal}", file=sys.stderr)  # noqa: T201
        return _say_and_end(app, str(refusal))
    door = Door(house.folder, window.bring_forward, app)
    Signals(window.quit, app)
    window.quit_wanted.connect(app.quit)
    equip(window, house, options)
    window.start()
    if options.minimised:
        window.showMinimized()
    else:
        window.show()
    # What stands by now stands for months: the collector need not look at it each time.
    gc.collect()
    gc.freeze()
    code = app.exec()
    leave(window, house)
    door.close()
    house.close()
    return code


def _begun(
    app: QApplication, options: argparse.Namespace, secret: "Passwords | None" = None
) -> tuple[WindowHouse, MainWindow]:
    """Open the studio behind its window; a server's password is asked for until it fits."""
    house = WindowHouse(app, options, secret)
    window = MainWindow(house.bridge)
    try:
        house.start()
    except WrongPassword as refused:
        house.close()
        window.deleteLater()
        known = house.secret
        from studio_log.ui.sharing.password_box import PasswordBox

        box = PasswordBox(str(refused))
        if known is None or not _shown(box):
            raise
        known.learn(known.address, box.password)
        return _begun(app, options, known)
    except BadStudio as refused:
        house.close()
        window.deleteLater()
        if options.demo or not _mended(house.folder, str(refused)):
            raise
        return _begun(app, options, secret)
    return house, window


def _mended(folder: Path, words: str) -> bool:
    """Offer to read a damaged studio into a new file; say whether it is to be opened now."""
    from studio_log.app import mending
    from studio_log.ui.keeping.damaged_box import DamagedBox, Ways

    if not mending.needs_mending(folder):
        return False
    ways = Ways(
        partial(mending.could_be_read, folder),
        partial(mending.mended, folder),
        partial(mending.restored, folder),
    )
    return _shown(DamagedBox(words, ways))


def _shown(box: QDialog) -> bool:
    """Show a box that has no window whose dress it could wear; say whether it was accepted."""
    from studio_log.ui.theme.look import theme
    from studio_log.ui.widgets import style

    box.setStyleSheet(style.sheet(theme()))
    return bool(box.exec())


def leave(window: MainWindow, house: WindowHouse) -> None:
    """Keep where the window stood, and wait for what lies outside it."""
    keep_place(house.folder / PLACE, place_of(window, window.panes))
    if window.menu_acts.across is not None:
        window.menu_acts.across.wakefulness.wait()


def equip(window: MainWindow, house: WindowHouse, options: argparse.Namespace) -> None:
    """Give the window what lies outside it: notices, tray, login, screen, where it stood."""
    house.bridge.window_wanted.connect(window.bring_forward)
    TrayDuty(house.bridge, window.tray, window)
    window.menu_acts.login_start = login_start(options)
    window.menu_acts.awake = house.awake
    window.menu_acts.language = LanguageFile(house.folder)
    window.menu_acts.make_plan = partial(plan_page, house.bridge)
    if (place := read_place(house.folder / PLACE)) is not None:
        put_back(window, window.panes, place)


def plan_page(bridge: Bridge, parent: QWidget | None, *, tries: int | None = None) -> "PlanBox":
    """Make the page of the plan; what plans is brought when it is first opened."""
    from studio_log.ui.plan.plan_box import SECONDS, PlanBox
    from studio_log.ui.plan.visits_page import EMPTY

    def sheet() -> TimelinePage:
        page = TimelinePage()
        page.be_part()
        page.view.say_where_empty(tr(EMPTY))
        return page

    seconds = SECONDS if tries is None else 60.0
    box = PlanBox(bridge, sheet, parent, seconds=seconds, tries=tries)
    if isinstance(parent, MainWindow):
        box.hours_wanted.connect(parent.menu_acts.open_hours)
    return box


def login_start(options: argparse.Namespace) -> LoginStart | None:
    """Give the switch that starts this window, small, at login; None for the demo."""
    if options.demo:
        return None
    studio = ["--studio", str(studio_folder(options.studio))] if options.studio else []
    words = command_of_this_program(sys.argv[0], sys.executable)
    return LoginStart([*words, "--minimised", *studio])


def _say_and_end(app: QApplication, words: str) -> int:
    """Show why the studio cannot be opened; there is nothing else to do in this run."""
    from studio_log.ui.ask import Dialogs

    clock = SystemClock()
    Dialogs(clock).tell(QWidget(), "The studio cannot be opened", words)
    app.quit()
    return 1
