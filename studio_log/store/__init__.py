"""The store room: one SQLite file, its journal, and what lists need beside it.

`database.open_store` is the door. Values of `values` and `domain` cross it, never rows.
"""
