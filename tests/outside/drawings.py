#!/usr/bin/env python3
"""Drawings of every kind of entity, made by ezdxf, measured by WheelDraft and by shapely.

    tests/outside/drawings.py PROGRAM [ARGUMENT ...]        (for instance: dotnet src/WheelDraft.Cli/bin/Debug/net10.0/wheeldraft.dll)

Each drawing holds copper on layer CU1, made of one kind of entity, and a disc on CU2; half of them come with ezdxf's default
set-up and things that are no copper (dimensions with their arrow blocks, texts, multilines, meshes) on other layers. They are written as R12, R2000, R2007
and R2018, ASCII and binary. The oracle shares nothing with the program: ezdxf takes entities apart and flattens curves to 1e-5 mm, widths are
shapely buffers, and shapely measures. A clearance that differs by more than a micrometre, a refusal, or a kind without a drawing is a failure.
Last line: "N drawings read and measured, M failures, greatest difference D mm".
"""
import json, math, pathlib, random, subprocess, sys, tempfile
import ezdxf
from ezdxf import path as paths
from ezdxf.disassemble import recursive_decompose
from ezdxf.math import BSpline, Vec2
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import polygonize, unary_union

FLAT, TOLERANCE_MM = 1e-5, 1e-3
CU1, CU2 = {"layer": "CU1"}, {"layer": "CU2"}


def flat(entity):
    """Points along an entity; arcs by their own formula, for paths hold them as cubic curves, a few ten-thousandths off."""
    if entity.dxftype() in ("ARC", "CIRCLE", "ELLIPSE"):
        return [(v.x, v.y) for v in entity.flattening(FLAT)]
    if entity.dxftype() in ("POLYLINE", "LWPOLYLINE"):
        return [p for e in entity.virtual_entities() for p in in_order(e, entity)]
    return [(v.x, v.y) for v in paths.make_path(entity).flattening(FLAT, 64)]


def in_order(part, polyline):
    """A part of a polyline as it is travelled: arcs come anticlockwise."""
    points = flat(part)
    corners = [(round(p[0], 6), round(p[1], 6)) for p in ((v.x, v.y) for v in corners_of(polyline))]
    if part.dxftype() == "ARC":
        ends = [tuple(round(c, 6) for c in points[i]) for i in (0, -1)]
        if (corners.index(ends[0]) + 1) % len(corners) != corners.index(ends[1]):
            points.reverse()
    return points


def corners_of(polyline):
    return [polyline.ocs().to_wcs(v) for v in polyline.vertices_in_ocs()] if polyline.dxftype() == "LWPOLYLINE" else [v.dxf.location for v in polyline.vertices]


def polygons_of(entities):
    """The areas that loose lines enclose."""
    lines = [LineString(flat(e)) for e in entities]
    snapped = unary_union([LineString([(round(x, 9), round(y, 9)) for x, y in l.coords]) for l in lines])
    return unary_union(list(polygonize(snapped)))


def hatch_area(hatch):
    area = Polygon()
    for p in hatch.paths:
        area = area.symmetric_difference(Polygon(boundary_points(p)).buffer(0))
    return area


def boundary_points(p):
    points = []
    if hasattr(p, "vertices"):
        corners = [(x, y, b) for x, y, b in p.vertices]
        for (x, y, b), (x1, y1, _) in zip(corners, corners[1:] + corners[:1]):
            points += [(x, y)] if not b else [(v.x, v.y) for v in bulge_points((x, y), (x1, y1), b)]
        return points
    for e in p.edges:
        kind = type(e).__name__
        if kind == "LineEdge":
            points += [e.start, e.end]
        elif kind == "ArcEdge":
            span = (e.end_angle - e.start_angle) % 360 or 360
            turn = [math.radians(e.start_angle + span * i / 4000) for i in range(4001)]
            points += [(e.center[0] + e.radius * math.cos(t), e.center[1] + e.radius * math.sin(t)) for t in (turn if e.ccw else turn[::-1])]
        elif kind == "EllipseEdge":
            major, minor = e.major_axis, (-e.major_axis[1] * e.ratio, e.major_axis[0] * e.ratio)
            turn = [math.radians(e.start_angle + ((e.end_angle - e.start_angle) % 360 or 360) * i / 4000) for i in range(4001)]
            points += [(e.center[0] + major[0] * math.cos(t) + minor[0] * math.sin(t), e.center[1] + major[1] * math.cos(t) + minor[1] * math.sin(t)) for t in (turn if e.ccw else turn[::-1])]
        else:
            points += [(v.x, v.y) for v in BSpline(e.control_points, order=e.degree + 1, knots=e.knot_values).approximate(4000)]
    return [(float(p[0]), float(p[1])) for p in points]


