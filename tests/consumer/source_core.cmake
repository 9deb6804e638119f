# cmake -D... -P source_core.cmake: pelage::core configured, built, installed and used where no other library
# than Boost can be found. Flags are those of the build that tests, so that a compiler cache helps.
file(REMOVE_RECURSE ${BUILD})
set(absent "")
foreach(package tomlplusplus fmt nlohmann_json CLI11 Catch2 rapidcheck GSL Python3)
  list(APPEND absent -DCMAKE_DISABLE_FIND_PACKAGE_${package}=ON)
endforeach()
set(compiler -G ${GENERATOR} -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_CXX_COMPILER_LAUNCHER=${LAUNCHER}
  -DCMAKE_BUILD_TYPE=${TYPE} "-DCMAKE_CXX_FLAGS_DEBUG=${FLAGS_DEBUG}")
function(run)
  execute_process(COMMAND ${ARGN} COMMAND_ERROR_IS_FATAL ANY OUTPUT_QUIET)
endfunction()
run(${CMAKE_COMMAND} -S ${SOURCE} -B ${BUILD}/core ${compiler} ${absent} -Dpelage_BUILD_IO=OFF
  -Dpelage_SANITIZE=${SANITIZE} -Dpelage_WERROR=${WERROR})
run(${CMAKE_COMMAND} --build ${BUILD}/core)
run(${CMAKE_COMMAND} --install ${BUILD}/core --prefix ${BUILD}/stage)
run(${CMAKE_COMMAND} -S ${SOURCE}/tests/consumer -B ${BUILD}/use ${compiler} ${absent} -Donly=core
  -DCMAKE_PREFIX_PATH=${BUILD}/stage "-DCMAKE_CXX_FLAGS=${FLAGS}")
run(${CMAKE_COMMAND} --build ${BUILD}/use)
run(${BUILD}/use/consumer)
