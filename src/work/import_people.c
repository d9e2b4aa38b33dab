#include <stddef.h>

#include "bodkin/base/text.h"
#include "bodkin/work/import_match.h"
#include "bodkin/work/import_parts.h"

static const bk_merge_field performer_fields[] = {
    {"measures_good_for", BK_MERGE_NUMBER, offsetof(bk_performer, measures_good_for), false},
    {"note", BK_MERGE_TEXT, offsetof(bk_performer, note), false},
};

static const bk_merge_field person_fields[] = {
    {"skills", BK_MERGE_TEXT, offsetof(bk_person, skills), false},
    {"mon", BK_MERGE_TEXT, offsetof(bk_person, hours[0]), false},
    {"tue", BK_MERGE_TEXT, offsetof(bk_person, hours[1]), false},
    {"wed", BK_MERGE_TEXT, offsetof(bk_person, hours[2]), false},
    {"thu", BK_MERGE_TEXT, offsetof(bk_person, hours[3]), false},
    {"fri", BK_MERGE_TEXT, offsetof(bk_person, hours[4]), false},
    {"sat", BK_MERGE_TEXT, offsetof(bk_person, hours[5]), false},
    {"sun", BK_MERGE_TEXT, offsetof(bk_person, hours[6]), false},
    {"from", BK_MERGE_DAY, offsetof(bk_person, from), false},
    {"until", BK_MERGE_DAY, offsetof(bk_person, until), false},
    {"note", BK_MERGE_TEXT, offsetof(bk_person, note), false},
};

static const bk_merge_field away_fields[] = {
    {"reason", BK_MERGE_TEXT, offsetof(bk_away, reason), false},
};

#define FIELDS(table) table, sizeof(table) / sizeof *(table)

// ---------------------------------------------------------------------------------------------- performers

static bk_status one_performer(bk_importing *importing, const bk_performer *row, bk_performer *known,
                               const bk_private *contact)
{
    int64_t id = known ? known->id : 0;
    bk_status status = BK_OK;
    const char *what = bk_arena_print(importing->arena, "performers.csv: %s", row->name);
    if (!known) {
        status = bk_import_add(importing, BK_PERFORMERS, row, 0, &id);
        bk_index_put(importing->performers, row->name, id);
    } else if (bk_merge(FIELDS(performer_fields), row, known, what, &importing->notes)) {
        status = bk_store_put(importing->store, BK_PERFORMERS, known, importing->error);
    }
    if (status) {
        return status;
    }
    bk_private private = {id, row->contact, BK_NO_AMOUNT, NULL};
    return bk_import_private(importing, BK_CONTACTS, &private, contact, what, "contact");
}

static bk_status import_performers(bk_importing *importing)
{
    bk_rows known = {0};
    bk_rows contacts = {0};
    bk_status status =
        bk_store_read(importing->store, BK_PERFORMERS, 0, importing->arena, &known, importing->error);
    if (!status) {
        status =
            bk_store_read(importing->store, BK_CONTACTS, 0, importing->arena, &contacts, importing->error);
    }
    if (status) {
        return status;
    }
    bk_performer *performers = known.items;
    bk_index *at = bk_index_new();
    bk_id_index *contact_at = bk_id_index_of(contacts.items, contacts.count, sizeof(bk_private));
    for (size_t i = 0; i < known.count; i++) {
        bk_index_put(at, performers[i].name, (long long)i);
        bk_index_put(importing->performers, performers[i].name, performers[i].id);
    }
    for (size_t i = 0; !status && i < importing->folder->performers.count; i++) {
        const bk_performer *row = &importing->folder->performers.items[i];
        const long long *found = bk_index_find(at, row->name);
        bk_performer *mine = found ? &performers[*found] : NULL;
        status = one_performer(importing, row, mine,
                               mine ? bk_import_private_of(contact_at, &contacts, mine->id) : NULL);
        if (!status) {
            status = bk_import_row(importing, "performers.csv", i);
        }
    }
    bk_index_free(at);
    bk_id_index_free(contact_at);
    return status ? status : bk_import_told(importing, "performers.csv", importing->folder->performers.count);
}

// -------------------------------------------------------------------------------------------------- people

