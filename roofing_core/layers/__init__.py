"""The layers of a roof, each on its own: deck, courses, joints, pieces, underlayment, metal, nails.

The layers do not import each other (pieces stand on joints, and joints on courses, alone do);
they meet in `roofing_core.job`.
"""
