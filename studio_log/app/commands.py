"""The house that the command line is handed: how it opens, reminds and writes tags."""

import sys
from collections.abc import Callable, Sequence
from functools import partial
from getpass import getpass
from pathlib import Path
from typing import TextIO

from studio_log.app.compose import Ringing, open_studio, secret_of
from studio_log.app.ending import told_to_end
from studio_log.app.mending import could_be_read, mended, restored
from studio_log.app.paths import studio_folder
from studio_log.app.service_tongue import speak_in_service
from studio_log.cli.main import run
from studio_log.cli.turn import lead_nowhere
from studio_log.domain.tags import TagFacts
from studio_log.present.paper.blocks import PageName
from studio_log.present.swatch_card import CardFacts
from studio_log.present.swatch_plot import Plot
from studio_log.services.clock import SystemClock
from studio_log.services.copy_keeping import difference_words
from studio_log.services.papers import Paper
from studio_log.services.ports import NoticeText, Raised
from studio_log.services.studio import Studio
from studio_log.services.trials import TrialReport
from studio_log.services.whole_file import write_whole
from studio_log.services.worker import ThreadWorker
from studio_log.store.compare import compare
from studio_log.store.faults import WrongPassword


class ProgramHouse:
    """Puts the parts together for one command."""

    def open_studio(self, where: str | None) -> Studio:
        """Open the studio at a place; it does not ring. Asks a terminal for a password."""
        secret = secret_of(where, folder := studio_folder(where))
        try:
            return open_studio(folder, secret=secret)
        except WrongPassword:
            if not sys.stdin.isatty():
                raise
        secret.learn(secret.address, getpass(f"Password for {secret.address}: "))
        return open_studio(folder, secret=secret)

    def restore(self, where: str | None, source: Path) -> str:
        """Put a copy in the studio's place, also where the present file cannot be opened."""
        return " ".join(restored(studio_folder(where), source))

    def look_over(self, where: str | None) -> Sequence[str]:
        """Say what could be read of a damaged studio; nothing for one that is not."""
        return could_be_read(studio_folder(where))

    def repair(self, where: str | None) -> Sequence[str]:
        """Read a damaged file into a new one, and work everything else out anew."""
        return mended(studio_folder(where))

    def compare(self, where: str | None, source: Path) -> Sequence[str]:
        """Say what `restore` would change."""
        seen = compare(studio_folder(where), source)
        return tuple(difference_words(seen, SystemClock().zone()))

    def write_tags(
        self, path: Path, facts: Sequence[TagFacts], stock: str, *, start_at: int = 1
    ) -> str:
        """Write tags as a PDF; gives words on what was written."""
        from studio_log.ui.ink.device import ensure_gui_app
        from studio_log.ui.tags.pdf import write_pdf

        app = ensure_gui_app()
        write_pdf(path, facts, stock, start_at=start_at)
        del app
        tags = "1 tag" if len(facts) == 1 else f"{len(facts)} tags"
        return f"{tags} written to {path}."

    def write_cards(self, path: Path, facts: Sequence[CardFacts], stock: str) -> str:
        """Write swatch cards as a PDF; gives words on what was written."""
        from studio_log.ui.ink.device import ensure_gui_app
        from studio_log.ui.swatches.cards import write_cards

        app = ensure_gui_app()
        write_cards(path, facts, stock)
        del app
        cards = "1 card" if len(facts) == 1 else f"{len(facts)} cards"
        return f"{cards} written to {path}."

    def write_plot(self, path: Path, plot: Plot) -> None:
        """Write a plot of swatches as a PNG."""
        from studio_log.ui.ink.device import ensure_gui_app
        from studio_log.ui.swatches.plot_paint import plot_png

        app = ensure_gui_app()
        write_whole(path, plot_png(plot))
        del app

    def write_trial(self, path: Path, report: TrialReport) -> str:
        """Write a trial's report: a drawing, or its table as CSV; gives words on it."""
        from studio_log.ui.ink.device import ensure_gui_app
        from studio_log.ui.trials.report_out import write_report

        app = ensure_gui_app()
        write_report(path, report)
        del app
        return f"The report of {report.code} is written to {path}."

    def write_paper(self, path: Path, paper: Paper, page: PageName) -> str:
        """Write a paper as a PDF; gives words on what was written."""
        from studio_log.ui.ink.device import ensure_gui_app
        from studio_log.ui.papers.painting import write_pdf

        app = ensure_gui_app()
        count = write_pdf(path, paper, page)
        del app
        pages = "1 page" if count == 1 else f"{count} pages"
        return f"{paper.document.title.replace('  ', ' ')}: {pages} written to {path}."

    def remind(self, where: str | None, *, once: bool, out: TextIO | None) -> int:
        """Ring without a window: what is due now, or until it is told to end."""
        return Reminding(where, out).once() if once else Reminding(where, out).run()


