/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sheet.h"

#include <glib/gstdio.h>
#include <string.h>

#include "image.h"
#include "pdf.h"
#include "scene.h"

static const BsSheetStudies no_studies = { NULL };

typedef struct
{
  char *folder;
  BsResults *results;
} Fixture;

static void
set_up (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) plan = scene_new_plan (16, BS_LAYUP_ON_EDGE);

  self->folder = g_dir_make_tmp ("export-XXXXXX", &error);
  g_assert_no_error (error);
  self->results = bs_evaluate (plan);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  g_autoptr (GDir) dir = g_dir_open (self->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (self->folder, name, NULL);

      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (self->folder), ==, 0);
  g_free (self->folder);
  bs_results_unref (self->results);
}

static char *export(Fixture *self, const char *name, gboolean letter)
{
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (self->folder, name, NULL);

  g_assert_true (bs_sheet_export (self->results, &no_studies, path, letter, &error));
  g_assert_no_error (error);
  return path;
}

static void
test_same_bytes (Fixture *self, gconstpointer data)
{
  const char *ending = data;
  char *bytes[2];
  gsize lengths[2];

  for (int i = 0; i < 2; i++)
    {
      g_autofree char *name = g_strdup_printf ("%d%s", i, ending);
      g_autofree char *path = export(self, name, FALSE);

      g_assert_true (g_file_get_contents (path, &bytes[i], &lengths[i], NULL));
    }
  g_assert_cmpmem (bytes[0], lengths[0], bytes[1], lengths[1]);
  g_assert_cmpuint (lengths[0], >, 1000);
  g_free (bytes[0]);
  g_free (bytes[1]);
}

typedef struct
{
  const char *path;
  gboolean letter;
  const char *size; /* as pdfinfo says it. Sources: ISO 216:2007 (A4, 297 x 210 mm); ANSI/ASME Y14.1
                     * (A, 11 x 8.5 in); from memory */
} PaperRow;

static const PaperRow paper_rows[] = {
  { "/export/pdf/a4", FALSE, "841.89 x 595.276 pts (A4)" },
  { "/export/pdf/letter", TRUE, "792 x 612 pts (letter)" },
};

static void
test_pdf (Fixture *self, gconstpointer data)
{
  const PaperRow *row = data;
  g_autofree char *path = export(self, "sheet.PDF", row->letter);
  g_autofree char *size = NULL, *pages = NULL, *title = NULL, *date = NULL, *text = NULL;
  g_autofree char *count = NULL;
  double margin = 36.0, width = row->letter ? 792.0 : 841.89,
         height = row->letter ? 612.0 : 595.276;
  BsSheetOptions options = { .width = width - 2.0 * margin, .height = height - 2.0 * margin };
  g_autoptr (BsSheet) sheet = bs_sheet_new (self->results, &options);

  if (!pdf_can_read ())
    return;
  size = pdf_get_field (path, "Page size");
  pages = pdf_get_field (path, "Pages");
  title = pdf_get_field (path, "Title");
  date = pdf_get_field (path, "CreationDate");
  text = pdf_get_text (path, 0);
  count = g_strdup_printf ("%u", bs_sheet_get_n_pages (sheet));
  g_assert_cmpstr (size, ==, row->size);
  g_assert_cmpstr (pages, ==, count);
  g_assert_cmpstr (title, ==, self->results->stack->plan->name);
  g_assert_nonnull (strstr (date, "2000"));
  g_assert_nonnull (strstr (text, "End section 1:"));
  g_assert_nonnull (strstr (text, "Show face"));
  g_assert_nonnull (strstr (text, "Before you start"));
}

