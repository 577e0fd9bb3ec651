"""The lines in space: what the picture shows, as plain data, and what is done to it."""
