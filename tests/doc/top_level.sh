#!/bin/sh
# The visible top level holds these names and no others. Usage: top_level.sh [FOLDER]
set -eu
cd "${1:-.}"
export LC_ALL=C
want='CMakeLists.txt DEVELOPERS.md LICENSE README.md include lib reference tests tools'
if git rev-parse --is-inside-work-tree >/dev/null 2>&1; then
    have=$(git ls-files --cached --others --exclude-standard | sed 's,/.*,,' | sort -u)
else
    have=$(printf '%s\n' * | grep -v '^build$')
fi
have=$(for name in $have; do [ -e "$name" ] && echo "$name"; done | grep -v '^\.' | tr '\n' ' ')
if [ "$have" != "$want " ]; then
    echo "top level: has   $have"
    echo "           wants $want"
    exit 1
fi
echo "top level: as it should be"
