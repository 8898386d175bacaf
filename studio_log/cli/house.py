"""What the command line needs of the program around it: the app hands it in."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, Protocol, TextIO

from studio_log.domain.tags import TagFacts
from studio_log.present.paper.blocks import PageName
from studio_log.present.swatch_card import CardFacts
from studio_log.present.swatch_plot import Plot
from studio_log.services.commands import Outcome
from studio_log.services.papers import Paper
from studio_log.services.ports import Clock
from studio_log.services.trials import TrialReport


class StudioFace(Protocol):
    """An open studio, as a command sees it; every method may raise Refusal."""

    clock: Clock
    cautions: Mapping[str, Any]
    """The cautions that a method may name, by slug."""

    @property
    def zone(self) -> str:
        """IANA name of the studio's zone."""
        ...

    def do(self, command: Any, /) -> Outcome:
        """Do one of services.commands."""
        ...

    def ask(self, question: Any, /) -> Any:
        """Answer one of services.questions."""
        ...

    def backup(self, to: Path, /) -> str:
        """Write a copy of the studio; gives words for the person."""
        ...

    def check(self) -> list[str]:
        """Give what is wrong, a sentence each."""
        ...

    def close(self) -> None:
        """Close the studio."""
        ...


class House(Protocol):
    """The makers. `where` is what was given as --studio, None for the usual place."""

    def open_studio(self, where: str | None) -> StudioFace:
        """Open the studio, making it on first use; Refusal where it cannot be."""
        ...

    def remind(self, where: str | None, *, once: bool, out: TextIO | None) -> int:
        """Ring what falls due until stopped, or once; gives the exit code."""
        ...

    def restore(self, where: str | None, source: Path) -> str:
        """Put a copy in the studio's place, also where the studio itself cannot be opened."""
        ...

    def look_over(self, where: str | None) -> Sequence[str]:
        """Say what could be read of a studio that is damaged; nothing for one that is not."""
        ...

    def repair(self, where: str | None) -> Sequence[str]:
        """Mend what can be mended; gives what was done, a sentence each."""
        ...

    def compare(self, where: str | None, source: Path) -> Sequence[str]:
        """Say what putting a copy in the studio's place would change, a sentence each."""
        ...

    def write_tags(
        self, path: Path, facts: Sequence[TagFacts], stock: str, *, start_at: int = 1
    ) -> str:
        """Write tags as a PDF on a stock of labels; gives words for the person."""
        ...

    def write_cards(self, path: Path, facts: Sequence[CardFacts], stock: str) -> str:
        """Write swatch cards as a PDF on a stock of labels; gives words for the person."""
        ...

    def write_plot(self, path: Path, plot: Plot) -> None:
        """Write a plot of swatches as a PNG."""
        ...

    def write_trial(self, path: Path, report: TrialReport) -> str:
        """Write a trial's report by the end of the name; gives words for the person."""
        ...

    def write_paper(self, path: Path, paper: Paper, page: PageName) -> str:
        """Write a paper as a PDF on A4 or Letter; gives words for the person."""
        ...
