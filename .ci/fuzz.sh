# A small share of what tests/WheelDraft.Fuzz does: the same cases in every run. Its README tells of the long ones.

fuzz_a_little() {
    local asked=(--parameters 10000 --drawings 8000 --arguments 2000 --seed 1 --folder "$work/fuzz")
    check "20,000 mutated parameter files, drawings and argument lists" dotnet run --no-build --project tests/WheelDraft.Fuzz -- run "${asked[@]}"
    sed 's/^/      /' "$work/log" | cut -c 1-240 | head -8
}
