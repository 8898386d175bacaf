"""The studio's fixtures for the tests of the services."""

from tests.support.fixtures import a_studio, clock, shop
from tests.support.laptops import pair
from tests.support.servers import databases

__all__ = ["a_studio", "clock", "databases", "pair", "shop"]
