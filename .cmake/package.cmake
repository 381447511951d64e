# The .deb: one package with program, library and headers. The library is static, so nothing that is
# installed elsewhere depends on a version of it, and who only runs the program carries 10 MB more.
# What the library's user needs to build is suggested, what the program needs to run is worked out.
set(package_folder ${PROJECT_BINARY_DIR}/package)
file(MAKE_DIRECTORY ${package_folder})
execute_process(COMMAND ${loopwright_gzip} -9nc ${CMAKE_CURRENT_LIST_DIR}/changelog
    OUTPUT_FILE ${package_folder}/changelog.gz COMMAND_ERROR_IS_FATAL ANY)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/changelog)
install(FILES ${package_folder}/changelog.gz ${CMAKE_CURRENT_LIST_DIR}/copyright
    DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT debian EXCLUDE_FROM_ALL)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME loopwright)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_PACKAGE_DIRECTORY ${package_folder})
set(CPACK_COMPONENTS_ALL Unspecified debian)  # without `licence`: Debian has its text already
set(CPACK_COMPONENTS_GROUPING ALL_COMPONENTS_IN_ONE)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ
    GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_MAINTAINER "Loopwright project <loopwright@project.invalid>")
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION "Loopwright reads an XML description of a closed-loop hydrostatic drive, proves
or refutes what such a loop needs (charge supply, make-up, relief, filtration,
housing drains) with a path to follow on the drawing, computes the steady state
at each duty point, and draws the annotated schematic.
.
The library behind the program is part of the package, with its headers and a
CMake package file.")
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS fonts-osifont)
string(JOIN ", " CPACK_DEBIAN_PACKAGE_SUGGESTS bash-completion cmake pkg-config libboost-graph-dev
    libcairo2-dev libfmt-dev libpango1.0-dev libpugixml-dev nlohmann-json3-dev)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
include(CPack)
