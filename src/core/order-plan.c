/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/order-plan.h"

#include "core/stack.h"
#include "core/text.h"

#include <glib/gi18n-lib.h>

static GArray *
read_defects (const BsPlaced *placed)
{
  const GArray *defects = placed->lamination->defects;
  GArray *read = g_array_sized_new (FALSE, TRUE, sizeof (BsOrderDefect), defects->len);

  for (guint i = 0; i < defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (defects, BsDefect, i);
      BsPlacedDefect there = bs_placed_defect (placed, defect);
      BsOrderDefect entry = {
        .face = defect->face,
        .x_from = there.x_from,
        .x_to = there.x_to,
        .across = defect->across_to - defect->across_from,
        .severity = defect->severity,
      };
      g_array_append_val (read, entry);
    }
  return read;
}

/* A lamination lying as it was marked, at the start that it has in the slab. */
static void
add_candidate (BsOrderProblem *self, const BsPlan *plan, GRefString *id, double start)
{
  BsPlacement as_marked = { id, BS_ORIENTATION_AS_MARKED, start };
  BsPlaced placed = bs_placed_new (plan, &as_marked, 0.0);
  BsOrderCandidate candidate = {
    .start = start,
    .length = placed.length,
    .bow = placed.bow,
    .crook = placed.crook,
    .lightness = placed.lamination->lightness,
    .moisture_pct = placed.lamination->moisture_pct,
    .heart_side = placed.heart_side,
    .run_out_top = placed.run_out_top,
    .run_out_underside = placed.run_out_underside,
    .defects = read_defects (&placed),
  };

  bs_text_set (&candidate.id, id);
  bs_text_set (&candidate.label, placed.lamination->label);
  g_array_append_val (self->candidates, candidate);
}

static void
add_candidates (BsOrderProblem *self, const BsPlan *plan, gboolean uses_rack)
{
  for (guint k = 0; k < plan->order->len; k++)
    {
      const BsPlacement *placement = &g_array_index (plan->order, BsPlacement, k);
      add_candidate (self, plan, placement->lamination, placement->start);
    }
  for (guint i = 0; uses_rack && i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (plan->laminations, i);
      if (bs_plan_find_place (plan, lamination->id) < 0)
        add_candidate (self, plan, lamination->id, 0.0);
    }
}

static gboolean
find_candidate (const BsOrderProblem *self, const char *id, guint *found, GError **error)
{
  for (guint i = 0; i < self->candidates->len; i++)
    if (g_strcmp0 (g_array_index (self->candidates, BsOrderCandidate, i).id, id) == 0)
      {
        *found = i;
        return TRUE;
      }
  g_set_error_literal (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN,
                       _ ("A pin names a lamination that cannot be used; remove the pin, or let "
                          "the laminations in the rack be used."));
  return FALSE;
}

static gboolean
add_pins (BsOrderProblem *self, const BsOrderRequest *request, GError **error)
{
  for (guint i = 0; i < request->n_pins; i++)
    {
      const BsOrderPlanPin *wish = &request->pins[i];
      BsOrderPin pin = { .kind = wish->kind, .place = wish->place, .face = wish->face };

      if (!find_candidate (self, wish->lamination, &pin.candidate, error))
        return FALSE;
      if (wish->kind == BS_ORDER_PIN_NEIGHBOURS
          && !find_candidate (self, wish->other, &pin.other, error))
        return FALSE;
      g_array_append_val (self->pins, pin);
    }
  return TRUE;
}

BsOrderProblem *
bs_order_problem_new_for_plan (const BsPlan *plan, const BsOrderRequest *request, GError **error)
{
  g_autoptr (BsOrderProblem) self = bs_order_problem_new ();

  self->layup = plan->slab.layup;
  self->alternate_hearts = plan->slab.alternate_hearts;
  self->shows_front = plan->slab.shows_front;
  self->shows_back = plan->slab.shows_back;
  self->shows_underside = plan->slab.shows_underside;
  self->weights = bs_order_wishes_weigh (&request->wishes);
  self->n_places = request->n_places != 0 ? request->n_places : plan->order->len;
  add_candidates (self, plan, request->uses_rack);
  if (!add_pins (self, request, error))
    return NULL;
  return g_steal_pointer (&self);
}

BsOrderPlace *
bs_order_present (const BsPlan *plan)
{
  BsOrderPlace *places = g_new (BsOrderPlace, plan->order->len);

  for (guint k = 0; k < plan->order->len; k++)
    places[k] = (BsOrderPlace){ k, g_array_index (plan->order, BsPlacement, k).orientation };
  return places;
}

void
bs_order_place_in_plan (const BsOrderProblem *problem, const BsOrderResult *result, BsPlan *plan)
{
  g_array_set_size (plan->order, 0);
  for (guint k = 0; k < result->n_places; k++)
    {
      const BsOrderPlace *place = &result->places[k];
      const BsOrderCandidate *candidate
          = &g_array_index (problem->candidates, BsOrderCandidate, place->candidate);
      bs_plan_insert_placement (plan, (int)k, candidate->id, place->orientation, candidate->start);
    }
}
