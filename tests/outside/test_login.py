"""The switch for starting at login: what it writes, what it reads, and what it leaves alone."""

import sys
from pathlib import Path

import pytest

from studio_log.domain.errors import Refusal
from studio_log.outside.desktop_entry import read_entry
from studio_log.outside.login import LoginStart

PLACES = {
    # Desktop Application Autostart Specification 0.5: $XDG_CONFIG_HOME/autostart.
    "linux": "autostart/studio-log-reminders.desktop",
    # launchd(8): ~/Library/LaunchAgents holds the agents of one user.
    "darwin": "LaunchAgents/studio-log.login.plist",
    # The known folder FOLDERID_Startup, below %APPDATA%; from memory.
    "win32": "Microsoft/Windows/Start Menu/Programs/Startup/studio-log-login.cmd",
}
every_system = pytest.mark.parametrize("system", PLACES)


@pytest.fixture
def program(tmp_path: Path) -> Path:
    made = tmp_path / "studio-log"
    made.write_text("#!/bin/sh\n", "utf-8")
    made.chmod(0o755)
    return made


def a_switch(
    tmp_path: Path, program: Path, *rest: str, system: str = "linux", home: str = "home"
) -> LoginStart:
    command = [str(program), "--minimised", *rest]
    return LoginStart(command, config_home=tmp_path / home, platform=system)


# -- on and off --------------------------------------------------------------------------


@every_system
def test_it_is_off_where_nothing_is_there_and_nothing_is_made_by_asking(
    tmp_path: Path, program: Path, system: str
) -> None:
    switch = a_switch(tmp_path, program, system=system)
    assert switch.state() == (False, "Studio Log does not start at login.")
    assert not (tmp_path / "home").exists()


@every_system
def test_switched_on_it_is_on_and_switched_off_nothing_is_left(
    tmp_path: Path, program: Path, system: str
) -> None:
    switch = a_switch(tmp_path, program, "--studio", "/cloth of June", system=system)
    assert "at the next login" in switch.switch(True)
    file = tmp_path / "home" / PLACES[system]
    assert [one for one in (tmp_path / "home").rglob("*") if one.is_file()] == [file]
    assert file.stat().st_mode & 0o777 == 0o644
    assert switch.state() == (True, "Studio Log starts at login.")
    first = file.read_bytes()
    switch.switch(True)
    assert file.read_bytes() == first
    assert switch.switch(False) == "Studio Log does not start at login."
    assert not file.exists()
    assert switch.switch(False) == "Studio Log does not start at login."
    assert switch.state()[0] is False


@every_system
@pytest.mark.parametrize(
    "folder", ["a b", "100 % linen", "%PATH%", "ü – 布", "it's", "a;b&c^!", "C:\\"]
)
def test_an_odd_folder_comes_back_as_it_was(
    tmp_path: Path, program: Path, system: str, folder: str
) -> None:
    switch = a_switch(tmp_path, program, "--studio", folder, system=system)
    switch.switch(True)
    on, words = switch.state()
    assert on
    assert words.startswith("Studio Log starts at login.")


def test_the_platform_s_own_folder_is_used_where_none_is_given(
    tmp_path: Path, program: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "cfg"))
    switch = LoginStart([str(program)], platform="linux")
    assert switch.path == tmp_path / "cfg" / PLACES["linux"]
    # XDG Base Directory Specification 0.8: relative paths are to be ignored.
    monkeypatch.setenv("XDG_CONFIG_HOME", "cfg")
    monkeypatch.setenv("HOME", str(tmp_path))
    switch = LoginStart([str(program)], platform="linux")
    assert switch.path == tmp_path / ".config" / PLACES["linux"]


# -- the truth ---------------------------------------------------------------------------


def change(switch: LoginStart, old: str, new: str) -> None:
    text = switch.path.read_text("utf-8")
    assert old in text
    switch.path.write_text(text.replace(old, new), "utf-8")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("Terminal=false", "Hidden=true"),
        ("X-GNOME-Autostart-enabled=true", "X-GNOME-Autostart-enabled=false"),
    ],
)
def test_an_entry_that_the_desktop_s_settings_switched_off_is_off(
    tmp_path: Path, program: Path, old: str, new: str
) -> None:
    switch = a_switch(tmp_path, program)
    switch.switch(True)
    change(switch, old, new)
    on, words = switch.state()
    assert not on
    assert "switched off" in words
    switch.switch(True)
    assert switch.state()[0]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("<key>RunAtLoad</key>\n\t<true/>", "<key>RunAtLoad</key>\n\t<false/>"),
        ("<key>RunAtLoad</key>", "<key>Disabled</key>\n\t<true/>\n\t<key>RunAtLoad</key>"),
    ],
)
def test_an_agent_that_is_not_run_at_login_is_off(
    tmp_path: Path, program: Path, old: str, new: str
) -> None:
    switch = a_switch(tmp_path, program, system="darwin")
    switch.switch(True)
    change(switch, old, new)
    assert switch.state()[0] is False


@every_system
def test_a_program_that_is_gone_is_named(tmp_path: Path, program: Path, system: str) -> None:
    switch = a_switch(tmp_path, program, system=system)
    switch.switch(True)
    program.unlink()
    on, words = switch.state()
    assert not on
    assert str(program) in words
    assert "not there any more" in words


def test_a_start_file_of_a_tree_that_was_moved_is_named(tmp_path: Path) -> None:
    start = tmp_path / "start.py"
    start.touch()
    switch = LoginStart([sys.executable, str(start)], config_home=tmp_path / "home")
    switch.switch(True)
    assert switch.state()[0]
    start.unlink()
    assert switch.state()[0] is False
    assert str(start) in switch.state()[1]


