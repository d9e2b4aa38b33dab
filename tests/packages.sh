# shellcheck shell=sh
# Installs what is missing, for tests/run and demo/run, which read this file with `.`.

# Prints those of the Debian packages named that are not installed, one a line.
missing_packages() {
    for package in "$@"; do
        state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>&1) && [ "$state" = installed ] || echo "$package"
    done
}

# Runs a command as root, by sudo where that is needed; fails where root cannot be had.
as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        return 1
    fi
}

# Tells that packages are to be installed by hand: those named, in Debian's names.
say_packages() {
    echo "These packages are needed (in Debian's names), please install them: $*" >&2
}

# Installs those of the packages named that are missing; where all are there nothing is asked of anyone. On a system
# without apt, or where nobody may install, it only says what is needed and fails.
install_missing() {
    if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
        say_packages "$@"
        return 1
    fi
    missing=$(missing_packages "$@")
    [ -n "$missing" ] || return 0
    # shellcheck disable=SC2086  # the names are many words
    set -- $missing
    echo "Installing: $*"
    if as_root apt-get -q update >/dev/null &&
        as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y -o DPkg::Lock::Timeout=300 \
            install --no-install-recommends "$@" >/dev/null; then
        return 0
    fi
    say_packages "$@"
    return 1
}
