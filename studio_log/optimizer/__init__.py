"""Plans by constraint programming: better plans, and proofs. Needs ortools; runs by itself only."""
