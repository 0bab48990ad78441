"""The pictures of the report, as SVG text. They take plain numbers and know nothing of records."""

from .clutch import Bar, capacity_against_demand
from .compare import bargain
from .converter import converter_characteristic, engine_against_converter
from .duty import damage_by_set, damage_by_truck
from .fits import clearance_against_temperature
from .fluid import level_against_temperature
from .grade import temperature_along, torque_by_grade
from .hydraulic import cooler_flow, flow_by_speed, pressure_by_gear
from .identify import chances_by_look, worth_of_looks
from .interchange import Link, parts_graph
from .locks import stress_by_grade, stress_by_truck
from .proof import ratio_trace, shift_close_up, slip_by_element
from .road import shift_points
from .stack import PieceRow, pieces_against_window, shares_of_variance
from .tow import fullest_ratings, launch_by_grade, loads_and_ratings
from .train import gear_ladder, ratio_readings

__all__ = [
    "Bar",
    "Link",
    "PieceRow",
    "bargain",
    "capacity_against_demand",
    "chances_by_look",
    "clearance_against_temperature",
    "converter_characteristic",
    "cooler_flow",
    "damage_by_set",
    "damage_by_truck",
    "engine_against_converter",
    "flow_by_speed",
    "fullest_ratings",
    "gear_ladder",
    "launch_by_grade",
    "level_against_temperature",
    "loads_and_ratings",
    "parts_graph",
    "pieces_against_window",
    "pressure_by_gear",
    "ratio_readings",
    "ratio_trace",
    "shares_of_variance",
    "shift_close_up",
    "shift_points",
    "slip_by_element",
    "stress_by_grade",
    "stress_by_truck",
    "temperature_along",
    "torque_by_grade",
    "worth_of_looks",
]
