#include "bodkin/store/families.h"

#include "bodkin/store/records_bench.h"

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

static const char *const movement_items[] = {"count", "delivery", "use", "return"};
const bk_words bk_movement_words = {"kind of movement", movement_items, COUNT(movement_items)};

// A field read and written; one only read; one that stands in the sheets but not in the row.
#define FIELD(record, member, kind) \
    { \
        offsetof(record, member), BK_FIELD_##kind, BK_FIELD_BOTH, NULL \
    }
#define READ(record, member, kind) \
    { \
        offsetof(record, member), BK_FIELD_##kind, BK_FIELD_READ, NULL \
    }
#define LEFT(record, member, kind) \
    { \
        offsetof(record, member), BK_FIELD_##kind, BK_FIELD_LEFT, NULL \
    }
#define WORD(record, member, words) \
    { \
        offsetof(record, member), BK_FIELD_WORD, BK_FIELD_BOTH, &(words) \
    }

static const bk_field production_fields[] = {
    FIELD(bk_production, id, ID),
    FIELD(bk_production, name, TEXT),
    FIELD(bk_production, opens, DAY),
    FIELD(bk_production, currency, TEXT),
    WORD(bk_production, unit, bk_length_unit_words),
    FIELD(bk_production, measures_good_for, NUMBER),
    FIELD(bk_production, put_away_on, DAY),
    LEFT(bk_production, sheets, NUMBER),
};

static const bk_field date_fields[] = {
    FIELD(bk_date, id, ID),  FIELD(bk_date, production_id, ID), WORD(bk_date, what, bk_occasion_words),
    FIELD(bk_date, on, DAY), FIELD(bk_date, at, TIME),          FIELD(bk_date, note, TEXT),
};

static const bk_field person_fields[] = {
    FIELD(bk_person, id, ID),         FIELD(bk_person, name, TEXT),     FIELD(bk_person, skills, TEXT),
    FIELD(bk_person, hours[0], TEXT), FIELD(bk_person, hours[1], TEXT), FIELD(bk_person, hours[2], TEXT),
    FIELD(bk_person, hours[3], TEXT), FIELD(bk_person, hours[4], TEXT), FIELD(bk_person, hours[5], TEXT),
    FIELD(bk_person, hours[6], TEXT), FIELD(bk_person, from, DAY),      FIELD(bk_person, until, DAY),
    FIELD(bk_person, note, TEXT),
};

static const bk_field away_fields[] = {
    FIELD(bk_away, id, ID),    FIELD(bk_away, person_id, ID), FIELD(bk_away, performer_id, ID),
    FIELD(bk_away, from, DAY), FIELD(bk_away, to, DAY),       FIELD(bk_away, reason, TEXT),
    READ(bk_away, who, TEXT),
};

static const bk_field performer_fields[] = {
    FIELD(bk_performer, id, ID),
    FIELD(bk_performer, name, TEXT),
    FIELD(bk_performer, measures_good_for, NUMBER),
    FIELD(bk_performer, note, TEXT),
};

static const bk_field link_fields[] = {
    FIELD(bk_link, from_id, ID),
    FIELD(bk_link, to_id, ID),
    READ(bk_link, position, NUMBER),
};

static const bk_field role_fields[] = {
    FIELD(bk_role, id, ID),     FIELD(bk_role, production_id, ID), FIELD(bk_role, performer_id, ID),
    FIELD(bk_role, name, TEXT), FIELD(bk_role, note, TEXT),
};

static const bk_field costume_fields[] = {
    FIELD(bk_costume, id, ID),       FIELD(bk_costume, production_id, ID), FIELD(bk_costume, role_id, ID),
    FIELD(bk_costume, number, TEXT), FIELD(bk_costume, title, TEXT),       FIELD(bk_costume, due, DAY),
    FIELD(bk_costume, note, TEXT),
};

static const bk_field piece_fields[] = {
    FIELD(bk_piece, id, ID),
    FIELD(bk_piece, production_id, ID),
    FIELD(bk_piece, name, TEXT),
    FIELD(bk_piece, title, TEXT),
    WORD(bk_piece, origin, bk_origin_words),
    FIELD(bk_piece, place, TEXT),
    FIELD(bk_piece, out_with, TEXT),
    FIELD(bk_piece, out_since, DAY),
    FIELD(bk_piece, back_by, DAY),
    FIELD(bk_piece, from, TEXT),
    FIELD(bk_piece, due_back, DAY),
    FIELD(bk_piece, returned_on, DAY),
    FIELD(bk_piece, note, TEXT),
    LEFT(bk_piece, cost, NUMBER),
};

