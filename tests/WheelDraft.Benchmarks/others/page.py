#!/usr/bin/python3
"""Writes RESULTS.md and its curves from what results.sh measured.

Usage: page.py FOLDER PAGE.md CURVES
FOLDER holds machine.txt (a line "what: value" each), rows.jsonl (the lines of the comparing scripts), bench/NUMBER-NAME.txt (what each benchmark printed)
and processes/NUMBER-NAME.txt (the scripts of whole processes). The page goes to PAGE.md, curves as SVG into the folder CURVES, whose old ones go. Exit status 1
when a comparison disagreed, which the page says too.
"""
import json
import pathlib
import re
import sys

import curves

PROMISE = re.compile(r" ?\(((?:all three )?(?:promised|at most|at least) [^()]*)\)")
POINT = re.compile(r"([\d,]+) in ([\d.,]+) (ms|s)\b")
CREEPAGE = re.compile(r"^creepage, ([\d,]+) conductors (among [\d,]+ walls): ([\d.]+) s")
CIRCUIT = re.compile(r"^circuit: .*?([\d,]+) states: .*?([\d.]+) s of processor")
QUIET = 0.25
BUSY = "**The machine was busy with other work.** Wall times and medians below are longer than they should be; processor times and ratios of them count."
MS = {"ms": 1, "s": 1000}


def whole(text):
    return int(text.replace(",", ""))


def of_sizes(lines):
    """Curves of the lines that give sizes and times one after the other: "WHAT: N in T ms, N in T ms"."""
    found = []
    for line in (PROMISE.sub("", line) for line in lines):
        points = [(whole(n), float(t.replace(",", "")) * MS[unit]) for n, t, unit in POINT.findall(line)]
        if len(points) > 1 and all(n > 0 and t > 0 for n, t in points):
            found.append((line[:POINT.search(line).start()].removeprefix("sizes:").strip(" :"), points))
    return found


def of_creepage(lines):
    """Curves of the lines of creepage: a line a size, one curve for each number of walls."""
    found = {}
    for match in filter(None, map(CREEPAGE.match, lines)):
        found.setdefault(match[2], []).append((whole(match[1]), float(match[3]) * 1000))
    return [(f"conductors {name}", sorted(points)) for name, points in found.items() if len(points) > 1]


def of_circuit(lines):
    """The circuit's proof with all single faults: times over states; what came last is another circuit when it has fewer states or as many."""
    points = []
    for match in filter(None, map(CIRCUIT.match, lines)):
        size, ms = whole(match[1]), float(match[2]) * 1000
        if ms > 0 and (not points or size > 1.5 * points[-1][0]):
            points.append((size, ms))
    return [("all states, all single faults", points)] if len(points) > 1 else []


def of_rows(rows, curve):
    """Ours and the others' times over size, of the rows that belong to a curve."""
    rows = [row for row in rows if row.get("curve") == curve]
    ours = sorted({row["size"]: row["ours_ms"] for row in rows}.items())
    others = {}
    for row in rows:
        others.setdefault(row["series"], []).append((row["size"], row["other_ms"]))
    return [("WheelDraft", ours), *((name, sorted(points)) for name, points in others.items())] if ours else []


def drawings(rows, lines):
    """File name, title, axis, curves: those that there are points for."""
    made = [
        ("sizes", "Growth of the program's work with the size of a timer", "size (what each line counts)", of_sizes(lines)),
        ("creepage", "Creepage paths", "conductors", of_creepage(lines)),
        ("proof", "The circuit's proof", "states", of_circuit(lines)),
        ("circuit", "All states of a circuit without faults", "states", of_rows(rows, "circuit")),
        ("drawing", "A foreign drawing read and measured, whole processes", "lines in the drawing", of_rows(rows, "drawing")),
    ]
    return [m for m in made if m[3]]


def time_words(ms):
    if ms >= 1000:
        return f"{ms / 1000:.2f} s"
    return f"{ms:.0f} ms" if ms >= 100 else f"{ms:.1f} ms" if ms >= 1 else f"{ms:.3f} ms"


def cell(text):
    return text.replace("|", "\\|")