def bulge_points(a, b, bulge):
    sweep = 4 * math.atan(bulge)
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    k = (1 - bulge * bulge) / (4 * bulge)
    centre = Vec2(middle[0] - (b[1] - a[1]) * k, middle[1] + (b[0] - a[0]) * k)
    out = Vec2(a) - centre
    return [centre + out.rotate(sweep * i / 4000) for i in range(4001)]


# Each kind: (name, versions without it, function(modelspace, doc, random) -> shapely area of the copper on CU1).
def lines(m, d, r):
    pts = [(0, 0), (7 + r.random(), 1), (6, 5), (1, 4 + r.random())]
    return polygons_of([m.add_line(pts[i], pts[(i + 1) % 4], dxfattribs=CU1) for i in (2, 0, 3, 1)])

def lines_and_arcs(m, d, r):
    w = 5 + r.random()
    return polygons_of([m.add_line((0, 0), (w, 0), dxfattribs=CU1), m.add_arc((w, 2), 2, 270, 90, dxfattribs=CU1),
                        m.add_line((w, 4), (0, 4), dxfattribs=CU1), m.add_arc((0, 2), 2, 90, 270, dxfattribs=CU1)])

def circle(m, d, r):
    c = m.add_circle((2, 1), 3 + r.random(), dxfattribs=CU1)
    return Polygon(flat(c))

def upturned_arcs(m, d, r):
    a = m.add_arc((-3, 1), 3 + r.random(), 200, 20, dxfattribs=dict(CU1, extrusion=(0, 0, -1)))
    ends = [(-v.x, v.y) for v in (a.start_point, a.end_point)] if a.start_point.x < 0 else [(v.x, v.y) for v in (a.start_point, a.end_point)]
    return polygons_of([a, m.add_line(*ends, dxfattribs=CU1)])

def bulged_polyline(m, d, r):
    pts = [(0, 0, 0), (6, 0, 0.4 + r.random() / 4), (6, 5, -0.3), (0, 4, 0)]
    if d.dxfversion == "AC1009":
        p = m.add_polyline2d([q[:2] for q in pts], close=True, dxfattribs=CU1)
        for v, q in zip(p.vertices, pts): v.dxf.bulge = q[2]
    else:
        p = m.add_lwpolyline(pts, format="xyb", close=True, dxfattribs=CU1)
    return Polygon(flat(p))

def upturned_polyline(m, d, r):
    p = m.add_lwpolyline([(0, 0, 0.5), (-6, 0, 0), (-5, 4, -0.2)], format="xyb", close=True, dxfattribs=dict(CU1, extrusion=(0, 0, -1)))
    return Polygon(flat(p))

def wide(m, d, pts, width, close=False):
    if d.dxfversion == "AC1009":
        p = m.add_polyline2d([q[:2] for q in pts], close=close, dxfattribs=CU1)
        p.dxf.default_start_width = p.dxf.default_end_width = width
        for v, q in zip(p.vertices, pts):
            v.dxf.bulge = q[2]
            v.dxf.start_width = v.dxf.end_width = width
        return p
    p = m.add_lwpolyline(pts, format="xyb", close=close, dxfattribs=CU1)
    p.dxf.const_width = width
    return p

def wide_straight(m, d, r):
    w, pts = 0.8 + r.random(), [(0, 0, 0), (6, 0, 0), (8, 4, 0), (2, 6, 0)]
    wide(m, d, pts, w)
    return LineString([q[:2] for q in pts]).buffer(w / 2, cap_style=2, join_style=2, mitre_limit=50)

def wide_closed(m, d, r):
    w, pts = 0.5 + r.random(), [(0, 0, 0), (7, 0, 0), (5, 6, 0)]
    wide(m, d, pts, w, close=True)
    ring = Polygon([q[:2] for q in pts])
    return ring.buffer(w / 2, join_style=2, mitre_limit=50).difference(ring.buffer(-w / 2, join_style=2, mitre_limit=50))

