# cli/README.md is what the program prints. `withy --manual > cli/README.md` makes it so again.
execute_process(COMMAND ${WITHY} --manual OUTPUT_VARIABLE printed COMMAND_ERROR_IS_FATAL ANY)
file(READ ${MANUAL} written)
if(NOT printed STREQUAL written)
  message(FATAL_ERROR "cli/README.md is not what `withy --manual` prints")
endif()
