"""Studio Log: a dyer's logbook with reminders."""

__version__ = "0.2.0"
