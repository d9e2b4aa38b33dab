#!/bin/sh
# Hold the program against the reckoning, over many random productions: compare.sh BODKIN [COUNT] [FIRSTSEED]
# The last line says how many seeds passed and failed; the exit status is 1 if one failed.
exec python3 -B "$(dirname "$0")/compare.py" "$@"
