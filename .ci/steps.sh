# The machinery of .ci/run: steps, a temporary folder, cleaning up, and the closing line.

export DOTNET_CLI_TELEMETRY_OPTOUT=1
export DOTNET_NOLOGO=1
export DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1
export DOTNET_CLI_UI_LANGUAGE=en
export MSBUILDTERMINALLOGGER=off
export MSBUILDDISABLENODEREUSE=1

temporary=$(mktemp -d)
test_output=$temporary/tests.txt
failures=0
unchecked=0

# An account without a home of its own still needs a place for settings and downloaded packages.
if [ ! -w "${HOME:-/nonexistent}" ]; then
    export HOME=$temporary/home
    mkdir "$HOME"
fi

# An installed tool finds a runtime outside the usual place through this variable only.
if [ -z "${DOTNET_ROOT:-}" ] && command -v dotnet >/dev/null; then
    DOTNET_ROOT=$(dirname "$(readlink -f "$(command -v dotnet)")")
    export DOTNET_ROOT
fi

# The exit code of a step that this machine cannot run: it says why, fails nothing, and does not count as passed.
not_checked=77

# step TITLE COMMAND...: runs a command, shows how long it took, and remembers whether it failed. Not to be
# called in a condition: bash would then go on after the first failure inside the command.
step() {
    local title=$1 start=$SECONDS status
    shift
    printf '\n== %s\n' "$title"
    (
        set -e
        "$@"
    )
    status=$?
    if [ "$status" -eq "$not_checked" ]; then
        printf -- '-- %s: NOT CHECKED, %d s\n' "$title" $((SECONDS - start))
        unchecked=$((unchecked + 1))
        status=0
    elif [ "$status" -eq 0 ]; then
        printf -- '-- %s: ok, %d s\n' "$title" $((SECONDS - start))
    else
        printf -- '-- %s: FAILED with exit code %d, %d s\n' "$title" "$status" $((SECONDS - start))
        failures=$((failures + 1))
    fi
    return "$status"
}

# count_tests WORD: the sum of what the test assemblies report under that word.
count_tests() {
    sed -nE "s/^.*(Passed|Failed|Skipped)! .*[ -]$1: +([0-9]+),.*$/\2/p" "$test_output" 2>/dev/null |
        awk '{ sum += $1 } END { print sum + 0 }'
}

finish() {
    local status=$? passed failed
    trap - EXIT
    remove_packed
    passed=$(count_tests Passed)
    failed=$(count_tests Failed)
    rm -rf "$temporary"
    if [ "$unchecked" -gt 0 ]; then
        printf '\nNot checked on this machine: %d of the steps above.\n' "$unchecked"
    fi
    printf '\n%d passed, %d failed\n' "$passed" "$failed"
    exit "$status"
}
trap finish EXIT
trap 'exit 130' INT
trap 'exit 143' TERM
