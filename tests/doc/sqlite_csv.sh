#!/bin/sh
# Does another program read the CSV of log --export, diary and week? sqlite3 imports each: as many rows as
# the JSON has, every row as wide as its heading, and what somebody wrote comes back as it was.
#   sh tests/doc/sqlite_csv.sh PELAGE
# Ends with 77 and a line that says why where there is no sqlite3.
set -eu
pelage=$1
if ! command -v sqlite3 >/dev/null; then
    echo "No sqlite3 here, so nothing was imported: the Debian package is sqlite3."
    exit 77
fi
here=$(mktemp -d)
trap 'rm -rf "$here"' EXIT
cp -r reference/demo "$here/salon"
day=2026-11-25
said='she said "no, thank you"; twice, and left'
for dog in biscuit bramble tansy; do
    "$pelage" log "$dog" --salon "$here/salon" --today $day --yes --mats none --minutes 95 --note "$said" >/dev/null 2>&1
done

# rows NAME: imports NAME.csv and says how many rows it has.
rows() {
    sqlite3 "$here/all.db" ".import --csv $here/$1.csv $1" 2>"$here/complaints"
    if [ -s "$here/complaints" ]; then
        cat "$here/complaints" >&2
        exit 1
    fi
    sqlite3 "$here/all.db" "select count(*) from $1"
}
# same WHAT IS OUGHT
same() {
    if [ "$2" != "$3" ]; then
        echo "$1: sqlite3 finds \"$2\", it should be \"$3\"" >&2
        exit 1
    fi
}
# counted NAME KEY: how many members of that list its JSON has.
counted() {
    python3 -c 'import json, sys; print(len(json.load(open(sys.argv[1]))[sys.argv[2]]))' "$here/$1.json" "$2"
}
for format in csv json; do
    "$pelage" diary --salon "$here/salon" --today $day --weeks 8 --format $format -o "$here/diary.$format" 2>/dev/null
    "$pelage" week --salon "$here/salon" --today $day --format $format -o "$here/week.$format" 2>/dev/null || true
done
"$pelage" log --export csv --salon "$here/salon" -o "$here/visits.csv" 2>/dev/null
same "visits of the diary" "$(rows diary)" "$(counted diary visits)"
rows week >/dev/null
same "entries of the record" "$(rows visits)" 3
same "a note" "$(sqlite3 "$here/all.db" "select distinct remarks from visits")" "$said"
same "minutes" "$(sqlite3 "$here/all.db" "select cast(sum(minutes_min) as integer) from visits")" 285
echo "sqlite3 $(sqlite3 -version | cut -d' ' -f1) reads the CSV of log, diary and week."
