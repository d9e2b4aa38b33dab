#include "bodkin/sheet/columns.h"

#include <string.h>

#define AT(record, field) offsetof(record, field)
#define MUST true
#define MAY false

enum {
    MINUTES_MOST = 1000000, // nearly two years without a pause
    HANDS_MOST = 99,
    EQUIPMENT_MOST = 999,
    GOOD_FOR_MOST = 36500, // a hundred years of days
    REST_HOURS_MOST = 10000
};

static const bk_column production_columns[] = {
    {"production", MUST, BK_CELL_NAME, AT(bk_production, name), .example = "The Winter Fair"},
    {"opens", MUST, BK_CELL_DAY, AT(bk_production, opens), .example = "2027-04-16"},
    {"currency", MAY, BK_CELL_CURRENCY, AT(bk_production, currency), .example = "GBP"},
    {"unit", MAY, BK_CELL_WORD, AT(bk_production, unit), .example = "cm", .words = &bk_length_unit_words},
    {"measures_good_for", MAY, BK_CELL_WHOLE, AT(bk_production, measures_good_for), .example = "180",
     .unit = "days", .least = 1, .most = GOOD_FOR_MOST},
    {"sheets", MAY, BK_CELL_VERSION, AT(bk_production, sheets), .example = "1"},
};

static const bk_column date_columns[] = {
    {"what", MUST, BK_CELL_WORD, AT(bk_date, what), .example = "parade", .words = &bk_occasion_words},
    {"on", MUST, BK_CELL_DAY, AT(bk_date, on), .example = "2027-04-09"},
    {"at", MAY, BK_CELL_TIME, AT(bk_date, at), .example = "19:30"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_date, note), .example = "in the small hall"},
};

static const bk_column people_columns[] = {
    {"person", MUST, BK_CELL_NAME, AT(bk_person, name), .example = "Ada Pell"},
    {"skills", MAY, BK_CELL_WORDS, AT(bk_person, skills), .example = "cut;machine", .words = &bk_kind_words},
    {"mon", MAY, BK_CELL_HOURS, AT(bk_person, hours[0]), .example = "10:00-13:00"},
    {"tue", MAY, BK_CELL_HOURS, AT(bk_person, hours[1]), .example = "10:00-13:00"},
    {"wed", MAY, BK_CELL_HOURS, AT(bk_person, hours[2]), .example = "10:00-13:00"},
    {"thu", MAY, BK_CELL_HOURS, AT(bk_person, hours[3]), .example = "10:00-13:00"},
    {"fri", MAY, BK_CELL_HOURS, AT(bk_person, hours[4]), .example = "10:00-13:00"},
    {"sat", MAY, BK_CELL_HOURS, AT(bk_person, hours[5]), .example = "10:00-13:00"},
    {"sun", MAY, BK_CELL_HOURS, AT(bk_person, hours[6]), .example = "10:00-13:00"},
    {"from", MAY, BK_CELL_DAY, AT(bk_person, from), .example = "2027-02-01"},
    {"until", MAY, BK_CELL_DAY, AT(bk_person, until), .example = "2027-04-16"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_person, note), .example = "brings her own machine"},
};

static const bk_column away_columns[] = {
    {"who", MUST, BK_CELL_NAME, AT(bk_away, who), .example = "Ada Pell"},
    {"from", MUST, BK_CELL_DAY, AT(bk_away, from), .example = "2027-03-01"},
    {"to", MUST, BK_CELL_DAY, AT(bk_away, to), .example = "2027-03-07"},
    {"reason", MAY, BK_CELL_TEXT, AT(bk_away, reason), .example = "on tour"},
};

static const bk_column equipment_columns[] = {
    {"equipment", MUST, BK_CELL_NAME, AT(bk_equipment, name), .example = "cutting table"},
    {"kinds", MUST, BK_CELL_WORDS, AT(bk_equipment, kinds), .example = "cut;draft", .words = &bk_kind_words},
    {"count", MAY, BK_CELL_WHOLE, AT(bk_equipment, count), .example = "2", .unit = "a number", .least = 1,
     .most = EQUIPMENT_MOST},
};

