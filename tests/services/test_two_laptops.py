"""One studio on a server, two laptops: seen by both, nothing overwritten, nothing lost."""

import shutil
import threading
from typing import TYPE_CHECKING

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import ChangeSettings, Correct, SetLot
from studio_log.services.copies import BackupTo, RestoreCopy
from studio_log.services.salvaging import is_damaged, salvage
from studio_log.services.shared import (
    JoinStudio,
    RingHere,
    SharedFor,
    ShareStudio,
    UnshareStudio,
)
from studio_log.store.faults import WrongPassword
from studio_log.store.link import read_link
from studio_log.store.server import open_server
from tests.support.builders import HOUR, NINE, shipped_texts
from tests.support.fixtures import Workshop, _empty_studio
from tests.support.laptops import laptop, typed_address
from tests.support.servers import typed

if TYPE_CHECKING:
    from studio_log.store.database import Store


def test_what_one_does_the_other_sees(pair):
    code = pair.one.new("runners")
    assert code == "26-001"
    pair.hear(pair.two)
    assert pair.two.lot(code).name == "runners"
    pair.two.mark(code, "bean-soak", Act.START)
    pair.hear(pair.one)
    assert pair.one.lot(code).step(1).running
    assert pair.one.new("napkins") == "26-002"
    assert pair.two.new("table cloth") == "26-003", "no number twice, heard of or not"
    assert pair.one.everything() != pair.two.everything()
    pair.hear(pair.one)
    assert pair.one.everything() == pair.two.everything()


def test_an_act_on_what_changed_meanwhile_is_refused_with_what_changed(pair):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.one.mark(code, "bean-soak", Act.START)
    with pytest.raises(Refusal, match="runs already"):
        pair.two.mark(code, "bean-soak", Act.START)
    assert len(pair.one.entries(code)) == 2
    assert pair.two.lot(code).step(1).running, "what changed is seen at once"


def test_a_reminder_answered_on_one_is_answered_on_all(pair):
    code = pair.one.new("runners")
    pair.one.mark(code, "bean-soak", Act.START)
    pair.hear(pair.two)
    before = pair.two.records(code)
    assert {one.status for one in before.values()} == {"waiting"}
    pair.one.clock.move(hours=12)
    pair.one.mark(code, "bean-soak", Act.END)
    pair.hear(pair.two)
    after = pair.two.records(code)
    assert all(after[key].status != "waiting" for key in before)
    assert after == pair.one.records(code)


def test_two_who_change_the_same_see_what_the_other_wrote(pair):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    seen = pair.two.entries(code)[-1].number
    pair.one.do(SetLot(code, place="rack 2"))
    pair.two.do(SetLot(code, name="table runners", seen=seen))
    assert pair.two.lot(code).place == "rack 2", "another field is nobody's quarrel"
    with pytest.raises(Question, match="the place: rack 2"):
        pair.two.do(SetLot(code, place="shelf 1", seen=seen))
    assert pair.two.lot(code).place == "rack 2"
    pair.two.do(SetLot(code, place="shelf 1", seen=seen, sure=True))
    pair.hear(pair.one)
    assert pair.one.lot(code).place == "shelf 1"
    pair.one.mark(code, "1", Act.NOTE, note="even")
    number = pair.one.entries(code)[-1].number
    pair.one.do(Correct(code, number, note="even, a little pale", seen=number))
    with pytest.raises(Question, match="a little pale"):
        pair.two.do(Correct(code, number, note="blotchy", seen=number))


def test_the_ear_hears_of_the_other_within_a_second(pair):
    """By the server's own notice, and through a cut and a mend of the network."""
    heard = threading.Event()
    pair.two.studio.listen(heard.set)
    assert heard.wait(5), "the ear tells that it is there"
    heard.clear()
    pair.one.new("runners")
    assert heard.wait(1)
    heard.clear()
    pair.roads[1].cut()
    assert heard.wait(5), "that the line broke is told"
    heard.clear()
    pair.roads[1].mend()
    assert heard.wait(10), "and that it is there again"


