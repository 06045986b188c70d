# Sets up .venv in the checkout; sourced by ./run and ./check, which set `root` first.
#
# A lock file (requirements/NAME.txt) says to the byte what is installed. When all of it is in place, a copy of the lock
# file is laid into .venv as the stamp: comparing the two is all that a later start costs. The stamp is taken away before
# anything is changed and laid again last, so a set-up that was stopped half-way is never taken for a whole one.
# The virtual environment is made from the interpreter's real path (python3.11, not python3), so when the system moves on
# to another Python the link in .venv breaks, which is seen too, and all is made anew.

venv=$root/.venv
python=$venv/bin/python
cannot=69 # "a support program or file does not exist" in sysexits.h; apart from Tapeline's own 1, 2 and 3

say() { printf 'tapeline: %s\n' "$*" >&2; }

is_set_up() { # NAME
    [ -x "$python" ] && cmp -s "$root/requirements/$1.txt" "$venv/set-up-$1.txt"
}

set_up() { # NAME
    mkdir -p "$root/.tapeline"
    # A subshell, so that its lock ends with it. What can fail in it says so itself: before `||`, `set -e` does nothing.
    (
        one_at_a_time
        is_set_up "$1" || build "$1"
    ) || exit $?
}

one_at_a_time() {
    lock=$root/.tapeline/set-up.lock
    if command -v flock >/dev/null; then
        exec 9>"$lock"
        flock -n 9 && return
        say "another set-up is under way in this folder; waiting for it"
        flock 9
    else
        until mkdir "$lock.d" 2>/dev/null; do
            holder=$(cat "$lock.d/pid" 2>/dev/null || :)
            if [ -n "$holder" ] && ! kill -0 "$holder" 2>/dev/null; then
                rm -rf "$lock.d" # its process is gone
            else
                sleep 1
            fi
        done
        echo $$ >"$lock.d/pid"
        trap 'rm -rf "$lock.d"' EXIT
        trap 'exit 130' HUP INT TERM
    fi
}

build() { # NAME
    uv_works=no
    if uv --version >/dev/null 2>&1; then uv_works=yes; fi

    if [ -e "$venv/unfinished" ] || ! usable "$python"; then
        rm -rf "$venv"
    elif [ $uv_works = no ] && ! "$python" -m pip --version >/dev/null 2>&1; then
        rm -rf "$venv" # made by uv, which is not here any more
    fi

    if [ ! -d "$venv" ]; then
        find_interpreter
        [ $uv_works = yes ] || need_venv
    fi
    say "setting up $venv (once; some 100 MB are fetched, which takes a minute or so)"
    if [ ! -d "$venv" ]; then
        mkdir -p "$venv"
        : >"$venv/unfinished"
        if [ $uv_works = yes ]; then
            uv venv --quiet --allow-existing --python "$interpreter" "$venv" || failed "no virtual environment was made"
        else
            "$interpreter" -m venv "$venv" || failed "no virtual environment was made"
        fi
    fi
    : >"$venv/unfinished"
    rm -f "$venv/set-up-$1.txt"

    # The lock names no index: packages come from wherever this machine is told to take them.
    if [ $uv_works = yes ]; then
        uv pip install --quiet --python "$python" --require-hashes --only-binary :all: \
            -r "$root/requirements/$1.txt" || failed "the packages were not installed"
    else
        PIP_USER=0 PIP_REQUIRE_VIRTUALENV=0 PYTHONPATH='' "$python" -m pip --disable-pip-version-check install --quiet \
            --no-input --require-hashes --only-binary :all: \
            -r "$root/requirements/$1.txt" || failed "the packages were not installed"
    fi
    install_tapeline || failed "tapeline itself was not installed"

    # What ./check needs holds all that ./run needs, in the same releases.
    [ "$1" = run ] || stamp run
    stamp "$1"
    rm -f "$venv/unfinished"
}

stamp() { # NAME
    cp "$root/requirements/$1.txt" "$venv/set-up-$1.new" && mv "$venv/set-up-$1.new" "$venv/set-up-$1.txt" ||
        failed "its stamp could not be written"
}

install_tapeline() {
    # The sources are found through a path relative to site-packages, and the command finds its interpreter beside it:
    # the checkout can be moved, and nothing has to be built.
    PYTHONPATH='' "$python" - "$root/src" <<'PYTHON' || return 1
import os, pathlib, sys, sysconfig
site = pathlib.Path(sysconfig.get_path("purelib"))
(site / "tapeline-checkout.pth").write_text(os.path.relpath(sys.argv[1], site) + "\n", encoding="utf-8")
PYTHON
    cat >"$venv/bin/tapeline" <<'SCRIPT' || return 1
#!/bin/sh
exec "$(dirname -- "$(readlink -f -- "$0")")/python" -m tapeline "$@"
SCRIPT
    chmod +x "$venv/bin/tapeline"
}

usable() { # PYTHON: it is there, it starts, and it is new enough
    command -v "$1" >/dev/null && "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null
}

find_interpreter() {
    for candidate in ${TAPELINE_PYTHON:+"$TAPELINE_PYTHON"} python3 python3.14 python3.13 python3.12 python3.11 python; do
        if usable "$candidate"; then
            interpreter=$("$candidate" -c 'import os, sys; print(os.path.realpath(sys._base_executable))')
            return
        fi
    done
    if command -v python3 >/dev/null; then
        say "Python 3.11 or newer is needed; python3 here is $(python3 -c 'import platform; print(platform.python_version())')"
        say "install a newer one, or name it: TAPELINE_PYTHON=/path/to/python3.11"
    else
        say "Python 3.11 or newer is needed, and no python3 was found"
        say "on Debian or Ubuntu: apt-get install python3 python3-venv"
    fi
    exit $cannot
}

need_venv() {
    "$interpreter" -c 'import ensurepip, venv' 2>/dev/null && return
    version=$("$interpreter" -c 'import sys; print("%d.%d" % sys.version_info[:2])')
    say "this Python has no venv; Debian keeps it in a package of its own, python$version-venv"
    need_package "python$version-venv"
    "$interpreter" -c 'import ensurepip, venv' 2>/dev/null && return
    say "$interpreter still has no venv; install it, or uv, and try again"
    exit $cannot
}

need_package() { # PACKAGE: installs it when that is allowed, otherwise names the command that would
    if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null; then
        say "install it and try again: sudo apt-get install $1"
        exit $cannot
    fi
    say "installing $1"
    export DEBIAN_FRONTEND=noninteractive
    apt-get install -y -q "$1" >&2 </dev/null || {
        # The lists of a fresh machine are empty or old.
        apt-get update -q >&2 </dev/null || :
        apt-get install -y -q "$1" >&2 </dev/null || failed "apt-get could not install $1"
    }
}

failed() {
    say "the set-up was not finished: $*"
    say "what is the matter stands above; the next start tries again from the beginning"
    exit $cannot
}
