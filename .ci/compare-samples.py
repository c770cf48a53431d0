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

from PIL import Image, ImageChops

MANIFEST = "manifest.json"
ALIKE = 24  # levels of 255 by which renderers on two processors may differ at an edge
SHARE = 1e-3  # of all pixels may differ by more


def pages(path):
    """The pictures that a file shows: one of a PNG, one of each page of a PDF."""
    if path.suffix == ".png":
        if path.read_bytes()[24:29] != bytes([8, 2, 0, 0, 0]):
            raise ValueError("not a 24-bit PNG without interlacing")
        return [Image.open(path)]
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["pdftoppm", "-r", "100", str(path), folder + "/p"], check=True)
        drawn = [Image.open(page) for page in sorted(pathlib.Path(folder).iterdir())]
        for page in drawn:
            page.load()
        return drawn


def shows_the_same(a, b):
    first, second = pages(a), pages(b)
    if any(page.mode != "RGB" for page in first + second) or [page.size for page in first] != [page.size for page in second]:
        return False
    # A histogram holds 256 counts for each channel, one channel after the other.
    counts = [n for pair in zip(first, second) for n in ImageChops.difference(*pair).histogram()]
    far = sum(n for at, n in enumerate(counts) if at % 256 > ALIKE)
    return far <= SHARE * sum(counts)


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
