"""Offcuts: the fewest shingles that pieces of given widths can be cut from, and the proof of it."""
