"""Open records of a season: Darwin Core occurrences with coarsened places and no person."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Any

from calc import tables
from calc.clients.job import Job
from calc.clients.season import csv_text

LICENCE = "http://creativecommons.org/publicdomain/zero/1.0/legalcode"
"""Dedication to the public domain, as Darwin Core's own example writes it."""

_A = 6378137.0
_F = 1 / 298.257223563
"""WGS 84: half axis in m, flattening."""


def terms() -> tuple[str, ...]:
    """Return the Darwin Core terms that are written, in the order of the columns."""
    return tuple(row["key"] for row in tables.rows("darwin_core"))


def degree_lengths(latitude: float) -> tuple[float, float]:
    """Return the length of a degree of latitude and of longitude on WGS 84.

    ``M = a (1 - e2) / (1 - e2 sin2)^1.5`` and ``N cos = a cos / (1 - e2 sin2)^0.5``, times pi/180.

    Parameters
    ----------
    latitude : degrees, -90 to 90

    Returns
    -------
    two lengths in m

    Source: geometry of the ellipsoid.
    """
    phi = math.radians(latitude)
    e2 = _F * (2 - _F)
    w = 1 - e2 * math.sin(phi) ** 2
    along = _A * (1 - e2) / w**1.5
    across = _A * math.cos(phi) / math.sqrt(w)
    return math.radians(along), math.radians(across)


def rounding_uncertainty(latitude: float, precision: float) -> float:
    """Return how far a place can lie from its coordinates rounded to ``precision`` degrees.

    ``p sqrt(m_lat^2 + m_lon^2)``, m. Source: Chapman and Wieczorek (key ``chapman_wieczorek``).
    """
    return precision * math.hypot(*degree_lengths(latitude))


def coarsened(
    latitude: float, longitude: float, uncertainty: float = 0.0, digits: int = 2
) -> dict[str, float]:
    """Return rounded coordinates with the radius that still holds the place.

    Parameters
    ----------
    latitude, longitude : degrees on WGS 84
    uncertainty : m, of the place before rounding
    digits : decimals kept, 0 to 3

    Returns
    -------
    ``latitude``, ``longitude`` in degrees, ``uncertainty`` in whole m rounded up, ``precision``
    """
    precision = 10.0**-digits
    radius = rounding_uncertainty(latitude, precision) + uncertainty
    return {
        "latitude": round(latitude, digits),
        "longitude": round(longitude, digits),
        "uncertainty": math.ceil(radius),
        "precision": precision,
    }


def occurrences(job: Job, digits: int = 2, status: str = "present") -> list[dict[str, str]]:
    """Return the occurrence records of one job: workers, queens and males apart.

    A job without a named wasp or a date gives none. The client, the address, the notes, health and
    the exact place never come out. ``status`` is the word of the target: ``present``, or
    ``detected`` for newer ones.
    """
    key = job.get("animal.species", "unknown")
    date = job.get("visit.date")
    if key in {"unknown", "bees", "other"} or not date:
        return []
    row = tables.row("job_species", key)
    base = {
        "basisOfRecord": "HumanObservation",
        "eventID": job.get("id"),
        "eventDate": date,
        "samplingProtocol": _protocol(job),
        "scientificName": row["scientific"],
        "taxonRank": row["rank"],
        "vernacularName": row["name"],
        "identificationVerificationStatus": _CERTAINTY[job.get("animal.certainty", "unknown")],
        "establishmentMeans": _MEANS.get(job.get("animal.status", "unknown"), "uncertain"),
        "occurrenceStatus": status,
        "lifeStage": "adult",
        "license": LICENCE,
        "datasetName": "Colonies taken out alive",
    }
    base |= _place(job, digits)
    return [
        {term: str(made.get(term, "")) for term in terms()}
        for made in (base | each for each in _classes(job))
    ]


def occurrence_csv(jobs: Iterable[Job], digits: int = 2, status: str = "present") -> str:
    """Return the records of many jobs as CSV text, one line a record, terms as the head."""
    made = [record for job in jobs for record in occurrences(job, digits, status)]
    return csv_text(made, terms())


def _classes(job: Job) -> list[dict[str, Any]]:
    """Return caste, sex and count; a count that is not known is left out, never written as 0."""
    queens, males = job.get("result.queens"), job.get("result.males")
    adults = job.get("result.adults")
    workers = None if adults is None else adults - (queens or 0) - (males or 0)
    made = []
    for caste, sex, count in (
        ("worker", "female", workers),
        ("queen", "female", queens),
        ("male", "male", males),
    ):
        if count is not None and count > 0:
            made.append({"caste": caste, "sex": sex, "individualCount": count})
    for each in made:
        each["occurrenceID"] = f"{job.get('id')}-{each['caste']}"
    return made or [{"occurrenceID": f"{job.get('id')}-colony"}]


def _place(job: Job, digits: int) -> dict[str, Any]:
    made: dict[str, Any] = {
        "countryCode": job.get("place.country", ""),
        "habitat": _HABITAT.get(job.get("place.kind", "unknown"), ""),
    }
    height = job.get("place.height")
    if height is not None:
        made["minimumDistanceAboveSurfaceInMeters"] = round(height, 1)
        made["maximumDistanceAboveSurfaceInMeters"] = round(height, 1)
    latitude, longitude = job.get("place.latitude"), job.get("place.longitude")
    if latitude is None or longitude is None:
        return made
    place = coarsened(latitude, longitude, job.get("place.uncertainty", 0.0), digits)
    return made | {
        "decimalLatitude": f"{place['latitude']:.{digits}f}",
        "decimalLongitude": f"{place['longitude']:.{digits}f}",
        "geodeticDatum": "EPSG:4326",
        "coordinateUncertaintyInMeters": int(place["uncertainty"]),
        "coordinatePrecision": f"{place['precision']:.{digits}f}",
        "dataGeneralizations": f"rounded to {place['precision']:.{digits}f} degrees for privacy",
        "informationWithheld": "exact place, address and people",
    }


def _protocol(job: Job) -> str:
    if job.get("result.outcome") in {"removed", "relocated"}:
        return "live capture in an air flow at the entrance, then the comb"
    return "look at the nest"


_CERTAINTY = {
    "unknown": "unverified",
    "told": "unverified",
    "photo": "from a photo",
    "seen": "seen on site",
    "specimen": "specimen examined",
}
_MEANS = {"native": "native", "protected": "native", "introduced": "introduced"}
_HABITAT = {
    "hollow_tree": "hollow tree",
    "branch": "branch or bush",
    "roof": "roof of a building",
    "wall": "wall of a building",
    "ground": "in the ground",
    "shed": "outbuilding",
    "chimney": "chimney",
    "box": "nest box or shutter box",
}
