"""Flashings: metal where courses meet a wall, a chimney, a skylight or a pipe."""
