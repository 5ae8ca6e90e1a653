"""What a learner is told: programs read aloud, and lessons made of them, from the programs as they stand on disk."""
