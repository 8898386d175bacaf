"""Which function does which command; each noun brings its own table."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from studio_log.services import (
    bath_acts,
    card_acts,
    joining,
    light_acts,
    lot_acts,
    marking,
    milk_acts,
    moves,
    notebook_acts,
    photos,
    plan_acts,
    ringing,
    stock_acts,
    swatch_acts,
    taking_back,
    trial_acts,
)
from studio_log.services import commands as c
from studio_log.services.desk import Desk
from studio_log.services.moving import TakeFolder

Handler = Callable[[Desk, Any], c.Outcome]

HANDLERS: Final[Mapping[type, Handler]] = {
    **lot_acts.HANDLERS,
    **joining.HANDLERS,
    c.Mark: marking.mark,
    **photos.HANDLERS,
    **stock_acts.HANDLERS,
    **bath_acts.HANDLERS,
    **swatch_acts.HANDLERS,
    **light_acts.HANDLERS,
    **trial_acts.HANDLERS,
    **plan_acts.HANDLERS,
    **moves.HANDLERS,
    **notebook_acts.HANDLERS,
    **card_acts.HANDLERS,
    c.Undo: taking_back.undo,
    c.Redo: taking_back.redo,
    c.Correct: taking_back.correct,
    c.NewMilk: milk_acts.new_milk,
    c.SetMilk: milk_acts.set_milk,
    c.AnswerReminder: ringing.answer,
    c.NoteShown: ringing.note_shown,
}
TIMELESS: Final = frozenset({c.NoteShown, c.NoteTagsPrinted, TakeFolder})
"""Commands that are done whatever the clock says: they tell of what happened just now."""
