/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/clamping-page.h"

#include <glib/gi18n.h>
#include <math.h>
#include <stdlib.h>

#include "app/clamp-edits.h"
#include "app/clamp-finder.h"
#include "app/clamp-helps.h"
#include "app/clamping-canvas.h"
#include "app/drop-down.h"
#include "app/live-pressure.h"
#include "app/page.h"
#include "app/rows-editor.h"
#include "core/clamps.h"
#include "core/units.h"
#include "plan/edits.h"
#include "words/pressing.h"
#include "words/words.h"

static const char SESSION[] = "session", PLACE[] = "place";

static BsSession *
get_session (gpointer widget)
{
  return g_object_get_data (widget, SESSION);
}

/* A widget of a row: it knows the session and the place of its clamp. */
static void
set_row (GtkWidget *widget, BsSession *session, const char *id)
{
  g_object_set_data_full (G_OBJECT (widget), SESSION, g_object_ref (session), g_object_unref);
  g_object_set_data (G_OBJECT (widget), PLACE, GUINT_TO_POINTER (strtoul (id, NULL, 10)));
}

/* The placed clamp of a row, or NULL when it is gone. */
static const BsPlacedClamp *
get_clamp (gpointer widget)
{
  const GArray *clamps = bs_session_get_plan (get_session (widget))->placed_clamps;
  guint place = GPOINTER_TO_UINT (g_object_get_data (widget, PLACE));

  return place < clamps->len ? &g_array_index (clamps, BsPlacedClamp, place) : NULL;
}

/* Its kind, to choose from those of the shop. */

static GtkStringList *
list_kinds (const BsPlan *plan)
{
  GtkStringList *names = gtk_string_list_new (NULL);

  for (guint i = 0; i < plan->shop.clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, i);

      gtk_string_list_append (names, kind->name != NULL ? kind->name : kind->id);
    }
  return names;
}

static void
kind_chosen_cb (GtkDropDown *choice)
{
  BsSession *session = get_session (choice);
  BsPlan *plan = bs_session_get_plan (session);
  guint row = gtk_drop_down_get_selected (choice);
  const BsPlacedClamp *clamp = get_clamp (choice);

  if (clamp == NULL || row >= plan->shop.clamps->len
      || (int)row == bs_plan_find_clamp_kind (plan, clamp->kind))
    return;
  const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, row);
  g_autoptr (BsPlan) chosen = bs_edit_choose_clamp (
      plan, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (choice), PLACE)), kind->id);
  bs_session_push (session, chosen, _ ("Choose the kind of a clamp"), NULL);
}

static void
show_kind_cb (GtkDropDown *choice)
{
  const BsPlan *plan = bs_session_get_plan (get_session (choice));
  const BsPlacedClamp *clamp = get_clamp (choice);
  guint n = g_list_model_get_n_items (gtk_drop_down_get_model (choice));

  if (clamp == NULL || n != plan->shop.clamps->len)
    return;
  gtk_drop_down_set_selected (choice, (guint)bs_plan_find_clamp_kind (plan, clamp->kind));
}

static GtkWidget *
new_kind_choice (BsSession *session, const char *id)
{
  GtkStringList *names = list_kinds (bs_session_get_plan (session));
  GtkWidget *choice = gtk_drop_down_new (G_LIST_MODEL (names), NULL);

  set_row (choice, session, id);
  gtk_widget_add_css_class (choice, "in-row");
  gtk_widget_set_valign (choice, GTK_ALIGN_START);
  bs_drop_down_set_name (GTK_DROP_DOWN (choice), _ ("Kind of clamp"));
  show_kind_cb (GTK_DROP_DOWN (choice));
  g_signal_connect (choice, "notify::selected", G_CALLBACK (kind_chosen_cb), NULL);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_kind_cb), choice,
                           G_CONNECT_SWAPPED);
  return choice;
}

/* What follows from its place and its force. */

static void
show_turn_cb (GtkLabel *label)
{
  const GArray *clamps = bs_session_get_results (get_session (label))->set_clamps;
  guint place = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (label), PLACE));
  g_autofree char *text
      = place < clamps->len
            ? g_strdup_printf ("%u", g_array_index (clamps, BsLayoutClamp, place).turn + 1)
            : g_strdup ("");

  gtk_label_set_text (label, text);
}

static void
show_torque_cb (GtkLabel *label)
{
  const BsPlan *plan = bs_session_get_plan (get_session (label));
  const BsPlacedClamp *clamp = get_clamp (label);
  double torque = NAN;

  if (clamp != NULL)
    torque = bs_clamps_torque (
        g_ptr_array_index (plan->shop.clamps, (guint)bs_plan_find_clamp_kind (plan, clamp->kind)),
        clamp->force_n);
  g_autofree char *text = bs_units_format (torque, BS_QUANTITY_TORQUE, plan->units);
  gtk_label_set_text (label, text);
}

static GtkWidget *
new_row_label (BsSession *session, const char *id, void (*show) (GtkLabel *))
{
  GtkWidget *label = gtk_label_new (NULL);

  set_row (label, session, id);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_margin_start (label, 6);
  show (GTK_LABEL (label));
  g_signal_connect_object (session, "changed", G_CALLBACK (show), label, G_CONNECT_SWAPPED);
  return label;
}

static GtkWidget *
new_turn_label (BsSession *session, const char *id)
{
  return new_row_label (session, id, show_turn_cb);
}

