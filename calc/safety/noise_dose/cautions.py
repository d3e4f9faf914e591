"""What a reader must know before the numbers of "Noise of the day"."""

from __future__ import annotations

from dataclasses import dataclass

from calc import rules, tables
from calc.declare import Caution
from calc.safety.levels import caution, note, stop

HELD_BACK = ("vacuum_left", "vacuum_left_osha")
"""Results that a stop withholds."""

_HIGHEST = float(tables.row("noise_marks", "highest")["level"])
_DOUBLE = float(tables.row("noise_marks", "double")["level"])
_DEAF = float(tables.row("noise_marks", "deaf_to_partner")["level"])


@dataclass(frozen=True, kw_only=True, slots=True)
class Findings:
    """What the core found; levels in dBA, doses in percent."""

    niosh: float  # at the ear
    osha: float  # at the ear
    bare_mean: float | None  # eight-hour mean without protectors, 3 dB
    ear_mean: float | None  # the same at the ear
    bare_osha: float
    loudest: float  # at the ear
    protector: str
    worn: float
    measured: bool
    saw: bool
    faintest: float  # the quietest tool under the protector

    @property
    def over(self) -> bool:
        """Whether either limit is passed at the ear."""
        return max(self.niosh, self.osha) > 100 + 1e-9

    @property
    def where(self) -> str:
        """Say whether the numbers hold with or without a protector."""
        return "at the bare ear" if self.protector == "none" else "under the protector"


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run, at least three of them in every run."""
    made = [*_stops(found), _FITS]
    if found.bare_mean is not None and found.bare_mean >= _DOUBLE:
        made.append(_TWO)
    if found.bare_osha >= 50:
        made.append(_ACTION)
    if not found.measured:
        made.append(_NOT_MEASURED)
    if found.protector != "none" and found.worn < 1:
        made.append(_OFF)
    if found.protector != "none" and found.faintest < _DEAF:
        made.append(_CANNOT_HEAR)
    if found.saw:
        made.append(_SAW)
    return [*made, _EARS, _JURISDICTION]


def _stops(found: Findings) -> list[Caution]:
    if found.loudest > _HIGHEST:
        return [_TOO_LOUD]
    return [_OVER] if found.over else []


_TOO_LOUD = stop(
    f"Do not start: a level over {_HIGHEST:.0f} dBA reaches the ear, and the published table "
    "gives no time for it.",
    "OSHA 1910.95, United States: table G-16 ends there.",
    "osha_1910_95_limits",
    HELD_BACK,
)
_OVER = stop(
    "Do not work this plan: the day's noise at the ear is over the published limit. Shorten it, "
    "take a quieter tool, or protect the ears better.",
    "More than 100 percent of NIOSH 1998, the stricter of the two United States rules, or of OSHA.",
    "niosh_1998",
    HELD_BACK,
)
_FITS = caution(
    "Ringing ears or dull hearing after the job mean it was too loud, whatever a number says: "
    "stop, and have your hearing tested.",
    "The limits accept that some people lose hearing; lost hearing does not come back.",
    "niosh_1998",
)
_TWO = caution(
    f"From a daily mean of {_DOUBLE:.0f} dBA wear plugs and muffs together.",
    "NIOSH 1998, United States; the mine rule begins at 105 dBA.",
    "niosh_1998",
)
_ACTION = caution(
    "An employer under OSHA must now offer hearing tests, protectors and training.",
    "Half of the OSHA dose is reached without protectors: the action level, 85 dBA.",
    "osha_1910_95_limits",
)
_NOT_MEASURED = caution(
    "The levels are not measured. Three decibels more halve the time by NIOSH: hold a meter at "
    "your ear once, with the hose in the hole.",
    "Printed levels of tools differ by 10 to 20 dB.",
    "noise_of_vacuums",
)
_OFF = caution(
    "Minutes without the protector count in full: they soon make up most of the dose.",
    "Ten minutes off in an hour take away most of what it does.",
    "own_reasoning",
)
_CANNOT_HEAR = caution(
    "Under this protector you will not hear a call or a hornet. Agree on hand signs, and keep "
    "your partner in sight.",
    f"Less than {_DEAF:.0f} dBA is left at the ear.",
    "hear_your_partner",
)
_SAW = caution(
    rules.text("saw", "fly", "ladder"),
    "The dose counts noise only; the saw has worse dangers.",
    "saw_ours",
)
_EARS = note(
    "Under a hood and veil a plug keeps its seal better than a muff.",
    "Straps, spectacles and folds of cloth lift the cushion of a muff.",
    "own_reasoning",
)
_JURISDICTION = note(
    "OSHA 1910.95 (1983) is law for employers in the United States; NIOSH 1998 is a recommendation "
    "there; the European Union's directive of 2003 and Canada's table differ. Your own law may "
    "be another and then applies.",
    "The same day is judged by two exchange rates, 5 dB and 3 dB.",
    "eu_noise_2003",
)
