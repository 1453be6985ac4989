/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-cost.h"

G_BEGIN_DECLS

#define BS_ORDER_ERROR (bs_order_error_quark ())
GQuark bs_order_error_quark (void);

typedef enum
{
  BS_ORDER_ERROR_TOO_FEW,  /* laminations for the places */
  BS_ORDER_ERROR_TOO_MANY, /* laminations for this program, or pinned ones for the places */
  BS_ORDER_ERROR_PIN,      /* a pin that cannot be kept, alone or with the others */
} BsOrderError;

#define BS_ORDER_NOBODY (-1)

/* The pins of a problem in the form that the searches ask for. Every order that keeps them is
 * found; none that breaks them is proposed. */
typedef struct
{
  guint n_candidates, n_places;
  int *candidate_at;     /* [n_places] candidate that is pinned there, or BS_ORDER_NOBODY */
  int *place_of;         /* [n_candidates] place that it is pinned to, or BS_ORDER_NOBODY */
  int (*partners)[2];    /* [n_candidates] those that must stand beside it, or BS_ORDER_NOBODY */
  guint8 *ways;          /* [n_candidates] bit o is set when orientation o is allowed */
  gboolean *is_required; /* [n_candidates] pinned to a place or a neighbour: must be used */
  gboolean has_places, has_partners;
  int *start; /* [n_places] an arrangement of those that are required, else BS_ORDER_NOBODY */
} BsOrderRules;

/* NULL with an error when the pins contradict one another. */
BsOrderRules *bs_order_rules_new (const BsOrderProblem *problem, GError **error);
void bs_order_rules_free (BsOrderRules *self);

static inline gboolean
bs_order_rules_allow (const BsOrderRules *self, guint place, guint candidate)
{
  int pinned = self->candidate_at[place];

  return pinned == BS_ORDER_NOBODY ? self->place_of[candidate] == BS_ORDER_NOBODY
                                   : pinned == (int)candidate;
}

static inline gboolean
bs_order_rules_are_partners (const BsOrderRules *self, guint a, guint b)
{
  return self->partners[a][0] == (int)b || self->partners[a][1] == (int)b;
}

/* The partner of `here` on the side away from `before`; from the end of a row of partners, where
 * nobody stands before, the only one. */
static inline int
bs_order_rules_next_partner (const BsOrderRules *self, int before, int here)
{
  const int *sides = self->partners[here];

  return sides[0] == before ? sides[1] : sides[0];
}

/* Fills start, which is empty. FALSE when the rows of partners do not fit between the pinned
 * places. */
gboolean bs_order_rules_arrange (BsOrderRules *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOrderRules, bs_order_rules_free)

G_END_DECLS
