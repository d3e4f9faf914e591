"""The two figures of "Flow and reach of the nozzle"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from calc.declare import Axis, Chart, Series
from calc.method.fan import operating_flow
from calc.method.flow_and_reach.system import System, Vacuum
from calc.method.suction import Opening

_STEPS = 40
_FARTHEST = 0.10


def _spread(end: float) -> list[float]:
    return [end * step / _STEPS for step in range(_STEPS + 1)]


def _line(label: str, curve: Callable[[float], float], end: float) -> Series:
    flows = _spread(end)
    return Series(
        label=label,
        x=tuple(flow * 1e3 for flow in flows),
        y=tuple(curve(flow) / 1e3 for flow in flows),
    )


def curves(vacuum: Vacuum, system: System, flow: float) -> Chart:
    """Return the vacuum's curve, the system's curve and the point where they meet."""
    sealed = vacuum.sealed
    end = min(vacuum.open_flow, max(4 * flow, vacuum.points[-1][0] if vacuum.points else 1e9))
    # The system's curve is drawn no higher than the sealed suction.
    top = operating_flow(lambda _: sealed, system.loss, end)
    series = [
        _line("vacuum", vacuum.curve, end),
        _line("hose, nozzle and chamber", system.loss, top),
    ]
    if vacuum.points:
        series.append(
            Series(
                label="measured",
                x=tuple(1e3 * each[0] for each in vacuum.points),
                y=tuple(each[1] / 1e3 for each in vacuum.points),
                style="points",
            )
        )
    meets = system.loss(flow) / 1e3
    series.append(Series(label="operating point", x=(1e3 * flow,), y=(meets,), style="points"))
    return Chart(
        name="curves",
        title="Where vacuum and hose meet",
        alt=f"Suction against flow: the vacuum's curve falls, the hose's rises; "
        f"they meet at {1e3 * flow:.0f} L/s and {meets:.1f} kPa.",
        x=Axis(label="Flow", unit="L/s", customary="cfm", low=0),
        y=Axis(label="Suction", unit="kPa", customary="inH2O", low=0),
        series=tuple(series),
    )


def speeds(opening: Opening, flow: float, animals: Sequence[tuple[str, float]]) -> Chart:
    """Return the band of air speed against distance, with level lines of flight speeds."""
    distances = _spread(_FARTHEST)
    bands = [opening.speeds(flow, distance) for distance in distances]
    cm = tuple(100 * distance for distance in distances)
    band = Series(
        label="air, between the formulas",
        x=cm,
        y=tuple(low for low, _ in bands),
        y2=tuple(high for _, high in bands),
        style="band",
    )
    level = [Series(label=name, x=(cm[0], cm[-1]), y=(speed, speed)) for name, speed in animals]
    return Chart(
        name="speed",
        title="Air speed in front of the nozzle",
        alt=f"Air speed against distance: {bands[0][1]:.0f} m/s at the nozzle, "
        f"{bands[_STEPS // 2][0]:.1f} to {bands[_STEPS // 2][1]:.1f} m/s at 5 cm, "
        f"with lines at the flight speeds.",
        x=Axis(label="Distance from the nozzle", unit="cm", customary="inch", low=0, high=cm[-1]),
        y=Axis(label="Speed", unit="m/s", customary="mph", low=0),
        series=(band, *level),
    )
