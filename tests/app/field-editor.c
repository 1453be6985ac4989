/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/field-editor.h"

#include <math.h>

#include "desk.h"
#include "slabs.h"

/* What is typed into a field, and what the plan holds afterwards. */

static const BsField length = { BS_FIELD_NUMBER, "Length", NULL,
                                G_STRUCT_OFFSET (BsPlan, slab.length), &bs_limits.slab_length };
static const BsField lift
    = { BS_FIELD_NUMBER,     "Lift", NULL, G_STRUCT_OFFSET (BsPlan, shop.max_lift_kg),
        &bs_limits.max_lift, TRUE };
static const BsField people
    = { BS_FIELD_WHOLE, "People", NULL, G_STRUCT_OFFSET (BsPlan, shop.people), &bs_limits.people };

typedef struct
{
  const char *path;
  const BsField *field;
  const char *typed;
  double wanted; /* in the plan afterwards */
  gboolean is_refused;
} Row;

static const Row rows[] = {
  { "millimetres", &length, "1850", 1850.0, FALSE },
  { "metres", &length, "1.85 m", 1850.0, FALSE },
  { "feet", &length, "8'", 2438.4, FALSE },                      /* 8 x 304.8 */
  { "feet-and-fraction", &length, "6' 1 1/2\"", 1866.9, FALSE }, /* 73.5 x 25.4 */
  { "not-a-length", &length, "long", 2000.0, TRUE },
  { "negative", &length, "-5", 2000.0, TRUE },
  { "past-the-limit", &length, "99 m", 2000.0, TRUE },
  { "empty-where-needed", &length, "", 2000.0, TRUE },
  { "pounds", &lift, "50 lb", 22.6796185, FALSE }, /* 50 x 0.45359237 */
  { "empty-is-unknown", &lift, "", NAN, FALSE },
  { "whole", &people, "3", 3.0, FALSE },
};

static double
read_value (const BsField *field, const BsPlan *plan)
{
  const char *place = (const char *)plan + field->offset;
  return field->kind == BS_FIELD_WHOLE ? *(const int *)place : *(const double *)place;
}

static void
check_typed (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = slab_new (2, 2000.0, 40.0, 60.0);
  plan->shop.max_lift_kg = 30.0;
  g_autoptr (BsSession) session = bs_session_new (plan);
  GtkWidget *editor
      = g_object_ref_sink (bs_field_editor_new (session, &bs_record_plan, row->field, NULL));
  GtkWidget *entry = desk_find (editor, GTK_TYPE_ENTRY);

  gtk_editable_set_text (GTK_EDITABLE (entry), row->typed);
  g_signal_emit_by_name (entry, "activate");

  double found = read_value (row->field, bs_session_get_plan (session));
  if (isnan (row->wanted))
    g_assert_true (isnan (found));
  else
    g_assert_cmpfloat_with_epsilon (found, row->wanted, 1e-9);
  g_assert_true (bs_history_can_undo (bs_session_get_history (session)) == !row->is_refused);
  g_assert_true (gtk_widget_has_css_class (entry, "error") == row->is_refused);
  if (row->is_refused) /* what was typed is not lost */
    g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, row->typed);
  g_assert_finalize_object (G_OBJECT (editor));
}

/* The text is rounded; leaving a field that was not touched keeps the exact value. */
static void
check_untouched (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 2000.0, 40.0, 60.0);
  plan->slab.length = 1234.5678;
  g_autoptr (BsSession) session = bs_session_new (plan);
  GtkWidget *editor
      = g_object_ref_sink (bs_field_editor_new (session, &bs_record_plan, &length, NULL));

  g_signal_emit_by_name (desk_find (editor, GTK_TYPE_ENTRY), "activate");
  g_assert_true (bs_session_get_plan (session) == plan);
  g_assert_finalize_object (G_OBJECT (editor));
}

static void
check_undo_shows (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 2000.0, 40.0, 60.0);
  g_autoptr (BsSession) session = bs_session_new (plan);
  GtkWidget *editor
      = g_object_ref_sink (bs_field_editor_new (session, &bs_record_plan, &people, NULL));
  GtkWidget *entry = desk_find (editor, GTK_TYPE_ENTRY);

  gtk_editable_set_text (GTK_EDITABLE (entry), "4");
  g_signal_emit_by_name (entry, "activate");
  bs_history_undo (bs_session_get_history (session));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "1");
  g_assert_finalize_object (G_OBJECT (editor));
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/field-editor/typed/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], check_typed);
    }
  g_test_add_func ("/field-editor/untouched", check_untouched);
  g_test_add_func ("/field-editor/undo-shows", check_undo_shows);
  return g_test_run ();
}
