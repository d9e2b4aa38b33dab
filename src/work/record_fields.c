#include "bodkin/work/record_fields.h"

#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/change.h"

enum {
    MINUTES_MOST = 1000000, // nearly two years without a pause
    REST_MOST = 10000 * 60, // minutes
    HANDS_MOST = 99,
    EQUIPMENT_MOST = 999,
    GOOD_FOR_MOST = 36500, // a hundred years of days
    KILOMETRE = 1000000000 // micrometres
};

typedef struct filled_field {
    const char *column, *name; ///< of the sheet, and in words
    bool must;
    bk_filled_type type;
    size_t offset;
    int64_t least, most; ///< of a number
} filled_field;

#define MAY(column, name, type, record, field) \
    { \
        column, name, false, BK_FILLED_##type, offsetof(record, field), 0, 0 \
    }
#define MUST(column, name, type, record, field) \
    { \
        column, name, true, BK_FILLED_##type, offsetof(record, field), 0, 0 \
    }
#define NUMBER(column, name, record, field, least, most) \
    { \
        column, name, false, BK_FILLED_NUMBER, offsetof(record, field), least, most \
    }
#define MUST_NUMBER(column, name, record, field, least, most) \
    { \
        column, name, true, BK_FILLED_NUMBER, offsetof(record, field), least, most \
    }

static const filled_field production_fields[] = {
    MUST("production", "name", NAME, bk_production, name),
    MUST("opens", "opens", DAY, bk_production, opens),
    MAY("currency", "currency", CODE, bk_production, currency),
    MAY("unit", "unit", WORD, bk_production, unit),
    NUMBER("measures_good_for", "measures good for", bk_production, measures_good_for, 1, GOOD_FOR_MOST),
    MAY("put_away_on", "put away", DAY, bk_production, put_away_on),
};

static const filled_field date_fields[] = {
    MUST("what", "what", WORD, bk_date, what),
    MUST("on", "on", DAY, bk_date, on),
    MAY("at", "at", TIME, bk_date, at),
    MAY("note", "note", TEXT, bk_date, note),
};

static const filled_field person_fields[] = {
    MUST("person", "name", NAME, bk_person, name), MAY("skills", "skills", KINDS, bk_person, skills),
    MAY("mon", "mon", HOURS, bk_person, hours[0]), MAY("tue", "tue", HOURS, bk_person, hours[1]),
    MAY("wed", "wed", HOURS, bk_person, hours[2]), MAY("thu", "thu", HOURS, bk_person, hours[3]),
    MAY("fri", "fri", HOURS, bk_person, hours[4]), MAY("sat", "sat", HOURS, bk_person, hours[5]),
    MAY("sun", "sun", HOURS, bk_person, hours[6]), MAY("from", "from", DAY, bk_person, from),
    MAY("until", "until", DAY, bk_person, until),  MAY("note", "note", TEXT, bk_person, note),
};

static const filled_field away_fields[] = {
    MUST("who", "who", NAME, bk_away, who),
    MUST("from", "from", DAY, bk_away, from),
    MUST("to", "to", DAY, bk_away, to),
    MAY("reason", "reason", TEXT, bk_away, reason),
};

static const filled_field performer_fields[] = {
    MUST("performer", "name", NAME, bk_performer, name),
    MAY("contact", "contact", TEXT, bk_performer, contact),
    NUMBER("measures_good_for", "measures good for", bk_performer, measures_good_for, 1, GOOD_FOR_MOST),
    MAY("note", "note", TEXT, bk_performer, note),
};

static const filled_field role_fields[] = {
    MUST("role", "name", NAME, bk_role, name),
    MAY("performer", "performer", NAME, bk_role, performer),
    MAY("cover", "cover", LIST, bk_role, cover),
    MAY("note", "note", TEXT, bk_role, note),
};

static const filled_field costume_fields[] = {
    MUST("costume", "number", NAME, bk_costume, number), MUST("role", "role", NAME, bk_costume, role),
    MUST("title", "title", TEXT, bk_costume, title),     MAY("due", "due", DAY, bk_costume, due),
    MAY("note", "note", TEXT, bk_costume, note),
};

