"""The lines of a proof run about pressure against need, temperature, lock-up, and the log itself."""

from __future__ import annotations

import numpy as np

from ...clutch import review
from ...converter import SlipLimits, lockup_slip
from ...edge import number
from ...hydraulic import GearPressure, gear_pressure
from ...judge import Limits, Reading, judge
from .asked import Asked
from .line import Line, judged, not_proven
from .log import Numbers
from .seen import Mask, Seen
from .sensors import sensor_fault
from .shifts import COLD, WARM

USED_SHARE = 0.99
"""Share of the rows whose speeds must be usable: our own choice, printed with the answer."""

STILL_S = 300.0
"""Time for which a fluid temperature may show one value: our own choice, printed with the answer."""
NEAR = 5
"""Rows whose median counts as a temperature, so that a glitch of the sensor does not."""

# ---- pressure


def pressure_lines(seen: Seen, asked: Asked) -> list[Line]:
    """Line pressure against the need of every gear at the torque that it carried."""
    if sensor_fault(seen):
        return [not_proven("pressure", "line pressure against need", "the speeds themselves are wrong, so the gear is not known", "mend the sensors first", "mend")]
    if "pressure_kpa" not in seen.log:
        return [not_proven("pressure", "line pressure against need", "no pressure in the log", "log the line pressure, with the torque at the input", WARM, "torque")]
    if not np.isfinite(seen.log.torque_nm).any():
        if "engine_torque_nm" in seen.log:
            why, do = "engine torque without lock-up: the converter multiplies it by a factor that the log does not hold", "drive with the lock-up on, or log the torque at the input"
        else:
            why, do = "no torque in the log", "log engine torque with the lock-up on, or pull with a known torque on the dyno"
        return [not_proven("pressure", "line pressure against need", why, do, WARM, "torque")]
    if not seen.family.packs(seen.variant):
        return [not_proven("pressure", "line pressure against need", "the record has no packs", "add plates, radii and springs of the packs to the record")]
    lines, silent = [], []
    for name in seen.gears:
        found = least_spare(seen, asked, name)
        if found is None:
            silent.append(name)
            continue
        pressure, torque_nm, at_s = found
        about, element = f"pressure in {name}", seen.train.elements[pressure.element]
        need = pressure.needed.strong_spring_kpa
        why = f"{number(pressure.reading_kpa.value, 0)} kPa at {number(torque_nm, 0)} N·m ({number(at_s, 1)} s): {element} needs {number(need, 0)} kPa"
        do = "" if pressure.verdict == "GO" else f"raise no pressure: look at the supply and at {element}, ask less torque until then" if pressure.verdict == "NO-GO" else "know friction or pressure better: trainwright capacity says which"
        data = {"gear": name, "element": element, "torque_nm": torque_nm, "at_s": at_s, "needed_kpa": need, "spare_kpa": pressure.spare_kpa}
        lines.append(Line("pressure", about, pressure.verdict, why, do, pressure.reading_kpa, "kPa", Limits(lower=need), pressure.chance, data=data))
    if silent:
        lines.append(not_proven("pressure", f"pressure in {' '.join(silent)}", "not driven with a known torque", "drive them with torque and pressure in the log", WARM, "torque", gears=silent))
    return lines


def least_spare(seen: Seen, asked: Asked, name: str) -> tuple[GearPressure, float, float] | None:
    """The half second in a gear at which the pressure is nearest to its need: its judgment, torque and time."""
    torque = np.abs(seen.log.torque_nm)
    blocks = seen.blocks(seen.in_gear(name), seen.column("pressure_kpa"), torque, seen.log.time_s)
    (pressure, count), (load, _), (at_s, _) = blocks
    if not len(load) or float(load.max()) <= 0:
        return None
    most = float(load.max())
    none, full = (_pressure(seen, asked, name, Reading.exact(float(pressure.mean())), torque_nm).needed.strong_spring_kpa for torque_nm in (0.5 * most, most))
    need = full + (load - most) * (full - none) / (0.5 * most)
    place = int(np.argmin(pressure - need))
    u = float(np.hypot(seen.sensors["pressure_kpa"].u_of_mean(int(count[place])), asked.pressure_u_kpa))
    return _pressure(seen, asked, name, Reading(value=float(pressure[place]), u=u), float(load[place])), float(load[place]), float(at_s[place])


