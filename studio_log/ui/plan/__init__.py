"""The plan: goals and means at the left, the plan over time, its visits, and why not better."""
