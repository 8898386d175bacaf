"""Plans with the optional optimizer, which runs in a process of its own only."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from studio_log.cli import values
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import quoted
from studio_log.planning.apart import MISSING, Apart, Ask, Message, has_optimizer
from studio_log.planning.effort import ENGINES

LOOKS_EACH_S: Final = 0.05
"""Seconds between two looks whether to end."""


def with_optimizer(typed: str | None) -> bool:
    """Say whether the optimizer plans; Refusal where it is asked for and not installed."""
    engine = typed or "auto"
    if engine not in ENGINES:
        known = ", ".join(ENGINES)
        raise Refusal(
            f"{quoted(values.shown(engine))} is no engine; one of {known} is. Nothing was changed."
        )
    if engine == "optimizer" and not has_optimizer():
        raise Refusal(f"{MISSING} Nothing was changed.")
    return engine != "own" and has_optimizer()


@dataclass(frozen=True)
class Away:
    """A problem that is planned elsewhere: its JSON, changes to it, and when to end."""

    problem: bytes
    changes: list[Any]
    seconds: float
    over: Callable[[], bool]

    def ask(
        self,
        do: str,
        keep: dict[str, Any] | None = None,
        on_better: Callable[[dict[str, Any]], None] = lambda _: None,
    ) -> dict[str, Any]:
        """Ask to plan, or why not; gives the fields of the answer. Refusal where it fails."""
        heard: list[Message] = []

        def hear(message: Message) -> None:
            if "better" in message:
                on_better(message["better"])
            else:
                heard.append(message)

        problem = json.loads(self.problem.decode("utf-8-sig"))
        ask = Ask(problem, do, "optimizer", self.seconds, keep=keep, more={"changes": self.changes})
        one = Apart(ask, hear)
        try:
            while not one.wait(LOOKS_EACH_S):
                if self.over():
                    one.end()
        finally:
            one.kill()
        if not heard or "failed" in heard[0]:
            words = heard[0]["failed"] if heard else "Planning ended without an answer."
            raise Refusal(f"{words} Nothing was changed.")
        return dict(heard[0]["done"])
