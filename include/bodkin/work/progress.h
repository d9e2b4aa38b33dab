#ifndef BODKIN_WORK_PROGRESS_H
#define BODKIN_WORK_PROGRESS_H

#include <stdbool.h>
#include <stdint.h>

/// Told now and then during long work: `done` of `all` units (`all` 0: not known yet) of `what`. Returns false to stop the
/// work, which is then refused with nothing changed.
typedef bool bk_progress_told(void *self, const char *what, int64_t done, int64_t all);

typedef struct bk_progress {
    bk_progress_told *told; ///< NULL: nobody listens
    void *self;
} bk_progress;

/// Tells the listener, if there is one; true to go on.
static inline bool bk_progress_tell(const bk_progress *progress, const char *what, int64_t done, int64_t all)
{
    return !progress || !progress->told || progress->told(progress->self, what, done, all);
}

#endif
