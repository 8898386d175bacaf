"""What the studio says when it will not do a thing."""


class Refusal(Exception):  # noqa: N818 - it is an answer to a person, not a fault
    """The studio refuses; the words say what happened, what was kept and what to do."""


class Question(Refusal):
    """A doubtful request: said back to the person, who may insist (`sure`)."""


class BadMethod(Refusal):
    """A method file that cannot be used; the words name file, line and field."""


class BadStudio(Refusal):
    """The studio's file cannot be opened or written; nothing was changed."""
