#include "bodkin/work/folder.h"

#include <stdlib.h>

bk_folder *bk_folder_new(void)
{
    bk_folder *folder = bk_alloc_clear(1, sizeof *folder);
    folder->arena = bk_arena_new();
    return folder;
}

void bk_folder_free(bk_folder *folder)
{
    if (folder == NULL)
        return;
    bk_arena_free(folder->arena);
    free(folder);
}

bk_known *bk_known_new(void)
{
    bk_known *known = bk_alloc(sizeof *known);
    known->arena = bk_arena_new();
    known->performers = bk_index_new();
    known->people = bk_index_new();
    known->materials = bk_index_new();
    known->works = bk_index_new();
    return known;
}

void bk_known_free(bk_known *known)
{
    if (known == NULL)
        return;
    bk_index_free(known->performers);
    bk_index_free(known->people);
    bk_index_free(known->materials);
    bk_index_free(known->works);
    bk_arena_free(known->arena);
    free(known);
}
