#!/usr/bin/env python3
"""Bottom-left fill with rotations on the parts that the nesting tests write, for comparison; needs nothing but Python.

    WHEELDRAFT_NEST_PARTS=/tmp/parts.json tests/WheelDraft.Tests/bin/Debug/net10.0/WheelDraft.Tests -class "*NestingTests"
    tests/WheelDraft.Benchmarks/bottom-left-fill.py /tmp/parts.json

Parts are laid by falling area, each in the turn that comes to lie lowest, then farthest left, on a grid of half a millimetre on which
every cell within half the gap of a part is its own. A place is taken where no cell is taken twice.
"""
import json
import math
import sys
import time

CELL = 0.5


def turned(points, degrees):
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return [(x * c - y * s, x * s + y * c) for x, y in points]


def inside_spans(points, y):
    cuts = []
    for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1]):
        if (y0 <= y) != (y1 <= y):
            cuts.append(x0 + (y - y0) / (y1 - y0) * (x1 - x0))
    cuts.sort()
    return list(zip(cuts[::2], cuts[1::2]))


def raster(points, gap):
    """Rows of bits: cells that the part, grown by half the gap, may touch."""
    r = gap / 2
    points = [(x - min(p[0] for p in points) + r, y - min(p[1] for p in points) + r) for x, y in points]
    rows = math.ceil((max(p[1] for p in points) + r) / CELL)
    fine = [0] * rows
    for row in range(rows):
        for sub in range(5):
            y = (row + sub / 4) * CELL
            for a, b in inside_spans(points, y):
                first, last = math.floor(a / CELL), math.floor(b / CELL)
                fine[row] |= ((1 << (last - first + 1)) - 1) << first
    reach = math.ceil(r / CELL)
    grown = [0] * rows
    for dy in range(-reach, reach + 1):
        wide = math.ceil(math.sqrt(max(0, r * r - max(0, (abs(dy) - 1) * CELL) ** 2)) / CELL)
        for row in range(rows):
            if 0 <= row + dy < rows:
                bits = fine[row]
                for dx in range(1, wide + 1):
                    bits |= (fine[row] << dx) | (fine[row] >> dx)
                grown[row + dy] |= bits
    return grown


def main():
    task = json.load(open(sys.argv[1], encoding="utf-8"))
    begun = time.time()
    columns = int((task["width"] - task["gap"]) / CELL)
    rows = int((task["height"] - task["gap"]) / CELL)
    parts = []
    for item in task["items"]:
        p = item["points"]
        area = abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(p, p[1:] + p[:1]))) / 2
        parts += [(area, [raster(turned(p, t), task["gap"]) for t in item["turns"]])] * item["count"]
    parts.sort(key=lambda part: -part[0])
    sheets = []

    def lay(grid, turns):
        best = None
        for shape in turns:
            width = max(bits.bit_length() for bits in shape)
            for y in range(rows - len(shape) + 1):
                if best and y > best[0]:
                    break
                x = next((x for x in range(columns - width + 1) if not any((bits << x) & grid[y + i] for i, bits in enumerate(shape))), None)
                if x is not None:
                    if not best or (y, x) < best[:2]:
                        best = (y, x, shape)
                    break
        if best:
            for i, bits in enumerate(best[2]):
                grid[best[0] + i] |= bits << best[1]
        return best

    for _, turns in parts:
        for sheet in sheets:
            if lay(sheet, turns):
                break
        else:
            sheets.append([0] * rows)
            lay(sheets[-1], turns)
    top = max(i + 1 for i, bits in enumerate(sheets[-1]) if bits) * CELL
    print(f"bottom-left fill: {len(sheets)} sheets, the last used up to {top:.1f} mm, {time.time() - begun:.1f} s")
    ours = task["ours"]
    print(f"ours: {ours['sheets']} sheets, the last used up to {ours['top_mm']:.1f} mm; fewer than {ours['least_sheets']} are impossible")
    return 0 if (ours["sheets"], ours["top_mm"]) <= (len(sheets), top) else 1


sys.exit(main())
