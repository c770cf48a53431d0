#!/usr/bin/python3
"""The demo's sheets painted as PNG by librsvg's rsvg-convert, against the program's painter.

Usage: png.py OURS.json
OURS.json is what the benchmark program writes with compare-json: every sheet as SVG, its letters drawn as strokes, so that both sides paint the
same lines and neither asks for a font. rsvg-convert runs once a sheet at the same resolution; of its processor time that of `rsvg-convert --version`
is taken off, a start for each sheet. Compared are the pixels: the same width and height, a mean difference of grey of at most one in 255 (both smooth
edges, each in its own way), and, both made half as wide and high, at most one pixel in 100,000 that differs by more than a quarter of the range.
"""
import base64
import io
import json
import pathlib
import sys
import tempfile

import numpy as np
from PIL import Image

from measuring import Findings, process_ms

MEAN = 1
FAR = 64
SHARE_FAR = 1e-5


def grey(data):
    with Image.open(io.BytesIO(data)) as picture:
        if "A" in picture.getbands():
            paper = Image.new("RGBA", picture.size, "white")
            picture = Image.alpha_composite(paper, picture.convert("RGBA"))
        return picture.convert("L")


def compare(name, ours, theirs, findings):
    a, b = grey(ours), grey(theirs)
    findings.expect(a.size == b.size, f"{name}: {b.size} pixels are not {a.size}")
    if a.size == b.size:
        mean = np.abs(np.asarray(a, dtype=int) - np.asarray(b, dtype=int)).mean()
        findings.expect(mean <= MEAN, f"{name}: grey differs by {mean:.2f} of 255 in the mean")
        small = [np.asarray(p.resize((p.width // 2, p.height // 2), Image.BOX), dtype=int) for p in (a, b)]
        share = (np.abs(small[0] - small[1]) > FAR).mean()
        findings.expect(share <= SHARE_FAR, f"{name}: {share:.4%} of the pixels differ by more than {FAR}")


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        ours = json.load(file)["png"]
    dpi = f"{ours['dpi']:g}"
    findings = Findings()
    start, version = process_ms(["rsvg-convert", "--version"], rounds=10)
    other, sizes = 0, [0, 0]
    with tempfile.TemporaryDirectory() as folder:
        for sheet in ours["sheets"]:
            svg, png = pathlib.Path(folder, sheet["name"] + ".svg"), pathlib.Path(folder, sheet["name"] + ".png")
            svg.write_text(sheet["svg"], encoding="utf-8")
            ms, _ = process_ms(["rsvg-convert", "-d", dpi, "-p", dpi, "-o", str(png), str(svg)], rounds=3)
            other += ms - start
            both = base64.b64decode(sheet["png"]), png.read_bytes()
            sizes = [size + len(data) for size, data in zip(sizes, both)]
            compare(sheet["name"], *both, findings)
    library = "librsvg, rsvg-convert " + version.decode().split()[-1]
    findings.tell(f"PNG: all {len(ours['sheets'])} sheets of the demo at {dpi} dpi", ours["processor_ms"], other, library, f"processor time: ours in the process, theirs of the whole process less its start; letters as strokes in both; files of {sizes[0] // 1024:,} KiB against {sizes[1] // 1024:,} KiB")
    findings.exit()


main()
