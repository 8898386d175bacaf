"""One studio on a server, two laptops: seen by both, nothing overwritten, nothing lost."""

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import dataclass
from dataclasses import replace as changed
from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import ChangeSettings, Correct, NewMilk, SetLot, Undo
from studio_log.services.copies import BackupTo, RestoreCopy
from studio_log.services.questions import StatusFor, TagsFor
from studio_log.services.salvaging import is_damaged, salvage
from studio_log.services.shared import (
    JoinStudio,
    RingHere,
    SharedFor,
    ShareStudio,
    UnshareStudio,
)
from studio_log.services.studio import Studio
from studio_log.store import plain
from studio_log.store.faults import ServerGone, WrongPassword
from studio_log.store.link import Link, read_link, write_link
from studio_log.store.moving_in import move_in
from studio_log.store.server import open_server
from tests.support.builders import HOUR, MINUTE, NINE, shipped_texts
from tests.support.fixtures import Workshop, _empty_studio
from tests.support.hand_clock import HandBell, HandClock, ListedAlarm, ListedNotice
from tests.support.road import Road
from tests.support.servers import Databases, Known, typed

if TYPE_CHECKING:
    from studio_log.store.database import Store


@dataclass
class Pair:
    """Two laptops, and the road of each to the server."""

    one: Workshop
    two: Workshop
    roads: tuple[Road, Road]

    def hear(self, shop: Workshop) -> None:
        """Have a laptop hear of the server, as its ear would tell it."""
        store = shop.studio.store
        store._may_answer = True
        store._heard.set()
        shop.studio.heard_of_change()


def laptop(folder: Path, clock: HandClock, password: str) -> Workshop:
    studio = Studio(folder, clock, shipped_texts(), {}, Known(password))
    shop = Workshop(studio, clock, ListedNotice(), HandBell(), ListedAlarm())
    studio.notice, studio.bell, studio.alarm = shop.notice, shop.bell, shop.alarm
    return shop


def shared_at(folder: Path, address: str, road: Road) -> str:
    """Have a folder name the studio at an address, by a road; gives the password."""
    found = typed(address)
    write_link(folder, Link(changed(found.address, host="127.0.0.1", port=road.port)))
    return found.password


def moved(folder: Path, address: str) -> None:
    """Carry the studio of a folder to an empty database."""
    from studio_log.store.database import open_store

    found = typed(address)
    with (
        open_store(folder) as local,
        open_server(found.address, lambda: found.password, folder, create=True) as server,
    ):
        move_in(local, server, lambda _done, _all: None)


@pytest.fixture
def pair(tmp_path: Path, clock: HandClock, databases: Databases) -> Iterator[Pair]:
    """Two laptops on one studio without a lot."""
    databases.emptied(tmp_path).close()
    address = databases.common
    shutil.copytree(_empty_studio(), tmp_path / "one")
    moved(tmp_path / "one", address)
    server = typed(address).address
    roads = (Road(server.host, server.port), Road(server.host, server.port))
    (tmp_path / "two").mkdir()
    shops = []
    for name, road in zip(("one", "two"), roads, strict=True):
        password = shared_at(tmp_path / name, address, road)
        shops.append(laptop(tmp_path / name, clock, password))
    yield Pair(shops[0], shops[1], roads)
    for shop in shops:
        shop.studio.close()
    for road in roads:
        road.close()


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


def test_the_network_gone_reading_and_acting_go_on_and_all_is_sent(pair):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.roads[1].cut()
    pair.two.mark(code, "bean-soak", Act.START)
    assert pair.two.studio.store.away
    assert pair.two.lot(code).step(1).running
    pair.two.clock.move(minutes=20)
    pair.two.mark(code, "1", Act.NOTE, note="stirred once")
    other = pair.two.new("napkins")
    assert other == "26-90001", "a provisional code"
    pair.two.mark(other, "bean-soak", Act.START)
    pair.two.do(NewMilk(litres=2.0, strength=60.0, lots=(other,)))
    assert pair.one.entries(code) == pair.one.entries(code)[:1], "nothing of it arrived"
    pair.one.clock.move(minutes=30)
    pair.one.new("table cloth")

    pair.roads[1].mend()
    pair.hear(pair.two)
    assert not pair.two.studio.store.away
    pair.hear(pair.one)
    assert pair.one.everything() == pair.two.everything()
    entries = pair.one.entries(code)
    assert [entry.act for entry in entries] == [Act.NEW, Act.START, Act.NOTE]
    assert [entry.at - NINE for entry in entries[1:]] == [timedelta(0), 20 * MINUTE]
    assert pair.one.lot("26-003").name == "napkins"
    assert pair.one.lot("26-003").step(1).running
    with pair.one.studio.store.reading() as look:
        assert look.milks.all()[-1].lots == ("26-003",)
        assert look.lots.codes() == ("26-001", "26-002", "26-003")
    assert not (pair.two.studio.folder / "unsent").exists()
    assert pair.one.studio.check() == pair.two.studio.check() == []


