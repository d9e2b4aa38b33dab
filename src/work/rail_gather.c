#include "bodkin/work/rail_gather.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/rail_rows.h"
#include "bodkin/trade/words.h"

// ------------------------------------------------------------------------------------------------- reading

/// Which rows are read, by what, and where they go.
static const struct read_of {
    bk_family family;
    bool by_production;
    size_t offset;
} reads[] = {
    {BK_DATES, true, offsetof(bk_gathered, dates)},
    {BK_PEOPLE, false, offsetof(bk_gathered, people)},
    {BK_AWAYS, false, offsetof(bk_gathered, aways)},
    {BK_COMPANY_PERFORMERS, true, offsetof(bk_gathered, performers)},
    {BK_ROLES, true, offsetof(bk_gathered, roles)},
    {BK_COSTUMES, true, offsetof(bk_gathered, costumes)},
    {BK_PIECES, true, offsetof(bk_gathered, pieces)},
    {BK_PIECE_COSTUMES, true, offsetof(bk_gathered, piece_costumes)},
    {BK_STEPS, true, offsetof(bk_gathered, steps)},
    {BK_STEP_AFTERS, true, offsetof(bk_gathered, afters)},
    {BK_NEEDS, true, offsetof(bk_gathered, needs)},
    {BK_FITTINGS, true, offsetof(bk_gathered, fittings)},
};

static bk_status read_families(bk_store *store, bk_gathered *gathered, bk_error *error)
{
    for (size_t i = 0; i < sizeof reads / sizeof *reads; i++) {
        bk_rows *rows = (bk_rows *)(void *)((char *)gathered + reads[i].offset);
        int64_t key = reads[i].by_production ? gathered->production.id : 0;
        bk_status status = bk_store_read(store, reads[i].family, key, gathered->arena, rows, error);
        if (status) {
            return status;
        }
    }
    return BK_OK;
}

static bk_status read_production(bk_store *store, int64_t id, bk_gathered *gathered, bk_error *error)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(store, BK_PRODUCTIONS, 0, gathered->arena, &rows, error);
    if (status) {
        return status;
    }
    const bk_production *productions = rows.items;
    for (size_t i = 0; i < rows.count; i++) {
        if (productions[i].id == id) {
            gathered->production = productions[i];
            return BK_OK;
        }
    }
    return bk_fail(error, BK_REFUSED, "This production is no longer in the workroom; choose another.");
}

// ------------------------------------------------------------------------------------------- ids to indices

size_t bk_gathered_index(const bk_id_index *table, int64_t id)
{
    const long long *found = id ? bk_id_index_find(table, id) : NULL;
    return found ? (size_t)*found : BK_NO_INDEX;
}

#define INDEX(rows, record) bk_id_index_of((rows).items, (rows).count, sizeof(record))

static void index_all(bk_gathered *gathered)
{
    gathered->performer_at = INDEX(gathered->performers, bk_performer);
    gathered->role_at = INDEX(gathered->roles, bk_role);
    gathered->costume_at = INDEX(gathered->costumes, bk_costume);
    gathered->piece_at = INDEX(gathered->pieces, bk_piece);
    gathered->step_at = INDEX(gathered->steps, bk_step);
    gathered->material_at = INDEX(gathered->materials, bk_material);
}

/// Pairs (group, member) by index, gathered into one list of members for each group, in the order of the pairs.
typedef struct pair_list {
    size_t *group;
    size_t *member;
    size_t count;
} pair_list;

static pair_list pairs_new(bk_arena *arena, size_t room)
{
    return (pair_list){bk_arena_clear(arena, room, sizeof(size_t)),
                       bk_arena_clear(arena, room, sizeof(size_t)), 0};
}

static void pairs_add(pair_list *pairs, size_t group, size_t member)
{
    if (group != BK_NO_INDEX && member != BK_NO_INDEX) {
        pairs->group[pairs->count] = group;
        pairs->member[pairs->count++] = member;
    }
}

