#!/bin/bash
# The first steps of a person with nothing but the .NET SDK: an empty home, no packages but those of one folder, and where this system lets us no network.
# Install, completion, first wheel, guide; then the samples of the libraries' own pages as programs of somebody else. Usage: .ci/first-steps.sh FOLDER
# The folder is what .ci/pack.sh made. Ends with 1 after the first step that fails.
set -euo pipefail
[ $# -eq 1 ] || { echo "usage: .ci/first-steps.sh FOLDER" >&2; exit 2; }
packages=$(realpath "$1")

# The same script again, in a network of its own that leads nowhere.
if [ -z "${FIRST_STEPS_ALONE:-}" ]; then
    if unshare -rn true 2>/dev/null; then FIRST_STEPS_ALONE=yes exec unshare -rn "$0" "$packages"; fi
    echo "note  no network could be made that leads nowhere: only the sources of packages are closed"
fi

tools=("$packages"/WheelDraft.Tool.*.nupkg)
[ ${#tools[@]} -eq 1 ] && [ -e "${tools[0]}" ] || { echo "FAIL  not one WheelDraft.Tool in $packages" >&2; exit 1; }
version=${tools[0]##*/WheelDraft.Tool.}
version=${version%.nupkg}

home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT
cd "$home"
cat >nuget.config <<XML
<configuration>
  <packageSources><clear /><add key="here" value="$packages" /></packageSources>
  <fallbackPackageFolders><clear /></fallbackPackageFolders>
</configuration>
XML

# clean COMMAND...: with nothing of this machine but the SDK and what every system has.
clean() {
    env -i HOME="$home" TMPDIR="$home" LC_ALL=C.UTF-8 PATH="$(dirname "$(command -v dotnet)"):/usr/bin:/bin:$home/.dotnet/tools" ${DOTNET_ROOT:+DOTNET_ROOT="$DOTNET_ROOT"} \
        DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_GENERATE_ASPNET_CERTIFICATE=false MSBUILDDISABLENODEREUSE=1 UseSharedCompilation=false "$@"
}

# step NAME COMMAND...: what it said is shown when it fails. Lines of a command are joined by &&: bash stops for no other failure there.
step() {
    local name=$1
    shift
    "$@" >"$home/log" 2>&1 || { printf 'FAIL  %s\n' "$name"; sed 's/^/      /' "$home/log"; exit 1; }
    printf 'ok    %s\n' "$name"
}

says_version() { [ "$(clean wheeldraft --version)" = "$version" ]; }

completes() {
    clean wheeldraft completion bash >wheeldraft.bash || return 1
    local offered
    offered=$(clean bash --norc -c '. ./wheeldraft.bash; complete -p wheeldraft >/dev/null; COMP_WORDS=(wheeldraft ma); COMP_CWORD=1; _wheeldraft; echo $(printf "%s\n" "${COMPREPLY[@]}" | sort)')
    echo "bash, asked for 'wheeldraft ma', offers: $offered"
    [ "$offered" = "make manual" ]
}

# is FILE BEGINNING: it is there and begins so.
is() { [ "$(head -c ${#2} "$1" | tr -d '\0')" = "$2" ] || { echo "$1 is missing or does not begin with $2"; return 1; }; }

makes_wheel() {
    local made=out/first-wheel
    clean wheeldraft new first-wheel.toml --like low-voltage && clean wheeldraft make first-wheel.toml || return 1
    is $made/report.md '# ' && is $made/manifest.json '{' && is $made/draw/wheel.svg '<' && is $made/draw/set.pdf %PDF- && is $made/print/template.pdf %PDF- && is $made/show/index.html '<!' \
        && is $made/draw/wheel.png "$(printf '\x89PNG')" || return 1
    # A DXF file ends with a group 0, EOF.
    [ "$(tail -n 1 $made/cut/wheel.dxf | tr -d '\r')" = EOF ] || { echo "$made/cut/wheel.dxf is missing or not whole"; return 1; }
    clean wheeldraft check $made
}

builds_guide() {
    local page
    clean wheeldraft guide -o guide || return 1
    for page in index first-wheel keys codes; do is guide/$page.html '<!' || return 1; done
}

# block KIND PAGE: the first block of that kind in a page.
block() { sed -n "/^\`\`\`$1\$/,/^\`\`\`\$/p" "$2" | sed -e '1d' -e '/^```$/,$d'; }

# runs_sample LIBRARY: the program on the library's page, with that package alone, says what the page says.
runs_sample() {
    local library=$1 folder=$home/uses-$1
    mkdir "$folder" || return 1
    /usr/bin/python3 -m zipfile -e "$packages/$library.$version.nupkg" "$folder/package" || return 1
    block csharp "$folder/package/README.md" >"$folder/Program.cs"
    block text "$folder/package/README.md" >"$folder/promised"
    rm -rf "$folder/package"
    [ -s "$folder/Program.cs" ] && [ -s "$folder/promised" ] || { echo "no sample on the page"; return 1; }
    cat >"$folder/Sample.csproj" <<XML
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework><ImplicitUsings>enable</ImplicitUsings></PropertyGroup>
  <ItemGroup><PackageReference Include="$library" Version="$version" /></ItemGroup>
</Project>
XML
    clean dotnet build -v quiet -m:1 "$folder" && clean dotnet "$folder/bin/Debug/net10.0/Sample.dll" >"$folder/said" && diff "$folder/promised" "$folder/said"
}

# What lies in the empty home now: our packages, and of each library from where it came.
only_ours() {
    local there other
    there=$(echo $(ls .nuget/packages .dotnet/tools/.store))
    [ "$there" = ".dotnet/tools/.store: wheeldraft.tool .nuget/packages: wheeldraft.engineering wheeldraft.geometry" ] || { echo "$there"; return 1; }
    other=$(find .nuget/packages -name .nupkg.metadata -exec grep -L "\"source\": \"$packages\"" {} +)
    [ -z "$other" ] || { printf 'from elsewhere: %s\n' "$other"; return 1; }
}

step "dotnet tool install --global WheelDraft.Tool" clean dotnet tool install --global WheelDraft.Tool --version "$version"
step "wheeldraft --version says $version" says_version
step "bash completes its words" completes
step "new and make: the first wheel" makes_wheel
step "guide: the guide as pages" builds_guide
step "the sample of WheelDraft.Geometry" runs_sample WheelDraft.Geometry
step "the sample of WheelDraft.Engineering, which brings the other" runs_sample WheelDraft.Engineering
sed 's/^/      /' uses-WheelDraft.*/said
step "no package came from elsewhere" only_ours
step "dotnet tool uninstall" clean dotnet tool uninstall --global WheelDraft.Tool
