#!/usr/bin/env bash
# How long a Chromium takes until a page is loaded and its script has run: the page against an empty one, in turn, medians of five.
# usage: open-page.sh report/report.html
set -euo pipefail
page=$(realpath "$1")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
printf '<!DOCTYPE html><title>empty</title>' > "$work/empty.html"

opened() { # opened PAGE : milliseconds of a whole Chromium that prints the page after its load event
    local from to
    from=$(date +%s%N)
    chromium --headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking --disable-component-update --disable-sync \
        --user-data-dir="$work/profile" --dump-dom "file://$1" > "$work/dom.html" 2> /dev/null
    to=$(date +%s%N)
    printf '%d\n' $(((to - from) / 1000000))
}

for round in 1 2 3 4 5; do
    opened "$work/empty.html" >> "$work/empty"
    opened "$page" >> "$work/page"
    grep -q '</html>' "$work/dom.html" || { printf 'round %d: the page was not printed\n' "$round" >&2; exit 1; }
done
empty=$(sort -n "$work/empty" | sed -n 3p) whole=$(sort -n "$work/page" | sed -n 3p)
printf '%s: %s bytes; Chromium with it %d ms, with an empty page %d ms, so %d ms to open it\n' "$1" "$(stat -c %s "$page")" "$whole" "$empty" $((whole - empty))
