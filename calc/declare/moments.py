"""Inputs that are a date or a time of day, as text: one field instead of three or two."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from random import Random
from typing import Any

from calc.declare.inputs import Input
from calc.errors import shown

_YEAR = date(2026, 1, 1)
"""First day of the year over which a date that is not known is tried."""


@dataclass(frozen=True, kw_only=True, slots=True)
class _Moment(Input):
    example: str | None = None
    usual: str | None = None

    def read(self, value: object, assume: str | None) -> Any:
        """Return the text in its one form."""
        said = f"“{shown(value)}” is no {self.kind} that exists"
        if not isinstance(value, str) or not value.isascii():
            raise self.refuse(value, said)
        try:
            return self._plain(value.strip())
        except ValueError:
            raise self.refuse(value, said) from None

    def over(self, count: int) -> Sequence[Any]:
        """Return evenly spaced values."""
        return [self._at(place / max(count, 1)) for place in range(max(count, 1))]

    def draw(self, random: Random) -> Any:
        """Return one value, each as likely."""
        return self._at(random.random())

    def _plain(self, text: str) -> str:
        raise NotImplementedError

    def _at(self, share: float) -> str:
        """Return the value at a share of all, 0 to 1 (exclusive)."""
        raise NotImplementedError


@dataclass(frozen=True, kw_only=True, slots=True)
class Day(_Moment):
    """A date such as ``2026-08-20``, from ``first`` to ``last`` (both included)."""

    first: str = "1950-01-01"
    last: str = "2100-12-31"

    def allowed(self) -> str:
        """Return the form and the ends."""
        return f"a date such as 2026-08-20, from {self.first} to {self.last}"

    def _plain(self, text: str) -> str:
        day = date.fromisoformat(text).isoformat()
        if not self.first <= day <= self.last:
            raise ValueError(text)
        return day

    def _at(self, share: float) -> str:
        return (_YEAR + timedelta(days=int(365 * share))).isoformat()


@dataclass(frozen=True, kw_only=True, slots=True)
class Time(_Moment):
    """A time of day such as ``20:30``, on the 24-hour clock."""

    def allowed(self) -> str:
        """Return the form."""
        return "a time such as 20:30, from 00:00 to 23:59"

    def _plain(self, text: str) -> str:
        return f"{datetime.strptime(text, '%H:%M'):%H:%M}"

    def _at(self, share: float) -> str:
        hours, minutes = divmod(int(1440 * share), 60)
        return f"{hours:02d}:{minutes:02d}"
