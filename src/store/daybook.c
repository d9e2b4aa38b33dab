#include <assert.h>
#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/store/inside.h"

enum { PART_SIZE = 1024 * 1024 }; // bytes of a changeset in one row

// All tables but the daybook itself, each before those that it refers to: taking an import back then never
// leaves a row whose reference SQLite would have to look for in a table without an index for it (measure).
static const char *const recorded[] = {
    "measure",
    "measure_sheet",
    "measure_name",
    "away",
    "fitting",
    "need",
    "movement",
    "note",
    "running",
    "step_after",
    "step",
    "piece_costume",
    "piece_cost",
    "piece",
    "costume",
    "role_cover",
    "role",
    "show_date",
    "company",
    "production",
    "purchase_cost",
    "purchase",
    "material_price",
    "material",
    "person",
    "equipment",
    "performer_contact",
    "performer",
    "work_step",
    "work",
    "setting",
    NULL,
};

static bk_status refuse_newer(bk_store *store, bk_error *error)
{
    int64_t version = 0;
    bk_status status = bk_db_number(store->db, BK_SQL_GET_SCHEMA_VERSION, &version, error);
    if (status == BK_OK && version != bk_migration_count)
        status = bk_fail(
            error, BK_STORE,
            "The workroom %s has been brought to a newer version meanwhile: leave Bodkin and start the "
            "newer one.",
            store->path);
    return status;
}

bk_status bk_store_change_begin(bk_store *store, bk_error *error)
{
    assert(!store->changing);
    if (!bk_rights_allow(store->as, BK_DOING_INSERT, "daybook", NULL))
        return bk_fail(error, BK_REFUSED, "Only the maker changes the workroom: nothing was changed.");
    bk_status status = bk_db_run(store->db, BK_SQL_BEGIN_WRITING, error);
    if (status != BK_OK)
        return status;
    store->changing = true;
    status = refuse_newer(store, error);
    if (status == BK_OK)
        status = bk_db_record(store->db, recorded, error);
    if (status != BK_OK)
        bk_store_change_drop(store);
    return status;
}

void bk_store_change_drop(bk_store *store)
{
    if (!store->changing)
        return;
    bk_db_record_end(store->db);
    bk_db_roll_back(store->db);
    store->changing = false;
}

// -------------------------------------------------------------------------------------------------- writing

static bk_status add_entry(bk_store *store, const char *made_at, const char *sentence, int64_t *entry,
                           bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_ADD_ENTRY, error);
    if (status != BK_OK)
        return status;
    bk_query_give_text(query, 1, made_at);
    bk_query_give_text(query, 2, store->who);
    bk_query_give_text(query, 3, store->terminal);
    bk_query_give_text(query, 4, sentence);
    status = bk_query_run(query, error);
    bk_query_end(query);
    *entry = bk_db_added(store->db);
    return status;
}

// A changeset on its way into the daybook.
typedef struct binding {
    bk_store *store;
    int64_t entry, parts;
    bk_buffer part;
} binding;

static bk_status write_part(binding *binder, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, binder->store->db, BK_SQL_ADD_PART, error);
    if (status != BK_OK)
        return status;
    bk_query_give(query, 1, binder->entry);
    bk_query_give(query, 2, ++binder->parts);
    bk_query_give_bytes(query, 3, binder->part.bytes, binder->part.length);
    status = bk_query_run(query, error);
    bk_query_end(query);
    binder->part.length = 0;
    return status;
}

static bk_status bind_bytes(void *context, const void *bytes, size_t size, bk_error *error)
{
    binding *binder = context;
    bk_buffer_add(&binder->part, bytes, size);
    return binder->part.length < PART_SIZE ? BK_OK : write_part(binder, error);
}

static bk_status write_changeset(bk_store *store, int64_t entry, bk_error *error)
{
    binding binder = {.store = store, .entry = entry};
    bk_status status = bk_db_changeset(store->db, bind_bytes, &binder, error);
    if (status == BK_OK && binder.part.length > 0)
        status = write_part(&binder, error);
    bk_buffer_free(&binder.part);
    return status;
}

bk_status bk_store_entry_write(bk_store *store, const char *made_at, const char *sentence, int64_t *entry,
                               bk_error *error)
{
    assert(store->changing);
    bk_status status = add_entry(store, made_at, sentence, entry, error);
    if (status == BK_OK)
        status = write_changeset(store, *entry, error);
    return status;
}

bk_status bk_store_entry_commit(bk_store *store, bk_error *error)
{
    bk_db_record_end(store->db);
    bk_status status = bk_db_commit(store->db, error);
    store->changing = status != BK_OK;
    return status;
}

bk_status bk_store_change_commit(bk_store *store, const char *made_at, const char *sentence, int64_t *entry,
                                 bk_error *error)
{
    int64_t id = 0;
    bk_status status = bk_store_entry_write(store, made_at, sentence, &id, error);
    if (status == BK_OK)
        status = bk_store_entry_commit(store, error);
    if (status != BK_OK) {
        bk_store_change_drop(store);
        return status;
    }
    if (entry != NULL)
        *entry = id;
    return BK_OK;
}

// --------------------------------------------------------------------------------------------- turning back

static bk_status may_turn_back(bk_store *store, int64_t entry, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_READ_ENTRY_UNDO, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    bool ended = false;
    bk_query_give(query, 1, entry);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        ended = bk_query_number(query, 0, 0) != 0;
    bk_query_end(query);
    if (status == BK_OK && !row)
        status = bk_fail(error, BK_REFUSED, "There is no such entry in the daybook: nothing was changed.");
    if (status == BK_OK && ended)
        status = bk_fail(
            error, BK_REFUSED,
            "That was done before the workroom was brought to a newer version and can no longer be turned "
            "back: nothing was changed.");
    return status;
}

static bk_status next_part(void *context, const void **bytes, size_t *size, bk_error *error)
{
    bk_query *query = context;
    bool row = false;
    *size = 0;
    bk_status status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *bytes = bk_query_bytes(query, 0, size);
    return status;
}

// Applies the entry the other way round, but for the table `left`.
static bk_status apply(bk_store *store, int64_t entry, const char *left, bool *conflict, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_READ_PARTS, error);
    if (status != BK_OK)
        return status;
    bk_query_give(query, 1, entry);
    status = bk_db_turn_back(store->db, next_part, query, left, conflict, error);
    bk_query_end(query);
    return status;
}

// Names of measures come with the first sheet that has them and stay as long as any has: where that cannot be turned
// back with them, it is without.
bk_status bk_store_turn_back(bk_store *store, int64_t entry, bk_error *error)
{
    assert(store->changing);
    bool conflict = false;
    bk_status status = may_turn_back(store, entry, error);
    if (status == BK_OK)
        status = apply(store, entry, NULL, &conflict, error);
    if (status == BK_OK && conflict)
        status = apply(store, entry, "measure_name", &conflict, error);
    if (status == BK_OK && conflict)
        status = bk_fail(
            error, BK_REFUSED,
            "That cannot be turned back: something it touched has been changed since. Turn back the later "
            "change first. Nothing was changed.");
    return status;
}
