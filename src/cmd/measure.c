#include <stdio.h>
#include <string.h>
#include <strings.h>

#include "bodkin/base/typed.h"
#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/store/performer_rows.h"
#include "bodkin/work/history.h"
#include "bodkin/work/productions.h"

// `bodkin measure`: measures taken of a performer, each argument NAME=VALUE.

static const char how_written[] = "write each measure as NAME=VALUE, such as \"waist girth=92.5\"";

/// What the call says, read.
typedef struct measure_call {
    const bk_call *call;
    bk_store *store;
    bk_unit unit;
    bk_arena *arena;
    bk_error *error;
} measure_call;

static const char *safe(const measure_call *of, const char *text)
{
    return bk_text_safe(of->arena, text, bk_ascii_only());
}

// ------------------------------------------------------------------------------------------------ what is given

/// Whether a word may be a value that got into the wrong place, and so is not quoted back.
static bool may_be_value(const measure_call *of, const char *word)
{
    bk_length length;
    return strchr(word, '=') || bk_length_typed(word, of->unit, &length) == BK_READ_OK;
}

static bk_status find_performer(const measure_call *of, int64_t *performer)
{
    bk_rows rows = {0};
    const char *name = of->call->arguments[0];
    bk_status status = bk_store_find_performer(of->store, name, performer, of->error);
    if (!status && !*performer) {
        status = bk_store_read(of->store, BK_PERFORMERS, 0, of->arena, &rows, of->error);
    }
    if (status || *performer) {
        return status;
    }
    if (may_be_value(of, name)) {
        return bk_fail(of->error, BK_REFUSED, "Name the performer first; then %s.", how_written);
    }
    const bk_performer *items = rows.items;
    const char **names = bk_arena_clear(of->arena, rows.count, sizeof *names);
    for (size_t i = 0; i < rows.count; i++) {
        names[i] = items[i].name;
    }
    const char *near = bk_nearest(name, names, rows.count);
    return bk_fail(of->error, BK_REFUSED, "There is no performer \"%s\"%s%s%s", safe(of, name),
                   near ? "; did you mean " : ".", near ? safe(of, near) : "", near ? "?" : "");
}

/// The unit of the production that the call means; centimetres where there is none.
static bk_status find_unit(measure_call *of)
{
    bk_rows rows = {0};
    bk_production production = {0};
    bk_status status = bk_store_read(of->store, BK_PRODUCTIONS, 0, of->arena, &rows, of->error);
    if (!status && (rows.count || of->call->production)) {
        status = bk_production_choose(of->store, of->call->production, bk_call_today(of->call), of->arena,
                                      &production, of->error);
    }
    of->unit = !status && production.unit == BK_INCH ? BK_INCH : BK_CM;
    return status;
}

/// The name of a measure as it is known, whatever its capitals; as it is given where it is not.
static const char *known_name(const char *given)
{
    for (size_t i = 0; i < bk_measure_term_count; i++) {
        if (!strcasecmp(bk_measure_terms[i].name, given)) {
            return bk_measure_terms[i].name;
        }
    }
    return given;
}

static bk_status refuse_value(const measure_call *of, const char *name, bk_reading reading)
{
    static const char *const reasons[] = {
        [BK_READ_EMPTY] = "has no value",
        [BK_READ_COMMA] = "has a comma that may part thousands; write a decimal point",
        [BK_READ_NO_UNIT] =
            "has a fraction finer than quarters, as inches have; write its unit, such as 36 3/8 in",
        [BK_READ_UNIT] = "has an unknown unit; write cm, mm, m, in, ft or yd",
        [BK_READ_NEGATIVE] = "is below zero",
        [BK_READ_TOO_LARGE] = "is longer than 1 km",
    };
    const char *reason = (size_t)reading < sizeof reasons / sizeof *reasons ? reasons[reading] : NULL;
    return bk_fail(of->error, BK_REFUSED, "Nothing was saved: the %s %s.", safe(of, name),
                   reason ? reason : "is no length; write it such as 92.5, 36 3/8, 5'4\" or 1m64");
}