def wide_bulged(m, d, r):
    w, pts = 1 + r.random(), [(0, 0, 0), (6, 0, 1), (6, 5, 0), (0, 5, 0)]
    return LineString(flat(wide(m, d, pts, w))).buffer(w / 2, cap_style=2, join_style=2, mitre_limit=5)

def wide_taper(m, d, r):
    a, b = 3 + r.random(), 0.5
    if d.dxfversion == "AC1009":
        p = m.add_polyline2d([(0, 0), (8, 3)], dxfattribs=CU1)
        p.vertices[0].dxf.start_width, p.vertices[0].dxf.end_width = a, b
    else:
        m.add_lwpolyline([(0, 0, a, b), (8, 3, 0, 0)], format="xyse", dxfattribs=CU1)
    n = (-3 / math.hypot(8, 3), 8 / math.hypot(8, 3))
    return Polygon([(n[0] * a / 2, n[1] * a / 2), (8 + n[0] * b / 2, 3 + n[1] * b / 2), (8 - n[0] * b / 2, 3 - n[1] * b / 2), (-n[0] * a / 2, -n[1] * a / 2)])

def solid(m, d, r):
    x = 6 + r.random()
    m.add_solid([(0, 0), (x, 1), (1, 5), (x - 1, 6)], dxfattribs=CU1)
    return Polygon([(0, 0), (x, 1), (x - 1, 6), (1, 5)])

def solid_triangle(m, d, r):
    m.add_solid([(0, 0), (7, 1), (2, 5 + r.random())], dxfattribs=CU1)
    s = m[-1].dxf
    return Polygon([s.vtx0.vec2, s.vtx1.vec2, s.vtx2.vec2])

def trace(m, d, r):
    m.add_trace([(0, 0), (7, 0), (0, 1 + r.random()), (7, 2)], dxfattribs=CU1)
    t = m[-1].dxf
    return Polygon([t.vtx0.vec2, t.vtx1.vec2, t.vtx3.vec2, t.vtx2.vec2])

def face(m, d, r):
    f = m.add_3dface([(0, 0), (7, 1), (6, 6 + r.random()), (1, 4)], dxfattribs=CU1).dxf
    return Polygon([f.vtx0.vec2, f.vtx1.vec2, f.vtx2.vec2, f.vtx3.vec2])

def ellipse(m, d, r):
    e = m.add_ellipse((3, 2), (5, 1), 0.3 + r.random() / 2, dxfattribs=CU1)
    return Polygon(flat(e))

def ellipse_part(m, d, r):
    e = m.add_ellipse((3, 2), (5, 1), 0.4, 0.5, 3 + r.random(), dxfattribs=CU1)
    return polygons_of([e, m.add_line(e.start_point, e.end_point, dxfattribs=CU1)])

def spline(m, d, r):
    c = m.add_open_spline([(0, 0), (2, 6), (5, -2), (8, 4 + r.random())], dxfattribs=CU1)
    t = c.construction_tool()
    return polygons_of([c, m.add_line((8, t.control_points[-1].y), (9, -6), dxfattribs=CU1), m.add_line((9, -6), (0, 0), dxfattribs=CU1)])

def spline_rational(m, d, r):
    c = m.add_rational_spline([(0, 0), (2, 6), (5, 6), (8, 0)], [1, 2 + r.random(), 0.7, 1], dxfattribs=CU1)
    return polygons_of([c, m.add_line((8, 0), (0, 0), dxfattribs=CU1)])

def spline_fit(m, d, r):
    # Fit points with end directions: the one case in which the curve is settled.
    c = m.add_spline([(0, 0), (3, 4), (6, 3 + r.random()), (8, 0)], dxfattribs=CU1)
    c.dxf.start_tangent, c.dxf.end_tangent = (1, 2, 0), (1, -3, 0)
    return polygons_of([c, m.add_line((8, 0), (0, 0), dxfattribs=CU1)])

