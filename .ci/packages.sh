# Step of .ci/run: packs library and tool and uses both as somebody would who has only the packages.

# A version of its own for every run: the package cache never serves an older one for it.
base_version=$(sed -nE 's|^ *<Version>(.+)</Version>$|\1|p' .build/Common.props)
packed_version=$base_version-ci.$(date +%s).$$

try_packages() {
    local user=$temporary/user
    pack src/ScNet
    pack src/ScNet.Derivations
    pack src/ScNet.Reporting
    pack src/ScNet.Search
    pack src/ScNet.Synthesis
    pack_tool
    mkdir "$user"
    cp -r .ci/consumer/* "$user"
    sed "s|value=\".packages\"|value=\"$PWD/.packages\"|" nuget.config >"$user/nuget.config"
    try_package "$user/library"
    try_package "$user/derivations"
    try_package "$user/search"
    try_package "$user/synthesis"
    try_tool "$user"
}

pack() {
    # In a folder of its own, so that the next build does not find assemblies of another version.
    dotnet pack "$@" -c Release -warnaserror -p:Version="$packed_version" -p:ContinuousIntegrationBuild=true \
        -p:ArtifactsPath="$PWD/.artifacts/pack" -o .packages
}

# The tool as it is released for this platform, compiled ahead of time, where a linker is installed; else for any platform.
pack_tool() {
    native=
    if [ "$(uname -s)" = Linux ] && { command -v clang || command -v gcc; } >/dev/null; then
        case $(uname -m) in
            x86_64) native=linux-x64 ;;
            aarch64) native=linux-arm64 ;;
        esac
    fi
    if [ -n "$native" ]; then
        pack src/ScNet.Cli -p:PacksByPlatform=true
        pack src/ScNet.Cli -p:PacksByPlatform=true -r "$native"
    else
        pack src/ScNet.Cli
    fi
}

# Runs a program that refers to one package only.
try_package() {
    (cd "$1" && dotnet run -c Release -p:ScNetVersion="$packed_version")
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
    if [ -n "$native" ]; then
        echo "scnet without a runtime: $(DOTNET_ROOT=/nowhere PATH=/nowhere "$1/tool/scnet" family ladder 3 | wc -l) lines"
        [ "$(DOTNET_ROOT=/nowhere PATH=/nowhere "$1/tool/scnet" --version)" = "$version" ] || return 1
    fi
}

# Takes back what packing and installing left outside the temporary folder.
remove_packed() {
    local cache
    rm -rf .artifacts/pack .packages/*."$packed_version".nupkg .packages/*."$packed_version".snupkg
    cache=$(dotnet nuget locals global-packages --list 2>/dev/null | sed -n 's/^global-packages: //p')
    if [ -n "$cache" ]; then
        rm -rf "${cache%/}/"scnet{,.derivations,.reporting,.search,.cli}"/$packed_version"
        rmdir "${cache%/}/"scnet{,.derivations,.reporting,.search,.cli} 2>/dev/null
    fi
}
