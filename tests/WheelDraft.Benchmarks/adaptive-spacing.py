#!/usr/bin/python3
"""The clearances of a design certain to a micrometre with shapely: intervals of the turn halved until no better place can hide in them.

Usage: adaptive-spacing.py REPORT.json PROGRAM PARAMETERS.toml
The third way beside the two of sampled-spacing.py, whose head says what is compared and left out, and the only one of them that proves its figures. For
each two nets, over all of their pairs at once, the interval with the least lower bound is looked at first (a heap):
- rings about the shaft and levels bound a pair over the whole turn, before anything is turned;
- a distance changes by at most r per radian, r the farther reach of the two from the shaft that is nearer (either may be thought to turn);
- boxes of the turned corners reject a place before shapely measures it; corners are turned by NumPy, once for each solid and angle;
- an interval whose bound is within a micrometre of the best found, or above it, is done with. Else it is halved.
Arcs are flattened to 0.2 micrometres, so that rings are as wide as in truth, and most pairs are proved by the first place found.
The processor time of it, reading and imports left out, is held against that of `PROGRAM check PARAMETERS.toml`, the whole process, which does much else.
"""
import heapq
import importlib.util
import itertools
import json
import math
import pathlib
import sys
import time

import numpy as np
import shapely
from shapely.geometry import Polygon

HERE = pathlib.Path(__file__).parent
sys.path.insert(0, str(HERE / "others"))

from measuring import Findings, process_ms  # noqa: E402

CERTAIN_MM = 1e-3
CHORD_MM = 2e-4


def sampling():
    """sampled-spacing.py as a module: its solids, pairs and bounds."""
    at = importlib.util.spec_from_file_location("sampling", HERE / "sampled-spacing.py")
    module = importlib.util.module_from_spec(at)
    at.loader.exec_module(module)
    module.CHORD_MM = CHORD_MM
    return module


class Turned:
    """Solids at angles, each made once."""

    def __init__(self, sense):
        self.sense = sense
        self.boxes = {}
        self.shapes = {}

    def corners(self, solid, angle):
        cos, sin = math.cos(self.sense * angle), math.sin(self.sense * angle)
        return [np.asarray(ring.coords) @ ((cos, sin), (-sin, cos)) for ring in (solid.shape.exterior, *solid.shape.interiors)]

    def box(self, solid, angle):
        key = id(solid), angle
        if key not in self.boxes:
            outer = self.corners(solid, angle)[0]
            self.boxes[key] = (*outer.min(axis=0), *outer.max(axis=0))
        return self.boxes[key]

    def shape(self, solid, angle):
        key = id(solid), angle
        if key not in self.shapes:
            rings = self.corners(solid, angle)
            self.shapes[key] = Polygon(rings[0], rings[1:])
        return self.shapes[key]


def box_gap(a, b):
    return math.hypot(max(0, a[0] - b[2], b[0] - a[2]), max(0, a[1] - b[3], b[1] - a[3]))


def least(pairs, turned):
    """The least distance of all pairs of two nets, and how many places were measured."""
    best, looks, order = math.inf, 0, itertools.count()
    heap = []
    for level, ring, box, a, b in pairs:
        bound = math.hypot(level, box if a.turns == b.turns else ring)
        heapq.heappush(heap, (bound, next(order), level, bound, a, b, math.pi, math.pi))
    while heap:
        bound, _, level, over_turn, a, b, at, half = heapq.heappop(heap)
        if bound >= best - CERTAIN_MM:
            break
        if a.turns == b.turns:
            best, looks = min(best, math.hypot(level, a.shape.distance(b.shape))), looks + 1
            continue
        reach = half * min(a.outer, b.outer)
        gap = box_gap(turned.box(a, at), b.shape.bounds)
        if math.hypot(level, max(0, gap - reach)) >= best - CERTAIN_MM:
            continue
        if math.hypot(level, gap) < best:
            gap, looks = turned.shape(a, at).distance(b.shape), looks + 1
            best = min(best, math.hypot(level, gap))
        below = max(over_turn, math.hypot(level, max(0, gap - reach)))
        for side in (-1, 1):
            if below < best - CERTAIN_MM:
                heapq.heappush(heap, (below, next(order), level, over_turn, a, b, at + side * half / 2, half / 2))
    return best, looks


def found(report, rows):
    """The least distance for each two nets."""
    module = sampling()
    solids = [module.Solid(entry) for entry in report["solids"]]
    turned = Turned(-1 if report["motion"]["direction"] == "clockwise" else 1)
    by_nets = {nets: [] for nets in rows}
    for nets, level, a, b in module.pairs_of(solids, rows):
        by_nets[nets].append((level, max(0, a.inner - b.outer, b.inner - a.outer), module.box_gap(a.shape, b.shape), a, b))
    return {nets: least(pairs, turned) for nets, pairs in by_nets.items()}


def main():
    report_file, program, parameters = sys.argv[1:4]
    with open(report_file, encoding="utf-8") as file:
        report = json.load(file)
    rows = {tuple(sorted(r["between"])): r["nominal_mm"] for r in report["spacing"] if r["kind"] == "clearance"}
    other = math.inf
    for _ in range(3):
        begin = time.process_time()
        result = found(report, rows)
        other = min(other, (time.process_time() - begin) * 1000)
    exact, _ = process_ms([program, "check", parameters], rounds=7, allowed=(0, 1))
    findings = Findings()
    # Chords, on either solid, and what certain means on both sides.
    allowed = 2 * CHORD_MM + 2 * CERTAIN_MM
    for nets, nominal in sorted(rows.items()):
        findings.expect(abs(result[nets][0] - nominal) <= allowed, f"{nets[0]} to {nets[1]}: {nominal:.4f} mm in the report, {result[nets][0]:.4f} mm here")
    looks = sum(looks for _, looks in result.values())
    findings.tell("spacing: every clearance certain to 1 µm", exact, other, f"shapely {shapely.__version__}, adaptive, {looks:,} places measured", "processor time: ours of the whole process of check, theirs of the search alone")
    findings.exit()


main()
