#include "cmd/sheets.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum { PATH_ROOM = 512 };

static const struct sheet {
    const char *file, *text;
} salt_road[] = {
    {"production.csv", "production,opens,currency,unit\nThe Salt Road,2027-06-04,GBP,cm\n"},
    {"dates.csv", "what,on\nparade,2027-05-30\n"},
    {"people.csv", "person,skills,mon\nAda Pell,cut;machine;hand,10:00-13:00\n"},
    {"away.csv", "who,from,to,reason\nInes Varga,2027-04-01,2027-04-02,a wedding\n"},
    {"equipment.csv", "equipment,kinds,count\ncutting table,cut;draft,\nmachine,machine,2\n"},
    {"performers.csv", "performer,contact,note\nInes Varga,ines@stage.example,no wool\nTomas Lind,,\n"},
    {"measures.csv", "performer,taken_on,measure,value,over,taken_by\n"
                     "Ines Varga,2027-02-03,waist girth,71.3 cm,a shirt,Ada Pell\n"
                     "Ines Varga,2027-02-03,hip girth,98.6 cm,,\n"},
    {"roles.csv", "role,performer,cover\nThe Miller,Ines Varga,Tomas Lind\nThe Boy,,\n"},
    {"costumes.csv",
     "costume,role,title\n1A,The Miller,Grey working dress\n1B,The Miller,Cloak\n2A,The Boy,Shirt\n"},
    {"pieces.csv", "piece,costumes,title,origin,cost\n1A-1,1A;1B,Bodice,make,12.50\n1B-1,1B,Cloak,stock,\n"},
    {"steps.csv", "piece,step,title,kind,minutes,after\n1A-1,cut,cut the bodice,cut,75,\n"
                  "1A-1,sew,body seams,machine,120,cut\n1A-1,fit,first fitting,fit,40,sew;1B-1/press\n"
                  "1B-1,press,press the cloak,press,15,\n"},
    {"materials.csv", "material,unit,on_hand,price\nwool flannel,m,1,8.90\n"},
    {"needs.csv", "piece,step,material,quantity\n1A-1,cut,wool flannel,2.4\n"},
    {"orders.csv", "material,quantity,ordered_on,due_on,cost\nwool flannel,3,2027-02-01,2027-03-09,26.70\n"},
    {"fittings.csv", "piece,step,booked_at\n1A-1,fit,2027-03-15T10:00\n"},
    {"works.csv", "work,note\nSmock,as for the harvest play\n"},
    {"work_steps.csv", "work,step,title,kind,minutes,after,rest\nSmock,cut,cut the drill,cut,45,,0.5\n"
                       "Smock,sew,seams,machine,120,cut,\n"},
    {"notes.csv", "noted_on,from,costume,piece,step,what\n"
                  "2027-03-04,rehearsal,1A,1A-1,sew,cuffs catch on the basket\n"},
};

const char *path_in(const char *folder, const char *file)
{
    char name[PATH_ROOM];
    snprintf(name, sizeof name, "%s/%s", folder, file);
    return bk_test_path(name);
}

void sheet_write_bytes(const char *folder, const char *file, const char *bytes, size_t length)
{
    mkdir(bk_test_path(folder), 0700);
    bk_test_write(path_in(folder, file), bytes, length);
}

void sheet_write(const char *folder, const char *file, const char *text)
{
    sheet_write_bytes(folder, file, text, strlen(text));
}

void sheet_remove(const char *folder, const char *file)
{
    ck_assert_int_eq(remove(path_in(folder, file)), 0);
}

const char *sheets_put(const char *folder)
{
    for (size_t i = 0; i < sizeof salt_road / sizeof *salt_road; i++)
        sheet_write(folder, salt_road[i].file, salt_road[i].text);
    return bk_test_path(folder);
}

void sheet_change(const char *folder, const char *file, const char *from, const char *to)
{
    const char *text = bk_test_read(path_in(folder, file), NULL);
    const char *at = strstr(text, from);
    ck_assert_msg(at != NULL, "\"%s\" does not stand in %s", from, file);
    size_t room = strlen(text) + strlen(to) + 1;
    char *changed = malloc(room);
    ck_assert_ptr_nonnull(changed);
    snprintf(changed, room, "%.*s%s%s", (int)(at - text), text, to, at + strlen(from));
    sheet_write(folder, file, changed);
    free(changed);
}

void show_import(void)
{
    bk_program_must(bodkin("import", sheets_put("show")), 0);
}

void expect_words(const char *text, const char *words)
{
    ck_assert_msg(strstr(text, words) != NULL, "\"%s\" is missing in: %s", words, text);
}

void expect_no_words(const char *text, const char *words)
{
    ck_assert_msg(strstr(text, words) == NULL, "\"%s\" stands in: %s", words, text);
}

size_t odd_bytes(const char *text)
{
    size_t count = 0;
    for (; *text != '\0'; text++)
        count += *text != '\n' && (*text < ' ' || *text > '~');
    return count;
}
