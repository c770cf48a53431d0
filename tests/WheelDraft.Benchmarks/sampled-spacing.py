#!/usr/bin/python3
"""What sampling would cost: every pair of nets of a design, every 0.1 degrees of the turn, with shapely.

Usage: sampled-spacing.py REPORT.json PROGRAM PARAMETERS.toml
Times itself (reading and imports left out) against `PROGRAM check PARAMETERS.toml` (the whole process), prints the ratio,
and compares its least clearances with the report's. Exit status 1 when it is less than 20 times slower or disagrees.
Arcs are flattened to 0.01 mm here, and a sampled angle is never a bound: the report's figures are exact.
"""
import itertools
import json
import math
import subprocess
import sys
import time

from shapely.affinity import rotate
from shapely.geometry import Polygon

STEP_DEG = 0.1
CHORD_MM = 0.01


def flat(ring):
    points = []
    for (x1, y1, bulge), (x2, y2, _) in zip(ring, ring[1:] + ring[:1]):
        points.append((x1, y1))
        if bulge:
            sweep = 4 * math.atan(bulge)
            cx = (x1 + x2) / 2 - (y2 - y1) * (1 - bulge * bulge) / (4 * bulge)
            cy = (y1 + y2) / 2 + (x2 - x1) * (1 - bulge * bulge) / (4 * bulge)
            r = math.hypot(x1 - cx, y1 - cy)
            parts = max(1, math.ceil(abs(sweep) / (2 * math.acos(max(0, 1 - CHORD_MM / r)))))
            start = math.atan2(y1 - cy, x1 - cx)
            points += [(cx + r * math.cos(start + sweep * k / parts), cy + r * math.sin(start + sweep * k / parts)) for k in range(1, parts)]
    return points


def main():
    report_file, program, parameters = sys.argv[1:4]
    with open(report_file, encoding="utf-8") as file:
        report = json.load(file)
    sense = -1 if report["motion"]["direction"] == "clockwise" else 1
    rows = {tuple(r["between"]): r["nominal_mm"] for r in report["spacing"] if r["kind"] == "clearance"}

    begin = time.perf_counter()
    solids = [(s["net"], s["turns"], s["z_mm"], Polygon(flat(s["outline"]), [flat(h) for h in s["holes"]])) for s in report["solids"]]
    least = {}
    for step in range(round(360 / STEP_DEG)):
        turned = [(net, z, rotate(shape, sense * step * STEP_DEG, origin=(0, 0)) if turns else shape) for net, turns, z, shape in solids]
        for (net1, z1, a), (net2, z2, b) in itertools.combinations(turned, 2):
            pair = tuple(sorted((net1, net2)))
            if net1 == net2 or pair not in rows:
                continue
            gap = math.hypot(a.distance(b), max(0, z1[0] - z2[1], z2[0] - z1[1]))
            least[pair] = min(gap, least.get(pair, math.inf))
    sampled = time.perf_counter() - begin

    times = []
    for _ in range(7):
        begin = time.perf_counter()
        subprocess.run([program, "check", parameters], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
        times.append(time.perf_counter() - begin)
    exact = sorted(times)[len(times) // 2]
    print(f"sampled every {STEP_DEG} degrees: {sampled:.2f} s; check: {exact * 1000:.1f} ms; {sampled / exact:.0f} times (at least 20)")
    wrong = 0
    for pair, nominal in sorted(rows.items()):
        # Noses are left out against the wheel's copper in the report, not here: the sample may only be smaller there.
        agrees = pair in least and least[pair] <= nominal + 0.05
        wrong += not agrees
        print(f"  {pair[0]} to {pair[1]}: {nominal:.3f} mm in the report, {least.get(pair, math.nan):.3f} mm sampled")
    sys.exit(1 if sampled < 20 * exact or wrong else 0)


main()
