# The rounds of a campaign of laws and their report; see .ci/campaign.

# hold_laws SECONDS SEED ROUNDS: 0 where no law was broken and no test failed
hold_laws() {
    local seconds=$1 seed=$2 rounds=$3 round=0 failed=0 folder
    folder=$PWD/.artifacts/laws
    rm -rf "$folder"
    mkdir -p "$folder"
    dotnet build -c Release -v quiet -nologo || return 1
    SECONDS=0
    while [ "$SECONDS" -lt "$seconds" ] && { [ "$rounds" -eq 0 ] || [ "$round" -lt "$rounds" ]; }; do
        export SCNET_LAWS_SEED=$((seed + round)) SCNET_LAWS_REPORT=$folder/$SCNET_LAWS_SEED
        mkdir -p "$SCNET_LAWS_REPORT"
        round=$((round + 1))
        if dotnet test -c Release --no-build --filter "Kind=Law${CAMPAIGN_FILTER:+&($CAMPAIGN_FILTER)}" >"$SCNET_LAWS_REPORT/log" 2>&1; then
            echo "Round $round, seed $SCNET_LAWS_SEED: held after $SECONDS s."
        else
            failed=1
            echo "Round $round, seed $SCNET_LAWS_SEED: FAILED after $SECONDS s."
            awk -F'\t' -v seed="$SCNET_LAWS_SEED" '$1 == "broken" {
                print "  " $2 " is broken: " $4
                print "    this case alone: SCNET_LAWS_CASE=" $3 " dotnet test -c Release --filter \"FullyQualifiedName~" $2 "\""
                print "    all of the round: SCNET_LAWS_SEED=" seed " SCNET_LAWS_TIMES='"${SCNET_LAWS_TIMES:-1}"' dotnet test -c Release --filter \"FullyQualifiedName~" $2 "\""
            }' "$SCNET_LAWS_REPORT"/*.tsv
            grep -E '^ +Failed ' "$SCNET_LAWS_REPORT/log"
        fi
    done
    echo
    summarise_laws "$folder" "$round" "$seed" "$failed"
    return $failed
}

# the counts and the worst errors of all rounds: summarise_laws FOLDER ROUNDS SEED FAILED
summarise_laws() {
    awk -F'\t' -v rounds="$2" -v seed="$3" '
        $1 == "law" { laws[$2] = 1; cases += $3 }
        $1 == "broken" { broken++ }
        $1 == "error" {
            key = $2 "\t" $3
            count[key] += $4; figures[key] += $5
            if (!(key in worst) || $6 + 0 > worst[key] + 0 || $6 == "Infinity") { worst[key] = $6; at[key] = $8 }
            if ($7 + 0 > tolerance[key] + 0) { tolerance[key] = $7 }
        }
        END {
            n = 0; for (law in laws) n++
            printf "%d laws held in %d cases, %d times broken, in %d rounds from seed %s.\n\n", n, cases, broken, rounds, seed
            fflush()
            sorted = "sort | column -t -s \"\t\""
            for (key in count) {
                split(key, part, "\t")
                gsub(/e-0/, "e-", worst[key]); gsub(/e-0/, "e-", tolerance[key]); sub(/0\.0e\+000/, "0", worst[key])
                rows[key] = part[1] "\t" count[key] "\t" figures[key] "\t" worst[key] "\t" tolerance[key] "\t" part[2] "\t" at[key]
            }
            print "Quantity\tCases\tFigures\tWorst\tAllowed\tLaw\tWorst case" | "cat >&3"
            for (key in rows) print rows[key] | "sort >&3"
        }' "$1"/*/*.tsv 3>"$1/table.tsv"
    column -t -s "$(printf '\t')" "$1/table.tsv"
}
