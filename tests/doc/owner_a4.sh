#!/bin/sh
# The owner's pages of every invented dog and intake, the one signed before the groom and the one taken home
# after it, printed by a browser: one sheet of A4 each.
#
#   sh tests/doc/owner_a4.sh PELAGE [FOLDER]    with a folder the sheets are kept there, as pictures too
set -eu
cd "$(dirname "$0")/../.."
pelage=$1
out=${2:-}
kept=$out
[ -n "$out" ] || out=$(mktemp -d)
mkdir -p "$out"
[ -n "$kept" ] || trap 'rm -rf "$out"' EXIT

browser=$(command -v chromium || command -v chromium-browser || true)
if [ -z "$browser" ] || ! command -v pdfinfo >/dev/null; then
    echo "owner_a4.sh: needs chromium and pdfinfo (poppler-utils)" >&2
    exit 1
fi

bad=0
for dog in reference/demo/dogs/*.toml tests/cli/intakes/*.toml; do
  for page in consent home; do
    name=$(basename "$dog" .toml)-$page
    # 1 is an answer, too: the dog goes to a vet first
    "$pelage" plan "$dog" --for "$page" --format html --today 2026-11-26 -o "$out/$name.html" || [ $? -eq 1 ]
    "$browser" --headless --no-sandbox --disable-gpu --user-data-dir="$out/profile" \
        --no-pdf-header-footer --print-to-pdf="$out/$name.pdf" "file://$(readlink -f "$out")/$name.html" \
        >"$out/$name.log" 2>&1 || true
    if ! pdfinfo "$out/$name.pdf" >"$out/$name.info" 2>&1; then
        echo "$name: the browser printed nothing" >&2
        bad=1
    elif ! grep -q '^Pages: *1$' "$out/$name.info" || ! grep -q '^Page size:.*A4' "$out/$name.info"; then
        echo "$name: not one sheet of A4" >&2
        bad=1
    fi
    [ -z "$kept" ] || pdftoppm -r 60 -png "$out/$name.pdf" "$out/$name"
  done
done
exit $bad
