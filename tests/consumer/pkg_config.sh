#!/bin/sh
# pkg_config.sh core|io PC_FOLDER OUT_FOLDER COMPILER [FLAGS...]: builds and runs one program by pkg-config.
set -eu
part=$1 pc_folder=$2 out=$3
shift 3
case $part in
core) package=pelage-core ;;
io) package=pelage ;;
esac
here=$(dirname "$0")
mkdir -p "$out"
PKG_CONFIG_PATH=$pc_folder
export PKG_CONFIG_PATH
found=$(pkg-config --modversion "$package" | awk -F. '{ print $1 * 10000 + $2 * 100 + $3 }')
# shellcheck disable=SC2046 # flags are words
"$@" -std=c++20 -DCONSUMER_FOUND="$found" "$here/$part.cpp" -o "$out/$part-by-pkg-config" $(pkg-config --cflags --libs "$package")
# a shared library in a folder of its own is found by whoever says so
LD_LIBRARY_PATH=$(pkg-config --variable=libdir "$package") "$out/$part-by-pkg-config"
