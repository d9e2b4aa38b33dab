#ifndef BODKIN_CMD_CALL_JOB_H
#define BODKIN_CMD_CALL_JOB_H

#include "bodkin/cmd/command.h"
#include "bodkin/work/job.h"

/// Something that a call changes; `job` has no production yet.
typedef bk_status bk_call_job_body(const bk_call *call, bk_job *job, bk_error *error);

/// Opens the store of a call, runs the job on it for whoever calls, now, and closes it.
bk_status bk_call_job(const bk_call *call, bk_call_job_body *body, bk_error *error) BK_MUST_USE;

/// Chooses the production that a call means, and makes it the job's.
bk_status bk_call_choose(const bk_call *call, bk_job *job, bk_production *production, bk_error *error)
    BK_MUST_USE;

#endif
