#!/bin/sh
# Checks that the house stands as it was designed: what may include what, where names and files go, how long they get.
#
#     sh tests/house.sh [ROOT [CHECK ...]]
#
# ROOT is the folder to look at (otherwise the one this script lies in), CHECK one or more of the names in `all_checks`
# (otherwise every one). All faults are told, one sentence each, before it ends with status 1. It needs a C compiler and
# Universal Ctags.
#
# shellcheck disable=SC2016  # what stands in single quotes is awk

set -u
export LC_ALL=C.UTF-8

all_checks="floors curses sqlite sql alone functions files names folders mirror asserts sleep"
floors="base trade plan store work sheet ui cmd"
top_level="CMakeLists.txt DEVELOPERS.md README.md demo include man schema src tests"

# Headers that have no source of their own name: types alone, or what several sources of a floor share.
shared_headers="plan/trial_parts.h sheet/bench_sheet.h sheet/rail_sheet.h store/inside.h store/records_bench.h ui/keys.h work/forecast_parts.h work/import_parts.h work/job.h work/progress.h work/record_inside.h"

longest_function=60
longest_source=500
longest_header=200

# The flags of CMakeLists.txt.
flags="-std=c17 -D_DEFAULT_SOURCE -D_XOPEN_SOURCE=700 -Wall -Wextra -Wshadow -Wconversion -Wstrict-prototypes
    -Wmissing-prototypes -Werror"

