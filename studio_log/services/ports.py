"""What the studio needs from outside: clock, alarm, notices; and the worker's face."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Protocol


class Clock(Protocol):
    """Reads the time; the one place where it is read."""

    def now(self) -> datetime:
        """Give the present as an aware UTC instant."""
        ...

    def zone(self) -> str:
        """Give the IANA name of the zone in force."""
        ...

    def real(self, span: timedelta) -> timedelta:
        """Give how long a span lasts outside: shorter where the clock is hurried."""
        ...


class Secret(Protocol):
    """The password of the studio's server. Any thread may ask."""

    def __call__(self) -> str:
        """Give it; "" where none is known, or none is needed."""
        ...

    def learn(self, address: str, password: str) -> str:
        """Know the password of an address from now on.

        Gives a sentence where it will have to be typed again at the next start.
        """
        ...


class Alarm(Protocol):
    """Calls back at a moment."""

    def set(self, at: datetime | None) -> None:
        """Ring at this moment instead of any set before; None: not at all."""
        ...

    def close(self) -> None:
        """Stop; nothing rings afterwards."""
        ...


@dataclass(frozen=True)
class NoticeText:
    """One notice: several reminders due together make one."""

    title: str
    body: str
    urgency: str
    """calm, soon, now or spoiling."""
    keys: tuple[str, ...]
    """The reminders it tells of."""
    answers: tuple[tuple[str, str], ...] = ()
    """What a button in the notice answers, and its words: ("done", "Stirred")."""
    answers_to: str = ""
    """The one reminder that a button answers; "" where it answers all of `keys`."""


@dataclass(frozen=True)
class Delivery:
    """What became of one attempt by one channel."""

    channel: str
    ok: bool
    words: str


@dataclass(frozen=True)
class Raised:
    """A notice that was shown and recorded, with what each channel of the desktop answered."""

    text: NoticeText
    deliveries: tuple[Delivery, ...]

    @property
    def on_desktop(self) -> bool:
        """Whether a channel of the desktop took it."""
        return any(one.ok for one in self.deliveries)


class Notice(Protocol):
    """Raises notices by the first channel that takes them; never raises an error.

    Each call may take up to 3 s: it is made on a thread that nobody waits for.
    """

    def show(self, text: NoticeText) -> Sequence[Delivery]:
        """Show it and say what each channel answered."""
        ...

    def revise(self, keys: tuple[str, ...], text: NoticeText | None) -> None:
        """Put another text in place of the notice shown for these keys; None takes it away."""
        ...

    def take_over(self) -> tuple[tuple[str, ...], ...]:
        """Take over what a process that ended or was killed left on the screen.

        Gives the keys of each notice, oldest first: they can be revised from now on.
        """
        ...

    def hand_over(self) -> None:
        """Leave what stands on the screen to another process, which has the bell now."""
        ...

    def state(self) -> tuple[bool, str]:
        """Say whether desktop notices work, and in words what does; never waits."""
        ...

    def stale(self) -> bool:
        """Say whether the state is old or was never asked for; then `look` is due."""
        ...

    def look(self) -> tuple[bool, str]:
        """Ask the channels anew and give the state; may take 2 s."""
        ...

    def close(self) -> None:
        """Let go of the channels; notices on the screen stay."""
        ...


class Bell(Protocol):
    """The right to ring: one process on one studio has it."""

    def hold(self) -> bool:
        """Take or keep the bell; False while another process has it."""
        ...

    def release(self) -> None:
        """Give it up."""
        ...


Listener = Callable[[object], None]
