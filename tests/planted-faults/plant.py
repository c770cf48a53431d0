#!/usr/bin/env python3
"""Plants single faults in the code, one at a time, and sees whether the tests notice. README.md beside it tells how to use it.

    tests/planted-faults/plant.py [--work DIR] [--jobs N] [--only WORDS] [--fit] [FILE.faults ...]

Each *.faults file beside this script lists faults of one chapter:

    fault: what is wrong, in words
    file: src/…                       (from the repository's root)
    tests: *SomeTests *OtherTests     (classes that ought to notice; xunit's -class patterns)
    methods: *SomeTests.Some_test     (optional: only these methods, where a class is slow; xunit's -method patterns)
    <<<<
    the text as it is, exactly once in the file
    ====
    the text with the fault
    >>>>

The sources of the checkout are never changed. The checkout is built once; then each fault is compiled from a changed copy of its one
file, into a copy of the folder of the test program (in --work; a temporary folder when left out), and the sound assembly is put back
afterwards. First the named tests must pass without any fault. A fault counts as noticed when a named test fails or the test program
dies. One that does not compile is an error of the list; one whose tests do not end in time is told apart and does not count.
Exit status 0 when at least 95 % are noticed and every entry fits the code. --fit only sees whether the entries fit.
"""
import argparse, collections, concurrent.futures, json, os, pathlib, queue, re, shutil, subprocess, sys, tempfile, time
import xml.etree.ElementTree as xml

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent
LEAST_NOTICED = 0.95
LEAST_WAIT_S, TIMES_SOUND = 90, 6
PROJECTS = ["WheelDraft.Geometry", "WheelDraft.Engineering", "WheelDraft.Drawing", "WheelDraft.Formats", "WheelDraft.Cli"]
TESTS = ROOT / "tests" / "WheelDraft.Tests"
BUILT = TESTS / "bin" / "Debug" / "net10.0"
QUICK = ["-p:RunAnalyzers=false", "-p:UseSharedCompilation=true"]
# Nobody debugs the outcome. Of the analysers only those of the framework stay: they write the code of regular expressions.
NEEDLESS = ("/doc:", "/refout:", "/pdb:", "/debug", "/embed", "/warnaserror", "/analyzer", "/additionalfile:", "/noconfig")
# A fault that changes what other assemblies call is no fair trial here, for only its own assembly is compiled.
NOT_FAIR = ("MissingMethodException", "MissingFieldException", "TypeLoadException")


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


def filters(fault):
    """What the test program is asked to run for a fault: its methods where it names some, else its classes."""
    word, names = ("-method", fault["methods"]) if "methods" in fault else ("-class", fault["tests"])
    return [part for name in names.split() for part in (word, name)]


def unfit(faults):
    """Tells of entries whose old text does not stand exactly once in its file; how many there are."""
    wrong = 0
    for fault in faults:
        source = ROOT / fault["file"]
        found = source.read_text(encoding="utf-8").count(fault["old"]) if source.exists() else 0
        if found != 1:
            wrong += 1
            print(f"{fault['place']}: the text stands {found} times in {fault['file']}: {fault['fault']}")
    return wrong


def compiler_words(project):
    """The words that the build gives the compiler for a project."""
    asked = subprocess.run(["dotnet", "msbuild", f"src/{project}", "-t:PrepareResources;Compile", "-p:SkipCompilerExecution=true", "-p:ProvideCommandLineArgs=true",
                            "-p:BuildProjectReferences=false", "-p:NonExistentFile=__none__", "-getItem:CscCommandLineArgs", *QUICK],
                           cwd=ROOT, capture_output=True, text=True, check=True)
    words = [item["Identity"] for item in json.loads(asked.stdout)["Items"]["CscCommandLineArgs"]]
    if not words:
        sys.exit(f"the build tells no compiler words for {project}")
    return words


def compiler():
    """The compiler of the SDK in use."""
    told = subprocess.run(["dotnet", "msbuild", "src/WheelDraft.Geometry", "-getProperty:RoslynTargetsPath"], cwd=ROOT, capture_output=True, text=True, check=True)
    return pathlib.Path(told.stdout.strip()) / "bincore" / "csc.dll"


