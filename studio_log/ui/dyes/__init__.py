"""Dyes and materials: what is known of each, how it is handled, and which way leads to a colour."""
