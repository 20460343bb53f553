#!/bin/sh
# In: the project. Out: the verdict of every check, after all the set-up this takes on a fresh machine; not 0 if any fails.
# Usage: sh tests/run.sh [PYTEST OPTION ...], from any folder
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd -P)
cd -- "$root"
sh generator/setup.sh test

step() {
    printf '\n%s\n' "$*"
    "$@"
}

step .venv/bin/ruff check .
step .venv/bin/ruff format --check .
step .venv/bin/mypy
step .venv/bin/pytest -n 2 "$@"