class Reminding:
    """The reminder service without a window; one thread owns the studio."""

    def __init__(self, where: str | None, out: TextIO | None) -> None:
        self._where = where
        self._out = out
        self._worker = ThreadWorker()
        self._studio: Studio | None = None
        self._ringing: Ringing | None = None
        self._here = ""
        self._unheard: tuple[str, ...] = ()

    def once(self) -> int:
        """Raise what is due now and end."""
        try:
            here = "the terminal" if self._out is not None else ""
            self._worker.submit(self._open, here).result()
            self._worker.submit(self._ring).result()
        finally:
            self._close()
        return 0

    def run(self) -> int:
        """Ring until SIGTERM or SIGINT."""
        from studio_log.outside.watcher import FolderWatcher

        watcher = None
        with told_to_end() as wait:
            try:
                # Of a service that writes into a log, nobody can be said to have seen anything.
                here = "the terminal" if self._out is not None and self._out.isatty() else ""
                folder = self._worker.submit(self._open, here).result()
                heard = partial(self._worker.hand_on, self._heard)
                watcher = FolderWatcher(folder, heard)
                self._worker.submit(self._listen, heard).result()
                self._worker.hand_on(self._ring)
                self._say("Reminding. Ctrl-C ends it.")
                wait()
            finally:
                if watcher is not None:
                    watcher.close()
                self._close()
        return 0

    def _open(self, here: str) -> Path:
        studio = open_studio(self._where)
        speak_in_service(studio.folder)
        self._here = studio.shows_here = here
        self._ringing = Ringing(studio, self._worker)
        studio.listeners.append(self._tell)
        self._studio = studio
        return studio.folder

    def _listen(self, heard: Callable[[], None]) -> None:
        if self._studio is not None:
            self._studio.listen(heard)

    def _ring(self) -> None:
        if self._studio is not None:
            self._studio.raise_due()

    def _heard(self) -> None:
        if self._studio is not None:
            self._studio.heard_of_change()

    def _tell(self, news: object) -> None:
        """Print what rings: before it is recorded where printing is the showing."""
        if isinstance(news, NoticeText) and self._here:
            self._print(news)
        elif isinstance(news, Raised) and not self._here and news.text.keys != self._unheard:
            # Into a service's log, once: an unheard one is tried again every half minute.
            self._unheard = () if news.on_desktop else news.text.keys
            self._print(news.text)

    def _print(self, text: NoticeText) -> None:
        self._say(text.title)
        for line in text.body.splitlines():
            self._say(f"  {line}")

    def _say(self, words: str) -> None:
        """Print; that nobody reads any more is no fault of the reminders."""
        if self._out is None:
            return
        try:
            print(words, file=self._out, flush=True)
        except (OSError, ValueError):
            lead_nowhere(self._out)
            self._out = None

    def _close(self) -> None:
        if self._ringing is not None:
            self._ringing.close()
        self._worker.close()


def run_command(words: Sequence[str], log: str) -> int:
    """Run one command; gives the exit code. `log` is the log file's path, for faults."""
    return run(words, house=ProgramHouse(), out=sys.stdout, err=sys.stderr, log=log)
