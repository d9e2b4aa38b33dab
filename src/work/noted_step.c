#include "bodkin/work/noted_step.h"

#include <ctype.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/store/one.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/change.h"

// ----------------------------------------------------------------------------------------------- its names

enum { KEY_WORDS = 2, KEY_BYTES = 16, ASCII_LAST = 0x7F };

const char *bk_noted_step_title(const char *text, bk_arena *arena)
{
    const char *start = text + strspn(text, " \t\r\n");
    size_t length = strcspn(start, "\r\n");
    while (length && (start[length - 1] == ' ' || start[length - 1] == '\t')) {
        length--;
    }
    return bk_arena_bytes(arena, start, length);
}

/// Letters and figures alone stand in a key; what is no ASCII is taken for letters.
static bool stands_in_key(unsigned char byte)
{
    return byte > ASCII_LAST || isalnum(byte);
}

/// Copies the next word of `*text` in small letters, at most `room` bytes of it and whole characters only, and steps
/// behind it.
static const char *next_word(const char **text, size_t room, bk_arena *arena)
{
    char word[KEY_BYTES];
    size_t length = 0;
    int32_t code;
    while (**text && !stands_in_key((unsigned char)**text)) {
        (*text)++;
    }
    while (stands_in_key((unsigned char)**text)) {
        size_t bytes = bk_utf8_next(*text, &code);
        room = length + bytes > room ? length : room; // behind what is cut off nothing more stands
        for (size_t i = 0; i < bytes && length < room; i++) {
            word[length++] = (char)(bytes == 1 ? tolower((unsigned char)(*text)[i]) : (*text)[i]);
        }
        *text += bytes;
    }
    return bk_arena_bytes(arena, word, length);
}

/// Whether a word alone tells nothing of what is done.
static bool is_little(const char *word)
{
    static const char *const little[] = {"a",   "an", "and", "at",   "for", "her",   "his",  "is",
                                         "its", "it", "of",  "that", "the", "their", "this", "to"};
    for (size_t i = 0; i < sizeof little / sizeof *little; i++) {
        if (!strcmp(word, little[i])) {
            return true;
        }
    }
    return false;
}

/// The first words, small, with a hyphen between: "let-out"; little words are left out, and where the first ones are
/// all little the next that is not stands alone.
static const char *key_of(const char *text, bk_arena *arena)
{
    const char *key = "";
    for (int words = 0; *text && (words < KEY_WORDS || !*key); words++) {
        size_t used = strlen(key) + (*key != '\0'); // with the hyphen
        const char *word = used < KEY_BYTES ? next_word(&text, KEY_BYTES - used, arena) : "";
        if (*word && !is_little(word)) {
            key = bk_arena_print(arena, "%s%s%s", key, *key ? "-" : "", word);
        }
    }
    return *key ? key : "note";
}

/// Makes the key new in its piece: "let-out", "let-out-2" ...
static bk_status free_key(const bk_job *job, const bk_noted_step *wanted, const char **key, bk_error *error)
{
    const char *stem = key_of(wanted->text, job->arena);
    int64_t taken = 1;
    bk_status status = BK_OK;
    *key = stem;
    for (int number = 1; !status && taken; number++) {
        if (number > 1) {
            *key = bk_arena_print(job->arena, "%s-%d", stem, number);
        }
        status = bk_store_find_step(job->store, wanted->piece->production_id, wanted->piece->name, *key,
                                    &taken, error);
    }
    return status;
}

// ------------------------------------------------------------------------------------------------ its place

