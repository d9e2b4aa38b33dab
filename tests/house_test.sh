#!/bin/sh
# Tests tests/house.sh: copies the tree, breaks each rule once, and requires the right sentence; what is sound must pass.
#
#     sh tests/house_test.sh
#
# Ends with a line `house_test: N passed, N failed`.

set -u
export LC_ALL=C.UTF-8

root=$(cd "$(dirname "$0")/.." && pwd) || exit 2
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
trap 'exit 2' HUP INT TERM
copy=$scratch/copy
said=$scratch/said
passed=0
failed=0

# Lays a fresh copy of the tree, as a checkout without its history and without what was built.
lay_copy() {
    rm -rf "$copy"
    mkdir "$copy" || exit 2
    for path in "$root"/* "$root"/.[!.]*; do
        case ${path##*/} in
        build | .git | .cache) ;;
        *) [ ! -e "$path" ] || cp -R "$path" "$copy/" || exit 2 ;;
        esac
    done
}

# Counts a test: $1 is its outcome (0 is good), $2 says what it was.
count() {
    if [ "$1" -eq 0 ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        printf 'house_test: %s; it said:\n' "$2"
        sed 's/^/    /' "$said"
    fi
}

# breaks CHECK SENTENCE SHELL: after SHELL was run in a fresh copy, CHECK must fail and say SENTENCE.
breaks() {
    lay_copy
    (cd "$copy" && eval "$3") || exit 2
    if sh "$root/tests/house.sh" "$copy" "$1" >"$said" 2>&1; then
        count 1 "the check '$1' did not fail after: $3"
    else
        grep -qF "$2" "$said"
        count $? "the check '$1' did not say \"$2\" after: $3"
    fi
}

# stands CHECK SHELL: after SHELL was run in a fresh copy, CHECK must pass.
stands() {
    lay_copy
    (cd "$copy" && eval "$2") || exit 2
    sh "$root/tests/house.sh" "$copy" "$1" >"$said" 2>&1
    count $? "the check '$1' failed after: $2"
}

# Prints a C function of $1 lines; or a file of $1 lines.
function_of() { printf 'int broken(void)\n{\n' && yes '    ;' | head -n "$(($1 - 3))" && echo '}'; }
lines_of() { yes '//' | head -n "$1"; }

# Prints a file of tests: one that asks nothing, and those that ask by themselves, by a function and by a macro.
broken_tests() { printf 'START_TEST(nothing_is_asked)\n{\n}\nEND_TEST\n'; }
sound_tests() {
    printf 'static void asking(int x)\n{\n    ck_assert_int_eq(x, 1);\n}\n'
    printf '#define ASKING(x) \\\n    asking(x)\n'
    for line in 'ck_assert(true);' 'asking(1);' 'ASKING(1);'; do
        printf 'START_TEST(a)\n{\n    %s\n}\nEND_TEST\n' "$line"
    done
}

lay_copy
sh "$root/tests/house.sh" "$copy" >"$said" 2>&1
count $? "the untouched copy did not pass"

breaks floors 'src/trade/broken.c:1: floor trade may not include from floor store, which lies above it' \
    'echo "#include \"bodkin/store/store.h\"" >src/trade/broken.c'
breaks floors 'src/plan/broken.c:1: floor plan may not include from floor cmd' \
    'echo "  #  include <bodkin/cmd/commands.h>" >src/plan/broken.c'
breaks floors 'include/bodkin/base/broken.h:2: floor base may not include from floor trade' \
    'printf "\n#include \"bodkin/trade/words.h\"\n" >include/bodkin/base/broken.h'
breaks floors 'tests/sheet/broken_test.c:1: floor sheet may not include from floor ui' \
    'mkdir -p tests/sheet && echo "#include \"bodkin/ui/term.h\"" >tests/sheet/broken_test.c'
breaks floors 'src/ui/broken.c:1: there is no floor attic' \
    'echo "#include \"bodkin/attic/trunk.h\"" >src/ui/broken.c'
breaks floors 'src/ui/broken.c:1: a header of ours is included as "bodkin/FLOOR/NAME.h"' \
    'echo "#include \"../store/store.h\"" >src/ui/broken.c'
stands floors 'echo "#include \"bodkin/base/text.h\"" >src/ui/sound.c'

breaks curses 'src/work/broken.c:1: only src/ui/term.c may include curses, not src/work/broken.c' \
    'echo "# include <ncursesw/curses.h>" >src/work/broken.c'
breaks curses 'only src/ui/term.c may include curses, not src/ui/broken.c' \
    'echo "#include <curses.h>" >src/ui/broken.c'
breaks curses 'only src/ui/term.c may include curses, not include/bodkin/ui/broken.h' \
    'echo "#include <panel.h>" >include/bodkin/ui/broken.h'
breaks curses 'only src/ui/term.c may include curses, not tests/ui/broken_test.c' \
    'mkdir -p tests/ui && echo "#include \"ncurses.h\"" >tests/ui/broken_test.c'
stands curses 'echo "#include <curses.h>" >src/ui/term.c && echo "#include \"bodkin/ui/panel.h\"" >src/ui/sound.c'

breaks sqlite 'src/store/broken.c:1: only src/store/db.c may include sqlite3.h, not src/store/broken.c' \
    'echo "#include <sqlite3.h>" >src/store/broken.c'
breaks sqlite 'only src/store/db.c may include sqlite3.h, not src/work/broken.c' \
    'echo "#include <sqlite3ext.h>" >src/work/broken.c'
stands sqlite 'echo "#include <sqlite3.h>" >src/store/db.c'

breaks sql 'src/store/broken.c:1: SQL stands in schema/, not in C: "SELECT name FROM people"' \
    'echo "const char *broken = \"SELECT name FROM people\";" >src/store/broken.c'
breaks sql 'src/work/broken.c:2: SQL stands in schema/, not in C: "UPDATE piece SET"' \
    'printf "/* one\n*/ char a = 34, b[] = \" UPDATE piece SET\";\n" >src/work/broken.c'
breaks sql 'src/work/broken.c:1: SQL stands in schema/, not in C: "COMMIT"' \
    'echo "const char *broken = \"COMMIT\";" >src/work/broken.c'
stands sql 'printf "// \"SELECT x\"\nchar a = \047\"\047; // \"DROP x\"\n/* \"DROP x\"\n \"DROP x\" */\n" >src/work/sound.c'
stands sql 'echo "const char *sound[] = {\"BEGIN:VEVENT\", \"WITHOUT a hem\", \"to SELECT one\"};" >src/work/sound.c'

breaks alone 'include/bodkin/base/broken.h: does not compile alone with' \
    'echo "size_t bk_broken(void);" >include/bodkin/base/broken.h'
breaks alone 'include/bodkin/base/broken.h: does not compile alone with' \
    'echo "typedef struct bk_broken { int value; } bk_broken;" >include/bodkin/base/broken.h'
breaks alone 'schema/statements/broken.sql:1: text before the first "-- name:" line' \
    'mkdir -p schema/statements && echo "SELECT 1;" >schema/statements/broken.sql'

breaks functions 'src/base/broken.c:1: the function broken has 61 lines; at most 60 fit a screen' \
    'function_of 61 >src/base/broken.c'
stands functions 'function_of 60 >src/base/sound.c'

breaks files 'src/base/broken.c: has 501 lines; at most 500' 'lines_of 501 >src/base/broken.c'
breaks files 'include/bodkin/base/broken.h: has 201 lines; at most 200' \
    'lines_of 201 >include/bodkin/base/broken.h'
breaks files 'tests/support/broken.c: has 600 lines; at most 500' 'lines_of 600 >tests/support/broken.c'
stands files 'lines_of 500 >src/base/sound.c && lines_of 200 >include/bodkin/base/sound.h'

breaks names 'notes.txt: is not one of the names at the top level' 'touch notes.txt'
breaks names 'README.md: is missing at the top level' 'rm -f README.md'
breaks names 'notes.txt: is not one of the names at the top level' 'git init -q . && touch notes.txt'
stands names 'touch .dotfile && mkdir -p build && touch build/made'
stands names 'git init -q . && mkdir -p build && touch build/made'

breaks folders 'src/attic: is none of the floors' 'mkdir src/attic'
breaks folders 'include/bodkin/attic: is none of the floors' 'mkdir include/bodkin/attic'

breaks mirror 'include/bodkin/base/broken.h: has no src/base/broken.c and is not one of the shared headers' \
    'touch include/bodkin/base/broken.h'

breaks asserts 'tests/base/broken_test.c:1: the test nothing_is_asked asserts nothing' \
    'mkdir -p tests/base && broken_tests >tests/base/broken_test.c'
stands asserts 'rm -r tests/*/ && mkdir tests/base && sound_tests >tests/base/sound_test.c'

breaks sleep 'tests/base/broken_test.c:1: a test waits for a signal, never for time: no sleep' \
    'mkdir -p tests/base && echo "    usleep(10);" >tests/base/broken_test.c'

echo "house_test: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
