"""Packages that a few sheets need and nothing else does: loaded when one such sheet is made."""

from __future__ import annotations

from importlib import import_module
from typing import Any


def needed_package(name: str) -> Any:
    """Load a package of the extra `sheets`.

    Args:
        name: Of the package.

    Returns:
        The package.

    Raises:
        ModuleNotFoundError: It is not installed; says how to install it.

    Source:
        None needed.

    >>> needed_package("no_such_package")
    Traceback (most recent call last):
    ...
    ModuleNotFoundError: no_such_package is not installed: pip install 'roofing-core[sheets]'
    """
    try:
        return import_module(name)
    except ModuleNotFoundError:
        told = f"{name} is not installed: pip install 'roofing-core[sheets]'"
        raise ModuleNotFoundError(told, name=name) from None
