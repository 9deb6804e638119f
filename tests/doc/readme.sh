#!/bin/sh
# README.md and reference/handbook.md show real output. Each fenced block is what the comment before it says:
#   <!-- run: ARGS -->           what `pelage ARGS` prints, in this folder
#   <!-- file: PATH -->          that file
# and of a handbook, which is walked through from its first line to its last in an empty folder of its own, with
# my-salon as its salon and 25 November 2026 as today:
#   <!-- write: PATH -->         the block is written to that file there; append: is added to it
#   <!-- walk: COMMAND -->       the command, behind a $, and what it prints there
#   <!-- walk PROGRAM: COMMAND -->   likewise; left as it is where there is no such program (or module of Python)
# Usage: readme.sh COMMAND [--write] [FILE]; --write brings the blocks up to date.
set -eu
command=$1
shift
write=false
if [ "${1:-}" = --write ]; then
    write=true
    shift
fi
file=${1:-README.md}
command=$(readlink -f "$command")
here=$(mktemp -d)
trap 'rm -rf "$here"' EXIT
export LC_ALL=C
mkdir "$here/bin" "$here/walk"
cp tests/doc/snippets/* "$here/walk/"
mkdir -p "$here/walk/my-salon/styles" "$here/walk/my-salon/dogs"
# Today is that of the handbook, unless a command says otherwise.
cat >"$here/bin/pelage" <<END
#!/bin/sh
case " \$* " in
*" --today "* | *" help "*) exec "$command" "\$@" ;;
esac
case \${1:-} in
plan | regrow | log | sheet | kit | week | diary | quiz) exec "$command" "\$@" --today 2026-11-25 ;;
*) exec "$command" "\$@" ;;
esac
END
chmod +x "$here/bin/pelage"
# there PROGRAM: is it, or the module of Python, there?
cat >"$here/there" <<'END'
command -v "$1" >/dev/null || /usr/bin/python3 -c "import $1" 2>/dev/null
END
awk -v command="$command" -v here="$here" '
    function said(name) {  # what a comment says behind its name
        text = $0
        sub("^<!-- " name ": *", "", text)
        sub(/ -->$/, "", text)
        return text
    }
    function skip() { while ((getline text) > 0 && text !~ /^```$/) { } print "```"; ++blocks }
    /^<!-- file: .* -->$/ {
        print
        file = said("file")
        getline; print                       # the opening fence
        while ((getline text <file) > 0) print text
        close(file)
        skip()
        next
    }
    /^<!-- run: .* -->$/ {
        print
        line = command " " said("run") " 2>&1"
        getline; print
        while ((line | getline text) > 0) print text
        close(line)
        skip()
        next
    }
    /^<!-- (write|append): .* -->$/ {
        print
        name = $2
        sub(/:$/, "", name)
        file = here "/walk/" said(name)
        if (name == "write") printf "" >file; else printf "" >>file
        getline; print
        while ((getline text) > 0 && text !~ /^```$/) { print text; print text >>file }
        close(file)
        print "```"
        next
    }
    /^<!-- walk( [a-z0-9_]+)?: .* -->$/ {
        print
        match($0, /^<!-- walk( [a-z0-9_]+)?:/)
        program = substr($0, 11, RLENGTH - 11)
        gsub(/[ :]/, "", program)
        if (program != "" && system("sh " here "/there " program) != 0) next
        asked = said("walk( [a-z0-9_]+)?")
        print asked >(here "/asked")
        close(here "/asked")
        line = "cd " here "/walk && PATH=" here "/bin:/usr/bin:/bin PELAGE_SALON=my-salon sh " here "/asked 2>&1"
        getline; print
        print "$ " asked
        while ((line | getline text) > 0) print text
        close(line)
        skip()
        next
    }
    { print }
    END { if (blocks < 4) { print "readme.sh: found only " blocks + 0 " blocks" > "/dev/stderr"; exit 1 } }
' "$file" >"$here/made"
if $write; then
    cat "$here/made" >"$file"
elif ! diff -u "$file" "$here/made"; then
    echo "$file shows something else than the command prints: tests/doc/readme.sh COMMAND --write $file"
    exit 1
fi
