/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sheet.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>
#include <string.h>

#include "core/text.h"
#include "image.h"
#include "pdf.h"
#include "scene.h"
#include "words/words.h"
#include "yards.h"

typedef struct
{
  const char *path;
  int n;
  gboolean is_unknown;
  double width, height; /* printable, points */
  guint least_pages, most_pages;
} SheetRow;

static const SheetRow rows[] = {
  { "/sheet/pages/empty", 0, FALSE, 770.0, 523.0, 2, 3 },
  { "/sheet/pages/1", 1, FALSE, 770.0, 523.0, 2, 6 },
  { "/sheet/pages/unknown", 4, TRUE, 770.0, 523.0, 2, 6 },
  { "/sheet/pages/16", 16, FALSE, 770.0, 523.0, 3, 8 },
  { "/sheet/pages/60", 60, FALSE, 770.0, 523.0, 5, 15 },
  { "/sheet/pages/60-letter", 60, FALSE, 720.0, 540.0, 5, 15 },
  { "/sheet/pages/16-upright", 16, FALSE, 523.0, 770.0, 3, 12 },
  { "/sheet/pages/16-small", 16, FALSE, 380.0, 260.0, 6, 40 },
};

static BsResults *
evaluate (const SheetRow *row)
{
  g_autoptr (BsPlan) plan = row->is_unknown ? scene_new_unknown_plan (row->n)
                                            : scene_new_plan (row->n, BS_LAYUP_ON_EDGE);

  return bs_evaluate (plan);
}

/* Draws on paper of the printable size alone, so that nothing outside of it would be in the text.
 */
static char *
write_pages (const BsSheet *sheet, double width, double height)
{
  g_autoptr (GError) error = NULL;
  char *filename = NULL;
  int file = g_file_open_tmp ("sheet-XXXXXX.pdf", &filename, &error);
  cairo_surface_t *surface;
  cairo_t *cr;

  g_assert_no_error (error);
  g_assert_true (g_close (file, NULL));
  surface = cairo_pdf_surface_create (filename, width, height);
  cr = cairo_create (surface);
  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    {
      bs_sheet_draw_page (sheet, page, cr);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return filename;
}

static gboolean
has_word (const char *text, const char *word)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  return g_strv_contains ((const char *const *)words, word);
}

/* Pages within reason, numbered, and every label, every finding and every caution on them. */
static void
test_pages (gconstpointer data)
{
  const SheetRow *row = data;
  g_autoptr (BsResults) results = evaluate (row);
  BsSheetOptions options = { .width = row->width, .height = row->height };
  g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);
  guint n_pages = bs_sheet_get_n_pages (sheet);
  g_autofree char *filename = NULL, *text = NULL;

  g_assert_cmpuint (n_pages, >=, row->least_pages);
  g_assert_cmpuint (n_pages, <=, row->most_pages);
  if (!pdf_can_read ())
    return;
  filename = write_pages (sheet, row->width, row->height);
  for (guint page = 1; page <= n_pages; page++)
    {
      g_autofree char *number = g_strdup_printf ("Page %u of %u", page, n_pages);
      g_autofree char *of_page = pdf_get_text (filename, (int)page);

      g_assert_nonnull (strstr (of_page, number));
    }
  text = pdf_get_text (filename, 0);
  for (int i = 1; i <= row->n && !row->is_unknown; i++)
    {
      g_autofree char *label = g_strdup_printf ("%d", i);

      g_assert_true (has_word (text, label));
    }
  for (guint i = 0; i < results->findings->len; i++)
    g_assert_nonnull (
        strstr (text, bs_words_finding_title (&g_array_index (results->findings, BsFinding, i))));
  g_assert_cmpint (g_unlink (filename), ==, 0);
}

static void
test_workings (void)
{
  const SheetRow row = { .n = 16 };
  g_autoptr (BsResults) results = evaluate (&row);
  BsSheetOptions without = { .width = 770.0, .height = 523.0 }, with = without;
  g_autoptr (BsSheet) brief = bs_sheet_new (results, &without), full = NULL;
  g_autofree char *filename = NULL, *text = NULL;

  with.with_workings = TRUE;
  full = bs_sheet_new (results, &with);
  g_assert_cmpuint (bs_sheet_get_n_pages (full), >, bs_sheet_get_n_pages (brief));
  if (!pdf_can_read ())
    return;
  filename = write_pages (full, with.width, with.height);
  text = pdf_get_text (filename, 0);
  g_assert_nonnull (strstr (text, results->why_mass.title));
  g_assert_cmpint (g_unlink (filename), ==, 0);
}