static const bk_column performer_columns[] = {
    {"performer", MUST, BK_CELL_NAME, AT(bk_performer, name), .example = "Ines Varga"},
    {"contact", MAY, BK_CELL_TEXT, AT(bk_performer, contact), .example = "stage door"},
    {"measures_good_for", MAY, BK_CELL_WHOLE, AT(bk_performer, measures_good_for), .example = "60",
     .unit = "days", .least = 1, .most = GOOD_FOR_MOST},
    {"note", MAY, BK_CELL_TEXT, AT(bk_performer, note), .example = "no wool next to the skin"},
};

static const bk_column measure_columns[] = {
    {"performer", MUST, BK_CELL_NAME, AT(bk_measure, performer), .example = "Ines Varga"},
    {"taken_on", MUST, BK_CELL_DAY, AT(bk_measure, taken_on), .example = "2027-02-03"},
    {"measure", MUST, BK_CELL_NAME, AT(bk_measure, name), .example = "waist girth"},
    {"value", MUST, BK_CELL_LENGTH, AT(bk_measure, value), .example = "92.5 cm"},
    {"over", MAY, BK_CELL_TEXT, AT(bk_measure, over), .example = "a T-shirt"},
    {"taken_by", MAY, BK_CELL_TEXT, AT(bk_measure, taken_by), .example = "Ada Pell"},
};

static const bk_column role_columns[] = {
    {"role", MUST, BK_CELL_NAME, AT(bk_role, name), .example = "The Miller"},
    {"performer", MAY, BK_CELL_NAME, AT(bk_role, performer), .example = "Ines Varga"},
    {"cover", MAY, BK_CELL_NAMES, AT(bk_role, cover), .example = "Ines Varga;Tomas Lind"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_role, note), .example = "dances in act two"},
};

static const bk_column costume_columns[] = {
    {"costume", MUST, BK_CELL_NAME, AT(bk_costume, number), .example = "4A"},
    {"role", MUST, BK_CELL_NAME, AT(bk_costume, role), .example = "The Miller"},
    {"title", MUST, BK_CELL_TEXT, AT(bk_costume, title), .example = "Working clothes"},
    {"due", MAY, BK_CELL_DAY, AT(bk_costume, due), .example = "2027-04-09"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_costume, note), .example = "wet in the last scene"},
};

static const bk_column piece_columns[] = {
    {"piece", MUST, BK_CELL_NAME, AT(bk_piece, name), .example = "4A-1"},
    {"costumes", MUST, BK_CELL_NAMES, AT(bk_piece, costumes), .example = "4A;4B"},
    {"title", MUST, BK_CELL_TEXT, AT(bk_piece, title), .example = "Linen shirt"},
    {"origin", MAY, BK_CELL_WORD, AT(bk_piece, origin), .example = "make", .words = &bk_origin_words},
    {"place", MAY, BK_CELL_TEXT, AT(bk_piece, place), .example = "rail 2"},
    {"out_with", MAY, BK_CELL_TEXT, AT(bk_piece, out_with), .example = "Tomas Lind"},
    {"out_since", MAY, BK_CELL_DAY, AT(bk_piece, out_since), .example = "2027-03-01"},
    {"back_by", MAY, BK_CELL_DAY, AT(bk_piece, back_by), .example = "2027-03-08"},
    {"from", MAY, BK_CELL_TEXT, AT(bk_piece, from), .example = "the town theatre"},
    {"cost", MAY, BK_CELL_MONEY, AT(bk_piece, cost), .example = "12.50", .currency = AT(bk_piece, currency)},
    {"due_back", MAY, BK_CELL_DAY, AT(bk_piece, due_back), .example = "2027-05-03"},
    {"returned_on", MAY, BK_CELL_DAY, AT(bk_piece, returned_on), .example = "2027-05-02"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_piece, note), .example = "cuffs turned once"},
};

