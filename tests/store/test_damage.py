"""A damaged file: either opens and `check` says what is wrong, or is refused with a sentence.

Whatever is given out of it is what was written.
"""

import random
import shutil

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.store import check, files
from studio_log.store.database import open_store
from tests.store.examples import entries_in, fill, filled_folder


@pytest.fixture(scope="module")
def good(tmp_path_factory):
    return filled_folder(tmp_path_factory.mktemp("good"), lots=12, entries=12)


@pytest.fixture(scope="module")
def written(good):
    with open_store(good) as store:
        return entries_in(store)


def judged(folder, written):
    """Say how a damaged studio behaves: "refused", "told" or "harmless"."""
    path = folder / files.FILE_NAME
    before = path.read_bytes()
    try:
        with open_store(folder) as store:
            told = check.check(store)
            try:
                found = entries_in(store)
            except BadStudio:
                assert told
                return "told"
            assert told or found == written
            return "told" if told else "harmless"
    except BadStudio:
        assert path.read_bytes() == before, "a file that is refused is left as it is"
        return "refused"


def damage(good, folder, change):
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(good, folder)
    path = folder / files.FILE_NAME
    path.write_bytes(change(path.read_bytes()))


def test_a_flipped_bit_at_twenty_places(good, folder, written):
    chance = random.Random(26031)
    outcomes = [_flip(good, folder, written, chance) for _ in range(20)]
    assert set(outcomes) <= {"refused", "told", "harmless"}
    assert "told" in outcomes or "refused" in outcomes


@pytest.mark.long
def test_a_flipped_bit_at_six_hundred_places(good, folder, written):
    chance = random.Random(7)
    outcomes = [_flip(good, folder, written, chance) for _ in range(600)]
    assert set(outcomes) == {"refused", "told", "harmless"}


def _flip(good, folder, written, chance):
    def flip(content):
        place = chance.randrange(len(content))
        changed = bytearray(content)
        changed[place] ^= 1 << chance.randrange(8)
        return bytes(changed)

    damage(good, folder, flip)
    return judged(folder, written)


def test_pages_of_rubbish(good, folder, written):
    chance = random.Random(3)
    for page in range(0, 26, 2):
        rubbish = chance.randbytes(4096)
        damage(good, folder, lambda content, at=page * 4096, new=rubbish: (
            content[:at] + new + content[at + 4096 :]
        ))  # fmt: skip
        assert judged(folder, written) in ("refused", "told")


@pytest.mark.parametrize("share", [0.001, 0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99])
def test_a_file_cut_short(good, folder, written, share):
    damage(good, folder, lambda content: content[: int(len(content) * share)])
    assert judged(folder, written) == "refused"


def test_a_damaged_log_is_cut_where_it_is_damaged(folder):
    """SQLite's log has a checksum a frame (sqlite.org/fileformat2.html#walformat)."""
    chance = random.Random(11)
    with open_store(folder) as store:
        fill(store)
        whole = entries_in(store)
        log = store.path.with_name("studio.sqlite3-wal").read_bytes()
        main = store.path.read_bytes()
    for turn in range(12):
        place = folder.parent / f"turn{turn}"
        place.mkdir()
        changed = bytearray(log)
        changed[chance.randrange(len(log))] ^= 1 << chance.randrange(8)
        (place / "studio.sqlite3").write_bytes(main)
        (place / "studio.sqlite3-wal").write_bytes(bytes(changed))
        try:
            with open_store(place) as store:
                found = entries_in(store)
                assert check.check(store) == []
        except BadStudio:
            continue
        assert found == whole[: len(found)] or found == []


def test_damage_that_appears_while_the_studio_is_open(good, folder, written):
    shutil.copytree(good, folder)
    path = folder / files.FILE_NAME
    with open_store(folder) as store:
        content = path.read_bytes()
        path.write_bytes(content[:4096] + b"\xff" * (len(content) - 4096))
        with pytest.raises(BadStudio, match="damaged"):
            entries_in(store)
        with pytest.raises(BadStudio), store.work() as work:
            work.journal.append(written[0])
