# A small share of what tests/WheelDraft.Fuzz does: the same cases in every run. Its README tells of the long ones.

# Six seconds a case in place of two: where CI runs others may be at work, and then the processor counts more time for the same work.
fuzz_a_little() {
    local asked=(--parameters 5000 --drawings 12000 --arguments 3000 --seed 1 --seconds 6 --folder "$work/fuzz")
    check "20,000 mutated parameter files, drawings and argument lists" dotnet run --no-build --project tests/WheelDraft.Fuzz -- run "${asked[@]}"
    sed 's/^/      /' "$work/log" | cut -c 1-240 | head -8
}