def _pressure(seen: Seen, asked: Asked, name: str, reading_kpa: Reading, torque_nm: float) -> GearPressure:
    written = seen.family.as_dict()
    found = review(
        seen.gears[name], seen.family.packs(seen.variant), pressure_kpa=reading_kpa, friction=seen.family.static_friction,
        geometry_u_rel=written["friction"]["geometry_u_rel"], oil_density_kg_m3=0.0, turbine_torque_nm=Reading(value=torque_nm, u=torque_nm * asked.torque_u_rel),
        turbine_speed_rpm=0.0, rule=asked.rule,
    )  # fmt: skip
    return gear_pressure(found, reading_kpa=reading_kpa)


# ---- temperature


def temperature_lines(seen: Seen, asked: Asked) -> list[Line]:
    """Whether the run was cold, at the level check and hot, whether the fluid stayed below its limit, and whether the sensor moves."""
    temp = seen.column("temp_c")
    known = np.isfinite(temp)
    if not known.any():
        return [not_proven("temperature", "fluid temperature", "no temperature in the log", "log the temperature of the fluid", COLD, WARM)]
    lines = []
    wanted = [("cold", COLD, temp < asked.limits.cold_c, f"below {number(asked.limits.cold_c, 0)} °C")]
    if asked.window_c:
        wanted.append(("level check", "window", (temp >= asked.window_c.lower) & (temp <= asked.window_c.upper), f"{number(asked.window_c.lower, 0)} to {number(asked.window_c.upper, 0)} °C"))
    wanted.append(("at working temperature", WARM, temp >= asked.working_c, f"from {number(asked.working_c, 0)} °C"))
    low, high = float(temp[known].min()), float(temp[known].max())
    span = f"the log has {number(low, 0)} to {number(high, 0)} °C"
    for name, need, rows, limit in wanted:
        seconds = seen.seconds(known & rows)
        about = f"driven {name}" if name != "level check" else "in the window of the level check"
        if seconds > 0:
            lines.append(Line("temperature", about, "GO", f"{number(seconds, 0)} s {limit}", data={"seconds_s": seconds}))
        else:
            lines.append(not_proven("temperature", about, f"never {limit}: {span}", f"run it {name if name != 'level check' else 'from cold through the window'}", need))
    sensor = seen.sensors["temp_c"]
    steady = np.median(np.lib.stride_tricks.sliding_window_view(temp[known], min(NEAR, int(known.sum()))), axis=1)
    hottest = judge(Reading(value=float(steady.max()), u=float(np.hypot(sensor.step / 12**0.5, asked.temp_u_k))), Limits(upper=asked.limits.hot_c), asked.rule)
    why = f"hottest {number(float(steady.max()), 0)} °C, at most {number(asked.limits.hot_c, 0)} °C asked"
    lines.append(judged("temperature", "fluid below its limit", hottest, "°C", why, "idle in Neutral to cool, then look at cooler flow and slip", WARM))
    lines.append(_moving(seen, temp, known))
    return lines


def _moving(seen: Seen, temp: Numbers, known: Mask) -> Line:
    about, values = "temperature sensor", len(np.unique(temp[known]))
    if stuck := seen.of_kind("temperature stuck"):
        why = f"still {number(stuck[0]['value'], 0)} °C at {number(stuck[0]['found_s'], 0)} s, although the unit is driven"
        return Line("temperature", about, "NO-GO", why, "measure the sensor and its wiring: cold and warm lines rest on it", data={"found_s": stuck[0]["found_s"]})
    time_s = seen.log.time_s[known]
    changed = np.flatnonzero(np.diff(temp[known], prepend=np.nan) != 0)
    longest = float(np.diff(np.append(time_s[changed], time_s[-1])).max())
    if values > 2 and longest < STILL_S:
        return Line("temperature", about, "GO", f"moves: {values} values, none for more than {number(longest, 0)} s")
    return not_proven("temperature", about, f"one value for {number(longest, 0)} s: it may stand still", "drive from cold to warm, or measure the sensor", COLD, WARM)


