"""The bench: what needs hands now, and what rings."""
