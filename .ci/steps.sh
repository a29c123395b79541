# The machinery of .ci/run and .ci/full: steps, a temporary folder, cleaning up, and the closing line.

export DOTNET_CLI_TELEMETRY_OPTOUT=1
export DOTNET_NOLOGO=1
export DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1
export DOTNET_CLI_UI_LANGUAGE=en
export MSBUILDTERMINALLOGGER=off
export MSBUILDDISABLENODEREUSE=1
# One compiler serves all projects of a run and ends with it, also where the environment would have each project warm up its own.
export UseSharedCompilation=true
export SharedCompilationId=scnet-checks-$$
# Programs that run for a minute lose more by counting calls than they gain.
export DOTNET_TieredPGO=0
# Tests make much that lives short: fewer and later collections take half the time.
export DOTNET_gcConcurrent=0 DOTNET_GCgen0size=0x6000000

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

# aside TITLE COMMAND...: a step that runs beside the next ones and is shown by join.
aside() {
    aside_title=$1
    shift
    (
        set -e
        "$@"
        echo "Took $SECONDS s beside other steps."
    ) >"$temporary/aside.txt" 2>&1 &
    aside_process=$!
}

# join: waits for the step beside and shows it as a step.
join() {
    wait "$aside_process"
    aside_status=$?
    step "$aside_title" show_aside
}

show_aside() {
    cat "$temporary/aside.txt"
    return "$aside_status"
}

# The compiler that served this run, and no other one, is ended with it.
end_compiler() {
    local process
    for process in $(ps -eo pid,args 2>/dev/null | awk -v name="-pipename:$SharedCompilationId" '{ for (k = 2; k <= NF; k++) if ($k == name) print $1 }'); do
        kill "$process" 2>/dev/null
    done
}

# count_tests WORD: the sum of what the test assemblies report under that word.
count_tests() {
    sed -nE "s/^.*(Passed|Failed|Skipped)! .*[ -]$1: +([0-9]+),.*$/\2/p" "$test_output" 2>/dev/null |
        awk '{ sum += $1 } END { print sum + 0 }'
}

finish() {
    local status=$? passed failed
    trap - EXIT
    end_compiler
    # only .ci/full packs
    if declare -F remove_packed >/dev/null; then
        remove_packed
    fi
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
