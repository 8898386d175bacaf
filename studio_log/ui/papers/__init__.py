"""Papers drawn: preview, PDF and printer."""
