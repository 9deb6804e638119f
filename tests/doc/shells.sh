#!/bin/sh
# No script of the tree has what shellcheck finds, no text a word that codespell knows for wrong, but those of
# .codespell-words, which are meant. Ends with 77 where one of the two isn't there.
set -eu
if ! command -v shellcheck >/dev/null || ! command -v codespell >/dev/null; then
    echo "shells: there is no shellcheck or no codespell here"
    exit 77
fi
list=$(mktemp)
trap 'rm -f "$list"' EXIT
find .ci tools tests -type f ! -path 'tests/net/*' -exec awk '
    FNR > 1 { nextfile }
    /^#!.*sh( |$)/ || FILENAME ~ /[.](ba)?sh$/ { print FILENAME }' {} + >"$list"
[ "$(wc -l <"$list")" -gt 10 ] || { echo "shells: found too few scripts"; exit 1; }
xargs shellcheck --external-sources <"$list"
codespell include lib tools tests reference README.md DEVELOPERS.md .ci
echo "shells: $(wc -l <"$list") scripts and all words as they should be"
