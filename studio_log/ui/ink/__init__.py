"""Marks in mm brought onto a device: what tags and papers share."""
