#include "work/hour.h"

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/fittings.h"
#include "bodkin/work/history.h"
#include "bodkin/work/materials.h"
#include "bodkin/work/notes.h"
#include "bodkin/work/record.h"
#include "bodkin/work/tick.h"
#include "bodkin/work/use_work.h"
#include "bodkin/work/whereabouts.h"
#include "work/show.h"

static bool tick_step(hour *at)
{
    const char *sentence = NULL;
    int64_t id = ANY(at, BK_STEPS, bk_step);
    bk_tick tick = {.done_on = hour_day(at), .done_by = "Ada", .took = BK_NOT_KNOWN};
    if (!id)
        return false;
    bk_status status = hour_heads(at) ? bk_step_tick(at->job.store, id, &tick, at->job.made_at, at->job.arena,
                                                     &sentence, &trouble)
                                      : bk_step_untick(at->job.store, id, at->job.today, at->job.made_at,
                                                       at->job.arena, &sentence, &trouble);
    return hour_made(status, sentence);
}

static bool run_clock(hour *at)
{
    const char *sentence = NULL;
    int64_t id = ANY(at, BK_STEPS, bk_step);
    if (!id)
        return false;
    bk_status status = hour_heads(at) ? bk_running_start(&at->job, id, &sentence, &trouble)
                                      : bk_running_stop(&at->job, NULL, &sentence, &trouble);
    return hour_made(status, sentence);
}

static bool carry_piece(hour *at)
{
    const char *sentence = NULL;
    int64_t id = ANY(at, BK_PIECES, bk_piece);
    bk_status status = BK_OK;
    switch (id ? hour_dice(at, 3) : 3) {
    case 0:
        status = bk_piece_out(&at->job, id, hour_name(at), hour_maybe_day(at), &sentence, &trouble);
        break;
    case 1:
        status = bk_piece_back(&at->job, id, "rail 1", &sentence, &trouble);
        break;
    case 2:
        status = bk_piece_place(&at->job, id, hour_name(at), &sentence, &trouble);
        break;
    default:
        break;
    }
    return hour_made(status, sentence);
}

static bool keep_materials(hour *at)
{
    const char *sentence = NULL;
    int64_t material = ANY(at, BK_MATERIALS, bk_material);
    int64_t order = ANY(at, BK_ORDERS, bk_order);
    bk_order fresh = ORDER(NULL, hour_dice(at, 5000000) + 1, hour_day(at), hour_maybe_day(at), BK_NO_DAY);
    fresh.material_id = material;
    bk_quantity quantity = (bk_quantity)hour_dice(at, 4000000);
    bk_status status = BK_OK;
    switch (material && order ? hour_dice(at, 3) : 3) {
    case 0:
        status = bk_material_count(&at->job, material, quantity, &sentence, &trouble);
        break;
    case 1:
        status = bk_material_order(&at->job, &fresh, &sentence, &trouble);
        break;
    case 2:
        status = bk_order_arrived(&at->job, order, hour_heads(at) ? BK_NO_AMOUNT : quantity, hour_day(at),
                                  &sentence, &trouble);
        break;
    default:
        break;
    }
    return hour_made(status, sentence);
}

static bool hold_fitting(hour *at)
{
    const char *sentence = NULL;
    int64_t fitting = ANY(at, BK_FITTINGS, bk_fitting);
    int64_t step = ANY(at, BK_STEPS, bk_step);
    bk_moment moment = {hour_day(at), (bk_minute)hour_dice(at, 1440)};
    bk_fitting_note note = {
        .text = hour_name(at), .make_step = hour_heads(at), .kind = BK_HAND, .minutes = 20};
    bk_fitting_result result = {.fitting_id = fitting,
                                .outcome = (int)hour_dice(at, BK_OUTCOMES + 1) - 1,
                                .held_on = BK_NO_DAY,
                                .notes = &note,
                                .note_count = hour_dice(at, 2)};
    bk_fitting_booking booking = {.moment = moment, .minutes = 30, .steps = &step, .count = 1};
    bk_status status = BK_OK;
    switch (fitting ? hour_dice(at, 5) : 4) {
    case 0:
        status = bk_fitting_record(&at->job, &result, &sentence, &trouble);
        break;
    case 1:
        status = bk_fitting_move(&at->job, &fitting, 1, moment, &sentence, &trouble);
        break;
    case 2:
        status = bk_fitting_call_off(&at->job, &fitting, 1, &sentence, &trouble);
        break;
    case 3:
        status = bk_fitting_missed(&at->job, &fitting, 1, &sentence, &trouble);
        break;
    default:
        status = step ? bk_fitting_book(&at->job, &booking, &sentence, &trouble) : BK_OK;
        break;
    }
    return hour_made(status, sentence);
}

