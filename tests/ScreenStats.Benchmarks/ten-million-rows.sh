#!/usr/bin/env bash
# The main job on ten million rows against the two-thread split-and-count of the same bytes, measured in one run.
# Usage: tests/ScreenStats.Benchmarks/ten-million-rows.sh [rows] [rounds]
set -euo pipefail
cd "$(dirname "$0")/../.."
rows=${1:-10000000}
rounds=${2:-5}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
dotnet publish -c Release --nologo -v quiet -o "$folder/runner" src/ScreenStats.Cli
dotnet build -c Release --nologo -v quiet tests/ScreenStats.Benchmarks
"$folder/runner/ScreenStats.Cli" synthesize "$folder/program" --seed 1 --runs "$rows"
ls -l "$folder/program"
tests/ScreenStats.Benchmarks/bin/Release/net10.0/ScreenStats.Benchmarks ten-million-rows "$folder/runner/ScreenStats.Cli" "$folder/program" "$rounds"
