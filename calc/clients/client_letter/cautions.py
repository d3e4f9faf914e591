"""What to know before a letter goes out."""

from __future__ import annotations

from calc.clients import letters
from calc.declare import Caution


def cautions(
    kind: str,
    language: str,
    *,
    distance: float | None,
    treated: str | None,
    fate: str | None,
    animal: str | None,
) -> list[Caution]:
    """Return what to say about a letter; what is not known is ``None``."""
    made = [_READ_FIRST]
    if kind in {"preparation", "neighbours", "tonight"} and distance is None:
        made.append(_NO_DISTANCE)
    if kind == "quote":
        made.append(_CANCEL)
    if kind == "report" and treated != "no" and fate == "fed":
        made.append(_POISON)
    if animal == "bees" and kind not in {"beekeeper", "authority"}:
        made.append(_BEES)
    if language != letters.LANGUAGES[0]:
        made.append(_REVIEW)
    return made


_READ_FIRST = Caution(
    level="caution",
    text="Read it before you send it. It says only what you typed; names and licence are blanks.",
    reason="A line whose number or date is missing is left out.",
    source="counted_only",
)
_NO_DISTANCE = Caution(
    level="caution",
    text="No distance is in it: nobody is told how far to keep away. Work it out in Keeping "
    "people away and type it in.",
    reason="The line is left out, not filled with a guess.",
    source="own_zones",
)
_CANCEL = Caution(
    level="caution",
    text="Hand over the sheet on the right to cancel with it, as your law wants it.",
    reason="Without it a trader in the European Union got nothing for finished work.",
    source="cjeu_c_97_22",
)
_POISON = Caution(
    level="stop",
    text="Do not send this: brood of a nest that was or may have been treated is not fed to any "
    "animal. Change what becomes of the brood.",
    reason="Nobody knows a time after which it is clean.",
    source="pesticide_in_eggs",
    hides=("letter",),
)
_BEES = Caution(
    level="stop",
    text="Bees are never taken out this way. Write to a beekeeper instead.",
    reason="They are another trade, and protected in many places.",
    source="bartschv_2005",
    hides=("letter",),
)
_REVIEW = Caution(
    level="caution",
    text="This language is for review by a native speaker. Let someone read it before it goes out.",
    reason="The English text is the original; its reading grade is measured, this one's is not.",
    source="letters_content",
)
