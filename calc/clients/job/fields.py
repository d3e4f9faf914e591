"""The one declaration of the job record: every section and field of the file."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.clients.job.declare import Field, Section
from calc.clients.job.options import OUTCOMES, PLACES, STEPS, YES_NO, options, species
from calc.clients.visit import fields as visit_fields

FORMAT = "field-handbook-job"
"""What the file calls itself."""

VERSION = 2
"""Version of the file's form; :mod:`calc.clients.job.migrate` lifts older ones."""

ID = r"^[a-z0-9][a-z0-9-]{2,63}$"
NAME = r"^(?!(constructor|prototype)$)[a-z][a-z0-9_]{0,39}$"
"""A name of a calculator, an input or a result."""


_TOP = (
    Field(
        name="id", label="Job number", kind="text", longest=64, pattern=ID, required=True,
        pattern_words=": small letters, digits and hyphens, at least three",
        meaning="Made by the device; it names the file.", share="open",
    ),
    Field(name="title", label="Title", kind="text", longest=120,
          meaning="Your own short name for this job."),
    Field(name="created", label="Created", kind="moment", required=True,
          meaning="When the job was begun."),
    Field(name="changed", label="Changed", kind="moment", required=True,
          meaning="When it was last changed."),
    Field(name="edition", label="Edition", kind="text", longest=20, required=True, share="open",
          meaning="Edition of the handbook that wrote the file."),
    Field(name="notes", label="Notes", kind="text", longest=5000, lines=True,
          meaning="Anything else. Names and health do not belong here."),
    Field(name="typed", label="As typed", kind="typed", most=60, longest=2000,
          meaning="Raw text of each form, so that nothing typed is lost."),
    Field(name="typed_units", label="Units typed in", kind="choice",
          options=options("si: Metric\ncustomary: Customary"),
          meaning="Units that the raw texts were typed in."),
    Field(name="answers", label="Call sheet", kind="values", most=100,
          meaning="Answers of the call sheet, by its input names."),
)  # fmt: skip
_CLIENT = (
    Field(name="name", label="Name", kind="text", longest=120, meaning="Who called.",
          share="client"),
    Field(name="phone", label="Phone", kind="text", longest=60, meaning="Number to call back.",
          share="client"),
    Field(name="mail", label="Mail", kind="text", longest=200, meaning="For quote and report.",
          share="client"),
    Field(name="address", label="Address", kind="text", longest=400, lines=True,
          meaning="Where the nest is, with gate and floor.", share="client"),
    Field(name="role", label="Relationship to property", kind="choice",
          options=options("unknown: Not asked yet\nowner: Owner\ntenant: Tenant\n"
                          "manager: Manager or warden\nother: Someone else"),
          meaning="Who may say yes to opening a wall or a tree.", share="client"),
    Field(name="owner", label="Owner's name", kind="text", longest=120,
          meaning="If the owner is someone else.", share="client"),
    Field(name="consent", label="Owner's written consent", kind="choice",
          options=options("unknown: Not asked yet\nno: Refused\nasked: Asked, no answer\n"
                          "yes: There in writing"),
          meaning="Nothing is cut or opened before it is there.", share="client"),
)  # fmt: skip
_PLACE = (
    Field(name="kind", label="Where the nest is", kind="choice", options=PLACES, share="open",
          meaning="The kind of place, for the plan and the season's summary."),
    Field(name="height", label="Height above ground", kind="number", unit="m", customary="ft",
          low=-5, high=60, meaning="Below zero is under the ground.", share="open"),
    Field(name="access", label="Access", kind="text", longest=400, lines=True, share="client",
          meaning="Ladder, gate, dogs, where to park."),
    Field(name="power_lines", label="Power line or cable near", kind="choice", options=YES_NO,
          meaning="Within reach of ladder, tool or falling wood.", share="client"),
    Field(name="socket", label="Socket in reach", kind="choice", options=YES_NO,
          meaning="For the vacuum.", share="client"),
    Field(name="country", label="Country", kind="text", longest=2, pattern=r"^[A-Z]{2}$",
          pattern_words=": two capitals, ISO 3166", meaning="For the open record.", share="open"),
    Field(name="latitude", label="Latitude", kind="number", unit="degree", low=-90, high=90,
          meaning="WGS 84, north is positive; rounded before it is shared."),
    Field(name="longitude", label="Longitude", kind="number", unit="degree", low=-180, high=180,
          meaning="WGS 84, east is positive; rounded before it is shared."),
    Field(name="uncertainty", label="Uncertain by", kind="number", unit="m", customary="ft",
          low=1, high=1000000, meaning="Radius of the circle that surely holds the place."),
)  # fmt: skip
_ANIMAL = (
    Field(name="species", label="Animal", kind="choice", options=species(), share="open",
          meaning="As far as it is known."),
    Field(name="certainty", label="Known from", kind="choice", share="open",
          options=options("unknown: Not known\ntold: The caller's words\nphoto: A photo\n"
                          "seen: Seen on site\nspecimen: A specimen under the lens"),
          meaning="How sure the name is."),
    Field(name="status", label="Standing here", kind="choice", share="open",
          options=options("unknown: Not looked up\nnative: Native, not protected\n"
                          "protected: Protected\nnotifiable: To be reported\n"
                          "introduced: Introduced"),
          meaning="In the law of the place; ask the authority."),
    Field(name="treated", label="Sprayed, dusted or baited", kind="choice", share="client",
          options=options("unknown: Not asked yet\nno: No\nyes: Yes\n"
                          "nobody_knows: Asked, nobody knows"),
          meaning="By anyone, this season. What nobody knows counts as yes for food."),
    Field(name="treatment", label="With what", kind="text", longest=400,
          meaning="Product and day, if somebody knows.", share="client"),
)  # fmt: skip
_HEALTH = (
    Field(name="allergy_on_site", label="Strong reaction to a sting, anyone on site",
          kind="choice", options=YES_NO, meaning="Yes, no or not asked; no names, no diagnosis.",
          health=True),
    Field(name="autoinjector", label="Adrenaline there and in date", kind="choice",
          options=options("unknown: Not asked yet\nno: No\nexpired: There, past its date\n"
                          "yes: Yes"),
          meaning="As prescribed to that person.", health=True),
    Field(name="agreed", label="Agreed to this note on", kind="date",
          meaning="Day on which the person agreed that you keep it.", health=True),
    Field(name="note", label="What was agreed", kind="text", longest=400, lines=True,
          meaning="Who stays away, where the device lies. No names.", health=True),
)  # fmt: skip
_VISIT = (
    Field(name="date", label="Date of the visit", kind="date", meaning="Day of the work.",
          share="open"),
    Field(name="arrive", label="Arrived", kind="moment", meaning="On site.", share="client"),
    Field(name="leave", label="Left", kind="moment", meaning="Off site.", share="client"),
    Field(name="weather", label="Weather", kind="text", longest=200, share="client",
          meaning="In a few words."),
    Field(name="follow_up", label="Follow-up days", kind="texts", most=10, longest=40,
          meaning="Dates of the next looks, one a line.", share="client"),
)  # fmt: skip
_RESULT = (
    Field(name="outcome", label="Outcome", kind="choice", options=OUTCOMES, share="open",
          meaning="How the job ended."),
    Field(name="adults", label="Adults caught", kind="count", low=0, high=100000, share="open",
          meaning="All adults of all passes."),
    Field(name="queens", label="Queens among them", kind="count", low=0, high=10000, share="open",
          meaning="Old and young."),
    Field(name="males", label="Males among them", kind="count", low=0, high=50000, share="open",
          meaning="Stingless."),
    Field(name="cells", label="Cells in the comb", kind="count", low=0, high=500000, share="open",
          meaning="Counted or estimated."),
    Field(name="fate", label="What became of them", kind="choice", share="client",
          options=options("unknown: Not noted\nreleased: Released\nmoved: Moved alive\n"
                          "frozen: Frozen\nfed: Brood fed to poultry\nhanded_over: Handed over"),
          meaning="As agreed with the client."),
    Field(name="client_words", label="Note for the client", kind="text", longest=2000, lines=True,
          meaning="Goes into the report.", share="client"),
)  # fmt: skip
_PRICE = (
    Field(name="currency", label="Currency", kind="text", longest=3, pattern=r"^[A-Z]{3}$",
          pattern_words=": three capitals, ISO 4217", meaning="Any currency.", share="client"),
    Field(name="quoted", label="Quoted", kind="number", low=0, high=10000000, share="client",
          meaning="Price told before the work."),
    Field(name="final", label="Final price", kind="number", low=0, high=10000000, share="client",
          meaning="Before tax."),
    Field(name="cost", label="Own cost", kind="number", low=0, high=10000000,
          meaning="Hours, travel, material, overhead."),
    Field(name="deposit", label="Deposit", kind="number", low=0, high=10000000, share="client",
          meaning="Paid in advance."),
    Field(name="paid", label="Paid on", kind="date", meaning="Day the rest was paid.",
          share="client"),
)  # fmt: skip
_STEP = (
    Field(name="step", label="Step", kind="choice", options=STEPS, required=True,
          meaning="Part of the work.", share="client"),
    Field(name="minutes", label="Minutes", kind="number", unit="min", low=0, high=2880,
          meaning="Time it took.", share="client"),
    Field(name="at", label="Begun", kind="moment", meaning="When it began.", share="client"),
    Field(name="note", label="Note", kind="text", longest=400, meaning="What mattered.",
          share="client"),
)  # fmt: skip
_STING = (
    Field(name="who", label="Who", kind="choice", required=True,
          options=options("worker: Worker\nhelper: Helper\nclient: Client\n"
                          "neighbour: Neighbour or passer-by"),
          meaning="In what part, without a name."),
    Field(name="count", label="Stings", kind="count", low=0, high=5000, meaning="How many."),
    Field(name="at", label="When", kind="moment", meaning="Time of the first."),
    Field(name="reaction", label="Reaction", kind="choice", health=True,
          options=options("unknown: Not noted\nnone: None beyond pain\n"
                          "large_local: Large swelling\nsystemic: Beyond the spot"),
          meaning="As seen; a doctor judges it."),
)  # fmt: skip
_PHOTO = (
    Field(name="name", label="File", kind="text", longest=200, required=True,
          meaning="Name of the picture; the picture itself is kept apart.", share="client"),
    Field(name="caption", label="Caption", kind="text", longest=400, meaning="What it shows.",
          share="client"),
    Field(name="bytes", label="Size", kind="count", unit="", low=0, high=1000000000,
          meaning="Size of the file in bytes."),
    Field(name="kind", label="What it shows", kind="choice", share="client",
          options=options("unknown: Not said yet\nnest: Nest before the work\n"
                          "entrance: Entrance\nopened: Opened\ncomb: Comb\nclosed: Closed up\n"
                          "damage: Damage\nanimal: Animal\n"
                          "people: People, house number or car plate"),
          meaning="What the picture is about."),
    Field(name="use_in_report", label="In the report", kind="choice",
          options=options("no: No\nyes: Yes"),
          meaning="As ticked; without a tick, before and after go in."),
    Field(name="added", label="Added", kind="moment",
          meaning="When it was put into the job; the camera's own date is not kept."),
)  # fmt: skip
_CALCULATION = (
    Field(name="calculator", label="Calculator", kind="text", longest=40, pattern=NAME,
          pattern_words=" that names a calculator", required=True, share="open",
          meaning="Its name in the handbook."),
    Field(name="edition", label="Edition", kind="text", longest=20, required=True, share="open",
          meaning="Edition that computed it."),
    Field(name="time", label="Computed", kind="moment", required=True, meaning="When."),
    Field(name="inputs", label="Inputs", kind="values", most=100, required=True,
          meaning="What went in, in the declared units."),
    Field(name="origins", label="Origins", kind="values", most=100,
          meaning="Where each input came from: given, job, equipment or usual."),
    Field(name="results", label="Results", kind="values", most=100,
          meaning="What came out, tables left out."),
    Field(name="stops", label="Stops", kind="texts", most=30, longest=600,
          meaning="Stops that were raised."),
    Field(name="wiped", label="Deleted", kind="texts", most=100, longest=40,
          meaning="Inputs that were deleted because they told of someone's health."),
)  # fmt: skip


