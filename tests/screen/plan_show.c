#include "screen/plan_show.h"

#include <pwd.h>
#include <stdio.h>
#include <unistd.h>

#include "screen/show.h"

enum { TEXT_ROOM = 1024 };

static const char steps[] = "piece,step,title,kind,minutes,after,can_wait\n"
                            "G1,cut,Cut the gown,cut,60,,\nG1,sew,Sew the gown,machine,200,cut,\n"
                            "H1,cut,Cut the shirt,cut,30,,\nH1,hem,Hem the shirt,hand,40,cut,yes\n"
                            "C1,sew,Sew the cloak,machine,90,,\nC1,line,Fell the lining,hand,45,,\n"
                            "S1,cut,Cut the suit,cut,80,,\n";

static void import(const char *first)
{
    char people[TEXT_ROOM];
    snprintf(people, sizeof people,
             "person,skills,mon,tue,wed,thu,fri\n"
             "%s,cut;machine;hand,10:00-13:00,10:00-13:00,10:00-13:00,10:00-13:00,10:00-13:00\n"
             "Mo,hand,,14:00-17:00,,14:00-17:00,\nJo,,,,,,\n",
             first);
    bk_show_import();
    bk_show_rewrite("people.csv", people);
    bk_show_rewrite("materials.csv", "material,unit,on_hand\nlinen,m,9\n");
    bk_show_rewrite("orders.csv", "material,quantity,ordered_on,due_on\n");
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\nG1,cut,linen,3\nH1,cut,linen,2\n");
    bk_show_replace("steps.csv", steps);
}

void bk_plan_show_import(void)
{
    import("Ida");
}

const char *bk_plan_show_login(void)
{
    const struct passwd *user = getpwuid(getuid());
    return user ? user->pw_name : "";
}

void bk_plan_show_import_mine(void)
{
    import(bk_plan_show_login());
}