def test_a_silent_server_is_said_as_soon_as_it_is_heard_of(pair):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.roads[1].cut()
    pair.hear(pair.two)
    assert pair.two.studio.store.away
    assert any("out of reach" in words for words in pair.two.studio.ask(StatusFor()).warnings)
    pair.two.mark(code, "bean-soak", Act.START)
    status = pair.two.studio.ask(StatusFor())
    assert "1 entry waits to be sent to the server." in status.warnings
    pair.roads[1].mend()
    pair.hear(pair.two)
    assert not any("server" in words for words in pair.two.studio.ask(StatusFor()).warnings)


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


def test_no_tag_is_printed_with_a_provisional_code(pair):
    pair.roads[1].cut()
    pair.hear(pair.two)
    code = pair.two.new("napkins")
    with pytest.raises(Refusal, match="provisional"):
        pair.two.studio.ask(TagsFor((code,)))


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


def test_two_processes_of_one_laptop_send_what_each_of_them_did(pair, tmp_path):
    """A command, while the window works on: the file is one, and so is what waits."""
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.roads[1].cut()
    command = laptop(tmp_path / "two", pair.one.clock, "")
    command.mark(code, "bean-soak", Act.START)
    pair.hear(pair.two)
    pair.two.do(NewMilk(litres=1.0, strength=60.0, lots=(code,)))
    command.mark(code, "bean-soak", Act.NOTE, note="by command")
    pair.roads[1].mend()
    pair.hear(pair.two)
    command.mark(code, "bean-soak", Act.NOTE, note="a little later")
    assert command.studio.store.away
    assert pair.one.studio.store.sent_mark() is None
    pair.hear(pair.two)
    command.studio.close()
    pair.hear(pair.one)
    notes = [entry.note for entry in pair.one.entries(code) if entry.note]
    assert notes == ["by command", "a little later"]
    assert "M26-001" in pair.one.everything()
    assert pair.one.everything() == pair.two.everything()
    assert pair.two.studio.check() == []


def test_what_is_done_while_the_rest_is_sent_is_sent_next(pair, tmp_path, monkeypatch):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.roads[1].cut()
    pair.two.mark(code, "bean-soak", Act.START)
    command = laptop(tmp_path / "two", pair.one.clock, "")
    pair.roads[1].mend()
    pour = plain.pour

    def late(source: Path, target: Path, before: Callable[[], None]) -> None:
        command.mark(code, "bean-soak", Act.NOTE, note="just now")
        pour(source, target, before)

    with monkeypatch.context() as patch:
        patch.setattr("studio_log.store.plain.pour", late)
        pair.hear(pair.two)
    assert pair.two.studio.store.away
    pair.hear(pair.two)
    assert not pair.two.studio.store.away
    command.studio.close()
    assert [entry.act for entry in pair.two.entries(code)] == [Act.NEW, Act.START, Act.NOTE]
    pair.hear(pair.one)
    assert pair.one.everything() == pair.two.everything()


def test_what_does_not_fit_any_more_is_noted_and_nothing_overwritten(pair):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.roads[1].cut()
    pair.two.mark(code, "bean-soak", Act.START)
    pair.two.clock.move(minutes=5)
    pair.two.do(Undo(code))
    pair.two.mark(code, "bean-soak", Act.START, note="the other bowl")
    pair.one.mark(code, "bean-soak", Act.START, note="in the pan")
    told = []
    pair.two.studio.listeners.append(told.append)
    pair.roads[1].mend()
    pair.hear(pair.two)
    acts = [entry.act for entry in pair.two.entries(code)]
    assert acts[:2] == [Act.NEW, Act.START]
    assert set(acts[2:]) == {Act.NOTE}
    notes = " ".join(entry.note for entry in pair.two.entries(code))
    assert "in the pan" in notes
    assert "the other bowl" in notes
    assert "not written as an act" in notes
    assert any("not written as an act" in getattr(one, "words", "") for one in told)
    pair.hear(pair.one)
    assert pair.one.everything() == pair.two.everything()


