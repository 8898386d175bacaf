"""A studio on a server: moving there and back, and the password."""
