#include "bodkin/work/record_kinds.h"

#define PLACED(record, member) .placed = true, .moves = true, .list = offsetof(record, member)

const bk_record_kind bk_record_kinds[BK_FAMILIES] = {
    [BK_PRODUCTIONS] = {sizeof(bk_production), BK_NO_OFFSET, .weigh = bk_weigh_production},
    [BK_DATES] = {.size = sizeof(bk_date), .production = offsetof(bk_date, production_id)},
    [BK_PEOPLE] = {sizeof(bk_person), BK_NO_OFFSET, .check = bk_check_person, .follow = bk_follow_person,
                   .weigh = bk_weigh_person, .part = bk_part_person},
    [BK_AWAYS] = {sizeof(bk_away), BK_NO_OFFSET, .check = bk_check_away},
    [BK_PERFORMERS] = {sizeof(bk_performer), BK_NO_OFFSET, .moves = true, .follow = bk_follow_performer,
                       .weigh = bk_weigh_performer, .part = bk_part_performer},
    [BK_ROLES] = {sizeof(bk_role), offsetof(bk_role, production_id), PLACED(bk_role, production_id),
                  .follow = bk_follow_role, .weigh = bk_weigh_role},
    [BK_COSTUMES] = {sizeof(bk_costume), offsetof(bk_costume, production_id),
                     PLACED(bk_costume, production_id), .weigh = bk_weigh_costume, .part = bk_part_costume},
    [BK_PIECES] = {sizeof(bk_piece), offsetof(bk_piece, production_id), PLACED(bk_piece, production_id),
                   .weigh = bk_weigh_piece, .part = bk_part_piece},
    [BK_STEPS] = {sizeof(bk_step), offsetof(bk_step, production_id), PLACED(bk_step, piece_id),
                  .check = bk_check_step, .watch = bk_watch_step, .follow = bk_follow_step,
                  .weigh = bk_weigh_step, .part = bk_part_step},
    [BK_NEEDS] = {sizeof(bk_need), BK_NO_OFFSET, PLACED(bk_need, step_id), .check = bk_check_need},
    [BK_FITTINGS] = {sizeof(bk_fitting), offsetof(bk_fitting, production_id), .placed = true,
                     .list = offsetof(bk_fitting, production_id), .watch = bk_watch_fitting,
                     .follow = bk_follow_fitting},
    [BK_MATERIALS] = {sizeof(bk_material), BK_NO_OFFSET, .follow = bk_follow_material,
                      .weigh = bk_weigh_material, .part = bk_part_material},
    [BK_ORDERS] = {sizeof(bk_order), BK_NO_OFFSET, .follow = bk_follow_order, .part = bk_part_order},
    [BK_WORKS] = {sizeof(bk_work), BK_NO_OFFSET, .placed = true, .moves = true, .list = BK_NO_OFFSET,
                  .check = bk_check_work, .weigh = bk_weigh_work, .part = bk_part_work},
    [BK_WORK_STEPS] = {sizeof(bk_work_step), BK_NO_OFFSET, PLACED(bk_work_step, work_id),
                       .check = bk_check_work_step, .follow = bk_follow_work_step, .part = bk_part_work_step},
    [BK_NOTES] = {sizeof(bk_note), offsetof(bk_note, production_id), PLACED(bk_note, production_id)},
};
