# pelage_warnings(target): the warnings every file of our own is held to. Not dangling-reference: g++ 13 and 14
# take a reference to one argument for one to a temporary that is another. Not maybe-uninitialized: g++ 12
# sees it in every copied std::optional<length>, since quantities copy themselves by hand.
function(pelage_warnings target)
  target_compile_options(${target} PRIVATE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wdouble-promotion -Wold-style-cast
    -Wnon-virtual-dtor $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>
    $<$<AND:$<CXX_COMPILER_ID:GNU>,$<VERSION_GREATER_EQUAL:$<CXX_COMPILER_VERSION>,13>>:-Wno-dangling-reference>
    $<$<BOOL:${pelage_WERROR}>:-Werror>
    # std::stable_sort of g++ 12's library calls what C++17 deprecates, which clang tells of its caller.
    $<$<AND:$<BOOL:${pelage_WERROR}>,$<CXX_COMPILER_ID:Clang>>:-Wno-error=deprecated-declarations>)
endfunction()
