"""Drawings: pictures of a finished plan, to scale, as SVG text."""
