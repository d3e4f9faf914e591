"""What "Waiting for the stragglers" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS = (
    Out(
        name="next_step",
        label="What to do next",
        meaning="From the quiet spell and those still expected.",
        kind="text",
        main=True,
    ),
    Out(
        name="still_out",
        label="Still out on ordinary trips",
        meaning="Expected number. Those out for hours or overnight come on top.",
        digits=1,
        main=True,
    ),
    Out(
        name="still_out_interval",
        label="Still out, 95 % interval",
        meaning="The number you gave, if you know it.",
        kind="interval",
        main=True,
    ),
    Out(
        name="more_minutes",
        label="More minutes for the share you want",
        meaning="Counted from the end of your watch.",
        unit="min",
        main=True,
    ),
    Out(
        name="more_minutes_interval",
        label="More minutes, range",
        meaning="With the lower and the upper limit of the trip time.",
        kind="interval",
        unit="min",
    ),
    Out(
        name="more_for_all",
        label="More minutes until all are home",
        meaning="All on ordinary trips, in 95 of 100 cases.",
        unit="min",
    ),
    Out(
        name="mean_trip",
        label="Mean time to come home",
        meaning="Mean of an exponential law through your returns.",
        unit="min",
        digits=1,
    ),
    Out(
        name="mean_trip_interval",
        label="Mean time to come home, 95 % interval",
        meaning="Wide with few returns.",
        kind="interval",
        unit="min",
        digits=1,
    ),
    Out(
        name="quiet_minutes",
        label="Quiet at the end",
        meaning="Minutes since the last return.",
        unit="min",
    ),
    Out(
        name="quiet_needed",
        label="Quiet needed",
        meaning="Minutes without a return that rule out even one on an ordinary trip, at 95 %.",
        unit="min",
    ),
    Out(
        name="most_out_quiet",
        label="Most still out after this quiet",
        meaning="Largest number that the quiet time does not rule out at 95 %.",
        kind="count",
    ),
    Out(
        name="most_out_quiet_slow",
        label="The same with slow trips",
        meaning="With the upper limit of the trip time.",
        kind="count",
    ),
    Out(
        name="returns_per_hour",
        label="Returns an hour, at most",
        meaning="Exact limit at 95 % from the quiet time alone.",
        digits=1,
    ),
    Out(
        name="none_out",
        label="Chance that none is out",
        meaning="On ordinary trips only. Never shown above 99.9 %.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="away_at_start",
        label="Away when you began",
        meaning="Those home and those still out.",
        digits=1,
    ),
    Out(
        name="away_by_traffic",
        label="Away, by traffic before you began",
        meaning="Returns a minute times the trip time; a check of the number above.",
        digits=0,
    ),
    Out(name="home", label="Came home", meaning="Sum of your returns.", kind="count"),
    Out(
        name="waited_in_all",
        label="Watched in all",
        meaning="Length of the watch.",
        unit="min",
    ),
    Out(
        name="home_by",
        label="Share home by then",
        meaning="By your returns, and by the trips of yellow-legged hornets under an hour.",
        kind="table",
        columns=(
            Out(name="minutes", label="Minutes", meaning="Since you began.", unit="min"),
            Out(name="yours", label="Yours", meaning="By the mean.", unit="percent"),
            Out(
                name="yours_interval",
                label="Range",
                meaning="By the limits of the trip time.",
                kind="interval",
                unit="percent",
            ),
            Out(
                name="hornets",
                label="Hornets' trips",
                meaning="Gamma law of tagged yellow-legged hornets.",
                unit="percent",
            ),
        ),
    ),
    Out(name="method", label="Method used", meaning="What the numbers rest on.", kind="text"),
)

HIDDEN = tuple(
    out.name for out in RESULTS if out.name not in {"next_step", "home", "waited_in_all"}
)
"""Results that a stop withholds."""
