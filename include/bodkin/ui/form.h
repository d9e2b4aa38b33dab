#ifndef BODKIN_UI_FORM_H
#define BODKIN_UI_FORM_H

#include "bodkin/sheet/columns.h"
#include "bodkin/ui/screen.h"
#include "bodkin/work/job.h"

/// One machinery for all forms: a record filled in line by line, checked while it is typed, with a line of help for the
/// field at hand and a list to pick from where something exists already. Nothing typed is lost: Escape with changes asks,
/// and what another terminal changed meanwhile is shown beside it and asked about.

typedef struct bk_form bk_form;
typedef struct bk_form_kind bk_form_kind;

/// Something to pick.
typedef struct bk_form_choice {
    const char *text;  ///< what goes into the field
    const char *tells; ///< what is said beside it; may be NULL
} bk_form_choice;

typedef struct bk_form_choices {
    const bk_form_choice *items;
    size_t count;
} bk_form_choices;

/// Of how many families a field may name a record: people and performers.
enum { BK_FORM_MAKES = 2 };

typedef struct bk_form_field {
    const char *column; ///< name of a column of the form's sheet
    const char *label;  ///< as people read it: "back by"
    const char *help;   ///< one line, told while the field is filled in
    /// What can be picked, in the order in which it is offered; lives in `arena`. NULL: the words of the column, or nothing.
    bk_status (*choices)(const bk_form *form, bk_arena *arena, bk_form_choices *choices, bk_error *error);
    bool whole; ///< a long text, also for the person's own editor
    /// Whether it is asked at all now; NULL: always.
    bool (*asked)(const bk_form *form);
    /// What a new record may have there, told as "suggested" and replaced by what is typed first; in `arena`, NULL: nothing.
    const char *(*suggests)(const bk_form *form, bk_arena *arena);
    const char *example; ///< of what may be typed; NULL: the column's own
    bool loose;          ///< of names: others than those that can be picked are right too
    /// Forms of the families that are named here, NULL behind the last: a name that is none yet can be made from the list.
    const bk_form_kind *makes[BK_FORM_MAKES];
    /// What a quantity is counted in, told beside it; in `arena`, NULL: nothing.
    const char *(*unit)(const bk_form *form, bk_arena *arena);
    bool
        beside; ///< Enter passes over it from a field that is not: it holds what is usual, and Tab, Up and Down reach it
} bk_form_field;

/// What a form gives back to its own job, and what it learns from it.
typedef struct bk_form_saved {
    int64_t id;           ///< of the record saved
    const char *sentence; ///< for the bottom line; in the job's arena
    const char *column;   ///< of what is refused: where the cursor goes; may be NULL
} bk_form_saved;

struct bk_form_kind {
    const char *name; ///< of the form: "Piece"
    const bk_sheet *
        sheet; ///< its columns: one of bk_sheets, or a table of the form's own with offsets into its own struct
    const bk_form_field *fields;
    size_t field_count;
    bk_family family; ///< of a record's form: read and saved with bk_record_read and bk_record_save
    /// A job of its own instead of a record's: does what the form says. NULL: a record's form.
    bk_status (*save)(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                      bk_error *error);
    /// What that job does is no change of the store: nothing is read anew, and there is nothing to undo.
    bool apart;
    /// A sentence about the field that is doubtful but not refused; in `arena`, NULL: none. May be NULL.
    const char *(*doubt)(const bk_form *form, size_t field, const void *filled, bk_arena *arena);
};

typedef struct bk_form_start {
    int64_t id; ///< the record to change; 0: a new one, or a job's form
    const void
        *record;    ///< of a new one or a job's: what stands there at the beginning (copied); NULL: nothing
    int64_t behind; ///< of a new one: which record of its list it follows; 0: the last
    int64_t about;  ///< for the form's own choices and job: what it is about (the id of a step, say)
    const char *title; ///< for the head: "Order of ivory silk"; NULL: the kind's name
    const char *
        first; ///< name of the column where the cursor begins; NULL: in what is new the first that is empty, else
               ///< the first
} bk_form_start;

/// The sheet of a job's form: its columns, and the struct that they lie in, which has a `line` like the records of sheets.
#define BK_FORM_SHEET(record, table, what) \
    { \
        .file = "", .noun = (what), .columns = (table), .column_count = sizeof(table) / sizeof *(table), \
        .record_size = sizeof(record), .line = offsetof(record, line) \
    }

/// Opens a form on top of a screen. When it is saved, the wall's `saved_family` and `saved_id` tell the screens below what to
/// put their cursor on. Where the record is no longer there the bottom line says so and nothing opens.
void bk_form_open(bk_screen *from, const bk_form_kind *kind, const bk_form_start *start);

/// What choices and jobs may ask of a form.
const bk_wall *bk_form_wall(const bk_form *form);
int64_t bk_form_about(const bk_form *form);
/// The id of the record being changed; 0: a new one.
int64_t bk_form_id(const bk_form *form);
/// The text that stands in a field now ("" when empty), by the name of its column.
const char *bk_form_text(const bk_form *form, const char *column);

/// The forms of records, one for each family that is filled in (NULL where there is none).
const bk_form_kind *bk_form_of(bk_family family);

#endif
