#include "sheet/good_sheets.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/testing.h"

const char *const good_sheets[BK_SHEETS] = {
    [BK_SHEET_PRODUCTION] = "production,opens,currency,unit,measures_good_for,sheets\n"
                            "The Winter Fair,2027-04-16,GBP,cm,180,1\n",
    [BK_SHEET_DATES] = "what,on,at,note\n"
                       "parade,2027-04-09,18:00,in the small hall\n"
                       "dress,2027-04-14,,\n",
    [BK_SHEET_PEOPLE] =
        "person,skills,mon,tue,wed,thu,fri,sat,sun,from,until,note\n"
        "Ada Pell,cut;machine,10:00-13:00;14:00-18:00,,,,,,,2027-02-01,2027-04-16,knows wool\n"
        "Zoë Ngô,hand,,18:00-21:00,,,,,,,,\n",
    [BK_SHEET_AWAY] = "who,from,to,reason\n"
                      "Ada Pell,2027-03-01,2027-03-07,on tour\n"
                      "Tomas Lind,2027-03-02,2027-03-02,\n",
    [BK_SHEET_EQUIPMENT] = "equipment,kinds,count\n"
                           "cutting table,cut;draft,\n"
                           "machine,machine,2\n",
    [BK_SHEET_PERFORMERS] = "performer,contact,measures_good_for,note\n"
                            "Ines Varga,stage door,60,no wool\n"
                            "Tomas Lind,,,\n",
    [BK_SHEET_MEASURES] = "performer,taken_on,measure,value,over,taken_by\n"
                          "Ines Varga,2027-02-03,waist girth,92.5 cm,a T-shirt,Ada Pell\n"
                          "Ines Varga,2027-02-03,nape to waist,16 3/8 in,,\n"
                          "Ines Varga,2027-02-10,waist girth,93 cm,,\n",
    [BK_SHEET_ROLES] = "role,performer,cover,note\n"
                       "The Miller,Ines Varga,Tomas Lind,dances in act two\n"
                       "The Fox,,,\n",
    [BK_SHEET_COSTUMES] = "costume,role,title,due,note\n"
                          "4A,The Miller,Working clothes,2027-04-09,\n"
                          "4B,The Miller,Sunday best,,wet in the last scene\n",
    [BK_SHEET_PIECES] =
        "piece,costumes,title,origin,place,out_with,out_since,back_by,from,cost,due_back,returned_on,"
        "note\n"
        "4A-1,4A;4B,Linen shirt,make,rail 2,Tomas Lind,2027-03-01,2027-03-08,,12.50,,,cuffs turned\n"
        "4B-1,4B,Coat,hire,,,,,the town theatre,44.00 EUR,2027-05-03,2027-05-02,\n",
    [BK_SHEET_STEPS] =
        "piece,step,title,kind,minutes,quickest,longest,after,hands,level,rest,can_wait,measures,note,"
        "done_on,done_by,took\n"
        "4A-1,cut,Cut the linen,cut,45,30,90,,1,3,,,waist girth;nape to waist,mind the nap,2027-03-02,"
        "Ada Pell,50\n"
        "4A-1,sew,Sew it,machine,120,,,cut,,,0.5,,,,,,\n"
        "4A-1,fit,First fitting,fit,20,,,sew;4B-1/press,2,,,yes,,,,,\n"
        "4B-1,press,Press the coat,press,15,,,,,,,,,,,,\n",
    [BK_SHEET_MATERIALS] = "material,unit,on_hand,width,supplier,price,note\n"
                           "white linen,m,-0.5,150 cm,the mill shop,8.90,wash first\n"
                           "hooks,each,,,,,\n",
    [BK_SHEET_NEEDS] = "piece,step,material,quantity\n"
                       "4A-1,cut,white linen,2.4\n"
                       "4A-1,sew,hooks,3\n",
    [BK_SHEET_ORDERS] = "material,quantity,ordered_on,due_on,arrived_on,from,cost\n"
                        "white linen,5,2027-02-10,2027-02-24,2027-02-23,the mill shop,44.50\n",
    [BK_SHEET_FITTINGS] = "piece,step,booked_at,performer,minutes,held_on,outcome,note\n"
                          "4A-1,fit,2027-03-05T14:30,Ines Varga,20,2027-03-05,again,let out the sides\n"
                          "4A-1,fit,2027-03-12,,,,,\n",
    [BK_SHEET_WORKS] = "work,note\n"
                       "Smock,as for the harvest play\n"
                       "Neck cloth,\n",
    [BK_SHEET_WORK_STEPS] =
        "work,step,title,kind,minutes,quickest,longest,after,hands,level,rest,can_wait,measures,note\n"
        "Smock,cut,Cut the drill,cut,45,30,90,,2,3,0.5,,waist girth;nape to waist,mind the nap\n"
        "Smock,sew,Sew it,machine,120,,,cut,,,,,,\n"
        "Smock,trim,Braid,hand,60,,,cut;sew,,,,yes,,\n"
        "Neck cloth,hem,Roll the hem,hand,30,,,,,,,,,\n",
    [BK_SHEET_NOTES] = "noted_on,from,who,costume,piece,step,what,done_on\n"
                       "2027-03-04,rehearsal,the director,4A,4A-1,sew,cuffs catch on the basket,2027-03-05\n"
                       "2027-03-05,,,4B,,,too new for a miller,\n",
};

