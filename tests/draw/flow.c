/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/flow.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>
#include <string.h>

#include "pdf.h"

#define WIDTH 500.0
#define HEIGHT 300.0

/* The pages as a file, with nothing round them: what lies outside of the area is not in its text.
 */
static char *
write_pages (BsFlow *flow)
{
  g_autoptr (GError) error = NULL;
  char *filename = NULL;
  int file = g_file_open_tmp ("flow-XXXXXX.pdf", &filename, &error);
  cairo_surface_t *surface;
  cairo_t *cr;

  g_assert_no_error (error);
  g_assert_true (g_close (file, NULL));
  surface = cairo_pdf_surface_create (filename, WIDTH, HEIGHT);
  cr = cairo_create (surface);
  for (guint page = 0; page < bs_flow_get_n_pages (flow); page++)
    {
      bs_flow_draw_page (flow, page, cr);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return filename;
}

static char *
read_back (BsFlow *flow)
{
  g_autofree char *filename = write_pages (flow);
  char *text = pdf_get_text (filename, 0);

  g_assert_cmpint (g_unlink (filename), ==, 0);
  return text;
}

static void
test_empty (void)
{
  g_autoptr (BsFlow) flow = bs_flow_new (WIDTH, HEIGHT, 2, 10.0);

  g_assert_cmpuint (bs_flow_get_n_pages (flow), ==, 0);
}

static void
add_table (BsFlow *flow, int n_rows)
{
  static const BsFlowCell cells[] = { { .from = 0.0, .width = 0.3, .is_bold = TRUE },
                                      { .from = 0.3, .width = 0.7, .is_right = TRUE } };
  const char *head[] = { "Headone", "Headtwo" };

  bs_flow_begin_table (flow, cells, 2, head);
  for (int i = 0; i < n_rows; i++)
    {
      g_autofree char *number = g_strdup_printf ("row%d", i);
      const char *texts[] = { number, "some words" };

      bs_flow_add_row (flow, texts);
    }
}

static int
count (const char *text, const char *word)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  int n = 0;

  for (guint i = 0; words[i] != NULL; i++)
    n += strcmp (words[i], word) == 0;
  return n;
}

/* Every row once, in order, and the head in each column. */
static void
test_table (void)
{
  g_autoptr (BsFlow) flow = bs_flow_new (WIDTH, HEIGHT, 2, 10.0);
  g_autofree char *text = NULL;
  const char *last;
  int n_pages;

  if (!pdf_can_read ())
    return;
  add_table (flow, 120);
  text = read_back (flow);
  last = text;
  for (int i = 0; i < 120; i++)
    {
      g_autofree char *word = g_strdup_printf ("row%d", i);

      g_assert_cmpint (count (text, word), ==, 1);
      last = strstr (last, word);
      g_assert_nonnull (last);
    }
  n_pages = (int)bs_flow_get_n_pages (flow);
  g_assert_cmpint (n_pages, >=, 3);
  g_assert_cmpint (count (text, "Headone") - 2 * (n_pages - 1), >, 0);
  g_assert_cmpint (count (text, "Headone") - 2 * n_pages, <=, 0);
}

/* A paragraph of several pages comes whole. */
static void
test_long_text (void)
{
  g_autoptr (BsFlow) flow = bs_flow_new (WIDTH, HEIGHT, 2, 10.0);
  g_autoptr (GString) words = g_string_new ("");
  g_autofree char *text = NULL;

  if (!pdf_can_read ())
    return;
  for (int i = 0; i < 2000; i++)
    g_string_append_printf (words, "word%d ", i);
  bs_flow_add_text (flow, words->str, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  text = read_back (flow);
  for (int i = 0; i < 2000; i++)
    {
      g_autofree char *word = g_strdup_printf ("word%d", i);

      g_assert_cmpint (count (text, word), ==, 1);
    }
}

/* A word longer than the column breaks; nothing of it is cut off. */
static void
test_long_word (void)
{
  g_autoptr (BsFlow) flow = bs_flow_new (WIDTH, HEIGHT, 2, 10.0);
  g_autofree char *text = NULL, *letters = g_strnfill (300, 'w');
  int n = 0;

  if (!pdf_can_read ())
    return;
  bs_flow_add_text (flow, letters, BS_FLOW_PLAIN, BS_FLOW_SIGN_CAUTION);
  text = read_back (flow);
  for (const char *c = text; *c != '\0'; c++)
    n += *c == 'w';
  g_assert_cmpint (n, ==, 300);
}

/* A heading is on the page of what follows it, wherever the page ends. One column, so that each
 * page is one; between 10 and 25 rows the heading comes to every height of the foot. */
static void
test_heading (gconstpointer data)
{
  g_autoptr (BsFlow) flow = bs_flow_new (WIDTH, HEIGHT, 1, 10.0);
  g_autofree char *filename = NULL;

  if (!pdf_can_read ())
    return;
  add_table (flow, GPOINTER_TO_INT (data));
  bs_flow_add_heading (flow, "Heading");
  bs_flow_add_text (flow, "follows", BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  filename = write_pages (flow);
  for (guint page = 1; page <= bs_flow_get_n_pages (flow); page++)
    {
      g_autofree char *text = pdf_get_text (filename, (int)page);

      g_assert_cmpint (count (text, "Heading"), ==, count (text, "follows"));
    }
  g_assert_cmpint (g_unlink (filename), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/flow/empty", test_empty);
  g_test_add_func ("/flow/table", test_table);
  g_test_add_func ("/flow/long-text", test_long_text);
  g_test_add_func ("/flow/long-word", test_long_word);
  for (int n = 10; n <= 25; n++)
    {
      g_autofree char *path = g_strdup_printf ("/flow/heading/%d-rows", n);

      g_test_add_data_func (path, GINT_TO_POINTER (n), test_heading);
    }
  return g_test_run ();
}
