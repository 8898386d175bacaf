"""What migrations say differently to the two databases."""

from types import ModuleType
from typing import Final

from sqlalchemy import String

from studio_log.store.kinds import SEAL

__all__ = ["SEAL", "TEXT", "on_server"]

TEXT: Final = String().with_variant(String(collation="C"), "postgresql")
"""Text that is compared byte by byte, as SQLite does: codes and keys have no language."""


def on_server(op: ModuleType) -> bool:
    """Say whether a migration runs on PostgreSQL."""
    return str(op.get_bind().dialect.name) == "postgresql"
