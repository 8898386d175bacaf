"""What is done while the server is out of reach: kept, and sent with its true times."""

from collections.abc import Callable
from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.plan_wishes import SharedMilk, read_shared
from studio_log.services.commands import NewMilk, Undo
from studio_log.services.questions import StatusFor, TagsFor
from studio_log.store import plain
from studio_log.store.faults import ServerGone
from studio_log.store.link import Link, write_link
from studio_log.store.server import open_server
from tests.services.test_plan import accept, planned, settings
from tests.support.builders import MINUTE, NINE
from tests.support.laptops import laptop, typed_address, typed_password
from tests.support.servers import typed


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


def test_no_tag_is_printed_with_a_provisional_code(pair):
    pair.roads[1].cut()
    pair.hear(pair.two)
    code = pair.two.new("napkins")
    with pytest.raises(Refusal, match="provisional"):
        pair.two.studio.ask(TagsFor((code,)))


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


def test_a_fresh_laptop_without_the_network_is_told_so(tmp_path, clock):
    write_link(tmp_path / "new", Link(typed("postgresql://studio@127.0.0.1:1/none").address))
    with pytest.raises(ServerGone, match="cannot be reached"):
        laptop(tmp_path / "new", clock, "")


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


def test_a_plan_with_one_milk_that_was_followed_off_the_network_names_the_final_codes(pair):
    pair.roads[1].cut()
    away = pair.two
    maker, other = away.new("runners"), away.new("napkins")
    settings(away, plan_milks=[{"maker": maker, "lots": [other]}])
    accept(away, planned(away)[1])
    assert away.lot(other).milk_of == maker == "26-90001"
    pair.roads[1].mend()
    pair.hear(away)
    pair.hear(pair.one)
    assert (pair.one.lot("26-002").milk_of, pair.one.lot("26-001").serves) == (
        "26-001", ("26-002",),
    )  # fmt: skip
    wish = (SharedMilk("26-001", ("26-002",)),)
    assert read_shared(pair.one.studio.settings.plan_milks) == wish
    assert pair.one.studio.check() == away.studio.check() == []
