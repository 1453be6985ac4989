/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/order-plan.h"

#include "core/stack.h"
#include "core/text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

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
    .id = placed.lamination->id,
    .label = placed.lamination->label,
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

  bs_text_share (candidate.id);
  bs_text_share (candidate.label);
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
find_candidate (const BsOrderProblem *self, const BsPlan *plan, const char *id, guint *found,
                GError **error)
{
  const BsLamination *lamination = bs_plan_find_lamination (plan, id);

  for (guint i = 0; i < self->candidates->len; i++)
    if (g_strcmp0 (g_array_index (self->candidates, BsOrderCandidate, i).id, id) == 0)
      {
        *found = i;
        return TRUE;
      }
  g_set_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN,
               /* Translators: the label of a lamination. */
               _ ("%s is pinned and stands in the rack; take off its pin, bring it into the slab, "
                  "or let the rack be used."),
               lamination != NULL && lamination->label != NULL ? lamination->label : id);
  return FALSE;
}

static gboolean
add_pins (BsOrderProblem *self, const BsPlan *plan, GError **error)
{
  static const BsOrderPinKind kinds[] = {
    [BS_PIN_PLACE] = BS_ORDER_PIN_PLACE,
    [BS_PIN_NEIGHBOURS] = BS_ORDER_PIN_NEIGHBOURS,
    [BS_PIN_TOP_UP] = BS_ORDER_PIN_FACE_UP,
    [BS_PIN_UNDERSIDE_UP] = BS_ORDER_PIN_FACE_UP,
  };

  for (guint i = 0; i < plan->pins->len; i++)
    {
      const BsPin *pinned = &g_array_index (plan->pins, BsPin, i);
      BsOrderPin pin = {
        .kind = kinds[pinned->kind],
        .place = (guint)MAX (pinned->place, 0),
        .face = pinned->kind == BS_PIN_UNDERSIDE_UP ? BS_FACE_UNDERSIDE : BS_FACE_TOP,
      };

      if (!find_candidate (self, plan, pinned->lamination, &pin.candidate, error))
        return FALSE;
      if (pinned->other != NULL && !find_candidate (self, plan, pinned->other, &pin.other, error))
        return FALSE;
      g_array_append_val (self->pins, pin);
    }
  return TRUE;
}

static BsOrderProblem *
problem_new_without_pins (const BsPlan *plan, gboolean uses_rack)
{
  BsOrderProblem *self = bs_order_problem_new ();

  self->layup = plan->slab.layup;
  self->alternate_hearts = plan->slab.alternate_hearts;
  self->shows_front = plan->slab.shows_front;
  self->shows_back = plan->slab.shows_back;
  self->shows_underside = plan->slab.shows_underside;
  self->weights = bs_order_wishes_weigh (&plan->wishes);
  self->n_places = plan->order->len;
  add_candidates (self, plan, uses_rack);
  return self;
}

BsOrderProblem *
bs_order_problem_new_for_plan (const BsPlan *plan, GError **error)
{
  g_autoptr (BsOrderProblem) self = problem_new_without_pins (plan, plan->wishes.uses_rack);

  if (!add_pins (self, plan, error))
    return NULL;
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (self, error);
  return rules != NULL ? g_steal_pointer (&self) : NULL;
}

static gboolean
is_same_slab (const BsSlab *a, const BsSlab *b)
{
  return a->layup == b->layup && a->alternate_hearts == b->alternate_hearts
         && a->shows_front == b->shows_front && a->shows_back == b->shows_back
         && a->shows_underside == b->shows_underside;
}

static gboolean
are_same_wishes (const BsOrderWishes *a, const BsOrderWishes *b)
{
  return a->looks == b->looks && a->easy_planing == b->easy_planing
         && a->stays_flat == b->stays_flat && a->uses_rack == b->uses_rack;
}

static gboolean
are_same_pins (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const BsPin *pin = &g_array_index (a, BsPin, i), *other = &g_array_index (b, BsPin, i);

      if (pin->kind != other->kind || pin->place != other->place
          || !g_str_equal (pin->lamination, other->lamination)
          || g_strcmp0 (pin->other, other->other) != 0)
        return FALSE;
    }
  return TRUE;
}

/* Plans share the laminations that none of them has changed. */
static gboolean
are_same_laminations (const GPtrArray *a, const GPtrArray *b)
{
  return a->len == b->len && memcmp (a->pdata, b->pdata, a->len * sizeof (gpointer)) == 0;
}

/* In whatever order they lie. */
static gboolean
has_same_in_slab (const BsPlan *a, const BsPlan *b)
{
  if (a->order->len != b->order->len)
    return FALSE;
  for (guint i = 0; i < a->order->len; i++)
    {
      const BsPlacement *placement = &g_array_index (a->order, BsPlacement, i);
      int place = bs_plan_find_place (b, placement->lamination);
      double start = place >= 0 ? g_array_index (b->order, BsPlacement, place).start : NAN;

      if (!(start >= placement->start && start <= placement->start))
        return FALSE;
    }
  return TRUE;
}

gboolean
bs_order_is_same_problem (const BsPlan *a, const BsPlan *b)
{
  return a == b
         || (is_same_slab (&a->slab, &b->slab) && are_same_wishes (&a->wishes, &b->wishes)
             && are_same_pins (a->pins, b->pins)
             && are_same_laminations (a->laminations, b->laminations) && has_same_in_slab (a, b));
}

BsOrderPlace *
bs_order_present (const BsPlan *plan)
{
  BsOrderPlace *places = g_new (BsOrderPlace, plan->order->len);

  for (guint k = 0; k < plan->order->len; k++)
    places[k] = (BsOrderPlace){ k, g_array_index (plan->order, BsPlacement, k).orientation };
  return places;
}

BsOrderCost
bs_order_present_cost (const BsPlan *plan)
{
  g_autoptr (BsOrderProblem) problem = problem_new_without_pins (plan, FALSE);
  g_autofree BsOrderPlace *places = bs_order_present (plan);

  return bs_order_cost (problem, places, plan->order->len);
}

BsPlacement *
bs_order_get_placements (const BsOrderProblem *problem, const BsOrderResult *result)
{
  BsPlacement *placements = g_new0 (BsPlacement, result->n_places);

  for (guint k = 0; k < result->n_places; k++)
    {
      const BsOrderPlace *place = &result->places[k];
      const BsOrderCandidate *candidate
          = &g_array_index (problem->candidates, BsOrderCandidate, place->candidate);

      placements[k] = (BsPlacement){ candidate->id, place->orientation, candidate->start, NULL };
    }
  return placements;
}
