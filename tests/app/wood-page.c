/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-page.h"

#include <math.h>
#include <string.h>

#include "app/record.h"
#include "app/wood-compare-page.h"
#include "app/wood-cost-page.h"
#include "app/wood-details.h"
#include "app/wood-item.h"
#include "app/wood-movement-page.h"
#include "app/wood-table.h"
#include "core/text.h"
#include "desk.h"
#include "shops.h"

/* The place Wood: shown, used by its buttons, and gone without a trace. */

typedef struct
{
  BsSession *session;
  GtkWidget *window;
} Fixture;

static gboolean
is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

static void
set_up (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();

  bs_text_set (&((BsWood *)plan->woods->pdata[0])->name, "Made-up wood");
  f->session = bs_session_new (plan);
  f->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (f->window), 1000, 700);
  gtk_window_set_child (GTK_WINDOW (f->window), bs_wood_page_new (f->session));
  gtk_window_present (GTK_WINDOW (f->window));
  desk_wait (is_mapped, desk_find (f->window, BS_TYPE_WOOD_COMPARE_PAGE));
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  GWeakRef gone;

  g_weak_ref_init (&gone, desk_find (f->window, BS_TYPE_WOOD_COMPARE_PAGE));
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_assert_null (g_weak_ref_get (&gone));
  g_weak_ref_clear (&gone);
  g_assert_finalize_object (G_OBJECT (f->session));
}

static const BsPlan *
get_plan (Fixture *f)
{
  return bs_session_get_plan (f->session);
}

static GListModel *
get_rows (Fixture *f)
{
  return G_LIST_MODEL (
      gtk_column_view_get_model (GTK_COLUMN_VIEW (desk_find (f->window, GTK_TYPE_COLUMN_VIEW))));
}

static const BsWoodCard *
get_card (Fixture *f, guint row)
{
  g_autoptr (BsWoodItem) item = g_list_model_get_item (get_rows (f), row);

  return bs_wood_item_get_card (item);
}

static void
choose (Fixture *f, const char *id)
{
  for (guint i = 0; i < g_list_model_get_n_items (get_rows (f)); i++)
    if (g_str_equal (get_card (f, i)->wood->id, id))
      gtk_selection_model_select_item (GTK_SELECTION_MODEL (get_rows (f)), i, TRUE);
}

static GtkWidget *
find_button (GtkWidget *below, const char *label)
{
  if (GTK_IS_BUTTON (below) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (below)), label) == 0)
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button (child, label);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
press (Fixture *f, const char *label)
{
  GtkWidget *button = find_button (f->window, label);

  g_assert_nonnull (button);
  g_assert_true (gtk_widget_get_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
}

static guint
count_laminations_of (const BsPlan *plan, const char *wood)
{
  guint n = 0;

  for (guint i = 0; i < plan->laminations->len; i++)
    n += g_strcmp0 (((BsLamination *)plan->laminations->pdata[i])->wood, wood) == 0 ? 1 : 0;
  return n;
}

/* Every wood of the table and the plan's own. */
static void
test_rows (Fixture *f, gconstpointer unused)
{
  g_autoptr (GPtrArray) woods = bs_wood_table_list (bs_wood_table_get (), get_plan (f));

  g_assert_cmpuint (g_list_model_get_n_items (get_rows (f)), ==, woods->len);
}

/* In one step, which is undone in one. */
static void
test_use_for_all (Fixture *f, gconstpointer unused)
{
  choose (f, "black-cherry");
  press (f, "For _all laminations");
  g_assert_cmpuint (count_laminations_of (get_plan (f), "black-cherry"), ==, 8);
  g_assert_nonnull (bs_plan_find_wood (get_plan (f), "black-cherry"));
  bs_history_undo (bs_session_get_history (f->session));
  g_assert_cmpuint (count_laminations_of (get_plan (f), "black-cherry"), ==, 0);
}

static void
test_use_for_selected (Fixture *f, gconstpointer unused)
{
  choose (f, "black-cherry");
  bs_session_select (f->session, "3");
  press (f, "For the _selected lamination");
  g_assert_cmpuint (count_laminations_of (get_plan (f), "black-cherry"), ==, 1);
  g_assert_cmpstr (bs_plan_find_lamination (get_plan (f), "3")->wood, ==, "black-cherry");
}

static void
test_use_for_the_rest (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) copy = bs_plan_copy (get_plan (f));
  BsLamination *second = bs_record_lamination.edit (copy, "2");

  bs_text_set (&second->wood, NULL);
  bs_session_push (f->session, copy, "for the test", NULL);
  choose (f, "black-cherry");
  press (f, "For those with_out a wood");
  g_assert_cmpuint (count_laminations_of (get_plan (f), "black-cherry"), ==, 1);
  g_assert_false (gtk_widget_get_sensitive (find_button (f->window, "For those with_out a wood")));
}

/* A copy has the figures of the one that it began as, says so, and is the one shown. */
static void
test_copy (Fixture *f, gconstpointer unused)
{
  choose (f, "black-cherry");
  press (f, "_Copy as your own wood");
  const BsWood *copy = get_plan (f)->woods->pdata[get_plan (f)->woods->len - 1];
  guint row = gtk_single_selection_get_selected (GTK_SINGLE_SELECTION (get_rows (f)));

  g_assert_true (g_str_has_prefix (copy->id, "own-wood-"));
  g_assert_cmpfloat_with_epsilon (copy->side_hardness_n, 4200.0, 1e-9);
  g_assert_nonnull (strstr (copy->source, "Cherry, black"));
  g_assert_cmpstr (get_card (f, row)->wood->id, ==, copy->id);
}

