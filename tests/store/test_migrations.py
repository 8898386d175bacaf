"""From one shape of the file to the next: children kept, a copy before, all or nothing."""

import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext

from studio_log.domain.errors import BadStudio
from studio_log.store import check, files, migrate, plain, tables
from studio_log.store.database import open_store
from studio_log.store.values import LotQuery
from tests.store.examples import NINE, entries_in, filled_folder


@pytest.fixture
def store(file_store):
    """Give the file: what is tested here is its own."""
    return file_store


LATER = f"{int(plain.HEAD) + 1:04d}"
NEXT = """
import sqlalchemy as sa
from alembic import op
revision, down_revision = "{later}", "{head}"


def upgrade():
    with op.batch_alter_table("lot") as table:
        table.alter_column("grams", type_=sa.Integer())
        table.add_column(sa.Column("shelf", sa.String(), nullable=False, server_default=""))
    {then}
"""


@pytest.fixture
def later(tmp_path):
    """Give a function that makes scripts with one more revision, as a later version would."""

    def make(then="pass"):
        scripts = tmp_path / "later%20 scripts"
        shutil.copytree(migrate.SCRIPTS, scripts, ignore=shutil.ignore_patterns("__pycache__"))
        script = NEXT.format(then=then, later=LATER, head=plain.HEAD)
        (scripts / "versions" / f"m{LATER}_later.py").write_text(script)
        return scripts

    return make


def counts(path):
    with closing(plain.connect(path, "ro")) as line:
        return {
            name: line.execute(f"SELECT count(*) FROM {name}").fetchone()[0]
            for name in tables.METADATA.tables
        }


def revision(path):
    with closing(plain.connect(path, "ro")) as line:
        return line.execute("SELECT version_num FROM alembic_version").fetchall()


def test_the_newest_revision_is_the_one_the_door_knows():
    known = migrate.revisions()
    assert known == sorted(known)
    assert known[-1] == plain.HEAD
    assert migrate.revisions()[0] == "0001"


def ours(name, kind, _parents):
    """Leave out the index of words: FTS5 makes its tables itself."""
    return kind != "table" or not str(name).startswith("lot_words")


def test_the_migrations_make_what_the_tables_say(store):
    """Alembic's own comparison is the judge."""
    with store._line.readers.connect() as connection:
        context = MigrationContext.configure(
            connection, opts={"compare_type": True, "include_name": ours}
        )
        assert compare_metadata(context, tables.METADATA) == []
        assert plain.APPLICATION_ID == 0x53744C67


def test_a_rebuilt_table_keeps_its_children(folder, later):
    path = filled_folder(folder, lots=20) / files.FILE_NAME
    before = counts(path)
    assert before["step"] == 40
    migrate.upgrade(path, folder / "copies", NINE, later())
    assert revision(path) == [(LATER,)]
    assert counts(path) == before
    with closing(plain.connect(path, "rw")) as line:
        line.execute("PRAGMA foreign_keys = ON")
        assert line.execute("SELECT shelf FROM lot LIMIT 1").fetchone() == ("",)
        line.execute("DELETE FROM lot WHERE code = '26-001'")
        assert line.execute("SELECT count(*) FROM step").fetchone() == (38,), "still children"
        with pytest.raises(sqlite3.IntegrityError, match="never changed"):
            line.execute("UPDATE entry SET note = 'x'")


def test_a_copy_is_taken_before_and_can_be_opened(folder, later):
    path = filled_folder(folder) / files.FILE_NAME
    migrate.upgrade(path, folder / "copies", datetime(2026, 6, 9, 13, 8, tzinfo=UTC), later())
    copy = folder / "copies" / f"before-{LATER}-20260609T130800Z.sqlite3"
    assert list((folder / "copies").iterdir()) == [copy]
    assert revision(copy) == [(plain.HEAD,)]
    old = folder / "old"
    old.mkdir()
    shutil.copyfile(copy, old / files.FILE_NAME)
    with open_store(old) as store:
        assert check.check(store) == []
        assert len(entries_in(store)) == 16


def test_a_new_studio_needs_no_copy(folder):
    open_store(folder, now=NINE).close()
    assert not (folder / "copies").exists()


