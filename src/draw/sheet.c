/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>

#include "core/units.h"
#include "draw/lettering.h"

/* Points. */
#define HEADER 36.0
#define WIDTH_FOR_TWO_COLUMNS 560.0

struct _BsSheet
{
  BsResults *results;
  GHashTable *photos;   /* or NULL */
  double width, height; /* under the header */
  guint n_section_pages;
  BsPressure *pressure; /* a page of its own when there are pressures */
  BsFlattenOdds odds;
  GPtrArray *flows; /* BsFlow: the pages after those, subject by subject */
};

static BsFlow *
add_flow (BsSheet *self, guint most_columns)
{
  guint n_columns = self->width >= WIDTH_FOR_TWO_COLUMNS ? most_columns : 1;
  BsFlow *flow = bs_flow_new (self->width, self->height, n_columns, BS_SHEET_TEXT);

  g_ptr_array_add (self->flows, flow);
  return flow;
}

static void
add_flattening (BsSheet *self, const BsForecast *forecast)
{
  g_autoptr (BsForecast) own = NULL;

  if (forecast == NULL)
    {
      own = bs_forecast_new (self->results->stack->plan, NULL);
      forecast = own;
    }
  self->odds = forecast->odds;
  bs_sheet_add_flattening (add_flow (self, 2), self->results, forecast);
}

static void
add_schedule (BsSheet *self, const BsSchedule *schedule)
{
  g_autoptr (BsSchedule) own = NULL;

  if (schedule == NULL)
    {
      own = bs_schedule_new (self->results->stack->plan, BS_SCHEDULE_BY_RULE, NULL);
      schedule = own;
    }
  bs_sheet_add_schedule (add_flow (self, 2), schedule);
}

static void
add_buying (BsSheet *self, const BsPurchase *purchase)
{
  const BsPlan *plan = self->results->stack->plan;
  g_autoptr (BsPurchase) own = NULL;

  if (plan->offers->len == 0)
    return;
  if (purchase == NULL)
    {
      own = bs_purchase_new (plan, BS_PURCHASE_QUICK_ROUNDS, NULL);
      purchase = own;
    }
  bs_sheet_add_buying (add_flow (self, 1), purchase);
}

BsSheet *
bs_sheet_new (BsResults *results, const BsSheetOptions *options)
{
  const BsSheetStudies *studies = &options->studies;
  BsSheet *self = g_new0 (BsSheet, 1);

  self->results = bs_results_ref (results);
  if (studies->photos != NULL)
    self->photos = g_hash_table_ref (studies->photos);
  self->width = options->width;
  self->height = options->height - HEADER;
  self->flows = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_flow_free);
  add_buying (self, studies->purchase);
  if (results->stack->plan->boards->len > 0)
    bs_sheet_add_boards (add_flow (self, 1), results->stack->plan);
  if (results->stack->plan->cuts->len > 0)
    bs_sheet_add_cutting (add_flow (self, 1), results->stack->plan);
  add_flattening (self, studies->forecast);
  if (bs_sheet_front_is_small (results, &self->odds, self->width, self->height))
    self->n_section_pages = bs_sheet_count_section_pages (results, self->width, self->height);
  self->pressure = bs_pressure_new_quick (results->stack->plan);
  add_schedule (self, studies->schedule);
  bs_sheet_add_lists (add_flow (self, 2), results, studies->photo_problems);
  if (results->stack->n > 0)
    bs_sheet_add_wood (add_flow (self, 2), results);
  if (options->with_workings)
    bs_sheet_add_workings (add_flow (self, 2), results);
  return self;
}

void
bs_sheet_free (BsSheet *self)
{
  bs_results_unref (self->results);
  g_clear_pointer (&self->photos, g_hash_table_unref);
  bs_pressure_free (self->pressure);
  g_ptr_array_unref (self->flows);
  g_free (self);
}

static guint
count_pressing_pages (const BsSheet *self)
{
  return bs_pressure_get_n_lines (self->pressure) > 0 ? 1 : 0;
}

