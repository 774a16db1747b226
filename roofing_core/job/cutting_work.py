"""The order of work where shingles are shared: what is kept, and what is cut ahead."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.layout import Layout
from roofing_core.job.telling import count
from roofing_core.measures.sentences import Sentence, say


def cutting_ahead(layout: Layout) -> Iterator[Sentence]:
    """Say how offcuts are kept for where they serve again.

    Args:
        layout: The roof with all its layers.

    Returns:
        A sentence where offcuts are used again, none where they are not.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.job.choices import Cutting, Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> list(cutting_ahead(lay_out(Job(roof=shed))))
    []
    >>> told = cutting_ahead(lay_out(Job(roof=shed, cutting=Cutting(reuse="best"))))
    >>> next(told).written()[:55]
    'Use offcuts again as the cutting list says: 10 shingles'
    """
    cut = layout.cutting
    shared = sum(len(shingle.pieces) > 1 for shingle in cut.cut)
    if shared:
        gives = "gives" if shared == 1 else "give"
        yield say(
            f"Use offcuts again as the cutting list says: {count(shared, 'shingle')} {gives} more"
            f" than one piece. {_ahead(cut.cut_ahead)}Write on each offcut the course that it waits"
            f" for; {count(cut.most_kept, 'offcut')} at most lie by at one time. A cut end goes to"
            " the rake, hip or valley, a factory end to the next shingle."
        )


def _ahead(ahead: int) -> str:
    if not ahead:
        return ""
    takes = "Of one the piece" if ahead == 1 else f"Of {ahead} the piece"
    return f"{takes} laid first is cut to length before it is nailed. "
