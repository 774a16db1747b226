"""An audit as plain text: the verdict, what fails and where, the least margins, what was asked."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import wrap

from roofing_core.auditing.verdicts import Audit
from roofing_core.measures.units import System
from roofing_core.sheets.text import WIDTH


def audit_text(audit: Audit, system: System = "us") -> str:
    """Write an audit as plain text.

    Args:
        audit: What an audit found.
        system: The unit system of every measurement in it.

    Returns:
        Running text in lines of at most 92 characters, every line ended by a newline. Questions
        that the roof gives no cause for are left out.

    Raises:
        Nothing.

    Source:
        The audit's own numbers; lengths to the nearest 1/16 in or mm, and they say so by their
        form.

    >>> from roofing_core.auditing.audit import audit
    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> audit_text(audit(shed)).partition(":")[0]
    'THE ROOF SHEDS WATER AS IT IS PLANNED'
    """
    breaches = [one.says.written(system) for one in audit.breaches]
    margins = [one.says.written(system) for one in audit.margins]
    parts = (
        [audit.says.written(system).upper()],
        _titled("What fails, and where", breaches),
        _titled("Least margins", margins),
        _titled("Not judged", [one.written(system) for one in audit.not_judged]),
        ["ASKED", "-----", *_questions(audit, system)],
    )
    return "\n".join("\n".join(part) + "\n" for part in parts if part)


def _titled(title: str, sentences: Sequence[str]) -> list[str]:
    lines = [line for one in sentences for line in wrap(one, WIDTH, initial_indent="- ",
                                                        subsequent_indent="  ")]  # fmt: skip
    return [title.upper(), "-" * len(title), *lines] if lines else []


def _questions(audit: Audit, system: System) -> list[str]:
    lines = []
    for one in (one for one in audit.asked if one.looked_at):
        told = f"{one.asks.written(system)} {one.looked_at} looked at, {one.breaches} breached."
        lines += wrap(told, WIDTH, initial_indent="- ", subsequent_indent="  ")
    return lines
