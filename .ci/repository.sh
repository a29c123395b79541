# Steps: what lies in the repository, whether it builds, and its benchmarks.

check_contents() {
    local faults=0 name
    for name in *; do
        case $name in
            README.md | DEVELOPERS.md | src | tests | benchmarks | docs | ScNet.sln | nuget.config) ;;
            *)
                echo "The root holds '$name', which has no place there."
                faults=1
                ;;
        esac
    done
    # Where packages come from is a matter of the machine, not of the repository.
    refuse 'names the host of a package registry' \
        '(nuget|npmjs|pypi|pythonhosted|crates|myget|golang)[.](org|com|io)' '*' || faults=1
    refuse 'is not finished' '\b(TODO|FIXME|HACK)\b|NotImplementedException' '*.cs' || faults=1
    refuse 'skips a test' '\bSkip *=' '*.cs' || faults=1
    return "$faults"
}

# refuse FAULT PATTERN FILES: fails and shows the places where a file of the repository matches.
refuse() {
    local places status=0
    places=$(grep -rnIE --include="$3" \
        --exclude-dir=.git --exclude-dir=.artifacts --exclude-dir=.packages --exclude-dir=.vs --exclude-dir=.idea \
        --exclude-dir=bin --exclude-dir=obj -e "$2" .) || status=$?
    case $status in
        0)
            printf 'A file %s:\n%s\n' "$1" "$places"
            return 1
            ;;
        1) return 0 ;;
        *) return "$status" ;;
    esac
}

build() {
    dotnet restore ScNet.sln
    # Reports of the registry about packages are shown, but another day's news must not break the build.
    dotnet build ScNet.sln --no-restore -c Release -warnaserror \
        '-warnnotaserror:NU1900;NU1901;NU1902;NU1903;NU1904'
}

# Rules of style and analyzers are errors of the build; what is left to look at is the layout of lines, which needs the files
# and .editorconfig alone.
check_formatting() {
    # compiled once and well: the same few methods run over every file
    DOTNET_TieredCompilation=0 dotnet format whitespace . --folder --exclude .artifacts --exclude .packages --verify-no-changes
}

run_benchmarks() {
    dotnet run -c Release --project benchmarks/ScNet.Benchmarks -- \
        --filter '*' --job dry --inProcess --artifacts .artifacts/bench | tee "$temporary/benchmarks.txt"
    # A benchmark that throws is reported and left out; the exit code alone does not tell.
    if grep -q 'Benchmarks with issues' "$temporary/benchmarks.txt" || ! grep -q 'WorkloadResult' "$temporary/benchmarks.txt"; then
        echo 'Expected a result from every benchmark.'
        return 1
    fi
}
