"""What only a server can refuse: passwords, rights, other databases, newer forms."""

import psycopg
import pytest

from studio_log.domain.errors import BadStudio
from studio_log.store import server_side
from studio_log.store.database import open_store
from studio_log.store.faults import ServerGone, WrongPassword
from studio_log.store.moving_in import compare, holds_work, move_in
from studio_log.store.server import open_server
from tests.store.examples import an_entry, fill
from tests.support.servers import Known, opened, typed


def test_an_empty_database_is_a_studio_only_where_that_is_meant(databases, tmp_path):
    address = databases.new()
    with pytest.raises(BadStudio, match="is empty"):
        opened(address, tmp_path)
    opened(address, tmp_path, create=True).close()
    opened(address, tmp_path).close()


def test_a_wrong_password_is_told_and_not_repeated(databases, tmp_path):
    found = typed(databases.new()).address
    with pytest.raises(WrongPassword, match="does not let this user in") as refused:
        open_server(found, Known("not this one"), tmp_path, create=True)
    assert "not this one" not in str(refused.value)


def test_a_database_of_something_else_is_left_alone(databases, tmp_path):
    address = databases.new()
    with psycopg.connect(address) as line:
        line.execute("CREATE TABLE recipe (name text)")
    with pytest.raises(BadStudio, match="something else"):
        opened(address, tmp_path, create=True)
    with psycopg.connect(address) as line:
        asked = "SELECT tablename FROM pg_tables WHERE schemaname = 'public'"
        assert line.execute(asked).fetchall() == [("recipe",)]


def test_there_is_no_such_database(databases, tmp_path):
    address = databases.new() + "x"
    with pytest.raises(BadStudio, match="no database of that name"):
        opened(address, tmp_path)


@pytest.mark.parametrize("host", ["127.0.0.1:1", "no-such-host.invalid"])
def test_nobody_answers(host, tmp_path):
    found = typed(f"postgresql://dyer@{host}/studio").address
    with pytest.raises(ServerGone, match="cannot be reached"):
        open_server(found, Known(""), tmp_path)


def test_a_newer_form_is_left_alone_also_by_who_was_open_before(databases, tmp_path):
    address = databases.new()
    with opened(address, tmp_path, create=True) as server:
        with psycopg.connect(address) as line:
            line.execute("UPDATE alembic_version SET version_num = '9999'")
        with pytest.raises(BadStudio, match="newer"), server.work() as work:
            work.journal.append(an_entry())
        with server.reading() as look:
            assert look.journal.subjects() == ()
    with pytest.raises(BadStudio, match="newer"):
        opened(address, tmp_path)


@pytest.mark.long
def test_another_laptop_that_holds_the_studio_is_waited_for_and_then_said(databases, tmp_path):
    address = databases.new()
    with (
        opened(address, tmp_path, create=True) as server,
        psycopg.connect(address) as line,
    ):
        line.execute("SELECT pg_advisory_xact_lock(%s)", (0x53744C67,))
        with pytest.raises(BadStudio, match="more than five seconds"), server.work():
            pass
        line.rollback()
        with server.work() as work:
            work.journal.append(an_entry())


def test_what_arrives_is_counted_and_compared(databases, tmp_path):
    with (
        open_store(tmp_path / "one") as local,
        opened(databases.new(), tmp_path, create=True) as server,
    ):
        fill(local, lots=4)
        assert not holds_work(server)
        told = []
        carried = move_in(local, server, lambda done, every: told.append((done, every)))
        assert (carried.lots, carried.entries, carried.photos) == (4, 21, 0)
        assert told[-1][0] == told[-1][1]
        compare(local, server)
        with server.reading() as look, local.reading() as here:
            assert [look.journal.of(code) for code in look.journal.subjects()] == [
                here.journal.of(code) for code in here.journal.subjects()
            ]
            assert look.lots.unlike_words() == []
        with server.work() as work:
            assert work.next_code("lot", 2026) == 5, "numbers go on after the last one"
            work.journal.append(an_entry("26-004"))
        with pytest.raises(BadStudio, match="lines of entry"):
            compare(local, server)
        with pytest.raises(BadStudio, match="There is a studio on"):
            move_in(local, server, lambda _done, _all: None)


def test_the_migrations_make_on_a_server_what_the_tables_say(databases, tmp_path):
    """Alembic's own comparison is the judge; columns that follow changes are the server's own."""
    from alembic.autogenerate import compare_metadata
    from alembic.runtime.migration import MigrationContext

    from studio_log.store import tables

    def ours(name, kind, _parents):
        if kind == "table":
            return name in tables.METADATA.tables
        return name != "changed" and not str(name).endswith("_changed")

    with (
        opened(databases.new(), tmp_path, create=True) as server,
        server.rewriting() as connection,
    ):
        opts = {"compare_type": True, "include_name": ours}
        context = MigrationContext.configure(connection, opts=opts)
        assert compare_metadata(context, tables.METADATA) == []
        server_side.upgrade(connection)  # a second time changes nothing
        assert server_side.revision(connection, "here") is not None
