/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-page.h"

#include "app/cutting-canvas.h"
#include "app/cutting-table.h"
#include "desk.h"
#include "racks.h"

/* A page on a plan of its own, in no window. */
typedef struct
{
  BsSession *session;
  GtkWidget *page;
  BsCuttingCanvas *canvas;
} Fixture;

/* Two boards and three parts; a third board is too thin. */
static BsPlan *
plan_new (void)
{
  BsPlan *plan = rack_plan_new ();

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  rack_add_board (plan, 2000.0, 200.0, 52.0, 4000);
  rack_add_board (plan, 2000.0, 200.0, 27.0, 1000);
  rack_add_lamination (plan, 900.0, 45.0, 60.0);
  rack_add_lamination (plan, 900.0, 45.0, 60.0);
  rack_add_part (plan, 1, 5000.0, 60.0, 45.0); /* no board is so long */
  return plan;
}

static void
fixture_init (Fixture *self)
{
  g_autoptr (BsPlan) plan = plan_new ();

  self->session = bs_session_new (plan);
  self->page = g_object_ref_sink (bs_cutting_page_new (self->session));
  self->canvas = BS_CUTTING_CANVAS (desk_find (self->page, BS_TYPE_CUTTING_CANVAS));
}

static void
fixture_clear (Fixture *self)
{
  g_object_unref (self->page);
  g_object_unref (self->session);
}

static gboolean
has_cuts (gpointer session)
{
  return bs_session_get_plan (session)->cuts->len > 0;
}

static const BsCut *
get_cut (const Fixture *self, guint i)
{
  return &g_array_index (bs_session_get_plan (self->session)->cuts, BsCut, i);
}

static void
plan_cuts (Fixture *self)
{
  gtk_widget_activate_action (self->page, "cuts.plan", NULL);
  desk_wait (has_cuts, self->session);
}

/* Both laminations from the cheaper board; the part has no place, and one step back undoes it all.
 */
