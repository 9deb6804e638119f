# cmake -C tests/cache/tsan.cmake -S . -B build/tsan      data races; build pelage_misuse alone
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O0 -g1" CACHE STRING "")
set(pelage_SANITIZE thread CACHE STRING "")
find_program(ccache ccache)
if(ccache)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${ccache} CACHE STRING "")
endif()
