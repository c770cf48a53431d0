#!/usr/bin/python3
"""The least distance between two layers of a drawing of loose lines, with ezdxf and shapely.

Usage: net-gap.py FILE.dxf LAYER LAYER
Lines are joined into areas (polygonize), so that copper inside copper would count as touching; a tree of boxes over the areas of one layer answers
for each area of the other which is nearest. Prints the number of areas of each layer and the distance in the drawing's unit as JSON.
"""
import json
import sys

import ezdxf
from shapely.ops import polygonize
from shapely.strtree import STRtree


def main():
    file, first, second = sys.argv[1:4]
    lines = {first: [], second: []}
    for line in ezdxf.readfile(file).modelspace().query("LINE"):
        start, end = line.dxf.start, line.dxf.end
        lines[line.dxf.layer].append(((start.x, start.y), (end.x, end.y)))
    areas = {layer: list(polygonize(of)) for layer, of in lines.items()}
    tree = STRtree(areas[first])
    least = min(area.distance(nearest(tree, areas[first], area)) for area in areas[second])
    print(json.dumps({"areas": [len(a) for a in areas.values()], "least": least}))


def nearest(tree, areas, area):
    """Shapely 1.8 answers with the geometry, 2 with its place in the list."""
    found = tree.nearest(area)
    return found if hasattr(found, "distance") else areas[found]


main()
