# What people install, made and tried as they would.

try_packages() {
    check "packed: the tool, two libraries with documentation and symbols; from another folder the same bytes" .ci/pack.sh "$work/packed"
    check "first steps with nothing but the SDK and these packages: install, completion, first wheel, guide, the libraries' samples" .ci/first-steps.sh "$work/packed"
}
