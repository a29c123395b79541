# Step of .ci/full: reports in a real browser. Runs after the README's tests; its tests join their count.

try_reports() {
    find_browser
    echo "$("$CHROMIUM" --version 2>/dev/null) ($CHROMIUM)"
    HasBrowser=true dotnet test tests/ScNet.Reporting.Browser -c Release | tee -a "$test_output"
    if ! grep -qE 'Passed! .*ScNet[.]Reporting[.]Browser' "$test_output"; then
        echo 'Expected the tests in the browser to run and to pass.'
        return 1
    fi
}

# Chromium of the machine, or the one that CHROMIUM names; installed where the system is Debian's and we may.
find_browser() {
    local found=${CHROMIUM:-}
    [ -n "$found" ] || found=$(command -v chromium || command -v chromium-browser || command -v google-chrome || true)
    if [ -z "$found" ] && [ "$(id -u)" -eq 0 ] && command -v apt-get >/dev/null; then
        echo 'There is no Chromium: installing it.'
        apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium >/dev/null
        found=$(command -v chromium || true)
    fi
    if [ -z "$found" ]; then
        echo 'There is no Chromium, and it cannot be installed here: install it, or name the program of one in CHROMIUM.'
        return 1
    fi
    export CHROMIUM=$found
}
