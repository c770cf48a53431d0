#!/usr/bin/python3
"""The cutting file of the demo's wheel written by ezdxf, against the program's writer.

Usage: dxf.py OURS.json
OURS.json is what the benchmark program writes with compare-json. The entities are taken from the program's own file before the clock starts:
layer, kind and numbers, ready for ezdxf. Timed is a new R2000 document with its unit and layers, every entity, and the text of the file. ezdxf
makes its document with all that any CAD program may ask for, the program the smallest that every reader takes; so the time without the new document
is given beside the whole. Compared are kind, layer and numbers of all entities as read back from both files, to 1e-9 mm and 1e-9 degrees.
"""
import io
import json
import sys

import ezdxf

from measuring import Findings, least_ms

SAME = 1e-9


def entities_of(text):
    """Kind, layer, numbers (and text) of each entity, in the order of the file."""
    found = []
    for e in ezdxf.read(io.StringIO(text)).modelspace():
        d, kind = e.dxf, e.dxftype()
        if kind == "LWPOLYLINE":
            found.append((kind, d.layer, e.closed, [tuple(p) for p in e.get_points("xyb")]))
        elif kind == "CIRCLE":
            found.append((kind, d.layer, tuple(d.center), d.radius))
        elif kind == "ARC":
            found.append((kind, d.layer, tuple(d.center), d.radius, d.start_angle, d.end_angle))
        elif kind == "LINE":
            found.append((kind, d.layer, tuple(d.start), tuple(d.end)))
        elif kind == "TEXT":
            found.append((kind, d.layer, tuple(d.insert), d.height, d.text))
        else:
            sys.exit(f"no way to write a {kind}")
    return found


def new_document(layers):
    document = ezdxf.new("R2000", units=ezdxf.units.MM)
    for layer in layers:
        document.layers.add(layer)
    return document


def written(entities, layers, document=None):
    document = document or new_document(layers)
    space = document.modelspace()
    for kind, layer, *rest in entities:
        on = {"layer": layer}
        if kind == "LWPOLYLINE":
            space.add_lwpolyline(rest[1], format="xyb", close=rest[0], dxfattribs=on)
        elif kind == "CIRCLE":
            space.add_circle(*rest, dxfattribs=on)
        elif kind == "ARC":
            space.add_arc(*rest, dxfattribs=on)
        elif kind == "LINE":
            space.add_line(*rest, dxfattribs=on)
        else:
            space.add_text(rest[2], dxfattribs={"layer": layer, "insert": rest[0], "height": rest[1]})
    text = io.StringIO()
    document.write(text)
    return text.getvalue()


def numbers(value):
    if isinstance(value, (list, tuple)):
        return [n for v in value for n in numbers(v)]
    return [value]


def same(a, b):
    one, two = numbers(a), numbers(b)
    return len(one) == len(two) and all(abs(x - y) <= SAME if isinstance(x, float) else x == y for x, y in zip(one, two))


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        ours = json.load(file)["dxf"]
    wanted = entities_of(ours["file"])
    layers = sorted({e[1] for e in wanted} - {"0"})
    findings = Findings()
    got = entities_of(written(wanted, layers))
    findings.expect(len(got) == len(wanted), f"{len(got)} entities, {len(wanted)} wanted")
    for a, b in zip(wanted, got):
        findings.expect(same(a, b), f"{b} is not {a}")
    whole = least_ms(lambda: written(wanted, layers))
    empty = least_ms(lambda: new_document(layers))
    findings.tell("DXF: the wheel's cutting file", ours["processor_ms"], whole, f"ezdxf {ezdxf.__version__}", f"processor time in the process, {len(wanted)} entities to the file's text")
    findings.tell("DXF: the same, ezdxf's new document not counted", ours["processor_ms"], whole - empty, f"ezdxf {ezdxf.__version__}", "processor time in the process; ours with all tables")
    findings.exit()


main()
