# -Dpelage_SANITIZE=address,undefined: everything built here stops at the first fault. The flags stay
# in pelage_sanitize_flags for programs built outside, which must be linked the same way.
set(pelage_sanitize_flags "")
if(pelage_SANITIZE)
  set(pelage_sanitize_flags -fsanitize=${pelage_SANITIZE} -fno-sanitize-recover=all)
  add_compile_options(${pelage_sanitize_flags} -fno-omit-frame-pointer)
  add_compile_definitions(_GLIBCXX_ASSERTIONS)
  add_link_options(${pelage_sanitize_flags})
endif()
# -Dpelage_FUZZ=ON: everything tells libFuzzer which way it went. Only clang has it.
if(pelage_FUZZ)
  add_compile_options(-fsanitize=fuzzer-no-link)
endif()
