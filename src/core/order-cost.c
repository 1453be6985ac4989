/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/order-cost.h"

#include "core/text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const struct
{
  const char *name;
  const char *explanation;
  double points;
} term_table[BS_N_ORDER_TERMS] = {
  [BS_ORDER_TERM_SHOW_FACE] = {
    N_ ("Defects on the show face"),
    N_ ("The area of each defect that lies on the show face, counted by how bad it is."),
    1.0,
  },
  [BS_ORDER_TERM_OTHER_FACES] = {
    N_ ("Defects on other faces that show"),
    N_ ("The same for the front, the back and the underside, where they will be seen."),
    1.0,
  },
  [BS_ORDER_TERM_PLANING] = {
    N_ ("Laminations that plane the wrong way"),
    N_ ("Laminations whose run-out asks for planing against the direction of the others."),
    4.0,
  },
  [BS_ORDER_TERM_HEARTS] = {
    N_ ("Hearts that look the same way"),
    N_ ("Neighbours whose heart sides look the same way, so that their cupping adds up."),
    3.0,
  },
  [BS_ORDER_TERM_COLOUR] = {
    N_ ("Steps of colour"),
    N_ ("The difference of lightness between neighbours."),
    0.5,
  },
  [BS_ORDER_TERM_BOW] = {
    N_ ("Bows that do not balance"),
    N_ ("Neighbours that spring the same way; equal bows against one another keep each other "
        "straight."),
    2.0,
  },
  [BS_ORDER_TERM_OPEN_ENDS] = {
    N_ ("Joints that open at the ends"),
    N_ ("Neighbours whose middles touch first, so that the clamps must close the ends."),
    0.0,
  },
  [BS_ORDER_TERM_CROOK] = {
    N_ ("Steps from crook"),
    N_ ("How far the middles of neighbours stand off from each other upwards; it is planed away."),
    1.0,
  },
  [BS_ORDER_TERM_MOISTURE] = {
    N_ ("Different moisture"),
    N_ ("Neighbours that will shrink or swell by different amounts, which strains their joint."),
    2.0,
  },
  [BS_ORDER_TERM_MEETING] = {
    N_ ("Defects that meet in a joint"),
    N_ ("Defects of both neighbours at the same spot of their joint, where glue holds badly."),
    0.05,
  },
};

const char *
bs_order_term_name (BsOrderTerm term)
{
  return term_table[term].name;
}

const char *
bs_order_term_explanation (BsOrderTerm term)
{
  return term_table[term].explanation;
}

BsOrderWeights
bs_order_weights_default (void)
{
  BsOrderWeights self = { .moisture_tolerance_pct = 1.0, .meeting_margin = 10.0 };

  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    self.points[i] = term_table[i].points;
  return self;
}

static void
clear_candidate (gpointer data)
{
  BsOrderCandidate *candidate = data;
  bs_text_clear (&candidate->id);
  bs_text_clear (&candidate->label);
  g_clear_pointer (&candidate->defects, g_array_unref);
}

BsOrderProblem *
bs_order_problem_new (void)
{
  BsOrderProblem *self = g_new0 (BsOrderProblem, 1);

  self->layup = BS_LAYUP_ON_EDGE;
  self->alternate_hearts = TRUE;
  self->weights = bs_order_weights_default ();
  self->candidates = g_array_new (FALSE, TRUE, sizeof (BsOrderCandidate));
  g_array_set_clear_func (self->candidates, clear_candidate);
  self->pins = g_array_new (FALSE, TRUE, sizeof (BsOrderPin));
  return self;
}

void
bs_order_problem_free (BsOrderProblem *self)
{
  g_array_unref (self->candidates);
  g_array_unref (self->pins);
  g_free (self);
}

static const BsOrderCandidate *
candidate_at (const BsOrderProblem *self, BsOrderPlace place)
{
  return &g_array_index (self->candidates, BsOrderCandidate, place.candidate);
}

