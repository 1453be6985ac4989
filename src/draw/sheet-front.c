/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/dimension.h"
#include "draw/key.h"
#include "draw/lettering.h"
#include "draw/marks.h"
#include "draw/paper-scale.h"
#include "draw/slab-view.h"
#include "words/flattening.h"

/* Points. */
#define SIDE_MARGIN 62.0 /* beside the pictures: dimensions, tape, distances of clamps */
#define CAPTION 17.0
#define OVER_SECTION 34.0  /* its width, and where its top touches */
#define UNDER_SECTION 34.0 /* hearts, and where its underside touches */
#define OVER_FACE 15.0     /* words for ends and sides */
#define UNDER_FACE 26.0
#define KEY_SIZE 9.0
#define WISH_TEXT 11.0
#define SECTION_SHARE 0.46 /* of the height for pictures */

/* Under a number: the range that it may well have; the caller's. */
static char *
describe_range (const BsWorking *working, BsUnitSystem units)
{
  g_autofree char *low = bs_units_format (working->low, working->quantity, units);
  g_autofree char *high = bs_units_format (working->high, working->quantity, units);

  if (!isfinite (working->low) || !isfinite (working->high))
    return g_strdup ("");
  /* Translators: the range that a number may well have, as in "86 mm to 89 mm". */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static char *
describe_time_left (const BsAssembly *times, BsUnitSystem units)
{
  g_autofree char *limit = bs_units_format (times->limit_s, BS_QUANTITY_TIME, units);
  g_autofree char *left = bs_units_format (fabs (times->left_s), BS_QUANTITY_TIME, units);

  if (!isfinite (times->left_s))
    return g_strdup ("");
  if (times->left_s < 0.0)
    /* Translators: two times, as in "3 min over the 15 min allowed". */
    return g_strdup_printf (_ ("%s over the %s allowed"), left, limit);
  /* Translators: two times, as in "3 min left of 15 min". */
  return g_strdup_printf (_ ("%s left of %s"), left, limit);
}

static char *
describe_sure (const BsFlattenOdds *odds, const BsPlan *plan)
{
  return isfinite (odds->at_95_pct) ? bs_words_sure (odds, plan) : g_strdup ("");
}

static double
draw_figure (cairo_t *cr, const BsWorking *working, const char *under, BsUnitSystem units, double x,
             double width, gboolean is_drawn)
{
  BsLettering title = { .size = 9.0, .wrap = width }, large = { .size = 15.0, .is_bold = TRUE };
  const char *words = working->title != NULL ? _ (working->title) : "";
  g_autofree char *value = bs_units_format (working->value, working->quantity, units);
  double wide, title_height, value_height, under_height;

  bs_lettering_measure (cr, words, &title, &wide, &title_height);
  bs_lettering_measure (cr, value, &large, &wide, &value_height);
  bs_lettering_measure (cr, under, &title, &wide, &under_height);
  if (is_drawn)
    {
      bs_lettering_draw (cr, words, &title, x, 0.0, 0.0, 0.0);
      bs_lettering_draw (cr, value, &large, x, title_height, 0.0, 0.0);
      bs_lettering_draw (cr, under, &title, x, title_height + value_height, 0.0, 0.0);
    }
  return title_height + value_height + under_height;
}

/* The numbers that matter most, side by side; as high as the highest. */
static double
draw_figures (cairo_t *cr, const BsResults *results, const BsFlattenOdds *odds, double width,
              gboolean is_drawn)
{
  const BsWorking *figures[] = { &results->why_thickness, &results->why_force, &results->why_clamps,
                                 &results->why_time, &results->why_mass };
  int n = (int)G_N_ELEMENTS (figures);
  BsUnitSystem units = results->stack->plan->units;
  double room = width / n, height = 0.0;

  bs_color_set (&bs_palette_paper ()->ink, cr);
  for (int i = 0; i < n; i++)
    {
      g_autofree char *under
          = figures[i] == &results->why_time        ? describe_time_left (&results->assembly, units)
            : figures[i] == &results->why_thickness ? describe_sure (odds, results->stack->plan)
                                                    : describe_range (figures[i], units);

      height = fmax (height,
                     draw_figure (cr, figures[i], under, units, i * room, room - 10.0, is_drawn));
    }
  return height + 6.0;
}

void
bs_sheet_draw_caption (cairo_t *cr, const char *title, const char *text, double width,
                       double per_mm, BsUnitSystem units)
{
  BsLettering bold = { .size = 11.0, .is_bold = TRUE }, plain = { .size = 9.0 };
  double title_width, title_height;

  bs_lettering_measure (cr, title, &bold, &title_width, &title_height);
  bs_color_set (&bs_palette_paper ()->ink, cr);
  bs_lettering_draw (cr, title, &bold, 0.0, title_height, 0.0, 1.0);
  plain.wrap = width - title_width - 110.0;
  bs_lettering_draw (cr, text, &plain, title_width + 8.0, title_height - 0.5, 0.0, 1.0);
  bs_dimension_scale_bar (cr, width - 90.0, title_height - 4.0, per_mm, 90.0, units, 8.5,
                          BS_SHEET_HAIRLINE, bs_palette_paper ());
}

static gboolean
has_pictures (const BsStack *stack)
{
  return stack->n > 0 && isfinite (stack->width) && isfinite (stack->height)
         && isfinite (stack->length) && stack->width > 0.0 && stack->height > 0.0
         && stack->length > 0.0;
}

/* Where the pictures go, between the figures and the key. */
static void
find_picture_room (cairo_t *cr, const BsResults *results, const BsFlattenOdds *odds, double width,
                   double height, double *top, double *bottom)
{
  *top = draw_figures (cr, results, odds, width, FALSE);
  *bottom = height - bs_key_draw (cr, results, width, KEY_SIZE, FALSE) - 4.0;
}

static BsScale
find_section_scale (const BsResults *results, double width, double height)
{
  const BsStack *stack = results->stack;
  BsUnitSystem units = stack->plan->units;
  double across = width - 2.0 * SIDE_MARGIN;
  double up = SECTION_SHARE * height - CAPTION - OVER_SECTION - UNDER_SECTION;
  double times = fmax (bs_paper_scale_find (stack->width, across, units),
                       bs_paper_scale_find (stack->height, up, units));
  double per_mm = times > 0.0 ? BS_POINTS_PER_MM / times : 0.0;

  BsScale scale = {
    .left = SIDE_MARGIN + 0.5 * (across - stack->width * per_mm),
    .top = CAPTION + OVER_SECTION,
    .per_mm_across = per_mm,
    .hairline = BS_SHEET_HAIRLINE,
    .text_size = BS_SHEET_TEXT,
  };

  bs_scale_fit_labels (&scale, stack, BS_SHEET_LABEL);
  return scale;
}

void
bs_sheet_draw_hearts (cairo_t *cr, const BsResults *results, guint first, guint last,
                      const BsScale *scale, double left, double y)
{
  const BsStack *stack = results->stack;
  gboolean is_on_flat = stack->plan->slab.layup == BS_LAYUP_ON_FLAT;

  for (guint i = first; i < last; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double wide = placed->thickness * scale->per_mm_across;
      double middle = left + (placed->y - stack->placed[first].y) * scale->per_mm_across;

      if (placed->heart_side == 0)
        continue;
      cairo_save (cr);
      cairo_translate (cr, middle + 0.5 * wide, y);
      if (is_on_flat)
        cairo_rotate (cr, -G_PI / 2.0);
      bs_mark_heart (cr, 0.0, 0.0, fmin (11.0, 0.8 * wide), placed->heart_side,
                     &bs_palette_paper ()->ink);
      cairo_restore (cr);
    }
}

static gboolean
touches_underside (const BsFlattenResult *flat)
{
  for (guint i = 0; i < flat->n_touches; i++)
    if (!flat->touches[i].is_top)
      return TRUE;
  return FALSE;
}

static void
draw_section (cairo_t *cr, const BsResults *results, const BsScale *scale, double width)
{
  const BsStack *stack = results->stack;
  g_autofree char *ratio = bs_paper_scale_format (BS_POINTS_PER_MM / scale->per_mm_across);
  /* Translators: %s is a scale such as 1:5. */
  g_autofree char *title = g_strdup_printf (_ ("End section %s"), ratio);

  bs_sheet_draw_caption (cr, title,
                         _ ("the left end, as seen from the right end; front at the left"), width,
                         scale->per_mm_across, stack->plan->units);
  bs_draw_section_picture (cr, results, scale, bs_palette_paper ());
  bs_sheet_draw_hearts (cr, results, 0, stack->n, scale, scale->left,
                        scale->top + stack->height * scale->per_mm_across
                            + (touches_underside (&results->flatten) ? 25.0 : 11.0));
}

static void
draw_face (cairo_t *cr, const BsResults *results, GHashTable *photos, const BsScale *section,
           double width, double height)
{
  const BsStack *stack = results->stack;
  BsUnitSystem units = stack->plan->units;
  double along
      = bs_paper_scale_find (stack->length, height - CAPTION - OVER_FACE - UNDER_FACE, units);
  g_autofree char *across_ratio = bs_paper_scale_format (BS_POINTS_PER_MM / section->per_mm_across);
  g_autofree char *along_ratio = bs_paper_scale_format (along);
  g_autofree char *text = NULL;
  BsScale scale = *section;

  if (!(along > 0.0))
    return;
  scale.top = CAPTION + OVER_FACE;
  scale.per_mm_along = BS_POINTS_PER_MM / along;
  /* Translators: two scales such as 1:5. */
  text = g_strdup_printf (_ ("from above; across %s, along the grain %s; clamps from the left end"),
                          across_ratio, along_ratio);
  bs_sheet_draw_caption (cr, _ ("Show face"), text, width, 0.0, units);
  bs_draw_face_picture (cr, results, photos, &scale, bs_palette_paper ());
}

/* While there is nothing else to draw: what is wished, and why no more. */
static void
draw_wish (cairo_t *cr, const BsStack *stack, double width, double height)
{
  BsLettering style = { .size = 12.0, .wrap = width };
  const char *words
      = _ ("The slab as it is wished: there is no lamination in it yet, or their sizes are not "
           "known.");
  BsChart chart = { width, WISH_TEXT, BS_SHEET_HAIRLINE, bs_palette_paper () };
  double words_width, words_height;

  bs_lettering_measure (cr, words, &style, &words_width, &words_height);
  bs_lettering_draw (cr, words, &style, 0.0, 12.0, 0.0, 0.0);
  if (bs_slab_view_get_height (stack, &chart) > height - words_height - 36.0)
    return;
  cairo_save (cr);
  cairo_translate (cr, 0.0, words_height + 36.0);
  bs_draw_slab_view (cr, stack, &chart);
  cairo_restore (cr);
}

void
bs_sheet_draw_front (cairo_t *cr, const BsResults *results, const BsFlattenOdds *odds,
                     GHashTable *photos, double width, double height)
{
  double top, bottom, face_top;
  BsScale scale;

  draw_figures (cr, results, odds, width, TRUE);
  find_picture_room (cr, results, odds, width, height, &top, &bottom);
  if (!has_pictures (results->stack))
    {
      cairo_save (cr);
      cairo_translate (cr, 0.0, top);
      draw_wish (cr, results->stack, width, bottom - top);
      cairo_restore (cr);
      return;
    }
  scale = find_section_scale (results, width, bottom - top);
  cairo_save (cr);
  cairo_translate (cr, 0.0, top);
  draw_section (cr, results, &scale, width);
  face_top = scale.top + results->stack->height * scale.per_mm_across + UNDER_SECTION;
  cairo_translate (cr, 0.0, face_top);
  draw_face (cr, results, photos, &scale, width, bottom - top - face_top);
  cairo_restore (cr);

  cairo_save (cr);
  cairo_translate (cr, 0.0, bottom + 4.0);
  bs_key_draw (cr, results, width, KEY_SIZE, TRUE);
  cairo_restore (cr);
}

gboolean
bs_sheet_front_is_small (const BsResults *results, const BsFlattenOdds *odds, double width,
                         double height)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, NULL);
  cairo_t *cr = cairo_create (surface);
  double top, bottom;
  BsScale scale;

  find_picture_room (cr, results, odds, width, height, &top, &bottom);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  if (!has_pictures (results->stack))
    return FALSE;
  scale = find_section_scale (results, width, bottom - top);
  return scale.labels_stand || scale.label_size < BS_SHEET_LABEL_LEAST;
}