static const filled_field piece_fields[] = {
    MUST("piece", "key", NAME, bk_piece, name),
    MUST("costumes", "costumes", LIST, bk_piece, costumes),
    MUST("title", "title", TEXT, bk_piece, title),
    MAY("origin", "origin", WORD, bk_piece, origin),
    MAY("place", "place", TEXT, bk_piece, place),
    MAY("out_with", "out with", TEXT, bk_piece, out_with),
    MAY("out_since", "out since", DAY, bk_piece, out_since),
    MAY("back_by", "back by", DAY, bk_piece, back_by),
    MAY("from", "from", TEXT, bk_piece, from),
    NUMBER("cost", "cost", bk_piece, cost, 0, BK_MONEY_MOST),
    MAY("cost", "cost", CODE, bk_piece, currency),
    MAY("due_back", "due back", DAY, bk_piece, due_back),
    MAY("returned_on", "returned on", DAY, bk_piece, returned_on),
    MAY("note", "note", TEXT, bk_piece, note),
};

#define STEP_FIELDS(record) \
    MUST("step", "key", NAME, record, key), MUST("title", "title", TEXT, record, title), \
        MUST("kind", "kind", WORD, record, kind), \
        MUST_NUMBER("minutes", "minutes", record, minutes, 0, MINUTES_MOST), \
        NUMBER("quickest", "quickest", record, quickest, 0, MINUTES_MOST), \
        NUMBER("longest", "longest", record, longest, 0, MINUTES_MOST), \
        NUMBER("hands", "hands", record, hands, 1, HANDS_MOST), \
        NUMBER("level", "level", record, level, BK_LEVEL_ANYONE, BK_LEVEL_MAKER), \
        NUMBER("rest", "rest", record, rest_minutes, 0, REST_MOST), \
        MUST_NUMBER("can_wait", "can wait", record, can_wait, 0, 1), \
        MAY("measures", "measures", LIST, record, measures), MAY("note", "note", TEXT, record, note)

static const filled_field step_fields[] = {
    MUST("piece", "piece", NAME, bk_step, piece),      STEP_FIELDS(bk_step),
    MAY("after", "after", STEPS, bk_step, after),      MAY("done_on", "done on", DAY, bk_step, done_on),
    MAY("done_by", "done by", TEXT, bk_step, done_by), NUMBER("took", "took", bk_step, took, 0, MINUTES_MOST),
};

static const filled_field need_fields[] = {
    MUST("piece", "piece", NAME, bk_need, piece),
    MUST("step", "step", NAME, bk_need, step),
    MUST("material", "material", NAME, bk_need, material),
    MUST_NUMBER("quantity", "quantity", bk_need, quantity, 0, BK_QUANTITY_MOST),
};

static const filled_field fitting_fields[] = {
    MUST("piece", "piece", NAME, bk_fitting, piece),
    MUST("step", "step", NAME, bk_fitting, step),
    MUST("booked_at", "booked at", MOMENT, bk_fitting, booked_at),
    MAY("performer", "performer", NAME, bk_fitting, performer),
    NUMBER("minutes", "minutes", bk_fitting, minutes, 0, MINUTES_MOST),
    MAY("held_on", "held on", DAY, bk_fitting, held_on),
    MAY("outcome", "outcome", WORD, bk_fitting, outcome),
    MAY("note", "note", TEXT, bk_fitting, note),
};

static const filled_field material_fields[] = {
    MUST("material", "name", NAME, bk_material, name),
    MUST("unit", "unit", WORD, bk_material, unit),
    NUMBER("on_hand", "on hand", bk_material, on_hand, -BK_SHELF_MOST, BK_QUANTITY_MOST),
    NUMBER("width", "width", bk_material, width, 0, KILOMETRE),
    MAY("supplier", "supplier", TEXT, bk_material, supplier),
    NUMBER("price", "price", bk_material, price, 0, BK_MONEY_MOST),
    MAY("price", "price", CODE, bk_material, currency),
    MAY("note", "note", TEXT, bk_material, note),
};

