"""Settings: what makes no sense is refused by its name, and a bad one kept spoils no other."""

from dataclasses import asdict, fields
from datetime import time

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.quiet_text import Hours
from studio_log.services.commands import ChangeSettings
from studio_log.services.settings import Settings
from studio_log.services.settings_check import CHECKS, read_settings

GOOD = {
    "studio": "Harbour Lane Cloth Studio",
    "units": "us",
    "quiet_start": "21:00",
    "quiet_end": "06:30",
    "zone": "Europe/London",
    "spoiling_at_night": True,
    "welcomed": True,
    "quiet_days": "fri 23:30-09:00; sun off",
    "hush_until": "2026-06-09T21:00:00+00:00",
    "dryings_since": "2026-06-01T00:00:00+00:00",
    "look_ahead": "07:15",
    "evening_look": "",
    "chime": False,
    "chime_volume": 35,
    "closing_said": True,
    "vessel_litres": 25.0,
    "tag_stock": "tape-24",
    "tag_fields": "name,rows",
    "tag_printers": '{"Office": "tag-80x50"}',
    "open_hours": "mon-fri 09:00-17:00; sat 10:00-14:00",
    "waking_hours": "mon-sun 06:30-22:30",
    "single_days": "2026-12-24 closed: fair\n2026-12-27 10:00-12:00",
    "holiday_place": "GB-ENG",
    "line_metres": 24.5,
    "burners": 3,
    "vessels": "2 buckets of 20 L; pot 40 L",
    "plan_goals": '[{"name": "Fair", "at": "2026-10-09T09:00", "pieces": 4, "cured_days": 90, '
    '"lots": ["26-001"]}]',
    "plan_wanted": '[{"name": "Scarves", "method": "soy-immersion-long", "pieces": "2 x silk"}]',
    "plan_slow_days": '[{"day": "2026-11-03", "hours": 30.0}]',
    "plan_milks": '[{"maker": "Scarves", "lots": ["26-001"]}]',
    "hands": 2,
    "plan_visit_hours": 8.0,
    "theme": "dark",
    "text_percent": 130,
    "searches": "cotton, over 400 g\ncured over 30 days",
    "list_sort": "weight backwards",
    "list_table": True,
    "list_columns": "name weight code",
    "method_draft": 'slug = "half"\n# a thought\n',
}
BAD = [
    ("studio", "a\x00", "signs that cannot be kept"),
    ("units", "stone", "metric or us"),
    ("quiet_start", "25:00", "'25:00' is no time for the start of quiet hours"),
    ("quiet_end", "7 am", "no time for the end of quiet hours"),
    ("zone", "Nowhere/Land", "no time zone 'Nowhere/Land'"),
    ("spoiling_at_night", 1, "spoiling_at_night cannot be '1'"),
    ("welcomed", "yes", "welcomed cannot be 'yes'"),
    ("quiet_days", "funday off", "'funday' is no day of the week"),
    ("quiet_days", "fri 12:00-11:00", "would be 23 h of quiet"),
    ("quiet_days", 5, "quiet_days cannot be '5'"),
    ("hush_until", "tomorrow", "'tomorrow' is no moment"),
    ("hush_until", "2026-06-09T22:00:00", "with its offset"),
    ("hush_until", "0001-01-01T00:00:00+14:00", "is no moment"),
    ("dryings_since", "last summer", "no moment from which dryings are learnt"),
    ("look_ahead", "8:00", "no time for the day's look-ahead. Write it as 08:00"),
    ("look_ahead", "24:00", "leave it empty for never"),
    ("evening_look", "late", "no time for the evening's look"),
    ("evening_look", None, "evening_look cannot be 'None'"),
    ("chime", "loud", "chime cannot be 'loud'"),
    ("chime_volume", 101, "from 0 to 100 percent"),
    ("chime_volume", -1, "from 0 to 100 percent"),
    ("chime_volume", True, "chime_volume cannot be 'True'"),
    ("chime_volume", 50.5, "chime_volume cannot be '50.5'"),
    ("closing_said", 0, "closing_said cannot be '0'"),
    ("tag_printers", '{"Office": "papyrus"}', "no tag stock"),
    ("tag_stock", "papyrus", "no tag stock"),
    ("tag_fields", "name,colour", "fields are"),
    ("vessel_litres", float("nan"), "A bucket holds"),
    ("vessel_litres", 5000.5, "A bucket holds"),
    ("open_hours", "mon 17:00-09:00", "ends before it begins"),
    ("open_hours", "mon 09:00-17:00\x00", "names no open hours"),
    ("open_hours", 9, "open_hours cannot be '9'"),
    ("waking_hours", "mon 22:00-06:00", "ends before it begins"),
    ("single_days", "tomorrow closed", "'tomorrow closed' is no single day"),
    ("holiday_place", "gb_eng", "names no place with holidays"),
    ("line_metres", -1.0, "from 0 to 10,000 m"),
    ("line_metres", float("inf"), "from 0 to 10,000 m"),
    ("line_metres", float("nan"), "from 0 to 10,000 m"),
    ("burners", 100, "from 0 to 99 burners"),
    ("burners", 2.5, "burners cannot be '2.5'"),
    ("burners", True, "burners cannot be 'True'"),
    ("vessels", "a lake", "is no vessel"),
    ("plan_goals", "[1]", "goals do not read"),
    ("plan_wanted", '[{"name": "Scarves"}]', "needs a method"),
    ("plan_slow_days", '[{"day": "soon", "hours": 3}]', "A day is written as"),
    ("plan_milks", '[{"maker": "Scarves"}]', "needs the lots"),
    ("hands", 0, "From 1 to 9 pairs"),
    ("plan_visit_hours", 241.0, "from 0 to 240 hours"),
    ("theme", "neon", "system, light, dark or strong"),
    ("text_percent", 49, "from 50 to 400 percent"),
    ("searches", "a\x00", "signs that cannot be kept"),
    ("searches", "\n".join(str(one) for one in range(41)), "40 searches are kept already"),
    ("searches", "x" * 201, "200"),
    ("list_sort", "colour", "the order 'colour'"),
    ("list_table", "yes", "list_table cannot be 'yes'"),
    ("list_columns", "name colour", "no column 'colour'"),
    ("list_columns", " ", "at least one column"),
    ("method_draft", "x" * 256_001, "256,000 letters"),
]


