"""Equations and exact units, each with a source."""
