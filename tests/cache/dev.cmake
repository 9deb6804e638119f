# cmake -C tests/cache/dev.cmake -S . -B build/check      what tools/check uses
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
# Asserts on, no debug information: it costs a third of the compile time and nobody reads it in a check.
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -D_GLIBCXX_ASSERTIONS" CACHE STRING "")
set(pelage_WERROR ON CACHE BOOL "")
find_program(ccache ccache)
if(ccache)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${ccache} CACHE STRING "")
endif()
