"""What a reader must know before the numbers of "Fogging"."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import Caution
from calc.safety.levels import caution, note, stop


@dataclass(frozen=True, kw_only=True, slots=True)
class Findings:
    """What the core found."""

    eyewear: str
    margin: float | None  # None where there is no lens
    error: float
    stops_spray: bool
    cold_lens: bool
    clear_after: float | None
    mask: bool


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run, at least four of them in every run."""
    made = []
    if found.eyewear == "mesh":
        made.append(_MESH)
    elif found.margin is not None and found.margin < 0:
        made.append(_FOGS)
    made.append(_KEEP_ON)
    if found.margin is not None and 0 <= found.margin < found.error:
        made.append(_CLOSE)
    if found.eyewear != "mesh" and not found.stops_spray:
        made.append(_NOT_SPLASH)
    if found.cold_lens:
        made.append(_COLD)
    if found.mask:
        made.append(_MASK)
    return [*made, _MARKS, _MODEL, _JURISDICTION]


_MESH = stop(
    "Do not go near with a mesh visor or veil alone: it cannot fog, and it stops no spray. Wear "
    "splash goggles under it.",
    "Mesh stops stings and chips, not drops. Sprayed venom has blinded.",
    "mesh_screens",
    ("margin", "lens", "dew_point", "best"),
)
_FOGS = stop(
    "Do not go near with this setup: the lens is expected to fog. Change it below first, away "
    "from the nest.",
    "The inner face is colder than the dew point behind it.",
    "fog_model",
)
_KEEP_ON = caution(
    "Never take eye protection off or lift it near the nest, fogged or not. Walk out of the zone "
    "first, let the insects leave you, then wipe.",
    "Hornets can spray venom at a face, and one spray has cost the sight of an eye.",
    "hirano_2020",
)
_CLOSE = caution(
    "It may fog all the same: the room left is less than the error of the estimate. Work where "
    "you can walk out half blind, not on a ladder.",
    "The shares of breath and sweat are our figures.",
    "fog_model",
)
_NOT_SPLASH = caution(
    "This eyewear does not keep a spray from the side or through open vents out of your eyes. "
    "With hornets wear splash goggles with indirect vents.",
    "Only goggles marked 3 or D3 are made for droplets.",
    "en_166_marks",
)
_COLD = caution(
    "A cold lens fogs when you put it on: carry it in the suit until it is warm, and put it on "
    "away from the nest.",
    "Glass or plastic from a cooled vehicle is colder than the dew point outside.",
    "fog_model",
)
_MASK = caution(
    "A dust mask blows breath up behind the lens: tape or clip it at the nose, or take a half "
    "mask with a valve that blows down.",
    "Breath is nearly saturated.",
    "fog_model",
)
_MARKS = note(
    "An anti-fog mark (N or X) is a test of seconds on a new lens. It promises nothing for "
    "a day of work, and some lenses sold as anti-fog failed even that test.",
    "EN 168: 8 seconds. The margin does not count it.",
    "dain_1999",
)
_MODEL = note(
    "The figures for breath, sweat and vents are our estimates. Try your own gear at home: suit "
    "on, ten minutes of stair climbing, in the same weather.",
    "No measurement of goggles under a sting veil was found.",
    "fog_model",
)
_JURISDICTION = note(
    "Marks: EN 166 in Europe, being replaced by EN ISO 16321; ANSI Z87.1-2020 in the United "
    "States. Other countries mark otherwise, and your own law applies.",
    "The letters are on lens and frame.",
    "en_166_marks",
)
