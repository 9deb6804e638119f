# What tools/package packs: the command, the shared libraries, and what is built with them.
set(CPACK_PACKAGE_NAME pelage)
set(CPACK_PACKAGE_VENDOR "The pelage authors")
set(CPACK_PACKAGE_CONTACT "The pelage authors <pelage@packages.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "")  # each package has its own, the first line of its description
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_FILE_NAME pelage-${PROJECT_VERSION})
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE
  GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)

set(CPACK_COMPONENTS_ALL command library core io)
set(CPACK_COMPONENTS_GROUPING ONE_PER_GROUP)
set(CPACK_COMPONENT_COMMAND_GROUP command)
set(CPACK_COMPONENT_LIBRARY_GROUP library)
set(CPACK_COMPONENT_CORE_GROUP dev)
set(CPACK_COMPONENT_IO_GROUP dev)

set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_HOMEPAGE "")
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(so ${PROJECT_VERSION_MAJOR}.${PROJECT_VERSION_MINOR})
set(CPACK_DEBIAN_COMMAND_PACKAGE_NAME pelage)
set(CPACK_DEBIAN_COMMAND_PACKAGE_SECTION utils)
set(CPACK_DEBIAN_COMMAND_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_COMMAND_PACKAGE_DEPENDS "libpelage${so} (= ${PROJECT_VERSION})")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME libpelage${so})
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libs)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS ON)
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS_POLICY "=")
# A trigger has the linker's cache made anew. CPack would add scripts that do it, unless it finds them here; files
# that aren't there are packed by nobody.
file(WRITE ${PROJECT_BINARY_DIR}/triggers "activate-noawait ldconfig\n")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_CONTROL_EXTRA ${PROJECT_BINARY_DIR}/triggers
  ${PROJECT_BINARY_DIR}/absent/postinst ${PROJECT_BINARY_DIR}/absent/postrm)
set(CPACK_DEBIAN_DEV_PACKAGE_NAME libpelage-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS "libpelage${so} (= ${PROJECT_VERSION}), libboost-dev,\
 libtomlplusplus-dev, libfmt-dev, libutf8proc-dev")
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS_PRIVATE_DIRS ${PROJECT_BINARY_DIR}/lib)
set(CPACK_DEBIAN_COMMAND_DESCRIPTION "plans how long a dog's coat stays, and with which blade
It says, before the clipper touches the coat, how long each part of the dog
will be left, with which blade or comb, in which order, and when the dog must
be back. It keeps style sheets, the record of what was done and the week of a
salon.")
set(CPACK_DEBIAN_LIBRARY_DESCRIPTION "plans how long a dog's coat stays - shared libraries
What the command pelage is built on: models of hair, cuts, growth and mats,
exact searches for plans, and readers and writers of their files.")
set(CPACK_DEBIAN_DEV_DESCRIPTION "plans how long a dog's coat stays - development files
Headers, and files for CMake and pkg-config, to build programs with the
libraries of pelage.")

set(pelage_CHANGES ${CMAKE_CURRENT_LIST_DIR}/changelog)
configure_file(${CMAKE_CURRENT_LIST_DIR}/package_docs.cmake.in ${PROJECT_BINARY_DIR}/package_docs.cmake @ONLY)
set(CPACK_PRE_BUILD_SCRIPTS ${PROJECT_BINARY_DIR}/package_docs.cmake)
include(CPack)
