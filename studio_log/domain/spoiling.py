"""A warning that work is about to be spoiled: its words with the reason, and whose word it is."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Warned:
    """What to tell: `slug` names the rule, `words` say what and why, `source` on whose word."""

    slug: str
    words: str
    source: str
