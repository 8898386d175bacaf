"""Methods, settings, numbers given out, deliveries."""

import pytest

from studio_log.domain.errors import BadMethod, BadStudio
from studio_log.store import plain
from studio_log.store.values import DeliveryRecord, MethodText
from tests.store.examples import NINE


def test_versions_of_a_method_are_kept_as_they_were(store):
    with store.work() as work:
        for version in (2, 10, 1):
            work.methods.put("soy", version, "soy binder", f"version = {version}\n")
        work.methods.put("scour", 1, "scour", "é")
        work.methods.put("scour", 1, "scour", "é")
        assert work.methods.latest("soy") == MethodText("soy", 10, "soy binder", "version = 10\n")
        assert [(one.slug, one.version) for one in work.methods.all()] == [
            ("scour", 1), ("soy", 1), ("soy", 2), ("soy", 10),
        ]  # fmt: skip
        assert work.methods.get("soy", 3) is None
        assert work.methods.latest("none") is None


def test_a_kept_version_never_says_something_else(store):
    with store.work() as work:
        work.methods.put("soy", 1, "soy", "a")
    with pytest.raises(BadMethod, match="higher version"), store.work() as work:
        work.methods.put("soy", 1, "soy", "b")
    with store.reading() as look:
        assert look.methods.get("soy", 1) == MethodText("soy", 1, "soy", "a")


@pytest.mark.parametrize("spoiled", ["'a = 2'", "x'ff'", "7", "CAST(x'ff' AS TEXT)"])
def test_a_spoiled_method_is_never_given(file_store, spoiled):
    with file_store.work() as work:
        work.methods.put("soy", 1, "soy", "a = 1")
    line = plain.connect(file_store.path, "rw")
    line.execute(f"UPDATE method SET text = {spoiled}")
    line.close()
    with pytest.raises(BadStudio, match="damaged"), file_store.reading() as look:
        look.methods.get("soy", 1)


def test_settings(store):
    with store.work() as work:
        work.settings.put("quiet", ["22:00", "07:00"])
        work.settings.put_all({"chime": False, "quiet": None})
        assert work.settings.all() == {"chime": False, "quiet": None}
        assert work.settings.get("quiet", "x") is None
        assert work.settings.get("never", "x") == "x"


def test_numbers_are_given_once_for_each_kind_and_year(store):
    with store.work() as work:
        given = [work.next_code("lot", 2026) for _ in range(3)]
        assert given == [1, 2, 3]
        assert work.next_code("milk", 2026) == 1
        assert work.next_code("lot", 2027) == 1

    def take_and_fail():
        with store.work() as work:
            assert work.next_code("lot", 2026) == 4
            raise KeyError

    with pytest.raises(KeyError):
        take_and_fail()
    with store.work() as work:
        work.clear_projections(reminders=True)
        assert work.next_code("lot", 2026) == 4


def test_deliveries(store):
    record = DeliveryRecord("k", NINE, "desktop", ok=False, words="no service answers")
    with store.work() as work:
        first = work.deliveries.add(record)
        second = work.deliveries.add(record)
        assert 0 < first.id < second.id
        assert work.deliveries.of("k") == (first, second)
        assert work.deliveries.of("other") == ()
