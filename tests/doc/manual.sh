#!/bin/sh
# The manual and the completions know what help knows, no option less and none more, and the manual's pages
# are sound mdoc.
#   manual.sh COMMAND FOLDER_OF_PAGES
set -eu
command=$1
pages=$2
bad=0

options_in_help() { grep -oE '^  (-., )?--[a-z-]+' | grep -oE -- '--[a-z-]+' | sort -u; }

for page in "$pages"/pelage-*.1; do
    name=$(basename "$page" .1)
    words=$(sed -n 's/^\.Nm "pelage \(.*\)"$/\1/p' "$page")
    # shellcheck disable=SC2086 # the words of a subcommand are words
    "$command" help $words | options_in_help | grep -v -x -e --help >"$pages/help.list" || true
    sed -n 's/^\.It \(Fl . , \)\{0,1\}Fl \(-[a-z-]*\).*/-\2/p' "$page" | grep -v -x -e --help | sort -u >"$pages/page.list" || true
    # shellcheck disable=SC2086
    "$command" complete -- $words -- | grep -v -x -e --help | sort -u >"$pages/complete.list" || true
    for other in page complete; do
        if ! diff "$pages/help.list" "$pages/$other.list" >"$pages/diff"; then
            echo "$name: help (<) and $other (>) differ:"
            cat "$pages/diff"
            bad=1
        fi
    done
done
rm -f "$pages"/*.list "$pages/diff"

for page in "$pages"/*.1 "$pages"/*.5; do
    # It looks for other pages where manuals are installed; ours aren't there yet.
    mandoc -T lint "$page" >"$pages/lint" || true
    sed -n 's/.*referenced manual not found: Xr \([a-z-]*\) 1$/\1/p' "$pages/lint" | while read -r other; do
        [ -f "$pages/$other.1" ] || echo "$page: no page $other.1"
    done >"$pages/missing"
    grep -v 'referenced manual not found: Xr pelage' "$pages/lint" >>"$pages/missing" || true
    if [ -s "$pages/missing" ]; then
        cat "$pages/missing"
        bad=1
    fi
done
rm -f "$pages/lint" "$pages/missing"
# The page of the files has every key of their schemas.
for file in dog salon style roster-line record-line; do
    python3 -c '
import json, sys
def keys(one):
    for key, said in one.get("properties", {}).items():
        yield key
        yield from keys(said.get("items", said))
print("\n".join(sorted(set(keys(json.load(open(sys.argv[1])))))))' "reference/schema/$file.json" |
        while read -r key; do
            grep -q -x -F ".It Li \"\\&$key\"" "$pages/pelage-files.5" || echo "pelage-files.5: no key $key of $file"
        done
done >"$pages/missing"
if [ -s "$pages/missing" ]; then
    cat "$pages/missing"
    bad=1
fi
rm -f "$pages/missing"
[ "$bad" -eq 0 ] && echo "manual: every page and completion as help has it, sound mdoc"
exit "$bad"
