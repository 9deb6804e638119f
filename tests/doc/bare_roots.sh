#!/usr/bin/env bash
# The README's two commands on Debians that have nothing else yet: for each suite a minimal root, this
# tree copied in, tools/try, tools/check and tools/package run there, the times said; then the packages in
# another minimal root (packaged.sh). About twenty-five minutes a suite on two processors; packages of
# Debian come from the mirror that this machine's apt uses.
#
#   tests/doc/bare_roots.sh [SUITE...]         bookworm and trixie if none is named
#
# Ends with 77 and a line that says why where it can't be done: it needs root, debootstrap, a mirror.
set -euo pipefail
cd "$(dirname "$(readlink -f "$0")")/../.."

skip() {
    echo "Skipped: $*"
    exit 77
}

# The first Debian mirror among what apt reads here.
mirror() {
    # shellcheck disable=SC2016 # for apt
    apt-get indextargets --format '$(ORIGIN) $(COMPONENT) $(REPO_URI)' 'Created-By: Packages' |
        awk '$1 == "Debian" && $2 == "main" && !found { found = $3 } END { print found }'
}

# What apt was told here about proxies, and about clocks that are wrong, for another apt.
apt_settings() {
    apt-config dump | grep -Ei '^Acquire::(.*proxy|Check-Valid-Until|Check-Date)' || true
}

# inside ROOT COMMAND: with mounts of its own, so that none is left behind, whatever happens.
inside() {
    # shellcheck disable=SC2016 # for the shell inside
    unshare --mount sh -ec '
        mount -t proc proc "$1/proc"
        mount --rbind /dev "$1/dev"
        exec env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LANG=C.UTF-8 \
            http_proxy="${http_proxy:-}" https_proxy="${https_proxy:-}" no_proxy="${no_proxy:-}" \
            chroot "$1" sh -c "$2"' inside "$1" "$2"
}

# timed SUITE ROOT COMMAND: what it says is shown only if it fails.
timed() {
    SECONDS=0
    if ! inside "$2" "cd /pelage && $3" >"$folder/log" 2>&1 </dev/null; then
        tail -n 200 "$folder/log" >&2
        echo "$1: $3 failed after $SECONDS s" >&2
        exit 1
    fi
    grep '^packaged: ' "$folder/log" || true
    echo "$1: $3, $SECONDS s"
}

[ "$(id -u)" -eq 0 ] || skip "bare roots need the rights of root"
command -v debootstrap >/dev/null || skip "bare roots need debootstrap"
command -v apt-get >/dev/null || skip "bare roots need this machine's apt"
from=$(mirror)
[ -n "$from" ] || skip "this machine's apt has no Debian mirror"
unshare --mount true 2>/dev/null || skip "mounts of one's own aren't allowed here"

folder=$(mktemp -d)
trap 'rm -rf --one-file-system "$folder"' EXIT
[ $# -gt 0 ] || set -- bookworm trixie
for suite in "$@"; do
    root=$folder/root
    SECONDS=0
    if ! debootstrap --variant=minbase --include=ca-certificates "$suite" "$root" "$from" \
        >"$folder/log" 2>&1; then
        tail -n 20 "$folder/log" >&2
        echo "$suite: no bare root" >&2
        exit 1
    fi
    apt_settings >"$root/etc/apt/apt.conf.d/99here"
    mkdir "$root/pelage"
    tar --exclude=./build -cf - . | tar -C "$root/pelage" --no-same-owner -xf -
    echo "$suite: a bare root, $SECONDS s"
    bare=$folder/bare
    cp -a "$root" "$bare"
    timed "$suite" "$root" tools/try
    timed "$suite" "$root" tools/check
    timed "$suite" "$root" tools/package
    inside "$root" "apt-get -qq install -y --no-install-recommends lintian" >"$folder/log" 2>&1 </dev/null
    timed "$suite" "$root" "lintian --allow-root --fail-on error,warning build/package/out/*.deb"
    mkdir "$bare/packages"
    cp "$root"/pelage/build/package/out/*.deb "$bare/packages"
    timed "$suite" "$bare" "tests/doc/packaged.sh /packages"
    rm -rf --one-file-system "$root" "$bare"
done