# ---- lock-up


def lockup_lines(seen: Seen, asked: Asked) -> list[Line]:
    """Slip of the lock-up clutch while it is commanded."""
    about = "lock-up"
    if "engine_rpm" not in seen.log or "lockup" not in seen.log:
        missing = " and ".join(name for name, there in (("engine speed", "engine_rpm" in seen.log), ("state of the lock-up", "lockup" in seen.log)) if not there)
        return [not_proven("lock-up", about, f"no {missing} in the log", f"log the {missing}", WARM, "lockup")]
    if sensor_fault(seen):
        return [not_proven("lock-up", about, "the speeds themselves are wrong", "mend the sensors first", "mend")]
    on = seen.column("lockup") == 1.0
    settled = on & seen.steady & (seen.time_since(on) >= asked.limits.follow_s)
    (engine, count), (turbine, _) = seen.blocks(settled, seen.column("engine_rpm"), seen.column("input_rpm"))
    if not len(engine):
        return [not_proven("lock-up", about, "never on" if not on.any() else "never settled", "drive with the lock-up on for 20 s", WARM, "lockup")]
    place = int(np.argmax(np.abs(engine - turbine)))
    readings = [
        Reading(value=float(mean[place]), u=seen.speed_u(shaft, float(mean[place]), int(count[place]))) for shaft, mean in (("engine", engine), ("input", turbine))
    ]
    target, alarm = asked.lockup_rpm
    slip = lockup_slip(engine_rpm=readings[0], turbine_rpm=readings[1], limits=SlipLimits(target_rpm=target, alarm_rpm=alarm, rule=asked.rule))
    why = f"mean {number(float(np.mean(engine - turbine)), 0)} rpm, greatest {number(slip.slip_rpm.value, 0)} rpm over {number(float(count[place]) * seen.log.sample_s, 1)} s; {number(alarm, 0)} rpm is a fault"
    return [judged("lock-up", about, slip.within_alarm, "rpm", why, "look at the apply pressure of the lock-up clutch", WARM, "lockup", target_rpm=target)]


# ---- the log itself


COUNTED = {
    "stale": "stale", "missing": "missing", "not_available": "not available", "sensor_error": "sensor error", "reserved": "reserved",
    "impossible": "impossible", "reversed": "time going back", "duplicate": "same time twice", "gaps": "gaps",
}  # fmt: skip
"""What the monitor counts and does not use, in words."""


def log_lines(seen: Seen) -> list[Line]:
    """Share of the log that could be used, and what could not."""
    counts = seen.counts
    unused = {words: int(counts[name]) for name, words in COUNTED.items() if counts.get(name)}
    rows = max(int(counts["samples"]), 1)
    share = 1 - min(sum(unused.values()), rows) / rows
    what = ", ".join(f"{count} {words}" for words, count in unused.items()) or "nothing stale, missing or impossible"
    verdict = "GO" if share >= USED_SHARE else "NOT PROVEN"
    do = "" if verdict == "GO" else "look at wiring, bus and logger; a value that is not there proves nothing"
    line = Line("log", "values", verdict, f"{rows} rows: {what}", do, needs=frozenset() if verdict == "GO" else frozenset({"mend"}), data={"rows": rows, "unused": unused, "used_share": share})
    missing = [name for name in seen.log.missing if name not in ("turbine_torque_nm",)]
    if "turbine_torque_nm" in seen.log and "engine_torque_nm" in missing:
        missing.remove("engine_torque_nm")
    if not missing:
        return [line]
    return [line, not_proven("log", "columns", f"without {', '.join(missing)}", "log them too", *(["torque"] if "engine_torque_nm" in missing else ["columns"]), missing=missing)]
