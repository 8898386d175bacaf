"""A copy of a method under the studio's own name: its text with another head."""

import re
from collections.abc import Mapping
from typing import Final

from studio_log.domain.methods import Method

OWN: Final = "-own"
_OWN_SLUG: Final = re.compile(rf"{OWN}(-\d+)?$")


def own_copy(method: Method, known: Mapping[str, int]) -> str:
    """Give the text of a copy; what is shipped is never edited itself.

    `known` maps every slug of the studio to its version. A shipped method's copy gets a slug
    not yet taken and version 1; the studio's own (by its slug) keeps it, one version up.
    """
    if _OWN_SLUG.search(method.slug):
        version = known.get(method.slug, method.version) + 1
        return _with_head(method.text, {"version": str(version)})
    slug, number = f"{method.slug}{OWN}", 2
    while slug in known:
        slug, number = f"{method.slug}{OWN}-{number}", number + 1
    title = _quoted(f"{method.title} (our own)")
    return _with_head(method.text, {"slug": f'"{slug}"', "version": "1", "title": title})


def _with_head(text: str, values: Mapping[str, str]) -> str:
    """Write these lines anew in the head, which ends where the first table begins."""
    lines = text.splitlines(keepends=True)
    wanted = dict(values)
    for at, line in enumerate(lines):
        if line.startswith("["):
            break
        name = line.partition("=")[0].strip()
        if name in wanted:
            lines[at] = f"{name} = {wanted.pop(name)}\n"
    return "".join(lines)


def _quoted(title: str) -> str:
    """Write a title as a basic string of TOML."""
    return '"' + title.replace("\\", "\\\\").replace('"', '\\"') + '"'
