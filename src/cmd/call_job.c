#include "bodkin/cmd/call_job.h"

#include "bodkin/cmd/surroundings.h"
#include "bodkin/work/productions.h"

bk_status bk_call_job(const bk_call *call, bk_call_job_body *body, bk_error *error)
{
    char now[BK_NOW_ROOM];
    bk_store *store;
    bk_status status = bk_call_open(call, false, &store, error);
    if (status) {
        return status;
    }
    bk_job job = {
        .store = store,
        .today = bk_call_today(call),
        .made_at = bk_now(now),
        .who = call->name,
        .arena = bk_arena_new(),
    };
    status = body(call, &job, error);
    bk_arena_free(job.arena);
    bk_store_close(store);
    return status;
}

bk_status bk_call_choose(const bk_call *call, bk_job *job, bk_production *production, bk_error *error)
{
    bk_status status =
        bk_production_choose(job->store, call->production, job->today, job->arena, production, error);
    if (!status) {
        job->production = production->id;
    }
    return status;
}
