#!/usr/bin/python3
"""Reads DXF files twice, with ezdxf and with nothing but the text, and compares: audit-dxf.py FILE..."""
import sys

import ezdxf


def pairs(path):
    lines = open(path, encoding="ascii", newline="").read().replace("\r\n", "\n").split("\n")
    return [(int(lines[i]), lines[i + 1]) for i in range(0, len(lines) - 1, 2)]


def records(tags):
    """Everything from TABLES on, a list of tags for each group 0."""
    found = []
    for tag in tags[tags.index((2, "TABLES")):]:
        if tag[0] == 0:
            found.append([tag])
        elif found:
            found[-1].append(tag)
    return found


def entities(tags):
    start = tags.index((2, "ENTITIES"))
    end = tags.index((0, "ENDSEC"), start)
    return [value for code, value in tags[start:end] if code == 0 and value not in ("VERTEX", "SEQEND")]


def handle_faults(all_records, seed):
    """Handles are unique and below the seed, every pointer finds its target, every record has an owner."""
    with_handle = [r for r in all_records if r[0][1] not in ("SECTION", "ENDSEC", "EOF", "ENDTAB")]
    handles = {}
    for record in with_handle:
        kind = record[0][1]
        own = [v for c, v in record if c == (105 if kind == "DIMSTYLE" else 5)]
        if not own:
            yield f"{kind} without handle"
        elif own[0] in handles:
            yield f"handle {own[0]} twice"
        else:
            handles[own[0]] = record
    for handle, record in handles.items():
        for code, value in record:
            if code in (330, 340, 350, 360, 390) and value != "0" and value not in handles:
                yield f"{record[0][1]} {handle}: group {code} points to {value}, which is not there"
        if record[0][1] != "TABLE" and not any(code == 330 for code, _ in record):
            yield f"{record[0][1]} {handle} has no owner"
    if handles and seed <= max(int(h, 16) for h in handles):
        yield "the handle seed is not above every handle"


def content_faults(all_records):
    """Layers are defined, polylines count their vertices, nothing leaves the plane."""
    layers = {v for r in all_records if r[0][1] == "LAYER" for c, v in r if c == 2}
    for record in all_records:
        kind = record[0][1]
        for code, value in record:
            if code == 8 and value not in layers:
                yield f"{kind}: layer {value} is not defined"
            if kind in ("LINE", "ARC", "CIRCLE", "VERTEX", "TEXT") and code in (30, 31) and float(value) != 0:
                yield f"{kind} leaves the plane"
            if kind in ("LINE", "ARC", "CIRCLE", "LWPOLYLINE", "POLYLINE") and code in (210, 220, 230, 38, 39):
                yield f"{kind} has an extrusion, elevation or thickness"
        if kind == "LWPOLYLINE" and int(next(v for c, v in record if c == 90)) != sum(c == 10 for c, _ in record):
            yield "a polyline's vertex count is wrong"


def faults(path):
    tags = pairs(path)
    header = {value: tags[i + 1][1] for i, (code, value) in enumerate(tags) if code == 9}
    if tags[-1] != (0, "EOF"):
        yield "no EOF"
    if header["$ACADVER"] == "AC1015":
        sections = [tags[i + 1][1] for i, tag in enumerate(tags) if tag == (0, "SECTION")]
        if sections != ["HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"]:
            yield f"sections {sections}"
        yield from handle_faults(records(tags), int(header["$HANDSEED"], 16))
    yield from content_faults(records(tags))

    doc = ezdxf.readfile(path)
    audit = doc.audit()
    yield from (f"ezdxf error: {e.message}" for e in audit.errors)
    yield from (f"ezdxf fix: {f.message}" for f in audit.fixes)
    read = sorted(e.dxftype() for e in doc.modelspace())
    written = sorted(entities(tags))
    if read != written or not written:
        yield f"ezdxf reads {len(read)} entities, the file holds {len(written)}"
    print(f"{path}: {doc.dxfversion}, {len(read)} entities, {len(audit.errors)} errors, {len(audit.fixes)} fixes")


def main():
    failed = False
    for path in sys.argv[1:]:
        for fault in faults(path):
            failed = True
            print(f"{path}: {fault}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
