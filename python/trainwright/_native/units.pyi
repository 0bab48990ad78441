"""
Shop units at the edge; every factor is exact and stands in the core.
"""

from numpy import float64
from numpy.typing import ArrayLike, NDArray
from typing import Any

__all__ = ["c_to_f", "cm3_to_in3", "f_to_c", "f_to_k_difference", "gallon_to_l", "hp_to_kw", "in3_to_cm3", "in_to_mm", "k_to_f_difference", "kg_to_lb", "km_h_to_mph", "km_to_mile", "kpa_to_psi", "kw_to_hp", "l_to_gallon", "l_to_quart", "lb_to_kg", "lbf_ft_to_nm", "lbf_to_n", "mile_to_km", "mm_to_in", "mm_to_thou", "mph_to_km_h", "n_to_lbf", "nm_to_lbf_ft", "per_sqrt_lbf_ft_to_per_sqrt_nm", "per_sqrt_nm_to_per_sqrt_lbf_ft", "psi_to_kpa", "quart_to_l", "thou_to_mm"]

def c_to_f(temp_c: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Degrees Celsius to degrees Fahrenheit. A number in gives a float, an array gives an array.
    """

def cm3_to_in3(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Cubic centimeters to cubic inches. A number in gives a float, an array gives an array.
    """

def f_to_c(temp_f: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Degrees Fahrenheit to degrees Celsius. A number in gives a float, an array gives an array.
    """

def f_to_k_difference(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Differences in degrees Fahrenheit to differences in kelvin. A number in gives a float, an array gives an array.
    """

def gallon_to_l(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    US liquid gallons to liters. A number in gives a float, an array gives an array.
    """

def hp_to_kw(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Mechanical horsepower to kilowatts. A number in gives a float, an array gives an array.
    """

def in3_to_cm3(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Cubic inches to cubic centimeters. A number in gives a float, an array gives an array.
    """

def in_to_mm(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Inches to millimeters. A number in gives a float, an array gives an array.
    """

def k_to_f_difference(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Differences in kelvin to differences in degrees Fahrenheit. A number in gives a float, an array gives an array.
    """

def kg_to_lb(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Kilograms to pounds. A number in gives a float, an array gives an array.
    """

def km_h_to_mph(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Kilometers per hour to miles per hour. A number in gives a float, an array gives an array.
    """

def km_to_mile(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Kilometers to statute miles. A number in gives a float, an array gives an array.
    """

def kpa_to_psi(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Kilopascals to pounds-force per square inch. A number in gives a float, an array gives an array.
    """

def kw_to_hp(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Kilowatts to mechanical horsepower. A number in gives a float, an array gives an array.
    """

def l_to_gallon(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Liters to US liquid gallons. A number in gives a float, an array gives an array.
    """

def l_to_quart(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Liters to US liquid quarts. A number in gives a float, an array gives an array.
    """

def lb_to_kg(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Pounds to kilograms. A number in gives a float, an array gives an array.
    """

def lbf_ft_to_nm(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Pound-force feet to newton-meters. A number in gives a float, an array gives an array.
    """

def lbf_to_n(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Pounds-force to newtons. A number in gives a float, an array gives an array.
    """

def mile_to_km(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Statute miles to kilometers. A number in gives a float, an array gives an array.
    """

def mm_to_in(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Millimeters to inches. A number in gives a float, an array gives an array.
    """

def mm_to_thou(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Millimeters to thousandths of an inch. A number in gives a float, an array gives an array.
    """

def mph_to_km_h(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Miles per hour to km/h. A number in gives a float, an array gives an array.
    """

def n_to_lbf(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Newtons to pounds-force. A number in gives a float, an array gives an array.
    """

def nm_to_lbf_ft(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Newton-meters to pound-force feet. A number in gives a float, an array gives an array.
    """

def per_sqrt_lbf_ft_to_per_sqrt_nm(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Capacity factors of torque converters in 1/min per √(lbf·ft) to 1/min per √(N·m). A number in gives a float, an array gives an array.
    """

def per_sqrt_nm_to_per_sqrt_lbf_ft(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Capacity factors of torque converters in 1/min per √(N·m) to 1/min per √(lbf·ft). A number in gives a float, an array gives an array.
    """

def psi_to_kpa(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Pounds-force per square inch to kilopascals. A number in gives a float, an array gives an array.
    """

def quart_to_l(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    US liquid quarts to liters. A number in gives a float, an array gives an array.
    """

def thou_to_mm(value: ArrayLike, *, out: NDArray[float64] | None = None) -> Any:
    """
    Thousandths of an inch to millimeters. A number in gives a float, an array gives an array.
    """