def test_a_password_that_was_changed_is_asked_for_and_nothing_is_locked_away(pair, tmp_path):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.two.studio.secret.password = "not this one"
    pair.roads[1].cut()
    pair.hear(pair.two)
    pair.roads[1].mend()
    pair.hear(pair.two)
    assert pair.two.studio.store.away, "while it runs it goes on with what is here"
    pair.two.mark(code, "bean-soak", Act.START)
    pair.two.studio.close()
    with pytest.raises(WrongPassword, match="does not let this user in"):
        laptop(tmp_path / "two", pair.one.clock, "not this one")
    again = laptop(tmp_path / "two", pair.one.clock, pair.one.studio.secret())
    assert not again.studio.store.away
    again.studio.close()
    pair.hear(pair.one)
    assert pair.one.lot(code).step(1).running


def test_settings_follow_and_a_double_change_is_said(pair):
    pair.one.do(ChangeSettings({"studio": "Harbour Lane Cloth Studio"}))
    pair.hear(pair.two)
    assert pair.two.studio.settings.studio == "Harbour Lane Cloth Studio"
    pair.roads[1].cut()
    pair.two.do(ChangeSettings({"studio": "Harbour Lane"}))
    pair.one.do(ChangeSettings({"studio": "Lane Cloth"}))
    pair.roads[1].mend()
    told = []
    pair.two.studio.listeners.append(told.append)
    pair.hear(pair.two)
    assert pair.two.studio.settings.studio == "Lane Cloth"
    assert any("changed elsewhere too" in getattr(one, "words", "") for one in told)


def test_each_laptop_has_its_own_look(pair):
    pair.one.do(ChangeSettings({"theme": "dark", "quiet_start": "21:00"}))
    pair.hear(pair.two)
    assert pair.one.studio.settings.theme == "dark"
    assert pair.two.studio.settings.theme == "system"
    assert pair.two.studio.settings.quiet_start == "21:00"
    (pair.two.studio.folder / "laptop.json").write_text("[not what it was")
    pair.two.do(ChangeSettings({"theme": "light"}))
    assert pair.two.studio.settings.theme == "light"
    assert pair.one.studio.settings.theme == "dark"


def test_a_copy_is_not_put_back_into_what_others_work_on(pair, tmp_path):
    code = pair.one.new("runners")
    pair.one.do(BackupTo(tmp_path / "copy.sqlite3"))
    pair.one.mark(code, "bean-soak", Act.START)
    with pytest.raises(Refusal, match="lies on a server"):
        pair.one.do(RestoreCopy(tmp_path / "copy.sqlite3", sure=True))
    assert len(pair.one.entries(code)) == 2
    pair.hear(pair.two)
    assert len(pair.two.entries(code)) == 2


def test_a_laptop_whose_file_is_damaged_fetches_the_studio_anew(pair, tmp_path):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    before = pair.two.everything()
    pair.two.studio.close()
    path = tmp_path / "two" / "studio.sqlite3"
    content = bytearray(path.read_bytes())
    content[4096:40_000] = b"\x5a" * (40_000 - 4096)
    path.write_bytes(content)
    for beside in ("-wal", "-shm"):
        path.with_name(path.name + beside).unlink(missing_ok=True)
    assert is_damaged(tmp_path / "two")
    told = salvage(tmp_path / "two", shipped_texts(), NINE).lines
    assert any("fetched from there anew" in line for line in told)
    again = laptop(tmp_path / "two", pair.one.clock, pair.one.studio.secret())
    assert again.everything() == before
    assert again.studio.check() == []
    again.mark(code, "bean-soak", Act.START)
    again.studio.close()
    pair.hear(pair.one)
    assert pair.one.lot(code).step(1).running


def test_another_studio_in_the_place_of_the_first_is_fetched_whole(pair, tmp_path):
    """The server was put back from its own copy: its sign differs."""
    code = pair.one.new("runners")
    pair.hear(pair.two)
    store: Store = pair.two.studio.store
    link = read_link(store.folder)
    assert link is not None
    with (
        open_server(typed_address(pair), pair.one.studio.secret, tmp_path) as server,
        server.rewriting() as line,
    ):
        line.exec_driver_sql("UPDATE studio_sign SET sign = gen_random_uuid()")
    pair.hear(pair.two)
    assert pair.two.lot(code).name == "runners"
    kept = list((store.folder / "copies").glob("replaced-*"))
    assert kept
    assert read_link(store.folder) != link


