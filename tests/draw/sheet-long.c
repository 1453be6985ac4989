/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* The diagram in a language whose every text is two fifths longer than the English one. */
#include <string.h>

#include "draw/sheet.h"
#include "image.h"
#include "scene.h"

#define WIDTH 770
#define HEIGHT 523
#define AROUND 60

/* Stand in for GLib's, which this program would otherwise take from the library. */
const char *
g_dgettext (const char *domain, const char *text)
{
  static GHashTable *longer;
  const char *known;
  GString *made;

  if (longer == NULL)
    longer = g_hash_table_new (g_str_hash, g_str_equal);
  known = g_hash_table_lookup (longer, text);
  if (known != NULL)
    return known;
  made = g_string_new (text);
  for (gsize i = 0; i < 2 * strlen (text) / 5; i++)
    g_string_append_c (made, i % 9 == 0 && strlen (text) > 12 ? ' ' : "enstirung"[i % 9]);
  g_hash_table_insert (longer, g_strdup (text), made->str);
  return g_string_free (made, FALSE);
}

const char *
g_dpgettext (const char *domain, const char *context_and_text, gsize offset)
{
  return g_dgettext (domain, context_and_text + offset);
}

const char *
g_dngettext (const char *domain, const char *one, const char *many, gulong n)
{
  return g_dgettext (domain, n == 1 ? one : many);
}

static BsSheet *
new_sheet (int n)
{
  g_autoptr (BsPlan) plan = scene_new_plan (n, BS_LAYUP_ON_EDGE);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  BsSheetOptions options = { .width = WIDTH, .height = HEIGHT, .with_workings = TRUE };

  return bs_sheet_new (results, &options);
}

/* Nothing is drawn outside of the printable area, on any page. */
static void
test_inside (gconstpointer n)
{
  g_autoptr (BsSheet) sheet = new_sheet (GPOINTER_TO_INT (n));

  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    {
      cairo_t *cr = image_new (WIDTH + 2 * AROUND, HEIGHT + 2 * AROUND);
      cairo_rectangle_int_t box;

      cairo_translate (cr, AROUND, AROUND);
      bs_sheet_draw_page (sheet, page, cr);
      g_assert_cmpint (image_count_ink (cr, &box), >, 0);
      g_assert_cmpint (box.x, >=, AROUND - 1);
      g_assert_cmpint (box.y, >=, AROUND - 1);
      g_assert_cmpint (box.x + box.width, <=, AROUND + WIDTH + 1);
      g_assert_cmpint (box.y + box.height, <=, AROUND + HEIGHT + 1);
      cairo_destroy (cr);
    }
}

int
main (int argc, char **argv)
{
  static const int sizes[] = { 0, 1, 5, 16, 60 };

  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autofree char *path = g_strdup_printf ("/sheet-long/inside/%d", sizes[i]);

      g_test_add_data_func (path, GINT_TO_POINTER (sizes[i]), test_inside);
    }
  return g_test_run ();
}
