"""Baths in a studio: acts, their reminders from ring to answer, and everything taken back."""

from datetime import timedelta

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.baths import BathFor, BathsFor, MarkBath, NewBath, SetBath
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    Correct,
    Redo,
    Undo,
)
from studio_log.services.questions import BenchFor, LotSheetFor, RemindersFor
from studio_log.services.rang import WhatRangFor
from tests.support.builders import DAY, HOUR, MINUTE
from tests.support.fixtures import Workshop

CHALK = "B26-001"


@pytest.fixture
def chalk(shop: Workshop) -> str:
    return shop.do(NewBath("chalk", name="Big tub")).code


def vat(shop: Workshop) -> str:
    return shop.do(NewBath("fructose-vat")).code


def use(shop: Workshop, code: str, grams: float, **rest: object):
    return shop.do(MarkBath(code, Act.BATH_USE, grams=grams, **rest))  # type: ignore[arg-type]


def page(shop: Workshop, code: str):
    return shop.studio.ask(BathFor(code))


def keys(shop: Workshop) -> list[str]:
    return [one.key for one, _ in shop.studio.ask(RemindersFor(within=40 * 86_400))]


def test_codes_are_given_once_and_never_again(shop: Workshop, chalk: str) -> None:
    assert chalk == CHALK
    shop.do(Undo(chalk))
    assert shop.do(NewBath("alum")).code == "B26-002"
    assert [one.code for one in shop.studio.ask(BathsFor(finished=True))] == ["B26-002"]


def test_a_use_takes_the_weight_of_its_lots_and_both_name_each_other(
    shop: Workshop, chalk: str
) -> None:
    runners, other = shop.new("runners"), shop.new("cloths")
    told = use(shop, chalk, None, lots=(runners, other), at=None)  # type: ignore[arg-type]
    grams = sum(shop.lot(code).grams or 0 for code in (runners, other))
    assert page(shop, chalk).line.grams == pytest.approx(grams)
    assert told.baths == {chalk}
    assert page(shop, chalk).lots == ((runners, "runners"), (other, "cloths"))
    assert [one.code for one in shop.studio.ask(BathsFor(lot=runners))] == [chalk]
    assert shop.studio.ask(BathsFor(lot=shop.new("late"))) == ()


def test_the_page_of_a_lot_names_its_baths_and_the_exhaust_that_it_had(shop: Workshop) -> None:
    first, second = shop.new("first"), shop.new("second")
    madder = shop.do(NewBath("dye", name="Madder")).code
    use(shop, madder, None, lots=(first,), at=None)  # type: ignore[arg-type]
    use(shop, madder, None, lots=(second,), at=None)  # type: ignore[arg-type]
    told = [shop.studio.ask(LotSheetFor(code)).bath_words for code in (first, second)]
    assert told == [
        f"Baths: {madder} Madder (the fresh bath).",
        f"Baths: {madder} Madder (exhaust 1).",
    ]
    assert shop.studio.ask(LotSheetFor(shop.new("dry"))).bath_words == ""


def test_a_use_names_the_step_of_its_lot(shop: Workshop, chalk: str) -> None:
    lot = shop.new()
    use(shop, chalk, 300, lots=(lot,), step="first-soak")
    line = page(shop, chalk).diary[0]
    assert line.step == shop.lot(lot).step(line.step).number
    assert shop.lot(lot).step(line.step).slug == "first-soak"
    assert f"{lot}, step {line.step}" in line.words


