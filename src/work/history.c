#include "bodkin/work/history.h"

#include <stdlib.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/base/typed.h"
#include "bodkin/store/one.h"
#include "bodkin/store/performer_rows.h"
#include "bodkin/store/records_bench.h"

// --------------------------------------------------------------------------------------------------- the limit

enum { CM_DECIMALS = 4, PERCENT = 100, USUAL_CM = 2, USUAL_PERCENT = 3 };

static const bk_change_limit usual_limit = {USUAL_CM * BK_MICROMETRES_PER_CM, USUAL_PERCENT *BK_QUANTITY_ONE};
static const bk_change_limit most_limit = {PERCENT * BK_MICROMETRES_PER_CM, PERCENT *BK_QUANTITY_ONE};

static const char length_setting[] = "measure_change_cm";
static const char percent_setting[] = "measure_change_percent";

static const bk_setting *find_setting(const bk_rows *settings, const char *name)
{
    const bk_setting *items = settings->items;
    for (size_t i = 0; i < settings->count; i++) {
        if (bk_same_text(items[i].name, name)) {
            return &items[i];
        }
    }
    return NULL;
}

static const char *setting_text(const bk_rows *settings, const char *name)
{
    const bk_setting *setting = find_setting(settings, name);
    return setting ? setting->value : NULL;
}

static bool good_limit(const bk_change_limit *limit)
{
    return limit->length >= 0 && limit->length <= most_limit.length && limit->percent >= 0 &&
           limit->percent <= most_limit.percent;
}

/// Each of the two counts alone: where one is not set or no such number, the usual one holds.
static bk_change_limit limit_of(const bk_rows *settings)
{
    bk_change_limit length = usual_limit, percent = usual_limit;
    if (bk_length_typed(setting_text(settings, length_setting), BK_CM, &length.length) ||
        !good_limit(&length)) {
        length = usual_limit;
    }
    if (bk_quantity_read(setting_text(settings, percent_setting), false, &percent.percent) ||
        !good_limit(&percent)) {
        percent = usual_limit;
    }
    return (bk_change_limit){length.length, percent.percent};
}

static bk_status read_settings(bk_store *store, bk_arena *arena, bk_rows *settings, bk_error *error)
{
    return bk_store_read(store, BK_SETTINGS, 0, arena, settings, error);
}

bk_status bk_change_limit_read(bk_store *store, bk_change_limit *limit, bk_error *error)
{
    bk_rows settings = {0};
    bk_arena *arena = bk_arena_new();
    bk_status status = read_settings(store, arena, &settings, error);
    if (!status) {
        *limit = limit_of(&settings);
    }
    bk_arena_free(arena);
    return status;
}

static bk_status put_setting(bk_store *store, const bk_rows *settings, const char *name, const char *value,
                             bk_error *error)
{
    const bk_setting *there = find_setting(settings, name);
    bk_setting setting = {there ? there->id : 0, name, value};
    return there ? bk_store_put(store, BK_SETTINGS, &setting, error)
                 : bk_store_add(store, BK_SETTINGS, &setting, 0, NULL, error);
}

/// Within a change; `*sentence` NULL where nothing differs.
static bk_status put_limit(bk_store *store, const bk_change_limit *limit, bk_arena *arena,
                           const char **sentence, bk_error *error)
{
    bk_rows settings = {0};
    char length[BK_AMOUNT_ROOM], percent[BK_AMOUNT_ROOM];
    bk_status status = read_settings(store, arena, &settings, error);
    if (status) {
        return status;
    }
    bk_change_limit there = limit_of(&settings);
    if (there.length == limit->length && there.percent == limit->percent) {
        return BK_OK;
    }
    bk_decimal_write(limit->length, CM_DECIMALS, true, length);
    bk_quantity_write(limit->percent, percent);
    status = put_setting(store, &settings, length_setting, length, error);
    if (!status) {
        status = put_setting(store, &settings, percent_setting, percent, error);
    }
    *sentence = bk_arena_print(arena, "Set: measures are marked that change by more than %s cm and %s %%",
                               length, percent);
    return status;
}