static const filled_field order_fields[] = {
    MUST("material", "material", NAME, bk_order, material),
    MUST_NUMBER("quantity", "quantity", bk_order, quantity, 0, BK_QUANTITY_MOST),
    MUST("ordered_on", "ordered on", DAY, bk_order, ordered_on),
    MAY("due_on", "due on", DAY, bk_order, due_on),
    MAY("arrived_on", "arrived on", DAY, bk_order, arrived_on),
    MAY("from", "from", TEXT, bk_order, from),
    NUMBER("cost", "cost", bk_order, cost, 0, BK_MONEY_MOST),
    MAY("cost", "cost", CODE, bk_order, currency),
};

static const filled_field work_fields[] = {
    MUST("work", "name", NAME, bk_work, name),
    MAY("note", "note", TEXT, bk_work, note),
};

static const filled_field work_step_fields[] = {
    MUST("work", "order of work", NAME, bk_work_step, work),
    STEP_FIELDS(bk_work_step),
    MAY("after", "after", LIST, bk_work_step, after),
};

static const filled_field equipment_fields[] = {
    MUST("equipment", "name", NAME, bk_equipment, name),
    MUST("kinds", "kinds", KINDS, bk_equipment, kinds),
    NUMBER("count", "count", bk_equipment, count, 1, EQUIPMENT_MOST),
};

static const filled_field note_fields[] = {
    MUST("noted_on", "noted on", DAY, bk_note, noted_on),
    MAY("from", "from", WORD, bk_note, source),
    MAY("who", "who", TEXT, bk_note, who),
    MAY("costume", "costume", NAME, bk_note, costume),
    MAY("piece", "piece", NAME, bk_note, piece),
    MAY("step", "step", NAME, bk_note, step),
    MUST("what", "what", TEXT, bk_note, what),
    MAY("done_on", "done on", DAY, bk_note, done_on),
};

#define FIELDS(table) \
    { \
        table, sizeof(table) / sizeof *(table) \
    }

static const struct filled_fields {
    const filled_field *items;
    size_t count;
} filled_fields[BK_FAMILIES] = {
    [BK_PRODUCTIONS] = FIELDS(production_fields),
    [BK_DATES] = FIELDS(date_fields),
    [BK_PEOPLE] = FIELDS(person_fields),
    [BK_AWAYS] = FIELDS(away_fields),
    [BK_PERFORMERS] = FIELDS(performer_fields),
    [BK_ROLES] = FIELDS(role_fields),
    [BK_COSTUMES] = FIELDS(costume_fields),
    [BK_PIECES] = FIELDS(piece_fields),
    [BK_STEPS] = FIELDS(step_fields),
    [BK_NEEDS] = FIELDS(need_fields),
    [BK_FITTINGS] = FIELDS(fitting_fields),
    [BK_MATERIALS] = FIELDS(material_fields),
    [BK_ORDERS] = FIELDS(order_fields),
    [BK_WORKS] = FIELDS(work_fields),
    [BK_WORK_STEPS] = FIELDS(work_step_fields),
    [BK_EQUIPMENT] = FIELDS(equipment_fields),
    [BK_NOTES] = FIELDS(note_fields),
};

// ---------------------------------------------------------------------------------------------------
// values

/// How a field of each type is kept: a text, or a number that is `nothing`
/// where it is not known.
static const struct kept_as {
    bool text;
    size_t size;
    int64_t nothing;
} kept_as[] = {
    [BK_FILLED_TEXT] = {true, sizeof(char *), 0},
    [BK_FILLED_NAME] = {true, sizeof(char *), 0},
    [BK_FILLED_LIST] = {true, sizeof(char *), 0},
    [BK_FILLED_STEPS] = {true, sizeof(char *), 0},
    [BK_FILLED_KINDS] = {true, sizeof(char *), 0},
    [BK_FILLED_HOURS] = {true, sizeof(char *), 0},
    [BK_FILLED_CODE] = {true, sizeof(char *), 0},
    [BK_FILLED_NUMBER] = {false, sizeof(int64_t), BK_NOT_KNOWN},
    [BK_FILLED_DAY] = {false, sizeof(bk_day), BK_NO_DAY},
    [BK_FILLED_TIME] = {false, sizeof(bk_minute), BK_NO_TIME},
    [BK_FILLED_MOMENT] = {false, sizeof(bk_moment), BK_NO_DAY}, // by its day, the first in it
    [BK_FILLED_WORD] = {false, sizeof(int), BK_NO_WORD},
};

