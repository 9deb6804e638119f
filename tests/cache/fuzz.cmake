# cmake -C tests/cache/fuzz.cmake -S . -B build/fuzz      libFuzzer targets, clang 19
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++-19 CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -g1" CACHE STRING "")
set(pelage_SANITIZE address,undefined CACHE STRING "")
set(pelage_FUZZ ON CACHE BOOL "")
