#!/usr/bin/python3
"""The sheet of the demo's wheel written by svgwrite, against the program's writer.

Usage: svg.py OURS.json
OURS.json is what the benchmark program writes with compare-json. The elements are taken from the program's own file before the clock starts; paths
as their letters and numbers, for numbers are what a program that draws has in hand. Timed are all elements with the same classes, groups, titles and
texts, and the text of the file. svgwrite's validation is off, as its manual says for speed. Compared is the whole tree of both files: elements,
attributes, texts, numbers of paths to half of the last digit written.
"""
import json
import re
import sys
import xml.etree.ElementTree as ElementTree

import svgwrite
from svgwrite.base import Desc, Title

from measuring import Findings, least_ms

SVG = "{http://www.w3.org/2000/svg}"
XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"
HALF_A_DIGIT = 5e-5

# What svgwrite states though it is the usual value.
STATED = {"svg": {"baseProfile"}, "style": {"type"}, "rect": {"x", "y"}}
NUMBERS = {"x", "y", "cx", "cy", "r"}


class Node:
    """An element as it is handed to svgwrite: numbers as numbers."""

    def __init__(self, element):
        self.tag = element.tag.removeprefix(SVG)
        self.text = element.text if element.text and element.text.strip() else None
        self.attributes = {("xml:lang" if k == XML_LANG else k): float(v) if k in NUMBERS else v for k, v in element.attrib.items()}
        self.commands = commands(self.attributes.pop("d")) if self.tag == "path" else None
        self.children = [Node(child) for child in element]


def commands(d):
    """A path as letters and numbers; the flags of arcs are whole, as the format wants them."""
    found, letter, place = [], "", 0
    for token in re.findall(r"[A-Za-z]|-?\d*\.?\d+(?:e-?\d+)?", d):
        if token.isalpha():
            letter, place = token, 0
            found.append(token)
        else:
            found.append(int(token) if letter in "Aa" and place % 7 in (3, 4) else float(token))
            place += 1
    return found


def words(node):
    made = Desc(node.text) if node.tag == "desc" else Title(node.text)
    made.xml.attrib.update(node.attributes)
    return made


def drawn(node, drawing):
    if node.tag in ("title", "desc"):
        return words(node)
    if node.tag == "text":
        made = drawing.text(node.text)
    elif node.tag == "path":
        made = drawing.path(node.commands)
    elif node.tag == "style":
        return drawing.style(node.text)
    else:
        made = {"circle": drawing.circle, "rect": drawing.rect, "g": drawing.g}[node.tag]()
    made.attribs.update(node.attributes)
    for child in node.children:
        made.add(drawn(child, drawing))
    return made


def written(root):
    drawing = svgwrite.Drawing(debug=False)
    drawing.attribs.clear()
    drawing.attribs.update(root.attributes)
    drawing.elements.clear()
    for child in root.children:
        drawing.add(drawn(child, drawing))
    return drawing.tostring()


def differ(a, b, findings):
    """Compares two trees, element by element."""
    findings.expect(a.tag == b.tag and (a.text or "").strip() == (b.text or "").strip(), f"<{b.tag}> {b.text!r} is not <{a.tag}> {a.text!r}")
    for name in (a.attributes.keys() | b.attributes.keys()) - STATED.get(a.tag, set()):
        findings.expect(alike(a.attributes.get(name), b.attributes.get(name)), f"{name} of <{a.tag}>: {b.attributes.get(name)!r} is not {a.attributes.get(name)!r}")
    one, two = a.commands or [], b.commands or []
    findings.expect(len(one) == len(two) and all(map(alike, one, two)), f"a path differs: {two} is not {one}")
    findings.expect(len(a.children) == len(b.children), f"<{a.tag}> has {len(b.children)} children, {len(a.children)} wanted")
    for one, two in zip(a.children, b.children):
        differ(one, two, findings)


def alike(a, b):
    return abs(a - b) <= HALF_A_DIGIT if isinstance(a, float) and isinstance(b, float) else a == b


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        ours = json.load(file)["svg"]
    root = Node(ElementTree.fromstring(ours["file"]))
    findings = Findings()
    differ(root, Node(ElementTree.fromstring(written(root))), findings)
    count = sum(1 for _ in ElementTree.fromstring(ours["file"]).iter())
    other = least_ms(lambda: written(root))
    findings.tell("SVG: the wheel's sheet", ours["processor_ms"], other, f"svgwrite {'.'.join(map(str, svgwrite.version[:3]))}, validation off", f"processor time in the process, {count} elements to the file's text")
    findings.exit()


main()
