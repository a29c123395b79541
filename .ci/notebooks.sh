# Step of .ci/full: the notebooks of docs/examples, run by a real kernel against the packages just built, and the script beside them.

check_notebooks() {
    local notebook name
    find_jupyter
    prepare_notebooks
    for notebook in docs/examples/*.ipynb; do
        name=$(basename "$notebook")
        run_notebook "$name"
        python3 .ci/notebook.py compare "$notebook" "$notebooks/$name"
        echo "$name: as committed"
    done
}

# What runs notebooks; where the machine lacks it and lets us, it is installed.
find_jupyter() {
    local python
    # that of the system, which its packages are for
    python=$(sed -n '1s/^#! *//p' "$(command -v jupyter-nbconvert || echo /dev/null)")
    if [ -z "$python" ] || ! $python -c 'import ipykernel, jupyter_client' 2>/dev/null; then
        if [ "$(id -u)" -ne 0 ] || ! command -v apt-get >/dev/null; then
            echo 'The notebooks need Debian'"'"'s jupyter-nbconvert, python3-jupyter-client and python3-ipykernel.'
            return 1
        fi
        apt-get update -q
        DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends jupyter-nbconvert python3-jupyter-client python3-ipykernel
    fi
    dotnet tool restore
}

# A folder that has the examples, the packed packages as a source, and the kernel.
prepare_notebooks() {
    notebooks=$temporary/notebooks
    cp -r docs/examples "$notebooks"
    cp -r .config "$notebooks"
    sed "s|value=\".packages\"|value=\"$PWD/.packages\"|" nuget.config >"$notebooks/nuget.config"
    mkdir -p "$notebooks/.jupyter/kernels/dotnet-csharp"
    cat >"$notebooks/.jupyter/kernels/dotnet-csharp/kernel.json" <<'KERNEL'
{
  "argv": ["dotnet", "tool", "run", "dotnet-interactive", "--", "jupyter", "--default-kernel", "csharp", "{connection_file}"],
  "display_name": ".NET (C#)",
  "language": "C#"
}
KERNEL
}

# run_notebook NAME: executes it, any error in a cell being an error here, and leaves it clean in the folder.
run_notebook() {
    python3 .ci/notebook.py prepare "docs/examples/$1" "$notebooks/ready-$1" "$packed_version"
    (
        cd "$notebooks"
        JUPYTER_PATH=$notebooks/.jupyter jupyter-nbconvert --to notebook --execute --ExecutePreprocessor.timeout=300 \
            --output "executed-$1" "ready-$1"
    )
    python3 .ci/notebook.py clean "$notebooks/executed-$1" "docs/examples/$1" "$notebooks/$1"
}

# The scripts of one file, by a reference to the project and by one to the package.
check_script() {
    local script package
    mkdir "$temporary/script"
    sed "s|value=\".packages\"|value=\"$PWD/.packages\"|" nuget.config >"$temporary/script/nuget.config"
    cp docs/examples/*.toml "$temporary/script"
    for script in docs/examples/*.cs; do
        dotnet run -c Release "$script" | tee "$temporary/script.txt"
        diff "${script%.cs}.txt" "$temporary/script.txt"
        package=$(sed -n 's|^#:project .*/\(.*\)\.csproj$|\1|p' "$script")
        sed "s|^#:project .*|#:package $package@$packed_version|" "$script" >"$temporary/script/script.cs"
        (cd "$temporary/script" && dotnet run -c Release script.cs) | diff "${script%.cs}.txt" -
        echo "$(basename "$script"): by the package too."
    done
}
