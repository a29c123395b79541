# Step of .ci/run: the documentation site, from the comments of the assemblies just built and the pages of docs.

# Every warning is an error. What the pages need to be shown, typeset formulas and search included, is in the site.
build_site() {
    dotnet tool restore
    rm -rf .artifacts/site
    dotnet docfx docs/site/docfx.json --warningsAsErrors
    dotnet run .ci/check-links.cs .artifacts/site/html
}
