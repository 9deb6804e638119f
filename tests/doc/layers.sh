#!/bin/sh
# An include points to its own room or to one before it, each heavy library stays in its file, and nothing below the
# command reads the clock, the environment or the locale, or prints. Usage: layers.sh [FOLDER]
# The rooms are in lib/CMakeLists.txt, the libraries at the top of layers.awk.
set -eu
script=$(cd "$(dirname "$0")" && pwd)/layers.awk
cd "${1:-.}"
export LC_ALL=C
edges=$(mktemp)
trap 'rm -f "$edges"' EXIT
status=0
rooms() { sed -n "s/^set($1_rooms \(.*\))\$/\1/p" lib/CMakeLists.txt; }
find include lib tools \( -name '*.hpp' -o -name '*.cpp' \) | sort |
    xargs awk -v core="$(rooms core)" -v io="$(rooms io)" -v edges="$edges" -f "$script" || status=1
if ! tsort "$edges" >/dev/null 2>"$edges.cycle"; then
    echo "headers include each other in a ring:"
    sed -n 's/^tsort: \(include.*\)/    \1/p' "$edges.cycle"
    status=1
fi
rm -f "$edges.cycle"
[ $status -ne 0 ] || echo "layers: every include points to its own room or to one before it"
exit $status