root=${1:-$(dirname "$0")/..}
[ $# -gt 0 ] && shift
root=$(cd "$root" && pwd) || exit 2
cd "$root" || exit 2
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
trap 'exit 2' HUP INT TERM

# The C files below the folders named, one a line.
c_files() {
    for folder in "$@"; do
        [ -d "$folder" ] && find "$folder" -type f \( -name '*.c' -o -name '*.h' \)
    done | sort
}

# Runs awk over files whose names come in one a line; with no file it does nothing.
awk_over() {
    tr '\n' '\0' | xargs -0 -r awk "$@"
}

# ---------------------------------------------------------------------------------------------------------- includes

check_floors() {
    c_files src include tests | awk_over -v floors="$floors" '
        BEGIN { count = split(floors, names, " "); for (i = 1; i <= count; i++) rank[names[i]] = i }
        FNR == 1 {
            path = FILENAME
            sub(/^include\/bodkin\//, "", path); sub(/^(src|tests)\//, "", path)
            own = path; sub(/\/.*/, "", own)
            ours = FILENAME !~ /^tests\//
            height = own in rank ? rank[own] : count
        }
        /^[ \t]*#[ \t]*include[ \t]*"/ && ours && !/"bodkin\/[a-z_]+\/[a-z0-9_]+\.h"/ {
            print FILENAME ":" FNR ": a header of ours is included as \"bodkin/FLOOR/NAME.h\""
        }
        /^[ \t]*#[ \t]*include[ \t]*["<]bodkin\// {
            from = $0; sub(/^[^"<]*["<]bodkin\//, "", from); sub(/\/.*/, "", from)
            if (!(from in rank))
                print FILENAME ":" FNR ": there is no floor " from
            else if (rank[from] > height)
                print FILENAME ":" FNR ": floor " own " may not include from floor " from ", which lies above it"
        }'
}

# Tells every include of a header that matches the pattern $2 outside the one file $1 that may.
only_in() {
    c_files src include tests | grep -vxF "$1" | awk_over -v home="$1" -v header="$2" -v what="$3" '
        /^[ \t]*#[ \t]*include[ \t]*["<]/ {
            name = $0; sub(/^[^"<]*["<]/, "", name); sub(/[">].*/, "", name)
            if (name !~ /^bodkin\// && name ~ header)
                print FILENAME ":" FNR ": only " home " may include " what ", not " FILENAME
        }'
}

check_curses() {
    only_in src/ui/term.c '(curses[a-z]*|(^|/)(panel|menu|form|term|etip|cursslk))[.]h$' curses
}

check_sqlite() {
    only_in src/store/db.c '(^|/)sqlite3[a-z]*[.]h$' sqlite3.h
}

check_sql() {
    c_files src include | awk_over '
        # Looks at one string literal, without its quotes.
        function literal(text) {
            sub(/^([ \t(]|\\n|\\t)+/, "", text)
            if (text ~ /^(SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|BEGIN|ATTACH|DETACH|COMMIT|ROLLBACK|SAVEPOINT|RELEASE|REPLACE|WITH|ALTER|DROP|VACUUM|ANALYZE|REINDEX|EXPLAIN)([ \t;]|\\n|\\t|$)/)
                print FILENAME ":" FNR ": SQL stands in schema/, not in C: \"" substr(text, 1, 40) "\""
        }
        FNR == 1 { in_comment = 0 }
        {
            rest = $0
            while (rest != "") {
                if (in_comment) {
                    if (!(at = index(rest, "*/")))
                        break
                    rest = substr(rest, at + 2)
                    in_comment = 0
                } else if (match(rest, /\/\/|\/\*|"|\047/)) {
                    found = substr(rest, RSTART, RLENGTH)
                    rest = substr(rest, RSTART + RLENGTH)
                    if (found == "//")
                        break
                    else if (found == "/*")
                        in_comment = 1
                    else if (found == "\"" && match(rest, /^([^"\\]|\\.)*"/)) {
                        literal(substr(rest, 1, RLENGTH - 1))
                        rest = substr(rest, RLENGTH + 1)
                    } else if (found != "\"" && match(rest, /^([^\047\\]|\\.)*\047/))
                        rest = substr(rest, RLENGTH + 1)
                } else
                    break
            }
        }'
}

# ------------------------------------------------------------------------------------------------------ compiling

# Every header, included twice and with nothing before it, compiles; the embedded statements are made first.
check_alone() {
    mkdir -p "$scratch/generated/bodkin/store"
    find schema -name '*.sql' 2>"$scratch/no-schema" | sort | tr '\n' '\0' |
        xargs -0 awk -v header="$scratch/generated/bodkin/store/statements.h" \
            -v source="$scratch/statements.c" -f schema/embed.awk ||
        echo "schema/embed.awk: the statements of schema/ could not be embedded"
    compilers=$(for name in gcc clang; do command -v "$name"; done)
    [ -n "$compilers" ] || echo "include: no compiler was found to compile the headers with"
    for compiler in $compilers; do
        for header in $(c_files include tests | grep '[.]h$'); do
            name=${header#include/}
            printf '#include "%s"\n#include "%s"\n' "${name#tests/}" "${name#tests/}" >"$scratch/alone.c"
            # shellcheck disable=SC2086  # the flags are many words
            "$compiler" $flags -fsyntax-only -Iinclude -Itests -I"$scratch/generated" "$scratch/alone.c" \
                >"$scratch/alone.log" 2>&1 && continue
            echo "$header: does not compile alone with ${compiler##*/}: $(grep -m 1 error "$scratch/alone.log")"
        done
    done
}

# --------------------------------------------------------------------------------------------------------- lengths

# One line for each function: FILE, first line, last line, name; separated by tabs.
functions() {
    c_files src include tests | ctags -f - --languages=C --langmap=C:.c.h --kinds-C=f --fields=+ne --sort=no -L - |
        awk -F '\t' '{
            first = last = ""
            for (i = 4; i <= NF; i++) {
                if ($i ~ /^line:/) first = substr($i, 6)
                if ($i ~ /^end:/) last = substr($i, 5)
            }
            print $2 "\t" first "\t" last "\t" $1
        }'
}

check_functions() {
    if ! ctags --version 2>"$scratch/no-ctags" | grep -q 'Universal Ctags'; then
        echo "ctags: Universal Ctags is needed to measure the functions, and is not here"
        return
    fi
    functions | awk -F '\t' -v most="$longest_function" '
        $3 != "" && $3 - $2 + 1 > most {
            print $1 ":" $2 ": the function " $4 " has " $3 - $2 + 1 " lines; at most " most " fit a screen"
        }'
}

check_files() {
    c_files src include tests | awk_over -v source="$longest_source" -v header="$longest_header" '
        function told() {
            most = file ~ /[.]h$/ ? header : source
            if (file != "" && lines > most)
                print file ": has " lines " lines; at most " most ": it holds two ideas, find the seam"
        }
        FNR == 1 { told(); file = FILENAME }
        { lines = FNR }
        END { told() }'
}

# ---------------------------------------------------------------------------------------------------- names, places

# The names at the top: what git keeps or would keep, or what lies there where there is no git.
top_names() {
    if [ -e .git ] && git ls-files --cached --others --exclude-standard >"$scratch/kept" 2>"$scratch/no-git"; then
        sed 's,/.*,,' "$scratch/kept" | sort -u
    else
        find . -mindepth 1 -maxdepth 1 ! -name build | sed 's,^[.]/,,' | sort
    fi
}

check_names() {
    top_names | while read -r name; do
        case " $top_level " in
        *" $name "*) ;;
        *) case $name in
            .*) ;;
            *) echo "$name: is not one of the names at the top level: $top_level, and dotfiles" ;;
            esac ;;
        esac
    done
    for name in $top_level; do
        [ -e "$name" ] || echo "$name: is missing at the top level"
    done
}

check_folders() {
    find src include/bodkin -mindepth 1 -maxdepth 1 | sort | while read -r path; do
        case " $floors " in
        *" ${path##*/} "*) ;;
        *) [ "$path" = src/main.c ] || echo "$path: is none of the floors: $floors" ;;
        esac
    done
}

check_mirror() {
    c_files include | while read -r header; do
        name=${header#include/bodkin/}
        case " $shared_headers " in
        *" $name "*) ;;
        *) [ -f "src/${name%.h}.c" ] || echo "$header: has no src/${name%.h}.c and is not one of the shared headers" ;;
        esac
    done
}

