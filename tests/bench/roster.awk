# Makes an invented roster: awk -v dogs=1000 -v folder=DIR -f roster.awk writes DIR/styles/*.toml (34
# sheets, which with the 16 of the reference make 50) and DIR/roster.jsonl. The same bytes everywhere:
# the dice are our own. Nearly every dog differs from every other.

function die(n) {  # 0 to n - 1
    seed = (seed * 16807) % 2147483647
    return int(seed / 2147483647 * n)
}
function one_of(words,    list, n) {
    n = split(words, list, "|")
    return list[die(n) + 1]
}
function chance(percent) { return die(100) < percent }

function sheet(k,    file, body, id) {
    id = sprintf("invented-%02d", k)
    file = folder "/styles/" id ".toml"
    body = one_of("6.3|9.5|13|16|19|22|25")
    print "format = 1" > file
    print "id = \"" id "\"" > file
    print "title = \"Invented sheet " k "\"" > file
    print "text = \"Invented: a sheet of the benchmark.\"" > file
    print "feet = \"" one_of("round|clean|natural") "\"" > file
    print "face = \"" one_of("round|bearded|natural|clean") "\"" > file
    print "upkeep = \"every 3 days to the skin\"" > file
    print "longest_interval = \"" one_of("35|42|49|56") " days\"" > file
    print "basis = \"assumption\"" > file
    print "adjustable_length = \"" body " mm\"" > file
    print "[zones]" > file
    print "all = { length = \"" body " mm\" }" > file
    print "legs = { length = \"" one_of("13|16|19|22|25|32") " mm\", finish = \"" \
        one_of("clip|comb-then-scissor|scissor") "\" }" > file
    print "head = { length = \"" one_of("13|16|19|25|32") " mm\", finish = \"" \
        one_of("comb-then-scissor|scissor|clip") "\" }" > file
    print "feet = { length = \"" one_of("6.3|9.5|13|19") " mm\", finish = \"scissor\" }" > file
    print "ear = { length = \"" one_of("9.5|13|25|32|45") " mm\", finish = \"" \
        one_of("clip|comb-then-scissor") "\" }" > file
    print "ear-edge = { length = \"" one_of("13|25|32|45") " mm\", finish = \"scissor\" }" > file
    print "tail = { length = \"" one_of("19|25|32|45|60") " mm\", finish = \"" \
        one_of("scissor|comb-then-scissor") "\" }" > file
    if (chance(30)) print "rump = { blade = \"7F\" }" > file
    if (chance(30)) print "cheek = { length = \"" one_of("6.3|9.5|13") " mm\" }" > file
    if (chance(20)) print "skull = { length = \"" one_of("19|25|32") " mm\", direction = \"either\" }" > file
    close(file)
}

function dog(k,    line, n, i) {
    line = sprintf("{\"id\":\"dog-%06d\",\"name\":\"Invented %d\",\"invented\":true", k, k)
    line = line ",\"size\":\"" one_of("toy|small|small|medium|medium|large|giant") "\""
    line = line ",\"coat\":\"" \
        one_of("wavy|wavy|wavy|curly|curly|drop|drop|wire|double-short|double-long|smooth") "\""
    if (chance(75)) line = line ",\"style\":\"" sprintf("invented-%02d", die(34) + 1) "\""
    else line = line ",\"style\":\"" one_of(reference) "\""
    line = line ",\"brushing\":\"" one_of("none|weekly on the surface|weekly to the skin|" \
        "every 3 days to the skin|every 2 days to the skin|daily to the skin") "\""
    if (chance(90)) {
        line = line ",\"now\":{\"all\":\"" (15 + die(900) / 10) " mm\""
        if (chance(60)) line = line ",\"legs\":\"" (15 + die(900) / 10) " mm\""
        if (chance(60)) line = line ",\"head\":\"" (10 + die(800) / 10) " mm\""
        if (chance(40)) line = line ",\"ear\":\"" (10 + die(900) / 10) " mm\""
        if (chance(40)) line = line ",\"tail\":\"" (20 + die(1200) / 10) " mm\""
        line = line "}"
    }
    if (chance(20)) {
        line = line ",\"departures\":{\"" one_of("ear|muzzle|tail|legs|left ear|skull|feet") \
            "\":{\"length\":\"" (6 + die(300) / 10) " mm\"}"
        if (chance(30)) line = line ",\"back\":{\"length\":\"" (5 + die(200) / 10) " mm\"}"
        line = line "}"
    }
    if (chance(12)) {
        n = 1 + die(3)
        line = line ",\"mat\":["
        for (i = 1; i <= n; ++i) {
            line = line (i > 1 ? "," : "") "{\"zone\":\"" \
                (i == 1 ? one_of("behind-ear|left ear|armpit") : i == 2 ? one_of("tail|elbow") : "groin") \
                "\",\"grade\":\"" one_of("tangle|mat|matted-area") "\",\"free_hair\":\"" \
                (2 + die(100) / 10) " mm\",\"comb_passes\":" one_of("true|false") \
                ",\"comb_out\":" one_of("true|false") "}"
        }
        line = line "]"
    }
    if (chance(4)) line = line ",\"skin\":[{\"zone\":\"" one_of("left flank|belly|neck|right ear") \
        "\",\"state\":\"" one_of("irritated|lump|wet|broken") "\"}]"
    if (chance(6)) line = line ",\"coat_change\":true"
    if (chance(8)) line = line ",\"thin_or_old\":true"
    if (chance(8)) line = line ",\"pink_skin\":true"
    if (chance(30)) line = line ",\"consents\":[\"" one_of("clip-down|clip-jacket|show-blades") "\"]"
    if (chance(30)) line = line ",\"visit\":[{\"date\":\"2026-08-" (10 + die(20)) \
        "\",\"kind\":\"full\"},{\"date\":\"2026-10-" (10 + die(20)) "\",\"kind\":\"tidy\"}]"
    if (chance(30)) line = line ",\"note\":\"Invented. Stands well, sits for the feet.\""
    print line "}" > roster
}

BEGIN {
    seed = 20261125
    reference = "kennel|lagotto|lamb|low-upkeep|one-length|poodle-sporting|retriever-clip|rounded|" \
        "schnauzer-pet|scissored-legs|smooth-tidy|spaniel-pattern|standard-schnauzer|west-highland|" \
        "white-terrier|double-tidy"
    for (k = 1; k <= 34; ++k) sheet(k)
    roster = folder "/roster.jsonl"
    for (k = 1; k <= dogs; ++k) dog(k)
    close(roster)
}
