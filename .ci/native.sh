#!/bin/bash
# Archives of the program for people without the SDK: natively compiled where the tools here can do that for the platform, else self-contained, which the
# archive's name says. Usage: .ci/native.sh FOLDER [PLATFORM...], of linux-x64, linux-arm64, win-x64 and osx-arm64; without a platform all four.
# Each holds program, picture library, licences, page, changes, manual and completions. What can run here is run and must make the files that any other makes.
set -euo pipefail
[ $# -ge 1 ] || { echo "usage: .ci/native.sh FOLDER [PLATFORM...]" >&2; exit 2; }
out=$(realpath -m "$1")
shift
platforms=("$@")
[ $# -gt 0 ] || platforms=(linux-x64 linux-arm64 win-x64 osx-arm64)
cd "$(dirname "$0")/.."
version=$(sed -n 's:.*<Version>\(.*\)</Version>.*:\1:p' src/Directory.Build.props)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1

fail() { printf 'FAIL  %s\n' "$*" >&2; exit 1; }

publish() { dotnet publish src/WheelDraft.Cli -c Release -v quiet -m:1 -p:RunAnalyzers=false --artifacts-path "$work/built" "$@"; }

# Nothing for what the C compilers here link; for other platforms why not. NativeAOT compiles for other processors, not for other systems.
why_not_native() {
    [ "$(uname -sm)" = "Linux x86_64" ] || { echo "native builds are made on Linux x64"; return; }
    case $1 in
        linux-x64) command -v clang gcc >/dev/null || echo "no C compiler links it here (Debian: gcc)" ;;
        linux-arm64) { command -v aarch64-linux-gnu-gcc && command -v aarch64-linux-gnu-objcopy; } >/dev/null || echo "no C compiler for it links it here (Debian: gcc-aarch64-linux-gnu)" ;;
        win-x64) echo "the native compiler of .NET makes no Windows programs on Linux: it needs the linker and libraries of Visual C++" ;;
        osx-arm64) echo "the native compiler of .NET makes no macOS programs on Linux: it needs the linker and libraries of Xcode" ;;
    esac
}

# The linker is told its target in words of clang; gcc for one target knows it, and refuses them.
cross_linker() {
    cat >"$work/cc-arm64" <<'SH'
#!/bin/bash
words=()
for word; do [[ $word == --target=* ]] || words+=("$word"); done
exec aarch64-linux-gnu-gcc "${words[@]}"
SH
    chmod +x "$work/cc-arm64"
}

# build PLATFORM: into $work/PLATFORM; $kind is what it became.
build() {
    local why
    why=$(why_not_native "$1")
    kind=native
    if [ -n "$why" ]; then
        printf 'note  %s: not native: %s\n' "$1" "$why"
        kind=self-contained
        publish -r "$1" -o "$work/$1" --self-contained -p:PublishAot=false -p:PublishTrimmed=true -p:TrimmerRemoveSymbols=true -p:PublishSingleFile=true
    elif [ "$1" = linux-arm64 ]; then
        cross_linker
        publish -r "$1" -o "$work/$1" -p:CppCompilerAndLinker="$work/cc-arm64" -p:ObjCopyName=aarch64-linux-gnu-objcopy
    else
        publish -r "$1" -o "$work/$1"
    fi
}

# is_of PLATFORM FILE...: programs and libraries are of that system and processor.
is_of() {
    local platform=$1 file form
    shift
    case $platform in
        linux-x64) form='ELF 64-bit .*x86-64' ;;
        linux-arm64) form='ELF 64-bit .*aarch64' ;;
        win-x64) form='PE32\+ .*x86-64' ;;
        osx-arm64) form='Mach-O .*arm64' ;;
    esac
    for file; do [[ $(file -b "$file") =~ $form ]] || fail "${file##*/} is not of $platform: $(file -b "$file")"; done
}

# words FOLDER: manual and completions, in the places where shells and man look; the program writes the same ones everywhere.
words() {
    mkdir -p "$1"/share/{man/man1,bash-completion/completions,zsh/site-functions,fish/vendor_completions.d,powershell}
    "${any[@]}" manual >"$1/share/man/man1/wheeldraft.1"
    "${any[@]}" completion bash >"$1/share/bash-completion/completions/wheeldraft"
    "${any[@]}" completion zsh >"$1/share/zsh/site-functions/_wheeldraft"
    "${any[@]}" completion fish >"$1/share/fish/vendor_completions.d/wheeldraft.fish"
    "${any[@]}" completion powershell >"$1/share/powershell/wheeldraft.ps1"
}

