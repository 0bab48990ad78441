"""What a typed user writes; `mypy --strict` must accept it."""

import numpy as np
import trainwright as tw
from numpy.typing import NDArray

reading = tw.Reading(value=44.407, u=0.004)
limits = tw.Limits(upper=44.55)
chance: float = tw.judge.chance_inside(reading, limits)
chances: NDArray[np.float64] = tw.judge.chance_inside({"value": np.linspace(44.0, 45.0, 11), "u": 0.004}, limits)
width: float = reading.u * 2
fields: dict[str, float] = reading.as_dict()
card: tw.Card = tw.card("judge.chance_inside")
equation: str = card.equation
try:
    tw.units.psi_to_kpa(float("nan"))
except tw.Error as error:
    kind: str = error.kind
