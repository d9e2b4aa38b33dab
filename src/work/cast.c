#include "bodkin/work/cast.h"

#include "bodkin/base/list.h"
#include "bodkin/store/one.h"
#include "bodkin/store/performer_rows.h"
#include "bodkin/trade/doubts.h"
#include "bodkin/trade/words.h"

/// What the cast is built from.
typedef struct cast_rows {
    bk_rows performers; ///< of the company
    bk_rows everybody;  ///< who plays or covers need not be of the company
    bk_rows roles, covers, costumes;
    bk_rows sheets;   ///< of the company, each performer's newest first
    bk_rows measures; ///< of the company; none where values may not be read
    bk_rows contacts; ///< of all; none where they may not be read
    bool values;      ///< whether those two were read
    bk_arena *arena;
} cast_rows;

// ------------------------------------------------------------------------------------------------------ reading

/// What is read for everybody, and for the maker alone; `own` ones by production.
static const struct family_read {
    bk_family family;
    size_t offset;
    bool own, private;
} families[] = {
    {BK_COMPANY_PERFORMERS, offsetof(cast_rows, performers), true, false},
    {BK_PERFORMERS, offsetof(cast_rows, everybody), false, false},
    {BK_ROLES, offsetof(cast_rows, roles), true, false},
    {BK_COVERS, offsetof(cast_rows, covers), true, false},
    {BK_COSTUMES, offsetof(cast_rows, costumes), true, false},
    {BK_MEASURES, offsetof(cast_rows, measures), true, true},
    {BK_CONTACTS, offsetof(cast_rows, contacts), false, true},
};

static bk_status read_rows(bk_store *store, int64_t production, bk_production *found, cast_rows *rows,
                           bk_error *error)
{
    bool there = false;
    bk_status status = bk_store_get(store, BK_PRODUCTIONS, production, rows->arena, found, &there, error);
    if (!status && !there) {
        status = bk_fail(error, BK_REFUSED, "This production is no longer in the workroom.");
    }
    for (size_t i = 0; !status && i < sizeof families / sizeof *families; i++) {
        if (!families[i].private || rows->values) {
            bk_rows *into = (void *)((char *)rows + families[i].offset);
            status = bk_store_read(store, families[i].family, families[i].own ? production : 0, rows->arena,
                                   into, error);
        }
    }
    return status ? status : bk_store_company_sheets(store, production, rows->arena, &rows->sheets, error);
}

// -------------------------------------------------------------------------------------------------------- roles

static const char *name_of(const cast_rows *rows, const bk_id_index *by_id, int64_t performer)
{
    const long long *at = bk_id_index_find(by_id, performer);
    return at ? ((const bk_performer *)rows->everybody.items)[*at].name : NULL;
}

/// The names of who covers a role.
static const char *const *covers_of(const cast_rows *rows, const bk_id_index *by_id, int64_t role,
                                    size_t *count)
{
    const bk_link *links = rows->covers.items;
    const char **names = bk_arena_clear(rows->arena, rows->covers.count, sizeof *names);
    *count = 0;
    for (size_t i = 0; i < rows->covers.count; i++) {
        if (links[i].from_id == role) {
            names[(*count)++] = name_of(rows, by_id, links[i].to_id);
        }
    }
    return names;
}

static size_t costumes_of(const cast_rows *rows, int64_t role)
{
    const bk_costume *costumes = rows->costumes.items;
    size_t count = 0;
    for (size_t i = 0; i < rows->costumes.count; i++) {
        count += costumes[i].role_id == role;
    }
    return count;
}

static void build_roles(const cast_rows *rows, bk_cast *cast)
{
    const bk_role *roles = rows->roles.items;
    bk_cast_role *built = bk_arena_clear(rows->arena, rows->roles.count, sizeof *built);
    bk_id_index *by_id = bk_id_index_of(rows->everybody.items, rows->everybody.count, sizeof(bk_performer));
    for (size_t i = 0; i < rows->roles.count; i++) {
        built[i].record = &roles[i];
        built[i].performer = name_of(rows, by_id, roles[i].performer_id);
        built[i].covers = covers_of(rows, by_id, roles[i].id, &built[i].cover_count);
        built[i].costume_count = costumes_of(rows, roles[i].id);
        cast->uncast += !built[i].performer;
    }
    bk_id_index_free(by_id);
    cast->roles = built;
    cast->role_count = rows->roles.count;
}

// --------------------------------------------------------------------------------------------------- performers

static const char *const *played_by(const cast_rows *rows, int64_t performer, size_t *count)
{
    const bk_role *roles = rows->roles.items;
    const char **names = bk_arena_clear(rows->arena, rows->roles.count, sizeof *names);
    *count = 0;
    for (size_t i = 0; i < rows->roles.count; i++) {
        if (roles[i].performer_id == performer) {
            names[(*count)++] = roles[i].name;
        }
    }
    return names;
}

