# Step of .ci/full: the tool's completion in the shells themselves, bash, zsh and fish. PowerShell has no package in Debian: its script is
# held by its text alone, in the tests of the tool.

try_completion() {
    local folder=$temporary/shells tool shell
    tool=$(find "$PWD/.artifacts/bin/ScNet.Cli" -name ScNet.Cli.dll -path '*release*' | head -n 1)
    [ -n "$tool" ] || { echo 'Expected the tool to be built.'; return 1; }
    mkdir "$folder"
    printf '#!/bin/sh\nexec dotnet "%s" "$@"\n' "$tool" >"$folder/scnet"
    chmod +x "$folder/scnet"
    cp docs/examples/memory-gears.toml "$folder/two gears.toml"
    for shell in bash zsh fish; do
        if find_shell "$shell"; then
            echo "$shell: $("$shell" --version | head -n 1)"
            (cd "$folder" && PATH="$folder:$PATH" "complete_in_$shell") >"$folder/$shell.txt"
            compare_completion "$shell" "$folder/$shell.txt"
        else
            echo "$shell: there is none, and it cannot be installed here; its script was not run."
        fi
    done
}

# A shell of the machine; installed where the system is Debian's and we may.
find_shell() {
    command -v "$1" >/dev/null && return
    [ "$(id -u)" -eq 0 ] && command -v apt-get >/dev/null || return 1
    { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$1"; } >/dev/null 2>&1
    command -v "$1" >/dev/null
}

# What every shell makes of the same lines: a command, a value, a mode out of a file with a blank in its name, a value behind a sign.
compare_completion() {
    if ! diff - "$2" <<'LINES'
scnet sweep
scnet stress --family dickson
scnet analyze two\ gears.toml --mode 1/3
scnet compare --format=json
LINES
    then
        echo "Expected the lines above on the left of $1, but got those on the right."
        return 1
    fi
}

complete_in_bash() {
    bash --noprofile --norc <<'SHELL'
source <(scnet completion bash)
tell() { COMP_WORDS=("${@:2}"); COMP_CWORD=$(($# - 2)); COMPREPLY=(); _scnet; echo "$1${COMPREPLY[*]}"; }
tell 'scnet ' scnet sw
tell 'scnet stress --family ' scnet stress --family dic
tell 'scnet analyze two\ gears.toml --mode ' scnet analyze 'two gears.toml' --mode 1/3
tell 'scnet compare --format=' scnet compare --format = j
SHELL
}

# Fish tells what a line may become; files stand among the commands, so the tool's own are those that begin like the word.
complete_in_fish() {
    fish --no-config <<'SHELL'
scnet completion fish | source
function tell
    echo $argv[1](complete -C "$argv[1]$argv[2]" | string replace -r '\t.*' '' | string replace -r '^--[a-z]+=' '')
end
tell 'scnet ' sw
tell 'scnet stress --family ' dic
tell 'scnet analyze two\\ gears.toml --mode ' 1/3
tell 'scnet compare --format=' j
SHELL
}

# Zsh completes at a terminal only: one is made, the lines are typed into it, and Control-X writes what became of each into a file.
complete_in_zsh() {
    cat >.zshrc <<'SHELL'
PS1='ready> '
autoload -U compinit && compinit -D -u
unsetopt beep
source <(scnet completion zsh)
tell() { print -r -- "${BUFFER% }" >>typed.txt; BUFFER=; }
zle -N tell
bindkey '^X' tell
SHELL
    : >typed.txt
    ZDOTDIR=$PWD timeout 120 zsh -f <<'SHELL'
zmodload zsh/zpty
zpty shell zsh -i
zpty -r shell out '*ready> *'
integer typed=0
for line in 'scnet sw' 'scnet stress --family dic' 'scnet analyze two\ gears.toml --mode 1/3' 'scnet compare --format=j'; do
    zpty -w -n shell "$line"$'\t'$'\x18'
    typed+=1
    while (( $(wc -l <typed.txt) < typed )); do sleep 0.1; done
done
zpty -d shell
SHELL
    cat typed.txt
}
