"""Studio Log: a dyer's logbook with reminders."""

__version__ = "0.4.0"
