"""Passwords in the system's keyring: kept there or nowhere, and never waited for without end.

The backends are of the library's own kind; `test_secrets_screen.py` asks a real Secret Service.
"""

import logging
import os
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import keyring
import pytest
from keyring.backend import KeyringBackend
from keyring.backends import chainer, fail, null
from keyring.errors import KeyringLocked, PasswordDeleteError, PasswordSetError
from typing_extensions import override

from studio_log.outside import secrets
from studio_log.outside.secrets import Secrets

ADDRESS = "postgresql://studio@shed:5432/studio"
CANARY = "indigo-canary-4711"


class Ring(KeyringBackend):
    """Keeps passwords in memory."""

    priority = 5.0  # type: ignore[assignment] - as the system's own backends say it

    def __init__(self) -> None:
        super().__init__()
        self.kept: dict[tuple[str, str], str] = {}

    def get_password(self, service: str, username: str) -> str | None:
        return self.kept.get((service, username))

    def set_password(self, service: str, username: str, password: str) -> None:
        self.kept[service, username] = password

    def delete_password(self, service: str, username: str) -> None:
        if self.kept.pop((service, username), None) is None:
            raise PasswordDeleteError(username)


class Stubborn(Ring):
    """Raises an error whose words hold the password."""

    def __init__(self, error: Exception) -> None:
        super().__init__()
        self.error = error

    @override
    def get_password(self, service: str, username: str) -> str | None:
        raise self.error

    @override
    def set_password(self, service: str, username: str, password: str) -> None:
        raise self.error


class Forgetful(Ring):
    """Takes all and keeps nothing."""

    def set_password(self, service: str, username: str, password: str) -> None:
        pass


class Poor(Ring):
    """Not recommended, by its own word: as the library says of those that are not safe."""

    priority = 0.5  # type: ignore[assignment]


class Plain(Ring):
    """Says that it is good, but comes from the package of backends that write plain files."""


Plain.__module__ = "keyrings.alt.file"


class Hanging(Ring):
    """Does not come back until it is let go."""

    def __init__(self) -> None:
        super().__init__()
        self.let_go = threading.Event()
        self.asked = 0

    def get_password(self, service: str, username: str) -> str | None:
        self.asked += 1
        self.let_go.wait(30)
        return super().get_password(service, username)


class Chain(chainer.ChainerBackend):
    """Several backends as one, as the library chains those that it finds."""

    backends: list[KeyringBackend] = []  # type: ignore[assignment]


# The library lists every class that is made; other tests find the system's own only.
for one in (Ring, Stubborn, Forgetful, Poor, Plain, Hanging, Chain):
    KeyringBackend._classes.discard(one)


