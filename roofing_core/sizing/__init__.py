"""Sizing: how near an order is to one more pack, and which sizes of roof waste least."""
