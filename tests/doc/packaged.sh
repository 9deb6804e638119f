#!/bin/sh
# What tools/package made, installed by apt on a Debian that has nothing else yet, and used there: the command,
# its manual and completions; then strangers' programs, against the packages and against the source itself.
# bare_roots.sh runs it as root, in a root of its own, which it fills. PACKAGED_SOURCE=no leaves the last out, which
# takes the most time.
#   packaged.sh FOLDER_OF_PACKAGES
set -eu
cd "$(dirname "$0")/../.."
packages=$1
built=$(mktemp -d)
DEBIAN_FRONTEND=noninteractive
export DEBIAN_FRONTEND

install() {
    apt-get -qq -o Dpkg::Use-Pty=0 install -y --no-install-recommends "$@" >"$built/apt" 2>&1 </dev/null ||
        { cat "$built/apt"; exit 1; }
}

# timed WHAT COMMAND...
timed() {
    what=$1
    shift
    begun=$(date +%s)
    "$@" >"$built/log" 2>&1 || { tail -n 50 "$built/log"; echo "packaged: $what failed"; exit 1; }
    echo "packaged: $what, $(($(date +%s) - begun)) s"
}

apt-get -qq update
timed "the command, installed" install "$packages"/pelage_*.deb "$packages"/libpelage0*.deb
cd /
timed "pelage plan biscuit" pelage plan biscuit
timed "pelage regrow biscuit" pelage regrow biscuit
cd - >/dev/null
[ -f /usr/share/pelage/reference/styles/one-length.toml ]
[ -f /usr/share/pelage/schema/plan.json ]
install man-db mandoc bash-completion
for page in /usr/share/man/man?/pelage*; do
    gzip -dc "$page" >"$built/page"
    mandoc -T lint "$built/page" # here the pages it refers to are there
done
timed "its manual" man pelage-plan
timed "its completions" sh tests/doc/completions.sh "$(command -v pelage)"
bash -c '. /usr/share/bash-completion/completions/pelage; complete -p pelage' >/dev/null
[ -f /usr/share/zsh/vendor-completions/_pelage ]
[ -f /usr/share/fish/vendor_completions.d/pelage.fish ]

timed "what is built with it, installed" install "$packages"/libpelage-dev_*.deb g++ cmake ninja-build pkg-config
for part in core io; do
    consumer() {
        cmake -G Ninja -S tests/consumer -B "$built/$part" "-Donly=$part" "-DCMAKE_CXX_FLAGS=-Wall -Wextra -Werror" &&
            cmake --build "$built/$part" && "$built/$part/consumer"
    }
    timed "find_package, $part" consumer
    timed "pkg-config, $part" sh tests/consumer/pkg_config.sh "$part" "" "$built" g++
done
if [ "${PACKAGED_SOURCE:-}" = no ]; then
    exit
fi
. tools/packages.sh
# shellcheck disable=SC2154,SC2086 # a list of words of packages.sh
install $build_packages
apt-get -qq remove -y libpelage-dev >"$built/apt" 2>&1
# stranger HOW PART
stranger() {
    cmake -G Ninja -S tests/consumer -B "$built/$1" "-Dfrom=$1" "-Donly=$2" -DCMAKE_BUILD_TYPE=Debug &&
        cmake --build "$built/$1" --parallel "$(nproc)" && "$built/$1/consumer"
}
timed "add_subdirectory, io" stranger add io
timed "FetchContent of a folder, core" stranger fetch core
rm -rf "$built"