@pytest.fixture(autouse=True)
def _library_as_it_was(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(keyring.core, "_keyring_backend", None)


def chained(*rings: KeyringBackend) -> Chain:
    chain = Chain()
    chain.backends = list(rings)
    return chain


def test_a_password_is_kept_under_its_address_given_and_forgotten() -> None:
    ring = Ring()
    keyring.set_keyring(ring)
    passwords = Secrets()
    assert passwords.get(ADDRESS) is None
    assert passwords.put(ADDRESS, CANARY) == ""
    assert ring.kept == {("Studio Log", ADDRESS): CANARY}
    assert Secrets().get(ADDRESS) == CANARY
    assert passwords.get("postgresql://studio@elsewhere/studio") is None
    assert passwords.put(ADDRESS, "another") == ""
    assert passwords.get(ADDRESS) == "another"
    assert passwords.forget(ADDRESS) == ""
    assert passwords.get(ADDRESS) is None
    assert passwords.forget(ADDRESS) == ""  # nothing was there: nothing to say


@pytest.mark.parametrize(
    ("ring", "words"),
    [
        (fail.Keyring(), "this system has no keyring"),
        (null.Keyring(), "this system has no keyring"),
        (chained(), "this system has no keyring"),
        (Poor(), "would keep it unprotected"),
        (Plain(), "would keep it unprotected"),
        (chained(Plain(), Poor()), "would keep it unprotected"),
        (Stubborn(KeyringLocked(CANARY)), "stayed locked"),
        (Stubborn(PasswordSetError(CANARY)), "keyring failed"),
        (Stubborn(OSError(5, CANARY)), "keyring failed"),
        (Forgetful(), "keyring failed"),
    ],
    ids=lambda value: value if isinstance(value, str) else type(value).__name__,
)
def test_what_cannot_be_kept_is_said_in_one_sentence_and_goes_nowhere(
    ring: KeyringBackend, words: str, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.DEBUG)
    keyring.set_keyring(ring)
    home = Path(os.environ["HOME"])
    before = set(home.rglob("*"))
    said = Secrets().put(ADDRESS, CANARY)
    assert words in said
    assert "It was written nowhere, and is asked for anew at each start." in said
    assert Secrets().get(ADDRESS) is None
    assert CANARY not in said + caplog.text
    assert getattr(ring, "kept", {}) == {}
    assert set(home.rglob("*")) == before


def test_of_a_chain_only_the_first_fit_one_is_asked() -> None:
    plain, good, other = Plain(), Ring(), Ring()
    plain.set_password("Studio Log", ADDRESS, "an old one")
    keyring.set_keyring(chained(plain, good, other))
    assert Secrets().get(ADDRESS) is None
    assert Secrets().put(ADDRESS, CANARY) == ""
    assert Secrets().get(ADDRESS) == CANARY
    assert [list(ring.kept.values()) for ring in (plain, good, other)] == [
        ["an old one"],
        [CANARY],
        [],
    ]


def test_a_keyring_that_may_still_hold_it_is_named(caplog: pytest.LogCaptureFixture) -> None:
    keyring.set_keyring(Stubborn(KeyringLocked("shut")))
    assert Secrets().forget(ADDRESS) == secrets.STILL_THERE
    keyring.set_keyring(fail.Keyring())
    assert Secrets().forget(ADDRESS) == ""
    assert not caplog.records


def test_a_keyring_named_wrongly_by_the_user_is_no_crash(monkeypatch: pytest.MonkeyPatch) -> None:
    # The variable is the library's own (keyring, "Configuring").
    monkeypatch.setenv("PYTHON_KEYRING_BACKEND", "nowhere.Keyring")
    assert "keyring failed" in Secrets().put(ADDRESS, CANARY)
    assert Secrets().get(ADDRESS) is None


def test_without_the_library_the_sentence_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "keyring", None)
    assert "is not installed. It was written nowhere" in Secrets().put(ADDRESS, CANARY)
    assert Secrets().get(ADDRESS) is None
    assert Secrets().forget(ADDRESS) == ""


@pytest.fixture
def hanging() -> Iterator[Hanging]:
    ring = Hanging()
    keyring.set_keyring(ring)
    yield ring
    ring.let_go.set()


def test_a_keyring_that_hangs_holds_nobody_up_and_is_asked_once(hanging: Hanging) -> None:
    passwords = Secrets(patience_s=0.05)
    assert passwords.get(ADDRESS) is None
    said = [passwords.put(ADDRESS, CANARY) for _ in range(3)]
    assert said == [secrets.SILENT] * 3
    assert passwords.forget(ADDRESS) == secrets.STILL_THERE
    assert hanging.asked == 1
    assert hanging.kept == {}


def test_a_keyring_that_comes_back_is_asked_again(hanging: Hanging) -> None:
    passwords = Secrets(patience_s=0.05)
    assert passwords.get(ADDRESS) is None
    hanging.let_go.set()
    assert passwords._asking is not None
    passwords._asking.join(10)
    assert Secrets().put(ADDRESS, CANARY) == ""
    passwords = Secrets()
    assert passwords.get(ADDRESS) == CANARY


def test_the_library_is_not_loaded_before_it_is_needed() -> None:
    code = (
        "import sys, studio_log.outside.secrets as s; s.Secrets(); print('keyring' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "False\n"
