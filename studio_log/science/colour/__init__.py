"""Colour as figures: spaces, differences, spectra, grades, evenness, and photos with a target.

Nothing here is imported when the window starts: coloraide and numpy come with their first use.
"""