static const bk_column step_columns[] = {
    {"piece", MUST, BK_CELL_NAME, AT(bk_step, piece), .example = "4A-1"},
    {"step", MUST, BK_CELL_NAME, AT(bk_step, key), .example = "cut"},
    {"title", MUST, BK_CELL_TEXT, AT(bk_step, title), .example = "Cut the linen"},
    {"kind", MUST, BK_CELL_WORD, AT(bk_step, kind), .example = "cut", .words = &bk_kind_words},
    {"minutes", MUST, BK_CELL_WHOLE, AT(bk_step, minutes), .example = "45", .unit = "minutes",
     .most = MINUTES_MOST},
    {"quickest", MAY, BK_CELL_WHOLE, AT(bk_step, quickest), .example = "30", .unit = "minutes",
     .most = MINUTES_MOST},
    {"longest", MAY, BK_CELL_WHOLE, AT(bk_step, longest), .example = "90", .unit = "minutes",
     .most = MINUTES_MOST},
    {"after", MAY, BK_CELL_AFTER, AT(bk_step, after), .example = "draft;4A-2/cut"},
    {"hands", MAY, BK_CELL_WHOLE, AT(bk_step, hands), .example = "2", .unit = "hands", .least = 1,
     .most = HANDS_MOST},
    {"level", MAY, BK_CELL_WHOLE, AT(bk_step, level), .example = "2", .unit = "a level",
     .least = BK_LEVEL_ANYONE, .most = BK_LEVEL_MAKER},
    {"rest", MAY, BK_CELL_REST, AT(bk_step, rest_minutes), .example = "12", .unit = "hours",
     .most = REST_HOURS_MOST},
    {"can_wait", MAY, BK_CELL_YES, AT(bk_step, can_wait), .example = "yes"},
    {"measures", MAY, BK_CELL_NAMES, AT(bk_step, measures), .example = "waist girth;nape to waist"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_step, note), .example = "mind the nap"},
    {"done_on", MAY, BK_CELL_DAY, AT(bk_step, done_on), .example = "2027-03-02"},
    {"done_by", MAY, BK_CELL_TEXT, AT(bk_step, done_by), .example = "Ada Pell"},
    {"took", MAY, BK_CELL_WHOLE, AT(bk_step, took), .example = "50", .unit = "minutes", .most = MINUTES_MOST},
};

static const bk_column material_columns[] = {
    {"material", MUST, BK_CELL_NAME, AT(bk_material, name), .example = "white linen"},
    {"unit", MUST, BK_CELL_WORD, AT(bk_material, unit), .example = "m", .words = &bk_material_unit_words},
    {"on_hand", MAY, BK_CELL_QUANTITY, AT(bk_material, on_hand), .example = "2.4", .least = INT64_MIN},
    {"width", MAY, BK_CELL_LENGTH, AT(bk_material, width), .example = "150 cm"},
    {"supplier", MAY, BK_CELL_TEXT, AT(bk_material, supplier), .example = "the mill shop"},
    {"price", MAY, BK_CELL_MONEY, AT(bk_material, price), .example = "8.90",
     .currency = AT(bk_material, currency)},
    {"note", MAY, BK_CELL_TEXT, AT(bk_material, note), .example = "wash before cutting"},
};

static const bk_column need_columns[] = {
    {"piece", MUST, BK_CELL_NAME, AT(bk_need, piece), .example = "4A-1"},
    {"step", MUST, BK_CELL_NAME, AT(bk_need, step), .example = "cut"},
    {"material", MUST, BK_CELL_NAME, AT(bk_need, material), .example = "white linen"},
    {"quantity", MUST, BK_CELL_QUANTITY, AT(bk_need, quantity), .example = "2.4"},
};

