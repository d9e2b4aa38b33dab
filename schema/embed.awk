# Embeds the SQL of schema/ in the program: writes a C header and a C source.
#
#     awk -v header=FILE -v source=FILE -f schema/embed.awk MIGRATION.sql ... STATEMENTS.sql ...
#
# A file in a folder named `statements` holds named statements: a line `-- name: words_with_underscores` begins one,
# which runs to the next such line or the end of the file; its other comment lines are left out. Every other file is a
# migration, kept whole; they are numbered from 001 without a gap, and are handed over in that order.

# Tells what is wrong with a file at a line and stops the build.
function fault(file, line, what) {
    printf "%s:%d: %s\n", file, line, what > "/dev/stderr"
    failed = 1
    exit 1
}

# The line as a C string literal that ends in a line feed.
function literal(line) {
    gsub(/\\/, "&&", line)
    gsub(/"/, "\\\"", line)
    gsub(/\?/, "\\?", line)
    gsub(/\t/, "\\t", line)
    gsub(/\r/, "\\r", line)
    return "\"" line "\\n\""
}

# Begins the statement that the line `-- name: ...` names.
function begin_statement(line, name) {
    end_statement()
    name = line
    sub(/^-- name:[ \t]*/, "", name)
    sub(/[ \t\r]+$/, "", name)
    if (name !~ /^[a-z][a-z0-9]*(_[a-z0-9]+)*$/)
        fault(FILENAME, FNR, "\"" name "\" is no name for a statement: small letters, digits and single underscores")
    if (name == "count")
        fault(FILENAME, FNR, "no statement can be named \"count\": BK_SQL_COUNT is the number of statements")
    if (name in place)
        fault(FILENAME, FNR, "the statement \"" name "\" is already at " place[name])
    place[name] = FILENAME ":" FNR
    names[++statements] = name
    begun_in = FILENAME
    begun_at = FNR
}

# Ends the statement being read, which must have said something.
function end_statement() {
    if (begun_in != "" && texts[statements] == "")
        fault(begun_in, begun_at, "the statement \"" names[statements] "\" is empty")
    begun_in = ""
}

# Takes one line of a file of named statements.
function statement_line(line) {
    if (line ~ /^-- name:/) {
        begin_statement(line)
    } else if (line ~ /^[ \t]*--[ \t]*name[ \t]*:/) {
        fault(FILENAME, FNR, "a statement begins with \"-- name: \" at the start of a line, spaced like this")
    } else if (line ~ /^[ \t\r]*(--.*)?$/) {
        return
    } else if (begun_in == "") {
        fault(FILENAME, FNR, "text before the first \"-- name:\" line")
    } else {
        texts[statements] = texts[statements] "\n    " literal(line)
    }
}

# Begins a migration, whose file name starts with the next number.
function begin_migration(base) {
    base = FILENAME
    sub(/^.*\//, "", base)
    migrations++
    if (substr(base, 1, 4) != sprintf("%03d-", migrations))
        fault(FILENAME, FNR, sprintf("the next migration must be numbered %03d", migrations))
    migration_texts[migrations] = "\n    /* " base " */"
}

function write_header(i) {
    print "/* Made from schema/ by schema/embed.awk: change that, not this. */" > header
    print "#ifndef BODKIN_STORE_STATEMENTS_H\n#define BODKIN_STORE_STATEMENTS_H\n" > header
    print "/* Every statement of schema/statements, by name. */\ntypedef enum bk_sql {" > header
    for (i = 1; i <= statements; i++)
        print "    BK_SQL_" toupper(names[i]) "," > header
    print "    BK_SQL_COUNT\n} bk_sql;\n" > header
    print "/* A named statement: its name in schema/statements and its SQL. */" > header
    print "typedef struct bk_embedded_statement {" > header
    print "    const char *name;\n    const char *text;\n} bk_embedded_statement;\n" > header
    print "/* The statements, at their bk_sql. */" > header
    print "extern const bk_embedded_statement bk_statements[BK_SQL_COUNT];\n" > header
    print "/* The migrations, oldest first: bk_migrations[n] brings a store from version n to version n + 1. */" > header
    print "extern const char *const bk_migrations[];\nextern const int bk_migration_count;\n\n#endif" > header
}

function write_source(i) {
    print "/* Made from schema/ by schema/embed.awk: change that, not this. */" > source
    print "#include <stddef.h>\n\n#include \"bodkin/store/statements.h\"\n" > source
    print "const bk_embedded_statement bk_statements[BK_SQL_COUNT] = {" > source
    for (i = 1; i <= statements; i++)
        print "    {\"" names[i] "\"," texts[i] "}," > source
    print "};\n\nconst char *const bk_migrations[] = {" > source
    for (i = 1; i <= migrations; i++)
        print "    /* version " i " */" migration_texts[i] "," > source
    print "    NULL,\n};\n\nconst int bk_migration_count = " migrations + 0 ";" > source
}

# With no file at all, awk would read the keyboard.
BEGIN {
    if (ARGC < 2)
        exit
}

FNR == 1 {
    end_statement()
    in_statements = FILENAME ~ /(^|\/)statements\/[^\/]*$/
    if (!in_statements)
        begin_migration()
}

in_statements { statement_line($0) }
!in_statements { migration_texts[migrations] = migration_texts[migrations] "\n    " literal($0) }

END {
    if (failed)
        exit 1
    end_statement()
    write_header()
    write_source()
}