static GtkWidget *
new_torque_label (BsSession *session, const char *id)
{
  GtkWidget *label = new_row_label (session, id, show_torque_cb);

  gtk_widget_set_tooltip_text (
      label, _ ("On the handle, for a dry screw; set its mean diameter and lead at the place "
                "“Shop”"));
  return label;
}

static const char *const sides[] = { NC_ ("clamp", "below"), NC_ ("clamp", "above"), NULL };

static const BsField clamp_fields[] = {
  { BS_FIELD_NUMBER, N_ ("From the left end"), N_ ("Of the middle of its heads"),
    G_STRUCT_OFFSET (BsPlacedClamp, x), &bs_limits.placed_x },
  { BS_FIELD_NUMBER, N_ ("Force"), N_ ("That it is tightened to"),
    G_STRUCT_OFFSET (BsPlacedClamp, force_n), &bs_limits.placed_force },
  { BS_FIELD_CHOICE, N_ ("Lies"), N_ ("Above the show face or below the underside, by turns"),
    G_STRUCT_OFFSET (BsPlacedClamp, is_above), .choices = sides, .choices_context = "clamp" },
};

static const BsRowsColumn clamp_columns[] = {
  { N_ ("Kind"), new_kind_choice },
  { N_ ("Turn"), new_turn_label },
  { N_ ("Torque"), new_torque_label },
};

static guint
count_clamps (const BsPlan *plan, const char *owner)
{
  return plan->placed_clamps->len;
}

/* Other kinds in the shop need other choices, so that they make other rows. */
static char *
dup_clamp_id (const BsPlan *plan, const char *owner, guint index)
{
  g_autoptr (GString) id = g_string_new (NULL);

  g_string_append_printf (id, "%u", index);
  for (guint i = 0; i < plan->shop.clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, i);

      g_string_append_printf (id, " %s", kind->name != NULL ? kind->name : kind->id);
    }
  return g_string_free (g_steal_pointer (&id), FALSE);
}

static BsPlan *
add_clamp (const BsPlan *plan, const char *owner)
{
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);
  g_autoptr (BsResults) results = bs_evaluate (copy);

  return bs_clamp_edits_add (copy, results, NULL);
}

static BsPlan *
take_off_clamp (const BsPlan *plan, const char *owner, guint index)
{
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);

  return bs_edit_take_off_clamp (copy, index);
}

static const BsRows clamp_rows = {
  .heading = N_ ("The clamps, from left to right"),
  .add_label = N_ ("Add a clamp"),
  .none
  = N_ ("The clamps stand as the hand rule says, and share its force. Drag one, or add one, to "
        "place them by hand."),
  .record = &bs_record_placed_clamp,
  .fields = clamp_fields,
  .n_fields = G_N_ELEMENTS (clamp_fields),
  .columns = clamp_columns,
  .n_columns = G_N_ELEMENTS (clamp_columns),
  .count = count_clamps,
  .dup_id = dup_clamp_id,
  .add = add_clamp,
  .take_off = take_off_clamp,
};

/* Back to the hand rule. */

static void
forget_cb (GtkButton *button, BsSession *session)
{
  g_autoptr (BsPlan) bare = bs_edit_set_clamps (bs_session_get_plan (session), NULL, 0);

  bs_session_push (session, bare, _ ("Clamps by the hand rule"), NULL);
}

static void
show_forget_cb (GtkWidget *button, BsSession *session)
{
  gtk_widget_set_visible (button, bs_session_get_plan (session)->placed_clamps->len > 0);
}

static GtkWidget *
new_forget_button (BsSession *session)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Set them by the hand rule again"));

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_object (button, "clicked", G_CALLBACK (forget_cb), session, 0);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_forget_cb), button,
                           G_CONNECT_SWAPPED);
  show_forget_cb (button, session);
  return button;
}

/* What it comes to, and what to be careful with. */

static GtkWidget *
new_words (BsSession *session, const char *css_class)
{
  GtkWidget *label = bs_page_text_new (NULL, css_class);

  g_object_set_data_full (G_OBJECT (label), SESSION, g_object_ref (session), g_object_unref);
  return label;
}

static void
show_summary_cb (GtkLabel *label)
{
  const BsPressure *pressure = bs_live_pressure_get (get_session (label));
  g_autofree char *text
      = pressure != NULL ? bs_words_pressing (pressure) : g_strdup (_ ("Working…"));

  gtk_label_set_text (label, text);
}

static void
show_caution_cb (GtkLabel *label)
{
  g_autofree char *text = bs_words_clamp_caution (bs_session_get_results (get_session (label)));

  gtk_label_set_text (label, text);
}

GtkWidget *
bs_clamping_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  GtkWidget *page = bs_page_new ();
  GtkWidget *summary = new_words (session, NULL);
  GtkWidget *caution = new_words (session, NULL);

  bs_page_add_wide (page, summary);
  bs_page_add_wide (page, bs_clamping_canvas_new (session));
  bs_page_add (page, bs_clamp_helps_new (session));
  bs_page_add (page, bs_clamp_finder_new (session));
  bs_page_add_wide (page, bs_rows_editor_new (session, &clamp_rows, NULL));
  bs_page_add_wide (page, new_forget_button (session));
  bs_page_add_wide (page, caution);

  bs_live_pressure_connect (session, G_CALLBACK (show_summary_cb), summary);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_caution_cb), caution,
                           G_CONNECT_SWAPPED);
  show_summary_cb (GTK_LABEL (summary));
  show_caution_cb (GTK_LABEL (caution));
  return page;
}
