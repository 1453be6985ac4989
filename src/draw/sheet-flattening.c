/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/flatten-explain.h"
#include "core/flatten.h"
#include "core/units.h"
#include "draw/odds.h"
#include "draw/removal.h"
#include "words/flattening.h"

#define TEXT (0.9 * BS_SHEET_TEXT)
#define MAPS_HEIGHT 300.0 /* both, at most, points */
#define LEGEND_WIDTH 24.0 /* in text sizes */
#define GAP 0.8

typedef struct
{
  BsFlow *flow;
  const BsResults *results;
  const BsStack *stack;
  const BsFlattenMap *map;
  const BsForecast *forecast;
  double width; /* of a column */
} Page;

typedef void (*DrawPicture) (const Page *self, cairo_t *cr);

static void
add_picture (const Page *self, double height, DrawPicture draw)
{
  cairo_rectangle_t box = { 0.0, 0.0, self->width, height };
  cairo_surface_t *picture = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &box);
  cairo_t *cr = cairo_create (picture);

  draw (self, cr);
  cairo_destroy (cr);
  bs_flow_add_picture (self->flow, picture, height);
  cairo_surface_destroy (picture);
}

static double
fit_maps (const Page *self, BsRemovalScale *show_face, BsRemovalScale *underside)
{
  return bs_removal_fit (show_face, underside, self->stack, self->width, MAPS_HEIGHT, TEXT,
                         BS_SHEET_HAIRLINE);
}

static void
draw_maps (const Page *self, cairo_t *cr)
{
  const BsPalette *paper = bs_palette_paper ();
  BsRemovalScale show_face, underside;
  double height = fit_maps (self, &show_face, &underside);

  bs_draw_removal (cr, self->map, self->stack, TRUE, &show_face, NULL, paper);
  bs_draw_removal (cr, self->map, self->stack, FALSE, &underside, NULL, paper);
  cairo_translate (cr, show_face.left, height + GAP * TEXT);
  bs_draw_removal_legend (cr, self->map, self->stack->plan->units,
                          fmin (LEGEND_WIDTH * TEXT, self->width - show_face.left), TEXT,
                          BS_SHEET_HAIRLINE, paper);
}

static void
draw_odds (const Page *self, cairo_t *cr)
{
  const BsPlan *plan = self->stack->plan;

  bs_draw_odds (cr, &self->forecast->odds, plan->slab.thickness, plan->units, self->width, TEXT,
                BS_SHEET_HAIRLINE, bs_palette_paper ());
}