# archive PLATFORM: everything that was published but debugging files.
archive() {
    local name=wheeldraft-$version-$1 root program=wheeldraft
    [ "$kind" = native ] || name+=-$kind
    root=$work/archives/$name
    [[ $1 != win-* ]] || program=wheeldraft.exe
    mkdir -p "$root"
    cp -r "$work/$1/." "$root"
    find "$root" \( -name '*.pdb' -o -name '*.dbg' -o -name '*.xml' \) -delete
    cp LICENSE CHANGELOG.md src/WheelDraft.Cli/README.md "$root"
    words "$root"
    is_of "$1" "$root/$program" "$root"/libSkiaSharp.*
    ! grep -qF -e "$PWD" -e "$work" "$root/$program" || fail "$name tells where it was built"
    runs "$1" "$root/$program"
    # One moment for all files and one order: the same content gives the same archive.
    find "$root" -exec touch -d 1980-01-02T00:00:00Z {} +
    chmod -R u=rwX,go=rX "$root"
    if [[ $1 == win-* ]]; then
        name+=.zip
        (cd "$work/archives" && TZ=UTC /usr/bin/python3 -m zipfile -c "$out/$name" "${root##*/}")
    else
        name+=.tar.gz
        tar -C "$work/archives" --sort=name --owner=0 --group=0 --numeric-owner -c "${root##*/}" | gzip -n9 >"$out/$name"
    fi
    printf 'ok    %s: %d kB, %s\n' "$name" $(($(stat -c %s "$out/$name") / 1000)) "$tried"
}

# runs PLATFORM PROGRAM: where this processor or an imitated one takes it, it says its version and manual and makes a wheel like any other build; $tried tells.
# An imitated one needs a system to stand in: that of the C compiler, or one with OpenSSL too, by which files are marked, in ARM64_ROOT.
runs() {
    local root=${ARM64_ROOT:-/usr/aarch64-linux-gnu}
    local -a by=()
    tried="run here"
    case $1 in
        linux-x64) [ "$(uname -m)" = x86_64 ] || { tried="form looked at, not run here"; return; } ;;
        linux-arm64)
            command -v qemu-aarch64-static >/dev/null && [ -e "$root/lib/libc.so.6" ] || { tried="form looked at, not run here (Debian: qemu-user-static)"; return; }
            by=(qemu-aarch64-static -L "$root")
            tried="run by qemu-aarch64-static" ;;
        *) tried="form looked at, not run here"; return ;;
    esac
    [ "$("${by[@]}" "$2" --version)" = "$version" ] || fail "${2##*/} of $1 does not say $version"
    "${by[@]}" "$2" manual | cmp - "$work/any.1" || fail "${2##*/} of $1 has another manual"
    if [ $1 = linux-arm64 ] && [ ! -e "$root/lib/libssl.so.3" ]; then
        tried+=", which made no wheel for want of OpenSSL in $root"
        return
    fi
    "${by[@]}" "$2" make "$work/first-wheel.toml" -o "$work/made-$1" --quiet || fail "${2##*/} of $1 does not make the first wheel"
    same "$1"
    rm -rf "$work/made-$1"
}

# same PLATFORM: the files that any other build makes. The picture library rounds otherwise on arm64: there pixels, and their hashes in the manifest, are let be.
same() {
    local -a but=()
    [ "$1" != linux-arm64 ] || but=(-x '*.png' -x manifest.json)
    diff <(cd "$work/made-any" && find . | sort) <(cd "$work/made-$1" && find . | sort) || fail "$1 makes other files"
    diff -r "${but[@]}" "$work/made-any" "$work/made-$1" || fail "$1 makes other bytes"
}

mkdir -p "$out"
for platform in "${platforms[@]}"; do case $platform in linux-x64 | linux-arm64 | win-x64 | osx-arm64) ;; *) fail "no such platform: $platform" ;; esac; done

# A build for any platform with the SDK: it writes the words, and what the others are compared with.
publish --no-self-contained -p:PublishAot=false -o "$work/any"
any=(dotnet "$work/any/wheeldraft.dll")
"${any[@]}" manual >"$work/any.1"
"${any[@]}" new "$work/first-wheel.toml" --like low-voltage --quiet
"${any[@]}" make "$work/first-wheel.toml" -o "$work/made-any" --quiet

for platform in "${platforms[@]}"; do
    build "$platform"
    archive "$platform"
    rm -rf "${work:?}/$platform" "$work/archives"
done
