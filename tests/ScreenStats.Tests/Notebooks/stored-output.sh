#!/bin/sh
# What the cells of a notebook printed, as stored in it: tests/ScreenStats.Tests/Notebooks/stored-output.sh notebooks/NAME.ipynb
# (the file is written with one line of text on each of its lines)
awk '/^ *"text": \[$/ { on = 1; next } on && /^ *\]/ { on = 0 } on' "$1" | sed -E 's/^ *"//; s/",?$//; s/\\n$//; s/\\"/"/g; s/\\\\/\\/g'
