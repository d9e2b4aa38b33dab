#include "screen/fitting_show.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "support/program.h"
#include "support/testing.h"

enum { PATH_BYTES = 512, SHEET_BYTES = 2048 };

static const struct sheet {
    const char *name;
    const char *text;
} ferry[] = {
    {"production.csv", "production,opens\nThe Ferry,2027-03-19\n"},
    {"performers.csv", "performer,note\nInes Varga,no wool at the neck\nTomas Lind,\n"},
    {"away.csv", "who,from,to,reason\nInes Varga,2027-03-08,2027-03-09,at her sister's\n"},
    {"roles.csv", "role,performer\nFerrywoman,Ines Varga\nClerk,Tomas Lind\n"},
    {"costumes.csv", "costume,role,title,due\n4A,Ferrywoman,Ferry coat,2027-03-10\n5A,Clerk,Grey suit,\n"},
    {"pieces.csv", "piece,costumes,title,origin\n4A-1,4A,Coat,buy\n4A-2,4A,Skirt,buy\n"
                   "5A-1,5A,Waistcoat,buy\n5A-2,5A,Trousers,buy\n"},
    {"steps.csv", "piece,step,title,kind,minutes,after,done_on\n"
                  "4A-1,cut,Cut the coat,cut,60,,2027-02-20\n4A-1,fit,first fitting,fit,30,cut,\n"
                  "4A-1,hem,Hem the coat,hand,40,fit,\n"
                  "4A-2,fit,toile fitting,fit,20,,\n4A-2,hem,Hem the skirt,hand,30,fit,\n"
                  "5A-1,cut,Cut the waistcoat,cut,50,,\n5A-1,fit,fitting,fit,15,cut,\n"
                  "5A-2,fit,length,fit,10,,\n"},
    {"materials.csv", "material,unit,on_hand\nhooks,each,10\n"},
    {"needs.csv", "piece,step,material,quantity\n4A-1,fit,hooks,2\n"},
};

static void write_sheet(const char *name, const char *text)
{
    char path[PATH_BYTES];
    snprintf(path, sizeof path, "%s/%s", bk_test_path("ferry"), name);
    bk_test_write_text(path, text);
}

bk_terminal *bk_among_fittings(const char *fittings, const char *as)
{
    char sheet[SHEET_BYTES];
    ck_assert_int_eq(mkdir(bk_test_path("ferry"), 0700), 0);
    for (size_t i = 0; i < sizeof ferry / sizeof ferry[0]; i++)
        write_sheet(ferry[i].name, ferry[i].text);
    snprintf(sheet, sizeof sheet, "piece,step,booked_at,performer,minutes,held_on,outcome,note\n%s",
             fittings);
    write_sheet("fittings.csv", sheet);
    bk_program_must(bodkin("import", bk_test_path("ferry")), EXIT_SUCCESS);
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.as = as});
    bk_terminal_press(terminal, "F");
    ck_assert(bk_terminal_shows(terminal, "Fittings of The Ferry"));
    return terminal;
}

bool bk_chosen_shows(const bk_terminal *terminal, const char *text)
{
    return strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), text) != NULL;
}

bool bk_line_shows(const bk_terminal *terminal, const char *text, const char *also)
{
    return strstr(bk_terminal_row(terminal, bk_terminal_find(terminal, text)), also) != NULL;
}
