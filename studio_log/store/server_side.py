"""What a server has beside the tables: the number of each change, its pictures, its sign.

Every row of a followed table carries the number of its last change, out of one sequence
and under the writers' lock, so that a laptop asks for all that came after the last one it
knows. What was deleted leaves a line in `studio_gone`. Children of a lot are not followed:
they are replaced with it.
"""

from typing import Any, Final

from alembic import command
from sqlalchemy import Connection, text

from studio_log.store import plain, server_faults
from studio_log.store.migrate import config_of
from studio_log.store.tables import METADATA

CHILDREN: Final = ("step", "material_use")
FOLLOWED: Final = tuple(
    table.name for table in METADATA.sorted_tables if table.name not in CHILDREN
)
OWN_TABLES: Final = ("studio_gone", "studio_picture", "studio_sign", "lot_words")

MADE_ONCE: Final = (
    "CREATE SEQUENCE IF NOT EXISTS studio_change",
    """
CREATE TABLE IF NOT EXISTS studio_gone (
    changed bigint PRIMARY KEY, name text NOT NULL, gone jsonb NOT NULL
)
""",
    "CREATE TABLE IF NOT EXISTS studio_picture (hash text PRIMARY KEY, content bytea NOT NULL)",
    "CREATE TABLE IF NOT EXISTS studio_sign (sign uuid PRIMARY KEY)",
    "INSERT INTO studio_sign SELECT gen_random_uuid() WHERE NOT EXISTS (SELECT FROM studio_sign)",
    """
CREATE OR REPLACE FUNCTION studio_touch() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'UPDATE' THEN
        IF NEW IS NOT DISTINCT FROM OLD THEN
            RETURN NEW;
        END IF;
    END IF;
    NEW.changed := nextval('studio_change');
    PERFORM pg_notify('studio_log', '');
    RETURN NEW;
END $$
""",
    """
CREATE OR REPLACE FUNCTION studio_forget() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    INSERT INTO studio_gone
        VALUES (nextval('studio_change'), TG_TABLE_NAME, to_jsonb(OLD));
    PERFORM pg_notify('studio_log', '');
    RETURN OLD;
END $$
""",
)
FOLLOW: Final = (
    'ALTER TABLE "{table}" ADD COLUMN IF NOT EXISTS changed bigint NOT NULL DEFAULT 0',
    'CREATE INDEX IF NOT EXISTS "ix_{table}_changed" ON "{table}" (changed)',
    """
CREATE OR REPLACE TRIGGER "{table}_touch" BEFORE INSERT OR UPDATE ON "{table}"
FOR EACH ROW EXECUTE FUNCTION studio_touch()
""",
    """
CREATE OR REPLACE TRIGGER "{table}_forget" AFTER DELETE ON "{table}"
FOR EACH ROW EXECUTE FUNCTION studio_forget()
""",
)


def revision(connection: Connection, where: str) -> str | None:
    """Give the revision of the studio in a database, None where it holds no table at all.

    BadStudio where it holds something else, is newer, or keeps text in another encoding.
    """
    if connection.execute(text("SHOW server_encoding")).scalar() != "UTF8":
        raise server_faults.refusal(server_faults.ENCODING, where)
    asked = text("SELECT tablename FROM pg_tables WHERE schemaname = current_schema()")
    names = set(connection.execute(asked).scalars())
    if not names:
        return None
    if not {"alembic_version", "entry", "studio_sign"} <= names:
        raise server_faults.refusal(server_faults.FOREIGN, where)
    found = connection.execute(text("SELECT version_num FROM alembic_version")).scalars().all()
    if len(found) != 1 or not str(found[0]).isdecimal():
        raise server_faults.refusal(server_faults.FOREIGN, where)
    if str(found[0]) > plain.HEAD:
        raise server_faults.refusal(server_faults.NEWER, where)
    return str(found[0])


def upgrade(connection: Connection) -> None:
    """Bring the tables to the newest form, in the transaction given."""
    config = config_of()
    config.attributes["connection"] = connection
    command.upgrade(config, "head")
    for statement in MADE_ONCE:
        connection.exec_driver_sql(statement)
    for table in FOLLOWED:
        for statement in FOLLOW:
            connection.exec_driver_sql(statement.format(table=table))


def drop(connection: Connection) -> None:
    """Take all that `upgrade` made away."""
    names = ", ".join(f'"{name}"' for name in (*METADATA.tables, *OWN_TABLES, "alembic_version"))
    connection.exec_driver_sql(f"DROP TABLE IF EXISTS {names} CASCADE")
    connection.exec_driver_sql("DROP SEQUENCE IF EXISTS studio_change")
    for function in ("studio_touch", "studio_forget", "entry_stays", "entry_follows"):
        connection.exec_driver_sql(f"DROP FUNCTION IF EXISTS {function}")


def empty(connection: Connection) -> None:
    """Take all rows away and give the studio a new sign: every laptop fetches it anew."""
    names = ", ".join(f'"{name}"' for name in (*METADATA.tables, "studio_gone", "lot_words"))
    connection.exec_driver_sql(f"TRUNCATE {names} RESTART IDENTITY")
    connection.exec_driver_sql("UPDATE studio_sign SET sign = gen_random_uuid()")


def sign(connection: Any) -> str:
    """Give what tells this studio from any other, and from itself after it was put back."""
    return str(connection.execute(text("SELECT sign FROM studio_sign")).scalar_one())
