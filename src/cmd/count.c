#include "bodkin/base/typed.h"
#include "bodkin/cmd/call_job.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/work/materials.h"

// `count`: how much of a material lies on the shelf.

static bk_status count(const bk_call *call, bk_job *job, bk_error *error)
{
    bk_quantity quantity;
    int64_t material = 0;
    const char *sentence = NULL;
    const char *text = call->arguments[1];
    if (bk_quantity_typed(text, false, &quantity) != BK_READ_OK) {
        return bk_fail(error, BK_USAGE,
                       "A quantity is a plain number in the material's unit, such as 2.4, not \"%s\".",
                       bk_text_safe(job->arena, text, false));
    }
    bk_status status = bk_material_find(job->store, call->arguments[0], &material, error);
    if (!status) {
        status = bk_material_count(job, material, quantity, &sentence, error);
    }
    return status ? status : bk_print_sentence(sentence, error);
}

bk_status bk_count_command(const bk_call *call, bk_error *error)
{
    return bk_call_job(call, count, error);
}
