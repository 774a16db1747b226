"""Audit: whether a finished plan keeps water out, judged from the plan alone.

Trusts nothing that was computed while the plan was made, and uses none of the code that lays
anything out: a plan from us is read as one that somebody edited by hand. It judges and never
repairs. `finished` is what is read of a plan, `auditing` asks all the questions; each of the other
chapters asks those about one layer.
"""