static const char *text_of(const filled_field *field, const void *record)
{
    const char *text;
    memcpy(&text, (const char *)record + field->offset, sizeof text);
    return text;
}

static int64_t number_of(const filled_field *field, const void *record)
{
    int64_t number;
    int32_t small;
    if (field->type == BK_FILLED_NUMBER) {
        memcpy(&number, (const char *)record + field->offset, sizeof number);
        return number;
    }
    memcpy(&small, (const char *)record + field->offset, sizeof small);
    return small;
}

static bool is_filled(const filled_field *field, const void *record)
{
    const struct kept_as *kept = &kept_as[field->type];
    return kept->text ? text_of(field, record) != NULL : number_of(field, record) != kept->nothing;
}

static bool is_same(const filled_field *field, const void *left, const void *right)
{
    if (kept_as[field->type].text) {
        return bk_same_text(text_of(field, left), text_of(field, right));
    }
    return memcmp((const char *)left + field->offset, (const char *)right + field->offset,
                  kept_as[field->type].size) == 0;
}

/// A list without spaces round its items and without a `;` at its end.
static const char *tidy_list(const char *list, bk_arena *arena)
{
    const char *rest = list;
    const char *item;
    size_t length;
    bk_buffer text = {0};
    bk_buffer_text(&text, "");
    for (size_t i = 0; bk_list_item(&rest, &item, &length); i++) {
        bk_buffer_text(&text, i ? ";" : "");
        bk_buffer_add(&text, item, length);
    }
    const char *tidy = bk_same_text(list, text.bytes) ? list : bk_arena_text(arena, text.bytes);
    bk_buffer_free(&text);
    return tidy;
}

static bool is_list(bk_filled_type type)
{
    return type == BK_FILLED_LIST || type == BK_FILLED_STEPS || type == BK_FILLED_KINDS;
}

void bk_fields_tidy(bk_family family, void *record, bk_arena *arena)
{
    const struct filled_fields *fields = &filled_fields[family];
    for (size_t i = 0; i < fields->count; i++) {
        const filled_field *field = &fields->items[i];
        const char *text = kept_as[field->type].text ? text_of(field, record) : NULL;
        if (!text) {
            continue;
        }
        text = is_list(field->type) ? tidy_list(text, arena) : text;
        text = bk_text_blank(text) ? NULL : text;
        memcpy((char *)record + field->offset, &text, sizeof text);
    }
}

size_t bk_fields_differ(bk_family family, const void *left, const void *right,
                        const char *names[BK_FIELDS_NAMED])
{
    const struct filled_fields *fields = &filled_fields[family];
    const char *last = NULL;
    size_t count = 0;
    names[0] = names[1] = NULL;
    for (size_t i = 0; i < fields->count; i++) {
        const filled_field *field = &fields->items[i];
        if (is_same(field, left, right) || field->column == last) {
            continue;
        }
        last = field->column;
        if (count < BK_FIELDS_NAMED) {
            names[count] = field->name;
        }
        count++;
    }
    return count;
}

bool bk_fields_fill(bk_family family, const void *record, void *known)
{
    const struct filled_fields *fields = &filled_fields[family];
    bool any = false;
    for (size_t i = 0; i < fields->count; i++) {
        const filled_field *field = &fields->items[i];
        if (is_filled(field, record) && !is_same(field, record, known)) {
            memcpy((char *)known + field->offset, (const char *)record + field->offset,
                   kept_as[field->type].size);
            any = true;
        }
    }
    return any;
}

// ---------------------------------------------------------------------------------------------------
// checks

/// A field of a record that is checked.
typedef struct checked {
    bk_desk *desk;
    const filled_field *field;
    const char *noun;
} checked;

/// What sheets take off the ends of a name.
static bool is_blank(char letter)
{
    return letter == ' ' || letter == '\t' || letter == '\r' || letter == '\n';
}

