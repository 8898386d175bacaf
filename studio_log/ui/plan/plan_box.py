"""The window “Plan”: it plans what the studio says, shows it, and lets lots follow it."""

from datetime import datetime
from functools import partial
from typing import Any, Final

from PySide6.QtCore import Qt, QTimer, Signal, Slot
from PySide6.QtGui import QCloseEvent, QShowEvent
from PySide6.QtWidgets import QDialog, QWidget
from typing_extensions import override

from studio_log.domain.plan_wishes import write_wishes
from studio_log.language.words import tr
from studio_log.planning.apart import Ask
from studio_log.present.plan_visits import PlanDay, plan_days
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.plan import PlanFor, PlannedFor, PlanSetup
from studio_log.services.questions import Timeline
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.plan import told
from studio_log.ui.plan.accept_form import AcceptForm
from studio_log.ui.plan.asking import goal_form, wanted_form
from studio_log.ui.plan.following import Following
from studio_log.ui.plan.moves import Moves
from studio_log.ui.plan.plan_face import FULL, OTHERWISE, WHY, PlanFace
from studio_log.ui.plan.run import PlanRun, ask_of
from studio_log.ui.plan.short_goals import ShortGoal, short_goals
from studio_log.ui.plan.time_sheet import MakeSheet
from studio_log.ui.plan.told import Fields
from studio_log.ui.plan.what_if import Change

SECONDS: Final = 10.0
WHY_LONGER: Final = 2
"""Times as long as for a plan it is looked for ways out."""
LONGER: Final = 60.0
SOON_MS: Final = 500
"""So long after a change it is planned anew: several changes at once are one."""
TICK_MS: Final = 200


