"""What "What will still emerge" asks for."""

from __future__ import annotations

from calc.declare import Given, choice, count, number


def _look(label: str, meaning: str, example: int) -> int | None:
    found: int | None = count(
        label,
        meaning,
        origin="extra",
        optional=True,
        low=0,
        high=500,
        plausible=(0, 12),
        example=example,
    )
    return found


class Inputs(Given):
    """The comb, its warmth, and the opened cells: none of a look where it is left empty."""

    worker_cells: int = count(
        "Sealed worker cells",
        "From the comb count; 0 if there are none.",
        low=0,
        high=100_000,
        why="more than any nest in print",
        source="ratnieks_1996",
        plausible=(20, 5000),
        example=400,
    )
    queen_cells: int = count(
        "Sealed queen cells",
        "Sealed large cells; 0 if there are none.",
        low=0,
        high=100_000,
        why="more than any nest in print",
        source="ratnieks_1996",
        plausible=(0, 500),
        example=60,
    )
    species: str = choice(
        "Animal",
        "Sets the range of sealed days.",
        [
            ("crabro", "European hornet"),
            ("vespula", "Yellowjacket"),
            ("dolichovespula", "Aerial yellowjacket, bald-faced hornet"),
            ("velutina", "Yellow-legged hornet"),
            ("other", "Other or not known"),
        ],
        example="vespula",
    )
    temperature: float = number(
        "Warmth of the brood",
        "Measured beside the comb where you keep it.",
        "degC",
        low=-5,
        high=45,
        why="beyond this nothing is raised",
        plausible=(15, 33),
        example=30,
        step=1,
    )
    prepupa: int | None = _look("Larva or prepupa", "No legs or wings to be seen.", 9)
    white: int | None = _look("White, white eyes", "A pupa with legs, all white.", 5)
    pink: int | None = _look("White, pink to red eyes", "Only the eyes have colour.", 4)
    dark: int | None = _look("Pale, dark eyes", "Eyes dark, body still pale.", 5)
    colouring: int | None = _look("Body colouring", "Thorax tan or darkening, pattern starting.", 4)
    full: int | None = _look("Full colour or moving", "Looks like an adult with wing pads.", 3)

    @property
    def opened(self) -> tuple[int, ...] | None:
        """Opened cells of each look, youngest first; None where no cell was opened."""
        looks = (self.prepupa, self.white, self.pink, self.dark, self.colouring, self.full)
        if all(each is None for each in looks):
            return None
        return tuple(0 if each is None else each for each in looks)