/// Reads the NAME=VALUE of that number; the value is what stands behind the first `=`. What cannot be understood is not quoted
/// back: it may be a value.
static bk_status read_measure(const measure_call *of, int number, bk_taken *taken)
{
    const char *argument = of->call->arguments[number];
    const char *sign = strchr(argument, '=');
    const char *given = sign ? bk_arena_bytes(of->arena, argument, (size_t)(sign - argument)) : "";
    if (!*given || may_be_value(of, given)) {
        return bk_fail(of->error, BK_USAGE, "Measure number %d is none: %s.", number, how_written);
    }
    const char *name = known_name(given);
    taken->measure = name;
    bk_reading reading = bk_length_typed(sign + 1, of->unit, &taken->value);
    return reading ? refuse_value(of, name, reading) : BK_OK;
}

static bk_status read_measures(const measure_call *of, bk_taken *items, size_t count)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < count; i++) {
        status = read_measure(of, (int)i + 1, &items[i]);
    }
    return status;
}

// --------------------------------------------------------------------------------------------------- what is told

/// Tells, on stderr, what can hardly be true of the sheet as it stands now.
static bk_status tell_doubts(const measure_call *of, int64_t performer, bk_day on)
{
    bk_history history;
    bk_status status = bk_history_read(of->store, performer, of->unit, of->arena, &history, of->error);
    for (size_t sheet = 0; !status && sheet < history.sheet_count; sheet++) {
        for (size_t i = 0; history.sheets[sheet].on == on && i < history.row_count; i++) {
            const bk_history_row *row = &history.rows[i];
            const char *doubt = row->cells[sheet].doubt;
            if (doubt) {
                fprintf(stderr, "%s: %s\n", safe(of, row->name), safe(of, doubt));
            }
        }
    }
    return status;
}

/// Tells, on stderr, which names are new here and may be slips of the pen.
static void tell_new_names(const measure_call *of, const bk_rows *known, const bk_taken *items, size_t count)
{
    const bk_named *named = known->items;
    size_t all = known->count + bk_measure_term_count;
    const char **names = bk_arena_clear(of->arena, all, sizeof *names);
    for (size_t i = 0; i < all; i++) {
        names[i] = i < known->count ? named[i].name : bk_measure_terms[i - known->count].name;
    }
    for (size_t i = 0; i < count; i++) {
        bool there = false;
        for (size_t j = 0; j < all; j++) {
            there = there || bk_same_text(names[j], items[i].measure);
        }
        const char *near = there ? NULL : bk_nearest(items[i].measure, names, all);
        if (near) {
            fprintf(stderr, "\"%s\" is a new name; did you mean %s?\n", safe(of, items[i].measure),
                    safe(of, near));
        }
    }
}

static bk_status save(const measure_call *of)
{
    char now[BK_NOW_ROOM];
    const bk_call *call = of->call;
    const char *sentence = NULL;
    bk_rows known = {0};
    size_t count = (size_t)call->argument_count - 1;
    bk_taken *items = bk_arena_clear(of->arena, count, sizeof *items);
    bk_measures_saving saving = {
        .today = bk_call_today(call),
        .on = call->on == BK_NO_DAY ? bk_call_today(call) : call->on,
        .taken_by = call->by ? call->by : call->name,
        .over = call->over,
        .items = items,
        .count = count,
    };
    bk_status status = read_measures(of, items, count);
    if (!status) {
        status = find_performer(of, &saving.performer);
    }
    if (!status) {
        status = bk_store_read(of->store, BK_MEASURE_NAMES, 0, of->arena, &known, of->error);
    }
    if (!status) {
        status = bk_measures_save(of->store, &saving, bk_now(now), of->arena, &sentence, of->error);
    }
    if (!status) {
        status = bk_print_sentence(sentence ? sentence : "Nothing differs from what was saved", of->error);
    }
    if (!status) {
        tell_new_names(of, &known, items, count);
        status = tell_doubts(of, saving.performer, saving.on);
    }
    return status;
}

bk_status bk_measure_command(const bk_call *call, bk_error *error)
{
    measure_call of = {.call = call, .error = error};
    if (call->as != BK_AS_MAKER) {
        return bk_fail(error, BK_REFUSED, "Only the maker takes measures; leave out --as.");
    }
    bk_status status = bk_call_open(call, false, &of.store, error);
    if (status) {
        return status;
    }
    of.arena = bk_arena_new();
    status = find_unit(&of);
    if (!status) {
        status = save(&of);
    }
    bk_store_close(of.store);
    bk_arena_free(of.arena);
    return status;
}