def test_a_copy_without_a_moment_handed_in_is_stamped_with_the_last_change(folder, later):
    path = filled_folder(folder) / files.FILE_NAME
    stamp = files.stamp(files.last_change(path))
    migrate.upgrade(path, folder / "copies", None, later())
    assert (folder / "copies" / f"before-{LATER}-{stamp}.sqlite3").exists()


FAILURES = {
    "by an error": "raise ValueError('half way')",
    "by SQLite": "op.execute('SELECT * FROM nowhere')",
    "by an orphan": "op.execute(\"DELETE FROM lot WHERE code = '26-001'\")",
}


@pytest.mark.parametrize("how", FAILURES)
def test_a_migration_that_fails_changes_nothing(folder, later, how):
    path = filled_folder(folder) / files.FILE_NAME
    before = path.read_bytes()
    with pytest.raises((BadStudio, ValueError)):
        migrate.upgrade(path, folder / "copies", NINE, later(FAILURES[how]))
    assert path.read_bytes() == before, "no table half made, no row gone"
    with open_store(folder) as store:
        assert check.check(store) == []


def test_a_migration_is_not_done_twice(folder, later):
    path = filled_folder(folder) / files.FILE_NAME
    scripts = later()
    migrate.upgrade(path, folder / "copies", NINE, scripts)
    before = path.read_bytes()
    migrate.upgrade(path, folder / "copies", NINE, scripts)
    assert path.read_bytes() == before
    assert len(list((folder / "copies").iterdir())) == 1


def test_a_full_disk_while_copying_stops_the_migration(folder, later, monkeypatch):
    path = filled_folder(folder) / files.FILE_NAME

    def full(_source, _target):
        raise sqlite3.OperationalError("database or disk is full")

    def with_code(source, target):
        try:
            full(source, target)
        except sqlite3.OperationalError as error:
            error.sqlite_errorcode = sqlite3.SQLITE_FULL
            raise

    monkeypatch.setattr(plain, "fill", with_code)
    with pytest.raises(BadStudio, match="full"):
        migrate.upgrade(path, folder / "copies", NINE, later())
    assert revision(path) == [(plain.HEAD,)]
    assert list((folder / "copies").iterdir()) == []


def test_a_studio_of_the_first_tables_gets_its_words(folder, tmp_path):
    """Its rows are written as the first version wrote them, by plain SQL."""
    first = tmp_path / "first"
    shutil.copytree(migrate.SCRIPTS, first, ignore=shutil.ignore_patterns("m000[2-9]*", "__py*"))
    path = files.prepare(folder, create=True)
    plain.connect(path, "rwc").close()
    migrate.upgrade(path, None, NINE, first)
    assert revision(path) == [("0001",)]
    entry = (
        "INSERT INTO entry (subject, number, act, at, written, zone, note, readings, data, seal)"
    )
    lot = (
        "INSERT INTO lot (code, name, state_hint, stage, place, method_slug, method_version, fibre,"
    )
    with closing(plain.connect(path, "rw")) as line:
        for code in ("26-1000", "26-999", "26-031"):
            line.execute(
                f"{entry} VALUES (?, 1, 'new', ?, ?, 'UTC', 'Œuvre in Flachs', ?, ?, 0)",
                (
                    code,
                    f"{NINE}",
                    f"{NINE}",
                    '{"skin": "wrinkled"}',
                    '{"pieces": [{"fibre": "é"}]}',
                ),
            )
            line.execute(
                f"{lot} ended, search_text, last_number, updated_at) VALUES "
                "(?, 'runners', 'curing', '', '', '', 1, '', 0, ?, 1, ?)",
                (code, f"{code} runners", "2026-06-09 09:00:00.000000"),
            )
    with open_store(folder, now=NINE) as store, store.reading() as look:
        for find in ("wrink", "flachs œuv", "E", "26-03"):
            assert "26-031" in {one.code for one in look.lots.page(LotQuery(find=find)).lines}, find
        assert look.lots.page(LotQuery(find="silk")).total == 0
        assert look.lots.codes() == ("26-031", "26-999", "26-1000")
