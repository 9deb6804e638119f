#!/bin/sh
# The completions of tools/completion in the shells they are for: bash always, zsh and fish where they are.
#   completions.sh COMMAND
set -eu
here=$(cd "$(dirname "$0")/../.." && pwd)
PATH=$(cd "$(dirname "$1")" && pwd):$PATH
export PATH
unset PELAGE_SALON
bad=0

# said SHELL LINE WANTED: fails unless $got is what is wanted.
said() {
    if [ "$got" != "$3" ]; then
        echo "completions: $1 offers for \"$2\": $got, not $3"
        bad=1
    fi
}

# What bash hands the function are its words as typed, quotes and all, cut at =, too.
by_bash() {
    # shellcheck disable=SC2016 # for bash
    got=$(bash -c 'folder=$1; shift; . "$folder/tools/completion/pelage.bash"
        COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _pelage; IFS="|"; echo "${COMPREPLY[*]}"' bash "$here" "$@")
}
by_bash pelage plan --coat wa
said bash "--coat wa" wavy
by_bash pelage plan --coat = wa
said bash "--coat=wa" wavy
by_bash pelage plan --units =
said bash "--units=" 'in|mm'
by_bash pelage plan --now 'around\ the\ e'
said bash '--now around\ the\ e' 'around\ the\ eyes'
by_bash pelage plan --now "'around the e"
said bash "--now 'around the e" 'around the eyes'
by_bash pelage plan --salon "'$here/reference/demo'" bis
said bash "--salon '...' bis" biscuit
by_bash pelage plan --today 2026
said bash "--today 2026" ''

tried=bash
if command -v fish >/dev/null; then
    tried="$tried, fish"
    by_fish() {
        # shellcheck disable=SC2016 # for fish
        got=$(HOME=$(mktemp -d) fish -N -c 'source $argv[1]; complete -C $argv[2]' \
            "$here/tools/completion/pelage.fish" "$1" | paste -s -d '|' -)
    }
    by_fish 'pelage plan --coat wa'
    said fish "--coat wa" wavy
    by_fish 'pelage plan --coat=wa'
    said fish "--coat=wa" --coat=wavy
    by_fish "pelage plan --now 'around the e"
    said fish "--now 'around the e" 'around the eyes'
    by_fish 'pelage sheet sh'
    said fish "sheet sh" show
    by_fish 'pelage plan --units '
    said fish "--units " 'in|mm'
fi
if command -v zsh >/dev/null; then
    tried="$tried, zsh"
    # The function alone: what it hands to compadd. zsh tells it what is begun without the quote that is open.
    by_zsh() {
        # shellcheck disable=SC2016 # for zsh
        got=$(zsh -f -c 'compadd() { shift; print -r -- "${(j:|:)@}"; }; _files() { print files; }
            file=$1; shift; words=("$@"); CURRENT=$#; PREFIX=${words[-1]#\"}; . "$file"' \
            zsh "$here/tools/completion/_pelage" "$@")
    }
    by_zsh pelage plan --coat wa
    said zsh "--coat wa" wavy
    by_zsh pelage plan --now 'around\ the\ e'
    said zsh '--now around\ the\ e' 'around the eyes'
    by_zsh pelage plan --now '"around the e'
    said zsh '--now "around the e' 'around the eyes'
    by_zsh pelage plan --units ''
    said zsh "--units " 'in|mm'
    by_zsh pelage plan --today 2026
    said zsh "--today 2026" files
fi
[ "$bad" -eq 0 ] && echo "completions: as they should be in $tried"
exit "$bad"
