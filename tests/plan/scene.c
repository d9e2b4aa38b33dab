#include "plan/scene.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "support/testing.h"

enum { USUAL_DUE = 20, USUAL_MINUTES = 60 };

static const char *const weekdays[] = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
static const bk_words weekday_words = {"weekday", weekdays, sizeof weekdays / sizeof weekdays[0]};

bk_day scene_today(void)
{
    return bk_day_of(2027, 3, 9);
}

// --------------------------------------------------------------------------------------------------- words of a clause

static const char *next_word(wait_scene *scene)
{
    return strtok_r(NULL, " ", &scene->rest);
}

static const char *wanted_word(wait_scene *scene)
{
    const char *word = next_word(scene);
    ck_assert_msg(word != NULL, "a word is missing");
    return word;
}

static bk_day day_of(const char *word)
{
    return strcmp(word, "never") == 0 ? BK_NO_DAY : scene_today() + (bk_day)strtol(word, NULL, 10);
}

static bk_day wanted_day(wait_scene *scene)
{
    return day_of(wanted_word(scene));
}

static int wanted_known(const bk_words *words, const char *word)
{
    int number = bk_word_find(words, word);
    ck_assert_msg(number != BK_NO_WORD, "%s is no %s", word, words->what);
    return number;
}

static void append(bk_indices *indices, size_t *room, size_t index)
{
    ck_assert_uint_lt(indices->count, SCENE_ROOM);
    room[indices->count++] = index;
    indices->items = room;
}

static size_t one_more(size_t *count)
{
    ck_assert_uint_lt(*count, SCENE_ROOM);
    return (*count)++;
}

// -------------------------------------------------------------------------------------------------------------- names

static size_t find_performer(const wait_scene *scene, const char *name)
{
    for (size_t i = 0; i < scene->rows.performer_count; i++)
        if (strcmp(scene->performer_names[i], name) == 0)
            return i;
    ck_assert_msg(strcmp(name, "nobody") == 0, "no performer %s", name);
    return BK_NO_INDEX;
}

static size_t find_costume(const wait_scene *scene, const char *number)
{
    for (size_t i = 0; i < scene->rows.costume_count; i++)
        if (strcmp(scene->costumes[i].number, number) == 0)
            return i;
    ck_abort_msg("no costume %s", number);
}

static size_t find_piece(const wait_scene *scene, const char *name, size_t length)
{
    for (size_t i = 0; i < scene->rows.piece_count; i++)
        if (strlen(scene->pieces[i].name) == length && strncmp(scene->pieces[i].name, name, length) == 0)
            return i;
    ck_abort_msg("no piece %s", name);
}

static size_t find_step(const wait_scene *scene, const char *name)
{
    const char *slash = strchr(name, '/');
    ck_assert_msg(slash != NULL, "%s names no step", name);
    size_t piece = find_piece(scene, name, (size_t)(slash - name));
    for (size_t i = 0; i < scene->rows.step_count; i++)
        if (scene->steps[i].piece == piece && strcmp(scene->steps[i].key, slash + 1) == 0)
            return i;
    ck_abort_msg("no step %s", name);
}

// ---------------------------------------------------------------------------------------- options, of the newest row

typedef void option_reader(wait_scene *scene, size_t row);

typedef struct option {
    const char *word;
    option_reader *read;
} option;

static void measured(wait_scene *scene, size_t row)
{
    scene->performers[row].newest_sheet = wanted_day(scene);
}

static void good(wait_scene *scene, size_t row)
{
    scene->performers[row].measures_good_for = strtol(wanted_word(scene), NULL, 10);
}

static void due(wait_scene *scene, size_t row)
{
    scene->costumes[row].due = wanted_day(scene);
}

static void out(wait_scene *scene, size_t row)
{
    scene->pieces[row].out = true;
}

static void back(wait_scene *scene, size_t row)
{
    scene->pieces[row].back_by = wanted_day(scene);
}

static void held(wait_scene *scene, size_t row)
{
    scene->pieces[row].fitting_held = true;
}

static void after(wait_scene *scene, size_t row)
{
    char *rest;
    for (char *name = strtok_r((char *)wanted_word(scene), ",", &rest); name;
         name = strtok_r(NULL, ",", &rest))
        append(&scene->steps[row].after, scene->after[row], find_step(scene, name));
}

static void done(wait_scene *scene, size_t row)
{
    scene->steps[row].done = true;
}

static void can_wait(wait_scene *scene, size_t row)
{
    scene->steps[row].can_wait = true;
}

static void minutes(wait_scene *scene, size_t row)
{
    scene->steps[row].minutes = strtol(wanted_word(scene), NULL, 10);
}