static const bk_field step_fields[] = {
    FIELD(bk_step, id, ID),           FIELD(bk_step, production_id, ID), FIELD(bk_step, piece_id, ID),
    FIELD(bk_step, key, TEXT),        FIELD(bk_step, title, TEXT),       WORD(bk_step, kind, bk_kind_words),
    FIELD(bk_step, minutes, NUMBER),  FIELD(bk_step, quickest, NUMBER),  FIELD(bk_step, longest, NUMBER),
    FIELD(bk_step, hands, NUMBER),    FIELD(bk_step, level, NUMBER),     FIELD(bk_step, rest_minutes, NUMBER),
    FIELD(bk_step, can_wait, NUMBER), FIELD(bk_step, measures, SHARED),  FIELD(bk_step, note, TEXT),
    FIELD(bk_step, done_on, DAY),     FIELD(bk_step, done_by, SHARED),   FIELD(bk_step, took, NUMBER),
};

static const bk_field rail_step_fields[] = {
    FIELD(bk_step, id, ID),           FIELD(bk_step, piece_id, ID),        FIELD(bk_step, key, TEXT),
    FIELD(bk_step, title, TEXT),      WORD(bk_step, kind, bk_kind_words),  FIELD(bk_step, minutes, NUMBER),
    FIELD(bk_step, can_wait, NUMBER), FIELD(bk_step, measures, SHARED),    FIELD(bk_step, done_on, DAY),
    LEFT(bk_step, quickest, NUMBER),  LEFT(bk_step, longest, NUMBER),      LEFT(bk_step, hands, NUMBER),
    LEFT(bk_step, level, NUMBER),     LEFT(bk_step, rest_minutes, NUMBER), LEFT(bk_step, took, NUMBER),
};

static const bk_field need_fields[] = {
    FIELD(bk_need, id, ID),
    FIELD(bk_need, step_id, ID),
    FIELD(bk_need, material_id, ID),
    FIELD(bk_need, quantity, AMOUNT),
};

static const bk_field fitting_fields[] = {
    FIELD(bk_fitting, id, ID),
    FIELD(bk_fitting, production_id, ID),
    FIELD(bk_fitting, step_id, ID),
    FIELD(bk_fitting, performer_id, ID),
    FIELD(bk_fitting, booked_at, MOMENT),
    FIELD(bk_fitting, minutes, NUMBER),
    FIELD(bk_fitting, held_on, DAY),
    WORD(bk_fitting, outcome, bk_outcome_words),
    FIELD(bk_fitting, note, TEXT),
};

static const bk_field material_fields[] = {
    FIELD(bk_material, id, ID),
    FIELD(bk_material, name, TEXT),
    WORD(bk_material, unit, bk_material_unit_words),
    FIELD(bk_material, width, NUMBER),
    FIELD(bk_material, supplier, TEXT),
    FIELD(bk_material, note, TEXT),
    READ(bk_material, on_hand, SUM),
    LEFT(bk_material, price, NUMBER),
};

static const bk_field order_fields[] = {
    FIELD(bk_order, id, ID),          FIELD(bk_order, material_id, ID), FIELD(bk_order, quantity, AMOUNT),
    FIELD(bk_order, ordered_on, DAY), FIELD(bk_order, due_on, DAY),     FIELD(bk_order, arrived_on, DAY),
    FIELD(bk_order, from, TEXT),      LEFT(bk_order, cost, NUMBER),
};

static const bk_field movement_fields[] = {
    FIELD(bk_movement, id, ID),
    FIELD(bk_movement, material_id, ID),
    WORD(bk_movement, kind, bk_movement_words),
    FIELD(bk_movement, quantity, SUM),
    FIELD(bk_movement, moved_on, DAY),
    FIELD(bk_movement, order_id, ID),
    FIELD(bk_movement, step_id, ID),
    FIELD(bk_movement, note, TEXT),
};

