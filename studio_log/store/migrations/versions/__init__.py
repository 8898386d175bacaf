"""One file a revision, numbered from 0001; a shipped one is never changed."""