/* A figure that is typed comes into the plan, and the source says that it is not all its own. */
static void
test_edit_figure (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) copy = bs_plan_copy (get_plan (f));
  BsWood *cherry = bs_record_wood.edit (copy, "black-cherry");

  cherry->price_minor_per_m3 = 300000.0;
  bs_session_push (f->session, copy, "for the test", NULL);
  const BsWood *carried = bs_plan_find_wood (get_plan (f), "black-cherry");
  g_assert_nonnull (strstr (carried->source, "some figures set by you"));
  for (guint i = 0; i < g_list_model_get_n_items (get_rows (f)); i++)
    if (g_str_equal (get_card (f, i)->wood->id, "black-cherry"))
      g_assert_cmpfloat (get_card (f, i)->cost_minor, >, 0.0);
}

static void
test_keep (Fixture *f, gconstpointer unused)
{
  choose (f, "black-cherry");
  g_assert_false (gtk_widget_get_sensitive (find_button (f->window, "_Forget what you kept")));
  test_edit_figure (f, unused);
  press (f, "_Keep its figures for other plans");
  g_assert_true (bs_wood_table_is_kept (bs_wood_table_get (), "black-cherry"));
  press (f, "_Forget what you kept");
  g_assert_false (bs_wood_table_is_kept (bs_wood_table_get (), "black-cherry"));
}

/* Only those that fit; more fit when more is allowed. */
static void
test_only_fit (Fixture *f, gconstpointer unused)
{
  GtkWidget *only = desk_find (f->window, GTK_TYPE_CHECK_BUTTON);
  guint all = g_list_model_get_n_items (get_rows (f)), fit;

  gtk_check_button_set_active (GTK_CHECK_BUTTON (only), TRUE);
  fit = g_list_model_get_n_items (get_rows (f));
  g_assert_cmpuint (fit, <, all);
  g_assert_cmpuint (fit, >, 0);
  for (guint i = 0; i < fit; i++)
    g_assert_cmpint (get_card (f, i)->unfit, ==, 0);

  g_autoptr (BsPlan) copy = bs_plan_copy (get_plan (f));
  copy->slab.hardness_high_n = 6000.0;
  bs_session_push (f->session, copy, "for the test", NULL);
  g_assert_cmpuint (g_list_model_get_n_items (get_rows (f)), >, fit);
}

/* By the keyboard too; what is not known comes last. */
static void
test_sorting (Fixture *f, gconstpointer unused)
{
  GtkWidget *sorting = desk_find (f->window, GTK_TYPE_DROP_DOWN);
  guint n = g_list_model_get_n_items (get_rows (f));

  gtk_drop_down_set_selected (GTK_DROP_DOWN (sorting), 5); /* sag */
  for (guint i = 1; i < n; i++)
    {
      const double before = get_card (f, i - 1)->sag_per_kn, here = get_card (f, i)->sag_per_kn;
      g_assert_true (isnan (here) || before <= here);
    }
  g_assert_true (isnan (get_card (f, n - 1)->sag_per_kn)); /* a European wood */
}

static gboolean
shows_text (GtkWidget *below, const char *part)
{
  if (GTK_IS_LABEL (below) && strstr (gtk_label_get_text (GTK_LABEL (below)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (shows_text (child, part))
      return TRUE;
  return FALSE;
}

static void
show_part (Fixture *f, const char *name, GType type)
{
  GtkWidget *stack = desk_find (f->window, GTK_TYPE_STACK);

  gtk_stack_set_visible_child_name (GTK_STACK (stack), name);
  desk_wait (is_mapped, desk_find (f->window, type));
}

static void
test_movement (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) copy = bs_plan_copy (get_plan (f));
  BsWood *wood = bs_record_wood.edit (copy, "wood");

  show_part (f, "movement", BS_TYPE_WOOD_MOVEMENT_PAGE);
  GtkWidget *part = desk_find (f->window, BS_TYPE_WOOD_MOVEMENT_PAGE);
  g_assert_true (shows_text (part, "cannot be told"));
  wood->coef_radial = 0.0015;
  wood->coef_tangential = 0.0035;
  copy->slab.fixing.line = BS_FIXED_FRONT;
  bs_session_push (f->session, copy, "for the test", NULL);
  g_assert_true (shows_text (part, "Held along its front"));
  g_assert_true (shows_text (part, "Over the year"));
  g_assert_false (shows_text (part, "cannot be told"));
}

static void
test_cost (Fixture *f, gconstpointer unused)
{
  show_part (f, "cost", BS_TYPE_WOOD_COST_PAGE);
  GtkWidget *part = desk_find (f->window, BS_TYPE_WOOD_COST_PAGE);

  g_assert_true (shows_text (part, "Made-up wood"));
  g_assert_true (shows_text (part, "Heaviest lamination"));
  g_assert_true (shows_text (part, "What it costs is not known"));
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *path;
    void (*test) (Fixture *f, gconstpointer unused);
  } cases[] = {
    { "/wood-page/rows", test_rows },
    { "/wood-page/use/all", test_use_for_all },
    { "/wood-page/use/selected", test_use_for_selected },
    { "/wood-page/use/rest", test_use_for_the_rest },
    { "/wood-page/copy", test_copy },
    { "/wood-page/edit-figure", test_edit_figure },
    { "/wood-page/keep", test_keep },
    { "/wood-page/only-fit", test_only_fit },
    { "/wood-page/sorting", test_sorting },
    { "/wood-page/movement", test_movement },
    { "/wood-page/cost", test_cost },
  };

  desk_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_test_add (cases[i].path, Fixture, NULL, set_up, cases[i].test, tear_down);
  return g_test_run ();
}
