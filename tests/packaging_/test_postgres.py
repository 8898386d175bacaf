"""The server that tests are lent: found, begun, shut off from all others, and gone afterwards."""

import os
import re
import signal
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import _postgres
import psycopg
import pytest
from _trouble import SetUpFailed

from tests.support.tree import TREE


def install(folder: Path, *programs: str) -> Path:
    """Make a folder of programs that do nothing."""
    folder.mkdir(parents=True)
    for name in programs or _postgres.PROGRAMS:
        (folder / name).write_text("#!/bin/sh\n", "utf-8")
        (folder / name).chmod(0o755)
    return folder


def test_the_newest_of_debians_servers_is_taken(tmp_path: Path) -> None:
    install(tmp_path / "9" / "bin")
    newest = install(tmp_path / "17" / "bin")
    install(tmp_path / "18" / "bin", "psql")  # the client alone
    install(tmp_path / "backup" / "bin")
    assert _postgres.find_programs(tmp_path, path="") == newest


def test_a_server_on_the_path_is_found_behind_its_link(tmp_path: Path) -> None:
    real = install(tmp_path / "real")
    (tmp_path / "links").mkdir()
    (tmp_path / "links" / "initdb").symlink_to(real / "initdb")
    assert _postgres.find_programs(tmp_path / "none", path=str(tmp_path / "links")) == real


def test_no_server_is_said_with_the_command_that_brings_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert _postgres.find_programs(tmp_path, path="") is None
    monkeypatch.setattr(_postgres, "find_programs", lambda: None)
    said: list[str] = []
    with _postgres.server_for_tests(said.append) as more:
        assert more == {}
    (words,) = said
    assert "the tests over one are skipped" in words
    assert words.endswith("sudo apt-get install -y --no-install-recommends postgresql")


def test_a_server_that_runs_already_is_taken_as_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(_postgres.VARIABLE, "postgresql://studio@here/postgres")
    monkeypatch.setattr(_postgres, "private_server", pytest.fail)
    with _postgres.server_for_tests(pytest.fail) as more:
        assert more == {}


def test_a_server_that_cannot_be_made_says_why(open_folder: Path) -> None:
    programs = install(open_folder / "bin")
    (programs / "initdb").write_text("#!/bin/sh\necho 'initdb: error: no room' >&2\nexit 1\n")
    before = homes()
    with (
        pytest.raises(SetUpFailed, match=r"initdb failed; .* cannot run: initdb: error: no room"),
        _postgres.private_server(programs),
    ):
        pytest.fail("there is no server")
    assert homes() == before


def test_a_server_that_does_not_start_says_its_last_word(open_folder: Path) -> None:
    programs = install(open_folder / "bin")
    (programs / "initdb").write_text('#!/bin/sh\nmkdir "${1#--pgdata=}"\n', "utf-8")
    (programs / "postgres").write_text("#!/bin/sh\necho 'FATAL: broken'\nexit 1\n", "utf-8")
    (programs / "psql").write_text("#!/bin/sh\nexit 2\n", "utf-8")
    with (
        pytest.raises(SetUpFailed, match=r"postgres failed; .* cannot run: FATAL: broken"),
        _postgres.private_server(programs),
    ):
        pytest.fail("there is no server")


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """Give a folder that the user whom root hands servers to reaches; pytest's own is shut."""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder).chmod(0o755)
        yield Path(folder)


def homes() -> set[Path]:
    """Folders of servers that are there now."""
    return set(Path(tempfile.gettempdir()).glob("studio-log-postgres-*"))


@pytest.fixture(scope="module")
def programs() -> Path:
    found = _postgres.find_programs()
    if found is None:
        pytest.skip(f"no PostgreSQL on this machine, so no {_postgres.VARIABLE}")
    return found


@pytest.fixture(scope="module")
def address(programs: Path) -> Iterator[str]:
    before = homes()
    with _postgres.private_server(programs) as address:
        yield address
    assert homes() <= before


def asked(address: str, *questions: str) -> list[str]:
    """Ask for one value each."""
    with psycopg.connect(address) as line:
        return [str((line.execute(one.encode()).fetchone() or ("",))[0]) for one in questions]


