#include "bodkin/work/import_match.h"

#include "bodkin/base/list.h"

struct bk_matches {
    bk_index *first; ///< by key, the next record to be matched
    long long *next; ///< by record, the one of the same key behind it
};

bk_matches *bk_matches_new(size_t count)
{
    bk_matches *matches = bk_alloc(sizeof *matches);
    matches->first = bk_index_new();
    matches->next = bk_alloc_clear(count, sizeof *matches->next);
    return matches;
}

void bk_matches_free(bk_matches *matches)
{
    bk_index_free(matches->first);
    free(matches->next);
    free(matches);
}

void bk_matches_put(bk_matches *matches, const char *key, size_t index)
{
    long long *first = bk_index_put(matches->first, key, BK_NO_MATCH);
    matches->next[index] = *first;
    *first = (long long)index;
}

long long bk_matches_take(bk_matches *matches, const char *key)
{
    if (!bk_index_find(matches->first, key)) {
        return BK_NO_MATCH;
    }
    long long *first = bk_index_put(matches->first, key, BK_NO_MATCH);
    long long index = *first;
    if (index != BK_NO_MATCH) {
        *first = matches->next[index];
    }
    return index;
}
