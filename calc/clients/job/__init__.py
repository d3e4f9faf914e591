"""The job record: one open file a job. Every function is pure and returns a new job.

The file's fields stand in :mod:`calc.clients.job.fields`; beside them the strict reader, the lift
of older versions, what is typed once, health, letters, photos, and computing again.
"""

from calc.clients.job.fields import form
from calc.clients.job.json_schema import schema
from calc.clients.job.record import (
    Job,
    label,
    minutes,
    new,
    read,
    set_value,
    stings,
    summary,
    write,
)

__all__ = [
    "Job",
    "form",
    "label",
    "minutes",
    "new",
    "read",
    "schema",
    "set_value",
    "stings",
    "summary",
    "write",
]
