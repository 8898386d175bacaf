"""The calculator: each sum of the trade on a page of its own."""