def test_every_setting_has_a_good_and_a_bad_value_here():
    names = {one.name for one in fields(Settings)}
    assert set(GOOD) == names
    assert {name for name, _, _ in BAD} == names
    assert set(CHECKS) <= names


def test_good_settings_are_taken_as_they_are():
    assert asdict(read_settings(GOOD, strict=True)) == GOOD
    assert asdict(read_settings(GOOD)) == GOOD


@pytest.mark.parametrize(("name", "value", "says"), BAD)
def test_what_makes_no_sense_is_refused_in_words(name, value, says):
    with pytest.raises(Refusal, match=says) as refused:
        read_settings({**GOOD, name: value}, strict=True)
    assert str(refused.value).endswith(".")


@pytest.mark.parametrize(("name", "value", "says"), BAD)
def test_a_bad_value_that_was_kept_leaves_all_others_in_force(name, value, says):
    read = asdict(read_settings({**GOOD, name: value}))
    assert says
    assert read == {**GOOD, name: getattr(Settings(), name)}


def test_two_bad_values_and_an_unknown_one_leave_the_rest():
    kept = {**GOOD, "theme": "neon", "chime_volume": "loud", "of_a_later_version": [1]}
    read = read_settings(kept)
    assert (read.theme, read.chime_volume) == ("system", 80)
    assert {**asdict(read), "theme": "dark", "chime_volume": 35} == GOOD


def test_a_week_that_makes_no_sense_together_gives_up_no_more_than_it_must():
    """Each night is a fair one; Friday's and every night's leave 30 minutes between them."""
    odd = {**GOOD, "quiet_days": "fri 23:30-19:00; sat 19:30-09:00"}
    with pytest.raises(Refusal, match="Before Sat night only 30 min are awake"):
        read_settings(odd, strict=True)
    assert asdict(read_settings(odd)) == {**GOOD, "quiet_days": ""}
    endless = {**GOOD, "quiet_start": "07:00", "quiet_end": "06:00"}
    with pytest.raises(Refusal, match="Every night from 07:00 to 06:00 would be 23 h"):
        read_settings(endless, strict=True)
    read = read_settings(endless)
    assert (read.quiet_start, read.quiet_end) == ("22:00", "07:00")
    assert read.studio == GOOD["studio"]


def test_nights_that_differ_are_kept_in_one_hand():
    read = read_settings({"quiet_days": "SAT and fri 23:30–9:00; Sunday none"}, strict=True)
    assert read.quiet_days == "fri 23:30-09:00; sat 23:30-09:00; sun off"


def test_the_quiet_hours_follow_the_settings_and_the_zone():
    quiet = read_settings(GOOD).quiet("America/New_York")
    late = Hours(time(23, 30), time(9))
    assert (quiet.start, quiet.end) == (time(21), time(6, 30))
    assert quiet.days == ((4, late), (6, None))
    assert quiet.zone == "America/New_York"
    assert quiet is read_settings(GOOD).quiet("America/New_York"), "what is worked out is shared"


def test_a_studio_holds_its_reminders_through_a_night_that_differs(shop):
    """9 June 2026 is a Tuesday."""
    shop.do(ChangeSettings({"quiet_days": "tue 20:00-11:00"}))
    quiet = shop.studio.settings.quiet("Europe/London")
    assert quiet.words == "22:00–07:00, Tue 20:00–11:00"
    assert quiet.waking(shop.clock.local("2026-06-10 08:00")) == shop.clock.local(
        "2026-06-10 11:00"
    )
    assert quiet.waking(shop.clock.local("2026-06-11 08:00")) == shop.clock.local(
        "2026-06-11 08:00"
    )
    with pytest.raises(Refusal, match="20 h"):
        shop.do(ChangeSettings({"quiet_days": "tue 12:00-11:00"}))
    assert shop.studio.settings.quiet_days == "tue 20:00-11:00"


def test_only_settings_that_move_reminders_work_the_lots_out_anew(shop, monkeypatch):
    shop.new("runners")
    settled = []
    monkeypatch.setattr(shop.studio, "_settle_all", lambda _desk, why: settled.append(why))
    shop.do(ChangeSettings({"text_percent": 120, "searches": "linen"}))
    assert settled == []
    shop.do(ChangeSettings({"quiet_start": "21:00"}))
    assert settled == ["the settings changed"]
    assert shop.studio.settings.text_percent == 120
