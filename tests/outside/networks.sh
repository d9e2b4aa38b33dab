#!/bin/sh
# Hold the reckoning of networks against networkx: networks.sh PROGRAM [COUNT] [FIRSTSEED], or networks.sh --found, which only
# says by its exit status whether there is a Python with networkx. Debian's package is for /usr/bin/python3, which need not be
# the first one on the path.
# The last line says how many networks passed and failed; the exit status is 1 if one failed, 2 where there is no networkx.
for python in python3 /usr/bin/python3; do
    if "$python" -c 'import networkx' 2>/dev/null; then
        [ "$1" = --found ] && exit 0
        exec "$python" -B "$(dirname "$0")/networks.py" "$@"
    fi
done
[ "$1" = --found ] || echo "networkx is not here: python3-networkx" >&2
exit 2
