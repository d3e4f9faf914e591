"""What a calculator is told, and where each value may come from.

Every value has one origin: *given* by the person now, *job*, *equipment*, *usual* (with a source,
until replaced) or *not given*. A worked example is no origin: ``example`` is shown as an example
and never enters an answer that nobody gave it for.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from random import Random
from typing import Any, Literal

from calc.errors import InputError, shown

Kind = Literal["asked", "equipment", "usual", "extra"]
"""What an input is declared as.

``asked``: decides, and only the person or the job knows it. ``equipment``: measured or bought once.
``usual``: has a value with a source that stands until replaced. ``extra``: for those who want more.
"""

ORIGINS = ("given", "job", "equipment", "usual", "not given")
"""Where a value of an answer came from."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Input:
    """What all inputs share.

    ``label`` is what the form says, ``meaning`` one sentence of help. ``only_if`` names a choice
    and the values of it for which this input is used; otherwise it is ignored and may be left out.
    ``optional`` inputs may stay without a value. ``usual`` stands until replaced, with its
    ``usual_source``; ``example`` is the value of the worked example and of nothing else.
    """

    name: str = ""
    label: str
    meaning: str
    origin: Kind = "asked"
    optional: bool = False
    only_if: tuple[str, tuple[str, ...]] | None = None
    usual_source: str = ""

    @property
    def kind(self) -> str:
        """Word that the form and ``describe`` go by."""
        return type(self).__name__.lower()

    @property
    def standing(self) -> Any:
        """Return the usual value, or None."""
        return getattr(self, "usual", None)

    @property
    def shown_example(self) -> Any:
        """Return the value of the worked example: its own, or the usual one."""
        own = getattr(self, "example", None)
        return self.standing if own is None else own

    @property
    def needed(self) -> bool:
        """Whether an answer waits for this value."""
        return not self.optional and self.standing is None

    def applies(self, values: Mapping[str, Any]) -> bool:
        """Tell whether this input is used beside these values."""
        return self.only_if is None or values.get(self.only_if[0]) in self.only_if[1]

    def allowed(self) -> str:
        """Return what is allowed, in words."""
        raise NotImplementedError

    def read(self, value: object, assume: str | None) -> Any:
        """Return the plain value in the declared unit, or raise :class:`InputError`."""
        raise NotImplementedError

    def over(self, count: int) -> Sequence[Any]:
        """Return up to ``count`` plausible values, ends included."""
        raise NotImplementedError

    def draw(self, random: Random) -> Any:
        """Return one plausible value."""
        raise NotImplementedError

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "name": self.name,
            "kind": self.kind,
            "label": self.label,
            "meaning": self.meaning,
            "origin": self.origin,
            "optional": self.optional,
            "only_if": None
            if self.only_if is None
            else {"input": self.only_if[0], "values": list(self.only_if[1])},
            "usual": _listed(self.standing),
            "usual_source": self.usual_source,
            "example": _listed(self.shown_example),
        }

    def refuse(self, value: object, problem: str) -> InputError:
        """Return the error for a value, with its one sentence."""
        allowed = self.allowed()
        return InputError(
            self.name, value, allowed, f"{self.label}: {problem}; allowed is {allowed}."
        )


def _listed(value: Any) -> Any:
    return list(value) if isinstance(value, tuple) else value


@dataclass(frozen=True, kw_only=True, slots=True)
class Option:
    """One value of a choice."""

    value: str
    label: str
    meaning: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Choice(Input):
    """One of several named options."""

    options: tuple[Option, ...]
    example: str | None = None
    usual: str | None = None

    def allowed(self) -> str:
        """Return the options' values."""
        return "one of " + ", ".join(option.value for option in self.options)

    def read(self, value: object, assume: str | None) -> Any:
        """Return the option's value."""
        if not isinstance(value, str):
            raise self.refuse(value, f"“{shown(value)}” is not one of the options")
        for option in self.options:
            if value.strip() in {option.value, option.label}:
                return option.value
        raise self.refuse(value, f"“{shown(value)}” is not one of the options")

    def over(self, count: int) -> Sequence[Any]:
        """Return all options: none of them may be left out."""
        return [option.value for option in self.options]

    def draw(self, random: Random) -> Any:
        """Return one option."""
        return random.choice(self.options).value

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return Input.as_dict(self) | {
            "options": [
                {"value": each.value, "label": each.label, "meaning": each.meaning}
                for each in self.options
            ],
        }
