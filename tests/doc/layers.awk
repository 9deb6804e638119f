# Reads C++ files, prints what breaks the rules of layers.sh, and ends with 1 if anything does.

function fill(level, names,    list, i, n) {
    n = split(names, list, " ")
    for (i = 1; i <= n; ++i) layer[list[i]] = level
}

BEGIN {
    # A new public header goes into this table, in the lowest layer that can hold it.
    fill(0, "units error date evidence stats suggest phrase")
    fill(1, "alert blade comb zone part coat kit style dog finding setup held_tool text brushing select " \
        "prices days_off upkeep hair_today")
    fill(2, "cut refusal growth matting caution blend inheritance learning mix")
    fill(3, "catalogue zone_cause problem plan order visits stock worktop groom compile lookup forecast ways " \
        "booking calendar back_in growth_record mixture unseen sheet_check sheet_compare " \
        "any_sheet drawer patch clip_down")
    fill(4, "pelage")  # and all of io/ and lib/
    tools = 5

    # A heavy library, and the only files that may include it.
    heavy["^CLI/"] = "^tools/"
    heavy["^toml[+][+]/"] = "^lib/(toml_|read)[a-z_]*[.]cpp$"
    heavy["^nlohmann/"] = "^lib/((read|write)_json[a-z_]*[.]cpp|write_json[.]hpp)$"
    heavy["^boost/math/"] = "^lib/stats[.]cpp$"
    heavy["^boost/units/"] = "^include/pelage/units(_fmt)?[.]hpp$"
    heavy["^fmt/"] = "^((lib|tools)/|include/pelage/units_fmt[.]hpp$)"
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

function stem(path) {
    sub(/.*\//, "", path)
    sub(/[.][a-z]+$/, "", path)
    return path
}

# A file of lib/ belongs to the public header of its name, or of its first words, and so to the core;
# without such a header it belongs to io. lib/CMakeLists.txt reads names the same way.
function header_of(path,    s) {
    s = stem(path)
    while (!(s in layer) && s ~ /_/) sub(/_[^_]*$/, "", s)
    return s
}

function level_of(path,    s) {
    if (path ~ /^tools\//) return tools
    if (path ~ /^include\/pelage\/io\//) return 4
    if (path ~ /^include\/pelage\/[^\/]*$/) return stem(path) in layer ? layer[stem(path)] : -1
    if (path ~ /^lib\//) return header_of(path) in layer ? layer[header_of(path)] : 4
    return -1
}

function complain(text) {
    print FILENAME ":" FNR ": " text
    bad = 1
}

FNR == 1 {
    here = level_of(FILENAME)
    if (here < 0) complain("isn't in the table of layers; add its name to tests/doc/layers.awk")
}

here < 0 { next }

/^[ \t]*#[ \t]*include[ \t]*[<"]/ {
    what = $0
    sub(/^[^<"]*[<"]/, "", what)
    quoted = $0 ~ /include[ \t]*"/
    sub(/[>"].*/, "", what)
    if (what ~ /[.][.]\//) complain("includes " what "; say <pelage/...> or the file's own folder")
    if (quoted && FILENAME ~ /^include\//) complain("includes \"" what "\"; public headers say <pelage/...>")
    target = ""
    if (what ~ /^pelage\//) target = "include/" what
    else if (quoted) target = substr(FILENAME, 1, match(FILENAME, /[^\/]*$/) - 1) what
    if (FILENAME ~ /^lib\// && here < 4 && what ~ /^(fmt|toml[+][+]|nlohmann|utf8proc)/)
        complain("includes " what ", but belongs to " header_of(FILENAME) ".hpp of the core, which needs Boost alone")
    if (target != "") {
        there = level_of(target)
        if (there < 0) complain("includes " what ", which isn't in the table of tests/doc/layers.awk")
        else if (there > here)
            complain("includes " what " (layer " there ") from layer " here "; includes point downward only")
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
