#!/usr/bin/env python3
"""Plants single faults in the code, one at a time, and sees whether the tests notice.

    tests/planted-faults/plant.py [--work DIR] [--only WORDS] [FILE.faults ...]

Each *.faults file beside this script lists faults of one chapter:

    fault: what is wrong, in words
    file: src/…                       (from the repository's root)
    tests: *SomeTests *OtherTests     (classes that ought to notice; xunit's -class patterns)
    <<<<
    the text as it is, exactly once in the file
    ====
    the text with the fault
    >>>>

The work is done in a copy of the checkout (--work; a temporary folder when left out), never in the checkout itself. First the
named tests must pass without any fault. A fault counts as noticed when a named test fails; one that does not compile is
an error of the list, told apart. Exit status 0 when at least 95 % are noticed and every entry fits the code.
"""
import argparse, os, pathlib, re, shutil, subprocess, sys, tempfile

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent
LEAST_NOTICED = 0.95


def read(path):
    """The faults of one file, in its order."""
    faults, entry, part = [], {}, None
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        if part is None and line == "<<<<":
            part = "old"; entry[part] = []
        elif part == "old" and line == "====":
            part = "new"; entry[part] = []
        elif part == "new" and line == ">>>>":
            entry["old"], entry["new"] = "\n".join(entry["old"]), "\n".join(entry["new"])
            entry["place"] = f"{path.name}:{number}"
            missing = {"fault", "file", "tests"} - entry.keys()
            if missing:
                sys.exit(f"{path.name}:{number}: an entry without {', '.join(sorted(missing))}")
            faults.append(entry); entry, part = {}, None
        elif part is not None:
            entry[part].append(line)
        elif line.strip() and not line.startswith("#"):
            word, _, text = line.partition(":")
            entry[word.strip()] = text.strip()
    return faults


def run(work, classes):
    """Whether the tests pass: 'passed', 'failed', or 'broken' when they do not build; and the output."""
    build = subprocess.run(["dotnet", "build", "tests/WheelDraft.Tests", "-v", "q", "-p:RunAnalyzers=false", "-p:TreatWarningsAsErrors=false"],
                           cwd=work, capture_output=True, text=True)
    if build.returncode:
        return "broken", build.stdout
    command = ["dotnet", "run", "--no-build", "--project", "tests/WheelDraft.Tests", "--"]
    for name in classes:
        command += ["-class", name]
    test = subprocess.run(command, cwd=work, capture_output=True, text=True, timeout=900)
    total = re.search(r"Total: (\d+)", test.stdout)
    if total is None or int(total.group(1)) == 0:
        return "broken", test.stdout + test.stderr
    return ("passed" if test.returncode == 0 else "failed"), test.stdout


def main():
    words = argparse.ArgumentParser(description="plants single faults and sees whether tests notice")
    words.add_argument("--work"); words.add_argument("--only", default=""); words.add_argument("files", nargs="*")
    asked = words.parse_args()
    paths = [pathlib.Path(f) for f in asked.files] or sorted(HERE.glob("*.faults"))
    faults = [f for p in paths for f in read(p) if asked.only in f["fault"]]
    work = pathlib.Path(asked.work or tempfile.mkdtemp(prefix="planted-"))
    if not (work / "WheelDraft.sln").exists():
        shutil.copytree(ROOT, work, dirs_exist_ok=True, ignore=shutil.ignore_patterns("bin", "obj", ".git", "output-samples", "out"))
        os.makedirs(work / "output-samples", exist_ok=True)

    wrong = 0
    for fault in faults:
        source = work / fault["file"]
        found = source.read_text(encoding="utf-8").count(fault["old"]) if source.exists() else 0
        if found != 1:
            wrong += 1
            print(f"{fault['place']}: the text stands {found} times in {fault['file']}: {fault['fault']}")
    if wrong:
        return 1
    classes = sorted({c for f in faults for c in f["tests"].split()})
    state, output = run(work, classes)
    if state != "passed":
        print(output[-4000:])
        sys.exit(f"without any fault the named tests are {state}")

    noticed, escaped = 0, []
    for fault in faults:
        source = work / fault["file"]
        sound = source.read_text(encoding="utf-8")
        source.write_text(sound.replace(fault["old"], fault["new"]), encoding="utf-8")
        try:
            state, output = run(work, fault["tests"].split())
        except subprocess.TimeoutExpired:
            state = "failed"
        finally:
            source.write_text(sound, encoding="utf-8")
        word = {"failed": "noticed", "passed": "ESCAPED", "broken": "BROKEN "}[state]
        print(f"{word}  {fault['place']}: {fault['fault']}", flush=True)
        if state == "failed":
            noticed += 1
        else:
            escaped.append(fault)
        if state == "broken":
            wrong += 1
            print(output[-1500:])
    share = noticed / len(faults) if faults else 1
    print(f"{noticed} of {len(faults)} planted faults noticed ({share:.1%})")
    return 0 if share >= LEAST_NOTICED and not wrong else 1


if __name__ == "__main__":
    sys.exit(main())
