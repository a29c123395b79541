# Step of .ci/full: the documentation site, from the comments of the assemblies just built and the pages of docs.

# Every warning is an error. What the pages need to be shown, typeset formulas and search included, is in the site.
build_site() {
    dotnet tool restore
    rm -rf .artifacts/site
    write_reports .artifacts/site/reports
    dotnet docfx docs/site/docfx.json --warningsAsErrors
    dotnet run .ci/check-links.cs .artifacts/site/html
}

# write_reports FOLDER: an example of each kind of report, by the tool just built, for the site alone.
write_reports() {
    mkdir -p "$1"
    local tool=(dotnet run -c Release --no-build --project src/ScNet.Cli -- report) core=docs/examples/core-requirement.toml
    "${tool[@]}" docs/examples/core-gears.toml --requirement "$core" --load-current 0.005 --frequency 5e6 --output "$1/converter.html"
    "${tool[@]}" docs/examples/half.toml --family "ladder 4" --family "dickson 4" --input-voltage 3.6 --rating 1.2 --load-current 0.005 --output "$1/comparison.html"
    "${tool[@]}" --requirement "$core" --output "$1/design.html"
}
