"""Runners of the duty chapter's vectors."""

from runners.train import closed, number, train

from trainwright import duty as core


def mesh_duty(row):
    of = train(row["train"])
    sets = of.sets
    place = int(row["set"])
    name = sets[place] if place < len(sets) else "none"
    found = core.mesh_duty(of.solve(closed(row)), set=name)
    wheels = [found.sun, found.sun_2, found.ring]
    parts = [part for wheel in wheels for part in ((wheel.contacts, wheel.torque) if wheel else (None, None))]
    return [number(part) for part in (*parts, found.planet_contacts, found.planet_2_contacts)]


MEANINGS = ["value", "out of range", "indicator", "reserved", "error", "not available"]


def _signal(row):
    number = int(row["number"])
    if number:
        return core.bus_signal(network=["J1939", "OBD"][int(row["network"])], number=number)
    rest = {name: row.number(name) for name in ("resolution", "offset", "lower", "upper")}
    return core.BusSignal(rules=["marked", "plain"][int(row["rules"])], bits=int(row["bits"]), **rest)


def decode(row):
    found = _signal(row).decode(int(row["raw"]))
    return [float(MEANINGS.index(found.meaning)), found.value]


def classify(row):
    found = _signal(row).classify(row.number("value"))
    return [float(MEANINGS.index(found.meaning)), found.value]


def step_error(row):
    return [_signal(row).step_error(row.number("value"))]
