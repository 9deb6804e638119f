# pelage::io, and what the build makes of reference/ for it.
# The reference data as one C++ file: edited in reference/, carried in the library.
file(GLOB_RECURSE data CONFIGURE_DEPENDS RELATIVE ${PROJECT_SOURCE_DIR}
  ${PROJECT_SOURCE_DIR}/reference/*.toml)
list(SORT data)
list(TRANSFORM data PREPEND "${PROJECT_SOURCE_DIR}/" OUTPUT_VARIABLE data_paths)
set(embedded ${CMAKE_CURRENT_BINARY_DIR}/embedded_reference.cpp)
add_custom_command(OUTPUT ${embedded}
  COMMAND ${CMAKE_COMMAND} -DROOT=${PROJECT_SOURCE_DIR} "-DFILES=${data}" -DOUT=${embedded}
          -P ${CMAKE_CURRENT_SOURCE_DIR}/data/embed.cmake
  DEPENDS ${data_paths} data/embed.cmake
  COMMENT "Embedding the reference data" VERBATIM)

# The same data as trees, parsed while building: what a short command would spend most of its time on.
set(packed ${CMAKE_CURRENT_BINARY_DIR}/packed_reference.cpp)
add_executable(pelage_pack data/pack_main.cpp data/packed_tree.cpp data/toml.cpp data/faults.cpp)
target_compile_features(pelage_pack PRIVATE cxx_std_20)
target_include_directories(pelage_pack PRIVATE ${headers_dir} ${CMAKE_CURRENT_SOURCE_DIR})
target_compile_definitions(pelage_pack PRIVATE TOML_HEADER_ONLY=0 TOML_SHARED_LIB=1)
target_link_libraries(pelage_pack PRIVATE Boost::headers tomlplusplus::tomlplusplus fmt::fmt utf8proc)
pelage_warnings(pelage_pack)
add_custom_command(OUTPUT ${packed}
  COMMAND pelage_pack ${packed} ${PROJECT_SOURCE_DIR} ${data}
  DEPENDS ${data_paths} pelage_pack
  COMMENT "Packing the reference data" VERBATIM)

add_library(pelage_io ${io_sources} ${embedded} ${packed})
pelage_together(pelage_io ${io_sources})
# What is embedded is longer than a standard asks a compiler to take.
set_source_files_properties(${embedded} ${packed} PROPERTIES COMPILE_OPTIONS -Wno-overlength-strings)
target_include_directories(pelage_io PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
add_library(pelage::io ALIAS pelage_io)
target_sources(pelage_io PUBLIC FILE_SET HEADERS BASE_DIRS ${headers_dir} FILES ${io_headers})
# nlohmann-json is all headers: whoever uses the built library doesn't need it.
target_link_libraries(pelage_io PUBLIC pelage_core
  PRIVATE tomlplusplus::tomlplusplus fmt::fmt utf8proc $<BUILD_INTERFACE:nlohmann_json::nlohmann_json>)
# The header-only form of toml++ aborts on ordinary typing mistakes; the shared library doesn't.
target_compile_definitions(pelage_io PRIVATE TOML_HEADER_ONLY=0 TOML_SHARED_LIB=1)

set_target_properties(pelage_io PROPERTIES EXPORT_NAME io
  VERSION ${PROJECT_VERSION} SOVERSION ${library_number} POSITION_INDEPENDENT_CODE ON INSTALL_RPATH "$ORIGIN")
pelage_warnings(pelage_io)
