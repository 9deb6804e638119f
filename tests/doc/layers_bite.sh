#!/bin/sh
# layers.sh must refuse what it is there to refuse: each case plants one fault in a small tree.
set -eu
layers=$(cd "$(dirname "$0")" && pwd)/layers.sh
tree=$(mktemp -d)
trap 'rm -rf "$tree"' EXIT
failed=0

fresh() {
    rm -rf "$tree"
    for room in base trade model data attic; do
        mkdir -p "$tree/include/pelage/$room" "$tree/lib/$room"
    done
    mkdir -p "$tree/tools"
    printf 'set(core_rooms base trade model)\nset(io_rooms data)\n' >"$tree/lib/CMakeLists.txt"
    echo '#include <pelage/base/units.hpp>' >"$tree/include/pelage/trade/blade.hpp"
    echo '#include <pelage/trade/blade.hpp>' >"$tree/include/pelage/trade/comb.hpp"
    echo '#include <boost/units/quantity.hpp>' >"$tree/include/pelage/base/units.hpp"
    echo '#include <boost/math/distributions/normal.hpp>' >"$tree/lib/base/stats.cpp"
    echo '#include "model/growth_curve.hpp"' >"$tree/lib/data/read.cpp"
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

refused include/pelage/base/units.hpp '#include <pelage/trade/comb.hpp>' 'units.hpp:2: includes pelage/trade/comb.hpp from base'
refused include/pelage/model/cut.hpp '#include <pelage/data/embedded.hpp>' 'from model'
refused lib/base/stats.cpp '#include <pelage/model/growth.hpp>' 'from base'
refused lib/model/growth.cpp '#include "data/toml.hpp"' 'includes data/toml.hpp from model'
refused lib/data/write.cpp '#include "../tools/cli.hpp"' '../tools/cli.hpp; say'
refused include/pelage/trade/blade.hpp '#include <pelage/trade/comb.hpp>' 'in a ring'
refused include/pelage/attic/newcomer.hpp '#pragma once' "newcomer.hpp:1: stands in no room"
refused lib/newcomer.cpp '#include <string>' "newcomer.cpp:1: stands in no room"
refused include/pelage/model/cut.hpp '#include <pelage/newcomer.hpp>' "newcomer.hpp, which is in no room"
refused lib/model/cut.cpp '#include "growth_curve.hpp"' "growth_curve.hpp, which is in no room"
refused include/pelage/model/cut.hpp '#include "blade.hpp"' 'public headers say <pelage/...>'
refused include/pelage/model/cut.hpp '#include <iostream>' 'includes iostream'
refused lib/data/write.cpp '#include <CLI/CLI.hpp>' 'includes CLI/CLI.hpp'
refused tools/plan.cpp '#include <toml++/toml.h>' 'includes toml++/toml.h'
refused tools/plan.cpp '#include <nlohmann/json.hpp>' 'includes nlohmann/json.hpp'
refused lib/model/growth_curve.cpp '#include <fmt/core.h>' 'model is of the core'
refused lib/model/growth.cpp '#include <boost/math/distributions/lognormal.hpp>' 'includes boost/math'
refused include/pelage/model/cut.hpp '#include <boost/units/quantity.hpp>' 'includes boost/units'
refused lib/data/write.cpp '    auto now = std::chrono::system_clock::now();' 'reads the clock'
refused lib/data/write.cpp '    const char* home = std::getenv("HOME");' 'reads the clock, the environment'
refused include/pelage/model/cut.hpp '    printf("x");' 'prints'
[ $failed -ne 0 ] || echo "layers: all planted faults are refused"
exit $failed
