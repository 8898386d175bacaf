"""Marks a problem, so that a plan tells whether it was made for just this one."""

from hashlib import sha256

from studio_log.planning.problem import Problem


def mark_of(problem: Problem) -> str:
    """Give 16 hexadecimal digits that are alike for problems which say the same, word for word."""
    return sha256(repr(problem).encode()).hexdigest()[:16]