static bk_indices *pairs_grouped(bk_arena *arena, const pair_list *pairs, size_t groups)
{
    bk_indices *lists = bk_arena_clear(arena, groups, sizeof *lists);
    size_t *members = bk_arena_clear(arena, pairs->count, sizeof *members);
    size_t *filled = bk_arena_clear(arena, groups, sizeof *filled);
    for (size_t i = 0; i < pairs->count; i++) {
        lists[pairs->group[i]].count++;
    }
    size_t start = 0;
    for (size_t group = 0; group < groups; group++) {
        lists[group].items = members + start;
        filled[group] = start;
        start += lists[group].count;
    }
    for (size_t i = 0; i < pairs->count; i++) {
        members[filled[pairs->group[i]]++] = pairs->member[i];
    }
    return lists;
}

static bk_indices *links_grouped(bk_arena *arena, const bk_rows *links, const bk_id_index *from_at,
                                 const bk_id_index *to_at, size_t groups, bool by_to)
{
    const bk_link *items = links->items;
    pair_list both = pairs_new(arena, links->count);
    for (size_t i = 0; i < links->count; i++) {
        size_t from = bk_gathered_index(from_at, items[i].from_id);
        size_t to = bk_gathered_index(to_at, items[i].to_id);
        if (by_to) {
            pairs_add(&both, to, from);
        } else {
            pairs_add(&both, from, to);
        }
    }
    return pairs_grouped(arena, &both, groups);
}

// --------------------------------------------------------------------------------- rows for the reckoning

static bk_day usual_due(const bk_gathered *gathered)
{
    bk_day due = gathered->production.opens;
    const bk_date *dates = gathered->dates.items;
    for (size_t i = 0; i < gathered->dates.count; i++) {
        if ((dates[i].what == BK_ON_PARADE || dates[i].what == BK_ON_DRESS) && dates[i].on < due) {
            due = dates[i].on;
        }
    }
    return due;
}

static void build_performers(bk_gathered *gathered)
{
    const bk_performer *performers = gathered->performers.items;
    size_t count = gathered->performers.count;
    int64_t usual = gathered->production.measures_good_for;
    bk_wait_performer *built = bk_arena_clear(gathered->arena, count, sizeof *built);
    for (size_t i = 0; i < count; i++) {
        int64_t own = performers[i].measures_good_for;
        built[i].newest_sheet = BK_NO_DAY;
        built[i].measures_good_for =
            own != BK_NOT_KNOWN ? own : (usual != BK_NOT_KNOWN ? usual : BK_USUAL_GOOD_FOR);
    }
    const bk_sheet_day *sheets = gathered->sheets.items;
    for (size_t i = 0; i < gathered->sheets.count; i++) {
        size_t at = bk_gathered_index(gathered->performer_at, sheets[i].performer_id);
        if (at != BK_NO_INDEX) {
            built[at].newest_sheet = sheets[i].taken_on;
        }
    }
    gathered->wait_performers = built;
}

static void build_costumes(bk_gathered *gathered)
{
    const bk_costume *costumes = gathered->costumes.items;
    const bk_role *roles = gathered->roles.items;
    size_t count = gathered->costumes.count;
    bk_indices *pieces = links_grouped(gathered->arena, &gathered->piece_costumes, gathered->piece_at,
                                       gathered->costume_at, count, true);
    bk_wait_costume *built = bk_arena_clear(gathered->arena, count, sizeof *built);
    for (size_t i = 0; i < count; i++) {
        size_t role = bk_gathered_index(gathered->role_at, costumes[i].role_id);
        built[i].number = costumes[i].number;
        built[i].performer = role == BK_NO_INDEX
                                 ? BK_NO_INDEX
                                 : bk_gathered_index(gathered->performer_at, roles[role].performer_id);
        built[i].due = costumes[i].due != BK_NO_DAY ? costumes[i].due : gathered->usual_due;
        built[i].pieces = pieces[i];
    }
    gathered->wait_costumes = built;
}