def hatch_polyline(m, d, r):
    h = m.add_hatch(dxfattribs=CU1)
    h.paths.add_polyline_path([(0, 0, 0), (8, 0, 0.5), (8, 6, 0), (0, 6, 0)], is_closed=True, flags=1)
    h.paths.add_polyline_path([(2, 2), (4 + r.random(), 2), (3, 4)], is_closed=True, flags=16)
    return hatch_area(h)

def hatch_edges(m, d, r):
    h = m.add_hatch(dxfattribs=CU1)
    p = h.paths.add_edge_path(flags=1)
    p.add_line((0, 0), (6, 0))
    p.add_arc((6, 2), 2, 270, 90, ccw=True)
    p.add_line((6, 4), (4, 4))
    p.add_arc((3, 4), 1, 180, 360, ccw=False)
    p.add_line((2, 4), (0, 4))
    p.add_ellipse((0, 2), (0, 2), 0.5 + r.random() / 3, 0, 180, ccw=True)
    return hatch_area(h)

def hatch_spline(m, d, r):
    h = m.add_hatch(dxfattribs=CU1)
    p = h.paths.add_edge_path(flags=1)
    p.add_spline(control_points=[(0, 0), (2, 6), (5, 6 + r.random()), (8, 0)], degree=3, knot_values=[0, 0, 0, 0, 1, 1, 1, 1])
    p.add_line((8, 0), (0, 0))
    return hatch_area(h)

def hatch_pattern(m, d, r):
    h = m.add_hatch(dxfattribs=CU1)
    h.set_pattern_fill("ANSI31", scale=0.5)
    h.paths.add_polyline_path([(0, 0), (8, 0), (7, 5 + r.random())], is_closed=True, flags=1)
    return hatch_area(h)

def part(d, name, layer="CU1"):
    b = d.blocks.new(name, base_point=(1, 2))
    b.add_line((0, 0), (8, 0), dxfattribs={"layer": layer})
    b.add_arc((4, 0), 4, 0, 180, dxfattribs={"layer": layer})
    return b

def of_references(m):
    return polygons_of(list(recursive_decompose(m)))

def insert(m, d, r):
    part(d, "part")
    m.add_blockref("part", (3, 1), dict(CU1, rotation=30 + 10 * r.random(), xscale=1.2, yscale=1.2))
    return of_references(m)

def insert_layer_zero(m, d, r):
    part(d, "part", "0")
    m.add_blockref("part", (3, 1), dict(CU1, rotation=200 * r.random()))
    return of_references(m)

def insert_mirrored(m, d, r):
    part(d, "part")
    m.add_blockref("part", (3, 1), dict(CU1, rotation=25 + r.random(), xscale=-1.3, yscale=1.3))
    return of_references(m)

def insert_upturned(m, d, r):
    part(d, "part")
    m.add_blockref("part", (-3, 1), dict(CU1, rotation=15 + r.random(), extrusion=(0, 0, -1)))
    return of_references(m)

def insert_uneven(m, d, r):
    part(d, "part")
    m.add_blockref("part", (3, 1), dict(CU1, rotation=20, xscale=1.5 + r.random(), yscale=0.7))
    return of_references(m)

def insert_nested(m, d, r):
    part(d, "part", "0")
    o = d.blocks.new("outer")
    o.add_blockref("part", (2, 1), {"xscale": -1.5, "yscale": 1.5, "rotation": 25, "layer": "0"})
    m.add_blockref("outer", (4, 3), dict(CU1, rotation=40 + r.random()))
    return of_references(m)

def insert_array(m, d, r):
    part(d, "part")
    m.add_blockref("part", (0, 0), dict(CU1, rotation=10, column_count=2, row_count=2, column_spacing=9 + r.random(), row_spacing=6))
    return unary_union([polygons_of(list(i.virtual_entities())) for i in m.query("INSERT").first.multi_insert()])

def nested_contours(m, d, r):
    for radius in (9, 6 + r.random(), 4): m.add_circle((0, 0), radius, dxfattribs=CU1)
    a, b, c = (Polygon(flat(e)) for e in m.query("CIRCLE[layer=='CU1']"))
    return a.difference(b).union(c)


