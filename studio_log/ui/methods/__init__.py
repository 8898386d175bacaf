"""Methods: read as a page, compared, copied, edited with a live drawing, sent and fetched."""
