"""Buying: what an order costs by a caller's price list, and the packs that cost least.

Money is `decimal.Decimal` from the price list to the total: no binary float ever holds any.
"""
