/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/order-rules.h"

#include "core/limits.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bs - order - error - quark, bs_order_error)

static const char *
name_of (const BsOrderProblem *problem, guint candidate)
{
  const BsOrderCandidate *self = &g_array_index (problem->candidates, BsOrderCandidate, candidate);

  return self->label != NULL ? self->label : self->id != NULL ? self->id : "?";
}

/* `format` is a sentence about the lamination, whose name is all that follows. */
static gboolean refuse_pin (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

static gboolean
refuse_pin (GError **error, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  g_autofree char *sentence = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN, sentence);
  return FALSE;
}

static gboolean
take_place (BsOrderRules *self, const BsOrderProblem *problem, const BsOrderPin *pin,
            GError **error)
{
  const char *name = name_of (problem, pin->candidate);
  int *place = &self->place_of[pin->candidate];
  int *candidate;

  if (pin->place >= self->n_places)
    return refuse_pin (error,
                       /* Translators: the label of a lamination; likewise below. */
                       _ ("%s is pinned to a place behind the last one; take off that pin, or put "
                          "more laminations into the slab."),
                       name);
  candidate = &self->candidate_at[pin->place];
  if (*place != BS_ORDER_NOBODY && *place != (int)pin->place)
    return refuse_pin (error, _ ("%s is pinned to two places; take off one of the two pins."),
                       name);
  if (*candidate != BS_ORDER_NOBODY && *candidate != (int)pin->candidate)
    return refuse_pin (error,
                       /* Translators: the labels of two laminations. */
                       _ ("%s and %s are pinned to the same place; take off one of the two pins."),
                       name_of (problem, (guint)*candidate), name);
  *place = (int)pin->place;
  *candidate = (int)pin->candidate;
  self->is_required[pin->candidate] = TRUE;
  self->has_places = TRUE;
  return TRUE;
}

static int *
find_free_side (BsOrderRules *self, guint candidate)
{
  int *sides = self->partners[candidate];

  return sides[0] == BS_ORDER_NOBODY ? &sides[0] : sides[1] == BS_ORDER_NOBODY ? &sides[1] : NULL;
}

static gboolean
is_in_row (const BsOrderRules *self, guint from, guint to)
{
  for (guint side = 0; side < 2; side++)
    {
      int before = (int)from, here = self->partners[from][side];
      while (here != BS_ORDER_NOBODY && here != (int)to)
        {
          int next = bs_order_rules_next_partner (self, before, here);
          before = here;
          here = next;
        }
      if (here == (int)to)
        return TRUE;
    }
  return FALSE;
}

static gboolean
take_neighbours (BsOrderRules *self, const BsOrderProblem *problem, const BsOrderPin *pin,
                 GError **error)
{
  int *side, *other_side;

  if (pin->other == pin->candidate || pin->other >= self->n_candidates)
    return refuse_pin (error, _ ("%s is pinned beside itself or beside nobody; take off that pin."),
                       name_of (problem, pin->candidate));
  if (bs_order_rules_are_partners (self, pin->candidate, pin->other))
    return TRUE;
  side = find_free_side (self, pin->candidate);
  other_side = find_free_side (self, pin->other);
  if (side == NULL || other_side == NULL)
    return refuse_pin (error,
                       _ ("%s has more than two pinned neighbours; take off one of these pins."),
                       name_of (problem, side == NULL ? pin->candidate : pin->other));
  if (is_in_row (self, pin->candidate, pin->other))
    return refuse_pin (error,
                       _ ("The pinned neighbours of %s make a ring; take off one of these pins."),
                       name_of (problem, pin->candidate));
  *side = (int)pin->other;
  *other_side = (int)pin->candidate;
  self->is_required[pin->candidate] = TRUE;
  self->is_required[pin->other] = TRUE;
  self->has_partners = TRUE;
  return TRUE;
}

static gboolean
take_face (BsOrderRules *self, const BsOrderProblem *problem, const BsOrderPin *pin, GError **error)
{
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    if (bs_orientation_face ((BsOrientation)o, BS_FACE_TOP) != pin->face)
      self->ways[pin->candidate] &= (guint8) ~(1u << o);
  if (self->ways[pin->candidate] == 0)
    return refuse_pin (error,
                       _ ("%s is pinned with more than one face up, or with one that cannot be "
                          "up; take off one of these pins."),
                       name_of (problem, pin->candidate));
  return TRUE;
}

