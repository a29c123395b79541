# The steps of .ci/run, with which .ci/full begins.

# usual_steps TITLE COMMAND...: the command runs all tests of what is built.
usual_steps() {
    step "Contents of the repository" check_contents
    # looks at files alone, so it needs no build and runs beside it
    aside "Formatting" check_formatting
    step "Restore and build" build
    local built=$?
    join
    if [ "$built" -eq 0 ]; then
        aside "The README's first command" run_readme_design
        step "$@"
        join
    fi
    return "$built"
}
