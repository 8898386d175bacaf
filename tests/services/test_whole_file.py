"""A file is written wholly or not at all."""

import os
from pathlib import Path

import pytest

from studio_log.domain.errors import Refusal
from studio_log.services.whole_file import write_whole


def test_a_new_file_and_one_in_the_place_of_another(tmp_path: Path) -> None:
    path = tmp_path / "method.toml"
    for data in (b"one", b"", b"\x00two"):
        write_whole(path, data)
        assert path.read_bytes() == data
    assert [child.name for child in tmp_path.iterdir()] == ["method.toml"]


def test_its_rights_are_those_of_any_new_file(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        write_whole(tmp_path / "a", b"")
    finally:
        os.umask(before)
    assert (tmp_path / "a").stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize("name", ["gone/file", ".", "a\0b", "x" * 300])
def test_where_it_cannot_be_written_a_sentence_says_so(tmp_path: Path, name: str) -> None:
    (tmp_path / "kept").write_bytes(b"kept")
    with pytest.raises(Refusal, match=r"could not be written .*Nothing there was changed"):
        write_whole(tmp_path / name, b"new")
    assert [child.name for child in tmp_path.iterdir()] == ["kept"]


def test_a_full_disk_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "method.toml"
    path.write_bytes(b"old")

    def full(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(Refusal, match="No space left on device"):
        write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    assert [child.name for child in tmp_path.iterdir()] == ["method.toml"]
