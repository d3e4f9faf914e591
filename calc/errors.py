"""The one error that bad input raises."""

from __future__ import annotations

from typing import Any, TypeVar

T = TypeVar("T")


class InputError(ValueError):
    """A value that a calculator cannot take.

    Parameters
    ----------
    field : name of the input, as ``python -m calc describe`` lists it
    value : what was given, untouched
    allowed : what is allowed, in words and units
    sentence : one clear sentence that names field, value and what is allowed
    others : further problems of the same call, so that a form can mark every field at once
    """

    def __init__(
        self,
        field: str,
        value: object,
        allowed: str,
        sentence: str,
        others: tuple[InputError, ...] = (),
    ) -> None:
        super().__init__(sentence)
        self.field = field
        self.value = value
        self.allowed = allowed
        self.sentence = sentence
        self.others = others

    @property
    def problems(self) -> tuple[InputError, ...]:
        """This problem and the others of the same call."""
        return (self, *self.others)

    def as_dict(self) -> dict[str, Any]:
        """JSON form, as ``python -m calc run`` prints it."""
        value = self.value
        if not (value is None or isinstance(value, bool | int | str)):
            value = shown(value)
        return {
            "field": self.field,
            "value": value,
            "allowed": self.allowed,
            "sentence": self.sentence,
            "others": [other.as_dict() for other in self.others],
        }


def required(field: str, value: T | None) -> T:
    """Return a value that the declaration promises, or refuse: nothing stands in for it.

    Where a missing number taken as 0 would make the answer look better than it is.
    """
    if value is None:
        raise InputError(
            field, None, "a value", f"{field}: a value is missing; allowed is a value."
        )
    return value


def shown(value: object, longest: int = 60) -> str:
    """Text of a value for a sentence, cut to a length that fits a phone."""
    try:
        text = value if isinstance(value, str) else repr(value)
    except ValueError:  # an integer past Python's digit limit
        text = "a number with thousands of digits"
    text = " ".join(text.split())
    return text if len(text) <= longest else text[: longest - 1] + "…"
