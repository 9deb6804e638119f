#!/bin/sh
# A handful of pages, each kind once, held against a validator of HTML and, in a browser, against axe-core: on a
# telephone and on a desk, light and dark. None scrolls sideways; the cards print on one sheet, of A4 and Letter.
# First a page that is known to be bad must be found bad by each of them.
#
#   sh tests/doc/pages.sh PELAGE
#
# The tools come by npm into a folder that is removed at the end. Ends with 77 and a line that says why where
# there is no npm, no browser, or npm can't fetch them.
set -eu
cd "$(dirname "$0")/../.."
pelage=$(readlink -f "$1")

skip() {
    echo "pages: skipped, $*"
    exit 77
}
browser=$(command -v chromium || command -v chromium-browser || true)
[ -n "$browser" ] || skip "there is no chromium here"
if ! command -v npm >/dev/null || ! command -v node >/dev/null; then
    skip "there is no npm here"
fi
command -v pdfinfo >/dev/null || skip "there is no pdfinfo (poppler-utils) here"

folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cp tests/doc/pages.mjs "$folder/"
echo '{ "name": "pages", "version": "1.0.0", "private": true }' >"$folder/package.json"
(cd "$folder" && timeout 300 npm install --no-audit --no-fund axe-core@4 puppeteer-core@24 html-validate@10) \
    >"$folder/npm.log" 2>&1 || skip "npm can't fetch axe-core, puppeteer-core and html-validate: $(tail -n 1 "$folder/npm.log")"

cat >"$folder/bad.html" <<'BAD'
<!DOCTYPE html>
<html><head><title>bad</title></head><body><p><div style="width:3000px;color:#ddd">pale</div></p>
<table><tr><th></th></tr><tr><td>1</td></tr></table><img src="a.png"></body></html>
BAD

# page NAME ARGUMENT...: a page; 1 is an answer, too
page() {
    name=$1
    shift
    "$pelage" "$@" --format html --today 2026-11-26 -o "$folder/$name.html" || [ $? -eq 1 ]
}
for dog in thistle bramble biscuit acorn aspen tansy; do
    page "card-$dog" plan "$dog"
done
page full plan thistle --full
page trainee plan bramble --for trainee
page consent plan bramble --for consent
page ladder lookup --all --coat wavy
page place lookup hock
page regrow regrow biscuit
page visits regrow biscuit --weeks 26
page week week
"$pelage" sheet book lamb one-length --format html -o "$folder/book.html"

cd "$folder"
for judge in validator axe width; do
    if node pages.mjs "$browser" "$judge" bad.html >bad.log 2>&1; then
        echo "pages: the $judge finds nothing wrong with a page that is bad"
        exit 1
    elif ! grep -q "^bad.html: $judge" bad.log; then
        cat bad.log
        exit 1
    fi
done
rm bad.html
node pages.mjs "$browser" all ./*.html
for sheet in card-*.pdf; do
    # views whose labels would be too small to read (document_paper.cpp) have a sheet of their own
    most=1
    if grep -q 'class="views own"' "${sheet%-*.pdf}.html"; then
        most=2
    fi
    if ! pdfinfo "$sheet" | grep -q "^Pages: *$most\$"; then
        echo "pages: $sheet isn't $most sheets of paper"
        exit 1
    fi
done
echo "pages: $(find . -maxdepth 1 -name '*.html' | wc -l) pages as they should be"
