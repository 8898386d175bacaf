"""How a shared studio fares, in words."""

from studio_log.language.words import counted, tr_later


def waiting_words(count: int) -> str:
    """Say how many entries wait to be sent."""
    return counted(
        count,
        tr_later("1 entry waits to be sent to the server."),
        tr_later("{n} entries wait to be sent to the server."),
    )
