# Of .ci/campaign: hostile texts for everything that reads text, with afl++ and instrumented copies of the libraries.

fuzz_default=10000000
fuzz_assemblies=(ScNet ScNet.Derivations ScNet.Search ScNet.Cli Tomlyn)

# fuzz [EXECUTIONS|SECONDSs] [TARGET...]: builds, instruments, runs every target in turn and reports.
fuzz() {
    local amount=${1:-$fuzz_default} work=$PWD/.artifacts/fuzz faults=0 name
    [ $# -eq 0 ] || shift
    [[ $amount =~ ^[1-9][0-9]*s?$ ]] || { echo "Expected a number of executions, such as 10000000, or of seconds, such as 600s, but got '$amount'."; return 2; }
    find_afl
    instrument "$work"
    limit_costs
    fuzz_report=$work/report.tsv
    rm -rf "$work/found"
    mkdir -p "$work/found"
    printf 'target\texecutions\tseconds\tper second\ttexts kept\tedges\tstability\tbroken\thangs\n' >"$fuzz_report"
    while read -r name length weight; do
        if [ $# -eq 0 ] || [[ " $* " == *" $name "* ]]; then
            fuzz_target "$name" "$length" "$weight" "$amount" "$work"
        fi
    done < <(dotnet "$work/plain/ScNet.Fuzzing.dll")
    awk -F'\t' -v OFS='\t' '{ print } NR > 1 { e += $2; s += $3; b += $8; h += $9 } END { print "all", e, s, sprintf("%.0f", s ? e / s : 0), "-", "-", "-", b, h }' "$fuzz_report" |
        column -t -s $'\t'
    for name in "$work"/found/*/default/{crashes,hangs}/id*; do
        if [ -e "$name" ]; then
            echo "Broken by $name:"
            dotnet "$work/plain/ScNet.Fuzzing.dll" "$(basename "$(dirname "$(dirname "$(dirname "$name")")")")" "$name" | head -n 5 || true
            faults=1
        fi
    done
    return "$faults"
}

find_afl() {
    if ! command -v afl-fuzz >/dev/null && [ "$(id -u)" -eq 0 ] && command -v apt-get >/dev/null; then
        echo 'There is no afl++: installing it.'
        apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends afl++ >/dev/null
    fi
    if ! command -v afl-fuzz >/dev/null; then
        echo "This needs Debian's afl++, and it cannot be installed here."
        return 1
    fi
}

# The libraries are instrumented in a copy, which runs under afl-fuzz alone: the plain one tells what is wrong with a text.
instrument() {
    local work=$1 assembly
    dotnet tool restore >/dev/null
    dotnet build -c Release tests/ScNet.Fuzzing -v quiet -nologo
    rm -rf "$work/plain" "$work/bin"
    mkdir -p "$work"
    cp -r "$(dirname "$(find .artifacts/bin/ScNet.Fuzzing -path '*/release*' -name ScNet.Fuzzing.dll -not -path '*/ref/*' | head -n 1)")" "$work/plain"
    cp -r "$work/plain" "$work/bin"
    for assembly in "${fuzz_assemblies[@]}"; do
        dotnet sharpfuzz "$work/bin/$assembly.dll"
    done
}

# A gigabyte of memory, one thread, and nothing that afl-fuzz would ask a person about.
limit_costs() {
    export DOTNET_GCHeapHardLimit=0x40000000 DOTNET_GCgen0size=0x4000000 DOTNET_gcConcurrent=0 DOTNET_TieredPGO=0
    export AFL_SKIP_BIN_CHECK=1 AFL_NO_UI=1 AFL_NO_AFFINITY=1 AFL_SKIP_CPUFREQ=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_FORKSRV_INIT_TMOUT=120000
}

# The program itself counts a second of processor time as too long; what does not end at all is stopped after 20 seconds on the clock.
fuzz_target() {
    local name=$1 length=$2 weight=$3 amount=$4 work=$5 limit corpus=$PWD/tests/ScNet.Fuzzing
    if [[ $amount == *s ]]; then
        limit=(-V $((${amount%s} * weight / 100 + 1)))
    else
        limit=(-E $((amount * weight / 100)))
    fi
    mkdir -p "$work/seeds/$name"
    rm -f "$work/seeds/$name"/*
    cp "$corpus/corpora/$name"/* "$work/seeds/$name"
    if [ -d "$corpus/crashers/$name" ]; then
        cp "$corpus/crashers/$name"/* "$work/seeds/$name"
    fi
    echo "Fuzzing $name."
    if ! afl-fuzz "${limit[@]}" -m none -t 20000 -G "$length" -i "$work/seeds/$name" -o "$work/found/$name" \
        -x "$corpus/dictionaries/$name.dict" -- dotnet "$work/bin/ScNet.Fuzzing.dll" "$name" </dev/null >"$work/found/$name.log" 2>&1; then
        tail -n 20 "$work/found/$name.log"
        echo "What ended the program, as an endless loop or too deep a recursion does, is in $work/found/$name/default/.cur_input."
        return 1
    fi
    fuzz_row "$name" "$work/found/$name/default/fuzzer_stats" >>"$fuzz_report"
}

# fuzz_row NAME STATISTICS: a line of the report.
fuzz_row() {
    awk -F' *: *' -v name="$1" -v OFS='\t' '
        { value[$1] = $2 }
        END {
            print name, value["execs_done"], value["run_time"], sprintf("%.0f", value["execs_per_sec"]), value["corpus_count"],
                value["edges_found"], value["stability"], value["saved_crashes"], value["saved_hangs"]
        }' "$2"
}

# keep [TARGET...]: of the texts of the corpora and those that the last campaign found keeps as many as reach the same places in the code.
keep() {
    local work=$PWD/.artifacts/fuzz corpora=$PWD/tests/ScNet.Fuzzing/corpora program name length weight file kept
    program=$(readlink -f "$(command -v dotnet)")
    find_afl
    limit_costs
    while read -r name length weight; do
        if [ -d "$work/found/$name/default/queue" ] && { [ $# -eq 0 ] || [[ " $* " == *" $name "* ]]; }; then
            rm -rf "$work/all" "$work/kept"
            mkdir -p "$work/all"
            cp "$corpora/$name"/* "$work/all"
            cp "$work/found/$name/default/queue"/id* "$work/all"
            AFL_ALLOW_TMP=1 afl-cmin -e -m none -t 20000 -i "$work/all" -o "$work/kept" -- "$program" "$work/bin/ScNet.Fuzzing.dll" "$name" >"$work/keep.log" 2>&1
            for file in "$corpora/$name"/*; do
                # those with a name of their own stay, to be read by people
                if [[ $(basename "$file") =~ ^[0-9a-f]{16}$ ]] && [ ! -e "$work/kept/$(basename "$file")" ]; then
                    rm "$file"
                fi
            done
            kept=0
            for file in "$work/kept"/id*; do
                # afl-fuzz trims what it keeps, but a text may be longer than what is tried of it
                head -c "$length" "$file" >"$work/text"
                cp "$work/text" "$corpora/$name/$(sha256sum "$work/text" | cut -c 1-16)"
                kept=$((kept + 1))
            done
            echo "$name: $kept texts added"
        fi
    done < <(dotnet "$work/plain/ScNet.Fuzzing.dll")
}

# lines: how many lines of what reads text the corpora reach, by folder.
lines() {
    local results=$PWD/.artifacts/fuzz/coverage
    rm -rf "$results"
    dotnet test -c Release tests/ScNet.Fuzzing.Tests --filter FullyQualifiedName~CorpusTests --collect 'XPlat Code Coverage' --results-directory "$results"
    awk '
        match($0, /<source>[^<]*/) { next }
        match($0, /<class [^>]*filename="[^"]*/) {
            file = substr($0, RSTART, RLENGTH)
            sub(/.*filename="/, "", file)
        }
        match($0, /<line number="[0-9]+" hits="[0-9]+/) {
            split(substr($0, RSTART, RLENGTH), part, "\"")
            place = file ":" part[2]
            hit[place] = (place in hit && hit[place]) || part[4] > 0
        }
        END {
            for (place in hit) {
                if (match(place, /(Netlists|Design\/Requirements|Documents|Snapshots|Expressions|Shards)\//)) {
                    folder = substr(place, RSTART, RLENGTH - 1)
                    all[folder]++
                    reached[folder] += hit[place]
                }
            }
            for (folder in all) {
                printf "%s: %d of %d lines, %.1f %%\n", folder, reached[folder], all[folder], 100 * reached[folder] / all[folder]
            }
        }' "$results"/*/coverage.cobertura.xml | sort
}
