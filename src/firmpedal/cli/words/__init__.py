"""What can be typed: each command with its arguments and its help, before anything heavy is imported."""