static bk_status one_person(bk_importing *importing, const bk_person *row, bk_person *known)
{
    if (!known) {
        int64_t id = 0;
        bk_status status = bk_import_add(importing, BK_PEOPLE, row, 0, &id);
        bk_index_put(importing->people, row->name, id);
        return status;
    }
    const char *what = bk_arena_print(importing->arena, "people.csv: %s", row->name);
    if (bk_merge(FIELDS(person_fields), row, known, what, &importing->notes)) {
        return bk_store_put(importing->store, BK_PEOPLE, known, importing->error);
    }
    return BK_OK;
}

static bk_status import_persons(bk_importing *importing)
{
    bk_rows known = {0};
    bk_status status =
        bk_store_read(importing->store, BK_PEOPLE, 0, importing->arena, &known, importing->error);
    if (status) {
        return status;
    }
    bk_person *people = known.items;
    bk_index *at = bk_index_new();
    for (size_t i = 0; i < known.count; i++) {
        bk_index_put(at, people[i].name, (long long)i);
        bk_index_put(importing->people, people[i].name, people[i].id);
    }
    for (size_t i = 0; !status && i < importing->folder->people.count; i++) {
        const bk_person *row = &importing->folder->people.items[i];
        const long long *found = bk_index_find(at, row->name);
        status = one_person(importing, row, found ? &people[*found] : NULL);
        if (!status) {
            status = bk_import_row(importing, "people.csv", i);
        }
    }
    bk_index_free(at);
    return status ? status : bk_import_told(importing, "people.csv", importing->folder->people.count);
}

// ------------------------------------------------------------------------------------------------ absences

/// An absence is known by who and its days.
static const char *away_key(bk_arena *arena, const bk_away *away)
{
    return bk_arena_print(arena, "%d %d %s", away->from, away->to, away->who ? away->who : "");
}

static bk_matches *match_aways(bk_arena *arena, const bk_rows *known)
{
    const bk_away *aways = known->items;
    bk_matches *matches = bk_matches_new(known->count);
    for (size_t i = known->count; i-- > 0;) {
        bk_matches_put(matches, away_key(arena, &aways[i]), i);
    }
    return matches;
}

/// Lets the absences that the workroom has reach those of their name who came later.
static bk_status link_known(bk_importing *importing, const bk_rows *known)
{
    bk_away *aways = known->items;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < known->count; i++) {
        int64_t person = aways[i].person_id ? 0 : bk_import_id(importing->people, aways[i].who);
        int64_t performer = aways[i].performer_id ? 0 : bk_import_id(importing->performers, aways[i].who);
        if (person || performer) {
            aways[i].person_id = person ? person : aways[i].person_id;
            aways[i].performer_id = performer ? performer : aways[i].performer_id;
            status = bk_store_put(importing->store, BK_AWAYS, &aways[i], importing->error);
        }
    }
    return status;
}

static bk_status one_away(bk_importing *importing, const bk_away *row, bk_away *known)
{
    bk_away away = *row;
    away.person_id = bk_import_id(importing->people, row->who);
    away.performer_id = bk_import_id(importing->performers, row->who);
    if (!known) {
        return bk_import_add(importing, BK_AWAYS, &away, 0, NULL);
    }
    const char *what = bk_arena_print(importing->arena, "away.csv: %s", row->who);
    bool changed = bk_merge(FIELDS(away_fields), row, known, what, &importing->notes);
    if (away.person_id != known->person_id || away.performer_id != known->performer_id) {
        known->person_id = away.person_id;
        known->performer_id = away.performer_id;
        changed = true;
    }
    return changed ? bk_store_put(importing->store, BK_AWAYS, known, importing->error) : BK_OK;
}

static bk_status import_aways(bk_importing *importing)
{
    bk_rows known = {0};
    bk_status status =
        bk_store_read(importing->store, BK_AWAYS, 0, importing->arena, &known, importing->error);
    if (!status) {
        status = link_known(importing, &known);
    }
    bk_matches *matches = match_aways(importing->arena, &known);
    for (size_t i = 0; !status && i < importing->folder->away.count; i++) {
        const bk_away *row = &importing->folder->away.items[i];
        long long match = bk_matches_take(matches, away_key(importing->arena, row));
        status = one_away(importing, row, match == BK_NO_MATCH ? NULL : (bk_away *)known.items + match);
        if (!status) {
            status = bk_import_row(importing, "away.csv", i);
        }
    }
    bk_matches_free(matches);
    return status ? status : bk_import_told(importing, "away.csv", importing->folder->away.count);
}

bk_status bk_import_people(bk_importing *importing)
{
    bk_status status = import_performers(importing);
    if (!status) {
        status = import_persons(importing);
    }
    return status ? status : import_aways(importing);
}
