"""Settings read and checked: what is kept makes sense, or a Refusal says what does not."""

import re
from collections.abc import Mapping
from dataclasses import fields
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from studio_log.domain.errors import Refusal
from studio_log.services.limits import clean
from studio_log.services.settings import Settings

WALL_TIME = re.compile(r"(?:[01][0-9]|2[0-3]):[0-5][0-9]")


def read_settings(values: Mapping[str, Any], *, strict: bool = False) -> Settings:
    """Give the settings; with `strict` a Refusal names a value that makes no sense."""
    known = {one.name: one for one in fields(Settings)}
    kept = {name: value for name, value in values.items() if name in known}
    if strict:
        unknown = sorted(set(values) - set(known))
        if unknown:
            raise Refusal(f"There is no setting {unknown[0]!r}. Nothing was changed.")
    try:
        settings = Settings(**kept)
        _check_kinds(settings)
        _check_settings(settings)
    except (Refusal, TypeError, ValueError) as error:
        if strict:
            words = str(error) if isinstance(error, Refusal) else "A setting makes no sense."
            raise Refusal(words) from None
        return Settings()
    return settings


def _check_kinds(settings: Settings) -> None:
    for one in fields(Settings):
        value = getattr(settings, one.name)
        wanted = (int, float) if isinstance(one.default, float) else type(one.default)
        truth = isinstance(value, bool) and not isinstance(one.default, bool)
        if truth or not isinstance(value, wanted):
            raise Refusal(f"{one.name} cannot be {str(value)[:40]!r}. Nothing was changed.")


def _check_settings(settings: Settings) -> None:
    clean(settings.studio, "The studio's name", 200)
    for words, text in (("start", settings.quiet_start), ("end", settings.quiet_end)):
        if not WALL_TIME.fullmatch(text):
            raise Refusal(
                f"{text[:40]!r} is no time for the {words} of quiet hours. Write it as 22:00."
            )
    if settings.units not in {"metric", "us"}:
        raise Refusal("Units are metric or us. Nothing was changed.")
    if settings.zone:
        try:
            ZoneInfo(settings.zone)
        except (ZoneInfoNotFoundError, ValueError, OSError):
            raise Refusal(f"There is no time zone {settings.zone[:40]!r}.") from None
    if settings.theme not in {"system", "light", "dark"}:
        raise Refusal("The window is system, light or dark. Nothing was changed.")
    if not 0 < settings.vessel_litres <= 5000 or not 50 <= settings.text_percent <= 400:
        raise Refusal("A bucket or text size is out of bounds. Nothing was changed.")