static const bk_column order_columns[] = {
    {"material", MUST, BK_CELL_NAME, AT(bk_order, material), .example = "white linen"},
    {"quantity", MUST, BK_CELL_QUANTITY, AT(bk_order, quantity), .example = "5"},
    {"ordered_on", MUST, BK_CELL_DAY, AT(bk_order, ordered_on), .example = "2027-02-10"},
    {"due_on", MAY, BK_CELL_DAY, AT(bk_order, due_on), .example = "2027-02-24"},
    {"arrived_on", MAY, BK_CELL_DAY, AT(bk_order, arrived_on), .example = "2027-02-23"},
    {"from", MAY, BK_CELL_TEXT, AT(bk_order, from), .example = "the mill shop"},
    {"cost", MAY, BK_CELL_MONEY, AT(bk_order, cost), .example = "44.50", .currency = AT(bk_order, currency)},
};

static const bk_column fitting_columns[] = {
    {"piece", MUST, BK_CELL_NAME, AT(bk_fitting, piece), .example = "4A-1"},
    {"step", MUST, BK_CELL_NAME, AT(bk_fitting, step), .example = "fit"},
    {"booked_at", MUST, BK_CELL_MOMENT, AT(bk_fitting, booked_at), .example = "2027-03-05T14:30"},
    {"performer", MAY, BK_CELL_NAME, AT(bk_fitting, performer), .example = "Ines Varga"},
    {"minutes", MAY, BK_CELL_WHOLE, AT(bk_fitting, minutes), .example = "20", .unit = "minutes",
     .most = MINUTES_MOST},
    {"held_on", MAY, BK_CELL_DAY, AT(bk_fitting, held_on), .example = "2027-03-05"},
    {"outcome", MAY, BK_CELL_WORD, AT(bk_fitting, outcome), .example = "fits", .words = &bk_outcome_words},
    {"note", MAY, BK_CELL_TEXT, AT(bk_fitting, note), .example = "let out the side seams"},
};

static const bk_column work_columns[] = {
    {"work", MUST, BK_CELL_NAME, AT(bk_work, name), .example = "Sack back gown"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_work, note), .example = "as made for the spring show"},
};

static const bk_column work_step_columns[] = {
    {"work", MUST, BK_CELL_NAME, AT(bk_work_step, work), .example = "Sack back gown"},
    {"step", MUST, BK_CELL_NAME, AT(bk_work_step, key), .example = "cut"},
    {"title", MUST, BK_CELL_TEXT, AT(bk_work_step, title), .example = "Cut the silk"},
    {"kind", MUST, BK_CELL_WORD, AT(bk_work_step, kind), .example = "cut", .words = &bk_kind_words},
    {"minutes", MUST, BK_CELL_WHOLE, AT(bk_work_step, minutes), .example = "45", .unit = "minutes",
     .most = MINUTES_MOST},
    {"quickest", MAY, BK_CELL_WHOLE, AT(bk_work_step, quickest), .example = "30", .unit = "minutes",
     .most = MINUTES_MOST},
    {"longest", MAY, BK_CELL_WHOLE, AT(bk_work_step, longest), .example = "90", .unit = "minutes",
     .most = MINUTES_MOST},
    {"after", MAY, BK_CELL_NAMES, AT(bk_work_step, after), .example = "draft;ft"},
    {"hands", MAY, BK_CELL_WHOLE, AT(bk_work_step, hands), .example = "2", .unit = "hands", .least = 1,
     .most = HANDS_MOST},
    {"level", MAY, BK_CELL_WHOLE, AT(bk_work_step, level), .example = "2", .unit = "a level",
     .least = BK_LEVEL_ANYONE, .most = BK_LEVEL_MAKER},
    {"rest", MAY, BK_CELL_REST, AT(bk_work_step, rest_minutes), .example = "12", .unit = "hours",
     .most = REST_HOURS_MOST},
    {"can_wait", MAY, BK_CELL_YES, AT(bk_work_step, can_wait), .example = "yes"},
    {"measures", MAY, BK_CELL_NAMES, AT(bk_work_step, measures), .example = "waist girth;nape to waist"},
    {"note", MAY, BK_CELL_TEXT, AT(bk_work_step, note), .example = "mind the nap"},
};

