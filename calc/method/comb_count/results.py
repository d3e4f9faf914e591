"""What "Counting the comb" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS = (
    Out(
        name="cells",
        label="Cells in all",
        meaning="Worker and queen cells of all tiers.",
        main=True,
    ),
    Out(
        name="cells_interval",
        label="Cells, 95 % interval",
        meaning="Sampling and the measuring of the tiers together.",
        kind="interval",
        main=True,
    ),
    Out(
        name="brood",
        label="Brood in all",
        meaning="Eggs, larvae and sealed cells.",
        main=True,
    ),
    Out(
        name="colony",
        label="Colony in all",
        meaning="Adults caught, adults left or out, and brood.",
        main=True,
    ),
    Out(
        name="brood_interval",
        label="Brood, 95 % interval",
        meaning="From the same spots.",
        kind="interval",
    ),
    Out(
        name="colony_interval",
        label="Colony, 95 % interval",
        meaning="Interval of the brood plus the adults as given.",
        kind="interval",
    ),
    Out(
        name="by_stage",
        label="Cells by stage",
        meaning="Each stage with its own 95 % interval.",
        kind="table",
        columns=(
            Out(name="stage", label="Stage", meaning="What is in the cell.", kind="text"),
            Out(name="cells", label="Cells", meaning="Estimate."),
            Out(name="interval", label="95 % interval", meaning="For this stage.", kind="interval"),
            Out(name="share", label="Share of cells", meaning="Of all cells.", unit="percent"),
        ),
    ),
    Out(
        name="parts",
        label="Parts of the colony",
        meaning="Each part and its share.",
        kind="table",
        columns=(
            Out(name="part", label="Part", meaning="Part of the colony.", kind="text"),
            Out(name="number", label="Number", meaning="Estimate."),
            Out(name="share", label="Share", meaning="Of the colony.", unit="percent"),
        ),
    ),
    Out(
        name="worker_cells",
        label="Worker cells",
        meaning="Cells of the tiers not named as queen cells.",
    ),
    Out(name="queen_cells", label="Queen cells", meaning="Cells of the tiers you named."),
    Out(
        name="sealed_cells",
        label="Sealed cells in all",
        meaning="Goes on to the page on what will still emerge.",
    ),
    Out(
        name="sealed_queen_cells",
        label="Sealed queen cells",
        meaning="Sealed cells on the tiers with queen cells; 0 if you named none.",
    ),
    Out(
        name="per_tier",
        label="Cells per tier",
        meaning="From the top down.",
        kind="table",
        columns=(
            Out(name="tier", label="Tier", meaning="From the top.", kind="count"),
            Out(name="kind", label="Cells of", meaning="Worker or queen cells.", kind="text"),
            Out(
                name="area",
                label="Area",
                meaning="From the diameters.",
                unit="cm**2",
                customary="inch**2",
            ),
            Out(name="cells", label="Cells", meaning="Estimate."),
            Out(name="by_size", label="If full", meaning="Area over cell area."),
        ),
    ),
    Out(
        name="sampling_interval",
        label="Cells, from the sampling alone",
        meaning="95 % interval as if the areas were exact; never below the cells you counted.",
        kind="interval",
    ),
    Out(
        name="rule",
        label="Brood against adults",
        meaning="Compared with the rough rule of the trade.",
        kind="text",
    ),
    Out(
        name="filled",
        label="Cells counted over cells if full",
        meaning="Near 1 where pitch, area and patches agree.",
        digits=2,
    ),
    Out(
        name="pitch_used",
        label="Pitch used",
        meaning="Worker cells; measured, or the middle of the table's range.",
        unit="mm",
        customary="inch",
        digits=2,
        customary_digits=3,
    ),
    Out(
        name="df",
        label="Degrees of freedom",
        meaning="Satterthwaite's, for the interval of the cells.",
        digits=1,
    ),
    Out(name="method", label="Method used", meaning="What the numbers rest on.", kind="text"),
)
