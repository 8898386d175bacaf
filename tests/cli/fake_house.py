"""A house that notes what a command asked for, and answers with given values."""

import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, TextIO

from studio_log.cli.main import run
from studio_log.domain.tags import TagFacts
from studio_log.present.paper.blocks import PageName
from studio_log.present.swatch_card import CardFacts
from studio_log.services.commands import Outcome
from studio_log.services.papers import Paper
from studio_log.services.ports import Clock
from tests.support.hand_clock import HandClock

NOW = datetime(2026, 6, 9, 12, 8, tzinfo=UTC)
"""A Tuesday; 13:08 in London (BST, UTC+1)."""
DONE = Outcome("It is done.", advice=("Start by 19:40.",), code="26-031")


@dataclass
class FakeStudio:
    """Notes commands, questions and calls; raises `trouble` instead where it is set."""

    clock: Clock = field(default_factory=lambda: HandClock(NOW))
    cautions: Mapping[str, Any] = field(default_factory=lambda: {"wet": None})
    answers: dict[type, Any] = field(default_factory=dict)
    trouble: BaseException | None = None
    outcome: Outcome = DONE
    faults: list[list[str]] = field(default_factory=list)
    done: list[Any] = field(default_factory=list)
    asked: list[Any] = field(default_factory=list)
    calls: list[tuple[Any, ...]] = field(default_factory=list)
    closed: int = 0

    @property
    def zone(self) -> str:
        return self.clock.zone()

    def do(self, command: Any, /) -> Outcome:
        if self.trouble is not None:
            raise self.trouble
        self.done.append(command)
        return self.outcome

    def ask(self, question: Any, /) -> Any:
        if self.trouble is not None:
            raise self.trouble
        self.asked.append(question)
        return self.answers[type(question)]

    def backup(self, to: Path, /) -> str:
        self.calls.append(("backup", to))
        return f"A copy is in {to}."

    def check(self) -> list[str]:
        self.calls.append(("check",))
        if self.trouble is not None:
            raise self.trouble
        return self.faults.pop(0) if self.faults else []

    def close(self) -> None:
        self.closed += 1


@dataclass
class FakeHouse:
    """Opens the one fake studio; notes what else it is asked."""

    studio: FakeStudio = field(default_factory=FakeStudio)
    trouble: BaseException | None = None
    opened: list[str | None] = field(default_factory=list)
    readable: tuple[str, ...] = ()
    calls: list[tuple[Any, ...]] = field(default_factory=list)

    def open_studio(self, where: str | None) -> FakeStudio:
        self.opened.append(where)
        if self.trouble is not None:
            raise self.trouble
        return self.studio

    def remind(self, where: str | None, *, once: bool, out: TextIO) -> int:
        self.calls.append(("remind", where, once))
        print("rang", file=out)
        return 0

    def restore(self, where: str | None, source: Path) -> str:
        self.calls.append(("restore", where, source))
        return "Restored."

    def write_paper(self, path: Path, paper: Paper, page: PageName) -> str:
        self.calls.append(("paper", path, paper.name, page))
        return f"{paper.name} written."

    def write_cards(self, path: Path, facts: Sequence[CardFacts], stock: str) -> str:
        self.calls.append(("cards", path, tuple(facts), stock))
        return "1 card written."

    def look_over(self, where: str | None) -> Sequence[str]:
        self.calls.append(("look over", where))
        return self.readable

    def repair(self, where: str | None) -> Sequence[str]:
        self.calls.append(("repair", where))
        self.studio.trouble = None
        return ("Worked out anew from the journal.",)

    def compare(self, where: str | None, source: Path) -> Sequence[str]:
        self.calls.append(("compare", where, source))
        return ("The copy holds 2 lots.",)

    def write_tags(
        self, path: Path, facts: Sequence[TagFacts], stock: str, *, start_at: int = 1
    ) -> str:
        self.calls.append(("tags", path, tuple(facts), stock, start_at))
        return "1 tag written."


@dataclass(frozen=True)
class Ended:
    """What became of a command line."""

    code: int
    out: str
    err: str


@dataclass
class Line:
    """Runs command lines against a fake house."""

    house: FakeHouse = field(default_factory=FakeHouse)

    @property
    def studio(self) -> FakeStudio:
        return self.house.studio

    def run(self, *words: str, log: str = "") -> Ended:
        out, err = io.StringIO(), io.StringIO()
        code = run(words, house=self.house, out=out, err=err, log=log)
        return Ended(code, out.getvalue(), err.getvalue())

    def do(self, *words: str) -> Any:
        """Run a command that has to be done, and give what it asked the studio to do."""
        ended = self.run(*words)
        assert ended.code == 0, ended
        assert self.studio.closed == len(self.house.opened)
        return self.studio.done[-1]
