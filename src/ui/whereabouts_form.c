#include "bodkin/ui/whereabouts_form.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/form.h"
#include "bodkin/ui/form_choices.h"
#include "bodkin/work/whereabouts.h"

typedef struct whereabouts {
    const char *out_with;
    bk_day back_by;
    const char *place;
    int line;
} whereabouts;

static const bk_column columns[] = {
    {"out_with", false, BK_CELL_TEXT, offsetof(whereabouts, out_with), .example = "Bo Lind"},
    {"back_by", false, BK_CELL_DAY, offsetof(whereabouts, back_by), .example = "2027-03-12"},
    {"place", false, BK_CELL_TEXT, offsetof(whereabouts, place), .example = "rail 2"},
};

static const bk_sheet sheet = BK_FORM_SHEET(whereabouts, columns, "piece");

static const bk_piece *piece_of(const bk_form *form)
{
    const bk_rail *rail = bk_form_wall(form)->rail;
    for (size_t i = 0; rail && i < rail->rows.piece_count; i++)
        if (rail->pieces[i].id == bk_form_about(form))
            return &rail->pieces[i];
    return NULL;
}

static bool is_out(const bk_form *form)
{
    return *bk_form_text(form, "out_with") != '\0';
}

static const bk_form_field fields[] = {
    {.column = "out_with",
     .label = "out with",
     .help = "who has it outside the workroom; empty: it is here",
     .choices = bk_choose_everybody,
     .loose = true},
    {.column = "back_by", .label = "back by", .help = "the day it is promised back", .asked = is_out},
    {.column = "place",
     .label = "place",
     .help = "where it hangs or lies in the workroom",
     .choices = bk_choose_places,
     .loose = true},
};

// One thing at a time: it comes back (to a place), it goes out, it is put elsewhere.
static bk_status put(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                     bk_error *error)
{
    const whereabouts *now = record;
    const bk_piece *before = piece_of(form);
    bk_status status = BK_OK;
    if (!before)
        return bk_fail(error, BK_REFUSED, "The piece is no longer there.");
    bool moves = !bk_same_text(before->place, now->place);
    if (before->out_with && !now->out_with)
        return bk_piece_back(job, before->id, moves ? now->place : NULL, &saved->sentence, error);
    if (moves)
        status = bk_piece_place(job, before->id, now->place, &saved->sentence, error);
    if (!status && now->out_with &&
        (!bk_same_text(before->out_with, now->out_with) || before->back_by != now->back_by))
        status = bk_piece_out(job, before->id, now->out_with, now->back_by, &saved->sentence, error);
    return status;
}

static const bk_form_kind form = {.name = "Where it is",
                                  .sheet = &sheet,
                                  .fields = fields,
                                  .field_count = sizeof fields / sizeof fields[0],
                                  .family = BK_PIECES,
                                  .save = put};

void bk_whereabouts_open(bk_screen *from, size_t piece)
{
    const bk_piece *record = &from->wall->rail->pieces[piece];
    whereabouts now = {.out_with = record->out_with, .back_by = record->back_by, .place = record->place};
    bk_arena *arena = bk_arena_new();
    const char *title = bk_arena_print(arena, "Where is %s %s?", record->name, record->title);
    bk_form_open(from, &form,
                 &(bk_form_start){.record = &now, .about = record->id, .title = title, .first = "out_with"});
    bk_arena_free(arena);
}