static void build_pieces(bk_gathered *gathered)
{
    const bk_piece *pieces = gathered->pieces.items;
    const bk_step *steps = gathered->steps.items;
    size_t count = gathered->pieces.count;
    pair_list of_piece = pairs_new(gathered->arena, gathered->steps.count);
    for (size_t i = 0; i < gathered->steps.count; i++) {
        pairs_add(&of_piece, bk_gathered_index(gathered->piece_at, steps[i].piece_id), i);
    }
    bk_indices *piece_steps = pairs_grouped(gathered->arena, &of_piece, count);
    bk_indices *costumes = links_grouped(gathered->arena, &gathered->piece_costumes, gathered->piece_at,
                                         gathered->costume_at, count, false);
    bk_wait_piece *built = bk_arena_clear(gathered->arena, count, sizeof *built);
    for (size_t i = 0; i < count; i++) {
        built[i].name = pieces[i].name;
        built[i].origin = pieces[i].origin;
        built[i].out = pieces[i].out_with != NULL;
        built[i].back_by = pieces[i].back_by;
        built[i].costumes = costumes[i];
        built[i].steps = piece_steps[i];
    }
    gathered->wait_pieces = built;
}

static void build_steps(bk_gathered *gathered)
{
    const bk_step *steps = gathered->steps.items;
    size_t count = gathered->steps.count;
    bk_indices *afters =
        links_grouped(gathered->arena, &gathered->afters, gathered->step_at, gathered->step_at, count, false);
    bk_wait_step *built = bk_arena_clear(gathered->arena, count, sizeof *built);
    for (size_t i = 0; i < count; i++) {
        built[i].key = steps[i].key;
        built[i].piece = bk_gathered_index(gathered->piece_at, steps[i].piece_id);
        built[i].kind = steps[i].kind;
        built[i].minutes = steps[i].minutes;
        built[i].done = steps[i].done_on != BK_NO_DAY;
        built[i].can_wait = steps[i].can_wait != 0;
        built[i].after = afters[i];
        built[i].lists_measures = steps[i].measures != NULL;
    }
    gathered->wait_steps = built;
}

/// Whether every step is of a piece of this production. A store that was written by other hands may have others.
static bk_status check_pieces(const bk_gathered *gathered, bk_error *error)
{
    const bk_step *steps = gathered->steps.items;
    for (size_t i = 0; i < gathered->steps.count; i++) {
        if (bk_gathered_index(gathered->piece_at, steps[i].piece_id) == BK_NO_INDEX) {
            return bk_fail(error, BK_STORE,
                           "The workroom is damaged (the step number %lld is of a piece of another "
                           "production); see what is wrong with: bodkin check",
                           (long long)steps[i].id);
        }
    }
    return BK_OK;
}

/// What the fittings say of steps and pieces: the newest of each step is the latest booked, the later row at a tie.
static void apply_fittings(bk_gathered *gathered)
{
    const bk_fitting *fittings = gathered->fittings.items;
    const bk_fitting **newest = bk_arena_clear(gathered->arena, gathered->steps.count, sizeof *newest);
    const bk_fitting **fits = bk_arena_clear(gathered->arena, gathered->steps.count, sizeof *fits);
    for (size_t i = 0; i < gathered->fittings.count; i++) {
        size_t at = bk_gathered_index(gathered->step_at, fittings[i].step_id);
        if (at == BK_NO_INDEX) {
            continue;
        }
        bk_wait_step *step = &gathered->wait_steps[at];
        if (fittings[i].outcome == BK_FITS) {
            step->done = true;
            fits[at] = &fittings[i];
        }
        if (fittings[i].held_on != BK_NO_DAY) {
            gathered->wait_pieces[step->piece].fitting_held = true;
        }
        if (!step->fitted || bk_moment_order(fittings[i].booked_at, newest[at]->booked_at) >= 0) {
            newest[at] = &fittings[i];
            step->fitted = true;
            step->fitting_day = fittings[i].booked_at.day;
            step->fitting_outcome = fittings[i].outcome;
        }
    }
    gathered->newest = newest;
    gathered->fits = fits;
}