@every_system
def test_another_copy_of_the_program_is_told_with_its_words(
    tmp_path: Path, program: Path, system: str
) -> None:
    other = tmp_path / "older" / "studio-log"
    other.parent.mkdir()
    other.write_bytes(program.read_bytes())
    other.chmod(0o755)
    a_switch(tmp_path, other, system=system).switch(True)
    switch = a_switch(tmp_path, program, system=system)
    on, words = switch.state()
    assert on
    assert f"{other} --minimised" in words
    switch.switch(True)
    assert switch.state() == (True, "Studio Log starts at login.")


@pytest.mark.parametrize("autostart", [True, False])
def test_the_service_that_is_switched_on_too_is_told(
    tmp_path: Path, program: Path, autostart: bool
) -> None:
    switch = a_switch(tmp_path, program)
    if autostart:
        switch.switch(True)
    unit = tmp_path / "home" / "systemd" / "user" / "studio-log.service"
    # What `systemctl --user enable` makes: systemctl(1), "enable"; a link in TARGET.wants.
    link = unit.parent / "graphical-session.target.wants" / unit.name
    link.parent.mkdir(parents=True)
    unit.touch()
    link.symlink_to(unit)
    on, words = switch.state()
    assert on is autostart
    assert "studio-log.service is switched on" in words
    unit.unlink()
    assert "its file is gone" in switch.state()[1]
    link.unlink()
    assert "studio-log.service" not in switch.state()[1]


def test_an_entry_for_every_user_is_told_and_hidden_rather_than_taken_away(
    tmp_path: Path, program: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    switch = a_switch(tmp_path, program)
    switch.switch(True)
    shared = tmp_path / "shared" / "autostart" / switch.path.name
    shared.parent.mkdir(parents=True)
    switch.path.rename(shared)
    monkeypatch.setenv("XDG_CONFIG_DIRS", f"/nowhere:{tmp_path / 'shared'}")
    assert switch.state()[0]
    switch.switch(False)
    # Autostart Specification 0.5: Hidden=true in the user's file of that name switches it off.
    assert read_entry(switch.path.read_text("utf-8"))["Hidden"] == "true"
    assert switch.state()[0] is False
    assert shared.exists()
    switch.switch(True)
    assert switch.state()[0]


# -- what is left alone ------------------------------------------------------------------


FOREIGN = {
    "another program": b"[Desktop Entry]\nType=Application\nName=Bells\nExec=/bin/true\n",
    "no text": b"\xff\xfe\x00",
    "empty": b"",
    "endless": b"X-StudioLog-Login studio-log.login rem Studio Log: starts at login\n" * 3000,
}


@every_system
@pytest.mark.parametrize("what", FOREIGN)
def test_a_file_of_that_name_that_is_not_ours_is_said_and_left_alone(
    tmp_path: Path, program: Path, system: str, what: str
) -> None:
    switch = a_switch(tmp_path, program, system=system)
    switch.path.parent.mkdir(parents=True)
    switch.path.write_bytes(FOREIGN[what])
    on, words = switch.state()
    assert not on
    assert "not of Studio Log's making" in words
    for wanted in (True, False):
        with pytest.raises(Refusal, match="did not write"):
            switch.switch(wanted)
    assert switch.path.read_bytes() == FOREIGN[what]


@every_system
def test_a_spoilt_file_of_ours_is_off_and_is_written_anew(
    tmp_path: Path, program: Path, system: str
) -> None:
    switch = a_switch(tmp_path, program, system=system)
    switch.switch(True)
    whole = switch.path.read_bytes()
    cut = {"linux": b"Exec", "darwin": b"<array>", "win32": b'start ""'}[system]
    switch.path.write_bytes(whole.replace(cut, b"", 1))
    on, words = switch.state()
    assert not on
    assert "cannot be understood" in words
    switch.switch(True)
    assert switch.path.read_bytes() == whole


def test_a_folder_in_the_way_is_refused_and_kept(tmp_path: Path, program: Path) -> None:
    switch = a_switch(tmp_path, program)
    (switch.path / "inside").mkdir(parents=True)
    assert switch.state()[0] is False
    for wanted in (True, False):
        with pytest.raises(Refusal, match="left as it"):
            switch.switch(wanted)
    assert (switch.path / "inside").is_dir()


def test_a_file_where_the_folder_should_be_is_refused_and_kept(
    tmp_path: Path, program: Path
) -> None:
    switch = a_switch(tmp_path, program)
    (tmp_path / "home").mkdir()
    switch.path.parent.write_text("mine", "utf-8")
    assert switch.state()[0] is False
    with pytest.raises(Refusal, match="a file stands where its folder should be"):
        switch.switch(True)
    assert switch.path.parent.read_text("utf-8") == "mine"


def test_a_folder_that_cannot_be_written_is_refused_with_the_system_s_reason(
    tmp_path: Path, program: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    switch = a_switch(tmp_path, program)
    switch.switch(True)
    before = switch.path.read_bytes()

    def read_only(*_args: object, **_rest: object) -> None:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr("tempfile.mkstemp", read_only)
    monkeypatch.setattr(Path, "unlink", read_only)
    for wanted in (True, False):
        with pytest.raises(Refusal, match="Read-only file system"):
            switch.switch(wanted)
    assert switch.path.read_bytes() == before


def test_a_folder_that_may_not_be_looked_into_is_said(
    tmp_path: Path, program: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    switch = a_switch(tmp_path, program)
    switch.switch(True)

    def closed(*_args: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", closed)
    assert switch.state() == (
        False,
        f"{switch.path} cannot be read (Permission denied): see to its rights.",
    )
    with pytest.raises(Refusal, match="Permission denied"):
        switch.switch(False)
