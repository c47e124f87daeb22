# Outside libraries, in one interface target. The names come from pkg-config, so that one description serves a shared link
# and one from archives: a target with WITHY_FROM_ARCHIVES takes those.
find_package(PkgConfig REQUIRED)
find_package(Protobuf 3.21 REQUIRED)
set(WITHY_PKG_MODULES protobuf absl_status absl_statusor absl_strings absl_str_format absl_flat_hash_map absl_span lua5.4-c++
    libsodium libutf8proc)
pkg_check_modules(WITHY_PKG REQUIRED ${WITHY_PKG_MODULES})

# What has an archive of its own; not what belongs to the C library, which stays shared. They need each other in any order.
set(WITHY_ARCHIVES "")
foreach(name IN LISTS WITHY_PKG_STATIC_LIBRARIES)
  find_library(WITHY_ARCHIVE_${name} NAMES lib${name}.a HINTS ${WITHY_PKG_STATIC_LIBRARY_DIRS})
  mark_as_advanced(WITHY_ARCHIVE_${name})
  if(WITHY_ARCHIVE_${name} AND NOT name MATCHES "^(m|dl|rt|pthread|atomic)$")
    list(APPEND WITHY_ARCHIVES ${WITHY_ARCHIVE_${name}})
  endif()
endforeach()
list(JOIN WITHY_ARCHIVES "," WITHY_ARCHIVES)

add_library(withy_deps INTERFACE)
target_include_directories(withy_deps SYSTEM INTERFACE ${WITHY_PKG_INCLUDE_DIRS})
set(from_archives "$<BOOL:$<TARGET_PROPERTY:WITHY_FROM_ARCHIVES>>")
target_link_libraries(withy_deps INTERFACE
  "$<BUILD_INTERFACE:$<IF:${from_archives},$<LINK_GROUP:RESCAN,${WITHY_ARCHIVES}>,${WITHY_PKG_LIBRARIES}>>"
  "$<INSTALL_INTERFACE:${WITHY_PKG_LIBRARIES}>")
find_package(Threads REQUIRED)
target_link_libraries(withy_deps INTERFACE Threads::Threads)
set_target_properties(withy_deps PROPERTIES EXPORT_NAME deps)
install(TARGETS withy_deps EXPORT withyTargets)

# Eigen is headers only and stays inside the sources of numerics: who links withy needs none. Not vectorised: the same sums in
# the same order on any processor.
find_package(Eigen3 3.4 REQUIRED NO_MODULE)
add_library(withy_eigen INTERFACE)
target_link_libraries(withy_eigen INTERFACE Eigen3::Eigen)
target_compile_definitions(withy_eigen INTERFACE EIGEN_MPL2_ONLY EIGEN_DONT_VECTORIZE)

# NLopt has no archive in Debian. It stays inside one source of numerics.
pkg_check_modules(WITHY_NLOPT REQUIRED nlopt)
