#!/bin/sh
# A salon owner starts from nothing: the commands under "<!-- from nothing -->" in the README, run as
# written in an empty folder. Usage: from_nothing.sh COMMAND. A line whose verb this build doesn't know
# yet is left out and said.
set -eu
command=$1
readme=$(pwd)/README.md
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
mkdir "$folder/bin" "$folder/empty"
ln -s "$command" "$folder/bin/pelage"
PATH="$folder/bin:$PATH"
unset PELAGE_SALON
awk '/^<!-- from nothing -->$/ { getline; on = 1; next } on && /^```$/ { exit } on { print }' \
    "$readme" >"$folder/commands"
[ "$(wc -l <"$folder/commands")" -eq 5 ] || { echo "not five commands in README.md"; exit 1; }
cd "$folder/empty"
while IFS= read -r line; do
    verb=$(echo "$line" | sed -n 's/^pelage \([a-z]*\) .*/\1/p')
    if [ -n "$verb" ] && ! pelage "$verb" --help >/dev/null 2>&1; then
        echo "left out: $line"
        continue
    fi
    echo "\$ $line"
    eval "$line" || { echo "ended with $?"; exit 1; }
done <"$folder/commands"
grep -q 'house (house), version 1' house.txt
[ "$(wc -L <house.txt)" -le 80 ] || { echo "the page is wider than 80 columns"; exit 1; }
[ "$(wc -l <house.txt)" -le 66 ] || { echo "the sheet is longer than a page"; exit 1; }
