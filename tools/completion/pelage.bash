# Completion for bash: what may follow is asked of the command itself.
_pelage() {
    local IFS=$'\n' open='' word words=() offered
    for word in "${COMP_WORDS[@]:1:COMP_CWORD}"; do
        open=''
        case $word in
        \'* | \"*) open=${word:0:1} word=${word#?} word=${word%"$open"} ;;
        =) continue ;; # bash cuts --coat=wavy in three
        *) word=${word//\\/} ;;
        esac
        words+=("$word")
    done
    [ "${COMP_WORDS[COMP_CWORD]}" != = ] || words+=('')
    COMPREPLY=()
    while read -r offered; do
        # Of several words, where no quote holds them together.
        [ -n "$open" ] || printf -v offered %q "$offered"
        COMPREPLY+=("$offered")
    done < <(pelage complete -- "${words[@]}" 2>/dev/null)
}
complete -o default -F _pelage pelage
