# The answer shown in the README is the beginning of what the program says.
#   cmake -D EXE=program -D SOURCE=checkout -P readme.cmake
file(READ "${SOURCE}/README.md" readme)
set(prompt "$ fluewright check examples/bindery.json\n")
string(FIND "${readme}" "${prompt}" at)
if(at EQUAL -1)
  message(FATAL_ERROR "README.md shows no run")
endif()
string(LENGTH "${prompt}" skip)
math(EXPR at "${at} + ${skip}")
string(SUBSTRING "${readme}" ${at} -1 shown)
string(FIND "${shown}" "```" end)
string(SUBSTRING "${shown}" 0 ${end} shown)
execute_process(COMMAND ${CMAKE_COMMAND} -E env LC_ALL=C.UTF-8 "${EXE}" check examples/bindery.json
  WORKING_DIRECTORY "${SOURCE}" OUTPUT_VARIABLE said RESULT_VARIABLE status)
string(LENGTH "${shown}" length)
string(SUBSTRING "${said}" 0 ${length} said)
if(NOT shown STREQUAL said OR NOT status EQUAL 0)
  message(FATAL_ERROR "README.md shows\n${shown}\nthe program says\n${said}")
endif()

# A README is read to its end where it is short.
string(REGEX MATCHALL "\n" ends "${readme}")
list(LENGTH ends length)
if(length GREATER 150)
  message(FATAL_ERROR "README.md has ${length} lines; at most 150")
endif()