static void lists(wait_scene *scene, size_t row)
{
    bk_wait_step *step = &scene->steps[row];
    char *rest;
    step->lists_measures = true;
    step->takings = scene->takings[row];
    char *list = (char *)wanted_word(scene);
    if (strcmp(list, "nothing") == 0)
        return;
    for (char *name = strtok_r(list, ",", &rest); name; name = strtok_r(NULL, ",", &rest)) {
        char *colon = strchr(name, ':');
        ck_assert_msg(colon != NULL, "%s has no day", name);
        *colon = '\0';
        scene->takings[row][one_more(&step->taking_count)] =
            (bk_wait_taking){find_performer(scene, name), day_of(colon + 1), NULL};
    }
}

static void booked(wait_scene *scene, size_t row)
{
    scene->steps[row].fitted = true;
    scene->steps[row].fitting_day = wanted_day(scene);
}

static void again(wait_scene *scene, size_t row)
{
    scene->steps[row].fitting_outcome = BK_AGAIN;
}

static void missed(wait_scene *scene, size_t row)
{
    scene->steps[row].fitting_outcome = BK_MISSED;
}

static void cloth(wait_scene *scene, size_t row)
{
    static const char *const supplies[] = {"shelf", "unordered", "due", "late", "undated"};
    static const bk_words supply_words = {"supply", supplies, sizeof supplies / sizeof supplies[0]};
    bk_wait_step *step = &scene->steps[row];
    bk_claim claim = {.quantity = BK_QUANTITY_ONE, .supply_day = BK_NO_DAY};
    claim.supply = (bk_supply)wanted_known(&supply_words, wanted_word(scene));
    if (claim.supply == BK_SUPPLY_DUE || claim.supply == BK_SUPPLY_LATE)
        claim.supply_day = wanted_day(scene);
    scene->claims[row][one_more(&step->claim_count)] = claim;
    step->claims = scene->claims[row];
}

static void from(wait_scene *scene, size_t row)
{
    scene->people[row].from = wanted_day(scene);
}

static void until(wait_scene *scene, size_t row)
{
    scene->people[row].until = wanted_day(scene);
}

static void away(wait_scene *scene, size_t row)
{
    bk_day *absence = scene->away[row][one_more(&scene->people[row].away_count)];
    absence[0] = wanted_day(scene);
    absence[1] = wanted_day(scene);
    scene->people[row].away = (const bk_day(*)[2])scene->away[row];
}

static const option who_options[] = {{"measured", measured}, {"good", good}, {NULL, NULL}};
static const option costume_options[] = {{"due", due}, {NULL, NULL}};
static const option piece_options[] = {{"out", out}, {"back", back}, {"held", held}, {NULL, NULL}};
static const option step_options[] = {
    {"after", after},   {"done", done},   {"can-wait", can_wait}, {"minutes", minutes}, {"lists", lists},
    {"booked", booked}, {"again", again}, {"missed", missed},     {"cloth", cloth},     {NULL, NULL},
};
static const option person_options[] = {{"from", from}, {"until", until}, {"away", away}, {NULL, NULL}};

static void read_option(wait_scene *scene, const option *options, const char *word, size_t row)
{
    while (options->word != NULL && strcmp(options->word, word) != 0)
        options++;
    ck_assert_msg(options->word != NULL, "%s cannot be said here", word);
    options->read(scene, row);
}

static void read_options(wait_scene *scene, const option *options, size_t row)
{
    for (const char *word = next_word(scene); word != NULL; word = next_word(scene))
        read_option(scene, options, word, row);
}

// ------------------------------------------------------------------------------------------------------------ clauses

static void read_who(wait_scene *scene)
{
    size_t row = one_more(&scene->rows.performer_count);
    scene->performer_names[row] = wanted_word(scene);
    scene->performers[row] = (bk_wait_performer){scene_today(), BK_USUAL_GOOD_FOR};
    read_options(scene, who_options, row);
}

static void read_costume(wait_scene *scene)
{
    size_t row = one_more(&scene->rows.costume_count);
    scene->costumes[row] = (bk_wait_costume){.number = wanted_word(scene), .due = scene_today() + USUAL_DUE};
    scene->costumes[row].performer = find_performer(scene, wanted_word(scene));
    read_options(scene, costume_options, row);
}

static void read_piece(wait_scene *scene)
{
    size_t row = one_more(&scene->rows.piece_count);
    bk_wait_piece *piece = &scene->pieces[row];
    *piece = (bk_wait_piece){.name = wanted_word(scene), .origin = BK_NO_WORD, .back_by = BK_NO_DAY};
    char *rest;
    for (char *name = strtok_r((char *)wanted_word(scene), ",", &rest); name;
         name = strtok_r(NULL, ",", &rest)) {
        size_t costume = find_costume(scene, name);
        append(&piece->costumes, scene->piece_costumes[row], costume);
        append(&scene->costumes[costume].pieces, scene->costume_pieces[costume], row);
    }
    for (const char *word = next_word(scene); word != NULL; word = next_word(scene)) {
        int origin = bk_word_find(&bk_origin_words, word);
        if (origin != BK_NO_WORD)
            piece->origin = origin;
        else
            read_option(scene, piece_options, word, row);
    }
}

