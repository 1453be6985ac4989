/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/cutting.h"

#include "core/cutting-search.h"
#include "core/limits.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bs - cutting - error - quark, bs_cutting_error)

/* Widest kerf and trim, largest allowance, mm; most boards and parts of a kind. Beyond these it is
 * a slip of the decimal point. */
#define MAX_KERF 20.0
#define MAX_TRIM 1000.0
#define MAX_ALLOWANCE 500.0
#define MAX_QUANTITY 10000

BsCutting
bs_cutting_default (void)
{
  return (BsCutting){ .kerf = 3.0, .min_offcut = 300.0, .order = BS_CUT_EITHER };
}

BsCutEffort
bs_cut_effort_default (void)
{
  return (BsCutEffort){ .seed = 1, .rounds = 400 };
}

static gboolean
is_within (double value, double least, double most)
{
  return value >= least && value <= most; /* not so for NAN */
}

/* A whole sentence on one board, part or pin, with its number, and what to do. */
static gboolean G_GNUC_PRINTF (3, 4)
    refuse (GError **error, BsCuttingError code, const char *format, ...)
{
  va_list values;

  va_start (values, format);
  g_propagate_error (error, g_error_new_valist (BS_CUTTING_ERROR, code, format, values));
  va_end (values);
  return FALSE;
}

static gboolean
check_saw (const BsCutting *self, GError **error)
{
  if (is_within (self->kerf, 0.0, MAX_KERF) && is_within (self->trim_end, 0.0, MAX_TRIM)
      && is_within (self->trim_edge, 0.0, MAX_TRIM)
      && is_within (self->allow_length, 0.0, MAX_ALLOWANCE)
      && is_within (self->allow_width, 0.0, MAX_ALLOWANCE)
      && is_within (self->min_offcut, 0.0, bs_limits.board_length.most)
      && self->order >= BS_CUT_CROSSCUT_FIRST && self->order <= BS_CUT_EITHER)
    return TRUE;
  g_set_error_literal (
      error, BS_CUTTING_ERROR, BS_CUTTING_ERROR_INPUT,
      _ ("The kerf, a trim, an allowance or the shortest offcut is negative or far "
         "too large. Check their units."));
  return FALSE;
}

static gboolean
check_stock (const BsCutting *self, guint index, GError **error)
{
  const BsCutStock *stock = &self->stock[index];

  if (!bs_limit_contains (&bs_limits.board_length, stock->length)
      || !bs_limit_contains (&bs_limits.board_width, stock->width)
      || !bs_limit_contains (&bs_limits.board_thickness, stock->thickness)
      || !is_within (stock->straighten, 0.0, stock->width))
    return refuse (error, BS_CUTTING_ERROR_INPUT,
                   _ ("Board %u has a size that no board has. Check its length, width and "
                      "thickness and their units."),
                   index + 1);
  if (stock->price_minor < 0 || (double)stock->price_minor > bs_limits.price.most)
    return refuse (error, BS_CUTTING_ERROR_INPUT,
                   _ ("The price of board %u is negative or far too large. Check the currency and "
                      "the decimal mark."),
                   index + 1);
  if (stock->supply < BS_CUT_UNLIMITED || stock->supply > MAX_QUANTITY)
    return refuse (error, BS_CUTTING_ERROR_INPUT,
                   _ ("The number of boards like board %u is negative or far too large. Leave it "
                      "open when it is not limited."),
                   index + 1);
  if (stock->n_defects > BS_CUT_MAX_DEFECTS)
    return refuse (error, BS_CUTTING_ERROR_INPUT,
                   _ ("Board %u has more than %d defects. Draw those that lie close together as "
                      "one."),
                   index + 1, BS_CUT_MAX_DEFECTS);
  if (stock->n_defects > 0 && (stock->supply < 0 || stock->supply > 1))
    return refuse (error, BS_CUTTING_ERROR_INPUT,
                   _ ("Board %u has defects of its own, so it must be entered as a single board."),
                   index + 1);
  for (guint k = 0; k < stock->n_defects; k++)
    {
      const BsCutDefect *defect = &stock->defects[k];
      if (!(defect->x_from <= defect->x_to && defect->y_from <= defect->y_to)
          || !is_within (defect->x_from, -stock->length, stock->length)
          || !is_within (defect->y_from, -stock->width, stock->width)
          || !is_within (defect->x_to, 0.0, 2.0 * stock->length)
          || !is_within (defect->y_to, 0.0, 2.0 * stock->width))
        return refuse (error, BS_CUTTING_ERROR_INPUT,
                       _ ("A defect of board %u ends before it begins, or lies off the board. "
                          "Measure it from the left end and the lower edge."),
                       index + 1);
    }
  return TRUE;
}

static gboolean
fits_somewhere (const BsCutting *self, guint index)
{
  const BsCutPart *part = &self->parts[index];

  for (guint i = 0; i < self->n_stock; i++)
    {
      const BsCutStock *stock = &self->stock[i];
      if (bs_cutting_suits (self, i, index) && stock->supply != 0 && stock->wood == part->wood
          && part->thickness <= stock->thickness
          && part->length + self->allow_length <= stock->length - 2.0 * self->trim_end
          && part->width + self->allow_width <= bs_cutting_room_across (self, stock))
        return TRUE;
    }
  return FALSE;
}

static int
count_pins (const BsCutting *self, guint part)
{
  int n = 0;

  for (guint k = 0; k < self->n_pins; k++)
    n += self->pins[k].part == part;
  return n;
}

