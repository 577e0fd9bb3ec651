"""The form of a thing: its fields from the schema, beside the circuit to choose it in."""
