/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/fold.h"

#include "desk.h"

typedef struct
{
  GtkWidget *window, *fold, *main, *first, *second;
} Fixture;

static void
set_up (Fixture *f, gconstpointer unused)
{
  f->window = gtk_window_new ();
  f->fold = g_object_new (BS_TYPE_FOLD, NULL);
  f->main = gtk_label_new ("main");
  f->first = gtk_label_new ("first");
  f->second = gtk_label_new ("second");
  g_object_set (f->fold, "main", f->main, "first", f->first, "second", f->second, NULL);
  gtk_window_set_child (GTK_WINDOW (f->window), f->fold);
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  gpointer weak = f->fold;

  g_object_add_weak_pointer (G_OBJECT (f->fold), &weak);
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_assert_null (weak);
}

static gboolean
is_laid_out (gpointer widget)
{
  return gtk_widget_get_width (widget) > 0;
}

static graphene_rect_t
show (Fixture *f, int width, GtkWidget *child)
{
  graphene_rect_t bounds;

  gtk_window_set_default_size (GTK_WINDOW (f->window), width, 700);
  gtk_window_present (GTK_WINDOW (f->window));
  desk_wait (is_laid_out, f->fold);
  g_assert_true (gtk_widget_compute_bounds (child, f->fold, &bounds));
  return bounds;
}

static void
test_wide (Fixture *f, gconstpointer unused)
{
  graphene_rect_t first = show (f, BS_FOLD_WIDTH, f->first),
                  second = show (f, BS_FOLD_WIDTH, f->second);

  g_assert_cmpfloat (first.origin.x, >, 700.0f);
  g_assert_cmpfloat (first.origin.y, <, 1.0f);
  g_assert_cmpfloat (second.origin.x, >, 700.0f);
  g_assert_cmpfloat (second.origin.y, >=, first.size.height);
}

static void
test_narrow (Fixture *f, gconstpointer unused)
{
  graphene_rect_t first = show (f, BS_FOLD_WIDTH - 1, f->first);
  graphene_rect_t second = show (f, BS_FOLD_WIDTH - 1, f->second);

  g_assert_cmpfloat (first.origin.x, <, 1.0f);
  g_assert_cmpfloat (first.origin.y, >, 300.0f);
  g_assert_cmpfloat (second.origin.y, >=, first.origin.y + first.size.height);
  g_assert_cmpfloat (second.origin.y + second.size.height, <=, 700.0f);
}

/* However wide the window: where the main child needs more than is left, the others go under it. */
static void
test_needs_room (Fixture *f, gconstpointer unused)
{
  gtk_widget_set_size_request (f->main, BS_FOLD_WIDTH - 100, -1);
  g_assert_cmpfloat (show (f, BS_FOLD_WIDTH, f->first).origin.x, <, 1.0f);
}

/* Beside one another they need the height of the higher side and not that of all three, or a window
 * that fits its screen would be made to grow out of it. */
static void
test_height_beside (Fixture *f, gconstpointer unused)
{
  int least;

  gtk_widget_set_size_request (f->main, -1, 500);
  gtk_widget_set_size_request (f->first, -1, 200);
  gtk_widget_set_size_request (f->second, -1, 100);
  show (f, BS_FOLD_WIDTH, f->first);
  gtk_widget_measure (f->fold, GTK_ORIENTATION_VERTICAL, BS_FOLD_WIDTH, &least, NULL, NULL, NULL);
  g_assert_cmpint (least, ==, 500);
  gtk_widget_set_size_request (f->first, -1, 450);
  gtk_widget_measure (f->fold, GTK_ORIENTATION_VERTICAL, BS_FOLD_WIDTH, &least, NULL, NULL, NULL);
  g_assert_cmpint (least, ==, 550);
  gtk_widget_set_size_request (f->main, 400, 500);
  gtk_widget_measure (f->fold, GTK_ORIENTATION_VERTICAL, 500, &least, NULL, NULL, NULL);
  g_assert_cmpint (least, ==, 1050);
}

static void
test_child_replaced (Fixture *f, gconstpointer unused)
{
  GtkWidget *other = gtk_label_new ("other");
  gpointer weak = f->first;

  g_object_add_weak_pointer (G_OBJECT (f->first), &weak);
  g_object_set (f->fold, "first", other, NULL);
  g_assert_null (weak);
  g_assert_true (gtk_widget_get_next_sibling (f->main) == other);
  g_assert_true (gtk_widget_get_next_sibling (other) == f->second);
}

#define ADD(path, function) g_test_add ("/fold/" path, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  ADD ("wide", test_wide);
  ADD ("narrow", test_narrow);
  ADD ("needs-room", test_needs_room);
  ADD ("height-beside", test_height_beside);
  ADD ("child-replaced", test_child_replaced);
  return g_test_run ();
}