static void
add_spots (const Page *self, const char *title, const BsDeepSpots *deep)
{
  bs_flow_add_text (self->flow, title, BS_FLOW_TITLE, BS_FLOW_SIGN_NONE);
  if (deep->n == 0)
    bs_flow_add_text (self->flow, bs_words_no_deep_spot (), BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  for (guint i = 0; i < deep->n; i++)
    {
      g_autofree char *text = bs_words_deep_spot (&deep->spots[i], self->stack);

      bs_flow_add_text (self->flow, text, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
    }
  bs_flow_add_space (self->flow);
}

static const BsFlowCell value_cells[] = {
  { .from = 0.00, .width = 0.70 },
  { .from = 0.70, .width = 0.30, .is_right = TRUE, .is_bold = TRUE },
};

static void
add_value (const Page *self, const BsWorking *why)
{
  g_autofree char *value = bs_units_format (why->value, why->quantity, self->stack->plan->units);
  const char *texts[] = { _ (why->title), value };

  bs_flow_add_row (self->flow, texts);
}

/* The three ways side by side; the one that the plan goes by is marked. */
static void
add_works (const Page *self)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.46 },
    { .from = 0.46, .width = 0.18, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.64, .width = 0.18, .is_right = TRUE },
    { .from = 0.82, .width = 0.18, .is_right = TRUE },
  };
  const char *head[] = { _ ("Order of work"), _ ("Thickness"), _ ("Off the show face, at most"),
                         _ ("Off the underside, at most") };
  const BsPlan *plan = self->stack->plan;
  BsFlattenResult by_work[BS_N_FLATTEN_WORKS];

  bs_flow_begin_table (self->flow, cells, G_N_ELEMENTS (cells), head);
  for (int i = 0; i < BS_N_FLATTEN_WORKS; i++)
    {
      BsFlattenResult *result = &by_work[i];

      bs_flatten_by (self->stack, (BsFlattenWork)i, result);
      g_autofree char *name
          = (BsFlattenWork)i == plan->slab.flatten_work
                /* Translators: an order of work, the one that the person chose. */
                ? g_strdup_printf (_ ("%s (chosen)"), _ (bs_flatten_work_names[i]))
                : g_strdup (_ (bs_flatten_work_names[i]));
      g_autofree char *thickness
          = bs_units_format (result->thickness, BS_QUANTITY_LENGTH, plan->units);
      g_autofree char *top = bs_units_format (result->top_most, BS_QUANTITY_LENGTH, plan->units);
      g_autofree char *under
          = bs_units_format (result->underside_most, BS_QUANTITY_LENGTH, plan->units);
      const char *texts[] = { name, thickness, top, under };

      bs_flow_add_row (self->flow, texts);
    }
  g_autofree char *choice = bs_words_flatten_choice (by_work, plan->units);
  bs_flow_add_text (self->flow, choice, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  bs_flow_add_space (self->flow);
}

static void
add_sure (const Page *self)
{
  const char *head[] = { _ ("What"), _ ("How much") };
  BsWorking why;

  bs_flow_add_heading (self->flow, _ ("How sure the thickness is"));
  add_picture (self, BS_ODDS_HEIGHT * TEXT, draw_odds);
  bs_flow_begin_table (self->flow, value_cells, G_N_ELEMENTS (value_cells), head);
  for (int i = 0; i < BS_N_SURE; i++)
    {
      bs_flatten_explain_odds (&self->forecast->odds, (BsSure)i, self->stack, &why);
      add_value (self, &why);
    }
  bs_flatten_explain_wanted (&self->forecast->odds, self->stack, &why);
  add_value (self, &why);
  bs_flatten_explain_height (&self->forecast->height_needed, self->stack, &why);
  add_value (self, &why);
}

static void
add_steps (const Page *self)
{
  const BsPlan *plan = self->stack->plan;
  g_autofree char *steps = bs_words_flatten_steps (self->results);

  bs_flow_add_text (self->flow, steps, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  if (plan->slab.flatten_method == BS_FLATTEN_BY_PLANER)
    {
      g_autofree char *planer = bs_words_planer (self->stack);

      bs_flow_add_text (self->flow, planer, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
    }
  bs_flow_add_space (self->flow);
}

void
bs_sheet_add_flattening (BsFlow *flow, const BsResults *results, const BsForecast *forecast)
{
  const BsStack *stack = results->stack;
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, stack->plan->slab.flatten_work,
                                                     BS_REMOVAL_COLUMNS, BS_REMOVAL_ROWS);
  Page self = { .flow = flow,
                .results = results,
                .stack = stack,
                .map = map,
                .forecast = forecast,
                .width = bs_flow_get_column_width (flow) };
  BsRemovalScale show_face, underside;
  double maps = fit_maps (&self, &show_face, &underside);

  if (map->n_x == 0 || !(maps > 0.0))
    return;
  bs_flow_add_heading (flow, _ ("Flattening"));
  add_picture (&self, maps + (GAP + BS_HEAT_LEGEND_HEIGHT) * TEXT, draw_maps);
  add_spots (&self, _ ("Deepest spots of the show face"), &map->deep_top);
  add_spots (&self, _ ("Deepest spots of the underside"), &map->deep_underside);
  add_steps (&self);
  add_works (&self);
  add_sure (&self);
}
