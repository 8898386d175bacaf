"""The step timeline: one lane a lot, quiet stretches pleated."""
