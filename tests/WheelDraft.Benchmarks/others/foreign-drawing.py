#!/usr/bin/python3
"""Drawings from elsewhere read and measured: ezdxf with shapely, against `wheeldraft check FILE --net ...`, both as whole processes.

Usage: foreign-drawing.py PROGRAM
PROGRAM is the published wheeldraft. many-nets.py writes drawings of 4,000, 40,000 and 100,000 loose lines on two layers, as R2000 and once as R12;
net-gap.py reads one and finds the least distance between the two nets. The program finds the same, and besides the shortest creepage path, what the
standard asks of both, and faults of the drawing. Compared are the areas of each layer and the distance, to a tenth of a micrometre of rounding.
Interpreter and imports are part of a process; what Python takes to start and import alone is given beside the times.
"""
import json
import pathlib
import subprocess
import sys
import tempfile

import ezdxf
import shapely

from measuring import Findings, process_ms

HERE = pathlib.Path(__file__).parent
PYTHON = sys.executable
SIZES = [(4_000, "R2000"), (40_000, "R2000"), (100_000, "R2000"), (40_000, "R12")]
NETS = ["--net", "CU1=L1:230 V@0", "--net", "CU2=L2:230 V@120", "--degree", "2", "--group", "IIIa", "--category", "II", "--insulation", "basic"]
SAME_MM = 1e-4


def compare(report, theirs, findings):
    clearance = next(row for row in report["spacing"] if row["kind"] == "clearance")
    contours = {layer["name"]: layer["contours"] for layer in report["layers"]}
    findings.expect([contours["CU1"], contours["CU2"]] == theirs["areas"], f"{theirs['areas']} areas, {contours} contours")
    findings.expect(report["unit_mm"] == 1, f"the unit was read as {report['unit_mm']} mm")
    findings.expect(abs(clearance["nominal_mm"] - theirs["least"]) <= SAME_MM, f"{theirs['least']} mm, the program says {clearance['nominal_mm']} mm")


def main():
    program = sys.argv[1]
    findings = Findings()
    start, _ = process_ms([PYTHON, "-c", "import ezdxf, shapely.ops, shapely.strtree"])
    with tempfile.TemporaryDirectory() as folder:
        for lines, version in SIZES:
            file = pathlib.Path(folder, f"{lines}.dxf")
            with open(file, "w", encoding="ascii") as to:
                subprocess.run([PYTHON, str(HERE / "many-nets.py"), str(lines), version], check=True, stdout=to)
            rounds = 5 if lines < 40_000 else 3
            # A distance that the standard does not allow ends with status 1.
            ours, said = process_ms([program, "check", str(file), *NETS, "--json"], rounds, allowed=(0, 1))
            other, least = process_ms([PYTHON, str(HERE / "net-gap.py"), str(file), "CU1", "CU2"], rounds)
            compare(json.loads(said), json.loads(least), findings)
            curve = {"curve": "drawing", "series": "ezdxf with shapely", "size": lines} if version == "R2000" else {}
            findings.tell(f"a foreign drawing of {lines:,} lines, {version}, read and measured", ours, other, f"ezdxf {ezdxf.__version__} with shapely {shapely.__version__}", f"processor time of whole processes; {start:.0f} ms of theirs is starting and importing", **curve)
    findings.exit()


main()
