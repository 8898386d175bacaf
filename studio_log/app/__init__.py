"""Puts the house together, once."""
