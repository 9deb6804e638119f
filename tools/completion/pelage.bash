# Completion for bash: what may follow is asked of the command itself.
_pelage() {
    local IFS=$'\n'
    # shellcheck disable=SC2207 # a word a line, none with blanks
    COMPREPLY=($(pelage complete -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null))
}
complete -o default -F _pelage pelage