/* Well-formed XML with the paper's size. */
static void
test_svg (Fixture *self, gconstpointer data)
{
  static const GMarkupParser parser = { NULL };
  g_autofree char *path = export(self, "sheet.svg", FALSE), *text = NULL;
  g_autoptr (GMarkupParseContext) context
      = g_markup_parse_context_new (&parser, G_MARKUP_DEFAULT_FLAGS, NULL, NULL);
  g_autoptr (GError) error = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_assert_true (g_markup_parse_context_parse (context, text, (gssize)length, &error));
  g_assert_true (g_markup_parse_context_end_parse (context, &error));
  g_assert_no_error (error);
  g_assert_nonnull (strstr (text, "841.8"));
}

/* 200 dots an inch: 297 / 25.4 x 200 = 2338.6, 210 / 25.4 x 200 = 1653.5. */
static void
test_png (Fixture *self, gconstpointer data)
{
  g_autofree char *path = export(self, "sheet.png", FALSE);
  cairo_surface_t *surface = cairo_image_surface_create_from_png (path);
  cairo_t *cr = cairo_create (surface);
  cairo_rectangle_int_t box;

  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, 2339);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 1654);
  /* nothing within the margin of half an inch: 100 dots, less the half of a line */
  g_assert_cmpint (image_count_ink (cr, &box), >, 10000);
  g_assert_cmpint (box.x, >=, 98);
  g_assert_cmpint (box.x + box.width, <=, 2241);
  g_assert_cmpint (box.y, >=, 98);
  g_assert_cmpint (box.y + box.height, <=, 1556);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

typedef struct
{
  const char *path;
  const char *name; /* in the fixture's folder */
  BsSheetError code;
} FailureRow;

static const FailureRow failure_rows[] = {
  { "/export/refused/no-ending", "sheet", BS_SHEET_ERROR_ENDING },
  { "/export/refused/other-ending", "sheet.docx", BS_SHEET_ERROR_ENDING },
  { "/export/refused/ending-alone-in-a-folder", "pdf.d/sheet", BS_SHEET_ERROR_ENDING },
  { "/export/refused/no-folder", "missing/sheet.pdf", BS_SHEET_ERROR_WRITE },
  { "/export/refused/folder-of-a-file", "sheet.pdf/sheet.png", BS_SHEET_ERROR_WRITE },
};

/* A sentence that names the file, and nothing left behind. */
static void
test_failure (Fixture *self, gconstpointer data)
{
  const FailureRow *row = data;
  g_autofree char *path = g_build_filename (self->folder, row->name, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (bs_sheet_export (self->results, &no_studies, path, FALSE, &error));
  g_assert_error (error, BS_SHEET_ERROR, (int)row->code);
  g_assert_nonnull (strstr (error->message, path));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

/* The name of a folder is no file; the folder stays. */
static void
test_folder (Fixture *self, gconstpointer data)
{
  g_autofree char *path = g_build_filename (self->folder, "folder.pdf", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_mkdir (path, 0700), ==, 0);
  g_assert_false (bs_sheet_export (self->results, &no_studies, path, FALSE, &error));
  g_assert_error (error, BS_SHEET_ERROR, BS_SHEET_ERROR_WRITE);
  g_assert_true (g_file_test (path, G_FILE_TEST_IS_DIR));
}

int
main (int argc, char **argv)
{
  static const char *const endings[] = { ".pdf", ".svg", ".png" };

  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *path = g_strconcat ("/export/same-bytes/", endings[i] + 1, NULL);

      g_test_add (path, Fixture, endings[i], set_up, test_same_bytes, tear_down);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (paper_rows); i++)
    g_test_add (paper_rows[i].path, Fixture, &paper_rows[i], set_up, test_pdf, tear_down);
  g_test_add ("/export/svg", Fixture, NULL, set_up, test_svg, tear_down);
  g_test_add ("/export/png", Fixture, NULL, set_up, test_png, tear_down);
  for (gsize i = 0; i < G_N_ELEMENTS (failure_rows); i++)
    g_test_add (failure_rows[i].path, Fixture, &failure_rows[i], set_up, test_failure, tear_down);
  g_test_add ("/export/refused/folder", Fixture, NULL, set_up, test_folder, tear_down);
  return g_test_run ();
}
