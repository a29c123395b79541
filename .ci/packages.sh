# Steps of .ci/full: a release, made twice, and its packages used as somebody would who has nothing else.

# A version of its own for every run: the package cache never serves an older one for it.
base_version=$(sed -nE 's|^ *<Version>(.+)</Version>$|\1|p' .build/Common.props)
packed_version=$base_version-ci.$(date +%s).$$

user=$temporary/user

# Two clones in two folders give the same bytes; one of them is what everything after this uses.
make_releases() {
    local cache tool
    .ci/release "$packed_version" "$temporary/first"
    .ci/release "$packed_version" "$temporary/second"
    (cd "$temporary/first" && sha256sum --quiet --check SHA256SUMS)
    diff "$temporary/first/SHA256SUMS" "$temporary/second/SHA256SUMS"
    echo 'Both are equal to the byte.'
    cache=$(package_cache)
    tool=$(sed -nE '/"cyclonedx"/,/version/s/^ *"version": "(.*)",$/\1/p' .config/dotnet-tools.json)
    dotnet run .ci/check-release.cs "$temporary/first" "$packed_version" "$cache/cyclonedx/$tool/tools/net10.0/any/CycloneDX.Core.dll"
    cp "$temporary"/first/*.nupkg .packages
}

try_packages() {
    mkdir "$user"
    cp -r .ci/consumer/* "$user"
    sed "s|value=\".packages\"|value=\"$PWD/.packages\"|" nuget.config >"$user/nuget.config"
    try_package "$user/library"
    try_package "$user/derivations"
    try_package "$user/reporting"
    try_package "$user/search"
    try_package "$user/synthesis"
    try_unit_tests "$user/tests"
    try_tool "$user"
}

# Runs a program that refers to one package only.
try_package() {
    (cd "$1" && dotnet run -c Release -p:ScNetVersion="$packed_version")
}

try_unit_tests() {
    dotnet test "$1" -c Release -p:ScNetVersion="$packed_version" -p:TestSdkVersion="$(version_of Microsoft.NET.Test.Sdk)" \
        -p:XunitVersion="$(version_of xunit)" -p:XunitRunnerVersion="$(version_of xunit.runner.visualstudio)" | tee "$temporary/unit-tests.txt"
    grep -qE 'Passed! .*Passed: +2,' "$temporary/unit-tests.txt" || { echo 'Expected both tests to run.'; return 1; }
}

# The version of a package that the repository itself uses.
version_of() {
    sed -nE "s|^ *<PackageVersion Include=\"$1\" Version=\"(.+)\" />\$|\1|p" .build/Packages.props
}

try_tool() {
    local example version
    example=$(find docs/examples -name '*.toml' | sort | head -n 1)
    dotnet tool install ScNet.Cli --version "$packed_version" --tool-path "$1/tool" --configfile "$1/nuget.config"
    version=$("$1/tool/scnet" --version)
    echo "scnet --version: $version"
    case $version in
        *"$packed_version"*) ;;
        *)
            echo "Expected the version $packed_version."
            return 1
            ;;
    esac
    echo "scnet analyze $example"
    "$1/tool/scnet" analyze "$example"
    # what is compiled ahead of time needs no runtime
    if [ -n "$(own_platform)" ]; then
        echo "scnet without a runtime: $(DOTNET_ROOT=/nowhere PATH=/nowhere "$1/tool/scnet" family ladder 3 | wc -l) lines"
        [ "$(DOTNET_ROOT=/nowhere PATH=/nowhere "$1/tool/scnet" --version)" = "$version" ] || return 1
    fi
}

# The platform of this machine, where it is one of the supported ones and a program can be linked ahead of time on it.
own_platform() {
    if [ "$(uname -s)" = Linux ] && { command -v clang || command -v gcc; } >/dev/null; then
        case $(uname -m) in
            x86_64) echo linux-x64 ;;
            aarch64) echo linux-arm64 ;;
        esac
    fi
}

# A program with the libraries that have no native parts: trimmed and ahead of time where it can run, and for every platform.
publish_programs() {
    local own platform folder strange
    own=$(own_platform)
    if [ -n "$own" ]; then
        publish_program "$own" trimmed -p:PublishTrimmed=true -p:SelfContained=true -p:RootsLibraries=true -p:TrimmerSingleWarn=false
        publish_program "$own" ahead -p:PublishAot=true -p:RootsLibraries=true -p:TrimmerSingleWarn=false
        "$user/out/trimmed-$own/Consumer"
        "$user/out/ahead-$own/Consumer"
    fi
    # without the starter of the platform, which is no part of the libraries: there is nothing left but what runs everywhere
    for platform in linux-x64 linux-arm64 win-x64 win-arm64; do
        publish_program "$platform" plain -p:SelfContained=false -p:UseAppHost=false
        folder=$user/out/plain-$platform
        strange=$(find "$folder" -type f ! -name '*.dll' ! -name '*.json' ! -name 'Consumer.pdb')
        if [ -n "$strange" ]; then
            printf 'Expected no native parts for %s:\n%s\n' "$platform" "$strange"
            return 1
        fi
        (cd "$folder" && sha256sum -- *.dll | grep -v ' Consumer.dll$') >"$temporary/$platform.txt"
        diff "$temporary/linux-x64.txt" "$temporary/$platform.txt"
        echo "$platform: published, with the same libraries"
    done
}

# publish_program PLATFORM KIND OPTIONS...: without a warning.
publish_program() {
    dotnet publish "$user/published" -c Release -r "$1" -p:ScNetVersion="$packed_version" -p:ArtifactsPath="$user/built/$2-$1" \
        -o "$user/out/$2-$1" -v quiet "${@:3}"
}

package_cache() {
    local cache
    cache=$(dotnet nuget locals global-packages --list 2>/dev/null | sed -n 's/^global-packages: //p')
    echo "${cache%/}"
}

# Takes back what packing and installing left outside the temporary folder.
remove_packed() {
    local cache
    rm -f .packages/*."$packed_version".nupkg
    cache=$(package_cache)
    if [ -n "$cache" ]; then
        rm -rf "$cache"/scnet{,.derivations,.reporting,.search,.synthesis,.cli,.cli.*}"/$packed_version"
        rmdir "$cache"/scnet{,.derivations,.reporting,.search,.synthesis,.cli,.cli.*} 2>/dev/null
    fi
}
