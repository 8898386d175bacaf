"""Baths and vats: a window with the list, the chosen one's diary, and a form for each act."""