bk_status bk_change_limit_put(bk_store *store, bk_change_limit limit, const char *made_at, bk_arena *arena,
                              const char **sentence, bk_error *error)
{
    *sentence = NULL;
    if (!good_limit(&limit)) {
        return bk_fail(error, BK_REFUSED, "A change is marked from at most 100 cm and 100 %% on.");
    }
    bk_status status = bk_store_change_begin(store, error);
    if (status) {
        return status;
    }
    status = put_limit(store, &limit, arena, sentence, error);
    if (status || !*sentence) {
        bk_store_change_drop(store);
        return status;
    }
    return bk_store_change_commit(store, made_at, *sentence, NULL, error);
}

static bool is_beyond(const bk_change_limit *limit, bk_length change, bk_length earlier)
{
    int64_t size = change < 0 ? -change : change;
    return size > limit->length && size * PERCENT * BK_QUANTITY_ONE > earlier * limit->percent;
}

// ------------------------------------------------------------------------------------------------- the history

/// The sheets as they are read, and the history while it is built.
typedef struct building {
    const bk_sheet_day *days; ///< newest first
    size_t sheet_count;
    const bk_measure *measures; ///< sheet by sheet
    size_t measure_count;
    bk_taken_sheet *taken; ///< each sheet's values
    bk_index *row_of;      ///< name to row
    bk_history_sheet *sheets;
    bk_history_row *rows;
    size_t row_count;
    bk_history_cell *cells; ///< row by row
    bk_change_limit limit;
    bk_unit usual;
    bk_arena *arena;
} building;

/// In the order a sheet is taken, then names of the workroom's own in natural order.
static int row_order(const void *left, const void *right)
{
    const bk_history_row *a = left, *b = right;
    if (a->term && b->term) {
        return a->term < b->term ? -1 : a->term > b->term;
    }
    if (a->term || b->term) {
        return a->term ? -1 : 1;
    }
    return bk_natural_order(a->name, b->name);
}

static void find_rows(building *build)
{
    build->rows = bk_arena_clear(build->arena, build->measure_count, sizeof *build->rows);
    for (size_t i = 0; i < build->measure_count; i++) {
        const char *name = build->measures[i].name;
        if (!bk_index_find(build->row_of, name)) {
            bk_index_put(build->row_of, name, 0);
            build->rows[build->row_count++] =
                (bk_history_row){.name = name, .term = bk_measure_term_find(name)};
        }
    }
    if (build->row_count) {
        qsort(build->rows, build->row_count, sizeof *build->rows, row_order);
    }
    for (size_t i = 0; i < build->row_count; i++) {
        *bk_index_put(build->row_of, build->rows[i].name, 0) = (long long)i;
    }
}

static bk_history_cell *cell_at(const building *build, const char *name, size_t sheet)
{
    size_t row = (size_t)*bk_index_find(build->row_of, name);
    return &build->cells[row * build->sheet_count + sheet];
}

static void clear_cells(building *build)
{
    size_t count = build->row_count * build->sheet_count;
    build->cells = bk_arena_clear(build->arena, count, sizeof *build->cells);
    for (size_t i = 0; i < count; i++) {
        build->cells[i].value = build->cells[i].change = BK_NO_AMOUNT;
    }
    for (size_t i = 0; i < build->row_count; i++) {
        build->rows[i].cells = &build->cells[i * build->sheet_count];
    }
}

/// What all measures so far have in common, and one more.
static const char *in_common(const char *common, const char *text, bool first)
{
    return first || bk_same_text(common, text) ? text : NULL;
}

/// Takes the measures of one sheet, from `*next` on.
static void fill_sheet(building *build, size_t sheet, size_t *next)
{
    bk_history_sheet *head = &build->sheets[sheet];
    size_t first = *next;
    while (*next < build->measure_count && build->measures[*next].sheet_id == build->days[sheet].id) {
        (*next)++;
    }
    bk_taken *items = bk_arena_clear(build->arena, *next - first, sizeof *items);
    *head = (bk_history_sheet){build->days[sheet].id, build->days[sheet].taken_on, .count = *next - first};
    for (size_t i = 0; i < head->count; i++) {
        const bk_measure *measure = &build->measures[first + i];
        bk_history_cell *cell = cell_at(build, measure->name, sheet);
        items[i] = (bk_taken){measure->name, measure->value};
        cell->value = measure->value;
        cell->over = measure->over;
        cell->taken_by = measure->taken_by;
        head->over = in_common(head->over, measure->over, i == 0);
        head->taken_by = in_common(head->taken_by, measure->taken_by, i == 0);
    }
    build->taken[sheet] = (bk_taken_sheet){items, head->count, head->on};
}

