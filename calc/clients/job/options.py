"""Options of the record's choices that stand in more than one place."""

from __future__ import annotations

from calc import tables


def options(text: str) -> tuple[tuple[str, str], ...]:
    """Return options from ``value: label`` lines."""
    pairs = (line.split(":", 1) for line in text.strip().splitlines())
    return tuple((value.strip(), label.strip()) for value, label in pairs)


YES_NO = options("unknown: Not asked yet\nno: No\nyes: Yes")

PLACES = options("""
    unknown: Not known yet
    hollow_tree: Hollow tree
    branch: On a branch or in a bush
    roof: Roof, loft or eaves
    wall: Wall
    ground: In the ground
    shed: Shed, garage or play house
    chimney: Chimney
    box: Bird box or shutter box
    other: Somewhere else
""")
STEPS = options("""
    travel: Travel, both ways
    talk: Talk and briefing
    set_up: Set-up
    capture: Catching at the entrance
    open_cavity: Opening the cavity
    comb_out: Taking the comb out
    wait: Waiting for returners
    close_up: Closing and cleaning
    other: Something else
""")
OUTCOMES = options("""
    open: Still open
    left: Left in place, explained
    later: Came back after the season
    relocated: Relocated alive
    removed: Removed
    sent_on: Sent to another trade or an authority
    cancelled: Called off
""")


def species() -> tuple[tuple[str, str], ...]:
    """Return the animals a job can name."""
    rows = ((row["key"], row["name"]) for row in tables.rows("job_species"))
    return (("unknown", "Not known yet"), *rows)
