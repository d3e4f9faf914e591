"""What "Sting plan" answers, the decision first."""

from __future__ import annotations

from calc.declare import Out


def _column(name: str, label: str, **more: str) -> Out:
    return Out(name=name, label=label, meaning=label + ".", kind="text", **more)  # type: ignore[arg-type]


RESULTS: tuple[Out, ...] = (
    Out(
        name="decision",
        label="Decision",
        meaning="From the rules of this handbook; never a promise.",
        kind="text",
        main=True,
    ),
    Out(
        name="help_at",
        label="Help at your side after",
        meaning="Two minutes to notice and call, the ambulance, and the walk in.",
        unit="min",
        main=True,
    ),
    Out(
        name="margin",
        label="Against the middle time to arrest",
        meaning="Fifteen minutes less the minutes above; half of the fatal cases were faster.",
        unit="min",
        main=True,
    ),
    Out(
        name="check_in",
        label="Check-in at least every",
        meaning="Call out, hear an answer; a missed answer is an emergency. "
        "The same for every job.",
        unit="min",
    ),
    Out(
        name="conditions",
        label="Conditions",
        meaning="All of them hold before the suit goes on.",
        kind="table",
        columns=(_column("condition", "Condition"), _column("why", "Why")),
    ),
    Out(
        name="in_hand",
        label="In hand",
        meaning="What lies with the watcher, out of the vehicle.",
        kind="table",
        columns=(_column("item", "Item"), _column("state", "Now")),
    ),
    Out(
        name="roles",
        label="Who does what after a sting with signs",
        meaning="Say it aloud before the start.",
        kind="table",
        columns=(_column("who", "Who"), _column("does", "Does")),
    ),
    Out(
        name="call",
        label="What the caller says",
        meaning="Written on the card, read out.",
        kind="text",
    ),
    Out(
        name="second_dose",
        label="If no better, adrenaline again after",
        meaning="First aid plans print the first number, other texts up to the second. The same "
        "for every job.",
        kind="interval",
        unit="min",
    ),
    Out(
        name="printed",
        label="Device printed for this weight",
        meaning="From labels and guides; the prescription and the person's own plan come first.",
        kind="table",
        columns=(_column("where", "Where"), _column("device", "Printed device")),
    ),
    Out(
        name="observation",
        label="Watched in a clinic afterwards, at least",
        meaning="Guidelines differ; the clinic decides.",
        kind="table",
        columns=(
            _column("case", "After"),
            Out(name="rcuk", label="UK 2021", meaning="Resuscitation Council UK.", unit="h"),
            Out(name="ascia", label="Australasia 2021", meaning="ASCIA.", unit="h"),
            Out(name="jtfpp", label="USA 2020", meaning="Joint Task Force.", unit="h"),
        ),
    ),
    Out(
        name="hospital_adult",
        label="Hospital, even if well: adult from",
        meaning="Number of stings by our rule, near the lowest published counts of harm.",
        kind="count",
    ),
    Out(
        name="hospital_frail",
        label="Hospital, even if well: old, ill or pregnant, from",
        meaning="A lower number by our rule.",
        kind="count",
    ),
    Out(
        name="hospital_lightest",
        label="Hospital, even if well: lightest person from",
        meaning="By weight, if that is fewer.",
        kind="count",
    ),
    Out(
        name="eye_minutes",
        label="Wash an eye at least",
        meaning="At least; longer is better. The same for every job.",
        unit="min",
    ),
    Out(
        name="eye_litres",
        label="Water for that",
        meaning="At the flow of the eyewash standard. The same for every job.",
        unit="L",
        customary="gal",
        digits=1,
    ),
    Out(
        name="bottle_minutes",
        label="Your bottles last",
        meaning="At the same flow.",
        unit="min",
        digits=1,
    ),
    Out(
        name="signs",
        label="Signs of anaphylaxis",
        meaning="Any one of the first three after a sting is enough.",
        kind="table",
        columns=(_column("part", "Where"), _column("signs", "Signs"), _column("do", "Means")),
    ),
)
