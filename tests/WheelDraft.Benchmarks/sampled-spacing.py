#!/usr/bin/python3
"""What sampling would cost: the clearances of a design found by trying every 0.1 degrees of the turn, with shapely.

Usage: sampled-spacing.py REPORT.json PROGRAM PARAMETERS.toml
Times itself (reading and imports left out) against `PROGRAM check PARAMETERS.toml` (the whole process), prints the ratio,
and compares its least clearances with the report's, from above and from below. Exit status 1 when it is less than 20 times
slower or disagrees. Arcs are flattened to 0.01 mm here, and a sampled angle is never a bound: the report's figures are exact.

It samples twice, and both must give the same figures:
- plainly: every pair of solids of which one turns, at each of the 3600 steps; pairs of which both stand or both turn are
  always as far apart, so they are taken once. This is what the ratio is about.
- with care: a pair whose levels, boxes or rings about the shaft are already further apart than the least distance found for
  its two nets cannot lower it and is passed over; pairs near in level come first. Its time is printed beside the other: it
  is what a sampler gains that knows as much of the motion as the program does, and still no bound.
The nose of a contact, which stands on the copper face itself, is left out against the wheel's copper, as in the report: there
the rules of an open contact judge it. Ribs are not known here, so a design with clearances over ribs must not be given.
The last two lines are JSON, for the page of results, in processor time.
"""
import itertools
import json
import math
import pathlib
import subprocess
import sys
import time

import shapely
from shapely.affinity import rotate
from shapely.geometry import Point, Polygon

sys.path.insert(0, str(pathlib.Path(__file__).parent / "others"))

from measuring import Findings, process_ms  # noqa: E402

STEP_DEG = 0.1
CHORD_MM = 0.01
SHAFT = Point(0, 0)


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


def radii(shape):
    """Least and greatest distance from the shaft of all points of a polygon."""
    return shape.distance(SHAFT), max(math.hypot(x, y) for x, y in shape.exterior.coords)


class Solid:
    def __init__(self, entry):
        self.net = entry["net"]
        self.turns = entry["turns"]
        self.low, self.high = entry["z_mm"]
        self.shape = Polygon(flat(entry["outline"]), [flat(hole) for hole in entry["holes"]])
        self.inner, self.outer = radii(self.shape)

    @property
    def is_nose(self):
        return not self.turns and abs(self.low) < 1e-6


def level_gap(a, b):
    return max(0, a.low - b.high, b.low - a.high)


def box_gap(a, b):
    (x1, y1, x2, y2), (u1, v1, u2, v2) = a.bounds, b.bounds
    return math.hypot(max(0, x1 - u2, u1 - x2), max(0, y1 - v2, v1 - y2))


def pairs_of(solids, rows):
    """Pairs of solids that count, nearest in level first: (nets, level gap, one, other)."""
    found = []
    for a, b in itertools.combinations(solids, 2):
        nets = tuple(sorted((a.net, b.net)))
        nose_on_wheel = (a.turns and b.is_nose) or (b.turns and a.is_nose)
        if a.net != b.net and nets in rows and not nose_on_wheel:
            found.append((nets, level_gap(a, b), a, b) if a.turns else (nets, level_gap(a, b), b, a))
    return sorted(found, key=lambda pair: pair[1])


def sample(solids, rows, sense, with_care):
    """Least distances by nets."""
    least = dict.fromkeys(rows, math.inf)

    def look(nets, level, a, b):
        if not with_care or math.hypot(level, box_gap(a, b)) < least[nets]:
            least[nets] = min(least[nets], math.hypot(level, a.distance(b)))

    pairs = pairs_of(solids, rows)
    turning = []
    for nets, level, a, b in pairs:
        if a.turns == b.turns:
            look(nets, level, a.shape, b.shape)
        else:
            turning.append((nets, level, a, b, math.hypot(level, max(0, a.inner - b.outer, b.inner - a.outer))))

    for step in range(round(360 / STEP_DEG)):
        turned = {}
        for nets, level, a, b, at_least in turning:
            if not with_care or at_least < least[nets]:
                if id(a) not in turned:
                    turned[id(a)] = rotate(a.shape, sense * step * STEP_DEG, origin=(0, 0))
                look(nets, level, turned[id(a)], b.shape)
    return least


def main():
    report_file, program, parameters = sys.argv[1:4]
    with open(report_file, encoding="utf-8") as file:
        report = json.load(file)
    sense = -1 if report["motion"]["direction"] == "clockwise" else 1
    rows = {tuple(sorted(r["between"])): r["nominal_mm"] for r in report["spacing"] if r["kind"] == "clearance"}

    begin, busy = time.perf_counter(), time.process_time()
    solids = [Solid(entry) for entry in report["solids"]]
    least = sample(solids, rows, sense, with_care=False)
    sampled, sampled_busy = time.perf_counter() - begin, time.process_time() - busy
    begin, busy = time.perf_counter(), time.process_time()
    careful = sample([Solid(entry) for entry in report["solids"]], rows, sense, with_care=True)
    with_care, care_busy = time.perf_counter() - begin, time.process_time() - busy

    times = []
    for _ in range(7):
        begin = time.perf_counter()
        subprocess.run([program, "check", parameters], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
        times.append(time.perf_counter() - begin)
    exact = sorted(times)[len(times) // 2]
    print(f"sampled every {STEP_DEG} degrees: {sampled:.2f} s; check: {exact * 1000:.1f} ms; {sampled / exact:.0f} times (at least 20)")
    print(f"with care: {with_care:.2f} s; {with_care / exact:.1f} times")

    # Chords cut corners by CHORD_MM on either solid; between two steps the rim moves by half a step from the nearer one.
    chords = 2 * CHORD_MM
    between = max((s.outer for s in solids if s.turns), default=0) * math.radians(STEP_DEG) / 2
    wrong = int(least != careful)
    for nets, nominal in sorted(rows.items()):
        agrees = nominal - chords <= least[nets] <= nominal + chords + between
        wrong += not agrees
        print(f"  {nets[0]} to {nets[1]}: {nominal:.3f} mm in the report, {least[nets]:.3f} mm sampled{'' if agrees else '  DISAGREES'}")
    findings = Findings()
    findings.expect(not wrong, f"{wrong} clearances disagree")
    check, _ = process_ms([program, "check", parameters], rounds=7, allowed=(0, 1))
    for name, busy in (("every pair at every step", sampled_busy), ("with care", care_busy)):
        findings.tell(f"spacing: sampled every {STEP_DEG}°, {name}; no bound", check, busy * 1000, f"shapely {shapely.__version__}", "processor time: ours of the whole process of check, theirs of the sampling alone, one run")
    sys.exit(1 if sampled < 20 * exact or wrong else 0)


if __name__ == "__main__":
    main()
