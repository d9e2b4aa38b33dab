#include <string.h>

#include "bodkin/cmd/call_job.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/notes.h"
#include "bodkin/work/tick.h"

// `note`: something to remember, about a costume, a piece, a step.

typedef struct subject_rows {
    bk_rows costumes, pieces;
} subject_rows;

static bk_status read_subjects(const bk_job *job, subject_rows *rows, bk_error *error)
{
    bk_status status =
        bk_store_read(job->store, BK_COSTUMES, job->production, job->arena, &rows->costumes, error);
    return status ? status
                  : bk_store_read(job->store, BK_PIECES, job->production, job->arena, &rows->pieces, error);
}

/// A costume of that number, else a piece of that name; puts all names into `names`. False where there is neither.
static bool find_subject(const subject_rows *rows, const char *name, bk_note *note, const char **names)
{
    const bk_costume *costumes = rows->costumes.items;
    const bk_piece *pieces = rows->pieces.items;
    for (size_t i = 0; i < rows->costumes.count; i++) {
        *names++ = costumes[i].number;
        if (bk_same_text(costumes[i].number, name)) {
            note->costume_id = costumes[i].id;
        }
    }
    for (size_t i = 0; i < rows->pieces.count; i++) {
        *names++ = pieces[i].name;
        if (bk_same_text(pieces[i].name, name) && !note->costume_id) {
            note->piece_id = pieces[i].id;
        }
    }
    return note->costume_id || note->piece_id;
}

static bk_status read_subject(const bk_job *job, const bk_production *production, const char *name,
                              bk_note *note, bk_error *error)
{
    subject_rows rows = {0};
    if (strchr(name, '/')) {
        return bk_step_find(job->store, production, name, &note->step_id, error);
    }
    bk_status status = read_subjects(job, &rows, error);
    if (status) {
        return status;
    }
    size_t count = rows.costumes.count + rows.pieces.count;
    const char **names = bk_arena_clear(job->arena, count, sizeof *names);
    if (find_subject(&rows, name, note, names)) {
        return BK_OK;
    }
    const char *near = bk_nearest(name, names, count);
    return bk_fail(error, BK_REFUSED, "There is no costume and no piece \"%s\" in \"%s\"%s%s%s",
                   bk_text_safe(job->arena, name, false), bk_text_safe(job->arena, production->name, false),
                   near ? "; did you mean " : ".", near ? bk_text_safe(job->arena, near, false) : "",
                   near ? "?" : "");
}

static bk_status read_source(const bk_job *job, const char *word, int *source, bk_error *error)
{
    *source = bk_word_find(&bk_note_source_words, word);
    if (!word || *source != BK_NO_WORD) {
        return BK_OK;
    }
    const char *all = "";
    for (size_t i = 0; i < bk_note_source_words.count; i++) {
        all = bk_arena_print(job->arena, "%s%s%s", all, i ? ", " : "", bk_note_source_words.items[i]);
    }
    return bk_fail(error, BK_USAGE, "--from wants one of %s, not \"%s\".", all,
                   bk_text_safe(job->arena, word, false));
}

static bk_status note(const bk_call *call, bk_job *job, bk_error *error)
{
    bk_production production;
    bk_note noted = {
        .noted_on = BK_NO_DAY, .who = call->who, .what = call->arguments[0], .done_on = BK_NO_DAY};
    const char *sentence = NULL;
    bk_status status = read_source(job, call->from, &noted.source, error);
    if (!status) {
        status = bk_call_choose(call, job, &production, error);
    }
    if (!status && call->about) {
        status = read_subject(job, &production, call->about, &noted, error);
    }
    if (!status) {
        status = bk_note_add(job, &noted, NULL, &sentence, error);
    }
    return status ? status : bk_print_sentence(sentence, error);
}

bk_status bk_note_command(const bk_call *call, bk_error *error)
{
    return bk_call_job(call, note, error);
}
