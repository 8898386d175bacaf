"""The lot list, the lot sheet and the form for a new lot."""
