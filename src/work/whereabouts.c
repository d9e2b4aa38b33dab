#include "bodkin/work/whereabouts.h"

#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/work/change.h"

/// What shall be true of a piece.
typedef struct piece_moving {
    int64_t id;
    const char *with; ///< or where it lies
    bk_day back_by;
    bk_status (*move)(const bk_job *job, const struct piece_moving *moving, bk_piece *piece,
                      const char **sentence, bk_error *error);
} piece_moving;

static bk_status send_out(const bk_job *job, const piece_moving *moving, bk_piece *piece,
                          const char **sentence, bk_error *error)
{
    if (bk_text_blank(moving->with)) {
        return bk_fail(error, BK_REFUSED, "Say whom %s is out with.", bk_change_name(job, piece->name));
    }
    if (!bk_same_text(piece->out_with, moving->with) || piece->out_since == BK_NO_DAY) {
        piece->out_since = job->today;
    }
    piece->out_with = moving->with;
    piece->back_by = moving->back_by;
    *sentence = bk_arena_print(job->arena, "Out: %s %s, with %s%s%s", piece->name, piece->title, moving->with,
                               moving->back_by == BK_NO_DAY ? "" : " until ",
                               moving->back_by == BK_NO_DAY ? "" : bk_change_day(job, moving->back_by));
    return BK_OK;
}

static bk_status take_back(const bk_job *job, const piece_moving *moving, bk_piece *piece,
                           const char **sentence, bk_error *error)
{
    if (!piece->out_with) {
        return bk_fail(error, BK_REFUSED, "%s is not out.", bk_change_name(job, piece->name));
    }
    bool placed = !bk_text_blank(moving->with);
    *sentence = bk_arena_print(job->arena, "Back: %s %s, from %s%s%s", piece->name, piece->title,
                               piece->out_with, placed ? ", to " : "", placed ? moving->with : "");
    piece->out_with = NULL;
    piece->out_since = BK_NO_DAY;
    piece->back_by = BK_NO_DAY;
    piece->place = placed ? moving->with : piece->place;
    return BK_OK;
}

static bk_status put_in_place(const bk_job *job, const piece_moving *moving, bk_piece *piece,
                              const char **sentence, bk_error *error)
{
    (void)error;
    piece->place = bk_text_blank(moving->with) ? NULL : moving->with;
    *sentence = bk_arena_print(job->arena, "Moved: %s %s, %s%s", piece->name, piece->title,
                               piece->place ? "to " : "nobody knows where", piece->place ? piece->place : "");
    return BK_OK;
}

static bk_status move(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    const piece_moving *moving = context;
    bk_piece piece;
    bool found;
    bk_status status = bk_store_get(job->store, BK_PIECES, moving->id, job->arena, &piece, &found, error);
    if (!status && !found) {
        return bk_fail(error, BK_REFUSED, "This piece is no longer in the workroom.");
    }
    if (!status) {
        status = moving->move(job, moving, &piece, sentence, error);
    }
    return status ? status : bk_store_put(job->store, BK_PIECES, &piece, error);
}

bk_status bk_piece_out(const bk_job *job, int64_t piece, const char *with, bk_day back_by,
                       const char **sentence, bk_error *error)
{
    piece_moving moving = {piece, with, back_by, send_out};
    return bk_change_run(job, move, &moving, sentence, error);
}

bk_status bk_piece_back(const bk_job *job, int64_t piece, const char *place, const char **sentence,
                        bk_error *error)
{
    piece_moving moving = {piece, place, BK_NO_DAY, take_back};
    return bk_change_run(job, move, &moving, sentence, error);
}

bk_status bk_piece_place(const bk_job *job, int64_t piece, const char *place, const char **sentence,
                         bk_error *error)
{
    piece_moving moving = {piece, place, BK_NO_DAY, put_in_place};
    return bk_change_run(job, move, &moving, sentence, error);
}
