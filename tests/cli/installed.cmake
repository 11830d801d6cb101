# Installs to a scratch folder, runs the installed program from another folder, and builds a program
# against the installed library.
#   cmake -D BUILD=build -D SOURCE=checkout -D SCRATCH=folder -D CXX=compiler -D FLAGS=flags -P installed.cmake
function(run)
  execute_process(COMMAND ${ARGN} WORKING_DIRECTORY "${SCRATCH}" RESULT_VARIABLE status
    OUTPUT_VARIABLE out ERROR_VARIABLE out)
  if(NOT status EQUAL 0)
    list(JOIN ARGN " " command)
    message(FATAL_ERROR "${command}: status ${status}\n${out}")
  endif()
endfunction()
file(REMOVE_RECURSE "${SCRATCH}")
file(MAKE_DIRECTORY "${SCRATCH}/work")
run(${CMAKE_COMMAND} --install "${BUILD}" --prefix "${SCRATCH}/prefix")
run("${SCRATCH}/prefix/bin/fluewright" check "${SCRATCH}/prefix/share/doc/fluewright/examples/bindery.json")
run(${CMAKE_COMMAND} -S "${SOURCE}/tests/cli/consumer" -B "${SCRATCH}/consumer"
  -D CMAKE_PREFIX_PATH=${SCRATCH}/prefix -D CMAKE_CXX_COMPILER=${CXX} -D CMAKE_CXX_FLAGS=${FLAGS})
run(${CMAKE_COMMAND} --build "${SCRATCH}/consumer")
run("${SCRATCH}/consumer/consumer" "${SCRATCH}/prefix/share/doc/fluewright/examples/bindery.json")
