"""The first start."""
