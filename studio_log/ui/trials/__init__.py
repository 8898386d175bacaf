"""Trials: planned, read blind, unveiled, and what they say."""
