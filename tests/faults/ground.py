"""What both scripts stand on: two designs that differ, what a sound run of each writes, and how a folder is judged."""

import hashlib
import json
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

PARAMETERS = Path(__file__).resolve().parents[2] / "parameters"
STATUSES = (0, 1, 2, 3, 130)

# A shell starts what runs in the background with these ignored, and the programs under trial would inherit that.
signal.signal(signal.SIGINT, signal.default_int_handler)
signal.signal(signal.SIGHUP, signal.SIG_DFL)


class Ground:
    """A scratch folder with two designs of one file name, so that a run of either may replace the other's set."""

    def __init__(self, program, options=()):
        self.program = str(Path(program).resolve())
        self.options = list(options)
        self.home = Path(tempfile.mkdtemp(prefix="wheeldraft-faults-"))
        self.home.chmod(0o755)
        text = (PARAMETERS / "propagation-bench.toml").read_text(encoding="utf-8")
        self.file, self.sound = {}, {}
        for name, title, strip in (("a", "Propagation bench", "mist strip"), ("b", "Cutting bench", "fog strip")):
            file = self.home / name / "wheel.toml"
            file.parent.mkdir()
            changed = text.replace("Propagation bench", title).replace('"mist strip"', f'"{strip}"')
            file.write_text(changed, encoding="utf-8")
            self.file[name] = file
            folder = self.home / f"sound-{name}"
            begun = time.monotonic()
            done = self.make(name, folder)
            self.whole_s = time.monotonic() - begun
            if done.returncode > 1:
                sys.exit(f"a run without a fault fails: {done.stderr}")
            self.sound[name] = snapshot(folder)
        if self.sound["a"].keys() == self.sound["b"].keys() or any(is_part(n) for n in self.sound["a"]):
            sys.exit("the two designs must differ in their files, and leave no temporary ones")

    def command(self, name, folder):
        return [self.program, "make", str(self.file[name]), "-o", str(folder), *self.options]

    def make(self, name, folder, **more):
        return subprocess.run(self.command(name, folder), stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=120, **more)

    def start(self, name, folder, **more):
        return subprocess.Popen(self.command(name, folder), stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, **more)

    def check(self, folder):
        return subprocess.run([self.program, "check", str(folder)], stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=120)

    def is_sound(self, folder):
        """The design whose set the folder holds exactly, temporary files left aside; None when it is no one's."""
        found = {n: h for n, h in snapshot(folder).items() if not is_part(n)}
        return next((d for d, sound in self.sound.items() if sound == found), None)

    def torn(self, folder):
        """Files that are neither design's, whole: manifests of a run that was cut off are judged by their own hashes."""
        return [n for n, h in snapshot(folder).items() if not is_part(n) and n != "manifest.json" and all(h != s.get(n) for s in self.sound.values())]

    def close(self):
        shutil.rmtree(self.home, ignore_errors=True)


def snapshot(folder):
    """Hash of every file below a folder, by relative name; of a link what it leads to."""
    found = {}
    for root, _, names in os.walk(folder):
        for name in names:
            path = Path(root) / name
            try:
                found[path.relative_to(folder).as_posix()] = hashlib.sha256(path.read_bytes()).hexdigest()
            except FileNotFoundError:
                pass
    return found


def is_part(name):
    return name.endswith(".part")


def parts(folder):
    return [n for n in snapshot(folder) if is_part(n)]


def manifest(folder):
    """The manifest; None when there is none. A torn one raises."""
    path = Path(folder) / "manifest.json"
    return json.loads(path.read_text(encoding="utf-8")) if path.exists() else None


class Count:
    """Counts what passed and what failed, and tells the failures."""

    def __init__(self):
        self.passed = self.failed = 0

    def check(self, holds, what):
        if holds:
            self.passed += 1
        else:
            self.failed += 1
            print(f"FAIL  {what}", flush=True)
        return holds

    def finish(self, words):
        print(f"{words}: {self.passed} passed, {self.failed} failed")
        sys.exit(0 if self.failed == 0 else 1)
