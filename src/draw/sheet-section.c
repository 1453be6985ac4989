/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/lettering.h"
#include "draw/paper-scale.h"

/* Points. */
#define CAPTION 20.0
#define OVER_ROW 18.0  /* where each lamination begins */
#define UNDER_ROW 24.0 /* hearts, and some air */

/* Room for one row at least, and for the widest lamination in it. */
static gboolean
fits_page (const BsStack *stack, double times, double width, double height)
{
  double per_mm = BS_POINTS_PER_MM / times, widest = 0.0;

  for (guint i = 0; i < stack->n; i++)
    widest = fmax (widest, stack->placed[i].thickness);
  return widest * per_mm <= width
         && CAPTION + OVER_ROW + stack->height * per_mm + UNDER_ROW <= height;
}

static BsScale
make_scale (const BsStack *stack, double times)
{
  BsScale scale = {
    .per_mm_across = BS_POINTS_PER_MM / times,
    .hairline = BS_SHEET_HAIRLINE,
    .text_size = BS_SHEET_TEXT,
  };

  bs_scale_fit_labels (&scale, stack, BS_SHEET_LABEL);
  return scale;
}

/* The place behind the last lamination that finds room in a row that begins with `first`. */
static guint
find_row_end (const BsStack *stack, guint first, double room)
{
  guint last = first + 1;

  while (last < stack->n
         && stack->placed[last].y + stack->placed[last].thickness - stack->placed[first].y <= room)
    last++;
  return last;
}

static guint
count_rows (const BsStack *stack, double room)
{
  guint rows = 0;

  for (guint first = 0; first < stack->n; rows++)
    first = find_row_end (stack, first, room);
  return rows;
}

/* The shortest rows, in mm of the section, that are no more than the page's width would need: none
 * is then left nearly empty. */
static double
find_row_room (const BsStack *stack, const BsScale *scale, double width)
{
  double most = width / scale->per_mm_across, step = 0.01 * most, room = most;
  guint rows = count_rows (stack, most);

  while (room > step && count_rows (stack, room - step) == rows)
    room -= step;
  return room;
}

static double
get_row_height (const BsStack *stack, const BsScale *scale)
{
  return OVER_ROW + stack->height * scale->per_mm_across + UNDER_ROW;
}

static guint
count_rows_a_page (const BsStack *stack, const BsScale *scale, double height)
{
  return (guint)fmax (floor ((height - CAPTION) / get_row_height (stack, scale)), 1.0);
}

static guint
count_pages (const BsStack *stack, const BsScale *scale, double width, double height)
{
  guint rows = count_rows (stack, width / scale->per_mm_across);
  guint rows_a_page = count_rows_a_page (stack, scale, height);

  return (rows + rows_a_page - 1) / rows_a_page;
}

/* The smallest scale at which every label can be read from afar, or the largest that fits the page;
 * larger still where that takes no more pages. */
static BsScale
find_row_scale (const BsStack *stack, double width, double height)
{
  BsUnitSystem units = stack->plan->units;
  double times = bs_paper_scale_find (stack->width, width, units);
  BsScale scale = make_scale (stack, times);

  while ((times = bs_paper_scale_find_larger (times, units)) > 0.0
         && fits_page (stack, times, width, height))
    {
      BsScale larger = make_scale (stack, times);

      if (!scale.labels_stand && scale.label_size >= BS_SHEET_LABEL_LEAST
          && count_pages (stack, &larger, width, height)
                 > count_pages (stack, &scale, width, height))
        break;
      scale = larger;
    }
  return scale;
}

guint
bs_sheet_count_section_pages (const BsResults *results, double width, double height)
{
  BsScale scale = find_row_scale (results->stack, width, height);

  return count_pages (results->stack, &scale, width, height);
}

static void
draw_row (cairo_t *cr, const BsResults *results, guint first, guint last, const BsScale *scale)
{
  const BsStack *stack = results->stack;
  BsLettering style = { .size = 8.5 };
  double bottom = OVER_ROW + stack->height * scale->per_mm_across;
  /* Translators: %s is a distance. */
  g_autofree char *value
      = bs_units_format (stack->placed[first].y, BS_QUANTITY_LENGTH, stack->plan->units);
  g_autofree char *words = g_strdup_printf (_ ("%s from the front"), value);

  bs_color_set (&bs_palette_paper ()->ink, cr);
  bs_lettering_draw (cr, words, &style, 0.0, OVER_ROW - 3.0, 0.0, 1.0);
  for (guint i = first; i < last; i++)
    {
      double left = (stack->placed[i].y - stack->placed[first].y) * scale->per_mm_across;

      cairo_save (cr);
      cairo_translate (cr, left, bottom);
      bs_draw_end (cr, &stack->placed[i], scale, bs_palette_paper (),
                   bs_marks_from_findings (results, (int)i));
      cairo_restore (cr);
    }
  bs_sheet_draw_hearts (cr, results, first, last, scale, 0.0, bottom + 8.0);
}

void
bs_sheet_draw_section_page (cairo_t *cr, const BsResults *results, double width, double height,
                            guint page)
{
  const BsStack *stack = results->stack;
  BsScale scale = find_row_scale (stack, width, height);
  double room = find_row_room (stack, &scale, width);
  guint rows_a_page = count_rows_a_page (stack, &scale, height), row = 0;
  g_autofree char *ratio = bs_paper_scale_format (BS_POINTS_PER_MM / scale.per_mm_across);
  g_autofree char *title = g_strdup_printf (_ ("End section %s"), ratio);

  bs_sheet_draw_caption (cr, title, _ ("row by row, from the front to the back"), width,
                         scale.per_mm_across, stack->plan->units);
  cairo_save (cr);
  cairo_translate (cr, 0.0, CAPTION);
  for (guint first = 0; first < stack->n; row++)
    {
      guint last = find_row_end (stack, first, room);

      if (row / rows_a_page == page)
        {
          draw_row (cr, results, first, last, &scale);
          cairo_translate (cr, 0.0, get_row_height (stack, &scale));
        }
      first = last;
    }
  cairo_restore (cr);
}
