# Steps: the commands of README.md, exactly as a reader would copy them.

# readme_block WORDS: the first fenced sh block of README.md that has a line starting with these words.
readme_block() {
    local block
    block=$(awk -v words="$1" '
        /^```sh *$/ { inside = 1; wanted = 0; block = ""; next }
        /^```/ { if (inside && wanted) { printf "%s", block; exit } inside = 0; next }
        inside { block = block $0 "\n"; if (index($0, words) == 1) wanted = 1 }
    ' README.md)
    if [ -z "$block" ]; then
        echo "README.md has no fenced sh block with a line that starts with '$1'." >&2
        return 1
    fi
    printf '%s\n' "$block"
}

run_readme_design() {
    local commands output=$temporary/design.txt
    commands=$(readme_block 'dotnet run ')
    echo "$commands"
    DOTNET_TieredCompilation=0 bash -euo pipefail -c "$commands" | tee "$output"
    if ! diff docs/examples/core-design/result.txt "$output"; then
        echo 'Expected the result that stands beside the example, on the left.'
        return 1
    fi
}

run_readme_tests() {
    local commands
    commands=$(readme_block 'dotnet test')
    echo "$commands"
    bash -euo pipefail -c "$commands" | tee "$test_output"
    expect_all_assemblies
}

# The README's test command once for each assembly, all of which are built: two at a time with one thread
# each, the longest first, so that a class of tests that runs alone at the end of one leaves no processor idle.
run_tests_side_by_side() {
    local commands name status=0
    commands=$(readme_block 'dotnet test' | head -n 1)
    echo "$commands --no-build ASSEMBLY, two at a time"
    test_assemblies | xargs -P 2 -I NAME \
        bash -c "$commands --no-build tests/NAME -- xUnit.MaxParallelThreads=1 >'$temporary/NAME.txt' 2>&1" || status=$?
    for name in $(test_assemblies); do
        cat "$temporary/$name.txt"
    done | tee "$test_output"
    expect_all_assemblies
    return "$status"
}

test_assemblies() {
    {
        printf '%s\n' ScNet.Tests ScNet.Reporting.Tests ScNet.Cli.Tests ScNet.Synthesis.Tests ScNet.Search.Tests
        find tests -name '*.Tests.csproj' -exec basename {} .csproj \; | sort
    } | awk '!seen[$0]++'
}

expect_all_assemblies() {
    local summaries assemblies
    summaries=$(grep -cE '(Passed|Failed|Skipped)! +- Failed:' "$test_output" || true)
    assemblies=$(test_assemblies | wc -l)
    if [ "$summaries" -ne "$assemblies" ]; then
        echo "Expected a summary from each of the $assemblies test assemblies, but there are $summaries."
        return 1
    fi
    if [ "$(count_tests Passed)" -eq 0 ] || [ "$(count_tests Skipped)" -ne 0 ]; then
        echo 'Expected every test to run, but none ran or some were skipped.'
        return 1
    fi
}
