"""Notebooks of docs/examples: made ready to run, cleaned after a run, and compared.

notebook.py prepare NOTEBOOK COPY VERSION    a copy without outputs that refers to the packages of that version
notebook.py clean EXECUTED NOTEBOOK COPY     what was executed, with the versions of the notebook and without what differs from run to run
notebook.py compare NOTEBOOK OTHER           fails and shows the first differences
"""
import difflib
import json
import re
import sys

REFERENCE = re.compile(r'(#r "nuget: *ScNet[\w.]*, *)([^"]+)"')


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


def write(path, notebook):
    with open(path, "w", encoding="utf-8", newline="\n") as file:
        json.dump(notebook, file, indent=1, ensure_ascii=False)
        file.write("\n")


def text(part):
    return "".join(part) if isinstance(part, list) else part


def lines(part):
    return part.splitlines(keepends=True)


def prepare(notebook, version):
    references = 0
    for cell in notebook["cells"]:
        if cell["cell_type"] == "code":
            changed, count = REFERENCE.subn(rf'\g<1>{version}"', text(cell["source"]))
            references += count
            cell.update(source=lines(changed), outputs=[], execution_count=None)
    if references == 0:
        raise SystemExit("The notebook refers to no package of ScNet.")
    return notebook


def cleaned(output):
    """An output without what differs from run to run; None where nothing is left."""
    data = output.get("data", {})
    shown = text(data.get("text/html", data.get("text/plain", "")))
    # the kernel's own script, its report of packages, and where it found the script of a package
    if "<script" in shown or "Installed Packages" in shown or shown.startswith("Loading extension script"):
        return None
    if data:
        output = {
            "data": {kind: lines(text(value).replace("\r\n", "\n")) for kind, value in sorted(data.items())},
            "metadata": {},
            "output_type": "display_data",
        }
    elif output.get("output_type") == "stream":
        output["text"] = lines(text(output["text"]).replace("\r\n", "\n"))
    return output


def joined(outputs):
    """Pieces of one stream as one: how it is cut is chance."""
    result = []
    for output in outputs:
        if result and output["output_type"] == "stream" and result[-1].get("name") == output["name"]:
            result[-1]["text"] = lines(text(result[-1]["text"]) + text(output["text"]))
        else:
            result.append(output)
    return result


def clean(executed, notebook):
    if len(executed["cells"]) != len(notebook["cells"]):
        raise SystemExit("The two notebooks have not the same cells.")
    number = 0
    for ran, cell in zip(executed["cells"], notebook["cells"]):
        if cell["cell_type"] != "code":
            continue
        number += 1
        for output in ran["outputs"]:
            if output["output_type"] == "error" or output.get("name") == "stderr":
                raise SystemExit(f"Cell {number} failed: {json.dumps(output, indent=1, ensure_ascii=False)}")
        cell["outputs"] = joined([o for o in map(cleaned, ran["outputs"]) if o])
        cell["execution_count"] = number
        cell["metadata"] = {}
    return notebook


def compare(one, other):
    left, right = (json.dumps(n, indent=1, ensure_ascii=False, sort_keys=True).splitlines() for n in (one, other))
    differences = list(difflib.unified_diff(left, right, "committed", "today", lineterm="", n=2))
    if differences:
        print("\n".join(line[:300] for line in differences[:60]))
        raise SystemExit("The committed outputs are not those of today: run .ci/update-notebooks and read what changed.")


command, arguments = sys.argv[1], sys.argv[2:]
if command == "prepare":
    write(arguments[1], prepare(read(arguments[0]), arguments[2]))
elif command == "clean":
    write(arguments[2], clean(read(arguments[0]), read(arguments[1])))
elif command == "compare":
    compare(read(arguments[0]), read(arguments[1]))
else:
    raise SystemExit(__doc__)
