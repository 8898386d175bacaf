"""Joining lots: seen beforehand, done, taken back."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Any, Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act, Entry, standing
from studio_log.domain.lots import Lot, cure_of
from studio_log.domain.meeting import Meeting, meet, still_walks
from studio_log.domain.methods import StepKind
from studio_log.domain.reminders import Cause
from studio_log.domain.starting import piece_data
from studio_log.domain.windows import windows_of
from studio_log.language.words import counted, listed, tr, tr_later
from studio_log.present import words
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk, whole_code
from studio_log.services.joins import JoinFor, JoinLots, JoinOffer, JoinOfferFor, JoinSeen
from studio_log.services.limits import LONGEST_NAME, MOST_GRAMS, MOST_PIECES, clean
from studio_log.services.list_reads import doing_words
from studio_log.services.lot_acts import copy_of, next_lot_code, own_entries

LOOKED_AT: Final = 60
"""Lots of the same method that are looked at for an offer, nearest by number."""
UNDO_FIRST: Final = frozenset({Act.PRINTED, Act.JOIN_FROM})
"""What may stand in a joined lot whose join is taken back."""


def join_lots(desk: Desk, command: JoinLots) -> Outcome:
    """Make one lot of several: it carries on the history of the one that is latest."""
    name = clean(command.name, "The name", LONGEST_NAME)
    if not name:
        raise Refusal(tr("The joined lot needs a name. Nothing was joined."))
    meeting = _meeting(desk, command.codes)
    if meeting.doubts and not command.sure:
        raise Question(tr("{doubts} Join them all the same?", doubts=" ".join(meeting.doubts)))
    code = next_lot_code(desk)
    joined = _carry_on(desk, meeting, code)
    made = desk.entry(code, Act.JOIN_FROM, command.at, data=_data(meeting, name))
    joined = desk.write(joined, made, sure=command.sure)
    codes = [lot.code for lot in meeting.lots]
    for lot in meeting.lots:
        gone = desk.entry(lot.code, Act.JOIN_INTO, command.at, data={"child": code})
        after = desk.write(lot, gone, sure=command.sure)
        desk.settle(after, Cause(why=f"it was joined into {code}"))
    milks = _share_milk(desk, codes, code)
    desk.settle(joined, Cause())
    return Outcome(
        tr("{code} {name} is joined from {codes}.", code=code, name=name, codes=listed(codes)),
        advice=(
            tr(
                "The tags of {codes} still hang on the cloth. Print one for {code}.",
                codes=listed(codes),
                code=code,
            ),
        ),
        lots=frozenset({*codes, code}),
        milks=frozenset(milks),
        code=code,
        subject=code,
        reminders=True,
    )


def _meeting(desk: Desk, codes: Iterable[str]) -> Meeting:
    """Give what a join comes to, its figures checked; Refusal where it cannot be."""
    meeting = meet([desk.lot(code) for code in codes])
    if len(meeting.pieces) > MOST_PIECES:
        raise Refusal(
            tr(
                "A lot may have {most} pieces; these have {n}. Nothing was joined.",
                most=MOST_PIECES,
                n=len(meeting.pieces),
            )
        )
    grams = meeting.joined("", "").grams
    if grams is not None and grams > MOST_GRAMS:
        raise Refusal(tr("A lot weighs up to 500 kg. Nothing was joined; leave them apart."))
    return meeting


def _data(meeting: Meeting, name: str) -> dict[str, Any]:
    return {
        "name": name,
        "parents": [lot.code for lot in meeting.lots],
        "base": meeting.base.code,
        "pieces": [piece_data(piece) for piece in meeting.pieces],
        "grams": meeting.grams,
        "weighed": meeting.weighed,
        "cure_days": meeting.cure_days,
        "place": meeting.place,
        "vessel_litres": meeting.vessel_litres,
        "vessel": meeting.vessel,
    }


def _carry_on(desk: Desk, meeting: Meeting, code: str) -> Lot | None:
    """Copy the history that is carried on, and from the others their notes and photos."""
    base, joined = meeting.base, None
    for entry in standing(desk.entries(base.code)):
        joined = desk.write(joined, copy_of(entry, code), sure=True)
    steps = [(step.number, step.slug) for step in base.steps]
    for lot in meeting.lots:
        if lot is base:
            continue
        same = [(step.number, step.slug) for step in lot.steps] == steps
        for entry in standing(desk.entries(lot.code)):
            if entry.act is Act.NOTE and "seen" not in entry.data:
                copy = copy_of(entry, code)
                kept = copy if same else replace(copy, step=None)
                joined = desk.write(joined, kept, sure=True)
    return joined


def _share_milk(desk: Desk, codes: list[str], code: str) -> list[str]:
    """Let the milk of the lots serve the joined one, so that its next coat names it."""
    shared = []
    for milk in desk.milks():
        if not milk.finished and set(codes) & set(milk.lots):
            _set_lots(desk, milk.code, [*milk.lots, code])
            shared.append(milk.code)
    return shared


def _set_lots(desk: Desk, milk: str, lots: list[str]) -> None:
    desk.work.journal.append(desk.entry(milk, Act.MILK_SET, data={"lots": lots}))
    desk.put_milk(desk.milk(milk))


def undo_join(desk: Desk, code: str) -> Outcome:
    """Let every lot of a join stand again; its joined lot is void, its code not used again."""
    joined = desk.lot(code)
    since = [entry for entry in own_entries(desk.entries(code)) if entry.act not in UNDO_FIRST]
    if since:
        raise Refusal(
            tr(
                "{code} has been worked on since it was joined: entry {number} ({act}) stands on "
                "it. Take that back first. Nothing was changed.",
                code=code,
                number=since[-1].number,
                act=since[-1].act.words,
            )
        )
    milks = [milk for milk in desk.milks() if code in milk.lots]
    for milk in milks:
        _set_lots(desk, milk.code, [lot for lot in milk.lots if lot != code])
    void = desk.write(joined, desk.entry(code, Act.VOID))
    desk.settle(void, Cause(undoing=True, why="the join was taken back"))
    for parent in joined.parents:
        target = _joining(desk.entries(parent), code)
        lot = desk.rewrite(parent, desk.entry(parent, Act.UNDO, target=target.number))
        desk.settle(lot, Cause(undoing=True, why="the join was taken back"))
    return Outcome(
        tr(
            "{codes} stand again; {code} is taken back.",
            codes=listed(list(joined.parents)),
            code=code,
        ),
        lots=frozenset({code, *joined.parents}),
        milks=frozenset(milk.code for milk in milks),
        subject=code,
        reminders=True,
    )


def _joining(entries: tuple[Entry, ...], code: str) -> Entry:
    """Give the entry by which a lot went into another."""
    found = (
        entry
        for entry in standing(entries)
        if entry.act is Act.JOIN_INTO and entry.data.get("child") == code
    )
    return next(found)


def join_offer(_house: Any, desk: Desk, question: JoinOfferFor) -> JoinOffer:
    """Offer the lots that can meet this one, nearest by number first."""
    lot = desk.lot(question.code)
    still_walks(lot)
    codes = [code for code in desk.work.lots.walking(*lot.method.key) if code != lot.code]
    own = _ordinal(lot.code)
    codes.sort(key=lambda code: abs(_ordinal(code) - own))
    found = []
    for other in (desk.lot(code) for code in codes[:LOOKED_AT]):
        try:
            meet((lot, other))
        except Refusal:
            continue
        found.append((other.code, other.name, doing_words(desk, other)))
    return JoinOffer(lot.code, lot.name, doing_words(desk, lot), tuple(found))


def _ordinal(code: str) -> int:
    """Give a number by which codes lie near each other: "26-031" is 260031."""
    year, _, number = code.partition("-")
    return int(year) * 100_000 + int(number)


def join_seen(_house: Any, desk: Desk, question: JoinFor) -> JoinSeen:
    """Tell what would become of these lots."""
    try:
        meeting = _meeting(desk, [whole_code(code) for code in question.codes])
    except Refusal as refusal:
        return JoinSeen(refusal=str(refusal))
    return JoinSeen(_becomes(desk, meeting), meeting.doubts)


def _becomes(desk: Desk, meeting: Meeting) -> tuple[str, ...]:
    lot = meeting.joined("the joined lot", "")
    grams = lot.grams
    weight = words.mass(grams, desk.units)
    count = counted(len(lot.pieces), tr_later("{n} piece"), tr_later("{n} pieces"))
    codes = listed([one.code for one in meeting.lots])
    said = (
        tr(
            "A new lot of {pieces}, {weight}, which carries on from {code}.",
            pieces=count,
            weight=weight,
            code=meeting.base.code,
        ),
        f"{doing_words(desk, lot)}.",
        _next_words(desk, lot),
        tr(
            "{codes} end in it. What was written of them stays, and each shows the other.",
            codes=codes,
        ),
    )
    return tuple(filter(None, said))


def _next_words(desk: Desk, lot: Lot) -> str:
    cure = cure_of(lot)
    if cure is not None and cure.running:
        return tr("Ready {when}.", when=words.moment(cure.ready_at, desk.now, desk.zone))
    windows = windows_of(lot, desk.now, desk.quiet)
    for step in lot.open_steps():
        window = windows.get(step.number)
        if window is not None and step.spec.kind is not StepKind.CURE:
            return tr("Best ended {when}.", when=words.moment(window.best_end, desk.now, desk.zone))
    return ""


HANDLERS: Mapping[type, Callable[[Desk, Any], Outcome]] = {JoinLots: join_lots}
