"""Every function of the C interface refuses a null pointer, whichever of its pointers it is, and writes nothing."""

from __future__ import annotations

import ctypes
import re
import sys

import pytest
from vectors import ROOT

HEADER = (ROOT / "ffi" / "include" / "trainwright.h").read_text()
LIBRARY = ROOT / "target" / "debug" / f"libtrainwright_c.{'dylib' if sys.platform == 'darwin' else 'so'}"
NULL = int(re.search(r"TW_STATUS_NULL = (-\d+)", HEADER)[1])
ROOM = 1 << 16  # more than any struct
UNTOUCHED = b"\x5a" * ROOM
NUMBERS = {
    "bool": ctypes.c_bool,
    "double": ctypes.c_double,
    "float": ctypes.c_float,
    "size_t": ctypes.c_size_t,
    "int32_t": ctypes.c_int32,
    "tw_spread": ctypes.c_int32,
    "uint64_t": ctypes.c_uint64,
    "uint32_t": ctypes.c_uint32,
    "uint16_t": ctypes.c_uint16,
    "uint8_t": ctypes.c_uint8,
}


PROTOTYPES = re.findall(r"^([^/\n]*)\b(tw_\w+)\(([^)]*)\);", HEADER.replace("\n    ", " "), flags=re.MULTILINE)
PARAMETERS = {name: [" ".join(parameter.split()) for parameter in text.split(",")] for _, name, text in PROTOTYPES}
MAY_BE_NULL = {("tw_duty_screen_row", 3)}
"""No row before this one."""
POINTERS = [
    (name, place) for name, of in PARAMETERS.items() for place, parameter in enumerate(of) if "*" in parameter and (name, place) not in MAY_BE_NULL
]


@pytest.mark.parametrize(("name", "null"), POINTERS, ids=[f"{name}-{null}" for name, null in POINTERS])
def test_a_null_pointer_is_refused(name: str, null: int) -> None:
    arguments: list[object] = []
    outputs = []
    for place, parameter in enumerate(PARAMETERS[name]):
        if "*" not in parameter:
            arguments.append(NUMBERS[parameter.split()[0]](1))
            continue
        room = ctypes.create_string_buffer(ROOM)
        if "*out_" in parameter:
            room.raw = UNTOUCHED
            outputs.append(room)
        arguments.append(None if place == null else ctypes.byref(room))
    function = getattr(ctypes.CDLL(str(LIBRARY)), name)
    function.restype = ctypes.c_int32
    assert function(*arguments) == NULL
    assert all(room.raw == UNTOUCHED for room in outputs)


def test_every_function_with_a_pointer_gives_a_status() -> None:
    assert {returned for returned, name, _ in PROTOTYPES if any(name == of for of, _ in POINTERS)} == {"tw_status "}
    assert {name for _, name, _ in PROTOTYPES} == set(re.findall(r"^[^/\n]*\b(tw_\w+)\(", HEADER, flags=re.MULTILINE))
