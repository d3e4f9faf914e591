"""What is said on moving a nest."""

from __future__ import annotations

from collections.abc import Iterator

from calc.declare import Caution
from calc.method.moving_a_nest.inputs import Inputs
from calc.method.passing_on import about_status, condition


def cautions(x: Inputs) -> Iterator[Caution]:
    """Yield the cautions of an answer."""
    yield from about_status(x.status)
    if x.km < condition("moving"):
        yield Caution(
            level="caution",
            text=f"Too near: workers find home. Move at least {condition('moving'):.0f} km.",
            reason="In the one trial about half came back from two kilometres, a few in a hundred "
            "from five.",
            source="poidatz_2018_homing",
        )
    yield Caution(
        level="caution",
        text="The trial was made with yellow-legged hornets, which may not be moved. For your "
        "species it is a stand-in.",
        reason="No trial with European hornets or yellowjackets was found.",
        source="poidatz_2018_homing",
    )
    yield Caution(
        level="caution",
        text="Catch foragers at the old place until none comes; those left out hunt for the hole.",
        reason="A moved nest leaves its late foragers behind.",
        source="moving_five_km",
    )
    yield Caution(
        level="note",
        text="Distance does not hold young queens: in spring they fly much farther.",
        reason="Up to 70 km is told.",
        source="landcare_queens",
    )