@pytest.mark.long
def test_the_role_makes_databases_and_rules_nothing(address: str) -> None:
    role = "FROM pg_roles WHERE rolname = current_user"
    named = ("rolname", "rolsuper", "rolcreatedb", "rolcreaterole", "rolreplication")
    got = asked(address, *(f"SELECT {name} {role}" for name in named))
    assert got == ["studio", "False", "True", "False", "False"]
    with psycopg.connect(address, autocommit=True) as line:
        line.execute("CREATE DATABASE tried")
        line.execute("DROP DATABASE tried")


@pytest.mark.long
def test_a_commit_is_on_the_disk_as_on_any_server(address: str) -> None:
    settings = ("fsync", "synchronous_commit", "full_page_writes", "server_encoding")
    got = asked(address, *(f"SHOW {name}" for name in settings))
    assert got == ["on", "on", "on", "UTF8"]


@pytest.mark.long
def test_words_stand_in_the_order_of_a_language(address: str) -> None:
    # By bytes "Z" comes before "a" (ASCII), in every dictionary behind it.
    if int(asked(address, "SHOW server_version_num")[0]) < 150_000:
        pytest.skip("older than PostgreSQL 15")
    assert asked(address, "SELECT 'a' < 'Z'") == ["True"]


@pytest.mark.long
def test_only_this_machine_reaches_it_and_only_with_the_password(address: str) -> None:
    hidden = re.sub(r":[0-9a-f]{32}@", ":wrong@", address)
    assert hidden != address
    with pytest.raises(psycopg.OperationalError, match="password authentication failed"):
        psycopg.connect(hidden)
    assert asked(address, "SHOW listen_addresses") == ["127.0.0.1"]
    # Rules that let anybody in without one would stand here (PostgreSQL, "pg_hba_file_rules").
    (rules,) = homes_of(address)
    methods = {
        line.split()[-1]
        for line in (rules / "data" / "pg_hba.conf").read_text("utf-8").splitlines()
        if line.strip() and not line.startswith("#")
    }
    assert methods == {"scram-sha-256"}
    assert not (rules / "password").exists()
    assert rules.stat().st_mode & 0o077 == 0


def homes_of(address: str) -> list[Path]:
    """The folder that holds the server's socket."""
    port = psycopg.conninfo.conninfo_to_dict(address)["port"]
    return [home for home in homes() if (home / f".s.PGSQL.{port}").exists()]


@pytest.mark.long
def test_root_hands_it_to_a_user_without_rights(address: str) -> None:
    (home,) = homes_of(address)
    owner = (home / "data").owner()
    assert owner != "root"
    if os.geteuid() == 0:
        assert owner == _postgres.NOBODY


@pytest.mark.long
def test_it_goes_with_its_folder_after_a_failure(programs: Path) -> None:
    lent: list[str] = []
    there: list[Path] = []

    def run_tests() -> None:
        with _postgres.private_server(programs) as address:
            lent.append(address)
            there.extend(homes_of(address))
            raise RuntimeError("a test went wrong")

    with pytest.raises(RuntimeError, match="a test went wrong"):
        run_tests()
    (home,) = there
    assert not home.exists()
    with pytest.raises(psycopg.OperationalError):
        psycopg.connect(lent[0])


@pytest.mark.long
@pytest.mark.parametrize("sign", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_by_hand_it_runs_until_it_is_stopped(programs: Path, sign: signal.Signals) -> None:
    del programs
    # A run of tests in the background passes on that some signs are not listened to.
    heard = ["env", "--default-signal=INT,TERM,HUP"]
    command = [*heard, sys.executable, "-u", str(TREE / "packaging" / "_postgres.py")]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as run:
        assert run.stdout
        address = run.stdout.readline().strip()
        assert asked(address, "SELECT 6 * 7") == ["42"]
        (home,) = homes_of(address)
        run.stdout.readline()
        assert run.stdout.readline().strip() == f"export {_postgres.VARIABLE}={address}"
        run.send_signal(sign)
        assert run.stdout.read() == "Ended; its folder is gone.\n"
    assert run.returncode == 0
    assert not home.exists()
    with pytest.raises(psycopg.OperationalError):
        psycopg.connect(address)
