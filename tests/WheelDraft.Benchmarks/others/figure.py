#!/usr/bin/python3
"""The demo's timing chart drawn by matplotlib at the same size and resolution, against the program's.

Usage: figure.py OURS.json [PICTURE.png]
OURS.json is what the benchmark program writes with compare-json: the rows of the chart with their bars. Timed are the figure, its axes in seconds and
degrees, headings, bars with their words, hatching and whiskers of the worst case, legend, and the PNG, with the Agg canvas itself rather than pyplot and
without any tight layout, which would draw twice; fonts are found and read before. The program draws more on its sheet: frame, title block, table of
on-periods, notes and caution; none of that is asked of matplotlib. Compared are the size in pixels, a pixel of rounding aside, and every stretch of every
row that is wide enough to be told from its edges: coloured where the program has a bar, paper where it has none.
"""
import base64
import io
import json
import pathlib
import sys

import matplotlib
import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import Patch
from PIL import Image

from measuring import Findings, least_ms

COLOURS = [("#f1ca73", ""), ("#f6e08a", ""), ("#f6e08a", "//"), ("#d3e3c8", "xx"), ("#c9b8d6", "")]
BAR = 0.62


def looks(rows):
    """A colour and a hatching for each meaning, in order of appearance."""
    meanings = list(dict.fromkeys(bar["state"] for row in rows for bar in row["bars"]))
    return dict(zip(meanings, COLOURS))


def parts(bar, turn):
    """A bar as stretches within the turn: one that runs through home is two."""
    end = bar["from_s"] + bar["for_s"]
    return [(bar["from_s"], min(end, turn) - bar["from_s"])] + ([(0, end - turn)] if end > turn + 1e-9 else [])


def draw(given):
    rows, turn = given["rows"], given["turn_s"]
    styles = looks(rows)
    figure = Figure(figsize=(given["width_mm"] / 25.4, given["height_mm"] / 25.4), dpi=given["dpi"])
    FigureCanvasAgg(figure)
    axes = figure.add_axes((0.2, 0.3, 0.72, 0.55))
    heading = None
    for y, row in enumerate(rows):
        if row["heading"] != heading:
            heading = row["heading"]
            axes.text(-0.24, y - 0.45, heading, transform=axes.get_yaxis_transform(), fontsize=8, fontweight="bold", va="bottom")
        for bar in row["bars"]:
            colour, hatch = styles[bar["state"]]
            axes.broken_barh(parts(bar, turn), (y - BAR / 2, BAR), facecolor=colour, edgecolor="black", linewidth=0.7, hatch=hatch)
            if bar["words"]:
                axes.text(bar["from_s"] + bar["for_s"] / 2, y, bar["words"], fontsize=6, ha="center", va="center", clip_on=True)
            for span in ("make_s", "break_s"):
                if span in bar:
                    axes.plot(bar[span], (y + BAR / 2 + 0.08,) * 2, color="#a36186", linewidth=1, marker="|", markersize=4)
    axes.set_xlim(0, turn)
    axes.set_ylim(len(rows) - 0.4, -0.8)
    axes.set_yticks(range(len(rows)), [row["name"] for row in rows], fontsize=8)
    axes.set_xlabel("time from home, s")
    axes.grid(axis="x", linewidth=0.4, color="#b8b8b8")
    axes.set_axisbelow(True)
    degrees = axes.secondary_xaxis("top", functions=(lambda s: s / turn * 360, lambda d: d / 360 * turn))
    degrees.set_xlabel("programme angle from home, °")
    degrees.set_xticks(range(0, 361, 30))
    figure.suptitle(given["title"], fontsize=11)
    figure.legend(handles=[Patch(facecolor=c, hatch=h, edgecolor="black", label=m) for m, (c, h) in styles.items()], loc="lower left", bbox_to_anchor=(0.1, 0.2), ncol=2, fontsize=8)
    out = io.BytesIO()
    figure.savefig(out, format="png", dpi=given["dpi"])
    return figure, axes, out.getvalue()


def covered(row, turn, s):
    return any(a <= s <= a + length for bar in row["bars"] for a, length in parts(bar, turn))


def check_bars(given, axes, pixels, findings):
    """Looks at the picture beside the middle of each bar and gap, above its words."""
    turn = given["turn_s"]
    for y, row in enumerate(given["rows"]):
        cuts = sorted({0, turn, *(e for bar in row["bars"] for a, length in parts(bar, turn) for e in (a, a + length))})
        for a, b in zip(cuts, cuts[1:]):
            # A narrow stretch has no pixel that no line touches.
            left, right = (axes.transData.transform((s, y - BAR / 2))[0] for s in (a, b))
            if right - left < 8:
                continue
            _, high = axes.transData.transform((0, y - BAR / 2 + 0.1))
            band = pixels[len(pixels) - 1 - round(high), round(left) + 3:round(right) - 2].astype(int)
            share = (band.max(axis=1) - band.min(axis=1) > 8).mean() if band.size else 0
            wanted = covered(row, turn, (a + b) / 2)
            findings.expect((share > 0.5) == wanted, f"{row['name']}: {a:.1f} s to {b:.1f} s is {share:.0%} coloured")


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        given = json.load(file)["figure"]
    findings = Findings()
    _, axes, made = draw(given)
    if len(sys.argv) > 2:
        pathlib.Path(sys.argv[2]).write_bytes(made)
    with Image.open(io.BytesIO(made)) as picture, Image.open(io.BytesIO(base64.b64decode(given["png"]))) as ours:
        findings.expect(np.abs(np.subtract(picture.size, ours.size)).max() <= 1, f"{picture.size} pixels are not {ours.size}")
        check_bars(given, axes, np.asarray(picture.convert("RGB")), findings)
    other = least_ms(lambda: draw(given)[2])
    findings.tell(f"a figure: the demo's timing chart at {given['dpi']:g} dpi, drawn and painted", given["processor_ms"], other, f"matplotlib {matplotlib.__version__}, Agg", f"processor time in the process; ours with frame, table and notes; files of {len(base64.b64decode(given['png'])) // 1024:,} KiB against {len(made) // 1024:,} KiB")
    findings.exit()


main()
