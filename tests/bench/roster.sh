#!/bin/sh
# How many dogs of an invented roster are planned in a second, and in how much memory.
#
#   sh tests/bench/roster.sh build/release/pelage [DOGS] [JOBS]
#
# DOGS 100000 and JOBS 1 if not said. Time is that of the processor, user and system, over all threads:
# plans a second and core hold on a machine with other work too, as far as its caches are free.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
pelage=$1
dogs=${2:-100000}
jobs=${3:-1}
[ -x /usr/bin/time ] || { echo "tests/bench/roster.sh: needs GNU time (Debian: time)" >&2; exit 1; }
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
mkdir "$folder/styles"
cp "$here/../../reference/demo/salon.toml" "$folder/salon.toml"
awk -v dogs="$dogs" -v folder="$folder" -f "$here/roster.awk"

# max RSS in kB, user and system seconds
measured() {
    head -n "$1" "$folder/roster.jsonl" >"$folder/some.jsonl"
    code=0
    /usr/bin/time -f '%M %U %S' -o "$folder/time" "$pelage" plan --roster "$folder/some.jsonl" \
        --salon "$folder" --today 2026-11-25 --jobs "$jobs" >"$folder/plans.jsonl" || code=$?
    if [ "$code" -gt 1 ] || [ "$(wc -l <"$folder/plans.jsonl")" -ne "$1" ]; then
        echo "tests/bench/roster.sh: exit $code, or not one line out for each line in" >&2
        exit 1
    fi
    grep -v 'exited with' "$folder/time"
}

echo "dogs over 50 sheets: $dogs; jobs: $jobs; $(wc -c <"$folder/roster.jsonl") bytes in"
few=1000
[ "$few" -lt "$dogs" ] || few=$dogs
measured 1 >"$folder/one"
measured "$few" >"$folder/few"
measured "$dogs" >"$folder/all"
cat "$folder/one" "$folder/few" "$folder/all" | awk -v dogs="$dogs" -v few="$few" '
    { rss[NR] = $1; cpu[NR] = $2 + $3 }
    END {
        work = cpu[3] - cpu[1]
        printf "max RSS at %d lines: %.1f MB; at %d: %.1f MB\n", few, rss[2] / 1024, dogs, rss[3] / 1024
        printf "processor time: %.2f s, of which start %.3f s\n", cpu[3], cpu[1]
        if (work > 0) printf "plans a second and core: %.0f\n", (dogs - 1) / work
    }'
echo "$(wc -c <"$folder/plans.jsonl") bytes out"
