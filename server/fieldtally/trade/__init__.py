"""What the trade knows: units, rulebooks, what fits a level, pace, scoring, eligibility, conditioning. Pure."""
