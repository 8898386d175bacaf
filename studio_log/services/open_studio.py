"""What an open studio is before it does anything: its store, its settings, its methods."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar
from zoneinfo import ZoneInfo

from studio_log.domain.method_text import read_method
from studio_log.services.desk import Desk
from studio_log.services.own_settings import OWN, keep_own, own_settings
from studio_log.services.ports import Clock, Listener, Secret
from studio_log.services.settings import Settings
from studio_log.services.settings_check import read_settings
from studio_log.store.faults import ServerGone
from studio_log.store.places import open_any
from studio_log.store.work import Work

if TYPE_CHECKING:
    from studio_log.domain.lots import Lot
    from studio_log.domain.methods import Method
    from studio_log.store.database import Store

T = TypeVar("T")


class NoSecret:
    """Knows no password: libpq looks into its own files, and a server may want none."""

    def __call__(self) -> str:
        """Give none."""
        return ""

    def learn(self, _address: str, _password: str) -> str:
        """Forget it at once."""
        return ""


class OpenStudio:
    """Knows the studio that lies in a folder, or on the server that the folder names."""

    def __init__(
        self, folder: Path, clock: Clock, shipped: Mapping[str, str], secret: Secret
    ) -> None:
        self.folder = folder
        self.clock = clock
        self.secret = secret
        self.store: Store = open_any(folder, secret, now=clock.now())
        self.book: dict[tuple[str, int], Method] = {}
        self.cache: dict[str, tuple[int, Lot]] = {}
        self.listeners: list[Listener] = []
        self._anchor = (0, 0)
        self._settings = Settings()
        self._shipped = dict(shipped)

    @property
    def settings(self) -> Settings:
        """The settings in force."""
        return self._settings

    def read_kept_settings(self, work: Work) -> None:
        """Take the settings over as the store has them."""
        own = own_settings(self.folder) if self.store.address else {}
        self._settings = read_settings(work.settings.all() | own)

    def _keep_settings(self, work: Work, values: Mapping[str, Any]) -> None:
        """Keep some: where laptops share the studio, those of each apart from the studio's."""
        own = {name for name in values if name in OWN} if self.store.address else set()
        if own:
            keep_own(self.folder, values)
        work.settings.put_all({name: values[name] for name in values if name not in own})

    @property
    def zone(self) -> str:
        """The zone in force: the studio's own, else the system's."""
        return self._settings.zone or self.clock.zone()

    def local_now(self) -> datetime:
        """Give the present in the studio's zone: a copy a day goes by the dyer's days."""
        return self.clock.now().astimezone(ZoneInfo(self.zone))

    def desk(self, work: Work) -> Desk:
        """Make the desk for one turn: the clock is read here, once."""
        return Desk(work, self.clock.now(), self.zone, self._settings, self.book, self.cache)

    def tell_news(self, news: object) -> None:
        """Let the listeners know of what changed outside the log."""
        self._tell(news)

    def _tell(self, news: object) -> None:
        for listener in list(self.listeners):
            listener(news)

    def _know(self) -> None:
        """Take over methods and settings as the store has them."""
        with self.store.reading() as look:
            if not look.journal.holds(self._anchor):
                self.cache.clear()  # a copy was put back: lots were known by another journal
            self._anchor = look.journal.anchor()
            self.read_kept_settings(look)
            new = look.methods.keys() - self.book.keys()
            texts = look.methods.all() if new else ()
        for one in texts:
            if (key := (one.slug, one.version)) in new:
                self.book[key] = read_method(one.text, name=one.slug)

    def _ship(self, fresh: Sequence["Method"], work: Work) -> None:
        """Bring shipped methods into the studio once; a lot keeps its version."""
        for method in fresh:
            work.methods.put(method.slug, method.version, method.title, method.text)
            self.book[method.key] = method

    def _in_work(self, turn: Callable[[Work], T]) -> T:
        """Do something in one transaction; here, where the server fell silent meanwhile."""
        try:
            with self.store.work() as work:
                return turn(work)
        except ServerGone:
            if not self.store.away:
                raise
        self.cache.clear()  # it may know what was rolled back
        with self.store.work() as work:
            return turn(work)
