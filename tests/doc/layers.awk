# Reads C++ files, prints what breaks the rules of layers.sh, and ends with 1 if anything does.

# Told by layers.sh: `core` and `io`, the rooms in their order, those of the core first.
BEGIN {
    n = split(core " " io, room, " ")
    for (i = 1; i <= n; ++i) level[room[i]] = i
    n = split(core, room, " ")
    for (i = 1; i <= n; ++i) in_core[room[i]] = 1
    door = 98  # pelage.hpp and salon.*, which stand before all rooms
    tools = 99

    # A heavy library, and the only files that may include it.
    heavy["^CLI/"] = "^tools/"
    heavy["^toml[+][+]/"] = "^lib/data/toml[.]cpp$"
    heavy["^nlohmann/"] = "^(lib/(data/(json|record_line|quiz_file)[.]cpp|answers/([a-z_]+_)?json[.][ch]pp)|tools/manual_files[.]cpp)$"
    heavy["^boost/math/"] = "^lib/base/stats[.]cpp$"
    heavy["^boost/units/"] = "^include/pelage/base/units(_fmt)?[.]hpp$"
    heavy["^fmt/"] = "^((lib|tools)/|include/pelage/base/units_fmt[.]hpp$)"
    heavy["^utf8proc"] = "^(lib|tools)/"
    heavy["^iostream$"] = "^tools/"
    heavy["^regex$"] = "^$"  # 1.8 s a file
    heavy["^(gsl/|glpk|libical/)"] = "^$"  # judges in tests, never in what is installed

    # Below the command nobody asks the machine for the day, the place or the user, or prints.
    outside = "(system|steady|high_resolution)_clock|(^|[^a-z_])(std::)?time ?[(](NULL|nullptr|0|&)|" \
        "localtime|gmtime|gettimeofday|clock_gettime|getenv|setlocale|std::locale|random_device|" \
        "std::(cout|cerr|clog|cin)|(^|[^a-z_])(printf|fprintf|puts|putchar) ?[(]|fmt::print|" \
        "(^|[^a-z_])(exit|abort|quick_exit) ?[(]"
}

# The room a file of include/pelage/ or lib/ stands in.
function room_of(path) {
    if (!sub(/^(include\/pelage|lib)\//, "", path) || !sub(/\/.*/, "", path)) return ""
    return path
}

function level_of(path) {
    if (path ~ /^tools\//) return tools
    if (path ~ /^(include\/pelage|lib)\/(pelage|salon)[.][ch]pp$/) return door
    return room_of(path) in level ? level[room_of(path)] : -1
}

function complain(text) {
    print FILENAME ":" FNR ": " text
    bad = 1
}

FNR == 1 {
    here = level_of(FILENAME)
    if (here < 0) complain("stands in no room of lib/CMakeLists.txt")
}

here < 0 { next }

/^[ \t]*#[ \t]*include[ \t]*[<"]/ {
    what = $0
    sub(/^[^<"]*[<"]/, "", what)
    quoted = $0 ~ /include[ \t]*"/
    sub(/[>"].*/, "", what)
    if (what ~ /[.][.]\//) complain("includes " what "; say <pelage/...> or \"room/...\"")
    if (quoted && FILENAME ~ /^include\//) complain("includes \"" what "\"; public headers say <pelage/...>")
    target = ""
    if (what ~ /^pelage\//) target = "include/" what
    else if (quoted) target = (FILENAME ~ /^tools\// ? "tools/" : "lib/") what
    if (room_of(FILENAME) in in_core && what ~ /^(fmt|toml[+][+]|nlohmann|utf8proc)/)
        complain("includes " what ", but " room_of(FILENAME) " is of the core, which needs Boost alone")
    if (target != "") {
        there = level_of(target)
        if (there < 0) complain("includes " what ", which is in no room of lib/CMakeLists.txt")
        else if (there > here)
            complain("includes " what " from " room_of(FILENAME) "; an include points to its own room or to one before it")
        if (FILENAME ~ /[.]hpp$/) print FILENAME, target >> edges
    }
    for (h in heavy)
        if (what ~ h && FILENAME !~ heavy[h]) complain("includes " what ", which is for these files alone: " \
            (heavy[h] == "^$" ? "none" : heavy[h]))
    next
}

here < tools {
    code = $0
    gsub(/\\["\\]/, "", code)
    gsub(/"[^"]*"/, "\"\"", code)
    sub(/\/\/.*/, "", code)
    if (code ~ outside) complain("reads the clock, the environment or the locale, prints or ends the " \
        "program; only the command may: " $0)
}

END { exit bad }
