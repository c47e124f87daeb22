# Outside libraries, in one interface target. The names come from pkg-config, so that one description serves a shared and
# a static link: the program is linked with -static and then takes the archives.
find_package(PkgConfig REQUIRED)
find_package(Protobuf 3.21 REQUIRED)
set(WITHY_PKG_MODULES protobuf absl_status absl_statusor absl_strings absl_str_format absl_flat_hash_map absl_span lua5.4-c++
    libsodium libutf8proc)
pkg_check_modules(WITHY_PKG REQUIRED ${WITHY_PKG_MODULES})

add_library(withy_deps INTERFACE)
target_include_directories(withy_deps SYSTEM INTERFACE ${WITHY_PKG_INCLUDE_DIRS})
target_link_libraries(withy_deps INTERFACE ${WITHY_PKG_LIBRARIES})
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
