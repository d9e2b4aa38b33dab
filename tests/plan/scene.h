#ifndef BODKIN_TESTS_PLAN_SCENE_H
#define BODKIN_TESTS_PLAN_SCENE_H

#include "bodkin/plan/waits.h"

/// A small workroom in one line of text, so that a test of waits is a table. Clauses are parted by `|`; days are counted
/// from today, Tuesday 2027-03-09: 0 is today, -1 yesterday.
///
///     who NAME [measured DAY|never] [good DAYS]           measured today, good for 180 days unless said
///     costume NUMBER NAME|nobody [due DAY]                due on day 20 unless said
///     piece NAME COSTUME,... [ORIGIN] [out] [back DAY] [held]
///     step PIECE/KEY KIND [after PIECE/KEY,...] [done] [can-wait] [minutes N] [lists NAME:DAY|NAME:never,...|nothing]
///          [booked DAY] [again|missed] [cloth shelf|unordered|undated] [cloth due|late DAY]
///     person KIND,... mon,... [from DAY] [until DAY] [away DAY DAY]
enum { SCENE_ROOM = 16 };

typedef struct wait_scene {
    bk_arena *arena;
    bk_wait_rows rows;
    char *rest; // of the clause that is being read
    const char *performer_names[SCENE_ROOM];
    bk_wait_performer performers[SCENE_ROOM];
    bk_wait_costume costumes[SCENE_ROOM];
    bk_wait_piece pieces[SCENE_ROOM];
    bk_wait_step steps[SCENE_ROOM];
    bk_wait_person people[SCENE_ROOM];
    size_t costume_pieces[SCENE_ROOM][SCENE_ROOM];
    size_t piece_costumes[SCENE_ROOM][SCENE_ROOM];
    size_t piece_steps[SCENE_ROOM][SCENE_ROOM];
    size_t after[SCENE_ROOM][SCENE_ROOM];
    bk_wait_taking takings[SCENE_ROOM][SCENE_ROOM];
    bk_claim claims[SCENE_ROOM][SCENE_ROOM];
    bk_day away[SCENE_ROOM][SCENE_ROOM][2];
} wait_scene;

/// Today in every scene.
bk_day scene_today(void);

/// Reads `text` into `scene` (what it held is forgotten); `scene->rows` is what bk_waits_reckon takes, until the arena is
/// freed. A text that does not follow the form fails the test.
void scene_read(wait_scene *scene, const char *text, bk_arena *arena);

/// What is told of a costume: its state, "(can go on)" where it can, and its waits in order, `!` marking those for which
/// somebody must act: "held (can go on): measures coat/cut none!, hand coat/hem open".
const char *scene_told(const wait_scene *scene, const char *costume);

/// One row of a table: the sentence, the scene, and what is told of its costume 1A.
typedef struct scene_row {
    const char *says;
    const char *scene;
    const char *told;
} scene_row;

/// Reckons every row and fails the test at the first that differs.
void scene_check(const scene_row *rows, size_t count);
#define SCENE_CHECK(rows) scene_check(rows, sizeof(rows) / sizeof(rows)[0])

#endif
