"""Firmpedal: brake lines of home-built light aircraft, from one plain file to sound hydraulic brakes."""