static const bk_column note_columns[] = {
    {"noted_on", MUST, BK_CELL_DAY, AT(bk_note, noted_on), .example = "2027-03-08"},
    {"from", MAY, BK_CELL_WORD, AT(bk_note, source), .example = "rehearsal", .words = &bk_note_source_words},
    {"who", MAY, BK_CELL_TEXT, AT(bk_note, who), .example = "the director"},
    {"costume", MAY, BK_CELL_NAME, AT(bk_note, costume), .example = "4A"},
    {"piece", MAY, BK_CELL_NAME, AT(bk_note, piece), .example = "4A-1"},
    {"step", MAY, BK_CELL_NAME, AT(bk_note, step), .example = "alt"},
    {"what", MUST, BK_CELL_TEXT, AT(bk_note, what), .example = "cuffs catch on the basket"},
    {"done_on", MAY, BK_CELL_DAY, AT(bk_note, done_on), .example = "2027-03-09"},
};

#define SHEET(member, record, table, keys, what) \
    { \
        .file = #member ".csv", .noun = what, .columns = table, \
        .column_count = sizeof(table) / sizeof *(table), .key_count = keys, .record_size = sizeof(record), \
        .line = AT(record, line), .rows = AT(bk_folder, member) \
    }

const bk_sheet bk_sheets[BK_SHEETS] = {
    [BK_SHEET_PRODUCTION] = SHEET(production, bk_production, production_columns, 0, "production"),
    [BK_SHEET_DATES] = SHEET(dates, bk_date, date_columns, 0, "date"),
    [BK_SHEET_PEOPLE] = SHEET(people, bk_person, people_columns, 1, "person"),
    [BK_SHEET_AWAY] = SHEET(away, bk_away, away_columns, 0, "absence"),
    [BK_SHEET_EQUIPMENT] = SHEET(equipment, bk_equipment, equipment_columns, 1, "piece of equipment"),
    [BK_SHEET_PERFORMERS] = SHEET(performers, bk_performer, performer_columns, 1, "performer"),
    [BK_SHEET_MEASURES] = SHEET(measures, bk_measure, measure_columns, 3, "measure"),
    [BK_SHEET_ROLES] = SHEET(roles, bk_role, role_columns, 1, "role"),
    [BK_SHEET_COSTUMES] = SHEET(costumes, bk_costume, costume_columns, 1, "costume"),
    [BK_SHEET_PIECES] = SHEET(pieces, bk_piece, piece_columns, 1, "piece"),
    [BK_SHEET_STEPS] = SHEET(steps, bk_step, step_columns, 2, "step"),
    [BK_SHEET_MATERIALS] = SHEET(materials, bk_material, material_columns, 1, "material"),
    [BK_SHEET_NEEDS] = SHEET(needs, bk_need, need_columns, 3, "need"),
    [BK_SHEET_ORDERS] = SHEET(orders, bk_order, order_columns, 0, "order"),
    [BK_SHEET_FITTINGS] = SHEET(fittings, bk_fitting, fitting_columns, 0, "fitting"),
    [BK_SHEET_WORKS] = SHEET(works, bk_work, work_columns, 1, "order of work"),
    [BK_SHEET_WORK_STEPS] = SHEET(work_steps, bk_work_step, work_step_columns, 2, "step"),
    [BK_SHEET_NOTES] = SHEET(notes, bk_note, note_columns, 0, "note"),
};

bk_sheet_number bk_sheet_find(const char *file)
{
    size_t sheet = 0;
    while (sheet < BK_SHEETS && strcmp(bk_sheets[sheet].file, file) != 0)
        sheet++;
    return (bk_sheet_number)sheet;
}

