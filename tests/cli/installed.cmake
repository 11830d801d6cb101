# Installs to a scratch folder, runs the installed program from another folder, and builds a program
# against the installed library.
#   cmake -D BUILD=build -D SOURCE=checkout -D SCRATCH=folder -D CXX=compiler -D FLAGS=flags -P installed.cmake
function(run)
  execute_process(COMMAND ${ARGN} WORKING_DIRECTORY "${SCRATCH}" RESULT_VARIABLE status
    OUTPUT_VARIABLE out ERROR_VARIABLE out)
  set(out "${out}" PARENT_SCOPE)
  if(NOT status EQUAL 0)
    list(JOIN ARGN " " command)
    message(FATAL_ERROR "${command}: status ${status}\n${out}")
  endif()
endfunction()
file(REMOVE_RECURSE "${SCRATCH}")
file(MAKE_DIRECTORY "${SCRATCH}/consumer")
run(${CMAKE_COMMAND} --install "${BUILD}" --prefix "${SCRATCH}/prefix")
run("${SCRATCH}/prefix/bin/fluewright" check "${SCRATCH}/prefix/share/doc/fluewright/examples/bindery.json")
foreach(made IN ITEMS man/man1/fluewright.1.gz bash-completion/completions/fluewright zsh/site-functions/_fluewright
    fish/vendor_completions.d/fluewright.fish)
  if(NOT EXISTS "${SCRATCH}/prefix/share/${made}")
    message(FATAL_ERROR "${made} was not installed")
  endif()
endforeach()
# The example programs, which set no C++ standard: the library's target asks for it.
set(examples "${SCRATCH}/prefix/share/doc/fluewright/examples")
run(${CMAKE_COMMAND} -S "${examples}/cpp" -B "${SCRATCH}/programs" -D CMAKE_PREFIX_PATH=${SCRATCH}/prefix
  -D CMAKE_CXX_COMPILER=${CXX} "-DCMAKE_CXX_FLAGS=${FLAGS} -Wall -Wextra -Werror")
run(${CMAKE_COMMAND} --build "${SCRATCH}/programs")
run("${SCRATCH}/programs/drafts" "${examples}/bindery.json")
if(NOT out MATCHES "frost, high fire: [0-9.]+ Pa")
  message(FATAL_ERROR "drafts prints no draft:\n${out}")
endif()
run("${SCRATCH}/programs/planned")
if(NOT out MATCHES "Draft: Draft ")
  message(FATAL_ERROR "planned prints no verdict:\n${out}")
endif()
# Every public header stands alone for a stranger who warns.
file(GLOB_RECURSE headers RELATIVE "${SCRATCH}/prefix/include" "${SCRATCH}/prefix/include/fluewright/*.hpp")
set(all "")
foreach(header IN LISTS headers)
  string(APPEND all "#include <${header}>\n")
endforeach()
file(WRITE "${SCRATCH}/consumer/all_headers.cpp" "${all}")
separate_arguments(flags UNIX_COMMAND "${FLAGS}")
run(${CXX} ${flags} -std=c++20 -fsyntax-only -Wall -Wextra -Werror -I "${SCRATCH}/prefix/include"
  "${SCRATCH}/consumer/all_headers.cpp")