/* A box for each board to buy, on a page that is only there when a yard offers something. */
static void
test_buying (void)
{
  g_autoptr (BsPlan) plan = yard_plan (6, 2000.0, 30.0, 60.0);
  g_autoptr (BsResults) before = bs_evaluate (plan);
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsSheet) without = bs_sheet_new (before, &options);

  yard_offer (plan, 2500.0, 230.0, 52.0, 7700); /* three laminations from each */
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);
  g_assert_cmpuint (bs_sheet_get_n_pages (sheet), ==, bs_sheet_get_n_pages (without) + 1);
  if (!pdf_can_read ())
    return;
  g_autofree char *filename = write_pages (sheet, options.width, options.height);
  g_autofree char *text = pdf_get_text (filename, 0);
  g_assert_nonnull (strstr (text, "Buying list"));
  g_assert_nonnull (strstr (text, "What is cut from each board, 1:"));
  g_assert_nonnull (strstr (text, "2 boards to buy for 6 pieces: 154.00"));
  g_auto (GStrv) boxes = g_strsplit (text, "\u2610", -1);
  g_assert_cmpuint (g_strv_length (boxes) - 1, ==, 2);
  g_assert_cmpint (g_unlink (filename), ==, 0);
}

static guint
count_word (const char *text, const char *word)
{
  g_auto (GStrv) parts = g_strsplit (text, word, -1);

  return g_strv_length (parts) - 1;
}

/* The rack as a list: a line for each board, the head once more on each page. A board of 2 in x 6
 * in x 8 ft is 8 board feet and 8 x 144 x 25.4^3 mm3 = 0.018878 m3; 60 of them 480 and 1.13. */
static void
test_rack (void)
{
  g_autoptr (BsPlan) plan = yard_plan (6, 2000.0, 30.0, 60.0);
  g_autoptr (BsResults) before = bs_evaluate (plan);
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsSheet) without = bs_sheet_new (before, &options);

  for (guint i = 0; i < 60; i++)
    {
      g_autofree char *id = g_strdup_printf ("rack%02u", i);
      BsBoard *board = bs_board_new (id);

      board->thickness = 2.0 * BS_MM_PER_INCH;
      board->width = 6.0 * BS_MM_PER_INCH;
      board->length = 96.0 * BS_MM_PER_INCH;
      board->price_minor = i < 59 ? 1000 : 0;
      g_ptr_array_add (plan->boards, board);
    }
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);
  guint n_more = bs_sheet_get_n_pages (sheet) - bs_sheet_get_n_pages (without);
  g_assert_cmpuint (n_more, >=, 2);
  g_assert_cmpuint (n_more, <=, 3);
  if (!pdf_can_read ())
    return;
  g_autofree char *filename = write_pages (sheet, options.width, options.height);
  g_autofree char *text = pdf_get_text (filename, 0);
  g_assert_cmpuint (count_word (text, "Boards in the rack"), ==, 1);
  g_assert_cmpuint (count_word (text, "Crook"), ==, n_more);
  g_assert_cmpuint (count_word (text, "rack0") + count_word (text, "rack1"), ==, 20);
  g_assert_cmpuint (count_word (text, "rack5"), ==, 10);
  g_assert_nonnull (strstr (text, "60 boards: 480.00 bd ft, 1.13"));
  g_assert_nonnull (strstr (text, "59 boards that have one, together: 590.00"));
  g_assert_cmpint (g_unlink (filename), ==, 0);
}

/* What the person wrote is on paper, line by line; nothing is there when nothing was written. */
static void
test_note (void)
{
  g_autoptr (BsPlan) plan = yard_plan (6, 2000.0, 30.0, 60.0);
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };

  if (!pdf_can_read ())
    return;
  for (int has_note = 0; has_note <= 1; has_note++)
    {
      bs_text_set (&plan->note, has_note ? "For the hatch.\nAsk about the wax." : "");
      g_autoptr (BsResults) results = bs_evaluate (plan);
      g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);
      g_autofree char *filename = write_pages (sheet, options.width, options.height);
      g_autofree char *text = pdf_get_text (filename, 0);

      g_assert_cmpuint (count_word (text, "Note For the hatch. Ask about the wax."), ==,
                        has_note ? 1 : 0);
      g_assert_cmpuint (count_word (text, "Note "), ==, has_note ? 1 : 0);
      g_assert_cmpint (g_unlink (filename), ==, 0);
    }
}

