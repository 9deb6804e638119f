# Completion for fish: what may follow is asked of the command itself.
complete -c pelage -a '(pelage complete -- (commandline -opc)[2..-1] (commandline -ct) 2>/dev/null)'
