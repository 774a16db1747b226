"""Underlayment and ice barrier: rows, the rolls they are cut from, and what fastens them."""
