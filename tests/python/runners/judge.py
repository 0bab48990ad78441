"""Runners of the judge chapter's vectors whose columns are not the arguments themselves."""

from trainwright import judge


def chance_inside(row):
    reading = judge.Reading(row.number("value"), row.number("u"))
    limits = judge.Limits(row.number("lower"), row.number("upper"))
    return [judge.chance_inside(reading, limits)]