guint
bs_sheet_get_n_pages (const BsSheet *self)
{
  guint n = 1 + self->n_section_pages + count_pressing_pages (self);

  for (guint i = 0; i < self->flows->len; i++)
    n += bs_flow_get_n_pages (g_ptr_array_index (self->flows, i));
  return n;
}

/* "Glue-up diagram: 2100 × 620 × 90 mm, on edge". */
static char *
describe_slab (const BsPlan *plan)
{
  const BsSlab *slab = &plan->slab;
  g_autofree char *length = bs_units_format (slab->length, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *width = bs_units_format (slab->width, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *thickness = bs_units_format (slab->thickness, BS_QUANTITY_LENGTH, plan->units);

  if (slab->layup == BS_LAYUP_ON_FLAT)
    /* Translators: the length, width and thickness of the finished slab. */
    return g_strdup_printf (_ ("Glue-up diagram: %s × %s × %s wanted, laminations on flat"), length,
                            width, thickness);
  /* Translators: the length, width and thickness of the finished slab. */
  return g_strdup_printf (_ ("Glue-up diagram: %s × %s × %s wanted, laminations on edge"), length,
                          width, thickness);
}

static void
draw_header (const BsSheet *self, guint page, cairo_t *cr)
{
  const BsPlan *plan = self->results->stack->plan;
  BsLettering large = { .size = 16.0, .is_bold = TRUE }, plain = { .size = 10.0 };
  const char *name = plan->name != NULL && plan->name[0] != '\0' ? plan->name : _ ("Unnamed slab");
  g_autofree char *slab = describe_slab (plan);
  g_autofree char *number
      = g_strdup_printf (_ ("Page %u of %u"), page + 1, bs_sheet_get_n_pages (self));
  double number_width, number_height, least = 0.5 * large.size;

  bs_lettering_measure (cr, number, &plain, &number_width, &number_height);
  large.size
      = MAX (bs_lettering_fit (cr, name, &large, self->width - number_width - 12.0, 0.0), least);
  bs_color_set (&bs_palette_paper ()->ink, cr);
  bs_lettering_draw (cr, name, &large, 0.0, 16.0, 0.0, 0.85);
  bs_lettering_draw (cr, slab, &plain, 0.0, 31.0, 0.0, 1.0);
  bs_lettering_draw (cr, number, &plain, self->width, 16.0, 1.0, 0.85);
  cairo_set_line_width (cr, 0.5);
  cairo_move_to (cr, 0.0, HEADER - 4.0);
  cairo_line_to (cr, self->width, HEADER - 4.0);
  cairo_stroke (cr);
}

/* Draws a page of the lists behind the pictures. */
static void
draw_list_page (const BsSheet *self, guint page, cairo_t *cr)
{
  guint i = 0;

  for (; page >= bs_flow_get_n_pages (g_ptr_array_index (self->flows, i)); i++)
    page -= bs_flow_get_n_pages (g_ptr_array_index (self->flows, i));
  bs_flow_draw_page (g_ptr_array_index (self->flows, i), page, cr);
}

/* One after another: the front, the section in rows, the pressing, the lists. */
static void
draw_content (const BsSheet *self, guint page, cairo_t *cr)
{
  if (page == 0)
    {
      bs_sheet_draw_front (cr, self->results, &self->odds, self->photos, self->width, self->height);
      return;
    }
  page -= 1;
  if (page < self->n_section_pages)
    {
      bs_sheet_draw_section_page (cr, self->results, self->width, self->height, page);
      return;
    }
  page -= self->n_section_pages;
  if (page < count_pressing_pages (self))
    bs_sheet_draw_pressing_page (cr, self->results, self->pressure, self->width, self->height);
  else
    draw_list_page (self, page - count_pressing_pages (self), cr);
}

void
bs_sheet_draw_page (const BsSheet *self, guint page, cairo_t *cr)
{
  g_return_if_fail (page < bs_sheet_get_n_pages (self));

  cairo_save (cr);
  draw_header (self, page, cr);
  cairo_translate (cr, 0.0, HEADER);
  draw_content (self, page, cr);
  cairo_restore (cr);
}