def _shared() -> tuple[Field, ...]:
    """Return the shared inputs that have no place of their own elsewhere in the record."""
    made = []
    for row in tables.rows("shared_inputs"):
        section, _, name = row["path"].partition(".")
        if section == "shared":
            made.append(_shared_field(row, name))
    return tuple(made)


def _shared_field(row: Any, name: str) -> Field:
    return Field(
        name=name,
        label=row["label"],
        meaning=row["meaning"],
        kind=row["kind"],
        unit=row.get("unit", ""),
        customary=row.get("customary", ""),
        low=row["low"],
        high=row["high"],
        most=row.get("most", 0),
        share="client",
    )


SECTIONS: tuple[Section, ...] = (
    Section(name="", label="The job", meaning="What names the file.", fields=_TOP),
    Section(name="client", label="Client", fields=_CLIENT,
            meaning="Stands in documents for the client, never in a link."),
    Section(name="place", label="Place", meaning="Where the nest is.", fields=_PLACE),
    Section(name="animal", label="Animal", meaning="What lives there.", fields=_ANIMAL),
    Section(name="health", label="Health", fields=_HEALTH,
            meaning="Kept apart, left out of links and documents, deleted alone."),
    Section(name="visit", label="Visit", meaning="Day and time of the work.", fields=_VISIT),
    Section(name=visit_fields.HOME, label="On site, step by step", fields=visit_fields.fields(),
            meaning="What was pressed on the pages “On site”."),
    Section(name="shared", label="Typed once", fields=_shared(),
            meaning="Values that several calculators ask for."),
    Section(name="steps", label="Steps", meaning="The work, with minutes.", fields=_STEP, most=100),
    Section(name="stings", label="Stings", meaning="To anyone.", fields=_STING, most=100),
    Section(name="result", label="Result", meaning="What came of it.", fields=_RESULT),
    Section(name="photos", label="Photos", meaning="The list; the pictures are kept beside it.",
            fields=_PHOTO, most=200),
    Section(name="price", label="Price", meaning="In your currency.", fields=_PRICE),
    Section(name="calculations", label="Results", meaning="What was computed, and when.",
            fields=_CALCULATION, most=200),
)  # fmt: skip
"""Every section of the record, in the order of the file."""


def section(name: str) -> Section | None:
    """Return a section by name, or None."""
    return next((each for each in SECTIONS if each.name == name), None)


def form() -> dict[str, Any]:
    """Return the declaration as JSON, for the form in the page."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "sections": [each.as_dict() for each in SECTIONS],
    }