static const bk_field measure_fields[] = {
    FIELD(bk_measure, sheet_id, ID),     FIELD(bk_measure, name_id, ID),
    FIELD(bk_measure, value, NUMBER),    FIELD(bk_measure, over, SHARED),
    FIELD(bk_measure, taken_by, SHARED), READ(bk_measure, position, NUMBER),
    READ(bk_measure, performer_id, ID),  READ(bk_measure, taken_on, DAY),
    READ(bk_measure, name, SHARED),
};

static const bk_field named_fields[] = {
    FIELD(bk_named, id, ID),
    FIELD(bk_named, name, TEXT),
};

static const bk_field sheet_day_fields[] = {
    FIELD(bk_sheet_day, id, ID),
    FIELD(bk_sheet_day, performer_id, ID),
    FIELD(bk_sheet_day, taken_on, DAY),
};

static const bk_field contact_fields[] = {
    FIELD(bk_private, id, ID),
    FIELD(bk_private, text, TEXT),
    LEFT(bk_private, amount, NUMBER),
};

static const bk_field amount_fields[] = {
    FIELD(bk_private, id, ID),
    FIELD(bk_private, amount, AMOUNT),
    FIELD(bk_private, currency, SHARED),
};

static const bk_field work_fields[] = {
    FIELD(bk_work, id, ID),
    FIELD(bk_work, name, TEXT),
    FIELD(bk_work, note, TEXT),
    FIELD(bk_work, ready, NUMBER),
};

static const bk_field work_step_fields[] = {
    FIELD(bk_work_step, id, ID),
    FIELD(bk_work_step, work_id, ID),
    FIELD(bk_work_step, key, TEXT),
    FIELD(bk_work_step, title, TEXT),
    WORD(bk_work_step, kind, bk_kind_words),
    FIELD(bk_work_step, minutes, NUMBER),
    FIELD(bk_work_step, quickest, NUMBER),
    FIELD(bk_work_step, longest, NUMBER),
    FIELD(bk_work_step, after, TEXT),
    FIELD(bk_work_step, hands, NUMBER),
    FIELD(bk_work_step, level, NUMBER),
    FIELD(bk_work_step, rest_minutes, NUMBER),
    FIELD(bk_work_step, can_wait, NUMBER),
    FIELD(bk_work_step, measures, TEXT),
    FIELD(bk_work_step, note, TEXT),
    READ(bk_work_step, work, SHARED),
};

static const bk_field equipment_fields[] = {
    FIELD(bk_equipment, id, ID),
    FIELD(bk_equipment, name, TEXT),
    FIELD(bk_equipment, kinds, TEXT),
    FIELD(bk_equipment, count, NUMBER),
};

static const bk_field note_fields[] = {
    FIELD(bk_note, id, ID),
    FIELD(bk_note, production_id, ID),
    FIELD(bk_note, costume_id, ID),
    FIELD(bk_note, piece_id, ID),
    FIELD(bk_note, step_id, ID),
    FIELD(bk_note, noted_on, DAY),
    WORD(bk_note, source, bk_note_source_words),
    FIELD(bk_note, who, SHARED),
    FIELD(bk_note, what, TEXT),
    FIELD(bk_note, done_on, DAY),
};

static const bk_field running_fields[] = {
    FIELD(bk_running, id, ID),
    FIELD(bk_running, step_id, ID),
    FIELD(bk_running, who, TEXT),
    FIELD(bk_running, started_at, TEXT),
};

static const bk_field setting_fields[] = {
    FIELD(bk_setting, id, ID),
    FIELD(bk_setting, name, TEXT),
    FIELD(bk_setting, value, TEXT),
};

#define RECORD(record, list) .size = sizeof(record), .fields = (list), .field_count = COUNT(list)
// Records with an id of their own; links; what stands in a private table beside its record; another view of a
// family.
#define OWN(many, one) \
    .read = BK_SQL_READ_##many, .add = BK_SQL_ADD_##one, .put = BK_SQL_PUT_##one, .get = BK_SQL_GET_##one, \
    .remove = BK_SQL_REMOVE_##one, .remove_all = BK_NO_STATEMENT, .has_id = true
