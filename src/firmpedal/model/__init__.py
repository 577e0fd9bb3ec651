"""What the builder declared, as frozen data."""
