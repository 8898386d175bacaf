"""Plans for the lots ahead: problems, a checker of every rule, and an engine of our own."""