static bk_status check_name(const checked *one, const char *text, size_t length)
{
    bool slash = one->field->type != BK_FILLED_STEPS && memchr(text, '/', length) != NULL;
    bool list = one->field->type == BK_FILLED_NAME && memchr(text, ';', length) != NULL;
    if (slash || list) {
        return bk_desk_refuse(one->desk, one->field->column,
                              "\"%s\" cannot be a name: names hold no ; and no /.",
                              bk_desk_safe(one->desk, bk_arena_bytes(one->desk->scratch, text, length)));
    }
    if (!length || is_blank(text[0]) || is_blank(text[length - 1])) {
        return bk_desk_refuse(one->desk, one->field->column,
                              "A name in %s is empty, or has a space at its end: write it without.",
                              one->field->name);
    }
    return BK_OK;
}

static bk_status check_kind(const checked *one, const char *text, size_t length)
{
    const char *word = bk_arena_bytes(one->desk->scratch, text, length);
    if (bk_word_find(&bk_kind_words, word) != BK_NO_WORD) {
        return BK_OK;
    }
    return bk_desk_refuse(one->desk, one->field->column, "\"%s\" is no kind of step.",
                          bk_desk_safe(one->desk, word));
}

static bk_status check_items(const checked *one, const char *text)
{
    bk_index *seen = bk_index_new();
    const char *item;
    size_t length;
    bk_status status = BK_OK;
    while (!status && bk_list_item(&text, &item, &length)) {
        const char *name = bk_arena_bytes(one->desk->scratch, item, length);
        status = one->field->type == BK_FILLED_KINDS ? check_kind(one, item, length)
                                                     : check_name(one, item, length);
        long long *times = bk_index_put(seen, name, 0);
        if (!status && (*times)++) {
            status = bk_desk_refuse(one->desk, one->field->column, "%s names \"%s\" twice: once is enough.",
                                    one->field->name, bk_desk_safe(one->desk, name));
        }
    }
    bk_index_free(seen);
    return status;
}

static bk_status check_text(const checked *one, const char *text)
{
    bk_stretch stretches[BK_STRETCHES];
    switch (one->field->type) {
    case BK_FILLED_NAME:
        return check_name(one, text, strlen(text));
    case BK_FILLED_LIST:
    case BK_FILLED_STEPS:
    case BK_FILLED_KINDS:
        return check_items(one, text);
    case BK_FILLED_HOURS:
        return bk_hours_read(text, stretches) >= 0
                   ? BK_OK
                   : bk_desk_refuse(one->desk, one->field->column,
                                    "\"%s\" is no hours of a day: write 10:00-13:00 or "
                                    "10:00-13:00;14:00-18:00.",
                                    bk_desk_safe(one->desk, text));
    case BK_FILLED_CODE:
        return bk_currency_valid(text) ? BK_OK
                                       : bk_desk_refuse(one->desk, one->field->column,
                                                        "\"%s\" is no currency: write its three "
                                                        "capital letters, such as GBP.",
                                                        bk_desk_safe(one->desk, text));
    default:
        return BK_OK;
    }
}

static bk_status check_number(const checked *one, int64_t number)
{
    const filled_field *field = one->field;
    if (field->type != BK_FILLED_NUMBER || (number >= field->least && number <= field->most)) {
        return BK_OK;
    }
    return bk_desk_refuse(one->desk, field->column, "The %s of %s cannot be that %s.", field->name, one->noun,
                          number < field->least ? "little" : "much");
}

static bk_status check_field(const checked *one, const void *record)
{
    const filled_field *field = one->field;
    if (!is_filled(field, record)) {
        return field->must ? bk_desk_refuse(one->desk, field->column, "Fill in \"%s\": %s needs it.",
                                            field->name, one->noun)
                           : BK_OK;
    }
    return kept_as[field->type].text ? check_text(one, text_of(field, record))
                                     : check_number(one, number_of(field, record));
}

bk_status bk_fields_check(bk_desk *desk, bk_family family, const char *noun, const void *record)
{
    const struct filled_fields *fields = &filled_fields[family];
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < fields->count; i++) {
        checked one = {desk, &fields->items[i], noun};
        status = check_field(&one, record);
    }
    return status;
}
