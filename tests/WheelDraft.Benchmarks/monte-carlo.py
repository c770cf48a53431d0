#!/usr/bin/python3
"""The draws of on-times and starts in plain NumPy, against the program's.

Usage: monte-carlo.py BENCHMARKS
BENCHMARKS is the built benchmark program (tests/WheelDraft.Benchmarks/bin/Release/net10.0/WheelDraft.Benchmarks). It is run
with monte-carlo-json, which gives the inputs of ten on-periods, what a million draws of each came to, and how long they took.
Here the same model is drawn with NumPy, one array operation after the other, imports and reading left out of the time; mean,
standard deviation and quantiles are compared, and the times. Exit status 1 when anything disagrees by more than chance
allows (five standard errors), or when the program is less than twenty times as fast. The last line is JSON, for the page of results.

The formulas are those of the definitions: a corner at (x, y) from the axis leaves the line n.p = d when the wiper's radius is
atan2(y, x) + acos(d / R) from the normal; the last corner decides; a disc leaves as its centre leaves d + radius.
"""
import json
import math
import pathlib
import subprocess
import sys
import time

import numpy as np

sys.path.insert(0, str(pathlib.Path(__file__).parent / "others"))

from measuring import Findings  # noqa: E402

QUANTILES = [0.00135, 0.025, 0.5, 0.975, 0.99865]
TIMES_FASTER = 20
ERRORS = 5
BINS = 8192

# The normal law that, cut off at its limits, has a third of them as its standard deviation.
PARENT = 0.33846232835093715


def normal(rng, draws):
    x = rng.standard_normal(draws) * PARENT
    beyond = np.abs(x) > 1
    while beyond.any():
        x[beyond] = rng.standard_normal(int(beyond.sum())) * PARENT
        beyond = np.abs(x) > 1
    return x


def later(p, end, play, out, wear):
    """How much later the patch leaves the edge than nominally, rad."""
    offset = p[end + "_offset_mm"]

    def moment(play, out, wear):
        half = p["half_length_mm"] + wear * (p["worn_half_length_mm"] - p["half_length_mm"])
        x0 = p["radius_mm"] + play
        if p["disc"]:
            return -np.arccos((offset + half + out) / x0)
        sense = 1 if p["clockwise"] else -1
        sense *= 1 if end == "break" else -1
        cos, sin = math.cos(p["angle_rad"]), math.sin(p["angle_rad"])
        last = None
        for along in (-1, 1):
            for across in (-1, 1):
                x = x0 + along * p["half_width_mm"] * cos - across * half * sin
                y = sense * (along * p["half_width_mm"] * sin + across * half * cos)
                at = -np.arctan2(y, x) - np.arccos((offset + out) / np.hypot(x, y))
                last = at if last is None else np.maximum(last, at)
        return last

    return moment(play, out, wear) - moment(0.0, 0.0, 0.0)


def drawn(p, draws, rng):
    t, e, s = p["cut_mm"], p["centre_mm"], p["play_mm"]
    way = rng.uniform(-math.pi, math.pi, draws)
    apart = p["break_normal_rad"] + p["make_normal_rad"]
    wear = rng.random(draws)
    speed = 2 * math.pi / p["turn_s"] * (1 + p["frequency"] * normal(rng, draws))
    make_play = s * normal(rng, draws)
    sooner = later(p, "make", make_play, t * normal(rng, draws) + e * np.cos(way - apart), wear)
    off = later(p, "break", s * normal(rng, draws), t * normal(rng, draws) + e * np.cos(way), wear)
    on = np.maximum(0, p["sweep_rad"] + sooner + off) / speed
    lag = p["placing_mm"] * normal(rng, draws) / (p["radius_mm"] + make_play) + p["backlash_rad"] * (1 + normal(rng, draws)) / 2
    return on, (p["start_rad"] - sooner + lag) / speed


def figures(values):
    return values.mean(), values.std(ddof=1), np.quantile(values, QUANTILES)


def main():
    given = json.loads(subprocess.run([sys.argv[1], "monte-carlo-json"], check=True, stdout=subprocess.PIPE).stdout)
    draws = given["draws"]
    rng = np.random.default_rng(1)
    begin, busy = time.perf_counter(), time.process_time()
    found = [[(v, figures(v)) for v in drawn(p, draws, rng)] for p in given["periods"]]
    took, busy = time.perf_counter() - begin, time.process_time() - busy
    bad = 0
    for i, (p, both) in enumerate(zip(given["periods"], found)):
        for name, (values, (mean, deviation, quantiles)) in zip(("on", "start"), both):
            theirs = p[name]
            error = deviation * math.sqrt(2 / draws)
            if abs(mean - theirs["mean"]) > ERRORS * error or abs(deviation - theirs["deviation"]) > ERRORS * error:
                bad += 1
                print(f"{i} {name}: mean {mean} against {theirs['mean']}, deviation {deviation} against {theirs['deviation']}")
            spread = values.max() - values.min()
            for q, mine, other in zip(QUANTILES, quantiles, theirs["quantiles"]):
                near = np.mean(np.abs(values - mine) < deviation / 50) / (deviation / 25)
                allowed = ERRORS * math.sqrt(2 * q * (1 - q) / draws) / near + 4 * spread / BINS
                if abs(mine - other) > allowed:
                    bad += 1
                    print(f"{i} {name}: quantile {q} {mine} against {other}, {allowed} allowed")
    ratio = took / given["seconds"]
    count = len(given["periods"])
    print(f"{count} on-periods, {draws} draws each: NumPy {took:.2f} s, the program {given['seconds']:.3f} s: {ratio:.1f} times (at least {TIMES_FASTER}); {bad} figures disagree")
    print(f"processor time, all cores together: NumPy {busy:.2f} s, the program {given['processor_seconds']:.3f} s: {busy / given['processor_seconds']:.1f} times")
    findings = Findings()
    findings.expect(bad == 0, f"{bad} figures disagree by more than chance allows")
    findings.tell(f"draws: {draws:,} of each of {count} on-periods", given["processor_seconds"] * 1000, busy * 1000, f"NumPy {np.__version__}", "processor time in the process; ours is a mean of runs, NumPy's one run")
    return 1 if bad or ratio < TIMES_FASTER else 0


if __name__ == "__main__":
    sys.exit(main())
