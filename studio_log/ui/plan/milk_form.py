"""The form of one milk for several lots: who makes it, and whom it serves too."""

from collections.abc import Sequence

from PySide6.QtWidgets import QComboBox, QWidget
from typing_extensions import override

from studio_log.domain.plan_wishes import SharedMilk
from studio_log.language.words import listed, tr
from studio_log.services.plan import PlanLine, PlanSetup
from studio_log.ui.plan import told
from studio_log.ui.plan.tick_list import TickList
from studio_log.ui.plan.wish_forms import SmallForm
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, em


def could_share(setup: PlanSetup) -> bool:
    """Say whether any lot could make milk for another that does not share one yet."""
    free = _free(setup)
    return any(one.makes_milk and any(two is not one for two in free) for one in free)


def _free(setup: PlanSetup) -> list[PlanLine]:
    """Give the lots that may make or take milk, and neither make nor take a shared one."""
    named = {name for one in setup.shared for name in (one.maker, *one.lots)}
    return [one for one in setup.lots if one.takes_milk and one.code not in named]


class MilkForm(SmallForm):
    """Offers the lots that share no milk yet."""

    def __init__(self, setup: PlanSetup, parent: QWidget | None = None) -> None:
        super().__init__(tr("One milk for several lots"), parent)
        self._lots = _free(setup)
        self.maker = QComboBox()
        for line in self._lots:
            if line.makes_milk:
                self.maker.addItem(told.name_of(line), line.code)
        self.maker.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        calm(self.maker)
        self.others = TickList(tr("Lots that it serves too"))
        self.others.setMinimumHeight(em(self, 8))
        self.form.addRow(tr("&Made with"), self.maker)
        self.form.addRow(tr("It serves t&oo"), self.others)
        self.form.addRow(
            Words(
                tr(
                    "A lot that is served skips its own beans and straining. It is laid in while "
                    "the milk is fresh; its further coats come while the milk keeps cold."
                ),
                tone="soft",
                size="small",
            )
        )
        self.maker.currentIndexChanged.connect(self._offer)
        self._offer()
        self.lay_out()

    @property
    def shared(self) -> SharedMilk:
        """What the form says."""
        return SharedMilk(str(self.maker.currentData()), self.others.ticked)

    @override
    def first_fault(self) -> str:
        """Say what is amiss, "" where nothing is."""
        if self.others.ticked:
            return ""
        self.others.setFocus()
        return tr("Tick at least one lot that the milk serves too.")

    def _offer(self) -> None:
        """Show all lots but the one that makes the milk; what is ticked stays so."""
        maker = self.maker.currentData()
        lots = [(one.code, told.name_of(one)) for one in self._lots if one.code != maker]
        self.others.show_lots(lots, self.others.ticked)


def shared_words(one: SharedMilk, lots: Sequence[PlanLine]) -> str:
    """Give a sharing as a row of the page."""
    names = {line.code: told.name_of(line) for line in lots}
    others = [names.get(code, code) for code in one.lots]
    return tr("{maker}, for {others} too", maker=names.get(one.maker, one.maker),
              others=listed(others))  # fmt: skip
