/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <string.h>

/* Points. */
#define MARGIN 36.0
#define PNG_DPI 200.0

typedef struct
{
  double width, height;
} Paper;

/* Lying on their long side. */
static const Paper a4 = { 297.0 * 72.0 / 25.4, 210.0 * 72.0 / 25.4 };
static const Paper us_letter = { 11.0 * 72.0, 8.5 * 72.0 };

G_DEFINE_QUARK (bs - sheet - error - quark, bs_sheet_error)

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
draw_page (const BsSheet *sheet, guint page, cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, MARGIN, MARGIN);
  bs_sheet_draw_page (sheet, page, cr);
  cairo_restore (cr);
}

/* Frees both, and says what went wrong with them. */
static cairo_status_t
finish (cairo_t *cr, cairo_surface_t *surface)
{
  cairo_status_t status = cairo_status (cr);

  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

static cairo_status_t
write_pdf (const BsSheet *sheet, const BsPlan *plan, const Paper *paper, GByteArray *bytes)
{
  cairo_surface_t *surface
      = cairo_pdf_surface_create_for_stream (append_bytes, bytes, paper->width, paper->height);
  cairo_t *cr = cairo_create (surface);

  if (plan->name != NULL)
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, plan->name);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR,
                                  "Broadstave " PACKAGE_VERSION);
  /* A date of its own would make other bytes of the same plan. */
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    {
      draw_page (sheet, page, cr);
      cairo_show_page (cr);
    }
  return finish (cr, surface);
}

static gboolean
append_number (const GMatchInfo *match, GString *text, gpointer data)
{
  GPtrArray *seen = data;
  g_autofree char *number = g_match_info_fetch (match, 1);
  guint index;

  if (!g_ptr_array_find_with_equal_func (seen, number, g_str_equal, &index))
    {
      index = seen->len;
      g_ptr_array_add (seen, g_steal_pointer (&number));
    }
  g_string_append_printf (text, "surface%u", index);
  return FALSE;
}

/* cairo names the groups of an SVG by a count of all surfaces of the process: they are numbered
 * anew, so that the same plan gives the same bytes. */
static void
renumber_surfaces (GByteArray *bytes)
{
  g_autoptr (GRegex) regex = g_regex_new ("surface([0-9]+)", G_REGEX_RAW, 0, NULL);
  g_autoptr (GPtrArray) seen = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *text = g_regex_replace_eval (
      regex, (const char *)bytes->data, (gssize)bytes->len, 0, 0, append_number, seen, NULL);

  g_byte_array_set_size (bytes, 0);
  g_byte_array_append (bytes, (const guint8 *)text, (guint)strlen (text));
}

static cairo_status_t
write_svg (const BsSheet *sheet, const BsPlan *plan, const Paper *paper, GByteArray *bytes)
{
  cairo_surface_t *surface
      = cairo_svg_surface_create_for_stream (append_bytes, bytes, paper->width, paper->height);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  draw_page (sheet, 0, cr);
  status = finish (cr, surface);
  if (status == CAIRO_STATUS_SUCCESS)
    renumber_surfaces (bytes);
  return status;
}

static cairo_status_t
write_png (const BsSheet *sheet, const BsPlan *plan, const Paper *paper, GByteArray *bytes)
{
  double zoom = PNG_DPI / 72.0;
  cairo_surface_t *surface = cairo_image_surface_create (
      CAIRO_FORMAT_RGB24, (int)(paper->width * zoom + 0.5), (int)(paper->height * zoom + 0.5));
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_scale (cr, zoom, zoom);
  draw_page (sheet, 0, cr);
  status = cairo_status (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, append_bytes, bytes);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return status;
}

typedef cairo_status_t (*Writer) (const BsSheet *, const BsPlan *, const Paper *, GByteArray *);

static Writer
find_writer (const char *filename, GError **error)
{
  static const struct
  {
    const char *ending;
    Writer write;
  } writers[] = { { ".pdf", write_pdf }, { ".svg", write_svg }, { ".png", write_png } };
  g_autofree char *lower = g_ascii_strdown (filename, -1);
  g_autofree char *shown = g_filename_display_name (filename);

  for (gsize i = 0; i < G_N_ELEMENTS (writers); i++)
    if (g_str_has_suffix (lower, writers[i].ending))
      return writers[i].write;
  g_set_error (error, BS_SHEET_ERROR, BS_SHEET_ERROR_ENDING,
               _ ("The diagram cannot be written to “%s”: its name must end in .pdf, .svg or .png, "
                  "which says the kind of file."),
               shown);
  return NULL;
}

gboolean
bs_sheet_export (BsResults *results, const BsSheetStudies *studies, const char *filename,
                 gboolean letter, GError **error)
{
  const Paper *paper = letter ? &us_letter : &a4;
  BsSheetOptions options = { .width = paper->width - 2.0 * MARGIN,
                             .height = paper->height - 2.0 * MARGIN,
                             .studies = *studies };
  Writer write = find_writer (filename, error);
  g_autofree char *shown = g_filename_display_name (filename);
  g_autoptr (BsSheet) sheet = NULL;
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GError) failure = NULL;
  cairo_status_t status;

  if (write == NULL)
    return FALSE;
  sheet = bs_sheet_new (results, &options);
  status = write (sheet, results->stack->plan, paper, bytes);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, BS_SHEET_ERROR, BS_SHEET_ERROR_WRITE,
                   _ ("The diagram for “%s” could not be drawn: %s."), shown,
                   cairo_status_to_string (status));
      return FALSE;
    }
  /* Whole or not at all. */
  if (!g_file_set_contents (filename, (const char *)bytes->data, (gssize)bytes->len, &failure))
    {
      g_set_error (error, BS_SHEET_ERROR, BS_SHEET_ERROR_WRITE,
                   _ ("The diagram could not be written to “%s”. Choose a folder that exists and "
                      "may be written to. (%s)"),
                   shown, failure->message);
      return FALSE;
    }
  return TRUE;
}
