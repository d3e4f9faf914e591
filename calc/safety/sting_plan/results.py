"""What "Sting plan" answers, the decision first."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out


def _column(name: str, label: str) -> Out:
    return out(name, label, label + ".", kind="text")


RESULTS: tuple[Out, ...] = (
    out(
        "decision",
        "Decision",
        "From the rules of this handbook; never a promise.",
        kind="text",
        main=True,
    ),
    out(
        "help_at",
        "Help at your side after",
        "Two minutes to notice and call, the ambulance, and the walk in.",
        unit="min",
        main=True,
    ),
    out(
        "margin",
        "Against the middle time to arrest",
        "Fifteen minutes less the minutes above; half of the fatal cases were faster.",
        unit="min",
        main=True,
    ),
    out(
        "check_in",
        "Check-in at least every",
        "Call out, hear an answer; a missed answer is an emergency. The same for every job.",
        unit="min",
    ),
    out(
        "conditions",
        "Conditions",
        "All of them hold before the suit goes on.",
        kind="table",
        columns=(_column("condition", "Condition"), _column("why", "Why")),
    ),
    out(
        "in_hand",
        "In hand",
        "What lies with the watcher, out of the vehicle.",
        kind="table",
        columns=(_column("item", "Item"), _column("state", "Now")),
    ),
    out(
        "roles",
        "Who does what after a sting with signs",
        "Say it aloud before the start.",
        kind="table",
        columns=(_column("who", "Who"), _column("does", "Does")),
    ),
    out("call", "What the caller says", "Written on the card, read out.", kind="text"),
    out(
        "second_dose",
        "If no better, adrenaline again after",
        "First aid plans print the first number, other texts up to the second. The same "
        "for every job.",
        kind="interval",
        unit="min",
    ),
    out(
        "printed",
        "Device printed for this weight",
        "From labels and guides; the prescription and the person's own plan come first.",
        kind="table",
        columns=(_column("where", "Where"), _column("device", "Printed device")),
    ),
    out(
        "observation",
        "Watched in a clinic afterwards, at least",
        "Guidelines differ; the clinic decides.",
        kind="table",
        columns=(
            _column("case", "After"),
            out("rcuk", "UK 2021", "Resuscitation Council UK.", unit="h"),
            out("ascia", "Australasia 2021", "ASCIA.", unit="h"),
            out("jtfpp", "USA 2020", "Joint Task Force.", unit="h"),
        ),
    ),
    out(
        "hospital_adult",
        "Hospital, even if well: adult from",
        "Number of stings by our rule, near the lowest published counts of harm.",
        kind="count",
    ),
    out(
        "hospital_frail",
        "Hospital, even if well: old, ill or pregnant, from",
        "A lower number by our rule.",
        kind="count",
    ),
    out(
        "hospital_lightest",
        "Hospital, even if well: lightest person from",
        "By weight, if that is fewer.",
        kind="count",
    ),
    out(
        "eye_minutes",
        "Wash an eye at least",
        "At least; longer is better. The same for every job.",
        unit="min",
    ),
    out(
        "eye_litres",
        "Water for that",
        "At the flow of the eyewash standard. The same for every job.",
        unit="L",
        digits=1,
    ),
    out("bottle_minutes", "Your bottles last", "At the same flow.", unit="min", digits=1),
    out(
        "signs",
        "Signs of anaphylaxis",
        "Any one of the first three after a sting is enough.",
        kind="table",
        columns=(_column("part", "Where"), _column("signs", "Signs"), _column("do", "Means")),
    ),
)
