# Completion for fish: what may follow is asked of the command itself; files only where it knows nothing.
function __pelage_offers
    # Without the quote that is open, and without what quotes single characters.
    set -l begun (commandline -ct | string replace -r '^[\'"]' '' | string replace -ra '\\\\(.)' '$1')
    set -g __pelage_offered (pelage complete -- (commandline -opc)[2..-1] "$begun" 2>/dev/null)
    test (count $__pelage_offered) -gt 0
end
complete -c pelage -n __pelage_offers -f -a '$__pelage_offered'
