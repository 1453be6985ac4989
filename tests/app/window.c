/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window.h"

#include "app/glue-up-canvas.h"
#include "app/lamination-strip.h"
#include "app/number-row.h"
#include "desk.h"

/* The first example: A1 to H2 in the slab, I1 and I2 in the rack. */
#define ORDER "A1 A2 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2"

typedef struct
{
  BsWindow *window;
  BsSession *session;
  GtkWidget *canvas;
} Fixture;

static gboolean
has_strips (gpointer canvas)
{
  GtkWidget *strip = gtk_widget_get_first_child (canvas);

  return strip != NULL && gtk_widget_get_width (strip) > 1;
}

static void
set_up (Fixture *f, gconstpointer unused)
{
  f->window = desk_open ();
  f->session = bs_window_get_session (f->window);
  f->canvas = desk_find (GTK_WIDGET (f->window), BS_TYPE_GLUE_UP_CANVAS);
  desk_wait (has_strips, f->canvas);
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  desk_close (f->window);
}

static void
assert_order (Fixture *f, const char *wanted)
{
  g_autofree char *order = desk_get_order (f->window);

  g_assert_cmpstr (order, ==, wanted);
}

static const char *
id_of (Fixture *f, const char *label)
{
  const BsPlan *plan = bs_session_get_plan (f->session);

  for (guint i = 0; i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (plan->laminations, i);

      if (g_str_equal (lamination->label, label))
        return lamination->id;
    }
  g_assert_not_reached ();
}

static void
activate (Fixture *f, const char *action, int by)
{
  if (by == 0)
    gtk_widget_activate_action (f->canvas, action, NULL);
  else
    gtk_widget_activate_action (f->canvas, action, "i", by);
}

static gboolean
is_enabled (Fixture *f, const char *action)
{
  return gtk_widget_get_sensitive (desk_find_button (GTK_WIDGET (f->window), action));
}

static void
test_build (Fixture *f, gconstpointer unused)
{
  assert_order (f, ORDER);
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (f->window)), ==,
                   "Kneading counter for a village bakery (not in a file yet)");
}

/* Each command of a lamination: from which selection, what it does to the order, what undo says. */
typedef struct
{
  const char *path;
  const char *selected;
  const char *action;
  int by;
  const char *order;
  const char *undo;
} Command;

static const Command commands[] = {
  { "/window/lamination/towards-the-back", "A1", "lamination.move", 1,
    "A2 A1 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2", "Move A1 to place 2" },
  { "/window/lamination/towards-the-front", "B1", "lamination.move", -1,
    "A1 B1 A2 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2", "Move B1 to place 2" },
  { "/window/lamination/beyond-the-front", "A1", "lamination.move", -1, ORDER, NULL },
  { "/window/lamination/to-the-back", "A1", "lamination.move-to-end", 1,
    "A2 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2 A1", "Move A1 to place 16" },
  { "/window/lamination/to-the-front", "C1", "lamination.move-to-end", -1,
    "C1 A1 A2 B1 B2 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2", "Move C1 to place 1" },
  { "/window/lamination/turned-over", "A1", "lamination.turn-over", 0, ORDER, "Turn A1 over" },
  { "/window/lamination/end-for-end", "A1", "lamination.end-for-end", 0, ORDER,
    "Turn A1 end for end" },
  { "/window/lamination/set-aside", "A1", "lamination.set-aside", 0,
    "A2 B1 B2 C1 C2 D1 D2 E1 E2 F1 F2 G1 G2 H1 H2", "Set A1 aside" },
  { "/window/lamination/brought-back", "I1", "lamination.bring-back", 0, ORDER " I1",
    "Bring I1 back" },
};

static void
test_command (Fixture *f, gconstpointer data)
{
  const Command *row = data;
  BsHistory *history = bs_session_get_history (f->session);

  bs_session_select (f->session, id_of (f, row->selected));
  activate (f, row->action, row->by);
  assert_order (f, row->order);
  g_assert_cmpstr (bs_history_get_undo_label (history), ==, row->undo);
  if (row->undo == NULL)
    return;
  g_assert_cmpstr (bs_session_get_selected (f->session), ==, id_of (f, row->selected));
  gtk_widget_activate_action (GTK_WIDGET (f->window), "win.undo", NULL);
  assert_order (f, ORDER);
  g_assert_false (bs_history_is_modified (history));
  gtk_widget_activate_action (GTK_WIDGET (f->window), "win.redo", NULL);
  assert_order (f, row->order);
}

static void
test_orientation (Fixture *f, gconstpointer unused)
{
  bs_session_select (f->session, id_of (f, "A1"));
  BsOrientation before = bs_session_get_results (f->session)->stack->placed[0].orientation;
  activate (f, "lamination.turn-over", 0);
  g_assert_cmpint (bs_session_get_results (f->session)->stack->placed[0].orientation, ==,
                   before ^ BS_ORIENTATION_OVER);
  activate (f, "lamination.end-for-end", 0);
  g_assert_cmpint (bs_session_get_results (f->session)->stack->placed[0].orientation, ==,
                   before ^ BS_ORIENTATION_OVER_AND_END);
}

