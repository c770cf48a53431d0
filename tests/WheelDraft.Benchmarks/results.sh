#!/bin/bash
# Measures everything and writes RESULTS.md beside this script, its curves into the folder results. Takes about ten minutes; the
# machine should have nothing else to do.
# Usage: tests/WheelDraft.Benchmarks/results.sh [PROGRAM]
# PROGRAM is the published wheeldraft; when left out it is published first. The order is fixed: the benchmark program by its names, our own times for
# the comparisons, each comparing script, whole processes. Every ratio is of one run of this script. Exit status 1 when results disagree, after the page
# is written, and when a step ends without its figure, before.
set -euo pipefail
export LC_ALL=C.UTF-8 PYTHONDONTWRITEBYTECODE=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
[ $# -eq 0 ] || set -- "$(realpath "$1")"
cd "$(dirname "$0")/../.."
here=tests/WheelDraft.Benchmarks
others=$here/others
python=/usr/bin/python3

lacking=()
command -v dotnet >/dev/null || lacking+=("the .NET SDK")
command -v "$python" >/dev/null || lacking+=(python3)
for module in numpy shapely ezdxf matplotlib svgwrite; do
    "$python" -c "import $module" 2>/dev/null || lacking+=("python3-$module")
done
command -v rsvg-convert >/dev/null || lacking+=(librsvg2-bin)
if [ ${#lacking[@]} -gt 0 ]; then
    echo "results.sh needs what is not installed (Debian's names): ${lacking[*]}" >&2
    exit 2
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/bench" "$work/processes"
load=$(cut -d' ' -f1 /proc/loadavg)

say() { echo "results: $*" >&2; }

program=${1:-$work/program/wheeldraft}
if [ $# -eq 0 ]; then
    say "publishing"
    dotnet publish src/WheelDraft.Cli -c Release -r "linux-$(uname -m | sed 's/x86_64/x64/; s/aarch64/arm64/')" -o "$work/program" -v quiet
fi
say "building the benchmarks"
dotnet build "$here" -c Release -v quiet -p:RunAnalyzers=false >"$work/build.txt" || { cat "$work/build.txt" >&2; exit 2; }
benchmarks=$here/bin/Release/net10.0/WheelDraft.Benchmarks

{
    echo "processor: $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -n 1 | grep . || uname -m)"
    echo "cores: $(nproc)"
    echo "memory: $(awk '/^MemTotal/ { printf "%.1f GiB", $2 / 1048576 }' /proc/meminfo)"
    echo "system: $(. /etc/os-release && echo "$PRETTY_NAME"), $(uname -sm)"
    echo ".NET: SDK $(dotnet --version), run-time $(dotnet --list-runtimes | sed -n 's/^Microsoft.NETCore.App \([^ ]*\).*/\1/p' | tail -n 1)"
    echo "Python: $("$python" -c 'import platform; print(platform.python_version())')"
    echo "WheelDraft: $("$program" --version | head -n 1)"
    echo "date: $(date -u +%Y-%m-%d)"
    echo "load before, mean of a minute: $load"
} >"$work/machine.txt"

number=10
for name in $("$benchmarks" names); do
    say "$name"
    "$benchmarks" "$name" >"$work/bench/$number-$name.txt"
    number=$((number + 1))
done

# compare NAME SCRIPT ARGUMENT... : runs a comparing script and keeps its lines of JSON. What it found to disagree stands in them, and a ratio that
# it asks for is not asked for here; so its exit status says nothing more, but a script without a line has failed.
compare() {
    local name=$1
    shift
    say "$name"
    "$python" "$@" >"$work/said.txt" || true
    if ! grep '^{' "$work/said.txt" >>"$work/rows.jsonl"; then
        say "$name gave no figure"
        exit 2
    fi
}

say "our own times"
"$benchmarks" compare-json >"$work/ours.json"
demo=parameters/propagation-bench.toml
"$program" make "$demo" --only report -o "$work/demo" --quiet
compare "draws against NumPy" "$here/monte-carlo.py" "$benchmarks"
compare "circuit against NumPy" "$others/circuit.py" "$work/ours.json"
compare "sampled spacing" "$here/sampled-spacing.py" "$work/demo/report.json" "$program" "$demo"
compare "adaptive spacing" "$here/adaptive-spacing.py" "$work/demo/report.json" "$program" "$demo"
compare "foreign drawings against ezdxf and shapely" "$others/foreign-drawing.py" "$program"
compare "DXF against ezdxf" "$others/dxf.py" "$work/ours.json"
compare "SVG against svgwrite" "$others/svg.py" "$work/ours.json"
compare "PNG against librsvg" "$others/png.py" "$work/ours.json"
compare "a figure against matplotlib" "$others/figure.py" "$work/ours.json"

# whole NAME COMMAND... : what a script of whole processes printed; one that misses its own promise ends with 1 and has its line all the same.
whole() {
    say "$1"
    "${@:2}" >"$work/processes/$number-$1.txt" 2>"$work/complaints.txt" || true
    number=$((number + 1))
    if ! [ -s "$work/processes/$((number - 1))-$1.txt" ]; then
        cat "$work/complaints.txt" >&2
        exit 2
    fi
}
whole start-up "$here/start-up.sh" 15 "$program"
whole long-log "$here/long-log.sh" "$program" 100

"$python" "$others/page.py" "$work" "$here/RESULTS.md" "$here/results"
