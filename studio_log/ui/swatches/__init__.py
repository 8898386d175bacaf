"""Swatches: the window, its forms, find by colour, colour from a photo, plots and cards."""