unsigned bk_skills_of(const char *list)
{
    unsigned skills = 0;
    const char *rest = list ? list : "";
    const char *item;
    size_t length;
    while (bk_list_item(&rest, &item, &length)) {
        for (int kind = 0; kind < BK_KINDS; kind++) {
            const char *word = bk_word_text(&bk_kind_words, kind);
            if (strlen(word) == length && !memcmp(word, item, length)) {
                skills |= 1U << kind;
            }
        }
    }
    return skills;
}

/// The days of absence in one array, those of a person one behind the other, and hangs them on the people.
static void hang_absences(bk_gathered *gathered, bk_wait_person *built)
{
    const bk_away *aways = gathered->aways.items;
    size_t people = gathered->people.count;
    bk_id_index *person_at = INDEX(gathered->people, bk_person);
    pair_list both = pairs_new(gathered->arena, gathered->aways.count);
    for (size_t i = 0; i < gathered->aways.count; i++) {
        pairs_add(&both, bk_gathered_index(person_at, aways[i].person_id), i);
    }
    bk_id_index_free(person_at);
    bk_indices *of_person = pairs_grouped(gathered->arena, &both, people);
    bk_day(*days)[2] = bk_arena_clear(gathered->arena, both.count, sizeof *days);
    for (size_t person = 0; person < people; person++) {
        built[person].away = (const bk_day(*)[2])days;
        built[person].away_count = of_person[person].count;
        for (size_t i = 0; i < of_person[person].count; i++, days++) {
            const bk_away *away = &aways[of_person[person].items[i]];
            (*days)[0] = away->from;
            (*days)[1] = away->to;
        }
    }
}

static void build_people(bk_gathered *gathered)
{
    const bk_person *people = gathered->people.items;
    size_t count = gathered->people.count;
    bk_wait_person *built = bk_arena_clear(gathered->arena, count, sizeof *built);
    for (size_t i = 0; i < count; i++) {
        bk_stretch stretches[BK_STRETCHES];
        built[i].skills = bk_skills_of(people[i].skills);
        for (int day = 0; day < BK_WEEKDAYS; day++) {
            built[i].works_on[day] =
                people[i].hours[day] && bk_hours_read(people[i].hours[day], stretches) > 0;
        }
        built[i].from = people[i].from;
        built[i].until = people[i].until;
    }
    hang_absences(gathered, built);
    gathered->wait_people = built;
}

// --------------------------------------------------------------------------------------------------- public

bk_status bk_gather_rows(bk_store *store, int64_t production, bk_gathered *gathered, bk_error *error)
{
    bk_status status = read_production(store, production, gathered, error);
    if (!status) {
        status = read_families(store, gathered, error);
    }
    if (!status) {
        status = bk_store_shelf(store, production, gathered->arena, &gathered->materials, &gathered->orders,
                                error);
    }
    if (!status) {
        status = bk_store_newest_sheets(store, production, gathered->arena, &gathered->sheets, error);
    }
    if (status) {
        return status;
    }
    index_all(gathered);
    status = check_pieces(gathered, error);
    if (status) {
        return status;
    }
    gathered->usual_due = usual_due(gathered);
    build_performers(gathered);
    build_costumes(gathered);
    build_pieces(gathered);
    build_steps(gathered);
    apply_fittings(gathered);
    build_people(gathered);
    return BK_OK;
}

void bk_gathered_free(bk_gathered *gathered)
{
    bk_id_index *const tables[] = {gathered->performer_at, gathered->role_at, gathered->costume_at,
                                   gathered->piece_at,     gathered->step_at, gathered->material_at};
    for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
        bk_id_index_free(tables[i]);
    }
}

bk_wait_rows bk_gathered_rows(const bk_gathered *gathered)
{
    return (bk_wait_rows){
        .today = gathered->today,
        .performers = gathered->wait_performers,
        .performer_count = gathered->performers.count,
        .costumes = gathered->wait_costumes,
        .costume_count = gathered->costumes.count,
        .pieces = gathered->wait_pieces,
        .piece_count = gathered->pieces.count,
        .steps = gathered->wait_steps,
        .step_count = gathered->steps.count,
        .people = gathered->wait_people,
        .person_count = gathered->people.count,
    };
}
