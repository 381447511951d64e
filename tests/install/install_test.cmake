# Installs to an empty folder, moves that folder, and builds and runs a user of the package there.
# Wants BUILD (build folder), SOURCE (the tree), WORK (a folder of its own), COMPILER, GENERATOR.

function(run)
    execute_process(COMMAND ${ARGN} RESULT_VARIABLE status OUTPUT_VARIABLE output
        ERROR_VARIABLE output)
    if(NOT status EQUAL 0)
        list(JOIN ARGN " " line)
        message(FATAL_ERROR "${line}\nended with ${status}:\n${output}")
    endif()
    set(output "${output}" PARENT_SCOPE)
endfunction()

file(REMOVE_RECURSE ${WORK})
run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/first)
file(RENAME ${WORK}/first ${WORK}/prefix)

# Nothing installed may lead back to the tree or the build folder.
file(GLOB_RECURSE package_files ${WORK}/prefix/*.cmake)
if(NOT package_files)
    message(FATAL_ERROR "no CMake package was installed")
endif()
foreach(file IN LISTS package_files)
    file(READ ${file} text)
    foreach(folder IN ITEMS ${SOURCE} ${BUILD})
        string(FIND "${text}" "${folder}" at)
        if(NOT at EQUAL -1)
            message(FATAL_ERROR "${file} names ${folder}")
        endif()
    endforeach()
endforeach()

run(${CMAKE_COMMAND} -S ${CMAKE_CURRENT_LIST_DIR}/user -B ${WORK}/user -G ${GENERATOR}
    -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_PREFIX_PATH=${WORK}/prefix)
run(${CMAKE_COMMAND} --build ${WORK}/user)
set(example ${WORK}/prefix/share/doc/loopwright/examples/ice-resurfacer/ice-resurfacer.xml)
run(${WORK}/user/user ${example})
if(NOT output MATCHES "^1 loop, [1-9][0-9]* verdicts, %PDF-")
    message(FATAL_ERROR "the user of the package printed: ${output}")
endif()

run(${WORK}/prefix/bin/loopwright --version)
run(${WORK}/prefix/bin/loopwright check ${example})
