"""What those who work on Firmpedal use besides its tests."""
