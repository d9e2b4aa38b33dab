#include "screen/show.h"

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "support/program.h"
#include "support/testing.h"

enum { PATH_BYTES = 512, LINE_BYTES = 160 };

typedef struct sheet {
    const char *name;
    const char *text;
} sheet;

static const sheet salt_road[] = {
    {"production.csv", "production,opens\nThe Salt Road,2027-03-19\n"},
    {"dates.csv", "what,on\ndress,2027-03-16\n"},
    {"performers.csv", "performer\nAna Ruíz\nBo Lindqvist\nChidi Okoro\n"},
    {"measures.csv", "performer,taken_on,measure,value\n"
                     "Ana Ruíz,2027-01-10,waist girth,70 cm\nBo Lindqvist,2027-01-10,waist girth,90 cm\n"},
    {"roles.csv", "role,performer\nSalt Queen,Ana Ruíz\nFerryman,Bo Lindqvist\nClerk,Chidi Okoro\nGhost,\n"},
    {"costumes.csv", "costume,role,title,due,note\n"
                     "1A,Salt Queen,Coronation gown,,She kneels in it\n1B,Salt Queen,Travelling cloak,,\n"
                     "2A,Ferryman,Oilskin,2027-03-01,\n2B,Ferryman,Linen shirt,,\n2C,Ferryman,Boots,,\n"
                     "3A,Clerk,Inky suit,,\n3B,Clerk,Sunday coat,,\n4A,Ghost,Shroud,,\n"},
    {"pieces.csv", "piece,costumes,title,origin,place,out_with,out_since,back_by\n"
                   "G1,1A,Gown,make,stand 2,,,\nC1,1B,Cloak,make,,,,\nO1,2A,Oilskin coat,stock,,Dye "
                   "house,2027-02-20,2027-02-28\n"
                   "H1,2B,Shirt,make,,,,\nB1,2C,Boots,buy,,,,\nS1,3A,Suit,make,,,,\nW1,4A,Shroud,make,,,,\n"},
    {"steps.csv",
     "piece,step,title,kind,minutes,after,done_on,done_by,can_wait\n"
     "G1,lace,Sew the lace,hand,45,,2027-02-27,Ida,\nG1,cut,Cut the gown,cut,60,,,,\nG1,sew,Sew the "
     "gown,machine,200,cut,,,\n"
     "C1,draft,Draft the cloak,draft,30,,2027-02-26,Ida,\nC1,sew,Sew the cloak,machine,90,draft,,,\n"
     "O1,fit,Fit the oilskin,fit,30,,,,\nH1,hem,Hem the shirt,hand,40,,,,yes\n"
     "B1,shine,Shine the boots,craft,15,,2027-02-25,Ida,\nS1,cut,Cut the suit,cut,80,,,,\nW1,cut,Cut the "
     "shroud,cut,20,,,,\n"},
    {"materials.csv", "material,unit,on_hand\nwool flannel,m,1\n"},
    {"needs.csv", "piece,step,material,quantity\nG1,cut,wool flannel,2.4\n"},
    {"orders.csv", "material,quantity,ordered_on,due_on\nwool flannel,3,2027-02-20,2027-03-09\n"},
};

enum { SALT_ROAD_SHEETS = sizeof salt_road / sizeof salt_road[0] };

static void write_sheet(const char *folder, const char *name, const char *text)
{
    char path[PATH_BYTES];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    bk_test_write_text(path, text);
}

static void import_folder(const char *folder, bool replace)
{
    bk_program_end end = replace ? bodkin("import", folder, "--replace") : bodkin("import", folder);
    bk_program_must(end, EXIT_SUCCESS);
}

const char *bk_show_folder(void)
{
    return bk_test_path("salt-road");
}

