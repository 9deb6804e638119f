#!/bin/sh
# The README shows real output: each "<!-- run: ARGS -->" is followed by a fenced block that must be
# what `pelage ARGS` prints, each "<!-- file: PATH -->" by one that must be that file. Usage: readme.sh COMMAND [--write]; --write brings the blocks up to date.
set -eu
command=$1
made=$(mktemp)
trap 'rm -f "$made"' EXIT
export LC_ALL=C
awk -v command="$command" '
    /^<!-- file: .* -->$/ {
        print
        file = $0
        sub(/^<!-- file: /, "", file)
        sub(/ -->$/, "", file)
        getline; print                       # the opening fence
        while ((getline text <file) > 0) print text
        close(file)
        while ((getline text) > 0 && text !~ /^```$/) { }
        print "```"
        next
    }
    /^<!-- run: .* -->$/ {
        print
        args = $0
        sub(/^<!-- run: /, "", args)
        sub(/ -->$/, "", args)
        getline; print                       # the opening fence
        line = command " " args " 2>&1"
        while ((line | getline text) > 0) print text
        close(line)
        while ((getline text) > 0 && text !~ /^```$/) { }
        print "```"
        ++blocks
        next
    }
    { print }
    END { if (blocks < 4) { print "readme.sh: found only " blocks + 0 " blocks" > "/dev/stderr"; exit 1 } }
' README.md >"$made"
if [ "${2:-}" = --write ]; then
    cat "$made" >README.md
elif ! diff -u README.md "$made"; then
    echo "README.md shows something else than the command prints: tests/doc/readme.sh COMMAND --write"
    exit 1
fi
