#!/bin/sh
# DEVELOPERS.md against the tree: its table of rooms has the rooms of lib/CMakeLists.txt in their order, names
# every public header once in its room and none that isn't there; every file it names anywhere exists; every
# name in back-quotes (`plan_request`, `zone_plan::hurt`, `solve()`) is a word of the tree, and one that is said
# to be in a file ("`name` in `file`", "`name` (file)") is a word of that file.
# Usage: developers.sh [FOLDER]
# shellcheck disable=SC2016 # back-quotes of a text, not of the shell
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

# The names, one a line, and behind each the file it is said to be in, if any. Lines are joined first, since a
# sentence breaks anywhere.
tr '\n' ' ' <DEVELOPERS.md | sed 's/  */ /g' >"$made/flat"
grep -oE '`[A-Za-z][A-Za-z0-9_]*(::[A-Za-z0-9_]+)*([(][)])?`' "$made/flat" | tr -d '`()' | sed 's/::/\n/g' |
    sort -u >"$made/names"
{
    grep -rhoIE '[A-Za-z_][A-Za-z0-9_]*' include lib tools tests reference CMakeLists.txt --exclude-dir=recorded
    sed -n 's/^ *pelage_test_program(\([a-z]*\).*/pelage_\1/p' tests/CMakeLists.txt  # names put together there
} | sort -u >"$made/words"
comm -23 "$made/names" "$made/words" >"$made/strangers"
if [ -s "$made/strangers" ]; then
    sed 's/.*/DEVELOPERS.md names `&`, which is no word of the tree/' "$made/strangers"
    status=1
fi

# in_file NAME FILE: whether a file of that name has that word, or words that begin so where it ends in _.
in_file() {
    case $1 in
    *_) word="\\<$1" ;;
    *) word="\\<$1\\>" ;;
    esac
    find ./include ./lib ./tools ./tests ./reference -path "*/$2" -exec grep -q -e "$word" {} \; -print |
        grep -q .
}
grep -oE '`[A-Za-z][A-Za-z0-9_:]*([(][)])?` (in |[(])`?[A-Za-z0-9_/]+[.](hpp|cpp|toml)`?' "$made/flat" |
    sed -E 's/[`()]//g; s/ in / /; s/ [(]/ /; s/[A-Za-z0-9_]*:://g' | sort -u >"$made/pairs"
while read -r name file; do
    if ! in_file "$name" "$file"; then
        echo "DEVELOPERS.md says \`$name\` is in $file, which doesn't have it"
        status=1
    fi
done <"$made/pairs"
[ $status -ne 0 ] || echo "DEVELOPERS.md: every header in its room, every file there, every name known"
exit $status