static bk_status check(const bk_job *job, const bk_noted_step *wanted, bk_error *error)
{
    const int64_t named[] = {wanted->before_id, wanted->behind_id, wanted->after_id};
    if (bk_text_blank(wanted->text)) {
        return bk_fail(error, BK_REFUSED, "A note that says nothing cannot become a step.");
    }
    if (!bk_word_text(&bk_kind_words, wanted->kind)) {
        return bk_fail(error, BK_REFUSED, "Say of what kind the step is: cut, machine, hand ...");
    }
    if (wanted->minutes != BK_NOT_KNOWN && wanted->minutes < 0) {
        return bk_fail(error, BK_REFUSED, "A step takes no less than 0 minutes.");
    }
    for (size_t i = 0; i < sizeof named / sizeof *named; i++) {
        bk_step step = {0};
        bool found = true;
        bk_status status = BK_OK;
        if (named[i]) {
            status = bk_store_get(job->store, BK_STEPS, named[i], job->arena, &step, &found, error);
        }
        if (!status && named[i] && (!found || step.piece_id != wanted->piece->id)) {
            return bk_fail(error, BK_REFUSED, "The step that it should stand beside is no longer of %s.",
                           bk_change_name(job, wanted->piece->name));
        }
        if (status) {
            return status;
        }
    }
    return BK_OK;
}

/// Moves the newest step of a piece, the last of `places`, to the place `at` among them; the others move up. The
/// positions stay those of the piece.
static bk_status place_at(const bk_job *job, const bk_place *places, size_t count, size_t at, bk_error *error)
{
    bk_status status = BK_OK;
    if (at + 1 < count) {
        status = bk_store_place(job->store, BK_STEPS, places[count - 1].id, places[at].position, error);
    }
    for (size_t i = at; !status && i + 1 < count; i++) {
        status = bk_store_place(job->store, BK_STEPS, places[i].id, places[i + 1].position, error);
    }
    return status;
}

static bk_status put_in_order(const bk_job *job, const bk_noted_step *wanted, bk_error *error)
{
    bk_rows rows = {0};
    if (!wanted->before_id && !wanted->behind_id) {
        return BK_OK;
    }
    bk_status status = bk_store_places(job->store, BK_STEPS, wanted->piece->id, job->arena, &rows, error);
    const bk_place *places = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (places[i].id == wanted->behind_id || (!wanted->behind_id && places[i].id == wanted->before_id)) {
            return place_at(job, places, rows.count, i + (places[i].id == wanted->behind_id), error);
        }
    }
    return status;
}

static bk_status link_after(const bk_job *job, int64_t later, int64_t earlier, bk_error *error)
{
    bk_link link = {.from_id = later, .to_id = earlier};
    int64_t position = 0;
    if (!later || !earlier) {
        return BK_OK;
    }
    bk_status status = bk_store_last_place(job->store, BK_STEP_AFTERS, later, &position, error);
    return status ? status : bk_store_add(job->store, BK_STEP_AFTERS, &link, position, NULL, error);
}

// --------------------------------------------------------------------------------------------------- adding

static bk_status add(const bk_job *job, const bk_noted_step *wanted, const char *key, int64_t *id,
                     bk_error *error)
{
    bk_step step = {
        .production_id = wanted->piece->production_id,
        .piece_id = wanted->piece->id,
        .key = key,
        .title = bk_noted_step_title(wanted->text, job->arena),
        .kind = wanted->kind,
        .minutes = wanted->minutes == BK_NOT_KNOWN ? BK_NOTE_MINUTES : wanted->minutes,
        .quickest = BK_NOT_KNOWN,
        .longest = BK_NOT_KNOWN,
        .hands = BK_NOT_KNOWN,
        .level = BK_NOT_KNOWN,
        .rest_minutes = BK_NOT_KNOWN,
        .done_on = BK_NO_DAY,
        .took = BK_NOT_KNOWN,
    };
    int64_t position = 0;
    bk_status status = bk_store_last_place(job->store, BK_STEPS, step.production_id, &position, error);
    return status ? status : bk_store_add(job->store, BK_STEPS, &step, position, id, error);
}

bk_status bk_noted_step_add(const bk_job *job, const bk_noted_step *wanted, int64_t *step, bk_error *error)
{
    const char *key = NULL;
    bk_status status = check(job, wanted, error);
    if (!status) {
        status = free_key(job, wanted, &key, error);
    }
    if (!status) {
        status = add(job, wanted, key, step, error);
    }
    if (!status) {
        status = put_in_order(job, wanted, error);
    }
    if (!status) {
        status = link_after(job, wanted->before_id, *step, error);
    }
    return status ? status : link_after(job, *step, wanted->after_id, error);
}
