"""What is carried away from a plan: sheets to read, made from the plan's own numbers alone."""
