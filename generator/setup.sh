#!/bin/sh
# In: any machine, and the word `publish` or `test`. Out: system packages, .venv/ and (for `test`) tests/node_modules/,
# all that generator/publish.sh and tests/run.sh need. What is there already is left alone, so a second run is quick and
# needs no network. Usage: sh generator/setup.sh publish|test
#
# PYTHON=/path/to/python3.12 chooses another Python than the first suitable one; pip's own settings and environment
# variables (PIP_INDEX_URL, PIP_CERT ...) are respected, and so are npm's.
#
# The versions installed are those of .ci/constraints.txt. After a change of the dependencies in pyproject.toml, make it anew:
#   uv pip compile pyproject.toml --all-extras --python-version 3.11 --no-header --no-annotate -q -o .ci/constraints.txt
# and the test tools of tests/package.json: (cd tests && npm install --package-lock-only). Neither file may hold an address.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd -P)
cd -- "$root"
purpose=${1:-}
venv_python=.venv/bin/python
oldest=3.11

say() { printf '%s\n' "$*"; }
stop() {
    printf 'set-up: %s\n' "$*" >&2
    exit 1
}
have() { command -v "$1" >/dev/null 2>&1; }

recent() { "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' >/dev/null 2>&1; }

# The first Python that is recent enough; nothing where there is none.
find_python() {
    for candidate in ${PYTHON:+"$PYTHON"} python3 python3.14 python3.13 python3.12 python3.11; do
        if have "$candidate" && recent "$candidate"; then
            say "$candidate"
            return
        fi
    done
}

# What is missing is collected twice: as Debian packages, and in words for every other system.
packages=''
words=''
need() {
    words="$words
  - $1"
    shift
    packages="$packages $*"
}

need_command() { # COMMAND WORDS PACKAGE...
    have "$1" || {
        shift
        need "$@"
    }
}

look_for_python() {
    if [ -n "${PYTHON:-}" ] && ! recent "$PYTHON"; then
        stop "PYTHON is set to $PYTHON, which is not a Python of version $oldest or newer."
    fi
    python=$(find_python)
    if [ -n "$python" ]; then
        "$python" -c 'import venv, ensurepip' 2>/dev/null ||
            need "Python's venv and ensurepip modules, for $python" "$(basename -- "$python" | sed 's/^python$/python3/')-venv"
    elif have python3; then
        stop "Python $oldest or newer is needed, and $(python3 --version 2>&1) is what python3 is here." \
            "Install a newer one beside it and run this again with PYTHON=/path/to/it in front."
    else
        need "Python $oldest or newer, with its venv module" python3 python3-venv
    fi
}

# Whether every library loads, each given as its file on Linux and its plain name elsewhere: a trial is the surest question.
loads() { # FILE=NAME...
    "${python:-false}" - "$@" 2>/dev/null <<'PYTHON'
import ctypes, ctypes.util, sys

for library in sys.argv[1:]:
    file, _, name = library.partition("=")
    try:
        ctypes.CDLL(file)
    except OSError:
        ctypes.CDLL(ctypes.util.find_library(name) or file)
PYTHON
}

sets_pdfs() {
    loads libgobject-2.0.so.0=gobject-2.0 libpango-1.0.so.0=pango-1.0 libpangoft2-1.0.so.0=pangoft2-1.0 \
        libharfbuzz.so.0=harfbuzz libharfbuzz-subset.so.0=harfbuzz-subset libfontconfig.so.1=fontconfig
}

drives_browsers() { [ "$(uname)" != Linux ] || loads libatomic.so.1=atomic; }

has_browser() { have chromium || have chromium-browser || have google-chrome; }

browser_package() { # Debian says chromium; on Ubuntu that name does not exist and chromium-browser brings the browser.
    if have apt-cache && ! apt-cache show chromium >/dev/null 2>&1 && apt-cache show chromium-browser >/dev/null 2>&1; then
        say chromium-browser
    else
        say chromium
    fi
}

look_for_system_packages() {
    packages=''
    words=''
    look_for_python
    sets_pdfs || need 'Pango with pangoft2, and HarfBuzz with its subset library (they set the PDFs)' \
        libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0 fonts-dejavu-core
    [ "$purpose" = test ] || return 0
    has_browser || need 'Chromium (the pages are tested in a real browser)' "$(browser_package)"
    drives_browsers || need 'the GCC atomic library (the Node.js inside Playwright loads it)' libatomic1
    need_command pdffonts 'Poppler tools: pdffonts, pdfinfo, pdftotext' poppler-utils
    need_command qpdf 'qpdf' qpdf
    need_command node 'Node.js 18 or newer' nodejs
    need_command npm 'npm' npm ca-certificates
    need_command java 'a Java runtime of version 17 or newer (the HTML checker runs on it)' default-jre-headless
    need_command git 'git' git
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif have sudo; then
        sudo "$@"
    else
        stop "these packages are missing, and neither root nor sudo is here to install them." \
            "Ask for: apt-get install$packages"
    fi
}

apt_get() {
    # What goes wrong is on standard error; the thousands of lines about what goes right are not shown.
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq -y -o DPkg::Lock::Timeout=300 -o Dpkg::Use-Pty=0 "$@" </dev/null >/dev/null
}

install_system_packages() {
    look_for_system_packages
    [ -n "$packages" ] || return 0
    have apt-get || stop "this system needs the following, which it does not have:$words
Install them with the system's own package manager, then run this again."
    # A foreign package source that fails to refresh need not matter: what counts is whether the packages install.
    say 'System packages are missing; getting them takes up to a few minutes.'
    apt_get update || say 'The package lists could not all be refreshed; going on with those at hand.'
    # A machine without any lists only now knows which of the browser's names it has.
    look_for_system_packages
    say "Installing system packages:$packages"
    # shellcheck disable=SC2086 # the names are words to be split
    apt_get install --no-install-recommends $packages || stop "the system packages could not be installed:$packages"
    look_for_system_packages
    [ -z "$packages" ] || stop "this is still missing after its packages were installed:$words"
}

# What an installed environment was made from: where it stands (its scripts hold that path), and the two files that say what is in it.
fingerprint() { # FILE...
    printf '%s ' "$root" $(cat "$@" | cksum)
}

is_made() { # STAMP FINGERPRINT
    [ -f "$1" ] && [ "$(cat "$1")" = "$2" ]
}

venv_is_sound() {
    [ -x "$venv_python" ] && recent "$venv_python" && grep -qsF "$root/.venv/bin/python" .venv/bin/pip
}

install_python_packages() {
    wanted=$(fingerprint pyproject.toml .ci/constraints.txt)
    # An environment for the tests holds all that publishing needs.
    if venv_is_sound && { is_made .venv/made-for-test "$wanted" || is_made ".venv/made-for-$purpose" "$wanted"; }; then
        return 0
    fi
    case $purpose in
    test) project='.[test]' ;;
    *) project='.' ;;
    esac
    venv_is_sound || {
        say 'Making .venv'
        "$python" -m venv --clear .venv || stop 'the virtual environment .venv could not be made.'
    }
    rm -f .venv/made-for-publish .venv/made-for-test
    say 'Installing Python packages into .venv (a minute or so the first time)'
    .venv/bin/pip install -q --disable-pip-version-check -c .ci/constraints.txt -e "$project" ||
        stop 'the Python packages could not be installed; see the message of pip above.'
    say "$wanted" >".venv/made-for-$purpose"
}

install_page_checkers() {
    wanted=$(fingerprint tests/package-lock.json)
    is_made tests/node_modules/.made-for "$wanted" && return 0
    say 'Installing the page checkers into tests/node_modules'
    # No package's own install script: the HTML checker's would fetch a Java of its own from a place that is no registry.
    (cd tests && npm ci --ignore-scripts --no-audit --no-fund --loglevel=error) ||
        stop 'the page checkers could not be installed; see the message of npm above.'
    say "$wanted" >tests/node_modules/.made-for
}

case $purpose in
publish | test) ;;
*) stop 'say what for: sh generator/setup.sh publish, or sh generator/setup.sh test' ;;
esac
install_system_packages
install_python_packages
[ "$purpose" = publish ] || install_page_checkers