size_t bk_column_find(const bk_sheet *sheet, const char *name)
{
    size_t column = 0;
    while (column < sheet->column_count && strcmp(sheet->columns[column].name, name) != 0)
        column++;
    return column;
}

bk_sheet_rows bk_sheet_rows_get(const bk_folder *folder, const bk_sheet *sheet)
{
    bk_sheet_rows rows;
    memcpy(&rows, (const char *)folder + sheet->rows, sizeof rows);
    return rows;
}

void bk_sheet_rows_set(bk_folder *folder, const bk_sheet *sheet, bk_sheet_rows rows)
{
    memcpy((char *)folder + sheet->rows, &rows, sizeof rows);
}

const void *bk_sheet_row(const bk_sheet *sheet, bk_sheet_rows rows, size_t row)
{
    return (const char *)rows.items + row * sheet->record_size;
}

int bk_sheet_line(const bk_sheet *sheet, const void *record)
{
    int line = 0;
    memcpy(&line, (const char *)record + sheet->line, sizeof line);
    return line;
}

const char *bk_sheet_text(const void *record, size_t offset)
{
    const char *text = NULL;
    memcpy(&text, (const char *)record + offset, sizeof text);
    return text;
}

// What stands in a field of each type while nothing is known.
static const char *const no_text = NULL;
static const int no_word = BK_NO_WORD;
static const bk_day no_day = BK_NO_DAY;
static const bk_minute no_time = BK_NO_TIME;
static const bk_moment no_moment = {BK_NO_DAY, BK_NO_TIME};
static const int64_t no_number = BK_NOT_KNOWN; // BK_NO_AMOUNT is the same
static const int64_t no = 0;

_Static_assert(BK_NOT_KNOWN == BK_NO_AMOUNT, "unknown amounts and numbers are cleared alike");

static const struct {
    const void *value;
    size_t size;
} unknown[BK_CELL_TYPES] = {
    [BK_CELL_NAME] = {&no_text, sizeof no_text},
    [BK_CELL_TEXT] = {&no_text, sizeof no_text},
    [BK_CELL_NAMES] = {&no_text, sizeof no_text},
    [BK_CELL_AFTER] = {&no_text, sizeof no_text},
    [BK_CELL_WORDS] = {&no_text, sizeof no_text},
    [BK_CELL_WORD] = {&no_word, sizeof no_word},
    [BK_CELL_HOURS] = {&no_text, sizeof no_text},
    [BK_CELL_CURRENCY] = {&no_text, sizeof no_text},
    [BK_CELL_DAY] = {&no_day, sizeof no_day},
    [BK_CELL_TIME] = {&no_time, sizeof no_time},
    [BK_CELL_MOMENT] = {&no_moment, sizeof no_moment},
    [BK_CELL_LENGTH] = {&no_number, sizeof no_number},
    [BK_CELL_QUANTITY] = {&no_number, sizeof no_number},
    [BK_CELL_MONEY] = {&no_number, sizeof no_number},
    [BK_CELL_WHOLE] = {&no_number, sizeof no_number},
    [BK_CELL_VERSION] = {&no_number, sizeof no_number},
    [BK_CELL_REST] = {&no_number, sizeof no_number},
    [BK_CELL_YES] = {&no, sizeof no},
};

void bk_column_clear(const bk_column *column, void *record)
{
    memcpy((char *)record + column->offset, unknown[column->type].value, unknown[column->type].size);
    if (column->type == BK_CELL_MONEY)
        memcpy((char *)record + column->currency, &no_text, sizeof no_text);
}

void bk_sheet_clear(const bk_sheet *sheet, void *record)
{
    memset(record, 0, sheet->record_size);
    for (size_t i = 0; i < sheet->column_count; i++)
        bk_column_clear(&sheet->columns[i], record);
    if (sheet == &bk_sheets[BK_SHEET_PRODUCTION])
        ((bk_production *)record)->put_away_on = BK_NO_DAY;
}
