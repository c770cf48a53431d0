# Programs of others: what each is for, and how Debian brings it.

# have NAME: whether it works here.
have() {
    case $1 in
        ezdxf | shapely | PIL) /usr/bin/python3 -c "import $1" 2>/dev/null ;;
        compiler) command -v clang >/dev/null || command -v gcc >/dev/null ;;
        zlib) [ -e /usr/include/zlib.h ] ;;
        fonts) [ -e /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf ] ;;
        *) command -v "$1" >/dev/null ;;
    esac
}

# Name, Debian package, use.
outside_programs='
ezdxf          python3-ezdxf     reads every DXF file, and makes drawings to be read
shapely        python3-shapely   measures those drawings
PIL            python3-pil       compares pictures that another platform painted
rsvg-convert   librsvg2-bin      draws every SVG file
pdfinfo        poppler-utils     reads and draws every PDF file
qpdf           qpdf              checks the structure of every PDF file
chromium       chromium          draws pictures and runs pages
fonts          fonts-dejavu-core gives SVG viewers a font for live text
zsh            zsh               completes the words of the command line
fish           fish              completes them too
groff          groff             formats the manual page
compiler       gcc               links the native program
zlib           zlib1g-dev        links the native program
'

# fetch_outside: installs what is missing, where that can be done.
fetch_outside() {
    local name package use
    local -a missing=() root=()
    while read -r name package use; do
        [ -n "$name" ] || continue
        have "$name" || missing+=("$package")
    done <<<"$outside_programs"

    [ ${#missing[@]} -gt 0 ] || return 0
    if command -v apt-get >/dev/null; then
        [ "$(id -u)" -eq 0 ] || root=(sudo -n)
        printf 'note  installing %s\n' "${missing[*]}"
        { "${root[@]}" apt-get update -qq && DEBIAN_FRONTEND=noninteractive "${root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}"; } >"$work/fetch" 2>&1 \
            || sed 's/^/      /' "$work/fetch"
    else
        printf 'note  this is no Debian: install by hand what is missing below\n'
    fi
}

# tell_outside: one check a program, whether it is here.
tell_outside() {
    local name package use
    while read -r name package use; do
        [ -n "$name" ] || continue
        if have "$name"; then good "$name ($package) $use"; else bad "$name (Debian package $package), which $use, is not here and could not be installed"; fi
    done <<<"$outside_programs"
}
