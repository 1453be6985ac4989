/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/laminations-page.h"
#include "app/shop-page.h"
#include "app/slab-page.h"
#include "desk.h"
#include "slabs.h"

/* The pages of fields: built, used by their buttons, and gone without a trace. */

typedef struct
{
  BsSession *session;
  GtkWidget *window;
} Fixture;

static void
set_up (Fixture *f, gconstpointer create)
{
  g_autoptr (BsPlan) plan = slab_new (3, 2000.0, 40.0, 60.0);
  GtkWidget *(*new_page) (BsSession *) = create;

  f->session = bs_session_new (plan);
  f->window = gtk_window_new ();
  gtk_window_set_child (GTK_WINDOW (f->window), new_page (f->session));
  gtk_window_present (GTK_WINDOW (f->window));
}

static void
tear_down (Fixture *f, gconstpointer create)
{
  GtkWidget *page = gtk_window_get_child (GTK_WINDOW (f->window));
  GWeakRef gone;

  g_weak_ref_init (&gone, page);
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_assert_null (g_weak_ref_get (&gone));
  g_weak_ref_clear (&gone);
  g_assert_finalize_object (G_OBJECT (f->session));
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
  g_signal_emit_by_name (button, "clicked");
}

static const BsPlan *
get_plan (Fixture *f)
{
  return bs_session_get_plan (f->session);
}

static void
test_slab (Fixture *f, gconstpointer create)
{
  GtkWidget *alternate = desk_find (f->window, GTK_TYPE_SWITCH);

  gtk_switch_set_active (GTK_SWITCH (alternate), TRUE);
  g_assert_true (get_plan (f)->slab.alternate_hearts);
  bs_history_undo (bs_session_get_history (f->session));
  g_assert_false (gtk_switch_get_active (GTK_SWITCH (alternate)));
}

static void
test_clamps (Fixture *f, gconstpointer create)
{
  press (f, "Add a kind of clamp");
  press (f, "Add a kind of clamp");
  g_assert_cmpuint (get_plan (f)->shop.clamps->len, ==, 2);
  g_assert_cmpstr (((BsClampKind *)g_ptr_array_index (get_plan (f)->shop.clamps, 0))->id, !=,
                   ((BsClampKind *)g_ptr_array_index (get_plan (f)->shop.clamps, 1))->id);
  bs_history_undo (bs_session_get_history (f->session));
  g_assert_cmpuint (get_plan (f)->shop.clamps->len, ==, 1);
}

/* A new lamination measures like the last one, is in the slab, and is the selected one. */
static void
test_add_lamination (Fixture *f, gconstpointer create)
{
  press (f, "_Add a lamination");
  const BsLamination *last = g_ptr_array_index (get_plan (f)->laminations, 3);

  g_assert_cmpuint (get_plan (f)->order->len, ==, 4);
  g_assert_cmpfloat_with_epsilon (last->height, 60.0, 1e-12);
  g_assert_cmpstr (bs_session_get_selected (f->session), ==, last->id);
}

static void
test_strike_out (Fixture *f, gconstpointer create)
{
  bs_session_select (f->session, "2");
  press (f, "Strike it _out");
  g_assert_cmpuint (get_plan (f)->laminations->len, ==, 2);
  g_assert_null (bs_plan_find_lamination (get_plan (f), "2"));
  bs_history_undo (bs_session_get_history (f->session));
  g_assert_cmpint (bs_plan_find_place (get_plan (f), "2"), ==, 1);
}

static GtkWidget *
find_styled (GtkWidget *widget, const char *css_class)
{
  GtkWidget *found = gtk_widget_has_css_class (widget, css_class) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_styled (child, css_class);
  return found;
}

static void
test_defects (Fixture *f, gconstpointer create)
{
  bs_session_select (f->session, "3");
  press (f, "Add a defect");
  const BsLamination *lamination = bs_plan_find_lamination (get_plan (f), "3");
  g_assert_cmpuint (lamination->defects->len, ==, 1);
  g_assert_cmpint (g_array_index (lamination->defects, BsDefect, 0).face, ==, BS_FACE_TOP);
  g_signal_emit_by_name (find_styled (f->window, "take-off"), "clicked");
  lamination = bs_plan_find_lamination (get_plan (f), "3");
  g_assert_cmpuint (lamination->defects->len, ==, 0);
  /* Whoever works by keys goes on from where that was. */
  g_assert_true (gtk_root_get_focus (GTK_ROOT (f->window))
                 == find_button (f->window, "Add a defect"));
  bs_history_undo (bs_session_get_history (f->session));
  g_assert_cmpuint (bs_plan_find_lamination (get_plan (f), "3")->defects->len, ==, 1);
  g_assert_cmpuint (bs_plan_find_lamination (get_plan (f), "1")->defects->len, ==, 0);
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *path;
    GtkWidget *(*create) (BsSession *session);
    void (*test) (Fixture *f, gconstpointer create);
  } cases[] = {
    { "/pages/slab", bs_slab_page_new, test_slab },
    { "/pages/shop/clamps", bs_shop_page_new, test_clamps },
    { "/pages/laminations/add", bs_laminations_page_new, test_add_lamination },
    { "/pages/laminations/strike-out", bs_laminations_page_new, test_strike_out },
    { "/pages/laminations/defects", bs_laminations_page_new, test_defects },
  };

  desk_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_test_add (cases[i].path, Fixture, cases[i].create, set_up, cases[i].test, tear_down);
  return g_test_run ();
}