def test_a_reminder_rings_on_both_and_stops_on_both(pair):
    code = pair.one.new("runners")
    pair.one.mark(code, "bean-soak", Act.START)
    pair.hear(pair.two)
    at = pair.one.studio.next_ring()
    assert at == pair.two.studio.next_ring()
    assert len(pair.one.ring(at=at)) == 1
    before = len(pair.two.notice.shown)
    pair.hear(pair.two)
    assert len(pair.two.notice.shown) == before + 1, "it rings on the other as well"
    assert pair.two.notice.shown[-1].keys == pair.one.notice.shown[-1].keys
    pair.hear(pair.two)
    pair.two.studio.raise_due()
    pair.hear(pair.one)
    assert len(pair.two.notice.shown) == before + 1, "once"
    assert len(pair.one.notice.shown) == 1
    pair.two.mark(code, "bean-soak", Act.END)
    pair.hear(pair.one)
    assert pair.one.studio.telling.standing == ()
    assert all(
        not key.startswith("26-001/1/") for text in pair.one.ring(minutes=30) for key in text.keys
    )


def test_a_laptop_that_was_told_not_to_ring_is_silent(pair):
    code = pair.one.new("runners")
    pair.two.do(RingHere(rings=False))
    assert pair.two.studio.ask(SharedFor()).rings is False
    pair.one.mark(code, "bean-soak", Act.START)
    pair.hear(pair.two)
    at = pair.one.studio.next_ring()
    assert pair.two.ring(at=at) == []
    assert len(pair.one.ring(at=at)) == 1
    pair.hear(pair.two)
    assert pair.two.notice.shown == []


def refuse_a_third(third: Workshop, address: str) -> None:
    """One with lots of its own neither joins nor moves there."""
    third.new("its own")
    with pytest.raises(Refusal, match="of its own"):
        third.do(JoinStudio(address))
    with pytest.raises(Refusal, match="There is a studio on"):
        third.do(ShareStudio(address))
    assert list(third.everything()) == ["26-001"]
    third.studio.close()


def test_moved_there_and_back_with_counts(tmp_path, clock, databases):
    shutil.copytree(_empty_studio(), tmp_path / "one")
    address = databases.new()
    shop = laptop(tmp_path / "one", clock, "")
    code = shop.new("runners")
    shop.mark(code, "bean-soak", Act.START)
    before = shop.everything()
    said = shop.do(ShareStudio(address)).words
    assert "lots 1, entries 2, photos 0" in said
    seen = shop.studio.ask(SharedFor())
    assert seen.address == typed(address).address.text
    assert typed(address).password not in (tmp_path / "one" / "shared.json").read_text()
    assert shop.everything() == before
    with pytest.raises(Refusal, match="lies on"):
        shop.do(ShareStudio(address))
    other = laptop(tmp_path / "two", clock, "")
    other.do(JoinStudio(address))
    assert other.everything() == before
    other.new("napkins")
    refuse_a_third(laptop(tmp_path / "three", clock, ""), address)
    with pytest.raises(Question, match="two studios"):
        shop.do(UnshareStudio())
    assert "compared with the server" in shop.do(UnshareStudio(sure=True)).words
    assert not shop.studio.store.address
    assert sorted(shop.everything()) == ["26-001", "26-002"], "what the other did came along"
    assert shop.studio.check() == []
    for one in (shop, other):
        one.studio.close()


def test_half_an_hour_of_hours(pair):
    """The ages of a cure are the same on both, whichever wrote them."""
    code = pair.one.new("runners")
    pair.one.mark(code, "bean-soak", Act.START, at=NINE - 2 * HOUR)
    pair.hear(pair.two)
    assert pair.two.lot(code).step(1).start == NINE - 2 * HOUR
