"""What the scripts beside this one share: processor times, and the line of JSON that each prints.

Each script reads its inputs untimed, times only the work, compares what comes out with the program's, and prints one line of JSON a figure:
what, ours_ms, other_ms, other (the library and how it was used), how (what was timed), agrees, and what was found to disagree. Exit status 1 when
anything disagrees; a ratio never decides it.
"""
import json
import resource
import subprocess
import sys
import time

LEAST_S = 0.2


def busy():
    """Processor time of this process, all threads together, s."""
    return time.process_time()


def least_ms(work, rounds=5):
    """The least processor time of one call, ms, over so many rounds of as many calls as take a fifth of a second."""
    calls = 1
    while True:
        begin = busy()
        for _ in range(calls):
            work()
        if busy() - begin >= LEAST_S:
            break
        calls *= 2
    least = (busy() - begin) / calls
    for _ in range(rounds - 1):
        begin = busy()
        for _ in range(calls):
            work()
        least = min(least, (busy() - begin) / calls)
    return least * 1000


def process_ms(command, rounds=5, allowed=(0,)):
    """The least processor time of a whole process and of those that it starts, ms, and what it printed last."""
    least = None
    for _ in range(rounds):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, check=False)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        if done.returncode not in allowed:
            sys.exit(f"{command[0]} ended with status {done.returncode}")
        ms = (after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime) * 1000
        least = ms if least is None else min(least, ms)
    return least, done.stdout


class Findings:
    """What disagrees, in words; the first few are printed."""

    def __init__(self):
        self.said = []

    def expect(self, holds, words):
        if not holds:
            self.said.append(words)

    def tell(self, what, ours_ms, other_ms, other, how, **more):
        """Prints the line of one figure."""
        print(json.dumps({"what": what, "ours_ms": ours_ms, "other_ms": other_ms, "other": other, "how": how, "agrees": not self.said, "disagreements": self.said[:5], **more}, ensure_ascii=False), flush=True)

    def exit(self):
        sys.exit(1 if self.said else 0)