class PlanBox(PlanFace):
    """Plans in a process of its own, shows each better plan, and looks for ways out after."""

    hours_wanted = Signal()
    """The studio's hours are to be edited."""

    def __init__(
        self,
        bridge: Bridge,
        make_sheet: MakeSheet,
        parent: QWidget | None = None,
        *,
        seconds: float = SECONDS,
        tries: int | None = None,
    ) -> None:
        """Open it; with `tries` it plans so often and no more, which gives the same each time."""
        super().__init__(bridge, make_sheet, parent)
        self._tries = tries
        self._bridge = bridge
        self._seconds = self._length = seconds
        self._spent = 0
        self.setup: PlanSetup | None = None
        self.fields: Fields | None = None
        self.days: tuple[PlanDay, ...] = ()
        """Those of the plan in `fields`."""
        self.before: Fields | None = None
        """The plan that this one is compared with."""
        self._in_hand: Fields | None = None
        """The plan of the way out that was taken, to go on from."""
        self.run, self.search = PlanRun(self), PlanRun(self)
        self.moves, self.following = Moves(bridge, self), Following(bridge, self)
        self.form: QDialog | None = None
        self._soon = QTimer(self, singleShot=True, interval=SOON_MS)
        self._tick = QTimer(self, interval=TICK_MS)
        self._connect()
        self.show_running(running=False)
        self.plan_it.setFocus()

    @property
    def is_busy(self) -> bool:
        """Whether anything is still being looked for."""
        return self.run.running or self.search.running

    # -- what the studio says --------------------------------------------------------------

    @Slot()
    def refresh(self) -> None:
        """Ask what the studio is now, and plan it anew."""
        self._bridge.ask(PlanFor(), self._show_setup)

    def on_changed(self, outcome: Outcome) -> None:
        """Plan anew where lots or settings were touched, here or by another program."""
        if self.isVisible() and (outcome.lots or outcome.settings or outcome is FOREIGN):
            self._soon.start()

    def _show_setup(self, setup: PlanSetup) -> None:
        self.setup = setup
        self.pane.show_setup(setup)
        self.what_if.show_setup(setup)
        self.offer(self.unfollow, any(one.follows for one in setup.lots))
        self.start()

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()

    @override
    def closeEvent(self, event: QCloseEvent) -> None:
        self._end_all()
        super().closeEvent(event)

    @override
    def reject(self) -> None:
        self._end_all()
        super().reject()

    def _end_all(self) -> None:
        self._soon.stop()
        self._tick.stop()
        self.run.close()
        self.search.close()
        self.moves.forget()

    # -- planning --------------------------------------------------------------------------

    @Slot()
    def start(self, seconds: float = 0.0) -> None:
        """Begin to plan what was said; what was found before is kept to."""
        setup = self.setup
        if setup is None:
            return
        self.search.close()
        self.moves.forget()
        self.offer(self.unmove, False)
        if not any(line.open for line in setup.lots):
            self.run.close()
            self._show_nothing()
            return
        self._spent, self._length = 0, seconds or self._seconds
        keep = self.fields if self.fields is not None and self.fields["starts"] else setup.keep
        mends = self.fields is None and keep is not None and not self.what_if.tried
        self.follow.setEnabled(False)
        self._say_head(looking=True)
        do = "repair" if mends and not seconds else "plan"
        in_hand, self._in_hand = self._in_hand, None
        go_on = bool(seconds) or in_hand is not None
        self.run.start(self._ask(do, self._length, in_hand or keep, go_on=go_on))
        self._tick.start()
        self.show_running(running=self.run.running)

    def _ask(self, do: str, seconds: float, keep: Fields | None, **more: object) -> Ask:
        setup = self.setup
        assert setup is not None  # noqa: S101 - nothing is asked before the studio is known
        changes, before = self.what_if.changes, self.before or setup.keep
        told_more = {"what_fits": True, "changes": changes, "before": before, **more}
        return ask_of(setup.problem, do, seconds, self._tries, keep, told_more)

    @Slot(str, int, object)
    def _move(self, lot: str, number: int, at: datetime) -> None:
        """Try a step elsewhere: it goes to the nearest moment at which nothing else moves."""
        step = None if self.setup is None else told.step_at(self.setup, lot, number, self.fields)
        if step is None or self.fields is None or self.run.running:
            self.message.advise(tr("Wait until the search is over, then move it again."))
            return
        self.search.close()
        was = (self.fields, self.before)
        ask = self._ask("move", self._seconds, self.fields, lot=lot, step=step, at=at.isoformat())
        self.moves.start(ask, told.Drawn(lot, step, at), was)

    @Slot(object, str)
    def _moved(self, fields: Fields, elsewhere: str) -> None:
        self.before = self.before or self.fields
        self._show_moved(fields)
        self.chips.button(OTHERWISE).click()
        self.message.advise(elsewhere)

    @Slot()
    def _unmove(self) -> None:
        """Show the plan before the last move by hand."""
        was = self.moves.take_back()
        if was is not None:
            self.search.close()
            fields, self.before = was
            self._show_moved(fields)
            self.message.put_away()

    def _show_moved(self, fields: Fields) -> None:
        self.offer(self.unmove, bool(self.moves))
        self._show_plan(fields, looking=False)
        self._look_for_ways(fields)

    @Slot(object)
    def _better(self, fields: Fields) -> None:
        self._show_plan(fields, looking=True)

    @Slot(object)
    def _done(self, fields: Fields) -> None:
        self._tick.stop()
        self.show_running(running=self.run.running)
        self._show_plan(fields, looking=False)
        self._look_for_ways(fields)

    def _look_for_ways(self, fields: Fields) -> None:
        if told.is_late(fields) and self._tries is None:
            self.search.start(self._ask("why", WHY_LONGER * self._seconds, fields))
            self._show_why(fields, looking=True)

    @Slot(object)
    def _explained(self, fields: Fields) -> None:
        if self.fields is not None:
            self._show_why(told.explained(self.fields, fields), looking=self.search.running)

    @Slot(str)
    def _failed(self, words: str) -> None:
        self._tick.stop()
        self.show_running(running=self.run.running)
        if self.fields is not None:
            self._show_plan(self.fields, looking=False)
        else:
            self.head.setText(tr("There is no plan."))
        kept = tr("No lot was changed; the best plan so far stands. Plan again to go on.")
        self.message.refuse(f"{words} {kept}")

    @Slot()
    def _pass(self) -> None:
        self._spent += TICK_MS
        self.bar.setValue(min(FULL, round(self._spent * FULL / 1000 / self._length)))

    # -- what is shown ---------------------------------------------------------------------

    def _show_plan(self, fields: Fields, *, looking: bool) -> None:
        setup = self.setup
        if setup is None:
            return
        self.fields = fields
        acts, tended = told.acts_of(fields, setup), told.tended_of(fields, setup)
        self.days = days = plan_days(acts, setup.zone, tended)
        self._say_head(looking=looking)
        before = self.before or setup.keep
        names = {line.code: told.name_of(line) for line in setup.lots}
        moved = told.moved_acts(fields, before)
        self.visits.show_days(days, setup.zone, names, moved)
        self._show_why(fields, looking=looking)
        if not looking:
            self._show_otherwise(fields)
        self.follow.setEnabled(any(day.visits for day in days) and not looking)
        self.copy.setEnabled(bool(days))
        starts, ends = told.moments(fields, "starts"), told.moments(fields, "ends")
        if starts:
            self._bridge.ask(PlannedFor(starts, ends), self._show_timeline, failed=self._stale)

    def _say_head(self, *, looking: bool) -> None:
        if self.fields is not None:
            lacking = sum(one.lacking for one in self._short(self.fields))
            say = partial(told.head_words, self.fields, self.days, looking=looking)
            self.head.setText(say(moved=bool(self.moves), lacking=lacking))

    def _show_nothing(self) -> None:
        self.fields, self.days = None, ()
        self._tick.stop()
        self.show_running(running=self.run.running)
        self.head.setText(tr("Nothing is left to plan. Add a lot that is wanted, or make one."))
        self.visits.show_days((), "UTC", {})
        notes = list(self.setup.notes) if self.setup else []
        self.why.show_groups([told.Group(notes, ())] if notes else [], looking=False)
        self.sheet.show_lanes((), (), self._bridge.now(), self._bridge.zone())
        self.follow.setEnabled(False)
        self.copy.setEnabled(False)

    def _show_timeline(self, timeline: Timeline) -> None:
        self.sheet.show_around(timeline.closed, timeline.shared, left_out=timeline.left_out)
        self.sheet.show_lanes(timeline.lanes, timeline.nights, timeline.now, timeline.zone)

    def _show_why(self, fields: Fields, *, looking: bool) -> None:
        setup = self.setup
        if setup is None:
            return
        short = [one.words() for one in self._short(fields)]
        groups = [*([told.Group(short, ())] if short else []), *told.groups_of(fields, setup)]
        stuck = told.is_late(fields)
        self.why.show_groups(groups, looking=looking and stuck, stuck=stuck)
        self.count(WHY, sum(len(one.words) + len(one.ways) for one in groups))

    def _short(self, fields: Fields) -> list[ShortGoal]:
        setup = self.setup
        return [] if setup is None else short_goals(fields, setup, self.what_if.changes)

    def _show_otherwise(self, fields: Fields) -> None:
        """Show what is otherwise than in the plan before, where anything is."""
        rows = fields.get("differences", ())
        against = self.before or (self.setup.keep if self.setup is not None else None)
        self.otherwise.show_rows(rows, compared=against is None or "differences" in fields)
        self.count(OTHERWISE, sum(one["kind"] != "stays" for one in rows))

    def _stale(self, _words: str) -> None:
        """Plan anew: the log has gone on since this was planned."""
        self._soon.start()

    # -- what is done ----------------------------------------------------------------------

    @Slot()
    def open_accept(self) -> None:
        """Ask which lots shall follow."""
        setup, fields = self.setup, self.fields
        if setup is None or fields is None or not fields["starts"]:
            return
        form = AcceptForm(told.begins(fields, setup, self._bridge.now()), self.what_if.tried, self)
        form.accepted.connect(lambda: self.following.follow(fields, form.codes, form.changes))
        self._open(form)

    @Slot(object)
    def _followed(self, changes: tuple[Change, ...]) -> None:
        self.before = None  # from now on a plan is compared with the one that is followed
        if changes:
            self.what_if.forget()  # the studio has it now

    def open_goal(self, number: int) -> None:
        """Open the form of a goal; -1 makes a new one."""
        form = goal_form(self.setup, number, self)
        form.accepted.connect(lambda: self.pane.with_goal(number, form.goal))
        self._open(form)

    @Slot()
    def open_wanted(self) -> None:
        """Open the form of a lot that is wanted."""
        setup = self.setup
        if setup is None:
            return
        form = wanted_form(setup, self)
        form.accepted.connect(
            lambda: self._keep({"plan_wanted": write_wishes((*setup.wanted, form.wanted))})
        )
        self._open(form)

    def _open(self, form: QDialog) -> None:
        form.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.form = form
        form.open()

    @Slot(object)
    def _keep(self, values: dict[str, Any]) -> None:
        self.message.put_away()
        self._bridge.do(ChangeSettings(values), failed=self.message.refuse)

    @Slot(object)
    def _take_way(self, way: Fields) -> None:
        self._in_hand = way.get("plan")
        self.what_if.take(told.tried_of(way))

    @Slot()
    def _tried(self) -> None:
        """Compare with the plan of the studio as it is."""
        if self.what_if.tried and self.before is None:
            self.before = self.fields
        elif not self.what_if.tried:
            self.fields, self.before = self.before or self.fields, None
        self.start()

    def _connect(self) -> None:
        for signal, then in (
            (self.plan_it.clicked, self.refresh),
            (self.longer.clicked, partial(self.start, LONGER)),
            (self.stop.clicked, self.run.end),
            (self.follow.clicked, self.open_accept),
            (self.unfollow.clicked, self.following.take_back),
            (self.refollow.clicked, self.following.again),
            (self.following.followed, self._followed),
            (self.following.back, partial(self.offer, self.refollow)),
            (self.following.said, self.message.advise),
            (self.following.refused, self.message.refuse),
            (self.copy.clicked, self.visits.copy),
            (self.leave.clicked, self.reject),
            (self.chips.idClicked, self.turns.setCurrentIndex),
            (self.pane.changed, self._keep),
            (self.pane.goal_wanted, self.open_goal),
            (self.pane.lot_wanted, self.open_wanted),
            (self.pane.hours_wanted, self.hours_wanted),
            (self.what_if.changed, self._tried),
            (self.why.taken, self._take_way),
            (self.visits.chosen, self.sheet.choose),
            (self._soon.timeout, self.refresh),
            (self._tick.timeout, self._pass),
            (self.run.better, self._better),
            (self.run.done, self._done),
            (self.run.failed, self._failed),
            (self.search.better, self._explained),
            (self.search.done, self._explained),
            (self.moves.moved, self._moved),
            (self.moves.stayed, self.message.advise),
            (self.moves.refused, self.message.refuse),
            (self.moves.failed, self._failed),
            (self.unmove.clicked, self._unmove),
            (self.sheet.plan_wanted, self._move),
            (self._bridge.changed, self.on_changed),
        ):
            signal.connect(then)