void bk_show_import(void)
{
    ck_assert_int_eq(mkdir(bk_show_folder(), 0700), 0);
    for (size_t i = 0; i < SALT_ROAD_SHEETS; i++)
        write_sheet(bk_show_folder(), salt_road[i].name, salt_road[i].text);
    import_folder(bk_show_folder(), false);
}

void bk_show_rewrite(const char *name, const char *text)
{
    write_sheet(bk_show_folder(), name, text);
}

void bk_show_replace(const char *name, const char *text)
{
    bk_show_rewrite(name, text);
    import_folder(bk_show_folder(), true);
}

// ------------------------------------------------------------------------------------------- other shows

// Text that grows; as much room as a long show needs.
typedef struct page {
    char *bytes;
    size_t length, room;
} page;

static void add_line(page *text, const char *format, size_t number, const char *name)
{
    size_t room = LINE_BYTES + 4 * strlen(name);
    if (text->length + room > text->room) {
        text->room = 2 * text->room + room;
        text->bytes = realloc(text->bytes, text->room);
        ck_assert_ptr_nonnull(text->bytes);
    }
    text->length += (size_t)snprintf(text->bytes + text->length, room, format, number, name, number, name);
}

void bk_long_show_import(size_t count)
{
    const char *folder = bk_test_path("long");
    page costumes = {0}, pieces = {0}, steps = {0};
    ck_assert_int_eq(mkdir(folder, 0700), 0);
    add_line(&costumes, "costume,role,title\n", 0, "");
    add_line(&pieces, "piece,title,costumes,origin\n", 0, "");
    add_line(&steps, "piece,step,title,kind,minutes,after\n", 0, "");
    for (size_t i = 1; i <= count; i++) {
        add_line(&costumes, "%zu,Walker,%s%zu\n", i, "Coat ");
        add_line(&pieces, "P%zu,%s%zu,stock\n", i, "Coat,");
        add_line(&steps, "P%zu,sew,Sew,machine,60,%s\n", i, "");
        add_line(&steps, "P%zu,press,Press,press,20,%s\n", i, "sew");
    }
    write_sheet(folder, "production.csv", "production,opens\nA Hundred Coats,2027-03-19\n");
    write_sheet(folder, "performers.csv", "performer\nMo\n");
    write_sheet(folder, "roles.csv", "role,performer\nWalker,Mo\n");
    write_sheet(folder, "costumes.csv", costumes.bytes);
    write_sheet(folder, "pieces.csv", pieces.bytes);
    write_sheet(folder, "steps.csv", steps.bytes);
    free(costumes.bytes);
    free(pieces.bytes);
    free(steps.bytes);
    import_folder(folder, false);
}

static void write_named(const char *folder, const char *name, const char *format, const char *odd)
{
    size_t room = strlen(format) + 4 * strlen(odd) + 1;
    char *text = malloc(room);
    ck_assert_ptr_nonnull(text);
    snprintf(text, room, format, odd, odd);
    write_sheet(folder, name, text);
    free(text);
}

void bk_odd_show_import(const char *name)
{
    const char *folder = bk_test_path("odd");
    bool first = mkdir(folder, 0700) == 0;
    write_sheet(folder, "production.csv", "production,opens\nOdd Names,2027-03-19\n");
    write_named(folder, "performers.csv", "performer\n\"%s\"\nMo\n", name);
    write_named(folder, "roles.csv", "role,performer\n\"%s\",\"%s\"\nWalker,Mo\n", name);
    write_named(folder, "costumes.csv", "costume,role,title\n1A,\"%s\",\"%s\"\n2A,Walker,Coat\n", name);
    write_named(folder, "pieces.csv", "piece,costumes,title,place\nP1,1A,\"%s\",\"%s\"\nP2,2A,Coat,\n", name);
    write_named(folder, "steps.csv",
                "piece,step,title,kind,minutes,note\nP1,fit,\"%s\",fit,30,\"%s\"\nP2,fit,Fit,fit,30,\n",
                name);
    import_folder(folder, !first);
}
