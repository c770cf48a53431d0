#!/usr/bin/env python3
"""Changes the code at random places, one at a time, and sees whether the tests notice: faults that nobody chose.

    tests/planted-faults/mutate.py [--seed N] [--each N] [--only CHAPTER] [--list] [-- words for plant.py]

From each chapter below so many places are drawn by the seed, each a comparison, a sign, a factor, a condition or an end of a choice, and changed to its
opposite (< to >=, + to -, and to or, least to greatest ...). What comes of it is written as a list of faults and handed to plant.py, which compiles and tries
them: a mutant that escapes either shows a gap in the tests or changes nothing that can be seen, and is to be looked at by a person. --list prints the list only.
The same seed draws the same places as long as the sources stay as they are.
"""
import argparse, pathlib, random, re, subprocess, sys, tempfile

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent

# Folders of sources, and the folders of tests that ought to notice.
CHAPTERS = {
    "geometry": (["src/WheelDraft.Geometry"], ["Geometry", "Measuring"]),
    "rules": (["src/WheelDraft.Engineering/Spacing"], ["Spacing", "Measuring", "Wheel/Lands"]),
    "edges": (["src/WheelDraft.Engineering/Wheel/Edges", "src/WheelDraft.Engineering/Wheel/Timing", "src/WheelDraft.Engineering/Wheel/Windows", "src/WheelDraft.Engineering/Wheel/Lands"], ["Wheel", "Tolerance"]),
    "circuit": (["src/WheelDraft.Engineering/Circuit"], ["Circuit"]),
}

# What is changed to what, as words of code with blanks round them, so that neither generics nor lambdas are meant. Comparisons are turned round: < for <= between
# lengths and angles changes nothing that can be seen, and where equality counts the lists of chosen faults have it.
SWAPS = [(" < ", " >= "), (" <= ", " > "), (" > ", " <= "), (" >= ", " < "), (" == ", " != "), (" != ", " == "), (" + ", " - "), (" - ", " + "), (" * ", " / "), (" / ", " * "),
         (" && ", " || "), (" || ", " && "), (" += ", " -= "), ("Math.Min(", "Math.Max("), ("Math.Max(", "Math.Min("), (".Min(", ".Max("), (".Max(", ".Min("), ("(!", "("), ("(-", "("),
         (" true", " false"), (" false", " true"), (".Any(", ".All("), (".All(", ".Any("), (".First(", ".Last("), ("MinBy(", "MaxBy("), ("MaxBy(", "MinBy(")]

# Lines that are words for people, declarations or sources of numbers.
NO_CODE = re.compile(r'^\s*(//|///|\[|using |namespace |\*)|"|=> throw|nameof|ArgumentNullException|class |record |struct |interface |enum ')


def places(path):
    """Every line of a file that can be changed, with the changes: (line number from 0, old line, new line, what)."""
    lines = path.read_text(encoding="utf-8").splitlines()
    for number, line in enumerate(lines):
        if NO_CODE.search(line):
            continue
        code = line.split(" // ")[0]
        for old, new in SWAPS:
            for found in re.finditer(re.escape(old), code):
                yield number, line, line[:found.start()] + new + line[found.end():], f"{old.strip()} is {new.strip()}"


def entry(path, number, new, what, tests):
    """A fault in plant.py's form; as many lines above as make the text stand only once in the file."""
    lines = path.read_text(encoding="utf-8").splitlines()
    whole = "\n".join(lines)
    above = 0
    while whole.count("\n".join(lines[number - above:number + 1])) != 1:
        above += 1
    old = lines[number - above:number + 1]
    changed = old[:-1] + [new]
    name = path.relative_to(ROOT).as_posix()
    return "\n".join([f"fault: {path.name}:{number + 1} {what}: {new.strip()[:100]}", f"file: {name}", f"tests: {tests}", "<<<<", *old, "====", *changed, ">>>>", ""])


def tests_of(folders):
    """The classes of tests in some folders, as xunit's patterns."""
    found = []
    for folder in folders:
        for source in sorted((ROOT / "tests" / "WheelDraft.Tests" / folder).rglob("*.cs")):
            found += re.findall(r"^public sealed class (\w+Tests)\b", source.read_text(encoding="utf-8"), re.M)
    return " ".join(f"*.{name}" for name in sorted(set(found)))


def main():
    words = argparse.ArgumentParser(description="changes the code at random places and sees whether tests notice")
    words.add_argument("--seed", type=int, default=1); words.add_argument("--each", type=int, default=25)
    words.add_argument("--only", choices=sorted(CHAPTERS)); words.add_argument("--list", action="store_true")
    words.add_argument("rest", nargs="*")
    asked = words.parse_args()
    work = pathlib.Path(tempfile.mkdtemp(prefix="mutants-"))
    lists = []
    for chapter, (sources, folders) in CHAPTERS.items():
        if asked.only not in (None, chapter):
            continue
        dice = random.Random(f"{asked.seed} {chapter}")
        files = sorted(p for s in sources for p in (ROOT / s).rglob("*.cs") if "obj" not in p.parts and "bin" not in p.parts)
        every = [(path, *place) for path in files for place in places(path)]
        drawn = dice.sample(every, min(asked.each, len(every)))
        tests = tests_of(folders)
        text = f"# {len(drawn)} of {len(every)} places in {chapter}, seed {asked.seed}.\n\n" + "\n".join(entry(p, n, new, what, tests) for p, n, _, new, what in drawn)
        lists.append(work / f"{chapter}.faults")
        lists[-1].write_text(text, encoding="utf-8")
        print(text if asked.list else f"{chapter}: {len(drawn)} of {len(every)} places")
    return 0 if asked.list else subprocess.run([sys.executable, str(HERE / "plant.py"), *asked.rest, *map(str, lists)]).returncode


if __name__ == "__main__":
    sys.exit(main())
