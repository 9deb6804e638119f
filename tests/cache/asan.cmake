# cmake -C tests/cache/asan.cmake -S . -B build/asan      addresses and undefined behaviour
# At -O0: above it CLI11 alone takes most of a minute and a gigabyte under these.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O0 -g1" CACHE STRING "")
set(pelage_SANITIZE address,undefined CACHE STRING "")
find_program(ccache ccache)
if(ccache)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${ccache} CACHE STRING "")
endif()