void sheet_put(const char *file, const char *text)
{
    bk_test_write_text(bk_test_path(file), text);
}

void sheet_remove(const char *file)
{
    ck_assert_int_eq(remove(bk_test_path(file)), 0);
}

void good_sheets_put(void)
{
    for (size_t i = 0; i < BK_SHEETS; i++)
        sheet_put(bk_sheets[i].file, good_sheets[i]);
}

void sheet_change(const char *file, const char *from, const char *to)
{
    const char *good = good_sheets[bk_sheet_find(file)];
    const char *at = strstr(good, from);
    ck_assert_msg(at != NULL, "\"%s\" does not stand in %s", from, file);
    size_t size = strlen(good) + strlen(to) + 1;
    char *changed = malloc(size);
    ck_assert_ptr_nonnull(changed);
    snprintf(changed, size, "%.*s%s%s", (int)(at - good), good, to, at + strlen(from));
    sheet_put(file, changed);
    free(changed);
}

reading reading_of(const char *path, const bk_known *known)
{
    reading read = {.folder = bk_folder_new(), .faults = bk_faults_new()};
    read.status = bk_folder_read(path, known, read.folder, read.faults, NULL, &read.error);
    return read;
}

void reading_free(reading *read)
{
    bk_faults_free(read->faults);
    bk_folder_free(read->folder);
}

void faults_expected(const char *const *sentences)
{
    reading read = reading_of(bk_test_folder(), NULL);
    size_t expected = 0;
    while (sentences[expected] != NULL)
        expected++;
    size_t count = bk_faults_count(read.faults);
    for (size_t i = 0; i < count && i < BK_FAULTS_TOLD; i++) {
        const char *sentence = i < expected ? sentences[i] : "(no more)";
        ck_assert_str_eq(bk_faults_text(read.faults, i), sentence);
    }
    ck_assert_msg(count == expected, "%zu faults instead of %zu, the first that is missing: %s", count,
                  expected, count < expected ? sentences[count] : "none");
    ck_assert_int_eq(read.status, expected == 0 ? BK_OK : BK_REFUSED);
    reading_free(&read);
}

void fault_expected(const char *sentence)
{
    faults_expected((const char *const[]){sentence, NULL});
}

void no_fault_expected(void)
{
    faults_expected((const char *const[]){NULL});
}

void changes_expected(const change *changes, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        good_sheets_put();
        sheet_change(changes[i].file, changes[i].from, changes[i].to);
        fault_expected(changes[i].sentence);
    }
}
