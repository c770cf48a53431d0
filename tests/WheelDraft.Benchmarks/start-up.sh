#!/bin/bash
# Start-up of the published program, as ratios in one run against an empty framework-dependent console program on the same machine, by processor time,
# which does not care what else the machine does: --help at most 0.4 times, `make --only report,cut,draw` on the mains demo at most 4 times. Of `make` it
# also tells what is left with a thousand draws of each on-time in place of a million, and `check`, which neither draws on-times nor sheets.
# Usage: tests/WheelDraft.Benchmarks/start-up.sh [RUNS [PROGRAM]]
# PROGRAM is the published wheeldraft; when left out it is published first.
set -euo pipefail
[ $# -lt 2 ] || set -- "$1" "$(realpath "$2")"
cd "$(dirname "$0")/../.."
runs=${1:-15}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

program=${2:-$work/program/wheeldraft}
[ $# -ge 2 ] || dotnet publish src/WheelDraft.Cli -c Release -r linux-x64 -o "$work/program" --nologo -v quiet
mkdir "$work/empty"
cat >"$work/empty/empty.csproj" <<'P'
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <OutputType>Exe</OutputType>
    <TargetFramework>net10.0</TargetFramework>
  </PropertyGroup>
</Project>
P
echo 'return 0;' >"$work/empty/Program.cs"
dotnet build "$work/empty" -c Release -o "$work/empty/out" --nologo -v quiet >/dev/null

sed 's/^\[drive_motor\]/[monte_carlo]\ndraws = 1000\n\n&/' parameters/propagation-bench.toml >"$work/few.toml"

# median COMMAND... : median processor time of so many runs after two warm-ups, in milliseconds.
TIMEFORMAT='%U %S'
median() {
    local i
    for ((i = 0; i < runs + 2; i++)); do
        { time "$@" >/dev/null 2>&1; } 2>&1 | awk -v i="$i" 'i >= 2 { printf "%.0f\n", ($1 + $2) * 1000 }'
    done | sort -n | sed -n "$(((runs + 1) / 2))p"
}

empty=$(median dotnet "$work/empty/out/empty.dll")
help=$(median "$program" --help)
check=$(median "$program" check parameters/propagation-bench.toml)
few=$(median "$program" make "$work/few.toml" --only report,cut,draw -o "$work/few" --quiet)
make=$(median "$program" make parameters/propagation-bench.toml --only report,cut,draw -o "$work/out" --quiet)
awk -v e="$empty" -v h="$help" -v c="$check" -v f="$few" -v m="$make" 'BEGIN {
    printf "empty program   %6d ms\n", e
    printf "--help          %6d ms   %.2f times (at most 0.4)\n", h, h / e
    printf "check           %6d ms   %.2f times\n", c, c / e
    printf "make, few draws %6d ms   %.2f times\n", f, f / e
    printf "make            %6d ms   %.2f times (at most 4)\n", m, m / e
    exit !(h / e <= 0.4 && m / e <= 4)
}'
