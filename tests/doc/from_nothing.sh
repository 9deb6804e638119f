#!/bin/sh
# A salon owner starts from nothing: the commands under "<!-- from nothing -->" in the README, run as
# written in an empty folder. Usage: from_nothing.sh COMMAND
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
    echo "\$ $line"
    eval "$line" >"$folder/said" || { echo "ended with $?"; exit 1; }
    cat "$folder/said"
done <"$folder/commands"
grep -q 'house (house), version 1' house.txt
[ "$(wc -L <house.txt)" -le 80 ] || { echo "the page is wider than 80 columns"; exit 1; }
[ "$(wc -l <house.txt)" -le 66 ] || { echo "the sheet is longer than a page"; exit 1; }
# what the last one said: a list of things to buy, with which the whole sheet can be cut
grep -q '^Of [0-9]* blades and combs offered buy' "$folder/said"
grep -q '100.0 %' "$folder/said"
