# Answers of the library against the reference values of one family, strictly, and none missing.
#   cmake -DANSWERS=PROGRAM -DPYTHON=PYTHON -DCASES=CASES.json -DFLAT=FLAT.json -DCOMPARE=SCRIPT.py -DOUT=FILE -P compare.cmake
execute_process(COMMAND ${ANSWERS} ${CASES} OUTPUT_FILE ${OUT} RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "answers: exit status ${status}")
endif()
execute_process(COMMAND ${PYTHON} ${COMPARE} ${FLAT} ${OUT} strict OUTPUT_VARIABLE report RESULT_VARIABLE status)
message(STATUS "${report}")
if(NOT status EQUAL 0 OR NOT report MATCHES "fail 0 missing 0")
  message(FATAL_ERROR "the answers differ from the reference values")
endif()