/* A negative amount and one that is not known (NAN) cost nothing. */
static void
add_amount (const BsOrderProblem *self, BsOrderTerms terms, BsOrderTerm term, double amount)
{
  double cost = floor (BS_ORDER_POINT * self->weights.points[term] * amount + 0.5);
  double share = BS_N_ORDER_TERMS * MAX (self->n_places, 1u);
  double most = floor (BS_ORDER_NEVER / 2.0 / share);

  if (cost > 0.0)
    terms[term] += (gint32)MIN (cost, most);
}

/* Severity x area (cm2) of the defects on the face of the slab that the lamination makes there. */
static double
sum_defects (const BsOrderCandidate *candidate, BsOrientation orientation, BsFace place)
{
  BsFace face = bs_orientation_face (orientation, place);
  double sum = 0.0;

  for (guint i = 0; candidate->defects != NULL && i < candidate->defects->len; i++)
    {
      const BsOrderDefect *defect = &g_array_index (candidate->defects, BsOrderDefect, i);
      if (defect->face == face)
        sum += defect->severity * (defect->x_to - defect->x_from) * defect->across / 100.0;
    }
  return sum;
}

static int
turn_run_out (const BsOrderCandidate *candidate, BsOrientation orientation)
{
  gboolean is_upright = bs_orientation_face (orientation, BS_FACE_TOP) == BS_FACE_TOP;

  return bs_orientation_sign_x (orientation)
         * (is_upright ? candidate->run_out_top : candidate->run_out_underside);
}

void
bs_order_cost_inside (const BsOrderProblem *self, BsOrderPlace place, int plane, BsOrderTerms terms)
{
  const BsOrderCandidate *candidate = candidate_at (self, place);
  int run_out = turn_run_out (candidate, place.orientation);

  add_amount (self, terms, BS_ORDER_TERM_SHOW_FACE,
              sum_defects (candidate, place.orientation, BS_FACE_TOP));
  if (self->shows_underside)
    add_amount (self, terms, BS_ORDER_TERM_OTHER_FACES,
                sum_defects (candidate, place.orientation, BS_FACE_UNDERSIDE));
  if (run_out == -plane)
    add_amount (self, terms, BS_ORDER_TERM_PLANING, 1.0);
}

void
bs_order_cost_front (const BsOrderProblem *self, BsOrderPlace place, BsOrderTerms terms)
{
  if (self->shows_front)
    add_amount (self, terms, BS_ORDER_TERM_OTHER_FACES,
                sum_defects (candidate_at (self, place), place.orientation, BS_FACE_LEFT));
}

void
bs_order_cost_back (const BsOrderProblem *self, BsOrderPlace place, BsOrderTerms terms)
{
  if (self->shows_back)
    add_amount (self, terms, BS_ORDER_TERM_OTHER_FACES,
                sum_defects (candidate_at (self, place), place.orientation, BS_FACE_RIGHT));
}

static void
find_extent (const BsOrderCandidate *candidate, BsOrientation orientation,
             const BsOrderDefect *defect, double *from, double *to)
{
  gboolean ends_change = bs_orientation_sign_x (orientation) < 0;
  double ends = 2.0 * candidate->start + candidate->length;

  *from = ends_change ? ends - defect->x_to : defect->x_from;
  *to = ends_change ? ends - defect->x_from : defect->x_to;
}

/* The lesser severity x the length in common, margin included, over all pairs of defects that look
 * at each other across the joint. */
