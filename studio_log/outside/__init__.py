"""Alarm clock, desktop notices, files and watchers."""
