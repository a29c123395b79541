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
    bash -euo pipefail -c "$commands" | tee "$output"
    if ! diff docs/examples/core-design/result.txt "$output"; then
        echo 'Expected the result that stands beside the example, on the left.'
        return 1
    fi
}

run_readme_tests() {
    local commands summaries assemblies
    commands=$(readme_block 'dotnet test')
    echo "$commands"
    bash -euo pipefail -c "$commands" | tee "$test_output"
    summaries=$(grep -cE '(Passed|Failed|Skipped)! +- Failed:' "$test_output" || true)
    assemblies=$(find tests -name '*.Tests.csproj' | wc -l)
    if [ "$summaries" -ne "$assemblies" ]; then
        echo "Expected a summary from each of the $assemblies test assemblies, but there are $summaries."
        return 1
    fi
    if [ "$(count_tests Passed)" -eq 0 ] || [ "$(count_tests Skipped)" -ne 0 ]; then
        echo 'Expected every test to run, but none ran or some were skipped.'
        return 1
    fi
}
