/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/history.h"

#include "core/text.h"

/* A script is a word a step; the plans are told apart by their names.
 *   push NAME[:KEY]   undo   redo   save   end   same   reset NAME */
typedef struct
{
  const char *command;
  const char *plan; /* name of the present plan afterwards */
  const char *undo; /* labels afterwards; NULL: cannot */
  const char *redo;
  gboolean is_modified;
  guint n_changed; /* how often "changed" was emitted by this step */
} Step;

typedef struct
{
  const char *name;
  Step steps[12];
} Script;

static const Script scripts[] = {
  { "start", { { "end", "a", NULL, NULL, FALSE, 0 } } },
  { "undo-redo",
    { { "push b", "b", "to b", NULL, TRUE, 1 },
      { "push c", "c", "to c", NULL, TRUE, 1 },
      { "undo", "b", "to b", "to c", TRUE, 1 },
      { "undo", "a", NULL, "to b", FALSE, 1 },
      { "redo", "b", "to b", "to c", TRUE, 1 },
      { "redo", "c", "to c", NULL, TRUE, 1 } } },
  { "push-cuts-redo",
    { { "push b", "b", "to b", NULL, TRUE, 1 },
      { "undo", "a", NULL, "to b", FALSE, 1 },
      { "push c", "c", "to c", NULL, TRUE, 1 },
      { "undo", "a", NULL, "to c", FALSE, 1 } } },
  { "same-plan", { { "same", "a", NULL, NULL, FALSE, 0 } } },
  { "merge",
    { { "push b:width", "b", "to b", NULL, TRUE, 1 },
      { "push c:width", "c", "to c", NULL, TRUE, 1 },
      { "push d:width", "d", "to d", NULL, TRUE, 1 },
      { "undo", "a", NULL, "to d", FALSE, 1 } } },
  { "merge/other-key",
    { { "push b:width", "b", "to b", NULL, TRUE, 1 },
      { "push c:length", "c", "to c", NULL, TRUE, 1 },
      { "undo", "b", "to b", "to c", TRUE, 1 } } },
  { "merge/no-key",
    { { "push b", "b", "to b", NULL, TRUE, 1 },
      { "push c", "c", "to c", NULL, TRUE, 1 },
      { "undo", "b", "to b", "to c", TRUE, 1 } } },
  { "merge/two-visits",
    { { "push b:width", "b", "to b", NULL, TRUE, 1 },
      { "end", "b", "to b", NULL, TRUE, 0 },
      { "push c:width", "c", "to c", NULL, TRUE, 1 },
      { "undo", "b", "to b", "to c", TRUE, 1 } } },
  { "merge/not-after-undo",
    { { "push b:width", "b", "to b", NULL, TRUE, 1 },
      { "push c", "c", "to c", NULL, TRUE, 1 },
      { "undo", "b", "to b", "to c", TRUE, 1 },
      { "push d:width", "d", "to d", NULL, TRUE, 1 },
      { "undo", "b", "to b", "to d", TRUE, 1 } } },
  { "merge/not-into-saved",
    { { "push b:width", "b", "to b", NULL, TRUE, 1 },
      { "save", "b", "to b", NULL, FALSE, 1 },
      { "push c:width", "c", "to c", NULL, TRUE, 1 },
      { "undo", "b", "to b", "to c", FALSE, 1 } } },
  { "saved",
    { { "push b", "b", "to b", NULL, TRUE, 1 },
      { "save", "b", "to b", NULL, FALSE, 1 },
      { "undo", "a", NULL, "to b", TRUE, 1 },
      { "redo", "b", "to b", NULL, FALSE, 1 } } },
  { "saved/cut-off",
    { { "push b", "b", "to b", NULL, TRUE, 1 },
      { "save", "b", "to b", NULL, FALSE, 1 },
      { "undo", "a", NULL, "to b", TRUE, 1 },
      { "push c", "c", "to c", NULL, TRUE, 1 },
      { "undo", "a", NULL, "to c", TRUE, 1 },
      { "redo", "c", "to c", NULL, TRUE, 1 },
      { "save", "c", "to c", NULL, FALSE, 1 } } },
  { "reset",
    { { "push b", "b", "to b", NULL, TRUE, 1 },
      { "reset e", "e", NULL, NULL, FALSE, 1 },
      { "push f", "f", "to f", NULL, TRUE, 1 } } },
};

static BsPlan *
new_plan (const char *name)
{
  BsPlan *plan = bs_plan_new ();
  bs_text_set (&plan->name, name);
  return plan;
}

