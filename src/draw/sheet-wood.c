/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/cup-chart.h"
#include "draw/moisture-chart.h"
#include "draw/season-chart.h"
#include "words/timber.h"

#define TEXT (0.9 * BS_SHEET_TEXT)

typedef void (*DrawChart) (cairo_t *cr, const BsResults *results, const BsChart *chart);

/* A chart as wide as a column. */
static BsChart
make_chart (const BsFlow *flow)
{
  return (BsChart){ .width = bs_flow_get_column_width (flow),
                    .text_size = TEXT,
                    .hairline = BS_SHEET_HAIRLINE,
                    .palette = bs_palette_paper () };
}

static void
add_chart (BsFlow *flow, const BsResults *results, double height, DrawChart draw)
{
  const BsChart chart = make_chart (flow);
  const cairo_rectangle_t box = { 0.0, 0.0, chart.width, height };
  cairo_surface_t *picture = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &box);
  cairo_t *cr = cairo_create (picture);

  draw (cr, results, &chart);
  cairo_destroy (cr);
  bs_flow_add_picture (flow, picture, height);
  cairo_surface_destroy (picture);
  bs_flow_add_space (flow);
}

static void
add_sentences (BsFlow *flow, char **sentences)
{
  for (guint i = 0; sentences[i] != NULL; i++)
    bs_flow_add_text (flow, sentences[i], BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  bs_flow_add_space (flow);
}

static void
add_slots (BsFlow *flow, const BsResults *results)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.28, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.28, .width = 0.24, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.52, .width = 0.24, .is_right = TRUE },
    { .from = 0.76, .width = 0.24, .is_right = TRUE },
  };
  const char *head[]
      = { _ ("From the held line"), _ ("Slot"), _ ("Travels towards it"), _ ("Travels away") };
  const BsUnitSystem units = results->stack->plan->units;
  g_autofree char *fixing = bs_words_fixing (results);

  bs_flow_add_heading (flow, _ ("Slots that let the slab move"));
  bs_flow_add_text (flow, fixing, BS_FLOW_KEPT, BS_FLOW_SIGN_NONE);
  bs_flow_begin_table (flow, cells, G_N_ELEMENTS (cells), head);
  for (guint i = 0; i < results->slots->len; i++)
    {
      const BsSlot *slot = &g_array_index (results->slots, BsSlot, i);
      g_autofree char *distance = bs_units_format (slot->distance, BS_QUANTITY_LENGTH, units);
      g_autofree char *length = bs_units_format (slot->length, BS_QUANTITY_LENGTH, units);
      g_autofree char *towards = bs_units_format (slot->towards, BS_QUANTITY_LENGTH, units);
      g_autofree char *away = bs_units_format (slot->away, BS_QUANTITY_LENGTH, units);
      const char *texts[] = { distance, length, towards, away };

      bs_flow_add_row (flow, texts);
    }
  bs_flow_add_space (flow);
}

static void
add_loads (BsFlow *flow, const BsResults *results)
{
  bs_flow_add_heading (flow, _ ("What is lifted"));
  for (guint i = 0; i < BS_N_LOAD_KINDS; i++)
    {
      const BsLoad *load = &results->loads[i];
      g_autofree char *text = bs_words_load (load, (BsLoadKind)i, results->stack->plan->units);

      if (!isnan (load->kg))
        bs_flow_add_text (flow, text, BS_FLOW_PLAIN,
                          load->index > 1.0 ? BS_FLOW_SIGN_CAUTION : BS_FLOW_SIGN_BLANK);
    }
}

void
bs_sheet_add_wood (BsFlow *flow, const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  const BsChart chart = make_chart (flow);
  const double season = bs_season_chart_get_height (results, &chart);
  const double cup = bs_cup_chart_get_height (results, &chart);
  g_auto (GStrv) movement = bs_words_movement (results);
  g_auto (GStrv) cost = bs_words_cost (&results->cost, plan->currency, plan->units);

  bs_flow_add_heading (flow, _ ("Moisture of the laminations"));
  add_chart (flow, results, bs_moisture_chart_get_height (&chart), bs_draw_moisture_chart);
  bs_flow_add_heading (flow, _ ("The slab over the year"));
  if (season > 0.0)
    add_chart (flow, results, season, bs_draw_season_chart);
  add_sentences (flow, movement);
  if (cup > 0.0)
    add_chart (flow, results, cup, bs_draw_cup_chart);
  if (results->slots->len > 0)
    add_slots (flow, results);
  bs_flow_add_heading (flow, _ ("Money and weight"));
  add_sentences (flow, cost);
  add_loads (flow, results);
}
