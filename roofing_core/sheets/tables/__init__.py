"""Tables of a plan: the same cells as numbers for a workbook and as text for paper."""
