"""Words and geometry, without Qt."""