OLD, NEW = "R12", ("R2000", "R2007", "R2018")
KINDS = [(k.__name__, k, old) for k, old in [
    (lines, 1), (lines_and_arcs, 1), (circle, 1), (upturned_arcs, 1), (bulged_polyline, 1), (upturned_polyline, 0), (wide_straight, 1), (wide_closed, 1),
    (wide_bulged, 1), (wide_taper, 1), (solid, 1), (solid_triangle, 1), (trace, 1), (face, 1), (ellipse, 0), (ellipse_part, 0), (spline, 0),
    (spline_rational, 0), (spline_fit, 0), (hatch_polyline, 0), (hatch_edges, 0), (hatch_spline, 0), (hatch_pattern, 0), (insert, 1),
    (insert_layer_zero, 1), (insert_mirrored, 1), (insert_upturned, 1), (insert_uneven, 1), (insert_nested, 1), (insert_array, 1), (nested_contours, 1)]]


def noise(m, d):
    """What shops have in their drawings besides, all on layers of no net."""
    other = {"layer": "OTHER"}
    m.add_linear_dim(base=(0, -40), p1=(0, -30), p2=(20, -30), dxfattribs=other).render()
    m.add_text("words", dxfattribs=other)
    m.add_point((1, 1), dxfattribs=other)
    m.add_line((-50, -50), (50, -50), dxfattribs=other)
    if d.dxfversion != "AC1009":
        m.add_mtext("more words", dxfattribs=other)
        m.add_mline([(-50, -60), (50, -60)], dxfattribs=other)
        m.add_mesh(dxfattribs=other)
        m.add_leader([(-50, -70), (-40, -75)], dxfattribs=other)
        m.add_xline((0, -90), (1, 0), dxfattribs=other)


def check(program, folder, number, name, kind, version, binary, with_setup):
    r = random.Random(number)
    doc = ezdxf.new(version, setup=with_setup)
    doc.units = 4
    m = doc.modelspace()
    for layer in ("CU1", "CU2", "OTHER"):
        if layer not in doc.layers: doc.layers.add(layer)
    copper = kind(m, doc, r)
    angle = r.uniform(0, 2 * math.pi)
    away = 14 + 8 * r.random() if name != "insert_array" else 30
    disc = m.add_circle((3 + away * math.cos(angle), 3 + away * math.sin(angle)), 0.5, dxfattribs=CU2)
    if with_setup: noise(m, doc)
    file = folder / f"{number:03}-{name}-{version}{'-binary' if binary else ''}.dxf"
    doc.saveas(file, fmt="bin" if binary else "asc")
    asked = program + ["check", str(file), "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", "--degree", "3", "--group", "IIIa", "--category", "II", "--chord", "0.00001 mm", "--json"]
    asked += ["--unit", "mm"] if version == OLD else []
    run = subprocess.run(asked, capture_output=True, text=True)
    if run.returncode not in (0, 1):
        return f"exit status {run.returncode}: {run.stderr.strip()[:300]}", 0
    row = [s for s in json.loads(run.stdout)["spacing"] if s["kind"] == "clearance"][0]
    expected = copper.distance(Point(disc.dxf.center.vec2)) - 0.5
    off = abs(row["nominal_mm"] - expected)
    if copper.is_empty or not off <= TOLERANCE_MM or row["worst_mm"] > row["nominal_mm"] + 1e-9:
        return f"measured {row['nominal_mm']} (worst {row['worst_mm']}), shapely has {expected}", off
    if with_setup and not any(l["layer"].upper() == "OTHER" for l in json.loads(run.stdout)["left_out"]):
        return "what lies on layer OTHER is not listed", off
    return None, off


def main():
    program = sys.argv[1:] or sys.exit(__doc__)
    number = failures = 0
    greatest = 0
    with tempfile.TemporaryDirectory() as folder:
        for name, kind, old in KINDS:
            versions = ([OLD] if old else []) + [NEW[number % 3], NEW[(number + 1) % 3]]
            for i, version in enumerate(versions):
                number += 1
                wrong, off = check(program, pathlib.Path(folder), number, name, kind, version, binary=number % 2 == 0, with_setup=number % 4 < 2)
                greatest = max(greatest, off)
                if wrong:
                    failures += 1
                    print(f"FAIL  {number} {name} {version}: {wrong}")
    print(f"{number} drawings read and measured, {failures} failures, greatest difference {greatest:.6f} mm")
    return 1 if failures or number < 60 else 0


if __name__ == "__main__":
    sys.exit(main())
