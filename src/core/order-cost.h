/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* What an order of laminations costs, and why: docs/order-model.md.
 *
 * Costs are whole thousandths of a point, so that sums do not depend on the order of adding. Each
 * term of each lamination and of each joint is rounded by itself. A value that is not known costs
 * nothing. */

typedef enum
{
  /* of a lamination where it stands */
  BS_ORDER_TERM_SHOW_FACE,   /* defects on its top: severity x area, cm2 */
  BS_ORDER_TERM_OTHER_FACES, /* the same on the underside and the outer faces, where they show */
  BS_ORDER_TERM_PLANING,     /* its top planes cleanly the other way: 1 */
  /* of two neighbours */
  BS_ORDER_TERM_HEARTS,    /* hearts look the same way: 1 */
  BS_ORDER_TERM_COLOUR,    /* difference of lightness, L* */
  BS_ORDER_TERM_BOW,       /* bows that do not balance, mm beyond the tolerance */
  BS_ORDER_TERM_OPEN_ENDS, /* bows that keep the ends of the joint apart, mm */
  BS_ORDER_TERM_CROOK,     /* step that the crooks make, mm */
  BS_ORDER_TERM_MOISTURE,  /* difference, % beyond the tolerance */
  BS_ORDER_TERM_MEETING,   /* defects of both in one place of the joint: severity x mm */
} BsOrderTerm;

#define BS_N_ORDER_TERMS 10
#define BS_ORDER_POINT 1000

/* More than any order costs, and more than twice of it still fits an integer. To keep that so, a
 * term of one lamination or joint counts no more than its share of half of this: 1100 points in a
 * slab of 24, beyond all that is seen in a shop. */
#define BS_ORDER_NEVER (1 << 29)

/* The name of a term and a sentence that explains it: message ids. */
const char *bs_order_term_name (BsOrderTerm term);
const char *bs_order_term_explanation (BsOrderTerm term);

typedef struct
{
  double points[BS_N_ORDER_TERMS]; /* for each unit of the term */
  double bow_tolerance;            /* mm */
  double moisture_tolerance_pct;
  double meeting_margin; /* mm along the length */
} BsOrderWeights;

BsOrderWeights bs_order_weights_default (void);

typedef struct
{
  BsFace face;
  double x_from, x_to; /* mm, in the slab when the lamination is not turned end for end */
  double across;       /* mm, its size across the face */
  double severity;
} BsOrderDefect;

/* What the cost needs to know of a lamination, as marked: as in BsLamination and BsPlaced. */
typedef struct
{
  GRefString *id, *label; /* may be NULL */
  double start, length;   /* mm: where it lies along the slab, whichever end comes first */
  double bow, crook;
  double lightness, moisture_pct;
  int heart_side;
  int run_out_top, run_out_underside;
  GArray *defects; /* BsOrderDefect */
} BsOrderCandidate;

/* What the person has fixed. The numbers are those of candidates and places, both from 0. */
typedef enum
{
  BS_ORDER_PIN_PLACE,      /* the candidate stands at this place */
  BS_ORDER_PIN_NEIGHBOURS, /* the candidate stands beside the other one, on either side of it */
  BS_ORDER_PIN_FACE_UP,    /* this face of the candidate, top or underside, is up if it is used */
} BsOrderPinKind;

typedef struct
{
  BsOrderPinKind kind;
  guint candidate;
  guint place;
  guint other;
  BsFace face;
} BsOrderPin;

typedef struct
{
  guint n_places; /* laminations in the slab: 1 to the number of candidates */
  BsLayup layup;
  gboolean alternate_hearts;
  gboolean shows_front, shows_back, shows_underside;
  BsOrderWeights weights;
  GArray *candidates; /* BsOrderCandidate */
  GArray *pins;       /* BsOrderPin */
} BsOrderProblem;

/* Without candidates; default weights, hearts alternate, only the show face shows. */
BsOrderProblem *bs_order_problem_new (void);
void bs_order_problem_free (BsOrderProblem *self);

/* Which candidate stands at a place, and how it is turned. */
typedef struct
{
  guint candidate;
  BsOrientation orientation;
} BsOrderPlace;

typedef gint32 BsOrderTerms[BS_N_ORDER_TERMS];

/* Adds what a lamination costs inside the slab, what it costs besides at its front and at its back
 * end, and what a joint costs, to the terms. plane: the direction in which the show face will be
 * planed, +1 towards the right end, -1 towards the left. */
void bs_order_cost_inside (const BsOrderProblem *self, BsOrderPlace place, int plane,
                           BsOrderTerms terms);
void bs_order_cost_front (const BsOrderProblem *self, BsOrderPlace place, BsOrderTerms terms);
void bs_order_cost_back (const BsOrderProblem *self, BsOrderPlace place, BsOrderTerms terms);
void bs_order_cost_joint (const BsOrderProblem *self, BsOrderPlace left, BsOrderPlace right,
                          BsOrderTerms terms);

gint32 bs_order_terms_sum (const BsOrderTerms terms);

typedef struct
{
  gint32 total;
  BsOrderTerms terms; /* add up to the total */
  int plane;
} BsOrderCost;

/* The cost of any order, pins or not, planed the way that costs less (+1 when both cost the same).
 */
BsOrderCost bs_order_cost (const BsOrderProblem *self, const BsOrderPlace *places, guint n);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOrderProblem, bs_order_problem_free)

G_END_DECLS
