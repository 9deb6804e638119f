# Sourced by tools/try and tools/check: installs what is missing with apt-get, and only that.
# shellcheck shell=bash disable=SC2034

# What the command is built from.
build_packages="g++ cmake ninja-build libboost-dev libcli11-dev libtomlplusplus-dev libfmt-dev
    nlohmann-json3-dev libutf8proc-dev"
# What its tests need besides.
test_packages="ccache catch2 librapidcheck-dev libgsl-dev libglpk-dev libical-dev pkg-config python3
    mandoc sqlite3 python3-jsonschema python3-icalendar"
# What the long tests need besides: another judge of plans, called as a program, a browser that prints
# pages, a compiler with libFuzzer, and a maker of bare roots.
full_packages="coinor-cbc chromium poppler-utils clang-19 libclang-rt-19-dev debootstrap
    doxygen shellcheck codespell"
# What tests/bench/run measures with and against.
bench_packages="libbenchmark-dev valgrind glpk-utils coinor-cbc lp-solve toulbar2"

say() {
    echo "== $*"
}

installed() {
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$1" 2>/dev/null)" = installed ]
}

# as_root COMMAND...: as root, by sudo where we aren't.
as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        echo "This needs root or sudo. Run as root: $*" >&2
        return 1
    fi
}

apt_get() {
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Dpkg::Use-Pty=0 "$@" </dev/null
}

# The package lists count as fresh for a day.
lists_are_fresh() {
    [ -n "$(find /var/lib/apt/lists -maxdepth 1 -name '*_Packages*' -mtime -1 2>/dev/null | head -n 1)" ]
}

# need PACKAGE...: installs those that are missing. Asks the network for nothing if none is.
need() {
    missing=
    for package in "$@"; do
        installed "$package" || missing="$missing $package"
    done
    if [ -z "$missing" ]; then
        say "Packages: all there"
        return
    fi
    if ! command -v apt-get >/dev/null; then
        echo "This script knows Debian 12 and 13. Elsewhere install the like of:$missing" >&2
        return 1
    fi
    say "Packages: installing$missing"
    lists_are_fresh || apt_get update
    # shellcheck disable=SC2086 # $missing is a list of words
    apt_get install -y --no-install-recommends $missing >/dev/null || {
        apt_get update
        apt_get install -y --no-install-recommends $missing >/dev/null
    }
}

# offered PACKAGE: whether this Debian has it at all.
offered() {
    installed "$1" || [ -n "$(apt-cache madison "$1" 2>/dev/null)" ]
}

# configure FOLDER OPTIONS...: runs cmake, with ninja in a new folder; a folder that was moved here
# with its contents starts afresh.
configure() {
    folder=$1
    shift
    cache=$folder/CMakeCache.txt
    if [ -f "$cache" ] && ! grep -q "^CMAKE_HOME_DIRECTORY:INTERNAL=$PWD\$" "$cache"; then
        rm -rf "$cache" "$folder/CMakeFiles"
    fi
    [ -f "$cache" ] || set -- -G Ninja "$@"
    quietly "$folder" cmake -S . -B "$folder" "$@"
}

# build FOLDER OPTIONS...: on all processors.
build() {
    folder=$1
    shift
    quietly "$folder" cmake --build "$folder" --parallel "$(nproc)" "$@"
}

# quietly FOLDER COMMAND...: keeps what the command says in FOLDER/log, and shows it only on failure.
quietly() {
    log=$1/log
    shift
    mkdir -p "$(dirname "$log")"
    if ! "$@" >"$log" 2>&1 </dev/null; then
        tail -n 200 "$log" >&2
        echo "Failed: $*" >&2
        return 1
    fi
}
