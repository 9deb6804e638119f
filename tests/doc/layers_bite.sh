#!/bin/sh
# layers.sh must refuse what it is there to refuse: each case plants one fault in a small tree.
set -eu
layers=$(cd "$(dirname "$0")" && pwd)/layers.sh
tree=$(mktemp -d)
trap 'rm -rf "$tree"' EXIT
failed=0

fresh() {
    rm -rf "$tree"
    mkdir -p "$tree/include/pelage/io" "$tree/lib" "$tree/tools"
    echo '#include <pelage/units.hpp>' >"$tree/include/pelage/blade.hpp"
    echo '#include <pelage/blade.hpp>' >"$tree/include/pelage/comb.hpp"
    echo '#include <boost/units/quantity.hpp>' >"$tree/include/pelage/units.hpp"
    echo '#include <boost/math/distributions/normal.hpp>' >"$tree/lib/stats.cpp"
    echo '#include <iostream>' >"$tree/tools/main.cpp"
}

# refused FILE LINE WORDS: with LINE in FILE the script ends with 1 and says WORDS.
refused() {
    fresh
    echo "$2" >>"$tree/$1"
    if said=$(sh "$layers" "$tree" 2>&1); then
        echo "not refused: $1: $2"
        failed=1
    elif ! echo "$said" | grep -q -F -e "$3"; then
        echo "refused with other words: $1: $2: $said"
        failed=1
    fi
}

fresh
sh "$layers" "$tree" >/dev/null || { echo "the sound tree is refused"; failed=1; }

refused include/pelage/units.hpp '#include <pelage/plan.hpp>' 'units.hpp:2: includes pelage/plan.hpp (layer 3) from layer 0'
refused include/pelage/cut.hpp '#include <pelage/io/embedded.hpp>' 'layer 4) from layer 2'
refused lib/stats.cpp '#include <pelage/growth.hpp>' 'layer 2) from layer 0'
refused lib/write.cpp '#include "../tools/cli.hpp"' '../tools/cli.hpp; say'
refused include/pelage/blade.hpp '#include <pelage/comb.hpp>' 'in a ring'
refused include/pelage/newcomer.hpp '#pragma once' "newcomer.hpp:1: isn't in the table"
refused include/pelage/cut.hpp '#include <pelage/newcomer.hpp>' "newcomer.hpp, which isn't in the table"
refused include/pelage/cut.hpp '#include "blade.hpp"' 'public headers say <pelage/...>'
refused include/pelage/cut.hpp '#include <iostream>' 'includes iostream'
refused lib/write.cpp '#include <CLI/CLI.hpp>' 'includes CLI/CLI.hpp'
refused tools/plan.cpp '#include <toml++/toml.h>' 'includes toml++/toml.h'
refused tools/plan.cpp '#include <nlohmann/json.hpp>' 'includes nlohmann/json.hpp'
refused lib/growth_curve.cpp '#include <fmt/core.h>' 'belongs to growth.hpp of the core'
refused lib/growth_curve.cpp '#include <pelage/io/embedded.hpp>' 'layer 4) from layer 2'
refused lib/growth.cpp '#include <boost/math/distributions/lognormal.hpp>' 'includes boost/math'
refused include/pelage/cut.hpp '#include <boost/units/quantity.hpp>' 'includes boost/units'
refused lib/write.cpp '    auto now = std::chrono::system_clock::now();' 'reads the clock'
refused lib/write.cpp '    const char* home = std::getenv("HOME");' 'reads the clock, the environment'
refused include/pelage/cut.hpp '    printf("x");' 'prints'
[ $failed -ne 0 ] || echo "layers: all planted faults are refused"
exit $failed
