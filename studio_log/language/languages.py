"""The languages that can be chosen."""

from collections.abc import Mapping
from typing import Final

LANGUAGES: Final[Mapping[str, str]] = {"en": "English", "de": "Deutsch"}
"""Each in its own words."""
