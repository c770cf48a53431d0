#!/bin/sh
# Reads a long bench log and counts its lines, one after the other in one run: reading should be at least a third as fast as wc -l.
#   long-log.sh PROGRAM [MEGABYTES]
# PROGRAM is the published wheeldraft. The log has one contact at 1 kHz, as 24 hours of it would have; 100 megabytes when left out.
set -eu
program=${1:?usage: long-log.sh PROGRAM [MEGABYTES]}
megabytes=${2:-100}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
awk -v bytes="$((megabytes * 1000000))" 'BEGIN {
    print "time_s,mist"
    for (i = 0; written < bytes; i++) {
        line = sprintf("%.3f,%d", i / 1000, (i % 180000) >= 122000 && (i % 180000) < 127500)
        written += length(line) + 1
        print line
    }
}' > "$folder/log.csv"
# Once over it, so that both find it in memory.
cat "$folder/log.csv" > /dev/null
python3 - "$program" "$folder" <<'PYTHON'
import resource, subprocess, sys, time
program, folder = sys.argv[1:]
log = folder + "/log.csv"
def took(command):
    least = 1e9
    for i in range(5):
        start = time.perf_counter()
        subprocess.run([c.replace("#", str(i)) for c in command], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        least = min(least, time.perf_counter() - start)
    return least
count = took(["wc", "-l", log])
read = took([program, "learn", log, "-o", folder + "/#.toml", "--quiet"])
most = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
print(f"wc -l {count:.3f} s; learn {read:.3f} s; {read / count:.2f} times as long (at most 3); greatest memory {most:.0f} MiB")
sys.exit(0 if read <= 3 * count else 1)
PYTHON
