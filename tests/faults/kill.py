#!/usr/bin/env python3
"""Kills runs of `make` at random moments and between their renames, and judges what they leave.

kill.py PROGRAM [--count 300] [--renames 60] [--seed 1]

Two designs share one output folder, each run of one over the set of the other. After every kill: no file is torn; a folder that holds files of two
runs, or lacks some, says so in its manifest, in `check DIR` and in the next run; the next run makes it whole and leaves no temporary file.
Moments come from the seed; where in a run they fall is the machine's doing, so the last lines count where they fell.
"""

import argparse
import os
import random
import signal
import time
from collections import Counter

from ground import STATUSES, Count, Ground, is_part, manifest, parts

CUT_OFF = "cut off"


def judge(ground, folder, count, what):
    """The folder after a kill: where the run was, in a word."""
    count.check(not ground.torn(folder), f"{what}: torn or foreign {ground.torn(folder)}")
    sound, record = ground.is_sound(folder), manifest(folder)
    told = ground.check(folder)
    if record is None:
        count.check(all(is_part(n) for n in os.listdir(folder) if not os.path.isdir(os.path.join(folder, n))), f"{what}: files without a manifest")
        return "before the first manifest"
    if record["complete"]:
        count.check(sound is not None, f"{what}: the manifest says complete, and the set is no one's")
        count.check(told.returncode == 0, f"{what}: check of a whole folder gives {told.returncode}: {told.stdout}{told.stderr}")
        return "outside the renames"
    count.check(told.returncode == 1 and CUT_OFF in told.stdout, f"{what}: check does not tell of a run that was cut off ({told.returncode}): {told.stdout}")
    return "between the renames"


def mend(ground, name, folder, where, count, what):
    """The next run makes the folder whole, leaves nothing temporary and tells of the one that was cut off."""
    done = ground.make(name, folder)
    count.check(done.returncode <= 1, f"{what}: the next run gives {done.returncode}: {done.stderr}")
    count.check(ground.is_sound(folder) == name, f"{what}: the next run leaves a set that is not its own")
    count.check(not parts(folder), f"{what}: the next run leaves {parts(folder)}")
    count.check((CUT_OFF in done.stderr) == (where == "between the renames"), f"{what}: {where}, and the next run says: {done.stderr}")


def at_random(ground, folder, rounds, dice, count):
    """Kills at moments spread evenly over a run; every third is a Ctrl-C, which has to leave a whole set and nothing else."""
    fell = Counter()
    for i in range(rounds):
        name, stop = dice.choice("ab"), signal.SIGINT if i % 3 == 2 else signal.SIGKILL
        wait = dice.uniform(0, ground.whole_s * 1.05)
        what = f"kill {i} ({stop.name} after {wait * 1000:.1f} ms)"
        run = ground.start(name, folder)
        time.sleep(wait)
        run.send_signal(stop)
        begun = time.monotonic()
        _, error = run.communicate(timeout=60)
        if stop == signal.SIGINT:
            # Before the program listens for it the system's own way of ending counts.
            count.check(run.returncode in (*STATUSES, -signal.SIGINT), f"{what}: status {run.returncode}: {error}")
            count.check(time.monotonic() - begun < 1.5, f"{what}: stopped after {time.monotonic() - begun:.2f} s")
            if run.returncode != -signal.SIGINT:
                # Those of a run killed before stay until a run comes as far as its first file.
                own = [n for n in parts(folder) if n.endswith(f".{run.pid}.part")]
                count.check(not own, f"{what}: leaves {own}")
                count.check(ground.is_sound(folder) is not None, f"{what}: leaves a set that is no one's")
        where = judge(ground, folder, count, what)
        fell["ended before" if run.returncode in (0, 1) else f"{stop.name} {where}"] += 1
        if where != "outside the renames" or dice.random() < 0.3:
            mend(ground, dice.choice("ab"), folder, where, count, what)
    return fell


def at_renames(ground, folder, wanted, dice, count):
    """Kills once the first manifest is there: seen by asking for the file's number over and over. Goes on until enough have fallen between."""
    fell, tries, path = Counter(), 0, os.path.join(folder, "manifest.json")
    ground.make("a", folder)
    try:
        # On a busy machine the look-out would else sleep through the renames. The program itself does not inherit it.
        os.sched_setscheduler(0, os.SCHED_FIFO | os.SCHED_RESET_ON_FORK, os.sched_param(1))
    except OSError:
        print("note  the look-out may not go before other programs here: fewer kills will fall between renames")
    while fell["between the renames"] < wanted and tries < wanted * 20:
        tries += 1
        name = "ba"[ground.is_sound(folder) == "b"]
        before = os.stat(path).st_ino
        run = ground.start(name, folder, preexec_fn=lambda: os.nice(19))
        seen = False
        while run.poll() is None and not seen:
            for _ in range(200):
                if os.stat(path).st_ino != before:
                    seen = True
                    break
        # Long enough to fall anywhere in the row of renames, which takes less than a millisecond.
        until = time.perf_counter() + dice.uniform(0, 0.0006)
        while time.perf_counter() < until:
            pass
        run.kill()
        run.communicate(timeout=60)
        what = f"rename kill {tries}"
        where = judge(ground, folder, count, what)
        fell[where] += 1
        if where == "outside the renames":
            continue
        mend(ground, dice.choice("ab"), folder, where, count, what)
    count.check(fell["between the renames"] >= wanted, f"only {fell['between the renames']} of {wanted} kills fell between the renames, in {tries} tries")
    return fell, tries


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("program")
    options.add_argument("--count", type=int, default=300, help="kills at random moments")
    options.add_argument("--renames", type=int, default=60, help="kills between renames")
    options.add_argument("--seed", type=int, default=1)
    asked = options.parse_args()
    dice, count = random.Random(asked.seed), Count()
    ground = Ground(asked.program, ["--only", "report,cut,draw,show"])
    try:
        folder = ground.home / "made"
        folder.mkdir()
        fell = at_random(ground, str(folder), asked.count, dice, count)
        print(f"{asked.count} kills within {ground.whole_s * 1000:.0f} ms: " + ", ".join(f"{n} {w}" for w, n in sorted(fell.items())), flush=True)
        fell, tries = at_renames(ground, str(folder), asked.renames, dice, count)
        print(f"{tries} kills once the first manifest was seen: " + ", ".join(f"{n} {w}" for w, n in sorted(fell.items())), flush=True)
    finally:
        ground.close()
    count.finish(f"tests/faults/kill.py: {asked.count} random kills and {fell['between the renames']} between renames")


if __name__ == "__main__":
    main()