static bool handle_note(hour *at)
{
    const char *sentence = NULL;
    int64_t id = ANY(at, BK_NOTES, bk_note);
    bk_note_step wanted = {
        .note_id = id, .piece_id = ANY(at, BK_PIECES, bk_piece), .kind = BK_HAND, .minutes = BK_NOT_KNOWN};
    if (!id)
        return false;
    bk_status status = hour_heads(at) ? bk_note_done(&at->job, id, hour_heads(at), &sentence, &trouble)
                                      : bk_note_to_step(&at->job, &wanted, NULL, &sentence, &trouble);
    return hour_made(status, sentence);
}

static bool measure(hour *at)
{
    const char *sentence = NULL;
    bk_taken taken[] = {{"waist girth", 600000 + hour_dice(at, 200000)},
                        {"own measure", 1 + hour_dice(at, 9)}};
    bk_measures_saving saving = {.performer = ANY(at, BK_PERFORMERS, bk_performer),
                                 .on = DAY(2, 1) + (bk_day)hour_dice(at, 20),
                                 .today = at->job.today,
                                 .items = taken,
                                 .count = 1 + hour_dice(at, 2)};
    bk_status status = BK_OK;
    switch (hour_dice(at, 3)) {
    case 0:
        status = bk_sheet_take_away(at->job.store, saving.performer, saving.on, at->job.today,
                                    at->job.made_at, at->job.arena, &sentence, &trouble);
        break;
    case 1:
        status = bk_sheet_redate(at->job.store, saving.performer, saving.on, DAY(2, 21), at->job.today,
                                 at->job.made_at, at->job.arena, &sentence, &trouble);
        break;
    default:
        status =
            bk_measures_save(at->job.store, &saving, at->job.made_at, at->job.arena, &sentence, &trouble);
        break;
    }
    return hour_made(status, sentence);
}

static bool use_works(hour *at)
{
    const char *sentence = NULL;
    int64_t id = 0;
    int64_t work = ANY(at, BK_WORKS, bk_work);
    int64_t piece = ANY(at, BK_PIECES, bk_piece);
    bk_status status = BK_OK;
    switch (work && piece ? hour_dice(at, 3) : 3) {
    case 0:
        status = bk_work_use(&at->job, work, piece, &sentence, &trouble);
        break;
    case 1:
        status = bk_work_keep(&at->job, piece, hour_name(at), NULL, &id, &sentence, &trouble);
        break;
    case 2:
        status = bk_work_copy(&at->job, work, hour_name(at), &id, &sentence, &trouble);
        break;
    default:
        break;
    }
    return hour_made(status, sentence);
}

static bool settle_workroom(hour *at)
{
    const char *sentence = NULL;
    bk_change_limit limit = {10000 + hour_dice(at, 20000), 3000000};
    bk_status status =
        hour_heads(at)
            ? bk_production_put_away(&at->job, at->job.production, hour_heads(at), &sentence, &trouble)
            : bk_change_limit_put(at->job.store, limit, at->job.made_at, at->job.arena, &sentence, &trouble);
    return hour_made(status, sentence);
}

static bool import_show(hour *at)
{
    bk_import_report report = {0};
    bk_import_options options = {.today = at->job.today};
    bk_store *store = at->job.store;
    bk_folder *folder = salt_road();
    folder->production.items[0].name = hour_name(at);
    folder->production.items[0].opens = hour_day(at);
    MUST(bk_store_change_begin(store, &trouble));
    bk_status status = bk_import_folder(store, folder, &options, at->job.arena, &report, &trouble);
    if (status)
        bk_store_change_drop(store);
    else
        status = bk_store_change_commit(store, at->job.made_at, report.sentence, NULL, &trouble);
    bk_folder_free(folder);
    return hour_made(status, report.sentence);
}

hour_kind *const hour_jobs[] = {
    tick_step,   run_clock, carry_piece, keep_materials,  hold_fitting,
    handle_note, measure,   use_works,   settle_workroom, import_show,
};

const size_t hour_job_count = sizeof hour_jobs / sizeof hour_jobs[0];
