#include "bodkin/work/finder.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/trade/words.h"

/// Something to find with its texts folded: `name` and, behind a line end, what it tells.
typedef struct findable {
    bk_found found;
    const char *folded;
    size_t name_length;
} findable;

struct bk_finder {
    bk_arena *arena;
    BK_LIST(findable) items;
};

// -------------------------------------------------------------------------------------------------- gathering

/// Rows of the production and what leads from one to another while they are gathered.
typedef struct gathering {
    bk_finder *finder;
    bk_store *store;
    int64_t production;
    bk_rows rows[BK_FAMILIES];
    const char **piece_costumes; ///< for each piece its first costume's number, or NULL
    bk_error *error;
} gathering;

static const bk_family gathered[] = {BK_COMPANY_PERFORMERS, BK_ROLES, BK_COSTUMES,  BK_PIECES,
                                     BK_PIECE_COSTUMES,     BK_STEPS, BK_MATERIALS, BK_NOTES};

enum { GATHERED = sizeof gathered / sizeof gathered[0] };

static bk_status read_rows(gathering *all)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < GATHERED; i++) {
        bk_family family = gathered[i];
        int64_t key = family == BK_MATERIALS ? 0 : all->production;
        status = bk_store_read(all->store, family, key, all->finder->arena, &all->rows[family], all->error);
    }
    return status;
}

static void add(gathering *all, bk_found found)
{
    bk_arena *arena = all->finder->arena;
    const char *text = bk_arena_print(arena, "%s\n%s", found.name, found.tells ? found.tells : "");
    findable item = {.found = found, .folded = bk_text_fold(arena, text)};
    item.name_length = strcspn(item.folded, "\n");
    bk_list_add(&all->finder->items, item);
}

static const char *both(const gathering *all, const char *first, const char *second)
{
    if (!first || !second) {
        return first ? first : second;
    }
    return bk_arena_print(all->finder->arena, "%s; %s", first, second);
}

static void add_cast(gathering *all)
{
    const bk_performer *performers = all->rows[BK_COMPANY_PERFORMERS].items;
    const bk_role *roles = all->rows[BK_ROLES].items;
    for (size_t i = 0; i < all->rows[BK_COMPANY_PERFORMERS].count; i++) {
        const bk_performer *performer = &performers[i];
        add(all, (bk_found){BK_PERFORMERS, performer->id, performer->name, performer->note, NULL});
    }
    bk_id_index *places =
        bk_id_index_of(performers, all->rows[BK_COMPANY_PERFORMERS].count, sizeof *performers);
    for (size_t i = 0; i < all->rows[BK_ROLES].count; i++) {
        const long long *at = bk_id_index_find(places, roles[i].performer_id);
        const char *played =
            at ? bk_arena_print(all->finder->arena, "played by %s", performers[*at].name) : "not cast";
        add(all, (bk_found){BK_ROLES, roles[i].id, roles[i].name, both(all, played, roles[i].note), NULL});
    }
    bk_id_index_free(places);
}

static void add_costumes(gathering *all)
{
    const bk_costume *costumes = all->rows[BK_COSTUMES].items;
    const bk_role *roles = all->rows[BK_ROLES].items;
    bk_id_index *places = bk_id_index_of(roles, all->rows[BK_ROLES].count, sizeof *roles);
    for (size_t i = 0; i < all->rows[BK_COSTUMES].count; i++) {
        const bk_costume *costume = &costumes[i];
        const long long *at = bk_id_index_find(places, costume->role_id);
        const char *tells = both(all, costume->title, at ? roles[*at].name : NULL);
        add(all, (bk_found){BK_COSTUMES, costume->id, costume->number, both(all, tells, costume->note),
                            costume->number});
    }
    bk_id_index_free(places);
}

static void find_piece_costumes(gathering *all)
{
    const bk_link *links = all->rows[BK_PIECE_COSTUMES].items;
    const bk_piece *pieces = all->rows[BK_PIECES].items;
    const bk_costume *costumes = all->rows[BK_COSTUMES].items;
    bk_id_index *piece_places = bk_id_index_of(pieces, all->rows[BK_PIECES].count, sizeof *pieces);
    bk_id_index *costume_places = bk_id_index_of(costumes, all->rows[BK_COSTUMES].count, sizeof *costumes);
    all->piece_costumes =
        bk_arena_clear(all->finder->arena, all->rows[BK_PIECES].count, sizeof *all->piece_costumes);
    for (size_t i = 0; i < all->rows[BK_PIECE_COSTUMES].count; i++) {
        const long long *piece = bk_id_index_find(piece_places, links[i].from_id);
        const long long *costume = bk_id_index_find(costume_places, links[i].to_id);
        if (piece && costume && !all->piece_costumes[*piece]) {
            all->piece_costumes[*piece] = costumes[*costume].number;
        }
    }
    bk_id_index_free(costume_places);
    bk_id_index_free(piece_places);
}

static void add_pieces(gathering *all)
{
    const bk_piece *pieces = all->rows[BK_PIECES].items;
    for (size_t i = 0; i < all->rows[BK_PIECES].count; i++) {
        const char *where = both(all, pieces[i].place, pieces[i].out_with);
        const char *tells = both(all, pieces[i].title, where);
        add(all, (bk_found){BK_PIECES, pieces[i].id, pieces[i].name, both(all, tells, pieces[i].note),
                            all->piece_costumes[i]});
    }
}

