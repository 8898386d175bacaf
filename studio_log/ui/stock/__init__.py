"""The stock: what is on the shelf, and what to buy."""
