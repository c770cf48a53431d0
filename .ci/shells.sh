# Completion scripts and the manual page, tried with the shells and the formatter that people have. The unit tests ask bash.

# asks SHELL: a few questions, each with a word that must be among the answers.
asks_fish() {
    wheeldraft_script fish >"$work/wheeldraft.fish" || return 1
    local question word
    while IFS='|' read -r question word; do
        fish --no-config -c "source $work/wheeldraft.fish; complete -C '$question'" | cut -f1 | grep -xF -- "$word" >/dev/null || { printf 'fish, asked for "%s", does not offer %s\n' "$question" "$word"; return 1; }
    done <<'END'
wheeldraft ma|make
wheeldraft rule cr|creepage
wheeldraft make --the|--theme
wheeldraft make --theme |dark
wheeldraft explain spacing.cr|spacing.creepage
wheeldraft new x --like sh|shortest
END
}

# A line editor of its own, since zsh completes nothing without one.
asks_zsh() {
    mkdir -p "$work/zsh"
    wheeldraft_script zsh >"$work/zsh/_wheeldraft" || return 1
    local question word
    while IFS='|' read -r question word; do
        zsh -f .ci/ask-zsh.zsh "$work/zsh" "$question" | grep -F -- "$word" >/dev/null || { printf 'zsh, asked for "%s", does not offer %s\n' "$question" "$word"; return 1; }
    done <<'END'
wheeldraft ma|make
wheeldraft rule cr|creepage
wheeldraft make --them|--theme
wheeldraft make --theme da|dark
wheeldraft explain spacing.cr|spacing.creepage
wheeldraft new x --like sho|shortest
END
}

wheeldraft_script() { dotnet run --no-build --project src/WheelDraft.Cli -- completion "$1"; }

# groff complains of what a manual page must not have.
reads_manual() {
    dotnet run --no-build --project src/WheelDraft.Cli -- manual >"$work/wheeldraft.1" || return 1
    local faults
    faults=$(groff -man -Tutf8 -P-cbou -ww "$work/wheeldraft.1" 2>&1 >"$work/manual")
    [ -z "$faults" ] || { printf '%s\n' "$faults"; return 1; }
    grep -q 'EXIT STATUS' "$work/manual"
}

try_shells() {
    check "fish completes" asks_fish
    check "zsh completes" asks_zsh
    check "the manual page, formatted without complaint" reads_manual
}