static void
test_enabled (Fixture *f, gconstpointer unused)
{
  bs_session_select (f->session, NULL);
  g_assert_false (is_enabled (f, "lamination.turn-over"));
  g_assert_false (is_enabled (f, "lamination.bring-back"));
  g_assert_false (is_enabled (f, "win.undo"));

  bs_session_select (f->session, id_of (f, "A1"));
  g_assert_true (is_enabled (f, "lamination.turn-over"));
  g_assert_true (is_enabled (f, "lamination.set-aside"));
  g_assert_false (is_enabled (f, "lamination.bring-back"));

  bs_session_select (f->session, id_of (f, "I1"));
  g_assert_false (is_enabled (f, "lamination.turn-over"));
  g_assert_true (is_enabled (f, "lamination.bring-back"));

  activate (f, "lamination.bring-back", 0);
  g_assert_true (is_enabled (f, "win.undo"));
  g_assert_false (is_enabled (f, "win.redo"));
}

static void
test_enabled_in_preview (Fixture *f, gconstpointer unused)
{
  bs_session_select (f->session, id_of (f, "A1"));
  activate (f, "lamination.turn-over", 0);
  bs_session_set_preview (f->session, bs_session_get_plan (f->session));
  g_assert_false (is_enabled (f, "win.undo"));
  g_assert_false (is_enabled (f, "lamination.turn-over"));
  bs_session_set_preview (f->session, NULL);
  g_assert_true (is_enabled (f, "win.undo"));
}

static void
test_zoom (Fixture *f, gconstpointer unused)
{
  BsGlueUpCanvas *canvas = BS_GLUE_UP_CANVAS (f->canvas);

  g_assert_false (is_enabled (f, "view.farther"));
  g_assert_false (is_enabled (f, "view.fit"));
  activate (f, "view.closer", 0);
  g_assert_cmpfloat (bs_glue_up_canvas_get_zoom (canvas), >, 1.0);
  g_assert_true (is_enabled (f, "view.farther"));
  for (int i = 0; i < 20; i++)
    activate (f, "view.closer", 0);
  g_assert_cmpfloat (bs_glue_up_canvas_get_zoom (canvas), <=, BS_GLUE_UP_ZOOM_MOST);
  g_assert_false (is_enabled (f, "view.closer"));
  activate (f, "view.fit", 0);
  g_assert_cmpfloat (bs_glue_up_canvas_get_zoom (canvas), <=, 1.0);
}

static void
assert_label (GtkWidget *widget, const char *label)
{
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       label);
}

static void
test_accessible (Fixture *f, gconstpointer unused)
{
  GtkWidget *first = desk_get_child (f->canvas, 0);

  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (f->canvas), GTK_ACCESSIBLE_ROLE_LIST);
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (first), GTK_ACCESSIBLE_ROLE_LIST_ITEM);
  g_assert_true (gtk_widget_get_focusable (first));
  assert_label (first, "A1, place 1 of 16, as marked, no findings");
  assert_label (desk_get_child (f->canvas, 11), "F2, place 12 of 16, as marked, 1 finding");
  assert_label (desk_get_child (f->canvas, 16), "I1, in the rack");
}

static gboolean
is_second (gpointer strip)
{
  return gtk_widget_get_prev_sibling (strip) != NULL
         && gtk_widget_get_prev_sibling (gtk_widget_get_prev_sibling (strip)) == NULL;
}

/* Selected, and read out as after the move. */
static gboolean
is_read_out (gpointer strip)
{
  g_autofree char *problem
      = gtk_test_accessible_check_property (GTK_ACCESSIBLE (strip), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                            "A1, place 2 of 16, turned over, 1 finding");

  return problem == NULL
         && gtk_test_accessible_has_state (GTK_ACCESSIBLE (strip), GTK_ACCESSIBLE_STATE_SELECTED);
}

/* What is read out follows a move, and the order of the children with it. */
static void
test_accessible_after_move (Fixture *f, gconstpointer unused)
{
  GtkWidget *strip = desk_get_child (f->canvas, 0);

  bs_session_select (f->session, id_of (f, "A1"));
  activate (f, "lamination.move", 1);
  activate (f, "lamination.turn-over", 0);
  desk_wait (is_second, strip);
  desk_wait (is_read_out, strip);
}

static void
test_number (Fixture *f, gconstpointer unused)
{
  GtkWidget *row = desk_find (GTK_WIDGET (f->window), BS_TYPE_NUMBER_ROW);

  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Thickness after flattening: 61.6\u202fmm");
}

#define ADD(path, function) g_test_add ("/window/" path, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  ADD ("build", test_build);
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_test_add (commands[i].path, Fixture, &commands[i], set_up, test_command, tear_down);
  ADD ("lamination/orientation", test_orientation);
  ADD ("enabled/by-selection", test_enabled);
  ADD ("enabled/not-while-held", test_enabled_in_preview);
  ADD ("zoom", test_zoom);
  ADD ("accessible/laminations", test_accessible);
  ADD ("accessible/after-a-move", test_accessible_after_move);
  ADD ("accessible/numbers", test_number);
  return g_test_run ();
}
