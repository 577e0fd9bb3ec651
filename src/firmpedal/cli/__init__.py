"""The command line: parse arguments, take the road, print sheets."""
