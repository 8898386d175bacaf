"""Settings that are this laptop's where several share a studio: its look, its sound, its list.

They lie in a small file of the folder. Where a studio is one laptop's alone, all settings are
the studio's, and go with it into every copy.
"""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

from studio_log.services.whole_file import write_whole

FILE_NAME: Final = "laptop.json"
LARGEST: Final = 1_000_000
OWN: Final = frozenset(
    {
        "theme", "text_percent", "chime", "chime_volume", "closing_said", "list_sort", "list_table",
        "list_columns", "method_draft", "tag_stock", "tag_printers",
    }
)  # fmt: skip


def own_settings(folder: Path) -> dict[str, Any]:
    """Give what is chosen on this laptop; nothing where the file is missing or makes no sense."""
    try:
        kept = json.loads((folder / FILE_NAME).read_bytes()[:LARGEST])
        return {name: value for name, value in kept.items() if name in OWN}
    except (OSError, ValueError, AttributeError, RecursionError):
        return {}


def keep_own(folder: Path, values: Mapping[str, Any]) -> None:
    """Choose some for this laptop; Refusal where it cannot be written."""
    chosen = own_settings(folder) | {name: values[name] for name in values if name in OWN}
    write_whole(folder / FILE_NAME, json.dumps(chosen, ensure_ascii=False).encode())
