"""What the studio may look up: dyes and materials, read at the first question and then kept."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from studio_log.domain.cautions import Caution
from studio_log.domain.dyestuffs import Dye, read_dyes
from studio_log.domain.errors import Refusal
from studio_log.domain.materials import Material, read_materials

DYES = "dyestuffs.toml"
MATERIALS = "materials.toml"
SCHEMA = "studio.schema.json"


@dataclass(frozen=True)
class DyesFor:
    """Dyes in the order of their file; `find` is a part of a name, in any of its forms."""

    find: str = ""


@dataclass(frozen=True)
class DyeFor:
    """One dye, by its short name."""

    slug: str


@dataclass(frozen=True)
class MaterialsFor:
    """Materials in the order of their file; `find` is a part of a name."""

    find: str = ""


@dataclass(frozen=True)
class MaterialFor:
    """One material, by its short name, with its cautions."""

    slug: str


@dataclass(frozen=True)
class MaterialSheet:
    """A material and what to heed, each in full words."""

    material: Material
    cautions: tuple[Caution, ...]


def _nothing(name: str) -> str:
    raise FileNotFoundError(name)


class Shelf:
    """Dyes and materials from their files; `read` gives the text of one by its name."""

    def __init__(self, read: Callable[[str], str] = _nothing) -> None:
        """Nothing is read yet: most days nobody asks."""
        self._read = read

    @cached_property
    def dyes(self) -> Mapping[str, Dye]:
        """Give every dye by its short name; Refusal where the file is missing or amiss."""
        return read_dyes(self._text(DYES), name=DYES)

    @cached_property
    def materials(self) -> Mapping[str, Material]:
        """Give every material by its short name; Refusal where the file is missing or amiss."""
        return read_materials(self._text(MATERIALS), name=MATERIALS)

    @property
    def folder_schema(self) -> str:
        """Give the JSON Schema of an exported folder, as text."""
        return self._text(SCHEMA)

    def _text(self, name: str) -> str:
        try:
            return self._read(name)
        except (OSError, UnicodeDecodeError) as error:
            raise Refusal(
                f"The file {name} of the installation cannot be read. Nothing was changed; "
                "install the program anew."
            ) from error


def dyes(house: Any, _desk: Any, question: DyesFor) -> tuple[Dye, ...]:
    """Give the dyes that are asked for."""
    wanted = question.find.casefold().strip()
    return tuple(
        dye
        for dye in house.shelf.dyes.values()
        if wanted in "\n".join((dye.slug, dye.title, dye.latin, *dye.index)).casefold()
    )


def dye(house: Any, _desk: Any, question: DyeFor) -> Dye:
    """Give one dye; Refusal where there is none of that name."""
    found: Dye | None = house.shelf.dyes.get(question.slug)
    if found is None:
        raise Refusal(f"There is no dye “{question.slug[:40]}”. `studio-log dyes` lists them.")
    return found


def materials(house: Any, _desk: Any, question: MaterialsFor) -> tuple[Material, ...]:
    """Give the materials that are asked for."""
    wanted = question.find.casefold().strip()
    return tuple(
        one
        for one in house.shelf.materials.values()
        if wanted in "\n".join((one.slug, one.title, one.name, one.sort)).casefold()
    )


def material(house: Any, _desk: Any, question: MaterialFor) -> MaterialSheet:
    """Give one material with its cautions, gravest first; Refusal where there is none."""
    found: Material | None = house.shelf.materials.get(question.slug)
    if found is None:
        raise Refusal(
            f"There is no material “{question.slug[:40]}”. `studio-log materials` lists them."
        )
    named = tuple(one for slug, one in house.cautions.items() if slug in found.cautions)
    return MaterialSheet(found, named)


ANSWERS: Mapping[type, Callable[[Any, Any, Any], Any]] = {
    DyesFor: dyes,
    DyeFor: dye,
    MaterialsFor: materials,
    MaterialFor: material,
}
