"""Alembic steps from one shape of the file to the next; run by `store.migrate`."""