def test_sending_twice_writes_once(pair, monkeypatch):
    """The line breaks after the server wrote all of it and before this laptop knew."""
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.roads[1].cut()
    pair.two.mark(code, "bean-soak", Act.START)
    pair.two.new("napkins")
    pair.roads[1].mend()
    with monkeypatch.context() as patch:
        patch.setattr("studio_log.store.plain.pour", _breaks)
        with pytest.raises(OSError, match="power"):
            pair.hear(pair.two)
    pair.hear(pair.two)
    assert [entry.act for entry in pair.two.entries(code)] == [Act.NEW, Act.START]
    pair.hear(pair.one)
    assert sorted(pair.one.everything()) == ["26-001", "26-002"]


def _breaks(*_args):
    raise OSError("the power went")


def test_a_laptop_that_starts_without_the_network_has_its_copy(pair, tmp_path):
    code = pair.one.new("runners")
    pair.hear(pair.two)
    pair.two.studio.close()
    pair.roads[1].cut()
    again = laptop(tmp_path / "two", pair.one.clock, "x")
    assert again.lot(code).name == "runners"
    assert again.studio.store.away
    again.mark(code, "bean-soak", Act.START)
    again.studio.close()
    pair.roads[1].mend()
    third = laptop(tmp_path / "two", pair.one.clock, typed_password(pair))
    assert [entry.act for entry in third.entries(code)] == [Act.NEW, Act.START]
    third.studio.close()
    pair.hear(pair.one)
    assert pair.one.lot(code).step(1).running


def typed_password(pair):
    return pair.one.studio.secret()


def test_a_fresh_laptop_without_the_network_is_told_so(tmp_path, clock):
    write_link(tmp_path / "new", Link(typed("postgresql://studio@127.0.0.1:1/none").address))
    with pytest.raises(ServerGone, match="cannot be reached"):
        laptop(tmp_path / "new", clock, "")


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


def put_back(pair, tmp_path, *, sign: bool) -> None:
    """Have the server forget its last entry, as one put back from its own copy does."""
    with (
        open_server(typed_address(pair), pair.one.studio.secret, tmp_path) as server,
        server.rewriting() as line,
    ):
        line.exec_driver_sql("DROP TRIGGER entry_stays ON entry")
        line.exec_driver_sql("DELETE FROM entry WHERE id = (SELECT max(id) FROM entry)")
        line.exec_driver_sql("DELETE FROM studio_gone")
        line.exec_driver_sql(
            "CREATE TRIGGER entry_stays BEFORE UPDATE OR DELETE ON entry "
            "FOR EACH ROW EXECUTE FUNCTION entry_stays()"
        )
        if sign:
            line.exec_driver_sql("UPDATE studio_sign SET sign = gen_random_uuid()")


@pytest.mark.parametrize("sign", [True, False], ids=["another sign", "the same sign"])
def test_nothing_is_sent_to_a_studio_that_was_put_back(pair, tmp_path, sign):
    code = pair.one.new("runners")
    pair.one.mark(code, "bean-soak", Act.START)
    pair.hear(pair.two)
    pair.roads[1].cut()
    pair.two.mark(code, "bean-soak", Act.NOTE, note="off the network")
    put_back(pair, tmp_path, sign=sign)
    pair.roads[1].mend()
    pair.hear(pair.two)
    assert not pair.two.studio.store.away
    assert [entry.act for entry in pair.two.entries(code)] == [Act.NEW]
    (told,) = (one for one in pair.two.studio.store.warnings if "put back or made anew" in one)
    kept = Path(told.rpartition(" is in ")[2].rstrip("."))
    with closing(plain.connect(kept, "ro")) as line:
        notes = line.execute("SELECT note FROM entry WHERE note <> ''").fetchall()
    assert notes == [("off the network",)]
    assert not (pair.two.studio.folder / "unsent").exists()


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


def typed_address(pair):
    link = read_link(pair.one.studio.folder)
    assert link is not None
    return link.address


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
