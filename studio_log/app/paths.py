"""Where things are: the data folder, and the resources in tree, wheel or elsewhere."""

import hashlib
import os
from pathlib import Path

import platformdirs

from studio_log.domain.errors import Refusal
from studio_log.domain.server_address import ServerAddress, is_address, read_address

APP = "studio-log"
VARIABLE = "STUDIO_LOG_STUDIO"
SHARED = "shared"
"""Folder of the copies that this laptop keeps of studios on servers."""


def resources() -> Path:
    """Give the folder of the resources: inside the package when installed, else the tree's."""
    package = Path(__file__).resolve().parent.parent
    inside = package / "_resources"
    return inside if inside.is_dir() else package.parent / "resources"


def resource(name: str) -> Path:
    """Give the path of one resource, as in "methods/soy-immersion-long.toml"."""
    return resources() / name


def studio_folder(where: str | None) -> Path:
    """Give the studio's folder: as asked, else by the variable, else the platform's own.

    For a server's address it is the folder of this laptop's copy.
    """
    asked = where or os.environ.get(VARIABLE) or ""
    if is_address(asked):
        return _folder_of(read_address(asked).address)
    if "\0" in asked:
        raise Refusal("That is no folder: its name holds a NUL sign. Nothing was changed.")
    if asked:
        return Path(asked).expanduser()
    return Path(platformdirs.user_data_dir(APP, appauthor=False))


def _folder_of(address: ServerAddress) -> Path:
    """Give where this laptop keeps its copy of a studio on a server."""
    same = f"{address.user}@{address.host}:{address.port}/{address.database}".encode()
    name = f"{address.database}-{hashlib.sha256(same).hexdigest()[:8]}"
    plain = "".join(sign if sign.isalnum() or sign in "-_" else "_" for sign in name)
    return Path(platformdirs.user_data_dir(APP, appauthor=False)) / SHARED / plain


def log_folder() -> Path:
    """Give the folder of the program's own log."""
    return Path(platformdirs.user_log_dir(APP, appauthor=False))
