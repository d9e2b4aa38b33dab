#ifndef BODKIN_WORK_RECORD_H
#define BODKIN_WORK_RECORD_H

#include "bodkin/store/records_bench.h"
#include "bodkin/work/job.h"

/// One record at a time, as a person fills it in: the structs of the sheets, where other records stand by name (a costume
/// names its role, a piece its costumes, a step what it comes after) and private values beside the rest.
///
/// Families: BK_PRODUCTIONS, BK_DATES, BK_PEOPLE, BK_AWAYS, BK_PERFORMERS, BK_ROLES, BK_COSTUMES, BK_PIECES, BK_STEPS,
/// BK_NEEDS, BK_MATERIALS, BK_ORDERS, BK_FITTINGS, BK_WORKS, BK_WORK_STEPS, BK_EQUIPMENT, BK_NOTES.

/// Reads a record with all its names and private values into `record`, a struct of its family; texts live in the job's
/// arena. `*found` false where it is no longer there.
bk_status bk_record_read(const bk_job *job, bk_family family, int64_t id, void *record, bool *found,
                         bk_error *error) BK_MUST_USE;

typedef struct bk_record_saving {
    bk_family family;
    const void *before; ///< as it was read; NULL: a new one
    const void *after;  ///< as it shall be; its id is that of `before`, 0 for a new one
    /// Whether two records of the family say the same in all their columns.
    bool (*same)(const void *context, const void *left, const void *right);
    const void *context;
    bool over;      ///< save also over a newer change of another terminal
    int64_t behind; ///< of a new one: which record of its list it follows; 0: the last
} bk_record_saving;

typedef struct bk_record_saved {
    int64_t id;
    const char *sentence; ///< as in the daybook: "Changed: piece 4A-1 Linen shirt"
    const void *newer;    ///< another terminal changed it meanwhile: how it stands now; nothing was saved
    bool gone;            ///< another terminal took it away meanwhile; nothing was saved
    const char *column;   ///< of what is refused: the column that it is about, or NULL
} bk_record_saved;

/// Saves a record as one change with one entry of the daybook. What the sheets demand is checked here as well: names that
/// must be there, keys given twice, what it refers to, circles (told by their steps), quickest above longest. A performer who
/// is new to the production but known in the workroom joins its company. A renamed record keeps all that refers to
/// it. BK_REFUSED with one sentence where something is wrong; nothing was changed then. BK_OK with `newer` or `gone` set
/// where another terminal was faster. Where nothing differs nothing is written, and `sentence` is NULL.
bk_status bk_record_save(const bk_job *job, const bk_record_saving *saving, bk_record_saved *saved,
                         bk_error *error) BK_MUST_USE;

/// What goes with a record that is taken away, in words ("3 pieces, 24 steps and 2 fittings go with it"), or NULL. BK_REFUSED
/// with the reason where it cannot be taken away: a role that wears costumes, a material that steps need, a production.
bk_status bk_record_weigh(const bk_job *job, bk_family family, int64_t id, const char **goes_with,
                          bk_error *error) BK_MUST_USE;

/// Takes a record away, with what goes with it, as one change. A performer leaves the company (roles are no longer cast, the
/// measures stay in the workroom); a costume takes the pieces along that are worn with no other; a piece its steps; a step
/// its needs, fittings and clocks, and what came after it comes after what it came after. Notes stay. Refused as above.
bk_status bk_record_take_away(const bk_job *job, bk_family family, int64_t id, const char **sentence,
                              bk_error *error) BK_MUST_USE;

/// Moves a record in its list, `by` places (below 0: earlier), as one change: performers of a company, roles, costumes, pieces,
/// steps of a piece, needs of a step, orders of work and their steps, equipment, notes. `*sentence` NULL where it stays where it is.
bk_status bk_record_move(const bk_job *job, bk_family family, int64_t id, int by, const char **sentence,
                         bk_error *error) BK_MUST_USE;

/// Puts a production away, or back in work, as one change; `*sentence` NULL where it is so already. Its own records stay as
/// they are.
bk_status bk_production_put_away(const bk_job *job, int64_t id, bool away, const char **sentence,
                                 bk_error *error) BK_MUST_USE;

#endif
