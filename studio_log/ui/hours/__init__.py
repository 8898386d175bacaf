"""The studio's hours: the week, holidays, single days."""
