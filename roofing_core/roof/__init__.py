"""Measuring the roof: pitch, slope length, area, and the plane that everything is laid on."""