/* A name, labels and a wood's words of any length and script break or shrink; the page stays as
 * wide. */
static void
test_long_names (void)
{
  g_autoptr (BsPlan) plan = scene_new_plan (16, BS_LAYUP_ON_EDGE);
  BsLamination *lamination = bs_lamination_copy (g_ptr_array_index (plan->laminations, 2));
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsResults) results = NULL;
  g_autoptr (BsSheet) sheet = NULL;
  cairo_t *cr = image_new (870, 623);
  cairo_rectangle_int_t box;

  bs_text_set (&lamination->label, "Küchenarbeitsplattenmittelteil-Verlängerung 12b");
  bs_text_set (&plan->name, "Bäckereiknettischplattenverleimung für die Backstube am Mühlenweg, "
                            "zweite Ausführung mit verlängerter Vorderkante");
  bs_lamination_unref (g_ptr_array_index (plan->laminations, 2));
  g_ptr_array_index (plan->laminations, 2) = lamination;
  results = bs_evaluate (plan);
  sheet = bs_sheet_new (results, &options);
  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    {
      cairo_save (cr);
      cairo_translate (cr, 50.0, 50.0);
      bs_sheet_draw_page (sheet, page, cr);
      cairo_restore (cr);
    }
  image_count_ink (cr, &box);
  g_assert_cmpint (box.x, >=, 49);
  g_assert_cmpint (box.y, >=, 49);
  g_assert_cmpint (box.x + box.width, <=, 821);
  g_assert_cmpint (box.y + box.height, <=, 574);
  cairo_destroy (cr);
}

/* Black on white must carry everything: every pixel is a grey. */
static void
test_no_colour (void)
{
  const SheetRow row = { .n = 16 };
  g_autoptr (BsResults) results = evaluate (&row);
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);
  cairo_t *cr = image_new (770, 523);

  bs_sheet_draw_page (sheet, 0, cr);
  g_assert_true (image_is_grey (cr));
  cairo_destroy (cr);
}

static void
test_leaves_as_found (void)
{
  const SheetRow row = { .n = 5 };
  g_autoptr (BsResults) results = evaluate (&row);
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);
  cairo_t *cr = image_new (770, 523);

  cairo_set_line_width (cr, 7.0);
  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    {
      cairo_matrix_t matrix;

      bs_sheet_draw_page (sheet, page, cr);
      cairo_get_matrix (cr, &matrix);
      g_assert_cmpfloat_with_epsilon (matrix.y0, 0.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (cairo_get_line_width (cr), 7.0, 1e-9);
      g_assert_false (cairo_has_current_point (cr));
    }
  cairo_destroy (cr);
}

static void
test_no_such_page (void)
{
  const SheetRow row = { .n = 5 };
  g_autoptr (BsResults) results = evaluate (&row);
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);
  cairo_t *cr = image_new (770, 523);
  cairo_rectangle_int_t box;

  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*page < bs_sheet_get_n_pages*");
  bs_sheet_draw_page (sheet, bs_sheet_get_n_pages (sheet), cr);
  g_test_assert_expected_messages ();
  g_assert_cmpint (image_count_ink (cr, &box), ==, 0);
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    g_test_add_data_func (rows[i].path, &rows[i], test_pages);
  g_test_add_func ("/sheet/workings", test_workings);
  g_test_add_func ("/sheet/buying", test_buying);
  g_test_add_func ("/sheet/rack", test_rack);
  g_test_add_func ("/sheet/note", test_note);
  g_test_add_func ("/sheet/long-names", test_long_names);
  g_test_add_func ("/sheet/no-colour", test_no_colour);
  g_test_add_func ("/sheet/leaves-as-found", test_leaves_as_found);
  g_test_add_func ("/sheet/no-such-page", test_no_such_page);
  return g_test_run ();
}
