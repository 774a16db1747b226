"""The job sheet: a plan as pages to carry, in HTML and as PDF."""