# ----------------------------------------------------------------------------------------------------------- tests

# A test asserts itself, or uses a function or a macro of the tests that does; three passes find helpers of helpers.
check_asserts() {
    functions | grep '^tests/' >"$scratch/functions"
    c_files tests >"$scratch/tests"
    { cat "$scratch/tests" && echo pass=2 && cat "$scratch/tests" && echo pass=3 && cat "$scratch/tests"; } |
        awk_over -v table="$scratch/functions" '
        BEGIN {
            FS = "\t"
            while ((getline row < table) > 0) {
                split(row, part, "\t")
                for (i = part[2]; i <= part[3]; i++)
                    inside[part[1], i] = part[4]
            }
        }
        function asserts(line, word) {
            if (line ~ /ck_(assert|abort)/)
                return 1
            while (match(line, /[A-Za-z_][A-Za-z0-9_]*\(/)) {
                word = substr(line, RSTART, RLENGTH - 1)
                if (word in asserting)
                    return 1
                line = substr(line, RSTART + RLENGTH)
            }
            return 0
        }
        function told() {
            if (test != "" && !proven && pass == 3)
                print begun ": the test " test " asserts nothing"
            test = ""
        }
        FNR == 1 { told(); macro = "" }
        /^#[ \t]*define[ \t]+[A-Za-z0-9_]+\(/ {
            macro = $0; sub(/^#[ \t]*define[ \t]+/, "", macro); sub(/\(.*/, "", macro)
            sub(/^#[ \t]*define[ \t]+[A-Za-z0-9_]+\(/, "")
        }
        macro != "" {
            if (asserts($0)) asserting[macro] = 1
            if (!/\\$/) macro = ""
            next
        }
        /^START_TEST\(/ {
            told()
            test = $0; sub(/^START_TEST\(/, "", test); sub(/\).*/, "", test)
            begun = FILENAME ":" FNR
            proven = 0
        }
        test != "" && asserts($0) { proven = 1 }
        test == "" && (FILENAME, FNR) in inside && asserts($0) { asserting[inside[FILENAME, FNR]] = 1 }
        /^END_TEST/ { told() }
        END { told() }'
}

check_sleep() {
    c_files tests | awk_over '
        /(^|[^a-z_])(sleep|usleep|nanosleep|clock_nanosleep|napms|thrd_sleep)[ \t]*\(/ {
            print FILENAME ":" FNR ": a test waits for a signal, never for time: no sleep"
        }'
}

# ------------------------------------------------------------------------------------------------------------- all

# shellcheck disable=SC2086  # the checks are many words
[ $# -gt 0 ] || set -- $all_checks
for check in "$@"; do
    "check_$check" >>"$scratch/faults" 2>&1
done
if [ -s "$scratch/faults" ]; then
    cat "$scratch/faults"
    echo "house: $(wc -l <"$scratch/faults") faults"
    exit 1
fi
echo "house: $# checks passed"
