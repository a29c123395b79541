# Step of .ci/full: the array job of docs/examples on a real cluster of two nodes, all on the loopback of this machine and
# in a folder of its own: what is installed here already, and its configuration, is neither used nor changed.

capacitors=4
parts=8
killed_part=3

try_cluster() {
    find_slurm || return $?
    cluster=$temporary/cluster
    daemons=()
    mkdir -p "$cluster"/{state,n1,n2,bin,parts,logs}
    trap stop_cluster EXIT
    trap 'exit 130' INT
    trap 'exit 143' TERM
    start_cluster
    run_array
    merge_parts
}

# Slurm and its authentication; installed where the system is Debian's and we may, else the step is not checked.
find_slurm() {
    if ! has_slurm && [ "$(id -u)" -eq 0 ] && command -v apt-get >/dev/null; then
        echo 'There is no Slurm: installing it.'
        apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends slurm-wlm munge >/dev/null
    fi
    if ! has_slurm; then
        echo "Not checked: this needs Debian's slurm-wlm and munge, and they cannot be installed here."
        return "$not_checked"
    fi
}

has_slurm() {
    PATH=$PATH:/usr/sbin
    command -v mungekey munged slurmctld slurmd sbatch scontrol >/dev/null && [ "$(command -v mungekey munged slurmctld slurmd sbatch scontrol | wc -l)" -eq 6 ]
}

start_cluster() {
    local user node port
    user=$(id -un)
    chmod 755 "$temporary" "$cluster"
    port=$(free_ports 3)
    cat >"$cluster/slurm.conf" <<CONF
ClusterName=scnet
SlurmctldHost=$(hostname -s)(127.0.0.1)
SlurmUser=$user
SlurmdUser=$user
AuthType=auth/munge
AuthInfo=socket=$cluster/munge.socket
SlurmctldPort=$port
SlurmctldPidFile=$cluster/slurmctld.pid
SlurmdPidFile=$cluster/slurmd-%n.pid
SlurmdSpoolDir=$cluster/%n
StateSaveLocation=$cluster/state
SlurmctldLogFile=$cluster/logs/slurmctld.log
SlurmdLogFile=$cluster/logs/%n.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
SchedulerParameters=batch_sched_delay=0,sched_interval=1
SlurmdParameters=config_overrides
ReturnToService=2
MpiDefault=none
KillWait=1
NodeName=n1 NodeHostname=$(hostname -s) NodeAddr=127.0.0.1 Port=$((port + 1)) CPUs=1 RealMemory=4096
NodeName=n2 NodeHostname=$(hostname -s) NodeAddr=127.0.0.1 Port=$((port + 2)) CPUs=1 RealMemory=4096
PartitionName=all Nodes=ALL Default=YES MaxTime=INFINITE State=UP
CONF
    export SLURM_CONF=$cluster/slurm.conf
    mungekey --create --keyfile="$cluster/munge.key"
    start munged --foreground --force --key-file="$cluster/munge.key" --socket="$cluster/munge.socket" \
        --pid-file="$cluster/munge.pid" --log-file="$cluster/logs/munge.log" --seed-file="$cluster/munge.seed"
    wait_for 'munge' test -S "$cluster/munge.socket"
    start slurmctld -D
    for node in n1 n2; do
        start slurmd -D -N "$node"
    done
    wait_for 'two idle nodes' eval '[ "$(sinfo -h -N -t idle -o %N 2>/dev/null | sort -u | wc -l)" -eq 2 ]'
    sinfo -N -o '%N %t'
}

# Runs a daemon that is ended by its number with the step.
start() {
    "$@" >>"$cluster/logs/$1.out" 2>&1 &
    daemons+=($!)
}

# The first of so many ports in a row that nothing listens on.
free_ports() {
    local port busy
    for ((port = 20000 + $$ % 20000; ; port += 7)); do
        busy=$(ss -Hltn 2>/dev/null | awk -v low="$port" -v high=$((port + $1)) '{ n = split($4, a, ":"); if (a[n] >= low && a[n] < high) print }')
        [ -n "$busy" ] || break
    done
    echo "$port"
}

