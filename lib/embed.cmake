# Turns a file into a C++ source that defines `extern const unsigned char NAME[]` and `extern const unsigned long NAMESize`.
file(READ ${INPUT} hex HEX)
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${hex}")
string(LENGTH "${hex}" digits)
math(EXPR size "${digits} / 2")
file(WRITE ${OUTPUT}
  "namespace withy {\nextern const unsigned char ${NAME}[];\nextern const unsigned long ${NAME}Size;\n"
  "const unsigned char ${NAME}[] = {${bytes}0};\nconst unsigned long ${NAME}Size = ${size};\n}\n")