#define LINK(many, one) \
    .read = BK_SQL_READ_##many, .add = BK_SQL_ADD_##one, .put = BK_NO_STATEMENT, .get = BK_NO_STATEMENT, \
    .remove = BK_SQL_REMOVE_ONE_##one, .remove_all = BK_SQL_REMOVE_EACH_##one, .places = BK_NO_STATEMENT, \
    .place = BK_NO_STATEMENT, .last_place = BK_SQL_LAST_##one, .placed = true
#define PRIVATE(many, one) \
    .read = BK_SQL_READ_##many, .add = BK_SQL_PUT_##one, .put = BK_SQL_PUT_##one, .get = BK_SQL_GET_##one, \
    .remove = BK_SQL_REMOVE_##one, .remove_all = BK_NO_STATEMENT, UNPLACED
#define READ_ONLY(many) \
    .read = BK_SQL_READ_##many, .add = BK_NO_STATEMENT, .put = BK_NO_STATEMENT, .get = BK_NO_STATEMENT, \
    .remove = BK_NO_STATEMENT, .remove_all = BK_NO_STATEMENT, UNPLACED
// Whether their rows have a place in a list that can be changed.
#define PLACED(many, one) \
    .places = BK_SQL_PLACES_##many, .place = BK_SQL_PLACE_##one, .last_place = BK_SQL_LAST_##one, \
    .placed = true
#define UNPLACED .places = BK_NO_STATEMENT, .place = BK_NO_STATEMENT, .last_place = BK_NO_STATEMENT

