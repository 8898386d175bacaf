"""Reading the code of a lot in a field; the name behind it is for the eye."""

import re
from typing import Final

from studio_log.language.words import tr
from studio_log.ui.widgets.understood import Understood

_LOT: Final = re.compile(r"\s*(\d{2})\s*-\s*(\d{1,5})\b.*", re.ASCII | re.DOTALL)


def lot_code(text: str) -> str:
    """Give the code of "26-31 Calico" as it is written, 26-031; "" where it begins with none."""
    found = _LOT.fullmatch(text)
    return f"{found[1]}-{int(found[2]):03d}" if found else ""


def lot(text: str) -> Understood[str]:
    """Read the code of one lot."""
    code = lot_code(text)
    if not code:
        return Understood(fault=tr("No lot’s code, such as 26-031."))
    return Understood(code, tr("Understood: {words}", words=code))
