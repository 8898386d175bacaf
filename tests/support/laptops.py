"""Two laptops that share a studio on a server, and a road of each that a test cuts and mends."""

import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from dataclasses import replace as changed
from pathlib import Path

import pytest

from studio_log.services.studio import Studio
from studio_log.store.link import Link, read_link, write_link
from studio_log.store.moving_in import move_in
from studio_log.store.server import open_server
from tests.support.builders import shipped_texts
from tests.support.fixtures import Workshop, _empty_studio
from tests.support.hand_clock import HandBell, HandClock, ListedAlarm, ListedNotice
from tests.support.road import Road
from tests.support.servers import Databases, Known, typed


@dataclass
class Pair:
    """Two laptops, and the road of each to the server."""

    one: Workshop
    two: Workshop
    roads: tuple[Road, Road]

    def hear(self, shop: Workshop) -> None:
        """Have a laptop hear of the server, as its ear would tell it."""
        store = shop.studio.store
        store._may_answer = True
        store._heard.set()
        shop.studio.heard_of_change()


def laptop(folder: Path, clock: HandClock, password: str) -> Workshop:
    studio = Studio(folder, clock, shipped_texts(), {}, Known(password))
    shop = Workshop(studio, clock, ListedNotice(), HandBell(), ListedAlarm())
    studio.notice, studio.bell, studio.alarm = shop.notice, shop.bell, shop.alarm
    return shop


def shared_at(folder: Path, address: str, road: Road) -> str:
    """Have a folder name the studio at an address, by a road; gives the password."""
    found = typed(address)
    write_link(folder, Link(changed(found.address, host="127.0.0.1", port=road.port)))
    return found.password


def moved(folder: Path, address: str) -> None:
    """Carry the studio of a folder to an empty database."""
    from studio_log.store.database import open_store

    found = typed(address)
    with (
        open_store(folder) as local,
        open_server(found.address, lambda: found.password, folder, create=True) as server,
    ):
        move_in(local, server, lambda _done, _all: None)


@pytest.fixture
def pair(tmp_path: Path, clock: HandClock, databases: Databases) -> Iterator[Pair]:
    """Two laptops on one studio without a lot."""
    databases.emptied(tmp_path).close()
    address = databases.common
    shutil.copytree(_empty_studio(), tmp_path / "one")
    moved(tmp_path / "one", address)
    server = typed(address).address
    roads = (Road(server.host, server.port), Road(server.host, server.port))
    (tmp_path / "two").mkdir()
    shops = []
    for name, road in zip(("one", "two"), roads, strict=True):
        password = shared_at(tmp_path / name, address, road)
        shops.append(laptop(tmp_path / name, clock, password))
    yield Pair(shops[0], shops[1], roads)
    for shop in shops:
        shop.studio.close()
    for road in roads:
        road.close()


def typed_password(pair):
    return pair.one.studio.secret()


def typed_address(pair):
    link = read_link(pair.one.studio.folder)
    assert link is not None
    return link.address
