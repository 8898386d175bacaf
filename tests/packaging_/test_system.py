"""What the machine lacks is found by trying and mended, or the one command is told."""

import os
import shutil
from collections.abc import Sequence

import _system
import pytest
from _system import Need
from _trouble import SetUpFailed


class Machine:
    """A machine on which apt-get installs what it knows; nothing real is touched."""

    def __init__(self, *installed: str, says: str = "", sudo: bool = False) -> None:
        self.installed = set(installed)
        self.says = says
        self.sudo = sudo
        self.commands: list[list[str]] = []

    def need(self, name: str, *, vital: bool = True) -> Need:
        return Need(name, f"{name}-package", lambda: f"{name}-package" in self.installed, vital)

    def __call__(self, command: Sequence[str], /) -> tuple[int, str]:
        self.commands.append(list(command))
        if command[:2] == ["sudo", "-n"] and not self.sudo:
            return 1, "sudo: a password is required"
        if "install" not in command:
            return 0, ""
        if self.says:
            return 100, self.says
        self.installed |= {word for word in command if word.endswith("-package")}
        return 0, "done"


@pytest.fixture(autouse=True)
def _as_root(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    monkeypatch.setattr(shutil, "which", lambda program: f"/usr/bin/{program}")


def test_a_library_that_is_nowhere_is_found_missing() -> None:
    assert _system.opens("libc.so.6")
    assert not _system.opens("libno-such-thread-was-ever-spun.so.9")


def test_a_module_that_debian_leaves_out_is_found_missing(monkeypatch: pytest.MonkeyPatch) -> None:
    assert _system.imports("json")
    monkeypatch.setitem(__import__("sys").modules, "ensurepip", None)
    assert [need.name for need in _system.missing(_system.python_needs())] == ["ensurepip"]


def test_nothing_is_run_where_nothing_is_missing() -> None:
    machine = Machine("egl-package")
    _system.mend([machine.need("egl")], pytest.fail, machine)
    assert machine.commands == []


def test_root_has_all_that_is_missing_installed_at_once() -> None:
    machine, said = Machine("font-package"), list[str]()
    needs = [machine.need("egl"), machine.need("font"), machine.need("cups", vital=False)]
    _system.mend(needs, said.append, machine)
    assert machine.installed == {"egl-package", "font-package", "cups-package"}
    *_, install = machine.commands
    assert install[:1] == ["env"]
    assert install[-2:] == ["egl-package", "cups-package"]
    assert said == ["      installing system packages: egl-package cups-package"]


def test_sudo_is_used_where_it_asks_no_password(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    machine = Machine(sudo=True)
    _system.mend([machine.need("egl")], lambda _line: None, machine)
    assert machine.installed == {"egl-package"}
    assert all(command[:2] == ["sudo", "-n"] for command in machine.commands)


def test_without_rights_the_one_command_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    machine = Machine()
    with pytest.raises(SetUpFailed) as told:
        _system.mend([machine.need("egl"), machine.need("gl")], pytest.fail, machine)
    first, command = str(told.value).splitlines()
    assert first == "This machine lacks egl, gl. Type this once, then start again:"
    assert command.strip() == (
        "sudo apt-get update; "
        "sudo apt-get install -y --no-install-recommends egl-package gl-package"
    )
    assert machine.installed == set()


def test_without_rights_a_thing_only_wanted_is_mentioned(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    machine, said = Machine(), list[str]()
    _system.mend([machine.need("cups", vital=False)], said.append, machine)
    assert said == ["      not there, and done without: cups"]


def test_another_system_is_told_by_the_name_of_the_thing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shutil, "which", lambda _program: None)
    machine = Machine()
    with pytest.raises(SetUpFailed, match=r"lacks egl\. .* own package tool"):
        _system.mend([machine.need("egl")], pytest.fail, machine)
    assert machine.commands == []


# What apt-get 2.6 (Debian 12) prints, from memory.
@pytest.mark.parametrize(
    ("says", "words"),
    [
        ("E: Could not get lock /var/lib/dpkg/lock-frontend. It is held by", "Another program"),
        ("E: Failed to fetch x Temporary failure resolving 'here'", "does not reach the network"),
        ("E: You don't have enough free space in /var/cache/apt/archives/.", "The disk is full"),
        ("E: Unable to locate package egl-package", "does not reach the network"),
        ("something never seen\nE: odd end", "failed: E: odd end"),
    ],
)
def test_a_failed_install_says_why_and_how_by_hand(says: str, words: str) -> None:
    machine = Machine(says=says)
    with pytest.raises(SetUpFailed) as told:
        _system.mend([machine.need("egl")], lambda _line: None, machine)
    assert words in str(told.value)
    assert "sudo apt-get install -y --no-install-recommends egl-package" in str(told.value)


def test_an_install_that_ends_well_but_brings_nothing_is_not_believed() -> None:
    machine = Machine()
    never = Need("egl", "other", lambda: False)
    with pytest.raises(SetUpFailed, match="lacks egl"):
        _system.mend([never], lambda _line: None, machine)


def test_each_library_of_the_window_names_its_package() -> None:
    packages = _system.packages_of(_system.window_needs())
    assert len(packages) == len(set(packages)) > 11
    assert {"libegl1", "libxcb-cursor0", "fonts-dejavu-core", "libnotify-bin"} <= set(packages)
