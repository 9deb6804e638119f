#!/bin/sh
# Doxygen over the public headers (.doxygen/Doxyfile): every public name has its comment, but those of .doxygen/unsaid,
# and nothing in them is wrong. The pages are in build/doxygen/html. Ends with 77 where there is no doxygen.
set -eu
if ! command -v doxygen >/dev/null; then
    echo "doxygen: not here"
    exit 77
fi
mkdir -p build/doxygen
doxygen .doxygen/Doxyfile >/dev/null 2>build/doxygen/warnings || true
[ -f build/doxygen/html/index.html ] || { cat build/doxygen/warnings; exit 1; }
# Where it stands moves; its name doesn't.
sed -E 's/^[^ ]*: (error|warning): //' build/doxygen/warnings | sort -u >build/doxygen/found
grep -v '^#' .doxygen/unsaid | sort -u >build/doxygen/allowed
if ! diff build/doxygen/found build/doxygen/allowed >build/doxygen/diff; then
    echo "doxygen: public names without a comment (<), or named in .doxygen/unsaid and no longer so (>):"
    cat build/doxygen/diff
    exit 1
fi
echo "doxygen: every public name has its comment, but $(grep -c . build/doxygen/allowed)"