const bk_family_table bk_families[BK_FAMILIES] = {
    [BK_PRODUCTIONS] = {"production", RECORD(bk_production, production_fields), OWN(PRODUCTIONS, PRODUCTION),
                        UNPLACED},
    [BK_DATES] = {"date", RECORD(bk_date, date_fields), OWN(DATES, DATE), UNPLACED, .key = BK_KEY_PRODUCTION},
    [BK_PEOPLE] = {"person", RECORD(bk_person, person_fields), OWN(PEOPLE, PERSON), UNPLACED},
    [BK_AWAYS] = {"absence", RECORD(bk_away, away_fields), OWN(AWAYS, AWAY), UNPLACED},
    [BK_PERFORMERS] = {"performer", RECORD(bk_performer, performer_fields), OWN(PERFORMERS, PERFORMER),
                       UNPLACED},
    [BK_COMPANY_PERFORMERS] = {"performer of the company", RECORD(bk_performer, performer_fields),
                               READ_ONLY(COMPANY_PERFORMERS), .key = BK_KEY_PRODUCTION},
    [BK_COMPANY] = {"place in the company", RECORD(bk_link, link_fields), LINK(COMPANY, COMPANY),
                    .key = BK_KEY_PRODUCTION},
    [BK_ROLES] = {"role", RECORD(bk_role, role_fields), OWN(ROLES, ROLE), .key = BK_KEY_PRODUCTION,
                  PLACED(ROLES, ROLE)},
    [BK_COVERS] = {"cover", RECORD(bk_link, link_fields), LINK(COVERS, COVER), .key = BK_KEY_PRODUCTION},
    [BK_COSTUMES] = {"costume", RECORD(bk_costume, costume_fields), OWN(COSTUMES, COSTUME),
                     .key = BK_KEY_PRODUCTION, PLACED(COSTUMES, COSTUME)},
    [BK_PIECES] = {"piece", RECORD(bk_piece, piece_fields), OWN(PIECES, PIECE), .key = BK_KEY_PRODUCTION,
                   PLACED(PIECES, PIECE)},
    [BK_PIECE_COSTUMES] = {"piece of a costume", RECORD(bk_link, link_fields),
                           LINK(PIECE_COSTUMES, PIECE_COSTUME), .key = BK_KEY_PRODUCTION},
    [BK_STEPS] = {"step", RECORD(bk_step, step_fields), OWN(STEPS, STEP), .key = BK_KEY_PRODUCTION,
                  PLACED(STEPS, STEP)},
    [BK_RAIL_STEPS] = {"step", RECORD(bk_step, rail_step_fields), READ_ONLY(RAIL_STEPS),
                       .key = BK_KEY_PRODUCTION},
    [BK_STEP_AFTERS] = {"order of two steps", RECORD(bk_link, link_fields), LINK(STEP_AFTERS, STEP_AFTER),
                        .key = BK_KEY_PRODUCTION},
    [BK_NEEDS] = {"need", RECORD(bk_need, need_fields), OWN(NEEDS, NEED), .key = BK_KEY_PRODUCTION,
                  PLACED(NEEDS, NEED)},
    [BK_FITTINGS] = {"fitting", RECORD(bk_fitting, fitting_fields), OWN(FITTINGS, FITTING),
                     .key = BK_KEY_PRODUCTION, PLACED(FITTINGS, FITTING)},
    [BK_MATERIALS] = {"material", RECORD(bk_material, material_fields), OWN(MATERIALS, MATERIAL), UNPLACED},
    [BK_ORDERS] = {"order", RECORD(bk_order, order_fields), OWN(ORDERS, ORDER), UNPLACED},
    [BK_MOVEMENTS] = {"movement", RECORD(bk_movement, movement_fields), OWN(MOVEMENTS, MOVEMENT), UNPLACED,
                      .key = BK_KEY_MATERIAL},
    [BK_MEASURES] = {"measure", RECORD(bk_measure, measure_fields), .read = BK_SQL_READ_MEASURES,
                     .add = BK_SQL_ADD_MEASURE, .put = BK_SQL_PUT_MEASURE, .get = BK_NO_STATEMENT,
                     .remove = BK_SQL_REMOVE_MEASURE, .remove_all = BK_NO_STATEMENT,
                     .places = BK_NO_STATEMENT, .place = BK_NO_STATEMENT, .last_place = BK_SQL_LAST_MEASURE,
                     .key = BK_KEY_PRODUCTION, .placed = true},
    [BK_MEASURES_OF_SHEET] = {"measure", RECORD(bk_measure, measure_fields), READ_ONLY(MEASURES_OF_SHEET),
                              .key = BK_KEY_SHEET},
    [BK_MEASURE_NAMES] = {"name of a measure", RECORD(bk_named, named_fields),
                          .read = BK_SQL_READ_MEASURE_NAMES, .add = BK_SQL_ADD_MEASURE_NAME,
                          .put = BK_SQL_PUT_MEASURE_NAME, .get = BK_SQL_GET_MEASURE_NAME,
                          .remove = BK_NO_STATEMENT, .remove_all = BK_NO_STATEMENT, UNPLACED, .has_id = true},
    [BK_MEASURE_SHEETS] = {"measure sheet", RECORD(bk_sheet_day, sheet_day_fields),
                           OWN(MEASURE_SHEETS, MEASURE_SHEET), UNPLACED},
    [BK_CONTACTS] = {"contact", RECORD(bk_private, contact_fields), PRIVATE(CONTACTS, CONTACT)},
    [BK_PRICES] = {"price", RECORD(bk_private, amount_fields), PRIVATE(PRICES, PRICE)},
    [BK_ORDER_COSTS] = {"cost", RECORD(bk_private, amount_fields), PRIVATE(ORDER_COSTS, ORDER_COST)},
    [BK_PIECE_COSTS] = {"cost", RECORD(bk_private, amount_fields), PRIVATE(PIECE_COSTS, PIECE_COST),
                        .key = BK_KEY_PRODUCTION},
    [BK_WORKS] = {"order of work", RECORD(bk_work, work_fields), OWN(WORKS, WORK), PLACED(WORKS, WORK),
                  .one_list = true},
    [BK_WORK_STEPS] = {"step of an order of work", RECORD(bk_work_step, work_step_fields),
                       OWN(WORK_STEPS, WORK_STEP), PLACED(WORK_STEPS, WORK_STEP)},
    [BK_EQUIPMENT] = {"piece of equipment", RECORD(bk_equipment, equipment_fields), OWN(EQUIPMENT, EQUIPMENT),
                      PLACED(EQUIPMENT, EQUIPMENT), .one_list = true},
    [BK_NOTES] = {"note", RECORD(bk_note, note_fields), OWN(NOTES, NOTE), .key = BK_KEY_PRODUCTION,
                  PLACED(NOTES, NOTE)},
    [BK_RUNNINGS] = {"running clock", RECORD(bk_running, running_fields), OWN(RUNNINGS, RUNNING), UNPLACED},
    [BK_SETTINGS] = {"setting", RECORD(bk_setting, setting_fields), OWN(SETTINGS, SETTING), UNPLACED},
};
