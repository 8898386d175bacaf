"""Where things are: the data folder, and the resources in tree, wheel or elsewhere."""

import os
from pathlib import Path

import platformdirs

from studio_log.domain.errors import Refusal

APP = "studio-log"
VARIABLE = "STUDIO_LOG_STUDIO"


def resources() -> Path:
    """Give the folder of the resources: inside the package when installed, else the tree's."""
    package = Path(__file__).resolve().parent.parent
    inside = package / "_resources"
    return inside if inside.is_dir() else package.parent / "resources"


def resource(name: str) -> Path:
    """Give the path of one resource, as in "methods/soy-immersion-long.toml"."""
    return resources() / name


def studio_folder(where: str | None) -> Path:
    """Give the studio's folder: as asked, else by the variable, else the platform's own."""
    asked = where or os.environ.get(VARIABLE) or ""
    if asked.startswith(("postgresql:", "postgres:")):
        raise Refusal(
            "A studio on a PostgreSQL server cannot be opened by this version yet. Nothing was "
            "changed; give a folder."
        )
    if "\0" in asked:
        raise Refusal("That is no folder: its name holds a NUL sign. Nothing was changed.")
    if asked:
        return Path(asked).expanduser()
    return Path(platformdirs.user_data_dir(APP, appauthor=False))


def log_folder() -> Path:
    """Give the folder of the program's own log."""
    return Path(platformdirs.user_log_dir(APP, appauthor=False))
