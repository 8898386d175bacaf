"""Readings on the sheet: at their step, in the journal, and after a correction."""

from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.commands import Correct, Mark, Undo
from tests.support.builders import NINE


def sheet(shop, code: str) -> q.LotSheet:
    return shop.studio.ask(q.LotSheetFor(code))


def test_readings_stand_at_their_step_and_in_the_journal(shop):
    code = shop.new("Linen table runners")
    readings = {"temperature": "71 °F", "pH": 6.8, "smell": "sweet"}
    shop.studio.do(Mark(code, "1", Act.START, readings=readings))
    shown = sheet(shop, code)
    assert "pH 6.8, smell: sweet, temperature 71 °F" in shown.steps[0].details
    assert shown.entries[-1].words.endswith("pH 6.8, smell: sweet, temperature 71 °F")


def test_a_corrected_reading_replaces_the_old_one_and_an_undo_takes_it_away(shop):
    code = shop.new("Linen table runners")
    shop.studio.do(Mark(code, "1", Act.START, readings={"temperature": "171 °C"}))
    number = sheet(shop, code).entries[-1].number
    shop.studio.do(Correct(code, number, at=NINE, readings={"temperature": "71 °C"}))
    shown = sheet(shop, code)
    assert "71 °C" in shown.data["became"][str(number)]
    assert "171" not in shown.data["became"][str(number)]
    assert "temperature 71 °C" in shown.steps[0].details
    assert "171 °C" in next(one for one in shown.entries if one.number == number).words
    shop.studio.do(Undo(code, number))
    assert "71" not in sheet(shop, code).steps[0].details


def test_the_next_step_says_what_it_waits_for_and_no_other_does(shop):
    code = shop.new("Linen table runners")
    shop.mark(code, "1", Act.START)
    steps = sheet(shop, code).steps
    waits = [step.why for step in steps if step.why.startswith("waits for")]
    assert waits == [f"waits for: {steps[0].title}"]
