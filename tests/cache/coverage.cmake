# cmake -C tests/cache/coverage.cmake -S . -B build/coverage      what tests/coverage/run uses: clang 19 counts lines
# and branches by the source, so that an exception's way out is no branch.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++-19 CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -fprofile-instr-generate -fcoverage-mapping" CACHE STRING "")
find_program(ccache ccache)
if(ccache)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${ccache} CACHE STRING "")
endif()
