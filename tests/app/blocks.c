/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/blocks.h"

#include "desk.h"

#define WIDTH 200
#define HEIGHT 40
#define COLUMN_GAP 36
#define ROW_GAP 24

typedef struct
{
  GtkWidget *window, *blocks;
  GPtrArray *children;
} Fixture;

static void
set_up (Fixture *f, gconstpointer unused)
{
  f->window = gtk_window_new ();
  f->blocks = bs_blocks_new (3, COLUMN_GAP, ROW_GAP);
  f->children = g_ptr_array_new ();
  gtk_window_set_child (GTK_WINDOW (f->window), f->blocks);
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  gpointer weak = f->blocks;

  g_object_add_weak_pointer (G_OBJECT (f->blocks), &weak);
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_assert_null (weak);
  g_ptr_array_unref (f->children);
}

static void
add (Fixture *f, GtkWidget *child)
{
  bs_blocks_append (BS_BLOCKS (f->blocks), child);
  g_ptr_array_add (f->children, child);
}

/* By hand, of blocks 200 x 40 with 36 between columns and 24 between rows. Three take 672, two 436;
 * a column has its part of what is left, and a lone block that of one of three. */
typedef struct
{
  const char *path;
  guint n;
  int width;
  int x, y;           /* of the last one, */
  int column, height; /* and how wide its column and how high all of it is */
} Row;

static const Row rows[] = {
  { "three-columns", 3, 702, 2 * (210 + 36), 0, 210, 40 },
  { "a-row-more", 4, 702, 0, 64, 210, 104 },
  { "two-columns", 4, 500, 232 + 36, 64, 232, 104 },
  { "one-column", 2, 435, 0, 64, 435, 104 },
  { "alone", 1, 702, 0, 0, 210, 40 },
};

static gboolean
is_laid_out (gpointer widget)
{
  return gtk_widget_get_width (widget) > 0;
}

static void
test_places (Fixture *f, gconstpointer data)
{
  const Row *row = data;
  graphene_rect_t last;
  int height;

  for (guint i = 0; i < row->n; i++)
    {
      GtkWidget *child = gtk_drawing_area_new ();
      gtk_widget_set_size_request (child, WIDTH, HEIGHT);
      add (f, child);
    }
  gtk_widget_set_size_request (f->blocks, row->width, -1);
  gtk_widget_set_halign (f->blocks, GTK_ALIGN_START);
  gtk_window_present (GTK_WINDOW (f->window));
  desk_wait (is_laid_out, f->blocks);
  gtk_widget_measure (f->blocks, GTK_ORIENTATION_VERTICAL, row->width, &height, NULL, NULL, NULL);
  gtk_widget_size_allocate (f->blocks, &(GtkAllocation){ 0, 0, row->width, height }, -1);
  g_assert_true (gtk_widget_compute_bounds (f->children->pdata[row->n - 1], f->blocks, &last));
  g_assert_cmpint ((int)last.origin.x, ==, row->x);
  g_assert_cmpint ((int)last.origin.y, ==, row->y);
  g_assert_cmpint ((int)last.size.width, ==, row->column);
  g_assert_cmpint (height, ==, row->height);
}

/* A tall block, one that has nothing to focus, a hidden one, and a low one: Tab goes through them
 * as they stand, past what it cannot enter, and out at the end. */
static void
test_tab (Fixture *f, gconstpointer unused)
{
  GtkWidget *tall = gtk_button_new_with_label ("tall"), *low = gtk_button_new_with_label ("low");
  GtkWidget *hidden = gtk_button_new_with_label ("hidden");

  gtk_widget_set_size_request (tall, -1, 200);
  gtk_widget_set_visible (hidden, FALSE);
  add (f, tall);
  add (f, gtk_label_new ("words"));
  add (f, hidden);
  add (f, low);
  gtk_window_present (GTK_WINDOW (f->window));
  desk_wait (is_laid_out, f->blocks);
  gtk_window_set_focus (GTK_WINDOW (f->window), NULL);
  g_assert_true (gtk_widget_child_focus (f->blocks, GTK_DIR_TAB_FORWARD));
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (f->window)) == tall);
  g_assert_true (gtk_widget_child_focus (f->blocks, GTK_DIR_TAB_FORWARD));
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (f->window)) == low);
  g_assert_false (gtk_widget_child_focus (f->blocks, GTK_DIR_TAB_FORWARD));
  g_assert_true (gtk_widget_child_focus (f->blocks, GTK_DIR_TAB_BACKWARD));
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (f->window)) == tall);
  g_assert_false (gtk_widget_child_focus (f->blocks, GTK_DIR_TAB_BACKWARD));
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/blocks/places/", rows[i].path, NULL);
      g_test_add (path, Fixture, &rows[i], set_up, test_places, tear_down);
    }
  g_test_add ("/blocks/tab", Fixture, NULL, set_up, test_tab, tear_down);
  return g_test_run ();
}
