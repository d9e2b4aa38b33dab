#!/bin/sh
# Tests schema/embed.awk: what is embedded comes back to the byte, and every fault is told by file and line.
#
#     sh tests/embed_test.sh
#
# Ends with a line `embed_test: N passed, N failed`.

set -u
export LC_ALL=C.UTF-8

root=$(cd "$(dirname "$0")/.." && pwd) || exit 2
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
trap 'exit 2' HUP INT TERM
cd "$scratch" && mkdir -p statements bodkin/store || exit 2
passed=0
failed=0

embed() { awk -v header=bodkin/store/statements.h -v source=statements.c -f "$root/schema/embed.awk" "$@" >said 2>&1; }

# Counts a test: $1 is its outcome (0 is good), $2 says what it was.
count() {
    if [ "$1" -eq 0 ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        printf 'embed_test: %s; it said:\n' "$2"
        sed 's/^/    /' said
    fi
}

# refuses SENTENCE TEXT: the statements TEXT, where \n ends a line, must be refused with SENTENCE.
refuses() {
    printf '%b' "$2" >statements/a.sql
    if embed statements/a.sql; then
        count 1 "not refused: $2"
    else
        grep -qF "$1" said
        count $? "\"$1\" was not said of: $2"
    fi
}

# comes_back EXPECTED: what is embedded, compiled and printed again is the same as the file EXPECTED.
comes_back() {
    cat >print.c <<'END'
#include <stdio.h>

#include "bodkin/store/statements.h"

int main(void)
{
    for (int i = 0; i < bk_migration_count; i++)
        printf("%d %s", i, bk_migrations[i]);
    for (int i = 0; i < BK_SQL_COUNT; i++)
        printf("%s: %s", bk_statements[i].name, bk_statements[i].text);
    return bk_migrations[bk_migration_count] != NULL;
}
END
    cc -std=c17 -Wall -Wextra -Werror -I. -o print print.c statements.c >said 2>&1 && ./print >said && cmp -s said "$1"
    count $? "what was embedded did not come back as $1"
}

cat >001-first.sql <<'END'
-- Kept as it is, "quotes", \ and ??( too.

CREATE TABLE piece (title TEXT DEFAULT 'Ärmel	裏地');
END
echo 'ALTER TABLE piece ADD place TEXT;' >002-second.sql
cat >statements/a.sql <<'END'
-- Said before the first.

-- name: piece_read
-- left out
SELECT title FROM piece
  WHERE title <> '\?"' AND place = ?1; -- kept

-- name: piece_2_write
INSERT INTO piece VALUES (?1);
END
printf '%b' '-- name: last\nDELETE FROM piece' >statements/b.sql
{
    printf '0 ' && cat 001-first.sql && printf '1 ' && cat 002-second.sql
    printf 'piece_read: ' && sed -n 5,6p statements/a.sql
    printf 'piece_2_write: ' && sed -n 9p statements/a.sql
    echo 'last: DELETE FROM piece'
} >expected
embed 001-first.sql 002-second.sql statements/a.sql statements/b.sql
count $? "sound files were refused"
comes_back expected

: >nothing
embed </dev/null
count $? "no file at all was refused"
comes_back nothing

refuses 'statements/a.sql:2: text before the first "-- name:" line' '\nSELECT 1;\n-- name: one\nSELECT 2;\n'
refuses 'statements/a.sql:3: the statement "one" is already at statements/a.sql:1' \
    '-- name: one\nSELECT 1;\n-- name: one\nSELECT 2;\n'
refuses 'statements/a.sql:1: the statement "one" is empty' '-- name: one\n-- only this\n-- name: two\nSELECT 2;\n'
refuses 'statements/a.sql:3: the statement "two" is empty' '-- name: one\nSELECT 1;\n-- name: two\n\n'
refuses 'statements/a.sql:1: "OneTwo" is no name for a statement' '-- name: OneTwo\nSELECT 1;\n'
refuses 'statements/a.sql:1: no statement can be named "count"' '-- name: count\nSELECT 1;\n'
refuses 'statements/a.sql:2: a statement begins with "-- name: "' '-- name: one\n  --name: two\nSELECT 1;\n'

embed 002-second.sql
count "$((! $?))" "a migration out of its turn was not refused"
grep -qF '002-second.sql:1: the next migration must be numbered 001' said
count $? "the migration out of its turn was not told"

echo "embed_test: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
