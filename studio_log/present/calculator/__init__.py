"""The dyer's sums, each by itself: what is asked, what comes out, where it is from."""
