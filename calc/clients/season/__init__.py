"""The season: many jobs as a table, rates and their comparison, open records."""

from calc.clients.season.table import (
    COLUMNS,
    GROUPS,
    csv_text,
    rows,
    step_minutes,
    summarise,
    weekly,
)

__all__ = ["COLUMNS", "GROUPS", "csv_text", "rows", "step_minutes", "summarise", "weekly"]
