/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/buying-page.h"

#include <string.h>

#include "app/field-editor.h"
#include "desk.h"
#include "plan/tables.h"
#include "yards.h"

typedef struct
{
  BsSession *session;
  GtkWidget *page;
} Scene;

static BsStudy *
get_study (BsSession *session)
{
  return bs_session_get_study (session, &bs_study_purchase);
}

static gboolean
is_done (gpointer session)
{
  return bs_study_is_current (get_study (session)) && !bs_study_is_working (get_study (session));
}

static Scene
scene_new (BsPlan *plan)
{
  Scene scene = { .session = bs_session_new (plan) };

  scene.page = g_object_ref_sink (bs_buying_page_new (scene.session));
  desk_wait (is_done, scene.session);
  return scene;
}

static void
scene_clear (Scene *self)
{
  g_assert_finalize_object (G_OBJECT (self->page));
  g_assert_finalize_object (G_OBJECT (self->session));
}

static BsPlan *
get_plan (Scene *self)
{
  return bs_session_get_plan (self->session);
}

/* The first label that can be seen and begins with some words. */
static GtkWidget *
find_text (GtkWidget *below, const char *words)
{
  if (!gtk_widget_get_visible (below))
    return NULL;
  if (GTK_IS_LABEL (below) && strstr (gtk_label_get_text (GTK_LABEL (below)), words) != NULL)
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_text (child, words);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
click (Scene *self, const char *words)
{
  GtkWidget *label = find_text (self->page, words);

  g_assert_nonnull (label);
  g_signal_emit_by_name (gtk_widget_get_ancestor (label, GTK_TYPE_BUTTON), "clicked");
}

/* The entry of a field of that name, the number-th from the top. */
static GtkWidget *
find_entry (GtkWidget *below, const char *tooltip, guint *number)
{
  const char *here = gtk_widget_get_tooltip_text (below);

  if (GTK_IS_ENTRY (below) && g_strcmp0 (here, tooltip) == 0 && (*number)-- == 0)
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_entry (child, tooltip, number);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
type (Scene *self, const char *tooltip, guint number, const char *text)
{
  GtkWidget *entry = find_entry (self->page, tooltip, &number);

  g_assert_nonnull (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

/* From nothing but a wish to boards in the rack, by what is typed and clicked. */
static void
test_from_a_wish (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_ptr_array_add (plan->woods, bs_wood_ref (g_ptr_array_index (bs_tables_get_woods (), 0)));
  Scene scene = scene_new (plan);

  g_assert_nonnull (find_text (scene.page, "The yard is empty"));
  g_assert_null (find_text (scene.page, "Put these boards in the rack"));

  click (&scene, "Make the laminations for this slab");
  g_assert_cmpuint (get_plan (&scene)->laminations->len, ==, 15); /* 600 / 40 */
  g_assert_null (find_text (scene.page, "Make the laminations for this slab"));

  click (&scene, "Add an offer");
  type (&scene, "Rough, as it is sold: 52 mm, 8/4", 0, "65");
  type (&scene,
        "With ; between them, and the number there is in brackets where it is limited: "
        "2440; 3050 (4)",
        0, "2500; 10'");
  type (&scene, "Empty: not known", 0, "1800");
  const BsOffer *offer = g_ptr_array_index (get_plan (&scene)->offers, 0);
  g_assert_cmpint (offer->price_minor, ==, 180000);
  g_assert_cmpuint (offer->lengths->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (g_array_index (offer->lengths, BsOfferLength, 1).length, 3048.0,
                                  1e-9);
  desk_wait (is_done, scene.session);
  g_assert_nonnull (find_text (scene.page, "to buy for 17 pieces"));

  click (&scene, "Put these boards in the rack");
  g_assert_cmpuint (get_plan (&scene)->boards->len, >, 0);
  g_assert_cmpuint (get_plan (&scene)->cuts->len, ==, 17);
  desk_wait (is_done, scene.session);
  g_assert_nonnull (find_text (scene.page, "every lamination has its board"));

  BsHistory *history = bs_session_get_history (scene.session);
  bs_history_undo (history);
  g_assert_cmpuint (get_plan (&scene)->boards->len, ==, 0);
  g_assert_cmpuint (get_plan (&scene)->cuts->len, ==, 0);
  scene_clear (&scene);
}

typedef struct
{
  const char *path;
  const char *typed;
  const char *lengths; /* in the plan afterwards: "length (supply)", supply -1: open */
} LengthRow;

static const LengthRow length_rows[] = {
  { "millimetres", "2440; 3050", "2440(-1) 3050(-1)" },
  { "feet", "8', 10', 12'", "2438(-1) 3048(-1) 3658(-1)" },
  { "supply", "2440 (4); 3050 ( 12 )", "2440(4) 3050(12)" },
  { "decimal-comma", "2,44 m; 3,05 m", "2440(-1) 3050(-1)" },
  { "none", "", "" },
  { "loose-ends", "; 2440 ;;", "2440(-1)" },
  { "not-a-length", "2440; long", "2500(-1)" },
  { "not-a-number", "2440 (few)", "2500(-1)" },
  { "negative", "-2440", "2500(-1)" },
  { "absurd", "99 m", "2500(-1)" },
};

/* What cannot be read stays on screen, and the plan as it was. */
static void
check_lengths (gconstpointer data)
{
  const LengthRow *row = data;
  g_autoptr (BsPlan) plan = yard_plan (1, 2000.0, 30.0, 60.0);
  GString *found = g_string_new (NULL);

  yard_offer (plan, 2500.0, 230.0, 52.0, 1000);
  Scene scene = scene_new (plan);
  type (&scene,
        "With ; between them, and the number there is in brackets where it is limited: "
        "2440; 3050 (4)",
        0, row->typed);
  const BsOffer *offer = g_ptr_array_index (get_plan (&scene)->offers, 0);
  for (guint i = 0; i < offer->lengths->len; i++)
    {
      const BsOfferLength *length = &g_array_index (offer->lengths, BsOfferLength, i);
      g_string_append_printf (found, "%s%.0f(%d)", i > 0 ? " " : "", length->length,
                              length->supply);
    }
  g_assert_cmpstr (found->str, ==, row->lengths);
  g_string_free (found, TRUE);
  scene_clear (&scene);
}

/* What is missing is told, and what is there is bought all the same. */
static void
test_shortfall (void)
{
  g_autoptr (BsPlan) plan = yard_plan (2, 2000.0, 30.0, 60.0);

  yard_part (plan, "beam", 1, 6000.0, 90.0, 30.0);
  yard_offer (plan, 2500.0, 230.0, 52.0, 1000);
  Scene scene = scene_new (plan);
  g_assert_nonnull (find_text (scene.page, "1 board to buy for 2 pieces"));
  g_assert_nonnull (find_text (scene.page, "Not to be had: 1 of “beam”"));
  scene_clear (&scene);
}

/* A leg that is too thick for the yard is had as two layers, and whole again when that is undone.
 */
static void
test_two_layers (void)
{
  g_autoptr (BsPlan) plan = yard_plan (2, 2000.0, 30.0, 60.0);

  yard_part (plan, "leg", 4, 800.0, 90.0, 70.0);
  yard_offer (plan, 2500.0, 230.0, 52.0, 1000);
  Scene scene = scene_new (plan);
  g_assert_nonnull (find_text (scene.page, "Not to be had: 4 of “leg”"));
  click (&scene, "Take two layers");
  desk_wait (is_done, scene.session);
  g_assert_nonnull (find_text (scene.page, "8 of “leg, layer”, 800 × 90 × 35"));
  g_assert_null (find_text (scene.page, "Not to be had"));
  g_assert_null (find_text (scene.page, "Take two layers"));
  bs_history_undo (bs_session_get_history (scene.session));
  desk_wait (is_done, scene.session);
  g_assert_cmpint (((BsPart *)get_plan (&scene)->parts->pdata[0])->count, ==, 4);
  g_assert_nonnull (find_text (scene.page, "Take two layers"));
  scene_clear (&scene);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/buying-page/from-a-wish", test_from_a_wish);
  for (guint i = 0; i < G_N_ELEMENTS (length_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/buying-page/lengths/", length_rows[i].path, NULL);
      g_test_add_data_func (path, &length_rows[i], check_lengths);
    }
  g_test_add_func ("/buying-page/shortfall", test_shortfall);
  g_test_add_func ("/buying-page/two-layers", test_two_layers);
  return g_test_run ();
}
