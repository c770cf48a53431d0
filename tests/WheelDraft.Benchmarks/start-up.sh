#!/bin/bash
# Start-up of the published program, as ratios in one run against an empty framework-dependent console program on the
# same machine: --help at most 0.5 times its wall time, `make --only report,cut,draw` on the mains demo at most 5 times.
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

# median COMMAND... : median wall time of so many runs after two warm-ups, in microseconds.
median() {
    local i begin end
    for ((i = 0; i < runs + 2; i++)); do
        begin=$(date +%s%N)
        "$@" >/dev/null 2>&1
        end=$(date +%s%N)
        [ "$i" -lt 2 ] || echo $(((end - begin) / 1000))
    done | sort -n | sed -n "$(((runs + 1) / 2))p"
}

empty=$(median dotnet "$work/empty/out/empty.dll")
help=$(median "$program" --help)
make=$(median "$program" make parameters/propagation-bench.toml --only report,cut,draw -o "$work/out" --quiet)
awk -v e="$empty" -v h="$help" -v m="$make" 'BEGIN {
    printf "empty program   %8.1f ms\n", e / 1000
    printf "--help          %8.1f ms   %.2f times (at most 0.5)\n", h / 1000, h / e
    printf "make            %8.1f ms   %.2f times (at most 5)\n", m / 1000, m / e
    exit !(h / e <= 0.5 && m / e <= 5)
}'