static void
push (BsHistory *history, const char *argument)
{
  g_auto (GStrv) parts = g_strsplit (argument, ":", 2);
  g_autofree char *label = g_strconcat ("to ", parts[0], NULL);
  g_autofree char *selected = g_strconcat ("of ", parts[0], NULL);
  g_autoptr (BsPlan) plan = new_plan (parts[0]);

  bs_history_push (history, plan, label, parts[1], selected);
}

static void
run_command (BsHistory *history, const char *command)
{
  if (g_str_has_prefix (command, "push "))
    push (history, command + 5);
  else if (g_str_has_prefix (command, "reset "))
    {
      g_autoptr (BsPlan) plan = new_plan (command + 6);
      bs_history_reset (history, plan);
    }
  else if (g_str_equal (command, "undo"))
    bs_history_undo (history);
  else if (g_str_equal (command, "redo"))
    bs_history_redo (history);
  else if (g_str_equal (command, "save"))
    bs_history_set_saved (history);
  else if (g_str_equal (command, "end"))
    bs_history_end_merge (history);
  else if (g_str_equal (command, "same"))
    bs_history_push (history, bs_history_get_plan (history), "nothing", NULL, NULL);
  else
    g_assert_not_reached ();
}

static void
changed_cb (BsHistory *history, gpointer data)
{
  guint *count = data;
  ++*count;
}

static void
test_script (gconstpointer data)
{
  const Script *script = data;
  g_autoptr (BsPlan) start = new_plan ("a");
  g_autoptr (BsHistory) history = bs_history_new (start);
  guint n_changed = 0;

  g_signal_connect (history, "changed", G_CALLBACK (changed_cb), &n_changed);
  for (const Step *step = script->steps; step->command != NULL; step++)
    {
      g_test_message ("%s", step->command);
      n_changed = 0;
      run_command (history, step->command);
      g_assert_cmpstr (bs_history_get_plan (history)->name, ==, step->plan);
      g_assert_cmpstr (bs_history_get_undo_label (history), ==, step->undo);
      g_assert_cmpstr (bs_history_get_redo_label (history), ==, step->redo);
      g_assert_cmpint (bs_history_can_undo (history), ==, step->undo != NULL);
      g_assert_cmpint (bs_history_can_redo (history), ==, step->redo != NULL);
      g_assert_cmpint (bs_history_is_modified (history), ==, step->is_modified);
      g_assert_cmpuint (n_changed, ==, step->n_changed);
    }
}

static void
test_selected (void)
{
  g_autoptr (BsPlan) start = new_plan ("a");
  g_autoptr (BsHistory) history = bs_history_new (start);

  g_assert_null (bs_history_get_selected (history));
  push (history, "b");
  push (history, "c");
  g_assert_cmpstr (bs_history_get_selected (history), ==, "of c");
  bs_history_undo (history);
  g_assert_cmpstr (bs_history_get_selected (history), ==, "of b");
  bs_history_redo (history);
  g_assert_cmpstr (bs_history_get_selected (history), ==, "of c");
}

/* The plan that a reset is given may be held by the history alone. */
static void
test_reset_to_own (void)
{
  g_autoptr (BsPlan) start = new_plan ("a");
  g_autoptr (BsHistory) history = bs_history_new (start);

  push (history, "b");
  bs_history_reset (history, bs_history_get_plan (history));
  g_assert_cmpstr (bs_history_get_plan (history)->name, ==, "b");
  g_assert_false (bs_history_can_undo (history));
}

static void
test_finalised (void)
{
  g_autoptr (BsPlan) start = new_plan ("a");
  BsHistory *history = bs_history_new (start);

  push (history, "b");
  g_assert_finalize_object (history);
  g_assert_cmpstr (start->name, ==, "a");
}

static void
test_undo_at_start (void)
{
  if (g_test_subprocess ())
    {
      g_autoptr (BsPlan) start = new_plan ("a");
      g_autoptr (BsHistory) history = bs_history_new (start);
      bs_history_undo (history);
      return;
    }
  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*bs_history_can_undo*");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (scripts); i++)
    {
      g_autofree char *path = g_strconcat ("/history/", scripts[i].name, NULL);
      g_test_add_data_func (path, &scripts[i], test_script);
    }
  g_test_add_func ("/history/selected", test_selected);
  g_test_add_func ("/history/reset-to-own", test_reset_to_own);
  g_test_add_func ("/history/finalised", test_finalised);
  g_test_add_func ("/history/undo-at-start", test_undo_at_start);
  return g_test_run ();
}
