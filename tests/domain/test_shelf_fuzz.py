"""Whatever is in a file of dyes or materials, reading it ends with them or with a plain refusal."""

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.dyestuffs import read_dyes
from studio_log.domain.errors import BadMethod
from studio_log.domain.materials import read_materials
from tests.support.tree import TREE

READERS: dict[str, Callable[[str], Any]] = {
    "dyestuffs.toml": read_dyes,
    "materials.toml": read_materials,
}
PARTS = {name: (TREE / "resources" / name).read_text("utf-8").split("\n[")[1:6] for name in READERS}
SIGNS = st.sampled_from(
    ["[", "]", "[[", "{", "}", '"', '"""', "\\", "=", ".", ",", "#", "\n", "\r", "\0", "\u202e",
     "1e999", "nan", "-1", "true", "[]", "[1, 2, 3]", "2026-06-09", "é", "[weld]\n", "light = 3\n"]
)  # fmt: skip


@st.composite
def spoilt(draw: st.DrawFn, name: str) -> str:
    """A few shipped tables with some stretches cut, doubled or overwritten."""
    text = "".join(f"[{part}\n" for part in PARTS[name])
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 60)))
        put = draw(SIGNS | st.text(max_size=5) | st.just(text[start:end] * 2))
        text = text[:start] + put + text[end:]
    return text


@pytest.mark.parametrize("name", READERS)
@given(data=st.data())
@settings(deadline=None, max_examples=120)
def test_a_spoilt_file_is_read_or_refused_with_its_line(name: str, data: st.DataObject) -> None:
    text = data.draw(spoilt(name) | st.text() | st.lists(SIGNS).map("".join))
    try:
        found = READERS[name](text)
    except BadMethod as refusal:
        said = str(refusal)
        assert said.startswith(f"{name}, line ")
        assert "Nothing was changed" in said
        assert "\u202e" not in said
    else:
        assert found
