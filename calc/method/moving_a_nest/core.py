"""The core of "Moving a nest"."""

from __future__ import annotations

from calc.declare import Answer, Axis, Chart, Series
from calc.method.moving_a_nest.cautions import cautions
from calc.method.moving_a_nest.homing import homing, returned_limits
from calc.method.moving_a_nest.inputs import Inputs
from calc.method.passing_on import between, both, condition, line
from calc.tables import rows


def core(x: Inputs) -> Answer:
    """Compute how many may come back; units and sources: the declaration."""
    share, limits = homing(x.km)
    workers = x.workers
    back = between((workers * limits[0] / 100, workers * limits[1] / 100))
    said = list(cautions(x))
    values = {
        "verdict": f"{back} of {workers} workers may be back at the old hole.",
        "figures": [
            line("Workers back, 95 % limits of the trial", f"{between(limits)} %"),
            line(
                "On the line of the trial",
                "not tried so far" if share is None else f"{share:.0f} %",
            ),
            line("That is, of yours", back),
            line(
                "Move at least",
                both(condition("moving"), "km", "mile"),
            ),
        ],
    }
    stopped = any(each.level == "stop" for each in said)
    return Answer(values=values, cautions=said, charts=[] if stopped else [_chart()])


def _chart() -> Chart:
    trial = rows("homing_returns")
    at = tuple(float(each["km"]) for each in trial)
    limits = [returned_limits(each["returned"], each["released"]) for each in trial]
    return Chart(
        name="homing",
        title="Workers that came back",
        alt="About nine in ten come back from half a kilometre, half from one and two kilometres, "
        "a fifth or less from three and four, one in twenty from five; wide bands round each.",
        x=Axis(label="Set free at", unit="km", customary="mile", low=0),
        y=Axis(label="Came back", unit="percent", low=0, high=100),
        series=(
            Series(
                label="95 % limits",
                x=at,
                y=tuple(low for low, _ in limits),
                y2=tuple(high for _, high in limits),
                style="band",
            ),
            Series(
                label="Yellow-legged hornets, one trial",
                x=at,
                y=tuple(float(each["percent"]) for each in trial),
                style="points",
            ),
        ),
    )