static void add_steps(gathering *all)
{
    const bk_piece *pieces = all->rows[BK_PIECES].items;
    const bk_step *steps = all->rows[BK_STEPS].items;
    bk_id_index *places = bk_id_index_of(pieces, all->rows[BK_PIECES].count, sizeof *pieces);
    for (size_t i = 0; i < all->rows[BK_STEPS].count; i++) {
        const long long *at = bk_id_index_find(places, steps[i].piece_id);
        if (!at) {
            continue;
        }
        const char *name = bk_arena_print(all->finder->arena, "%s/%s", pieces[*at].name, steps[i].key);
        add(all, (bk_found){BK_STEPS, steps[i].id, name, both(all, steps[i].title, steps[i].note),
                            all->piece_costumes[*at]});
    }
    bk_id_index_free(places);
}

static void add_rest(gathering *all)
{
    const bk_material *materials = all->rows[BK_MATERIALS].items;
    const bk_note *notes = all->rows[BK_NOTES].items;
    for (size_t i = 0; i < all->rows[BK_MATERIALS].count; i++) {
        const bk_material *material = &materials[i];
        add(all, (bk_found){BK_MATERIALS, material->id, material->name,
                            both(all, material->supplier, material->note), NULL});
    }
    for (size_t i = 0; i < all->rows[BK_NOTES].count; i++) {
        const char *from = bk_word_text(&bk_note_source_words, notes[i].source);
        add(all, (bk_found){BK_NOTES, notes[i].id, notes[i].what, both(all, from, notes[i].who), NULL});
    }
}

bk_status bk_finder_read(bk_store *store, int64_t production, bk_finder **finder, bk_error *error)
{
    bk_arena *arena = bk_arena_new();
    bk_finder *made = bk_arena_clear(arena, 1, sizeof *made);
    made->arena = arena;
    gathering all = {.finder = made, .store = store, .production = production, .error = error};
    bk_status status = bk_store_read_begin(store, error);
    if (!status) {
        status = read_rows(&all);
        bk_store_read_end(store);
    }
    if (status) {
        bk_finder_free(made);
        return status;
    }
    add_cast(&all);
    add_costumes(&all);
    find_piece_costumes(&all);
    add_pieces(&all);
    add_steps(&all);
    add_rest(&all);
    *finder = made;
    return BK_OK;
}

void bk_finder_free(bk_finder *finder)
{
    if (!finder) {
        return;
    }
    bk_list_free(&finder->items);
    bk_arena_free(finder->arena);
}

// --------------------------------------------------------------------------------------------------- finding

enum { MOST_WORDS = 64 };

/// What was typed, folded, whole and as words.
typedef struct asked {
    const char *whole;
    char *words[MOST_WORDS];
    size_t count;
} asked;

/// How good a match is; smaller is better.
enum { BEGINS_NAME, BEGINS_WORD, HAS_IT, NO_MATCH };

static bool begins_word(const char *text, const char *word)
{
    for (const char *at = strstr(text, word); at; at = strstr(at + 1, word)) {
        if (at == text || strchr(" \n-/;,.'(", at[-1])) {
            return true;
        }
    }
    return false;
}

static int rank_of(const findable *item, const asked *what)
{
    int rank = BEGINS_WORD;
    for (size_t i = 0; i < what->count; i++) {
        if (!strstr(item->folded, what->words[i])) {
            return NO_MATCH;
        }
        if (!begins_word(item->folded, what->words[i])) {
            rank = HAS_IT;
        }
    }
    size_t length = strlen(what->whole);
    bool begins = length <= item->name_length && memcmp(item->folded, what->whole, length) == 0;
    return begins ? BEGINS_NAME : rank;
}

/// A match on its way into order.
typedef struct match {
    int rank;
    const bk_found *found;
} match;

static int match_order(const void *left, const void *right)
{
    const match *a = left;
    const match *b = right;
    if (a->rank != b->rank) {
        return a->rank - b->rank;
    }
    if (a->found->family != b->found->family) {
        return a->found->family < b->found->family ? -1 : 1;
    }
    int order = bk_natural_order(a->found->name, b->found->name);
    if (order) {
        return order;
    }
    return (a->found->id > b->found->id) - (a->found->id < b->found->id);
}

/// Takes `text` apart at its spaces; it must be writable.
static void take_apart(asked *what, char *text)
{
    char *rest = NULL;
    for (char *word = strtok_r(text, " ", &rest); word && what->count < MOST_WORDS;
         word = strtok_r(NULL, " ", &rest)) {
        what->words[what->count++] = word;
    }
}

size_t bk_finder_find(const bk_finder *finder, const char *typed, bk_found *found, size_t room)
{
    bk_arena *arena = bk_arena_new();
    asked what = {.whole = bk_text_fold(arena, typed)};
    take_apart(&what, bk_text_fold(arena, typed));
    BK_LIST(match) matches = {0};
    for (size_t i = 0; what.count > 0 && i < finder->items.count; i++) {
        int rank = rank_of(&finder->items.items[i], &what);
        if (rank != NO_MATCH) {
            bk_list_add(&matches, ((match){rank, &finder->items.items[i].found}));
        }
    }
    if (matches.count > 0) {
        qsort(matches.items, matches.count, sizeof *matches.items, match_order);
    }
    for (size_t i = 0; i < matches.count && i < room; i++) {
        found[i] = *matches.items[i].found;
    }
    size_t count = matches.count;
    bk_list_free(&matches);
    bk_arena_free(arena);
    return count;
}