def comparisons(rows):
    yield "| what | ours | theirs | by | times as fast | results | how measured |"
    yield "|---|--:|--:|---|--:|---|---|"
    for row in rows:
        ratio = row["other_ms"] / row["ours_ms"]
        agrees = "agree" if row["agrees"] else "**differ**: " + "; ".join(row["disagreements"])
        yield "| " + " | ".join(map(cell, [row["what"], time_words(row["ours_ms"]), time_words(row["other_ms"]), row["other"], f"{ratio:.1f}" if ratio < 100 else f"{ratio:.0f}", agrees, row["how"]])) + " |"


def growth(made, folder):
    for name, title, across, series in made:
        yield f"\n![{title}: time over size, both logarithmic]({folder}/{name}.svg)\n"
        yield f"| {title} | times | between neighbours | over all |"
        yield "|---|---|---|--:|"
        for what, points in series:
            steps = [f"{curves.exponent(pair):.1f}" for pair in zip(points, points[1:])]
            yield f"| {cell(what)} | {', '.join(f'{n:,} in {time_words(t)}' for n, t in points)} | {', '.join(f'n^{s}' for s in steps)} | n^{curves.exponent(points):.1f} |"


def promises(files):
    for file in files:
        yield f"\n### {file.stem.split('-', 1)[1]}\n"
        yield "| measured | promised |"
        yield "|---|---|"
        for line in filter(None, map(str.strip, file.read_text(encoding="utf-8").splitlines())):
            said = "; ".join(words.removeprefix("promised ") for words in PROMISE.findall(line))
            yield f"| {cell(PROMISE.sub('', line))} | {cell(said)} |"


def page(folder, rows, made, curve_folder):
    machine = dict(line.split(": ", 1) for line in (folder / "machine.txt").read_text(encoding="utf-8").splitlines())
    yield "# Results\n"
    yield "What WheelDraft's speed is, measured against other ways to do the same work, made by one command (`tests/WheelDraft.Benchmarks/results.sh`) in one run on one machine.\n"
    yield "| machine | |"
    yield "|---|---|"
    yield from (f"| {cell(k)} | {cell(v)} |" for k, v in machine.items())
    if float(machine.get("load before, mean of a minute", "0")) > QUIET * float(machine["cores"]):
        yield "\n" + BUSY
    yield "\n## Against other ways\n"
    yield "Each figure is the least of several runs, where the last column does not say one run. Times are processor time, of all threads together, so that other work on the machine counts little; where whole"
    yield "processes are meant, theirs from start to end. Inputs are read before the clock starts, and the results of both sides are compared before a ratio is printed. The"
    yield "scripts are in [others](others) and beside this page; the head of each says what is timed and how it was made as quick as its library allows.\n"
    yield from comparisons(rows)
    yield "\n## Growth"
    yield "\nHow times grow with the size of the work. The exponent over all is the slope through all points by least squares, on logarithms."
    yield from growth(made, curve_folder)
    yield "\n## Every benchmark and its promise"
    yield "\nAs the benchmark program prints them, a process for each name. What has no promise is there to be watched."
    yield from promises(sorted((folder / "bench").glob("*.txt")))
    yield "\n## Whole processes"
    yield "\nWall time of the published program: its start against an empty program of the same run-time, and a long bench log against counting its lines."
    yield from promises(sorted((folder / "processes").glob("*.txt")))


def main():
    folder, to, into = map(pathlib.Path, sys.argv[1:4])
    rows = [json.loads(line) for line in (folder / "rows.jsonl").read_text(encoding="utf-8").splitlines()]
    lines = [line for file in sorted((folder / "bench").glob("*.txt")) for line in file.read_text(encoding="utf-8").splitlines()]
    made = drawings(rows, lines)
    into.mkdir(exist_ok=True)
    for old in into.glob("*.svg"):
        old.unlink()
    for name, title, across, series in made:
        (into / f"{name}.svg").write_text(curves.picture(title, across, "processor time, ms", series), encoding="utf-8")
    to.write_text("\n".join(page(folder, rows, made, into.name)) + "\n", encoding="utf-8")
    wrong = [row["what"] for row in rows if not row["agrees"]]
    print(f"{to.name}: {len(rows)} comparisons, {len(made)} pictures" + (f"; results differ: {'; '.join(wrong)}" if wrong else ""))
    sys.exit(1 if wrong else 0)


main()