static void read_step(wait_scene *scene)
{
    size_t row = one_more(&scene->rows.step_count);
    const char *name = wanted_word(scene);
    const char *slash = strchr(name, '/');
    ck_assert_msg(slash != NULL, "%s names no step", name);
    size_t piece = find_piece(scene, name, (size_t)(slash - name));
    scene->steps[row] = (bk_wait_step){
        .key = slash + 1, .piece = piece, .minutes = USUAL_MINUTES, .fitting_outcome = BK_NO_WORD};
    scene->steps[row].kind = wanted_known(&bk_kind_words, wanted_word(scene));
    append(&scene->pieces[piece].steps, scene->piece_steps[piece], row);
    read_options(scene, step_options, row);
}

static void read_person(wait_scene *scene)
{
    size_t row = one_more(&scene->rows.person_count);
    bk_wait_person *person = &scene->people[row];
    *person = (bk_wait_person){.from = BK_NO_DAY, .until = BK_NO_DAY};
    char *rest;
    for (char *name = strtok_r((char *)wanted_word(scene), ",", &rest); name;
         name = strtok_r(NULL, ",", &rest))
        person->skills |= 1U << wanted_known(&bk_kind_words, name);
    char *days = (char *)wanted_word(scene);
    if (strcmp(days, "never") != 0)
        for (char *name = strtok_r(days, ",", &rest); name; name = strtok_r(NULL, ",", &rest))
            person->works_on[wanted_known(&weekday_words, name)] = true;
    read_options(scene, person_options, row);
}

static const struct {
    const char *word;
    void (*read)(wait_scene *scene);
} clauses[] = {
    {"who", read_who},   {"costume", read_costume}, {"piece", read_piece},
    {"step", read_step}, {"person", read_person},
};

static void read_clause(wait_scene *scene, char *clause)
{
    const char *word = strtok_r(clause, " ", &scene->rest);
    if (word == NULL)
        return;
    for (size_t i = 0; i < sizeof clauses / sizeof clauses[0]; i++)
        if (strcmp(clauses[i].word, word) == 0) {
            clauses[i].read(scene);
            return;
        }
    ck_abort_msg("no clause begins with %s", word);
}

void scene_read(wait_scene *scene, const char *text, bk_arena *arena)
{
    memset(scene, 0, sizeof *scene);
    scene->arena = arena;
    scene->rows = (bk_wait_rows){.today = scene_today(),
                                 .performers = scene->performers,
                                 .costumes = scene->costumes,
                                 .pieces = scene->pieces,
                                 .steps = scene->steps,
                                 .people = scene->people};
    char *rest;
    for (char *clause = strtok_r(bk_arena_text(arena, text), "|", &rest); clause;
         clause = strtok_r(NULL, "|", &rest))
        read_clause(scene, clause);
}

// --------------------------------------------------------------------------------------------------------------- told

static const char *wait_told(const wait_scene *scene, const bk_wait *wait)
{
    const char *on = bk_word_text(&bk_wait_words, (int)wait->on);
    const char *piece = scene->pieces[wait->piece].name;
    const char *detail = bk_wait_detail_text(&scene->rows, wait, scene->arena);
    const char *mark = wait->acts ? "!" : "";
    if (wait->step == BK_NO_INDEX)
        return bk_arena_print(scene->arena, "%s %s %s%s", on, piece, detail, mark);
    const char *key = scene->steps[wait->step].key;
    return bk_arena_print(scene->arena, "%s %s/%s %s%s", on, piece, key, detail, mark);
}

const char *scene_told(const wait_scene *scene, const char *costume)
{
    const bk_costume_waits *all = bk_waits_reckon(&scene->rows, scene->arena);
    const bk_costume_waits *one = &all[find_costume(scene, costume)];
    const char *told = bk_arena_print(scene->arena, "%s%s", bk_word_text(&bk_state_words, (int)one->state),
                                      one->can_go_on ? " (can go on)" : "");
    for (size_t i = 0; i < one->wait_count; i++)
        told = bk_arena_print(scene->arena, "%s%s %s", told, i == 0 ? ":" : ",",
                              wait_told(scene, &one->waits[i]));
    return told;
}

void scene_check(const scene_row *rows, size_t count)
{
    static wait_scene scene;
    for (size_t i = 0; i < count; i++) {
        bk_arena *arena = bk_arena_new();
        scene_read(&scene, rows[i].scene, arena);
        const char *told = scene_told(&scene, "1A");
        ck_assert_msg(strcmp(told, rows[i].told) == 0, "%s:\n     told: %s\n expected: %s", rows[i].says,
                      told, rows[i].told);
        bk_arena_free(arena);
    }
}
