#!/bin/sh
# DEVELOPERS.md against the tree: its table of rooms has the rooms of lib/CMakeLists.txt in their order, names
# every public header once in its room and none that isn't there; and every file it names anywhere exists.
# Usage: developers.sh [FOLDER]
set -eu
cd "${1:-.}"
export LC_ALL=C
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT
status=0
: >"$made/rooms"

# One line "room header" for each header of the table, and the rooms as they stand.
awk -F'|' -v rooms="$made/rooms" '
    /^## / { on = $0 == "## Rooms" }
    on && /^\| [a-z]+ \|/ && $2 !~ /^ *room *$/ {
        gsub(/ /, "", $2)
        print $2 >rooms
        n = split($3, header, " ")
        for (i = 1; i <= n; ++i) print $2 "/" header[i] ".hpp"
    }' DEVELOPERS.md | sort >"$made/told"
(cd include/pelage && find . -mindepth 2 -name '*.hpp') | sed 's,^[.]/,,' | sort >"$made/there"
if ! diff "$made/told" "$made/there" >"$made/differ"; then
    echo "DEVELOPERS.md, the table of rooms (<) and include/pelage (>):"
    grep '^[<>]' "$made/differ"
    status=1
fi
sed -n 's/^set(\(core\|io\)_rooms \(.*\))$/\2/p' lib/CMakeLists.txt | tr ' ' '\n' >"$made/built"
if ! diff "$made/rooms" "$made/built" >"$made/differ"; then
    echo "DEVELOPERS.md, the rooms of the table (<) and of lib/CMakeLists.txt (>):"
    grep '^[<>]' "$made/differ"
    status=1
fi

# A file is named by its path, from include/, include/pelage/, lib/, tests/ or tests/unit/ on, or by its bare name.
named() {
    for place in "" include/ include/pelage/ lib/ tests/ tests/unit/; do
        for path in $place$1; do
            [ ! -e "$path" ] || return 0
        done
    done
    case $1 in
    */*) return 1 ;;
    esac
    [ -n "$(find include lib tools tests reference -name "$1" | head -n 1)" ]
}
grep -oE '[A-Za-z0-9_./*-]+[.](hpp|cpp|awk|sh|cmake|toml|chk|test|md|txt)' DEVELOPERS.md | sort -u >"$made/files"
while IFS= read -r file; do
    if ! named "$file"; then
        echo "DEVELOPERS.md names $file, which isn't there"
        status=1
    fi
done <"$made/files"
[ $status -ne 0 ] || echo "DEVELOPERS.md: every header in its room, every file there"
exit $status