/// The names of the roles that a performer covers; the links come in the order of the roles.
static const char *const *covered_by(const cast_rows *rows, int64_t performer, size_t *count)
{
    const bk_role *roles = rows->roles.items;
    const bk_link *links = rows->covers.items;
    const char **names = bk_arena_clear(rows->arena, rows->covers.count, sizeof *names);
    *count = 0;
    for (size_t i = 0, role = 0; i < rows->covers.count && role < rows->roles.count; i++) {
        while (role < rows->roles.count && roles[role].id != links[i].from_id) {
            role++;
        }
        if (role < rows->roles.count && links[i].to_id == performer) {
            names[(*count)++] = roles[role].name;
        }
    }
    return names;
}

/// The values of a sheet, which stand together.
static bk_taken_sheet values_of(const cast_rows *rows, const bk_counted_sheet *sheet)
{
    const bk_measure *measures = rows->measures.items;
    bk_taken *items = bk_arena_clear(rows->arena, (size_t)sheet->measures, sizeof *items);
    size_t count = 0;
    for (size_t i = 0; i < rows->measures.count && count < (size_t)sheet->measures; i++) {
        if (measures[i].sheet_id == sheet->id) {
            items[count++] = (bk_taken){measures[i].name, measures[i].value};
        }
    }
    return (bk_taken_sheet){items, count, sheet->taken_on};
}

static int64_t doubts_of(const cast_rows *rows, const bk_production *production,
                         const bk_counted_sheet *newest, size_t sheet_count)
{
    bk_unit usual = production->unit == BK_INCH ? BK_INCH : BK_CM;
    bk_taken_sheet taken = values_of(rows, newest), before = {0};
    if (sheet_count > 1) {
        before = values_of(rows, newest + 1);
    }
    return (int64_t)bk_doubts_of_sheet(&taken, sheet_count > 1 ? &before : NULL, bk_unit_typed(&taken, usual),
                                       rows->arena)
        .count;
}

static bool is_old(const bk_cast *cast, const bk_cast_performer *performer, bk_day today)
{
    int64_t usual = cast->production.measures_good_for;
    int64_t own = performer->record->measures_good_for;
    int64_t good_for = own != BK_NOT_KNOWN ? own : (usual != BK_NOT_KNOWN ? usual : BK_USUAL_GOOD_FOR);
    return (int64_t)today - performer->newest > good_for;
}

/// Takes a performer's sheets, `count` of them with the newest first.
static void put_sheets(const cast_rows *rows, const bk_cast *cast, bk_day today, bk_cast_performer *performer,
                       const bk_counted_sheet *sheets)
{
    performer->newest = sheets->taken_on;
    performer->measures = sheets->measures;
    performer->old = is_old(cast, performer, today);
    if (rows->values) {
        performer->doubts = doubts_of(rows, &cast->production, sheets, performer->sheet_count);
    }
}

static void build_performers(const cast_rows *rows, bk_day today, bk_cast *cast)
{
    const bk_performer *records = rows->performers.items;
    const bk_counted_sheet *sheets = rows->sheets.items;
    size_t count = rows->performers.count, next = 0;
    bk_cast_performer *built = bk_arena_clear(rows->arena, count, sizeof *built);
    bk_id_index *contacts = bk_id_index_of(rows->contacts.items, rows->contacts.count, sizeof(bk_private));
    for (size_t i = 0; i < count; i++) {
        bk_cast_performer *performer = &built[i];
        size_t first = next;
        performer->record = &records[i];
        performer->plays = played_by(rows, records[i].id, &performer->play_count);
        performer->covers = covered_by(rows, records[i].id, &performer->cover_count);
        performer->has_contact = bk_id_index_find(contacts, records[i].id) != NULL;
        performer->newest = BK_NO_DAY;
        performer->doubts = rows->values ? 0 : BK_NOT_KNOWN;
        while (next < rows->sheets.count && sheets[next].performer_id == records[i].id) {
            next++;
        }
        performer->sheet_count = next - first;
        if (performer->sheet_count) {
            put_sheets(rows, cast, today, performer, &sheets[first]);
        }
    }
    bk_id_index_free(contacts);
    cast->performers = built;
    cast->performer_count = count;
}

bk_status bk_cast_read(bk_store *store, int64_t production, bk_day today, bk_arena *arena, bk_cast *cast,
                       bk_error *error)
{
    cast_rows rows = {.values = bk_store_sees_measures(store), .arena = arena};
    *cast = (bk_cast){0};
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    status = read_rows(store, production, &cast->production, &rows, error);
    bk_store_read_end(store);
    if (!status) {
        build_roles(&rows, cast);
        build_performers(&rows, today, cast);
    }
    return status;
}
