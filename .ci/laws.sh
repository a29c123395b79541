# The rounds of a campaign of laws and their report; see .ci/campaign.

# hold_laws SECONDS SEED ROUNDS: 0 where no law was broken and no test failed
hold_laws() {
    local seconds=$1 seed=$2 rounds=$3 round=0 failed=0 folder
    folder=$PWD/.artifacts/laws
    rm -rf "$folder"
    mkdir -p "$folder"
    dotnet build -c Release -v quiet -nologo || return 1
    export SCNET_LAWS_TIMES=${SCNET_LAWS_TIMES:-4}
    SECONDS=0
    while [ "$SECONDS" -lt "$seconds" ] && { [ "$rounds" -eq 0 ] || [ "$round" -lt "$rounds" ]; }; do
        export SCNET_LAWS_SEED=$((seed + round))
        export SCNET_LAWS_REPORT=$folder/$SCNET_LAWS_SEED
        mkdir -p "$SCNET_LAWS_REPORT"
        round=$((round + 1))
        if dotnet test -c Release --no-build -p:RunsLongTests=true --filter "Kind=Law${CAMPAIGN_FILTER:+&($CAMPAIGN_FILTER)}" >"$SCNET_LAWS_REPORT/log" 2>&1; then
            echo "Round $round, seed $SCNET_LAWS_SEED: held after $SECONDS s."
        else
            failed=1
            echo "Round $round, seed $SCNET_LAWS_SEED: FAILED after $SECONDS s."
            awk -F'\t' -v seed="$SCNET_LAWS_SEED" '$1 == "broken" {
                print "  " $2 " is broken: " $4
                print "    this case alone: SCNET_LAWS_CASE=" $3 " dotnet test -c Release -p:RunsLongTests=true --filter \"FullyQualifiedName~" $2 "\""
                print "    all of the round: SCNET_LAWS_SEED=" seed " SCNET_LAWS_TIMES='"$SCNET_LAWS_TIMES"' dotnet test -c Release -p:RunsLongTests=true --filter \"FullyQualifiedName~" $2 "\""
            }' "$SCNET_LAWS_REPORT"/*.tsv 2>/dev/null || true
            grep -E '^ +Failed ' "$SCNET_LAWS_REPORT/log" || tail -n 20 "$SCNET_LAWS_REPORT/log"
        fi
    done
    echo
    summarise_laws "$folder" "$round" "$seed"
    return $failed
}

# the counts, the worst errors and the dearest laws of all rounds: summarise_laws FOLDER ROUNDS SEED
summarise_laws() {
    local tab
    tab=$(printf '\t')
    awk -F'\t' -v rounds="$2" -v seed="$3" '
        $1 == "law" { laws[$2] = 1; cases += $3 }
        $1 == "broken" { broken++ }
        END {
            for (law in laws) n++
            printf "%d laws held in %d cases, %d times broken, in %d rounds from seed %s.\n\n", n, cases, broken, rounds, seed
        }' "$1"/*/*.tsv
    printf 'Quantity\tCases\tFigures\tWorst\tAllowed\tLaw\tWorst case\n' >"$1/errors.tsv"
    awk -F'\t' '
        $1 == "error" {
            key = $2 "\t" $3
            count[key] += $4; figures[key] += $5
            if (!(key in worst) || $6 + 0 > worst[key] + 0 || $6 == "Infinity") { worst[key] = $6; at[key] = $8 }
            if ($7 + 0 > tolerance[key] + 0) { tolerance[key] = $7 }
        }
        END {
            for (key in count) {
                split(key, part, "\t")
                print part[1] "\t" count[key] "\t" figures[key] "\t" worst[key] "\t" tolerance[key] "\t" part[2] "\t" at[key]
            }
        }' "$1"/*/*.tsv | LC_ALL=C sort >>"$1/errors.tsv"
    column -t -s "$tab" "$1/errors.tsv"
    printf '\nThe dearest laws, in processor seconds (exact with DOTNET_PROCESSOR_COUNT=1 alone):\n'
    awk -F'\t' '$1 == "law" { cases[$2] += $3; cost[$2] += $4 } END { for (law in cost) printf "%.1f\t%d cases\t%s\n", cost[law], cases[law], law }' "$1"/*/*.tsv |
        LC_ALL=C sort -t "$tab" -k1,1nr | head -n 20 | column -t -s "$tab"
}
