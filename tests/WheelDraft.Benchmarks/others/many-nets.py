#!/usr/bin/python3
"""A drawing from elsewhere: islands of copper of two nets in turn, each a polygon of twenty loose lines; needs nothing but Python.

Usage: many-nets.py LINES VERSION > FILE.dxf
VERSION is R12 or R2000. So many lines (whole islands) stand on the layers CU1 and CU2, as on a chessboard 5 mm apart, so that every island
has the other net on all sides. Islands differ in size by a fixed sequence of numbers, so the least distance stands in one place. $INSUNITS says
millimetres. Lines come in shuffled order, as a program that exports drawings by layer and colour leaves them: they must be joined.
"""
import math
import random
import sys

CORNERS = 20
PITCH_MM = 5.0


def islands(lines):
    """Layer and corners of each island."""
    count = lines // CORNERS
    side = math.ceil(math.sqrt(count))
    chance = random.Random(1)
    for k in range(count):
        i, j = k % side, k // side
        radius, turn = chance.uniform(1, 1.6), chance.uniform(0, math.pi)
        corners = [(i * PITCH_MM + radius * math.cos(turn + 2 * math.pi * c / CORNERS), j * PITCH_MM + radius * math.sin(turn + 2 * math.pi * c / CORNERS)) for c in range(CORNERS)]
        yield ("CU1", "CU2")[(i + j) % 2], [(round(x, 6), round(y, 6)) for x, y in corners]


def main():
    lines, version = int(sys.argv[1]), sys.argv[2]
    modern = version == "R2000"
    entities = [(layer, a, b) for layer, corners in islands(lines) for a, b in zip(corners, corners[1:] + corners[:1])]
    random.Random(2).shuffle(entities)
    out = ["0", "SECTION", "2", "HEADER", "9", "$ACADVER", "1", "AC1015" if modern else "AC1009", "9", "$INSUNITS", "70", "4", "0", "ENDSEC", "0", "SECTION", "2", "ENTITIES"]
    for handle, (layer, a, b) in enumerate(entities, 0x100):
        marks = ["5", f"{handle:X}", "100", "AcDbEntity", "8", layer, "100", "AcDbLine"] if modern else ["8", layer]
        out += ["0", "LINE", *marks, "10", f"{a[0]:.6f}", "20", f"{a[1]:.6f}", "30", "0.0", "11", f"{b[0]:.6f}", "21", f"{b[1]:.6f}", "31", "0.0"]
    out += ["0", "ENDSEC", "0", "EOF"]
    print("\n".join(out))


main()
