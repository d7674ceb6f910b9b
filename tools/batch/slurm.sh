#!/bin/bash
# slurm.sh PROGRAM OTHER-VERSION: runs the Slurm example of docs/batch.md, as it stands
# there but for fewer cars and shards, on a Slurm of this machine's loopback with four
# virtual nodes, and compares what is merged with what one run prints: out of order,
# with a task killed, run again, there twice, cut short, and of another version. It needs
# Debian's slurm-wlm and munge, and to be root, as Slurm's own daemons do.
set -euo pipefail
program=$(realpath "$1") other=$(realpath "$2") manual=$(realpath docs/batch.md) study=$(realpath testdata/studies/double-wishbone-rack.json)
dir=$(mktemp -d) shards=8 cars=40000
pids=()
stop() { for p in "${pids[@]}"; do kill "$p" 2>/dev/null || true; done; wait; rm -rf "$dir"; }
trap stop EXIT
fail() { echo "batch: $*" >&2; tail -n 5 "$dir"/*.log "$dir"/jobs/logs/* "$dir"/jobs/answer.txt 2>/dev/null >&2; exit 1; }

# Slurm of one machine: daemons in the foreground, keys and state in the folder.
mkdir "$dir"/{state,spool,jobs}; chmod 755 "$dir"
dd if=/dev/urandom of="$dir/munge.key" bs=128 count=1 status=none; chmod 400 "$dir/munge.key"
munged -F --force --key-file="$dir/munge.key" --socket="$dir/munge.sock" --pid-file="$dir/munge.pid" --log-file="$dir/munge.log" --seed-file="$dir/munge.seed" >/dev/null 2>&1 & pids+=($!)
cat >"$dir/slurm.conf" <<END
ClusterName=loopback
SlurmctldHost=$(hostname)(127.0.0.1)
SlurmctldPort=16817
SlurmUser=root
SlurmdUser=root
AuthType=auth/munge
AuthInfo=socket=$dir/munge.sock
CryptoType=crypto/munge
StateSaveLocation=$dir/state
SlurmdSpoolDir=$dir/spool/%n
SlurmctldPidFile=$dir/slurmctld.pid
SlurmdPidFile=$dir/slurmd-%n.pid
ProctrackType=proctrack/pgid
TaskPlugin=task/none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
ReturnToService=2
MpiDefault=none
NodeName=n[1-4] NodeHostname=$(hostname) NodeAddr=127.0.0.1 Port=[16821-16824] CPUs=1 RealMemory=1000
PartitionName=all Nodes=ALL Default=YES MaxTime=60 State=UP
END
export SLURM_CONF=$dir/slurm.conf
for i in $(seq 50); do [ -S "$dir/munge.sock" ] && break; sleep 0.2; done
slurmctld -D -L "$dir/slurmctld.log" >/dev/null 2>&1 & pids+=($!)
for n in 1 2 3 4; do slurmd -D -N n$n -L "$dir/slurmd$n.log" >/dev/null 2>&1 & pids+=($!); done
for i in $(seq 150); do [ "$(sinfo -h -t idle -o %D 2>/dev/null)" = 4 ] && break; sleep 0.2; done
[ "$(sinfo -h -t idle -o %D)" = 4 ] || fail "the four nodes did not come up"

# The manual's two blocks, with fewer cars and shards.
few() { sed "s/1000000000/$cars/; s/shards=100/shards=$shards/; s/--array=0-99/--array=0-$((shards - 1))/; s/--array=3,17/--array=3,5/"; }
block() { awk -v n="$1" '/^## A Slurm array/ {on = 1} on && /^```bash$/ {if (++k == n) {p = 1; next}} p && /^```$/ {exit} p' "$manual"; }
cd "$dir/jobs"
cp "$program" toewright; cp "$study" car.json
block 1 | few >series.sh
block 2 | few >commands.sh
[ -s series.sh ] && [ -s commands.sh ] || fail "docs/batch.md has no Slurm example"
./toewright tolerance car.json --cars $cars >whole.txt

# ended waits until nothing runs or waits any more.
ended() { for i in $(seq 600); do [ -z "$(squeue -h)" ] && return; sleep 0.5; done; squeue >&2; fail "jobs wait for ever"; }
same() { cmp answer.txt whole.txt || fail "$1: what was merged is not what one run prints"; echo "as one run: $1"; }
merged() { ./toewright merge car.json parts/*.json >answer.txt 2>&1; }
refused() { merged && fail "$1 was merged"; grep -q "$2" answer.txt || fail "$1: merge says $(cat answer.txt)"; echo "refused: $1: $(cat answer.txt)"; }

head -n 3 commands.sh >first.sh # without those that are run again
bash -e first.sh; ended; same "the example as it stands, four nodes"
again=$(grep -- --array=3,5 commands.sh) || fail "the example runs nothing again"

# A task is killed before it is done: the merge ends all the same, and says which is missing.
rm -f parts/* answer.txt
sed 's/^exec /sleep 5; exec /' series.sh >slow.sh; mv series.sh quick.sh; mv slow.sh series.sh
bash -e first.sh
job=$(squeue -h -r -o %F | sort -u | head -n 1)
scancel "${job}_3" "${job}_5"; ended
grep -q 'missing' answer.txt || fail "after two tasks were killed the merge says $(cat answer.txt)"
echo "after a kill: $(cat answer.txt)"
mv quick.sh series.sh
bash -ec "$again"; ended; merged; same "two that were killed, run again"

# Run again while it runs, and out of order.
rm -f parts/* answer.txt
sed 's/^exec /sleep 3; exec /' series.sh >slow.sh
id=$(sbatch --parsable --array=7,2 slow.sh); 
for i in $(seq 100); do squeue -h -t running -r -o %i | grep -q "^${id}_7\$" && break; sleep 0.2; done
scontrol requeue "${id}_7" || fail "a task that runs cannot be put back"
sbatch --parsable --array=6,4,0 series.sh >/dev/null; sbatch --parsable --array=5,3,1 series.sh >/dev/null
for i in $(seq 100); do scontrol release "${id}_7" 2>/dev/null || true; [ -z "$(squeue -h)" ] && break; sleep 0.5; done
ended; merged; same "out of order, one requeued"

# Parts that are no good are named.
cp parts/1.json parts/copy.json; refused "a part that is there twice" copy.json; rm parts/copy.json
cp parts/1.json kept; head -c 3000 kept >parts/1.json; refused "a part that was cut short" 1.json
"$other" tolerance car.json --cars $cars --shard 1/$shards --part parts/1.json; refused "a part of another version" 1.json
cp kept parts/1.json; merged; same "all of them sound again"
