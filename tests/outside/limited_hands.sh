#!/bin/sh
# Hold the planner against an exact solver, over many small random networks: limited_hands.sh PSPLIB [COUNT] [FIRSTSEED] [--also PSPLIB]
# The last line says how many networks passed and failed; the exit status is 1 if one failed.
exec python3 -B "$(dirname "$0")/limited_hands.py" "$@"
