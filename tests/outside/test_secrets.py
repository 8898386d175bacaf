"""The keyring: kept there or nowhere, by the library's own kind of backend."""

import threading

import keyring
import pytest
from keyring.backend import KeyringBackend
from keyring.errors import KeyringLocked, PasswordDeleteError

from studio_log.outside.secrets import SERVICE, Keyring

ADDRESS = "postgresql://dyer@server/studio"


class InMemory(KeyringBackend):
    """A keyring that forgets when the test ends."""

    priority = 1

    def __init__(self) -> None:
        super().__init__()
        self.kept: dict[tuple[str, str], str] = {}

    def get_password(self, service: str, username: str) -> str | None:
        return self.kept.get((service, username))

    def set_password(self, service: str, username: str, password: str) -> None:
        self.kept[service, username] = password

    def delete_password(self, service: str, username: str) -> None:
        if self.kept.pop((service, username), None) is None:
            raise PasswordDeleteError


class Locked(InMemory):
    def get_password(self, service: str, username: str) -> str | None:
        raise KeyringLocked(f"{service} {username}")

    def set_password(self, service: str, username: str, password: str) -> None:
        raise KeyringLocked(f"{service} {username} {password}")


@pytest.fixture
def use(monkeypatch):
    def put(backend):
        monkeypatch.setattr(keyring.core, "_keyring_backend", backend)
        return backend

    return put


def test_a_password_is_kept_read_and_forgotten(use):
    backend = use(InMemory())
    ring = Keyring()
    assert ring.get(ADDRESS) == ""
    assert ring.put(ADDRESS, "s@lt") == ""
    assert backend.kept == {(SERVICE, ADDRESS): "s@lt"}
    assert ring.get(ADDRESS) == "s@lt"
    ring.forget(ADDRESS)
    ring.forget(ADDRESS)
    assert backend.kept == {}


def test_a_locked_one_is_said_without_the_password(use, caplog):
    use(Locked())
    caplog.set_level("INFO")
    said = Keyring().put(ADDRESS, "s@lt")
    assert "it refused" in said
    assert "written nowhere" in said
    assert Keyring().get(ADDRESS) == ""
    assert "s@lt" not in said + caplog.text


def test_one_of_plain_text_is_not_trusted(use):
    plain = use(InMemory())
    type(plain).__module__, before = "keyrings.alt.file", type(plain).__module__
    try:
        assert "plain text" in Keyring().put(ADDRESS, "s@lt")
        assert plain.kept == {}
    finally:
        type(plain).__module__ = before


def test_where_there_is_none_that_is_said(use):
    use(keyring.backends.fail.Keyring())
    assert "this system has none" in Keyring().put(ADDRESS, "s@lt")


def test_one_that_hangs_is_not_waited_for(use):
    wait = threading.Event()

    class Hanging(InMemory):
        def get_password(self, service: str, username: str) -> str | None:
            wait.wait(10)
            return f"{service}{username}"

    use(Hanging())
    before = threading.active_count()
    assert Keyring(patience_s=0.05).get(ADDRESS) == ""
    wait.set()
    for thread in threading.enumerate():
        if thread.name == "keyring":
            thread.join(5)
    assert threading.active_count() <= before
