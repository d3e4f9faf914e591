"""The day strip: light, temperature and the time to come, over the hours of the date."""

from __future__ import annotations

from calc.clients.when_to_come.day import Day, Plan
from calc.clients.when_to_come.sun import clock
from calc.declare import Axis, Chart, Series

_STEP = 10.0


def day_strip(day: Day, best: Plan | None) -> Chart:
    """Draw the date from midnight to midnight, or on to the finish where that is later."""
    end = 1440.0 if best is None else max(1440.0, best.finish)
    end = 60 * -(-end // 60)
    low, high = _ends(day)
    lift = (high - low) / 8
    dark = _band("dark", _spells(day, end, "dark"), low, high)
    dim = _band("twilight", _spells(day, end, "dim"), low, high)
    series = [_temperature(day), _at_home(day, end, low + lift / 2), dark, dim]
    if best is not None:
        ends = (best.arrive / 60, best.finish / 60)
        level = low + 1.5 * lift
        series.append(Series(label="you on the site", x=ends, y=(level, level), style="dashed"))
    come = (
        "No time fits."
        if best is None
        else f"You are there from {clock(best.arrive)} to {clock(best.finish)}."
    )
    rise = "never" if day.sun.sunrise is None else clock(day.sun.sunrise)
    sets = "never" if day.sun.sunset is None else clock(day.sun.sunset)
    return Chart(
        name="day_strip",
        title="The day",
        alt=f"Hours of the day with dark, twilight and forecast temperature. Sunrise {rise}, "
        f"sunset {sets}. {come}",
        x=Axis(label="Hour of the day", low=0, high=end / 60),
        y=Axis(label="Air", unit="degC", customary="degF", low=low, high=high),
        series=tuple(each for each in series if each.x),
    )


def _ends(day: Day) -> tuple[float, float]:
    low, high = min(day.forecast.temperatures), max(day.forecast.temperatures)
    # Room below the line for the strips, and a round scale.
    return 5.0 * ((low - 6) // 5), 5.0 * ((high + 6) // 5)


def _temperature(day: Day) -> Series:
    x: list[float] = []
    y: list[float] = []
    for place, value in enumerate(day.forecast.temperatures):
        start = day.forecast.first + place * day.forecast.block
        x += [start / 60, (start + day.forecast.block) / 60]
        y += [value, value]
    inside = [(a, b) for a, b in zip(x, y, strict=True) if a <= 24]
    return Series(
        label="temperature by a model" if day.forecast.doubt else "forecast temperature",
        x=tuple(a for a, _ in inside),
        y=tuple(b for _, b in inside),
    )


def _at_home(day: Day, end: float, level: float) -> Series:
    """Return a row of dots, one each half-hour in which most are at home."""
    half_hours = [30.0 * each for each in range(int(end / 30) + 1)]
    x = tuple(each / 60 for each in half_hours if day.where(each) in {"night", "cool"})
    return Series(label="most at home", x=x, y=(level,) * len(x), style="points")


def _spells(day: Day, end: float, kind: str) -> list[tuple[float, float]]:
    def there(minute: float) -> bool:
        if kind == "dark":
            return not day.dim(minute)
        return day.dim(minute) and not day.shines(minute)

    found: list[tuple[float, float]] = []
    for step in range(int(end / _STEP)):
        minute = step * _STEP
        if not there(minute + _STEP / 2):
            continue
        if found and found[-1][1] == minute:
            found[-1] = (found[-1][0], minute + _STEP)
        else:
            found.append((minute, minute + _STEP))
    return found


def _band(label: str, spells: list[tuple[float, float]], low: float, high: float) -> Series:
    x: list[float] = []
    top: list[float] = []
    for start, finish in spells:
        x += [start / 60, start / 60, finish / 60, finish / 60]
        top += [low, high, high, low]
    return Series(label=label, x=tuple(x), y=(low,) * len(x), style="band", y2=tuple(top))