@pytest.mark.parametrize(
    ("command", "words"),
    [
        (NewBath("soup"), "no kind of bath"),
        (NewBath("chalk", litres=0), "up to 5,000 L"),
        (NewBath("chalk", refresh_grams=float("nan")), "500 kg"),
        (NewBath("chalk", name="x\x00y"), "signs that cannot be kept"),
        (NewBath("chalk", name="x" * 201), "200 characters"),
        (SetBath(CHALK), "what changes"),
        (SetBath("B26-404", name="x"), "no bath B26-404"),
        (SetBath("26-001", name="x"), "no bath's code"),
        (MarkBath(CHALK, Act.BATH_USE), "how much cloth"),
        (MarkBath(CHALK, Act.BATH_USE, grams=-1), "500 kg"),
        (MarkBath(CHALK, Act.BATH_USE, grams=1, lots=("26-404",)), "no lot 26-404"),
        (MarkBath(CHALK, Act.BATH_USE, grams=1, step="now"), "one lot"),
        (MarkBath(CHALK, Act.BATH_DIP, dipped=timedelta(days=3)), "two days"),
        (MarkBath(CHALK, Act.BATH_READ), "what was read"),
        (MarkBath(CHALK, Act.BATH_READ, readings={"ph": 15}), "no ph"),
        (MarkBath(CHALK, Act.BATH_READ, readings={"temperature": "hot"}), "no temperature"),
        (MarkBath(CHALK, Act.BATH_READ, readings={"ph": float("nan")}), "no reading"),
        (MarkBath(CHALK, Act.BATH_FEED), "what the bath was fed"),
        (MarkBath(CHALK, Act.NOTE), "note is empty"),
        (MarkBath(CHALK, Act.START), "nothing that is done to a bath"),
        (MarkBath(CHALK, Act.BATH_SET), "nothing that is done to a bath"),
    ],
)
def test_what_makes_no_sense_is_refused_and_nothing_is_written(
    shop: Workshop, chalk: str, command: object, words: str
) -> None:
    before = shop.everything()
    assert chalk in before
    with pytest.raises(Refusal, match=words):
        shop.do(command)
    assert shop.everything() == before


def test_moments_are_checked_as_everywhere(shop: Workshop, chalk: str) -> None:
    now = shop.clock.at
    for at, kind in ((now + HOUR, Refusal), (now - HOUR, Refusal), (now - 420 * DAY, Question)):
        with pytest.raises(kind):
            use(shop, chalk, 100, at=at)
    old = shop.do(NewBath("chalk", made_at=now - 10 * DAY)).code
    use(shop, old, 100, at=now - 9 * DAY)
    with pytest.raises(Refusal, match="still ahead"):
        shop.do(MarkBath(chalk, Act.PLAN, planned=now - HOUR))


def test_readings_outside_the_limits_are_said_with_their_reason_and_kept(shop: Workshop) -> None:
    code = vat(shop)
    told = shop.do(MarkBath(code, Act.BATH_READ, readings={"ph": 9.0, "temperature": 38.0}))
    assert len(told.advice) == 2
    assert told.advice[0].startswith("pH 9 is below pH 10")
    shown = page(shop, code)
    assert shown.warnings == told.advice
    assert (shown.line.ph, shown.line.temperature) == (9.0, 38.0)


def test_the_tenth_kilo_says_so_at_once_and_rings_an_hour_later(shop: Workshop, chalk: str) -> None:
    assert use(shop, chalk, 9_000).advice == ()
    told = use(shop, chalk, 1_000)
    assert told.advice[0].startswith("It wants refreshing now.")
    assert page(shop, chalk).line.urgent == "wants refreshing"
    assert shop.ring(minutes=59) == []
    (notice,) = shop.ring(minutes=1)
    assert notice.title == "Refresh B26-001 Big tub"
    assert notice.answers[0] == ("done", "Refreshed")
    shop.do(AnswerReminder(notice.keys[0], "done"))
    assert page(shop, chalk).line.grams_since == 0
    assert shop.records(chalk)["refresh/0"].answer == "refreshed"
    assert shop.ring(hours=30) == []


def test_refreshing_by_hand_answers_it_and_undo_brings_it_back_in_silence(
    shop: Workshop, chalk: str
) -> None:
    use(shop, chalk, 10_000)
    assert len(shop.ring(hours=1)) == 1
    shop.do(MarkBath(chalk, Act.BATH_REFRESH, fed=("chalk 50 g",)))
    assert shop.records(chalk)["refresh/0"].status == "answered"
    shop.do(Undo(chalk))
    assert shop.records(chalk)["refresh/0"].status == "raised"
    assert shop.ring(minutes=5) == []
    shop.do(Redo(chalk))
    assert shop.records(chalk)["refresh/0"].status != "raised"


