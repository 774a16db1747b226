"""Working: for any figure of a plan, the chain of formulas and inputs that led to it.

The planning code computes; this folder says once more, for each figure, by which formula, as a tree
over the plan's other figures. `tests/laws` holds every formula to the plan, so none can drift.
"""
