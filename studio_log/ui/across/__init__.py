"""Across the room: the next three things on the whole screen, answered by one key."""
