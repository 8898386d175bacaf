"""What leaves the laptop and comes back: the calendar's file, and copies of the studio."""
