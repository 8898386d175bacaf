"""The studio on disk."""
