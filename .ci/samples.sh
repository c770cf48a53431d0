# The samples in the repository as other programs see them, and as the published program makes them.

# each PATTERN: the files under output-samples/, in a fixed order.
each() { find output-samples -type f -name "$1" 2>/dev/null | sort; }

none_yet() { printf 'note  no %s in output-samples/: nothing to check here\n' "$1"; }

read_samples() {
    local -a files

    mapfile -t files < <(each '*.dxf')
    [ ${#files[@]} -gt 0 ] || none_yet DXF
    check_each "audit by ezdxf, and structure" audits_dxf "${files[@]}"
    # A further structural check of R2000 files, where the caller has one.
    if [ -n "${DXF_CHECK:-}" ]; then
        mapfile -t files < <(grep -l AC1015 "${files[@]}")
        check_each "$DXF_CHECK" checks_dxf "${files[@]}"
    fi

    mapfile -t files < <(each '*.svg')
    [ ${#files[@]} -gt 0 ] || none_yet SVG
    check_each "drawn by rsvg-convert" draws_svg "${files[@]}"

    mapfile -t files < <(each '*.pdf')
    [ ${#files[@]} -gt 0 ] || none_yet PDF
    check_each "structure by qpdf, pages by pdfinfo, drawn by pdftoppm" draws_pdf "${files[@]}"
}

audits_dxf() { /usr/bin/python3 .ci/audit-dxf.py "$1"; }

checks_dxf() { /usr/bin/python3 "$DXF_CHECK" "$1"; }

draws_svg() {
    rsvg-convert --output "$work/drawn.png" "$1" && [ "$(stat -c %s "$work/drawn.png")" -gt 500 ]
}

draws_pdf() {
    qpdf --check "$1" && pdfinfo "$1" && [ "$(pdfinfo "$1" | sed -n 's/^Pages: *//p')" -gt 0 ] || return 1
    # Texts are strokes: a font would be another machine's.
    pdffonts "$1" | awk 'NR > 2 && !/Type 3 +Custom +yes no +yes/ { bad = 1 } END { exit bad || NR < 3 }' || { echo "a font is not embedded, does not say what its letters are, or there is none"; return 1; }
    [ -n "$(pdftotext "$1" - | tr -d '[:space:]')" ] || { echo "it has no text"; return 1; }
    # A reader that stops at the first match would end the program before it, which counts as a failure here.
    [ -n "$(pdfinfo -meta "$1" | sed -n '/<dc:language>/p')" ] || { echo "it does not say its language"; return 1; }
    [ -n "$(pdftohtml -xml -i -stdout "$1" | sed -n '/<outline>/p')" ] || { echo "it has no outline"; return 1; }
    [ -z "$(pdfinfo "$1" | sed -n '/Date/p')" ] || { echo "it has a date"; return 1; }
    pdftoppm -r 50 "$1" "$work/page"
}

# publish_program: $program is the natively compiled one. The build has analysed the same sources; what the native compiler has to say stops it all the same.
publish_program() {
    program=$work/program/wheeldraft
    check "dotnet publish src/WheelDraft.Cli -r linux-x64" dotnet publish src/WheelDraft.Cli -r linux-x64 -p:RunAnalyzers=false -o "$work/program"
    [ -x "$program" ] && check "wheeldraft --help" "$program" --help
}

# Drawings of every kind of entity, made by another library and measured by a third; the last line holds the counts.
read_drawings() {
    if /usr/bin/python3 -W ignore tests/outside/drawings.py "$program" >"$work/log" 2>&1; then good "$(tail -1 "$work/log")"; else bad "tests/outside/drawings.py"; sed 's/^/      /' "$work/log"; fi
}

# Closed streams, full disks, vanishing files; kills at random moments and between renames, in a small number.
try_faults() {
    local file
    for file in "faults.py" "kill.py --count 24 --renames 6"; do
        # shellcheck disable=SC2086
        if /usr/bin/python3 tests/faults/${file%% *} "$program" ${file#"${file%% *}"} >"$work/log" 2>&1; then grep '^note' "$work/log"; good "$(tail -1 "$work/log")"; else bad "tests/faults/$file"; sed 's/^/      /' "$work/log"; fi
    done
}

# What the native program reads of others' drawings; what it makes of parameters/ is output-samples/.
make_samples() {
    local file name status
    read_drawings

    for file in parameters/*.toml; do
        if [ ! -e "$file" ]; then
            printf 'note  no demo in parameters/: make is not tried\n'
            return
        fi

        name=$(basename "$file" .toml)
        "$program" make "$file" -o "$work/made/$name" --quiet >"$work/log" 2>&1
        status=$?
        # 1 is a demo whose point is a finding; its report says so and is compared below.
        if [ "$status" -le 1 ]; then good "wheeldraft make $file: exit status $status"; else bad "wheeldraft make $file: exit status $status"; sed 's/^/      /' "$work/log"; continue; fi
        if [ -d "output-samples/$name" ]; then
            check "$file gives output-samples/$name" /usr/bin/python3 .ci/compare-samples.py "$work/made/$name" "output-samples/$name"
        else
            bad "output-samples/$name is missing"
        fi
    done

    # A moment, with an input closed and numbers for callouts.
    check "wheeldraft make --frame" "$program" make parameters/propagation-bench.toml --only draw --frame "125 s" --closed lid --callouts numbers -o "$work/made/at-125-s"
    check "--frame gives output-samples/propagation-bench-at-125-s" /usr/bin/python3 .ci/compare-samples.py "$work/made/at-125-s" output-samples/propagation-bench-at-125-s
}