def test_warm_and_feed_rings_before_the_use_and_is_answered_in_the_diary(shop: Workshop) -> None:
    code = vat(shop)
    shop.do(MarkBath(code, Act.PLAN, planned=shop.clock.at + 5 * HOUR))
    assert shop.ring(hours=2, minutes=59) == []
    (notice,) = shop.ring(minutes=1)
    assert notice.title == f"Warm and feed {code} indigo fructose vat"
    card = next(one for one in shop.studio.ask(BenchFor()).now if one.lot == code)
    assert (card.answer, card.step) == ("Made ready", None)
    shop.do(AnswerReminder(card.key, "done"))
    assert page(shop, code).diary[0].words == "Made ready"
    assert not [one for one in shop.studio.ask(BenchFor()).now if one.lot == code]
    assert shop.ring(hours=3) == []
    with pytest.raises(Refusal, match="answered already"):
        shop.do(AnswerReminder(card.key, "done"))


def test_it_is_put_off_and_rings_then(shop: Workshop) -> None:
    code = vat(shop)
    shop.do(MarkBath(code, Act.PLAN, planned=shop.clock.at + 3 * HOUR))
    (notice,) = shop.ring(hours=1)
    shop.do(AnswerReminder(notice.keys[0], "putoff", put_off=40 * MINUTE))
    assert not [one for one in shop.studio.ask(BenchFor()).now if one.lot == code]
    assert shop.ring(minutes=39) == []
    assert shop.ring(minutes=1)[0].keys == notice.keys


def test_seen_ends_a_use_by_and_is_taken_back(shop: Workshop) -> None:
    code = shop.do(NewBath("tannin")).code
    (notice,) = shop.ring(days=10)
    assert notice.title == "Use up, skim or simmer B26-001 tannin bath"
    shop.do(AnswerReminder(notice.keys[0], "done", note="skimmed"))
    assert shop.records(code)["use_by/0"].answer == "seen: skimmed"
    assert keys(shop) == []
    shop.do(Undo(code))
    assert keys(shop) == ["B26-001/use_by/0"]


def test_skipped_it_is_seen_with_its_reason_and_no_act_is_written(shop: Workshop) -> None:
    code = vat(shop)
    shop.do(MarkBath(code, Act.PLAN, planned=shop.clock.at + 3 * HOUR))
    (notice,) = shop.ring(hours=1)
    shop.do(AnswerReminder(notice.keys[0], "skip", note="it is warm enough"))
    assert page(shop, code).diary[0].act == "note"
    assert keys(shop) == []
    with pytest.raises(Refusal):
        shop.do(AnswerReminder(notice.keys[0], "damp"))


def test_two_matters_of_one_bath_are_two_lines_of_one_notice(shop: Workshop) -> None:
    code = shop.do(NewBath("tannin", refresh_grams=100)).code
    shop.clock.at += 10 * DAY
    use(shop, code, 200)
    (notice,) = shop.ring(hours=1)
    assert notice.title == "2 things need hands"
    assert set(notice.keys) == {f"{code}/use_by/0", f"{code}/refresh/0"}
    assert len({one.key for one in shop.studio.ask(BenchFor()).now}) == 2
    shop.studio.answer_notice(notice, "later")
    assert {one.status for one in shop.records(code).values()} == {"waiting"}


def test_nothing_of_a_bath_rings_in_quiet_hours(shop: Workshop, chalk: str) -> None:
    shop.clock.at += 12 * HOUR + 30 * MINUTE  # 21:30 in London
    use(shop, chalk, 10_000)
    assert shop.ring(hours=1) == []
    assert len(shop.ring(hours=9)) == 1  # 07:30


def test_other_quiet_hours_move_it(shop: Workshop, chalk: str) -> None:
    use(shop, chalk, 10_000)
    before = shop.records(chalk)["refresh/0"].rings_at
    shop.do(ChangeSettings({"quiet_start": "09:00", "quiet_end": "13:00"}))
    assert shop.records(chalk)["refresh/0"].rings_at == before + 3 * HOUR


