"""Shingles: courses, trim sequences, joints, pieces, and the nails in them."""
