#!/usr/bin/env python3
"""Puts the natively compiled program where things fail, and judges its status, its words and what it leaves.

faults.py PROGRAM [--only WORD]

Every case gives one of the agreed exit statuses, no stack trace, a whole set of files of one design or the old one, and no temporary file.
Cases that need what this machine does not allow (a small file system, another user) are told as notes and counted apart.
"""

import argparse
import os
import shutil
import signal
import subprocess
import threading
import time
from pathlib import Path

from ground import STATUSES, Count, Ground, parts, snapshot

NOBODY = 65534


class Faults:
    def __init__(self, program, count):
        self.count = count
        self.ground = Ground(program, ["--only", "report,cut,draw,show"])
        self.notes = []

    def sane(self, what, status, error, allowed):
        self.count.check(status in allowed, f"{what}: status {status}, not one of {allowed}: {error[-600:]}")
        self.count.check("   at " not in error and "Unhandled" not in error, f"{what}: a stack trace: {error[:600]}")

    def shell(self, what, script, allowed, **more):
        done = subprocess.run(["bash", "-o", "pipefail", "-c", script, self.ground.program, str(self.ground.file["a"])], capture_output=True, text=True, timeout=120, **more)
        self.sane(what, done.returncode, done.stderr, allowed)
        return done

    def old_set(self, name):
        return self.copied(self.ground.home / name)

    def copied(self, folder):
        """The sound set of a, as its run left it: the same files as a run of its own makes, and far sooner there."""
        return Path(shutil.copytree(self.ground.home / "sound-a", folder, dirs_exist_ok=True))

    def whole(self, what, folder, designs):
        found = self.ground.is_sound(folder)
        self.count.check(found in designs, f"{what}: the folder holds the set of {found}, not of {designs}: torn {self.ground.torn(folder)}")
        self.count.check(not parts(folder), f"{what}: leaves {parts(folder)}")

    # Each case is a method; its name says what is wrong with the world.

    def closed_and_full_streams(self):
        for streams, allowed in ((">&-", (3,)), ("2>&-", (0,)), (">&- 2>&-", (3,)), ("<&-", (0,)), ("<&- >&-", (3,)), ("<&- >&- 2>&-", (3,)),
                                 (">/dev/full", (3,)), ("2>/dev/full", (0, 3)), (">/dev/full 2>/dev/full", (3,)), ("| true", (0,)), ("2>&1 | head -1", (0,))):
            self.shell(f"check {streams}", f'"$0" check "$1" {streams}', allowed)
        self.shell("wrong arguments, no streams", '"$0" check --nonsense <&- >&- 2>&-', (2,))
        told = self.shell("results with closed standard error", '"$0" check nothing.toml --json 2>&-', (3,))
        self.count.check(told.stdout == "", f"complaints among results: {told.stdout}")

    def streams_closed_while_files_are_made(self):
        folder = self.ground.home / "no-streams"
        done = self.shell("make without streams", f'"$0" make "$1" -o {folder} {" ".join(self.ground.options)} <&- >&- 2>&-', (3,))
        self.whole("make without streams", folder, ("a",))

    def reader_that_stops_reading(self):
        run = subprocess.Popen([self.ground.program, "schema"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        run.stdout.close()
        self.sane("a reader that is gone", run.wait(timeout=30), run.stderr.read(), (0,))

    def deleted_working_folder(self):
        self.shell("deleted working folder", 'd=$(mktemp -d) && cd "$d" && rmdir "$d" && "$0" check "$1"', (0,))
        self.shell("deleted working folder, relative name", 'd=$(mktemp -d) && cd "$d" && rmdir "$d" && "$0" make wheel.toml', (3,))
        self.shell("deleted working folder, default output", 'd=$(mktemp -d) && cd "$d" && rmdir "$d" && "$0" make "$1"', (3,))

    def no_home_and_odd_locale(self):
        folder = self.ground.home / "locale"
        for surroundings in ("env -i", "env -u HOME", "env HOME=/nowhere TMPDIR=/nowhere", "env LC_ALL=tr_TR.UTF-8", "env LC_ALL=nonsense LANG=de_DE@euro", "env TZ=Asia/Kathmandu"):
            shutil.rmtree(folder, ignore_errors=True)
            self.shell(surroundings, f'{surroundings} "$0" make "$1" -o {folder} {" ".join(self.ground.options)}', (0,))
            self.whole(surroundings, folder, ("a",))

    def output_folder_that_is_none(self):
        home = self.ground.home
        (home / "file").write_text("mine")
        (home / "into").mkdir()
        os.symlink(home / "into", home / "link")
        os.symlink(home / "nowhere", home / "dangling")
        os.symlink(home / "loop", home / "loop")
        os.mkfifo(home / "fifo")
        for name in ("file", "dangling", "loop", "fifo", "file/below"):
            done = self.ground.make("a", home / name)
            self.sane(f"-o {name}", done.returncode, done.stderr, (3,))
        self.count.check((home / "file").read_text() == "mine", "a file where the folder should be was changed")
        self.sane("-o link", self.ground.make("a", home / "link").returncode, "", (0,))
        self.whole("-o link", home / "into", ("a",))

    def things_in_the_way_of_files(self):
        for kind in ("folder", "link", "file for folder"):
            folder = self.ground.home / f"way-{kind.split()[-1]}-{len(kind)}"
            (folder / "cut").mkdir(parents=True)
            precious = self.ground.home / "precious"
            precious.write_text("mine")
            if kind == "folder":
                (folder / "cut" / "wheel.dxf").mkdir()
            elif kind == "link":
                os.symlink(precious, folder / "cut" / "wheel.dxf")
            else:
                (folder / "draw").write_text("mine")
            before = snapshot(folder)
            done = self.ground.make("a", folder)
            self.sane(f"{kind} in the way", done.returncode, done.stderr, (3,))
            self.count.check(snapshot(folder) == before, f"{kind} in the way: the folder changed")
            self.count.check(precious.read_text() == "mine", f"{kind} in the way: a file outside was changed")

    def read_only_folder(self):
        folder = self.old_set("read-only")
        more = {}
        if os.geteuid() == 0:
            more = {"user": NOBODY, "group": NOBODY, "extra_groups": []}
            try:
                subprocess.run([self.ground.program, "--version"], check=True, capture_output=True, **more)
            except (OSError, subprocess.CalledProcessError) as no:
                self.notes.append(f"read-only folder: another user cannot run the program here ({no})")
                return
        else:
            for path in (folder, *folder.rglob("*")):
                path.chmod(0o555 if path.is_dir() else 0o444)
        before = snapshot(folder)
        for design in "ab":
            done = self.ground.make(design, folder, **more)
            self.sane("read-only folder", done.returncode, done.stderr, (3,))
        self.count.check(snapshot(folder) == before, "read-only folder: it changed")
        for path in (folder, *folder.rglob("*")):
            path.chmod(0o755 if path.is_dir() else 0o644)

    def unreadable_input(self):
        home = self.ground.home
        for name in ("nothing.toml", "a", "loop.toml"):
            if name == "loop.toml":
                os.symlink(home / name, home / name)
            for command in ("check", "make", "run", "watch"):
                done = subprocess.run([self.ground.program, command, str(home / name)], cwd=home, capture_output=True, text=True, timeout=30)
                self.sane(f"{command} {name}", done.returncode, done.stderr, (2, 3))

    def full_disk(self):
        """A file system that is a little larger each time, until the new set fits."""
        room = self.ground.home / "room"
        room.mkdir()
        if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(room)], capture_output=True).returncode != 0:
            self.notes.append("full disk: a small file system cannot be mounted here; run as root")
            return
        try:
            if b"tmpfs" not in Path("/proc/mounts").read_bytes() or not os.path.ismount(room):
                self.notes.append("full disk: the small file system is not there")
                return
            need = sum(p.stat().st_size for p in (self.ground.home / "sound-a").rglob("*") if p.is_file()) // 1024
            fitted = refused = 0
            for kib in range(need * 1, need * 2 + 400, max(need // 24, 8)):
                subprocess.run(["mount", "-o", f"remount,size={need * 4}k", str(room)], check=True)
                folder = room / "made"
                shutil.rmtree(folder, ignore_errors=True)
                self.copied(folder)
                left = folder / "cut" / ".wheel.dxf.2147483646.part"
                left.write_bytes(b"of a run that was killed" * 400)
                used = os.statvfs(room)
                if subprocess.run(["mount", "-o", f"remount,size={max(kib, (used.f_blocks - used.f_bfree) * used.f_frsize // 1024 + 4)}k", str(room)]).returncode != 0:
                    continue
                done = self.ground.make("b", folder)
                self.sane(f"disk of {kib} KiB", done.returncode, done.stderr, (0, 3))
                self.whole(f"disk of {kib} KiB", folder, ("b",) if done.returncode == 0 else ("a",))
                if done.returncode == 0:
                    fitted += 1
                else:
                    refused += 1
                    self.count.check("space" in done.stderr, f"disk of {kib} KiB: it is not said why: {done.stderr}")
            self.count.check(fitted > 0 and refused > 3, f"full disk: {refused} did not fit and {fitted} did: nothing was tried")
        finally:
            subprocess.run(["umount", str(room)])

    def files_that_vanish(self):
        """Somebody deletes temporary files, and then the whole folder, while a run is at work."""
        for what in ("temporary files", "folder"):
            seen = set()
            for i in range(6):
                folder = self.old_set(f"vanishing-{what[0]}{i}")
                run, end = self.ground.start("b", folder), threading.Event()

                def vandal():
                    while not end.is_set():
                        for path in list(folder.rglob("*.part")):
                            if what == "folder":
                                time.sleep(0.01 * i)
                                shutil.rmtree(folder, ignore_errors=True)
                                return
                            path.unlink(missing_ok=True)

                thread = threading.Thread(target=vandal)
                thread.start()
                _, error = run.communicate(timeout=60)
                end.set()
                thread.join()
                seen.add(run.returncode)
                self.sane(f"vanishing {what}", run.returncode, error, (0, 3))
                if what == "temporary files":
                    self.whole(f"vanishing {what}", folder, ("a", "b"))
            self.count.check(3 in seen, f"vanishing {what}: no run met it")

    def two_runs_at_once(self):
        for i in range(12):
            folder = self.ground.home / f"two-{i % 2}"
            runs = [self.ground.start(name, folder) for name in ("ab" if i % 4 < 2 else "ba")]
            for run in runs:
                _, error = run.communicate(timeout=60)
                self.sane("two runs at once", run.returncode, error, (0, 3))
            self.whole("two runs at once", folder, ("a", "b"))

    def signals_in_a_film(self):
        """Ctrl-C, a termination and a closed terminal in the midst of a film end it within the second, with nothing left."""
        for i, stop in enumerate((signal.SIGINT, signal.SIGTERM, signal.SIGHUP, signal.SIGINT)):
            folder = self.old_set(f"film-{i}")
            before = snapshot(folder)
            run = subprocess.Popen([*self.ground.command("a", folder), "--frames", "400"], stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
            begun = time.monotonic()
            while len(parts(folder)) < 12 + 4 * i and time.monotonic() - begun < 60:
                time.sleep(0.02)
            self.count.check(len(parts(folder)) > 0 and run.poll() is None, f"{stop.name}: the film was over before the signal")
            run.send_signal(stop)
            begun = time.monotonic()
            _, error = run.communicate(timeout=30)
            took = time.monotonic() - begun
            self.sane(f"{stop.name} in a film", run.returncode, error, (130,))
            self.count.check(took < 1.5, f"{stop.name} in a film: stopped after {took:.2f} s")
            self.count.check(snapshot(folder) == before, f"{stop.name} in a film: the folder changed: {sorted(set(snapshot(folder)) ^ set(before))[:5]}")

    def few_open_files(self):
        """Few open files: refused or done, never by halves."""
        for files in (12, 16, 24, 64):
            folder = self.ground.home / f"files-{files}"
            done = self.shell(f"{files} open files", f'ulimit -n {files}; "$0" make "$1" -o {folder} {" ".join(self.ground.options)}', STATUSES + (127, 134))
            if done.returncode == 134:
                self.notes.append(f"{files} open files: the runtime itself does not start")
            elif done.returncode == 0:
                self.whole(f"{files} open files", folder, ("a",))

    def run(self, only):
        cases = [c for c in vars(Faults) if not c.startswith("_") and c not in ("sane", "shell", "old_set", "copied", "whole", "run")]
        for case in cases:
            if only in case:
                begun, failed = time.monotonic(), self.count.failed
                getattr(self, case)()
                print(f"{'ok   ' if self.count.failed == failed else 'FAIL '} {case.replace('_', ' ')} ({time.monotonic() - begun:.1f} s)", flush=True)
        for note in self.notes:
            print(f"note  {note}")


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program")
    options.add_argument("--only", default="", help="cases with this word in their name")
    asked = options.parse_args()
    count = Count()
    faults = Faults(asked.program, count)
    try:
        faults.run(asked.only.replace(" ", "_"))
    finally:
        faults.ground.close()
    count.finish("tests/faults/faults.py")


if __name__ == "__main__":
    main()
