"""The pages about Firmpedal, and what writes their generated parts."""