/// The changes of one measure, from its oldest sheet on.
static void compare_row(building *build, size_t row)
{
    bk_length earlier = BK_NO_AMOUNT;
    for (size_t sheet = build->sheet_count; sheet-- > 0;) {
        bk_history_cell *cell = &build->cells[row * build->sheet_count + sheet];
        if (cell->value == BK_NO_AMOUNT) {
            continue;
        }
        if (earlier != BK_NO_AMOUNT) {
            cell->change = cell->value - earlier;
            cell->beyond = is_beyond(&build->limit, cell->change, earlier);
            build->sheets[sheet].beyond += cell->beyond;
        }
        earlier = cell->value;
    }
}

static void doubt_sheet(building *build, size_t sheet)
{
    const bk_taken_sheet *taken = &build->taken[sheet];
    const bk_taken_sheet *before = sheet + 1 < build->sheet_count ? taken + 1 : NULL;
    bk_unit unit = bk_unit_typed(taken, build->usual);
    bk_doubts doubts = bk_doubts_of_sheet(taken, before, unit, build->arena);
    build->sheets[sheet].doubts = doubts.count;
    for (size_t i = 0; i < doubts.count; i++) {
        cell_at(build, taken->items[doubts.items[i].item].measure, sheet)->doubt = doubts.items[i].says;
    }
}

static void build_history(building *build, bk_history *history)
{
    size_t next = 0;
    build->row_of = bk_index_new();
    build->sheets = bk_arena_clear(build->arena, build->sheet_count, sizeof *build->sheets);
    build->taken = bk_arena_clear(build->arena, build->sheet_count, sizeof *build->taken);
    find_rows(build);
    clear_cells(build);
    for (size_t i = 0; i < build->sheet_count; i++) {
        fill_sheet(build, i, &next);
    }
    for (size_t i = 0; i < build->row_count; i++) {
        compare_row(build, i);
    }
    for (size_t i = 0; i < build->sheet_count; i++) {
        doubt_sheet(build, i);
    }
    bk_index_free(build->row_of);
    history->limit = build->limit;
    history->sheets = build->sheets;
    history->sheet_count = build->sheet_count;
    history->rows = build->rows;
    history->row_count = build->row_count;
}

static bk_status read_rows(bk_store *store, int64_t performer, bk_history *history, building *build,
                           bk_error *error)
{
    bk_rows settings = {0}, days = {0}, measures = {0};
    bool found = false;
    bk_status status =
        bk_store_get(store, BK_PERFORMERS, performer, build->arena, &history->performer, &found, error);
    if (!status && !found) {
        status = bk_fail(error, BK_REFUSED, "This performer is no longer in the workroom.");
    }
    if (!status) {
        status = read_settings(store, build->arena, &settings, error);
    }
    if (!status) {
        status = bk_store_performer_sheets(store, performer, build->arena, &days, error);
    }
    if (!status) {
        status = bk_store_performer_measures(store, performer, build->arena, &measures, error);
    }
    build->limit = limit_of(&settings);
    build->days = days.items;
    build->sheet_count = days.count;
    build->measures = measures.items;
    build->measure_count = measures.count;
    return status;
}

bk_status bk_history_read(bk_store *store, int64_t performer, bk_unit usual, bk_arena *arena,
                          bk_history *history, bk_error *error)
{
    building build = {.usual = usual, .arena = arena};
    *history = (bk_history){0};
    if (!bk_store_sees_measures(store)) {
        return bk_fail(error, BK_REFUSED, "Only the maker sees measures.");
    }
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    status = read_rows(store, performer, history, &build, error);
    bk_store_read_end(store);
    if (!status) {
        build_history(&build, history);
    }
    return status;
}