def test_undo_goes_back_to_the_making_and_redo_forward_again(shop: Workshop, chalk: str) -> None:
    use(shop, chalk, 500)
    shop.do(MarkBath(chalk, Act.BATH_READ, readings={"ph": 8.0}))
    whole = page(shop, chalk).line
    for _ in range(3):
        shop.do(Undo(chalk))
    assert shop.studio.ask(BathsFor()) == ()
    with pytest.raises(Refusal, match="left to take back"):
        shop.do(Undo(chalk))
    for _ in range(3):
        shop.do(Redo(chalk))
    assert page(shop, chalk).line == whole
    with pytest.raises(Refusal, match="taken back"):
        shop.do(Redo(chalk))


def test_the_making_is_not_taken_back_from_under_what_stands_on_it(
    shop: Workshop, chalk: str
) -> None:
    use(shop, chalk, 500)
    with pytest.raises(Refusal, match="Take that back first"):
        shop.do(Undo(chalk, entry=1))
    shop.do(Undo(chalk, entry=2))
    assert page(shop, chalk).line.grams == 0


def test_a_reading_is_corrected_by_a_later_entry(shop: Workshop, chalk: str) -> None:
    shop.do(MarkBath(chalk, Act.BATH_READ, readings={"ph": 8.0}))
    shop.do(Correct(chalk, 2, readings={"ph": 8.4}))
    shown = page(shop, chalk)
    assert shown.line.ph == 8.4
    assert shown.diary[0].corrected_by == 3
    with pytest.raises(Refusal, match="no ph"):
        shop.do(Correct(chalk, 2, readings={"ph": 84}))
    with pytest.raises(Refusal, match="was made"):
        shop.do(Correct(chalk, 2, at=shop.clock.at - HOUR))


def test_a_finished_bath_leaves_the_list_and_comes_back(shop: Workshop, chalk: str) -> None:
    shop.do(SetBath(chalk, finished=True))
    assert shop.studio.ask(BathsFor()) == ()
    assert [one.code for one in shop.studio.ask(BathsFor(finished=True))] == [chalk]
    with pytest.raises(Refusal, match="not-finished"):
        use(shop, chalk, 1)
    shop.do(SetBath(chalk, finished=False))
    use(shop, chalk, 1)


def test_a_studio_with_baths_checks_and_is_rebuilt_the_same(shop: Workshop, chalk: str) -> None:
    use(shop, chalk, 10_000, lots=(shop.new(),))
    vat(shop)
    shop.ring(hours=1)
    before = {key: one.status for key, one in shop.records(chalk).items()}
    assert shop.studio.check() == []
    shop.studio.rebuild()
    assert shop.studio.check() == []
    assert {key: one.status for key, one in shop.records(chalk).items()} == before


def test_a_bath_whose_journal_does_not_read_is_named_and_holds_nobody_up(
    shop: Workshop, chalk: str
) -> None:
    with shop.studio.store.work() as work:
        desk = shop.studio.desk(work)
        work.journal.append(desk.entry(chalk, Act.BATH_USE, data={"grams": "much"}))
    assert any(chalk in words for words in shop.studio.check())
    assert shop.studio.ask(BathsFor()) == ()
    assert shop.studio.ask(BenchFor()).now == ()
    with pytest.raises(Refusal, match="does not read"):
        page(shop, chalk)


def test_what_rang_tells_of_baths_too(shop: Workshop, chalk: str) -> None:
    use(shop, chalk, 10_000)
    shop.ring(hours=1)
    (row,) = shop.studio.ask(WhatRangFor(find="Big tub"))
    assert (row.lot, row.kind, row.state) == (chalk, "refresh", "open")


def test_a_second_studio_sees_the_same_reminders(shop: Workshop, chalk: str) -> None:
    use(shop, chalk, 10_000)
    first = shop.studio.ask(RemindersFor(within=86_400))
    assert first == shop.studio.ask(RemindersFor(within=86_400))
    assert [one.key for one, _ in first] == [f"{chalk}/refresh/0"]
