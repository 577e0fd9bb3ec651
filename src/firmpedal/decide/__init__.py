"""What to do about it: choices between evaluations, each with its reasons."""
