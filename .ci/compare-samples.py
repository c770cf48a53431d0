#!/usr/bin/python3
"""Compares two folders file by file: compare-samples.py MADE SAMPLES

Texts must be the same bytes. PNG and PDF are promised to be the same on one platform only; where their bytes differ, what
they show is compared instead, and this is said.
"""
import hashlib
import json
import pathlib
import subprocess
import sys
import tempfile
import zlib

MANIFEST = "manifest.json"
ALIKE = 24  # levels of 255 by which renderers on two processors may differ at an edge
SHARE = 1e-3  # of all pixels may differ by more


def png_rows(data):
    """Width in bytes and the unfiltered bytes of a 24-bit PNG without interlacing (PNG specification, chapter 9)."""
    width = int.from_bytes(data[16:20], "big")
    if data[24:29] != bytes([8, 2, 0, 0, 0]):
        raise ValueError("not a 24-bit PNG")
    packed, at = b"", 8
    while at < len(data):
        length = int.from_bytes(data[at:at + 4], "big")
        if data[at + 4:at + 8] == b"IDAT":
            packed += data[at + 8:at + 8 + length]
        at += length + 12
    raw, step = zlib.decompress(packed), 3 * width
    above, rows = bytearray(step), []
    for start in range(0, len(raw), step + 1):
        kind, row = raw[start], bytearray(raw[start + 1:start + 1 + step])
        for i in range(step):
            left = row[i - 3] if i >= 3 else 0
            corner = above[i - 3] if i >= 3 else 0
            if kind == 1:
                row[i] = (row[i] + left) & 255
            elif kind == 2:
                row[i] = (row[i] + above[i]) & 255
            elif kind == 3:
                row[i] = (row[i] + (left + above[i]) // 2) & 255
            elif kind == 4:
                guess = left + above[i] - corner
                best = min((abs(guess - left), 0, left), (abs(guess - above[i]), 1, above[i]), (abs(guess - corner), 2, corner))
                row[i] = (row[i] + best[2]) & 255
        rows.append(bytes(row))
        above = row
    return step, b"".join(rows)


def shown(path):
    """What a file shows, as (bytes a row, bytes) for each page."""
    if path.suffix == ".png":
        return [png_rows(path.read_bytes())]
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["pdftoppm", "-r", "100", str(path), folder + "/p"], check=True)
        return [(0, page.read_bytes()) for page in sorted(pathlib.Path(folder).iterdir())]


def shows_the_same(a, b):
    first, second = shown(a), shown(b)
    if [(s, len(d)) for s, d in first] != [(s, len(d)) for s, d in second]:
        return False
    far = sum(abs(x - y) > ALIKE for (_, p), (_, q) in zip(first, second) for x, y in zip(p, q))
    return far <= SHARE * sum(len(d) for _, d in first)


def manifest_faults(made, names):
    """What the manifest of a made folder says wrongly: it holds hashes of pictures, so it is no sample itself."""
    manifest = json.loads((made / MANIFEST).read_text())
    faults = [] if manifest["complete"] and sorted(manifest["files"]) == names else ["the manifest does not list what was made"]
    return faults + [f"{n}: not the hash of the manifest" for n in names if [hashlib.sha256((made / n).read_bytes()).hexdigest()] != manifest["files"].get(n)]


def main():
    made, samples = map(pathlib.Path, sys.argv[1:3])
    names = [sorted(p.relative_to(root).as_posix() for p in root.rglob("*") if p.is_file() and p.name != MANIFEST) for root in (made, samples)]
    faults = manifest_faults(made, names[0])
    faults += [f"{n}: made, but no sample" for n in names[0] if n not in names[1]]
    faults += [f"{n}: a sample that is not made" for n in names[1] if n not in names[0]]
    for name in sorted(set(names[0]) & set(names[1])):
        a, b = made / name, samples / name
        if a.read_bytes() == b.read_bytes():
            continue
        if a.suffix in (".png", ".pdf") and shows_the_same(a, b):
            print(f"{name}: other bytes, shows the same (another platform)")
        else:
            faults.append(f"{name}: differs from the sample")
    print("\n".join(faults) if faults else f"{len(names[1])} files are the same")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
