"""The HTTP service: it reads a request, calls one function of the library, and writes its answer.

Nothing is calculated here. Names, units, defaults and descriptions all come from the library.
"""
