"""What is said on letting queens and males go: hard stops first, then what to wait for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc import rules
from calc.declare import Caution
from calc.method.letting_go.inputs import Inputs
from calc.method.passing_on import HIDDEN, about_status, condition


def cautions(x: Inputs, unmet: Sequence[str]) -> Iterator[Caution]:
    """Yield the cautions of an answer; ``unmet`` are the conditions that are not met."""
    yield from about_status(x.status)
    if x.distance < condition("distance"):
        yield Caution(
            level="stop",
            text=f"Not here: the nearest people or hives are closer than "
            f"{condition('distance'):.0f} m. Find another place.",
            reason="The client had the nest taken out, and neighbours and hives are not asked.",
            source="release_conditions_ours",
            hides=HIDDEN,
        )
    if x.agreed == "no":
        yield Caution(
            level="caution",
            text="Ask first: tell the client and the owner of the land what you let go, and where.",
            reason="They decide what happens on their land.",
            source="tell_the_client",
        )
    if unmet:
        yield Caution(
            level="caution",
            text=f"Wait: {', '.join(unmet)}. {rules.text('release', 'day')}",
            reason="Animals that cannot fly off are lost. Whether queens kept on sugar water live "
            "through the winter is not known.",
            source="release_conditions_ours",
        )
    yield Caution(
        level="caution",
        text="Open the cage on the ground, stand behind it, suit on. "
        f"{rules.text('release', 'workers', 'mates')}",
        reason="Queens and workers sting. Kin that mate have weaker colonies.",
        source="germanica_mates",
    )
    yield Caution(
        level="note",
        text="How many nests come of it next year is not known to a factor of ten and more.",
        reason="One source loses 98 in 100 over winter, another says that most survive.",
        source="landcare_queens",
    )
