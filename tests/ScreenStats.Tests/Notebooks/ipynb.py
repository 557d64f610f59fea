#!/usr/bin/env python3
"""Makes notebooks/NAME.ipynb of notebooks/NAME.cs: its numbered comments become text, the code between them cells, and the cells are run.

From the top of the checkout, after: dotnet build src/ScreenStats.Cli
    python3 tests/ScreenStats.Tests/Notebooks/ipynb.py 02-what-a-positive-is-worth what-a-positive-is-worth.svg
needs Debian's jupyter-nbconvert and the tool Microsoft.dotnet-interactive (1.0.712001) as the kernel ".net-csharp".
NotebookTests hold that the cells are the program's; .ci/run holds that the stored output is what the program prints.
"""
import json, os, re, subprocess, sys

name, picture = sys.argv[1:3]
lines = open(f"notebooks/{name}.cs", encoding="utf-8").read().rstrip("\n").split("\n")
lines = [line for line in lines if not line.startswith("#")]
blocks, at = [["text", []]], 0
while at < len(lines) and not lines[at].strip(): at += 1
while at < len(lines) and lines[at].startswith("//"):  # the first comment: what it is about
    blocks[-1][1].append(lines[at]); at += 1
code = []
while at < len(lines):
    if re.match(r"// \d+\. ", lines[at]):
        blocks.append(["code", code]); code = []
        text = []
        while at < len(lines) and lines[at].startswith("//"):
            text.append(lines[at]); at += 1
        blocks.append(["text", text])
    else:
        code.append(lines[at]); at += 1
blocks.append(["code", code])

def prose(comment):
    return [re.sub(r"^// ?", "", line).strip() if not line.startswith("//    -") else "\n- " + line[6:].strip() for line in comment]

def cell(kind, source, **more):
    text = "\n".join(source).strip("\n")
    split = text.split("\n")
    return {"cell_type": kind, "id": f"cell-{len(cells)}", "metadata": {}, **more, "source": [line + "\n" for line in split[:-1]] + [split[-1]]}

cells = []
def code_cell(source): cells.append(cell("code", source, execution_count=None, outputs=[]))
def text_cell(source): cells.append(cell("markdown", source))

title = prose(blocks[0][1])
text_cell(["# " + name[3:].replace("-", " ").capitalize(), ""] + title + ["", f"The same as the program `{name}.cs`. Before it runs: `dotnet build src/ScreenStats.Cli` at the top of the checkout."])
code_cell([f'#r "../src/ScreenStats.Cli/bin/Debug/net10.0/{dll}.dll"' for dll in ["MathNet.Numerics", "ScreenStats.Statistics", "ScreenStats.Counting", "ScreenStats.Records", "ScreenStats.Evaluation", "ScreenStats.Reporting", "ScreenStats"]]
          + ["using System.IO;", 'if (!File.Exists("ScreenStats.sln")) Directory.SetCurrentDirectory("..");'])
for kind, source in blocks[1:]:
    if not "".join(source).strip(): continue
    if kind == "text":
        lines_of = prose(source)
        number, rest = re.match(r"(\d+\.) (.*)", lines_of[0]).groups()
        text_cell([f"**{number}** {rest}"] + lines_of[1:])
    else: code_cell(source)
code_cell([f'HTML(File.ReadAllText("artifacts/{picture}"))'])
book = {"cells": cells, "metadata": {"kernelspec": {"display_name": ".NET (C#)", "language": "C#", "name": ".net-csharp"}, "language_info": {"file_extension": ".cs", "mimetype": "text/x-csharp", "name": "C#", "pygments_lexer": "csharp"}}, "nbformat": 4, "nbformat_minor": 5}

work, done = f"notebooks/.{name}.ipynb", "notebooks/.done.ipynb"
with open(work, "w", encoding="utf-8") as file: json.dump(book, file)
try:
    subprocess.run(["jupyter", "nbconvert", "--to", "notebook", "--execute", "--ExecutePreprocessor.timeout=300", "--output", os.path.basename(done), work], check=True)
    with open(done, encoding="utf-8") as file: run = json.load(file)
finally:
    for file in (work, done):
        if os.path.exists(file): os.remove(file)

# Of the outputs only what a reader looks at: printed lines, and the picture. Others hold addresses of the machine.
for number, (mine, ran) in enumerate(zip(book["cells"], run["cells"])):
    if mine["cell_type"] != "code": continue
    mine["execution_count"] = 1 + sum(one["cell_type"] == "code" for one in book["cells"][:number])
    printed = "".join("".join(out["text"]) for out in ran["outputs"] if out["output_type"] == "stream" and out["name"] == "stdout")
    if printed: mine["outputs"].append({"name": "stdout", "output_type": "stream", "text": printed.splitlines(keepends=True)})
    for out in ran["outputs"]:
        html = "".join(out.get("data", {}).get("text/html", ""))
        if "<svg" in html: mine["outputs"].append({"data": {"image/svg+xml": html.splitlines(keepends=True)}, "metadata": {}, "output_type": "display_data"})
with open(f"notebooks/{name}.ipynb", "w", encoding="utf-8", newline="\n") as file:
    json.dump(book, file, ensure_ascii=False, indent=1, sort_keys=True)
    file.write("\n")
