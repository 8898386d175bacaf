"""The rules of the studio."""
