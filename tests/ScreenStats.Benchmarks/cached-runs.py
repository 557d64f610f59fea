#!/usr/bin/env python3
"""Time, memory and bytes of runs without a cache, with an empty one, with a full one, and of a daily run with one new file, in one go.

Usage: cached-runs.py RUNNER SCREENING.csv CONFIRMATORY.csv [FILES [ROWS_A_FILE [COMMAND]]]
RUNNER is the executable screenstats; the exports are those of `screenstats synthesize`. Their first rows become FILES files (26) of
ROWS_A_FILE rows (120,000), and COMMAND (evaluate; inspect hardly does more than read) runs on them in a temporary folder, which is removed at the end.
"""
import itertools, os, resource, subprocess, sys, tempfile, time

runner, screening, confirmatory = (os.path.abspath(path) for path in sys.argv[1:4])
files = int(sys.argv[4]) if len(sys.argv) > 4 else 26
rows = int(sys.argv[5]) if len(sys.argv) > 5 else 120_000
command = sys.argv[6] if len(sys.argv) > 6 else "evaluate"
program_file = os.path.join(os.path.dirname(screening), "program.json")


def run(what, *options):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.monotonic()
    process = subprocess.Popen([runner, command, "program", *(["--out", "report"] if command == "evaluate" else ["--json"]), *options], stdout=open("output", "wb"), stderr=subprocess.PIPE, text=True)
    said = process.stderr.read()
    os.waitid(os.P_PID, process.pid, os.WEXITED | os.WNOWAIT)
    try:
        read = next(int(line.split()[1]) for line in open(f"/proc/{process.pid}/io") if line.startswith("rchar"))
    except OSError:
        read = 0
    process.wait()
    wall = time.monotonic() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    note = next((line for line in said.split("\n") if "cache" in line), "")
    digest = subprocess.run("find report output -type f 2>/dev/null | sort | xargs sha256sum | sha256sum", shell=True, capture_output=True, text=True).stdout[:12]
    print(f"{what:34} cpu {cpu:6.2f} s  wall {wall:6.2f} s  read {read / 1e6:8.1f} MB  output {digest}  {note}", flush=True)


with tempfile.TemporaryDirectory() as folder:
    os.chdir(folder)
    os.mkdir("program")
    with open(screening, "rb") as source:
        heading = source.readline()
        for number in range(files):
            with open("new.csv" if number == files - 1 else f"program/screening-{number + 1:03}.csv", "wb") as part:
                part.write(heading)
                part.writelines(itertools.islice(source, rows))
    for path, name in ((confirmatory, "confirmatory.csv"), (program_file, "program.json")):
        with open(path, "rb") as source, open(f"program/{name}", "wb") as copy:
            copy.write(source.read())
    run("warm up")
    run("without the last file")
    run("the same, cache empty", "--cache", "kept")
    run("the same, all known", "--cache", "kept")
    os.rename("new.csv", f"program/screening-{files:03}.csv")
    run("with the last file, no cache")
    run("daily: the last file is new", "--cache", "kept")
    run("the same, all known", "--cache", "kept")
    size = sum(os.path.getsize(os.path.join("kept", name)) for name in os.listdir("kept"))
    exports = sum(os.path.getsize(os.path.join("program", name)) for name in os.listdir("program"))
    print(f"cache {size / 1e6:.1f} MB of exports of {exports / 1e6:.1f} MB")
