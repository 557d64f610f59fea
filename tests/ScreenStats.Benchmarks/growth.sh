#!/usr/bin/env bash
# The whole main job on 10,000 to 100,000,000 rows beside the bytes alone, their split, and a general engine's SQL for the counts and links, in one run.
# The job runs as a plain build on .NET and as the native program that ships, whose making needs clang or gcc. 100,000,000 rows need 20 GB of disk and a quarter of an hour. Writes results/growth.csv and its two pictures, which README.md shows.
# Usage: tests/ScreenStats.Benchmarks/growth.sh [from-power] [to-power] [rounds]
set -euo pipefail
cd "$(dirname "$0")/../.."
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
dotnet publish -c Release --nologo -v quiet -o "$folder/runner" src/ScreenStats.Cli
here=$(dotnet --info | awk '$1 == "RID:" {print $2; exit}')
dotnet publish -c Release --nologo -v quiet -p:ShipAs=native -p:ShipFor="$here" -o "$folder/native" src/ScreenStats.Cli
dotnet build -c Release --nologo -v quiet -p:Warehouse=true tests/ScreenStats.Benchmarks
tests/ScreenStats.Benchmarks/bin/Release/net10.0/ScreenStats.Benchmarks growth "$folder/runner/ScreenStats.Cli" "$folder/native/ScreenStats.Cli" "$folder" tests/ScreenStats.Benchmarks/results "${1:-4}" "${2:-8}" "${3:-3}"
