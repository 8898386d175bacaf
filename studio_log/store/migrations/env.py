"""Alembic's environment: the migrations run on the connection, and in the transaction, given."""

from alembic import context

from studio_log.store.tables import METADATA


def run() -> None:
    """Run what Alembic was asked for."""
    context.configure(
        connection=context.config.attributes["connection"],
        target_metadata=METADATA,
        render_as_batch=True,
        transactional_ddl=True,
    )
    with context.begin_transaction():
        context.run_migrations()


if __name__ == "env_py":  # the name under which Alembic loads it; a plain import does nothing
    run()
