# Runs the program as a user would and compares what it prints with the committed text.
#   cmake -D EXE=program -D CASE=folder -D HOME=examples -D SCRATCH=folder -P run_case.cmake
# A case is a folder with args.txt (one argument a line), stdout.txt and exit.txt; stdin.txt and
# stderr.txt where they matter. FLUEWRIGHT_UPDATE_GOLDEN=1 in the environment rewrites them: read the
# difference like code.
file(STRINGS "${CASE}/args.txt" args)
if(EXISTS "${CASE}/stdin.txt")
  set(input INPUT_FILE "${CASE}/stdin.txt")
else()
  set(input INPUT_FILE /dev/null)
endif()
execute_process(COMMAND ${CMAKE_COMMAND} -E env LC_ALL=C.UTF-8 NO_COLOR=1 COLUMNS=80 "${EXE}" ${args}
  WORKING_DIRECTORY "${HOME}" ${input}
  OUTPUT_VARIABLE out ERROR_VARIABLE err RESULT_VARIABLE status)

if("$ENV{FLUEWRIGHT_UPDATE_GOLDEN}")
  file(WRITE "${CASE}/stdout.txt" "${out}")
  file(WRITE "${CASE}/exit.txt" "${status}\n")
  if(EXISTS "${CASE}/stderr.txt")
    file(WRITE "${CASE}/stderr.txt" "${err}")
  endif()
  return()
endif()

function(compare name got)
  file(READ "${CASE}/${name}.txt" wanted)
  if(got STREQUAL wanted)
    return()
  endif()
  file(MAKE_DIRECTORY "${SCRATCH}")
  file(WRITE "${SCRATCH}/${name}.got" "${got}")
  execute_process(COMMAND diff -u "${CASE}/${name}.txt" "${SCRATCH}/${name}.got")
  message(FATAL_ERROR "${name} differs from the committed one")
endfunction()

compare(stdout "${out}")
if(EXISTS "${CASE}/stderr.txt")
  compare(stderr "${err}")
elseif(NOT err STREQUAL "")
  message(FATAL_ERROR "unexpected on standard error:\n${err}")
endif()
file(READ "${CASE}/exit.txt" wanted_status)
string(STRIP "${wanted_status}" wanted_status)
if(NOT status STREQUAL wanted_status)
  message(FATAL_ERROR "exit status ${status}, committed is ${wanted_status}")
endif()
