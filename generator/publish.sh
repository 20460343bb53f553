#!/bin/sh
# In: content/. Out: site/, the published demo studio, after all the set-up this takes on a fresh machine.
# Usage: sh generator/publish.sh, from any folder
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd -P)
cd -- "$root"
sh generator/setup.sh publish
.venv/bin/sizewright publish .
printf '\nOpen the start page in a browser: %s\n' "$root/site/index.html"
