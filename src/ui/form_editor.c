#include "bodkin/ui/form_editor.h"

#include "bodkin/ui/form_steps.h"
#include "bodkin/ui/term.h"
#include "bodkin/work/editor.h"

void bk_form_edit(bk_form *form)
{
    bk_error error;
    bk_form_line *line = &form->values[form->at].line;
    const char *edited = NULL;
    bk_arena *arena = bk_arena_new();
    bk_term_pause();
    bk_status status = bk_editor_edit(bk_form_line_text(line), arena, &edited, &error);
    bk_term_resume();
    if (status) {
        bk_wall_say(form->wall, "%s", error.text);
    } else if (!bk_same_text(edited, bk_form_line_text(line))) {
        bk_form_line_put(line, edited);
        bk_form_typed(form);
    }
    bk_arena_free(arena);
}