static void
test_plan (void)
{
  Fixture self;
  BsHistory *history;

  fixture_init (&self);
  history = bs_session_get_history (self.session);
  plan_cuts (&self);
  g_assert_cmpuint (bs_session_get_plan (self.session)->cuts->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpstr (get_cut (&self, i)->board, ==, "board-1");
  g_assert_true (bs_history_can_undo (history));
  bs_history_undo (history);
  g_assert_false (has_cuts (self.session));
  g_assert_false (bs_history_can_undo (history));
  fixture_clear (&self);
}

static gboolean
is_on_second_board (gpointer data)
{
  return g_str_equal (get_cut (data, 0)->board, "board-2");
}

/* To the next board that can give it, which pins it; there is none behind that. */
static void
test_move_to_board (void)
{
  Fixture self;

  fixture_init (&self);
  plan_cuts (&self);
  bs_cutting_canvas_select (self.canvas, 0);
  bs_cutting_canvas_move_to_board (self.canvas, 1);
  desk_wait (is_on_second_board, &self);
  g_assert_true (get_cut (&self, 0)->is_pinned);
  g_assert_false (bs_session_has_preview (self.session));
  g_assert_cmpint (bs_cutting_canvas_get_selected (self.canvas), ==, 0);
  bs_cutting_canvas_move_to_board (self.canvas, 1);
  g_assert_cmpstr (bs_cutting_canvas_get_message (self.canvas), ==,
                   "No board further down can give this piece.");
  g_assert_cmpstr (get_cut (&self, 0)->board, ==, "board-2");
  fixture_clear (&self);
}

/* Along to the far end, where it touches nothing: 2000 - 25 - 900. */
static void
test_move_along (void)
{
  Fixture self;

  fixture_init (&self);
  plan_cuts (&self);
  bs_cutting_canvas_select (self.canvas, 0);
  for (int i = 0; i < 6; i++)
    bs_cutting_canvas_move_along (self.canvas, 1);
  g_assert_cmpfloat_with_epsilon (get_cut (&self, 0)->x, 1075.0, 1e-9);
  bs_cutting_canvas_move_across (self.canvas, 1);
  bs_cutting_canvas_move_across (self.canvas, 1);
  bs_cutting_canvas_move_across (self.canvas, 1);
  g_assert_cmpfloat_with_epsilon (get_cut (&self, 0)->y, 140.0, 1e-9);
  fixture_clear (&self);
}

static void
test_marks (void)
{
  Fixture self;

  fixture_init (&self);
  plan_cuts (&self);
  gtk_widget_activate_action (self.page, "piece.pin", NULL); /* nothing is selected */
  g_assert_false (get_cut (&self, 1)->is_pinned);
  bs_cutting_canvas_select (self.canvas, 1);
  gtk_widget_activate_action (self.page, "piece.pin", NULL);
  g_assert_true (get_cut (&self, 1)->is_pinned);
  gtk_widget_activate_action (self.page, "piece.cut", NULL);
  g_assert_true (get_cut (&self, 1)->is_cut);
  bs_cutting_canvas_move_across (self.canvas, 1);
  g_assert_nonnull (strstr (bs_cutting_canvas_get_message (self.canvas), "was cut already"));
  g_assert_false (bs_session_has_preview (self.session));
  gtk_widget_activate_action (self.page, "piece.cut", NULL);
  g_assert_false (get_cut (&self, 1)->is_cut);
  fixture_clear (&self);
}

static void
test_lay_out (void)
{
  Fixture self;
  const BsLamination *lamination;

  fixture_init (&self);
  plan_cuts (&self);
  gtk_widget_activate_action (self.page, "cuts.lay-out", NULL);
  lamination = bs_session_get_plan (self.session)->laminations->pdata[0];
  g_assert_cmpstr (lamination->board, ==, "board-1");
  bs_history_undo (bs_session_get_history (self.session));
  lamination = bs_session_get_plan (self.session)->laminations->pdata[0];
  g_assert_null (lamination->board);
  fixture_clear (&self);
}

static const char *
get_message (GtkWidget *page)
{
  return gtk_label_get_text (GTK_LABEL (desk_get_child (page, 1)));
}

static void
push_edited (BsSession *session, BsPlan *edited)
{
  bs_session_push (session, edited, "Edit", NULL);
  bs_plan_unref (edited);
}

/* What was proven is said as long as nothing has changed that the search looked at. */
static void
test_proof_stays (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  rack_add_lamination (plan, 900.0, 45.0, 60.0);
  Fixture self = { .session = bs_session_new (plan) };
  self.page = g_object_ref_sink (bs_cutting_page_new (self.session));
  plan_cuts (&self);
  g_assert_nonnull (strstr (get_message (self.page), "Proven"));

  BsPlan *edited = bs_plan_copy (bs_session_get_plan (self.session));
  edited->adhesive.spread_g_per_m2 += 10.0;
  push_edited (self.session, edited);
  g_assert_nonnull (strstr (get_message (self.page), "Proven"));

  edited = bs_plan_copy (edited);
  rack_add_board (edited, 2000.0, 200.0, 52.0, 1000);
  push_edited (self.session, edited);
  g_assert_null (strstr (get_message (self.page), "Proven"));
  bs_history_undo (bs_session_get_history (self.session));
  g_assert_nonnull (strstr (get_message (self.page), "Proven"));
  fixture_clear (&self);
}

/* More than can be proven at once: what was found by then is taken when it is told to stop. */
static void
test_stop (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  BsRandom random = bs_random_init (1);

  for (guint i = 0; i < 40; i++)
    rack_add_board (plan, 1500.0 + 7.0 * bs_random_below (&random, 300),
                    100.0 + bs_random_below (&random, 150), 52.0,
                    2000 + bs_random_below (&random, 3000));
  for (guint i = 0; i < 40; i++)
    rack_add_part (plan, 2, 300.0 + 7.0 * bs_random_below (&random, 150),
                   40.0 + bs_random_below (&random, 50), 30.0);
  Fixture self = { .session = bs_session_new (plan) };
  self.page = g_object_ref_sink (bs_cutting_page_new (self.session));
  GtkWidget *stop = desk_find_button (self.page, "cuts.stop");
  g_assert_false (gtk_widget_get_visible (stop));
  gtk_widget_activate_action (self.page, "cuts.plan", NULL);
  g_assert_true (gtk_widget_get_visible (stop));
  gtk_widget_activate_action (self.page, "cuts.stop", NULL);
  desk_wait (has_cuts, self.session);
  g_assert_false (gtk_widget_get_visible (stop));
  g_assert_null (strstr (get_message (self.page), "Proven"));
  fixture_clear (&self);
}

/* All milled before: there is nothing to plan and nothing to list. */
static void
test_milled (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsSession) session = NULL;
  GtkWidget *page;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  bs_text_set (&rack_add_lamination (plan, 900.0, 45.0, 60.0)->board, "board-1");
  session = bs_session_new (plan);
  page = g_object_ref_sink (bs_cutting_page_new (session));
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (desk_get_child (page, 1))), ==,
                   "Nothing is left to cut: every lamination has its board.");
  g_assert_false (gtk_widget_get_sensitive (desk_find_button (page, "cuts.plan")));
  g_object_unref (page);
}

/* Table and boards choose together. */
static void
test_selection (void)
{
  Fixture self;
  BsCuttingTable *table;

  fixture_init (&self);
  plan_cuts (&self);
  table = BS_CUTTING_TABLE (desk_find (self.page, BS_TYPE_CUTTING_TABLE));
  bs_cutting_canvas_select (self.canvas, 1);
  g_assert_cmpint (bs_cutting_table_get_selected (table), ==, 1);
  bs_cutting_table_select (table, 0);
  g_assert_cmpint (bs_cutting_canvas_get_selected (self.canvas), ==, 0);
  g_assert_cmpstr (bs_session_get_selected (self.session), ==, get_cut (&self, 0)->piece);
  fixture_clear (&self);
}

/* The search goes on when its page is gone, and does no harm. */
static void
test_closed_while_searching (void)
{
  Fixture self;
  gpointer page;

  fixture_init (&self);
  page = self.page;
  g_object_add_weak_pointer (G_OBJECT (self.page), &page);
  gtk_widget_activate_action (self.page, "cuts.plan", NULL);
  fixture_clear (&self);
  g_assert_null (page);
  for (int i = 0; i < 200; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (1000);
    }
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/cutting-page/plan", test_plan);
  g_test_add_func ("/cutting-page/move-to-board", test_move_to_board);
  g_test_add_func ("/cutting-page/move-along", test_move_along);
  g_test_add_func ("/cutting-page/marks", test_marks);
  g_test_add_func ("/cutting-page/lay-out", test_lay_out);
  g_test_add_func ("/cutting-page/proof-stays", test_proof_stays);
  g_test_add_func ("/cutting-page/stop", test_stop);
  g_test_add_func ("/cutting-page/milled", test_milled);
  g_test_add_func ("/cutting-page/selection", test_selection);
  g_test_add_func ("/cutting-page/closed-while-searching", test_closed_while_searching);
  return g_test_run ();
}
