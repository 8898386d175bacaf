"""A real studio for the screens that are tried on one."""

from tests.support.fixtures import clock, shop

__all__ = ["clock", "shop"]
