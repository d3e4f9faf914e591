"""What ear protectors leave, by two published ways of counting: ratings and levels in dB."""

from __future__ import annotations

from collections.abc import Sequence

from calc import tables


def attenuation_niosh(ratings: Sequence[tuple[str, float]]) -> float:
    """Attenuation of protectors in dB by NIOSH 1998: derated NRR less 7, 5 more for a second.

    Parameters
    ----------
    ratings : kind (a row of ``noise_derating``) and printed NRR of each device worn

    Source: key ``niosh_1998_derating``.
    """
    left = [_share(kind, "niosh") * nrr for kind, nrr in ratings]
    if not left:
        return 0.0
    return max(0.0, max(left) - mark("weighting")) + _second(left)


def attenuation_osha(ratings: Sequence[tuple[str, float]], halved: bool = True) -> float:
    """Attenuation of protectors in dB by OSHA: ``(NRR - 7) / 2``, 5 more for a second.

    ``halved`` false gives the unhalved method of 1910.95 appendix B, for comparison only.
    """
    if not ratings:
        return 0.0
    best = max(0.0, max(nrr for _, nrr in ratings) - mark("weighting"))
    share = _share(ratings[0][0], "osha") if halved else 1.0
    return best * share + _second([nrr for _, nrr in ratings])


def level_under(level: float, first_nrr: float, second_nrr: float, halved: bool) -> float:
    """Return the level at the ear, dBA, under a plug and a muff, by the OSHA method."""
    return level - attenuation_osha([("foam", first_nrr), ("muffs", second_nrr)], halved)


def mark(key: str) -> float:
    """Return a level (dBA) or a difference (dB) of the table ``noise_marks``."""
    row = tables.row("noise_marks", key)
    return float(row["level"] if "level" in row else row["difference"])


def _second(left: Sequence[float]) -> float:
    return mark("second") if len(left) > 1 else 0.0


def _share(kind: str, body: str) -> float:
    return float(tables.row("noise_derating", kind)[body]) / 100
