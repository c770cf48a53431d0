#!/bin/bash
# Packs what dotnet installs: the program as a tool, and the two libraries with documentation, symbols and sources. Usage: .ci/pack.sh FOLDER
# The same sources give the same bytes in any folder, at any time. The checkout stays as it is; nothing is sent anywhere.
set -euo pipefail
[ $# -eq 1 ] || { echo "usage: .ci/pack.sh FOLDER" >&2; exit 2; }
out=$(realpath -m "$1")
cd "$(dirname "$0")/.."
version=$(sed -n 's:.*<Version>\(.*\)</Version>.*:\1:p' src/Directory.Build.props)

# Built beside the checkout, so that a build going on there is not disturbed. A fixed moment, so that the bytes depend on the sources alone.
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export SOURCE_DATE_EPOCH=315619200 DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1

pack() { dotnet pack "$1/src/$2" -v quiet -m:1 -p:RunAnalyzers=false --artifacts-path "$work/built-${3##*/}" -o "$3"; }

fail() { printf 'FAIL  %s\n' "$*" >&2; exit 1; }

# holds PACKAGE FILE...: the package has these files, and none that tells where it was built.
holds() {
    local package=$1 file
    shift
    rm -rf "$work/unpacked"
    /usr/bin/python3 -m zipfile -e "$out/$package" "$work/unpacked"
    for file in "$@"; do [ -s "$work/unpacked/$file" ] || fail "$package has no $file"; done
    ! grep -rqF -e "$PWD" -e "$work" "$work/unpacked" || fail "$package tells where it was built"
    printf 'ok    %s: %d kB\n' "$package" $(($(stat -c %s "$out/$package") / 1000))
}

mkdir -p "$out"
for project in WheelDraft.Geometry WheelDraft.Engineering WheelDraft.Cli; do pack "$PWD" $project "$work/packages"; done
cp "$work"/packages/* "$out"

for library in WheelDraft.Geometry WheelDraft.Engineering; do
    holds "$library.$version.nupkg" README.md LICENSE "lib/net10.0/$library.dll" "lib/net10.0/$library.xml"
    holds "$library.$version.snupkg" "lib/net10.0/$library.pdb"
done
natives=()
for platform in {linux,linux-musl}-{x64,arm64}; do natives+=("tools/net10.0/any/runtimes/$platform/native/libSkiaSharp.so"); done
for platform in win-{x64,arm64}; do natives+=("tools/net10.0/any/runtimes/$platform/native/libSkiaSharp.dll"); done
holds "WheelDraft.Tool.$version.nupkg" README.md LICENSE tools/net10.0/any/{wheeldraft.dll,wheeldraft.runtimeconfig.json,notices/libraries.txt,notices/SkiaSharp.txt} \
    "${natives[@]}" tools/net10.0/any/runtimes/osx/native/libSkiaSharp.dylib

# The smallest package once more, from a copy of the sources elsewhere.
mkdir "$work/elsewhere"
cp -r LICENSE global.json .editorconfig "$work/elsewhere"
mkdir -p "$work/elsewhere/src"
cp -r src/*.props src/WheelDraft.Geometry "$work/elsewhere/src"
rm -rf "$work"/elsewhere/src/*/{bin,obj}
pack "$work/elsewhere" WheelDraft.Geometry "$work/again"
for package in "$work"/again/*; do cmp "$package" "$out/${package##*/}" || fail "${package##*/} packed from another folder has other bytes"; done
echo "ok    WheelDraft.Geometry, packed again from another folder: the same bytes"