# wait_for WHAT COMMAND...: until the command succeeds, at most half a minute.
wait_for() {
    local what=$1 tries
    shift
    for ((tries = 0; tries < 150; tries++)); do
        if "$@"; then
            return 0
        fi
        sleep 0.2
    done
    echo "Waited in vain for $what."
    squeue || true
    return 1
}

# The tasks, of which one hangs in its first run, is killed, and requeued.
run_array() {
    local job
    # the tool as it was just built
    tool=$(find "$PWD/.artifacts/bin/ScNet.Cli" -path '*/release*/ScNet.Cli.dll' -not -path '*/ref/*' | head -n 1)
    cat >"$cluster/bin/scnet" <<TOOL
#!/usr/bin/env bash
if [ "\$SLURM_ARRAY_TASK_ID" -eq $killed_part ] && [ "\${SLURM_RESTART_COUNT:-0}" -eq 0 ]; then
    dotnet "$tool" "\$@" &
    kill -STOP \$!
    echo \$! >"$cluster/hanging.part" && mv "$cluster/hanging.part" "$cluster/hanging"
    wait \$!
    exit
fi
exec dotnet "$tool" "\$@"
TOOL
    chmod +x "$cluster/bin/scnet"
    job=$(PATH=$cluster/bin:$PATH sbatch --parsable --array=1-$parts --chdir="$cluster/logs" docs/examples/atlas.sbatch $capacitors $parts "$cluster/parts")
    wait_for "part $killed_part to hang" test -e "$cluster/hanging"
    kill -KILL "$(cat "$cluster/hanging")"
    wait_for "part $killed_part to have failed" eval "scontrol show job ${job}_$killed_part | grep -q JobState=FAILED"
    [ ! -e "$cluster/parts/atlas-$capacitors-$killed_part-of-$parts.shard" ]
    # a merge now says what is missing
    if dotnet "$tool" atlas merge "$cluster/parts" --output "$cluster/merged.atlas" 2>"$cluster/missing.txt"; then
        echo 'Expected a merge without all parts to be refused.'
        return 1
    fi
    cat "$cluster/missing.txt"
    scontrol requeue "${job}_$killed_part"
    # a requeued task is held back for some minutes, so that what is left of it can end
    scontrol update jobid="${job}_$killed_part" starttime=now
    wait_for 'all tasks to end' no_jobs
    cat "$cluster"/logs/atlas-*.log | sort
    expect_line "^part [0-9]+/$parts on n1, start 1$"
    expect_line "^part [0-9]+/$parts on n2, start 1$"
    expect_line "^part $killed_part/$parts on n[12], start 1$"
    expect_line "^part $killed_part/$parts on n[12], start 2$"
}

no_jobs() {
    [ -z "$(squeue -h)" ]
}

expect_line() {
    if ! grep -qhE "$1" "$cluster"/logs/atlas-*.log; then
        echo "Expected a line '$1' in the logs of the tasks."
        return 1
    fi
}

# The parts together are to the byte what one process writes.
merge_parts() {
    dotnet "$tool" atlas merge "$cluster/parts" --output "$cluster/merged.atlas"
    dotnet "$tool" atlas --capacitors $capacitors --output "$cluster/one"
    cmp "$cluster/merged.atlas" "$cluster"/one/atlas-$capacitors-1-of-1.shard
    echo "$parts parts from two nodes, one of them killed and made again: equal to the byte to what one process writes."
}

stop_cluster() {
    local status=$?
    trap - EXIT
    if [ "$status" -ne 0 ]; then
        tail -n 3 "$cluster"/logs/* 2>/dev/null || true
    fi
    # a task outlives the daemon that started it
    scancel --state=PENDING,RUNNING,SUSPENDED 2>/dev/null && wait_for 'tasks to end' no_jobs || true
    kill "${daemons[@]}" 2>/dev/null || true
    wait "${daemons[@]}" 2>/dev/null || true
    exit "$status"
}