static gboolean
take_pin (BsOrderRules *self, const BsOrderProblem *problem, const BsOrderPin *pin, GError **error)
{
  if (pin->candidate >= self->n_candidates)
    {
      g_set_error_literal (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN,
                           _ ("A pin names a lamination that is not there; take off the pin."));
      return FALSE;
    }
  switch (pin->kind)
    {
    case BS_ORDER_PIN_PLACE:
      return take_place (self, problem, pin, error);
    case BS_ORDER_PIN_NEIGHBOURS:
      return take_neighbours (self, problem, pin, error);
    case BS_ORDER_PIN_FACE_UP:
      return take_face (self, problem, pin, error);
    default:
      g_return_val_if_reached (FALSE);
    }
}

static gboolean
check_counts (const BsOrderProblem *problem, GError **error)
{
  guint n = problem->candidates->len;

  if (problem->n_places == 0)
    {
      g_set_error_literal (error, BS_ORDER_ERROR, BS_ORDER_ERROR_TOO_FEW,
                           _ ("The slab has no laminations yet; bring as many into it as it shall "
                              "have."));
      return FALSE;
    }
  if (problem->n_places > n)
    {
      g_set_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_TOO_FEW,
                   _ ("There are %u places in the slab for %u laminations to choose from; bring "
                      "laminations into the slab."),
                   problem->n_places, n);
      return FALSE;
    }
  if (n > BS_MAX_LAMINATIONS)
    {
      g_set_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_TOO_MANY,
                   _ ("There are %u laminations to choose from; at most %u are compared."), n,
                   BS_MAX_LAMINATIONS);
      return FALSE;
    }
  return TRUE;
}

static BsOrderRules *
alloc_rules (guint n_candidates, guint n_places)
{
  BsOrderRules *self = g_new0 (BsOrderRules, 1);

  self->n_candidates = n_candidates;
  self->n_places = n_places;
  self->candidate_at = g_new (int, n_places);
  self->start = g_new (int, n_places);
  self->place_of = g_new (int, n_candidates);
  self->partners = g_malloc_n (n_candidates, sizeof *self->partners);
  self->ways = g_new (guint8, n_candidates);
  self->is_required = g_new0 (gboolean, n_candidates);
  for (guint k = 0; k < n_places; k++)
    self->candidate_at[k] = self->start[k] = BS_ORDER_NOBODY;
  for (guint i = 0; i < n_candidates; i++)
    {
      self->place_of[i] = BS_ORDER_NOBODY;
      self->partners[i][0] = self->partners[i][1] = BS_ORDER_NOBODY;
      self->ways[i] = (1u << BS_N_ORIENTATIONS) - 1;
    }
  return self;
}

BsOrderRules *
bs_order_rules_new (const BsOrderProblem *problem, GError **error)
{
  g_autoptr (BsOrderRules) self = NULL;
  guint n_required = 0;

  if (!check_counts (problem, error))
    return NULL;
  self = alloc_rules (problem->candidates->len, problem->n_places);
  for (guint i = 0; i < problem->pins->len; i++)
    if (!take_pin (self, problem, &g_array_index (problem->pins, BsOrderPin, i), error))
      return NULL;
  for (guint i = 0; i < self->n_candidates; i++)
    n_required += self->is_required[i] ? 1 : 0;
  if (n_required > self->n_places)
    {
      g_set_error (
          error, BS_ORDER_ERROR, BS_ORDER_ERROR_TOO_MANY,
          _ ("%u laminations are pinned and the slab has places for %u; take off some of the "
             "pins."),
          n_required, self->n_places);
      return NULL;
    }
  if (!bs_order_rules_arrange (self))
    {
      g_set_error_literal (
          error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN,
          _ ("The pinned neighbours do not fit between the pinned places; take off "
             "some of the pins."));
      return NULL;
    }
  return g_steal_pointer (&self);
}

void
bs_order_rules_free (BsOrderRules *self)
{
  g_free (self->candidate_at);
  g_free (self->start);
  g_free (self->place_of);
  g_free (self->partners);
  g_free (self->ways);
  g_free (self->is_required);
  g_free (self);
}