class Bench:
    """A copy of the test program's folder in which one fault at a time is tried."""

    def __init__(self, folder, csc, words):
        self.folder, self.csc, self.words = folder, csc, words
        shutil.rmtree(folder, ignore_errors=True)
        shutil.copytree(BUILT, folder)

    def compile(self, fault, text):
        """Compiles the project of a fault with the changed text; its assembly's name and what the compiler said where it failed."""
        project = fault["file"].split("/")[1]
        changed = self.folder / "changed" / pathlib.Path(fault["file"]).name
        changed.parent.mkdir(exist_ok=True)
        changed.write_text(text, encoding="utf-8")
        own = os.path.relpath(ROOT / fault["file"], ROOT / "src" / project)
        words, name, swapped = [], None, 0
        for word in self.words[project]:
            if word.startswith("/out:"):
                name = pathlib.Path(word[5:].strip('"')).name
                word = f"/out:{self.folder / 'changed' / name}"
            elif word.startswith(NEEDLESS) and not (word.startswith("/analyzer") and "Microsoft.NETCore.App.Ref" in word):
                continue
            elif word.strip('"') in (own, str(ROOT / fault["file"])):
                word, swapped = str(changed), swapped + 1
            elif word.startswith(f"/resource:{own},"):
                word, swapped = word.replace(own, str(changed), 1), swapped + 1
            words.append(word if word.startswith("/") and ":" in word or " " not in word else f'"{word}"')
        if swapped != 1:
            return name, f"{own} is named {swapped} times among the sources"
        answers = self.folder / "changed" / "words.rsp"
        answers.write_text("\n".join(words), encoding="utf-8")
        done = subprocess.run(["dotnet", "exec", str(self.csc), "/noconfig", "/shared", "/skipanalyzers+", f"@{answers}"],
                              cwd=ROOT / "src" / project, capture_output=True, text=True)
        return name, "" if done.returncode == 0 else done.stdout + done.stderr

    def control(self, faults):
        """Compiles every project that has a fault as faults are compiled, but unchanged: what the sound tests then pass is the way of trying."""
        for fault in {f["file"].split("/")[1]: f for f in faults}.values():
            name, error = self.compile(fault, (ROOT / fault["file"]).read_text(encoding="utf-8"))
            if error:
                sys.exit(f"{error[-4000:]}\nthe sound code does not compile in the way of faults")
            shutil.copy2(self.folder / "changed" / name, self.folder / name)

    def restore(self):
        """Puts the sound assemblies back."""
        for built in BUILT.glob("*.dll"):
            shutil.copy2(built, self.folder / built.name)

    def run(self, asked, wait_s, *more):
        """Runs tests; the exit status (None: they did not end in time) and what was said."""
        try:
            done = subprocess.run(["dotnet", "exec", str(self.folder / "WheelDraft.Tests.dll"), *asked, "-noColor", *more],
                                  cwd=self.folder, capture_output=True, text=True, timeout=wait_s)
        except subprocess.TimeoutExpired:
            return None, ""
        return done.returncode, done.stdout + done.stderr

    def attempt(self, fault, wait_s):
        """Tries one fault: the word for what became of it, and what was said."""
        name, error = self.compile(fault, (ROOT / fault["file"]).read_text(encoding="utf-8").replace(fault["old"], fault["new"]))
        if error:
            return "BROKEN", error
        shutil.copy2(self.folder / "changed" / name, self.folder / name)
        try:
            status, output = self.run(filters(fault), wait_s, "-stopOnFail")
        finally:
            shutil.copy2(BUILT / name, self.folder / name)
        if status is None:
            return "TIMEOUT", f"no end after {wait_s:.0f} s"
        if any(word in output for word in NOT_FAIR):
            return "BROKEN", output[-1500:]
        if status == 0:
            return "ESCAPED", output
        failed = re.search(r"^\s+(\S.*) \[FAIL\]", output, re.M)
        return "noticed", failed.group(1).split("(")[0] if failed else "the test program died"


