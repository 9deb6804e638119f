#!/bin/sh
# A page for the owner of each dog named, and what the exit code says.
for dog in "$@"; do
    code=0
    pelage plan "$dog" --for owner --format html -o "$dog.html" || code=$?
    case $code in
    0) echo "$dog: $dog.html" ;;
    1) echo "$dog: $dog.html; the owner or a veterinarian is asked first" ;;
    *) echo "$dog: no page" ;; # what was wrong is on standard error
    esac
done