static double
sum_meetings (const BsOrderProblem *self, BsOrderPlace left, BsOrderPlace right)
{
  const BsOrderCandidate *a = candidate_at (self, left), *b = candidate_at (self, right);
  BsFace face_a = bs_orientation_face (left.orientation, BS_FACE_RIGHT);
  BsFace face_b = bs_orientation_face (right.orientation, BS_FACE_LEFT);
  double sum = 0.0;

  for (guint i = 0; a->defects != NULL && b->defects != NULL && i < a->defects->len; i++)
    {
      const BsOrderDefect *p = &g_array_index (a->defects, BsOrderDefect, i);
      double p_from, p_to;

      if (p->face != face_a)
        continue;
      find_extent (a, left.orientation, p, &p_from, &p_to);
      for (guint j = 0; j < b->defects->len; j++)
        {
          const BsOrderDefect *q = &g_array_index (b->defects, BsOrderDefect, j);
          double q_from, q_to;

          if (q->face != face_b)
            continue;
          find_extent (b, right.orientation, q, &q_from, &q_to);
          sum += MIN (p->severity, q->severity)
                 * MAX (0.0,
                        MIN (p_to, q_to) - MAX (p_from, q_from) + self->weights.meeting_margin);
        }
    }
  return sum;
}

static int
turn_heart (const BsOrderProblem *self, BsOrderPlace place)
{
  int sign = self->layup == BS_LAYUP_ON_EDGE ? bs_orientation_sign_y (place.orientation)
                                             : bs_orientation_sign_z (place.orientation);

  return sign * candidate_at (self, place)->heart_side;
}

void
bs_order_cost_joint (const BsOrderProblem *self, BsOrderPlace left, BsOrderPlace right,
                     BsOrderTerms terms)
{
  const BsOrderWeights *weights = &self->weights;
  const BsOrderCandidate *a = candidate_at (self, left), *b = candidate_at (self, right);
  int heart = turn_heart (self, left);
  double bow_a = bs_orientation_sign_y (left.orientation) * a->bow;
  double bow_b = bs_orientation_sign_y (right.orientation) * b->bow;
  double crook_a = bs_orientation_sign_z (left.orientation) * a->crook;
  double crook_b = bs_orientation_sign_z (right.orientation) * b->crook;

  if (self->alternate_hearts && heart != 0 && heart == turn_heart (self, right))
    add_amount (self, terms, BS_ORDER_TERM_HEARTS, 1.0);
  add_amount (self, terms, BS_ORDER_TERM_COLOUR, fabs (a->lightness - b->lightness));
  add_amount (self, terms, BS_ORDER_TERM_BOW, fabs (bow_a + bow_b) - weights->bow_tolerance);
  add_amount (self, terms, BS_ORDER_TERM_OPEN_ENDS, bow_a - bow_b);
  add_amount (self, terms, BS_ORDER_TERM_CROOK, fabs (crook_a - crook_b));
  add_amount (self, terms, BS_ORDER_TERM_MOISTURE,
              fabs (a->moisture_pct - b->moisture_pct) - weights->moisture_tolerance_pct);
  add_amount (self, terms, BS_ORDER_TERM_MEETING, sum_meetings (self, left, right));
}

gint32
bs_order_terms_sum (const BsOrderTerms terms)
{
  gint32 sum = 0;

  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    sum += terms[i];
  return sum;
}

BsOrderCost
bs_order_cost (const BsOrderProblem *self, const BsOrderPlace *places, guint n)
{
  BsOrderCost costs[] = { { .plane = 1 }, { .plane = -1 } };

  for (guint c = 0; c < G_N_ELEMENTS (costs); c++)
    {
      for (guint k = 0; k < n; k++)
        bs_order_cost_inside (self, places[k], costs[c].plane, costs[c].terms);
      for (guint k = 0; k + 1 < n; k++)
        bs_order_cost_joint (self, places[k], places[k + 1], costs[c].terms);
      if (n > 0)
        {
          bs_order_cost_front (self, places[0], costs[c].terms);
          bs_order_cost_back (self, places[n - 1], costs[c].terms);
        }
      costs[c].total = bs_order_terms_sum (costs[c].terms);
    }
  return costs[1].total < costs[0].total ? costs[1] : costs[0];
}
