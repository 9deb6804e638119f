# Completion for bash: what may follow is asked of the command itself.
_pelage() {
    local IFS=$'\n'
    COMPREPLY=($(pelage complete -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null))
}
complete -o default -F _pelage pelage