static gboolean
check_part (const BsCutting *self, guint index, GError **error)
{
  const BsCutPart *part = &self->parts[index];

  if (!is_within (part->length, 1.0, bs_limits.board_length.most)
      || !is_within (part->width, 1.0, bs_limits.board_width.most)
      || !is_within (part->thickness, 0.0, bs_limits.board_thickness.most) || part->quantity < 0
      || part->quantity > MAX_QUANTITY || part->clear_faces < 0 || part->clear_faces > 2
      || part->clear_edges < 0 || part->clear_edges > 2)
    return refuse (error, BS_CUTTING_ERROR_INPUT,
                   _ ("Part %u has a size or a quantity that cannot be. Check its length, width, "
                      "thickness and quantity and their units."),
                   index + 1);
  if (part->quantity > count_pins (self, index) && !fits_somewhere (self, index))
    return refuse (error, BS_CUTTING_ERROR_PART,
                   _ ("No board of its wood is long, wide and thick enough for part %u with its "
                      "allowances and the trims. Add a larger board, or glue the part up from "
                      "smaller ones."),
                   index + 1);
  return TRUE;
}

static gboolean
is_same_board (const BsCutPin *a, const BsCutPin *b)
{
  return a->stock == b->stock && a->copy == b->copy;
}

static gboolean
check_pin (const BsCutting *self, guint index, GError **error)
{
  const BsCutPin *pin = &self->pins[index];
  const BsCutStock *stock;
  guint n_on_board = 0;

  if (pin->stock >= self->n_stock || pin->part >= self->n_parts)
    return refuse (error, BS_CUTTING_ERROR_PIN,
                   _ ("Pinned piece %u names a board or a part that does not exist."), index + 1);
  stock = &self->stock[pin->stock];
  if (stock->supply != BS_CUT_UNLIMITED && (int)MIN (pin->copy, MAX_QUANTITY) >= stock->supply)
    return refuse (error, BS_CUTTING_ERROR_PIN,
                   _ ("Pinned piece %u lies on one board more than there are of that kind."),
                   index + 1);
  if (!is_within (pin->x, 0.0,
                  stock->length - self->parts[pin->part].length - self->allow_length + 1e-6)
      || !is_within (pin->y, 0.0,
                     stock->width - self->parts[pin->part].width - self->allow_width + 1e-6))
    return refuse (error, BS_CUTTING_ERROR_PIN,
                   _ ("Pinned piece %u lies over the end or the edge of its board. Move it."),
                   index + 1);
  for (guint k = 0; k < self->n_pins; k++)
    n_on_board += is_same_board (&self->pins[k], pin);
  if (count_pins (self, pin->part) > self->parts[pin->part].quantity
      || n_on_board + stock->n_defects > 64)
    return refuse (error, BS_CUTTING_ERROR_PIN,
                   _ ("With pinned piece %u more parts are pinned than are wanted, or than one "
                      "board can hold. Release some."),
                   index + 1);
  return TRUE;
}

gboolean
bs_cutting_check (const BsCutting *self, GError **error)
{
  if (!check_saw (self, error))
    return FALSE;
  for (guint i = 0; i < self->n_stock; i++)
    if (!check_stock (self, i, error))
      return FALSE;
  for (guint i = 0; i < self->n_parts; i++)
    if (!check_part (self, i, error))
      return FALSE;
  for (guint i = 0; i < self->n_pins; i++)
    if (!check_pin (self, i, error))
      return FALSE;
  return TRUE;
}

typedef struct
{
  const BsCutModel *model;
  const BsCutEffort *effort;
} Report;

static BsCutPlan *
describe_outcome (const BsCutModel *model, const BsCutOutcome *outcome)
{
  BsCutPlan *plan = bs_cut_solution_describe (outcome->best, model);
  gint64 paid = plan->price_minor - outcome->best->price; /* boards with pinned parts */

  if (plan->n_missing > 0)
    return plan;
  plan->bound_minor = paid + MIN (outcome->bound, outcome->best->price);
  plan->is_price_least = plan->price_minor <= plan->bound_minor;
  plan->is_waste_least = outcome->is_best;
  plan->is_best = outcome->is_best;
  return plan;
}

static void
report_better (const BsCutOutcome *outcome, gpointer data)
{
  const Report *report = data;
  g_autoptr (BsCutPlan) plan = NULL;

  if (report->effort->better == NULL)
    return;
  plan = describe_outcome (report->model, outcome);
  report->effort->better (plan, report->effort->data);
}

BsCutPlan *
bs_cutting_solve (const BsCutting *self, const BsCutEffort *effort, GError **error)
{
  g_autoptr (BsCutModel) model = NULL;
  BsCutEffort usual = bs_cut_effort_default ();
  BsCutOutcome outcome;
  BsCutPlan *plan;
  Report report;

  if (effort == NULL)
    effort = &usual;
  if (!bs_cutting_check (self, error))
    return NULL;
  model = bs_cut_model_new (self, error);
  if (model == NULL)
    return NULL;
  report = (Report){ model, effort };
  bs_cut_search (model, effort, &outcome, report_better, &report);
  plan = describe_outcome (model, &outcome);
  bs_cut_solution_free (outcome.best);
  return plan;
}

void
bs_cut_plan_free (BsCutPlan *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->boards);
  g_array_unref (self->slices);
  g_array_unref (self->pieces);
  g_free (self->missing);
  g_free (self);
}

double
bs_cut_plan_gap (const BsCutPlan *self)
{
  if (self->price_minor <= 0)
    return 0.0;
  return 1.0 - (double)self->bound_minor / (double)self->price_minor;
}