def sound_times(bench, faults):
    """Runs the named tests without any fault, which must pass and be found; seconds by fault's place."""
    took = {}
    every = sorted({tuple(filters(f)) for f in faults})
    pairs = sorted({(asked[i], asked[i + 1]) for asked in every for i in range(0, len(asked), 2)})
    report, times = bench.folder / "sound.xml", collections.defaultdict(float)
    for word in ("-class", "-method"):
        asked = [part for pair in pairs if pair[0] == word for part in pair]
        if not asked:
            continue
        status, output = bench.run(asked, 1800, "-xml", str(report))
        if status != 0:
            sys.exit(f"{output[-4000:]}\nwithout any fault the named tests fail")
        for test in xml.parse(report).iter("test"):
            name = test.get("type") if word == "-class" else f"{test.get('type')}.{test.get('method')}"
            times[word, name] += float(test.get("time", "0").replace(",", ""))
    for word, pattern in pairs:
        fits = re.compile(".*".join(map(re.escape, pattern.split("*"))) + "$", re.I)
        found = [seconds for (kind, name), seconds in times.items() if kind == word and fits.match(name)]
        if not found:
            sys.exit(f"no test answers to {word} {pattern}")
        took[word, pattern] = sum(found)
        print(f"sound {took[word, pattern]:7.1f} s  {pattern}", flush=True)
    return {f["place"]: sum(took[a, b] for a, b in zip(filters(f)[::2], filters(f)[1::2])) for f in faults}


def table(results):
    """Counts by file, in words for a README."""
    by_file = collections.defaultdict(collections.Counter)
    for fault, word in results:
        by_file[fault["place"].split(":")[0]][word] += 1
    for name, counts in sorted(by_file.items()):
        print(f"| {name} | {counts['noticed']} | {sum(counts.values())} |")


def main():
    words = argparse.ArgumentParser(description="plants single faults and sees whether tests notice")
    words.add_argument("--work"); words.add_argument("--only", default=""); words.add_argument("files", nargs="*")
    words.add_argument("--jobs", type=int, default=1); words.add_argument("--fit", action="store_true")
    asked = words.parse_args()
    paths = [pathlib.Path(f) for f in asked.files] or sorted(HERE.glob("*.faults"))
    faults = [f for p in paths for f in read(p) if asked.only in f["fault"]]
    if unfit(faults) or asked.fit:
        print(f"{len(faults)} entries looked at")
        return 1 if unfit(faults) else 0

    build = subprocess.run(["dotnet", "build", "tests/WheelDraft.Tests", "-v", "q", *QUICK], cwd=ROOT, capture_output=True, text=True)
    if build.returncode:
        sys.exit(f"{build.stdout[-4000:]}\nthe sound code does not build")
    work = pathlib.Path(asked.work or tempfile.mkdtemp(prefix="planted-")).resolve()
    csc, told = compiler(), {p: compiler_words(p) for p in PROJECTS}
    benches = queue.Queue()
    for number in range(max(1, asked.jobs)):
        benches.put(Bench(work / f"bench{number}", csc, told))
    first = benches.get()
    first.control(faults)
    seconds = sound_times(first, faults)
    first.restore()
    benches.put(first)

    def attempt(fault):
        bench, start = benches.get(), time.monotonic()
        try:
            word, said = bench.attempt(fault, max(LEAST_WAIT_S, TIMES_SOUND * seconds[fault["place"]]))
        finally:
            benches.put(bench)
        tail = f"\n{said[-1500:]}" if word == "BROKEN" else f"  [{said}]" if word in ("noticed", "TIMEOUT") else ""
        print(f"{word}  {fault['place']}: {fault['fault']} ({time.monotonic() - start:.0f} s){tail}", flush=True)
        return fault, word

    with concurrent.futures.ThreadPoolExecutor(max(1, asked.jobs)) as pool:
        results = list(pool.map(attempt, faults))
    table(results)
    noticed = sum(word == "noticed" for _, word in results)
    share = noticed / len(faults) if faults else 1
    print(f"{noticed} of {len(faults)} planted faults noticed ({share:.1%})")
    return 0 if share >= LEAST_NOTICED and all(word != "BROKEN" for _, word in results) else 1


if __name__ == "__main__":
    sys.exit(main())
