/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-cost.h"

#include "checks/order-random.h"

#include <math.h>
#include <string.h>

/* Two laminations that cost nothing in any order: all the same, and nothing to say about them. */
static BsOrderProblem *
new_pair (void)
{
  BsOrderProblem *problem = bs_order_problem_new ();

  problem->n_places = 2;
  for (guint i = 0; i < 2; i++)
    {
      BsOrderCandidate candidate = { .length = 1000.0, .lightness = 60.0, .moisture_pct = 8.0 };
      candidate.defects = g_array_new (FALSE, TRUE, sizeof (BsOrderDefect));
      g_array_append_val (problem->candidates, candidate);
    }
  return problem;
}

static BsOrderCandidate *
candidate (BsOrderProblem *problem, guint i)
{
  return &g_array_index (problem->candidates, BsOrderCandidate, i);
}

static void
add_defect (BsOrderProblem *problem, guint i, BsFace face, double x_from, double x_to)
{
  BsOrderDefect defect = { face, x_from, x_to, 20.0, 0.5 };
  g_array_append_val (candidate (problem, i)->defects, defect);
}

/* What is set up in the pair for one row, and the cost of that term with both as marked, with the
 * second one turned in each way; by hand from the weights in docs/order-model.md. */
typedef struct
{
  const char *path;
  void (*set_up) (BsOrderProblem *problem);
  BsOrderTerm term;
  gint32 cost[BS_N_ORIENTATIONS];
} Row;

/* 30 mm x 20 mm, severity 0.5, on the second one's top: 0.5 x 6 cm2 = 3 points while its top is up
 */
static void
set_show_face (BsOrderProblem *problem)
{
  add_defect (problem, 1, BS_FACE_TOP, 100.0, 130.0);
}

/* the same on its underside, which shows: up when turned over, and then it is the show face's */
static void
set_underside (BsOrderProblem *problem)
{
  problem->shows_underside = TRUE;
  add_defect (problem, 1, BS_FACE_UNDERSIDE, 100.0, 130.0);
}

/* on its right face, which is the slab's back as long as left stays left */
static void
set_back (BsOrderProblem *problem)
{
  problem->shows_front = problem->shows_back = TRUE;
  add_defect (problem, 1, BS_FACE_RIGHT, 100.0, 130.0);
}

/* the first planes towards the right, the second towards the left on top and either way below: 4
 * points as marked, none when end for end makes both agree or the underside is up */
static void
set_planing (BsOrderProblem *problem)
{
  candidate (problem, 0)->run_out_top = 1;
  candidate (problem, 1)->run_out_top = -1;
}

/* both hearts to the right: 3 points unless a turn brings the second one's to the left */
static void
set_hearts (BsOrderProblem *problem)
{
  candidate (problem, 0)->heart_side = candidate (problem, 1)->heart_side = 1;
}

/* on flat the heart looks up or down, and end for end does not change that */
static void
set_hearts_flat (BsOrderProblem *problem)
{
  problem->layup = BS_LAYUP_ON_FLAT;
  set_hearts (problem);
}

/* 4.5 of L* x 0.5 */
static void
set_colour (BsOrderProblem *problem)
{
  candidate (problem, 1)->lightness = 55.5;
}

/* bows of 1.0 and 0.5 the same way: 2 x 1.5 points, against one another 2 x 0.5 */
static void
set_bow (BsOrderProblem *problem)
{
  candidate (problem, 0)->bow = 1.0;
  candidate (problem, 1)->bow = 0.5;
}

/* weighed 1, with bow 2 to the right against 0.5: the middles touch 1.5 before the ends do; against
 * 0.5 to the left 2.5 */
static void
set_open_ends (BsOrderProblem *problem)
{
  problem->weights.points[BS_ORDER_TERM_OPEN_ENDS] = 1.0;
  candidate (problem, 0)->bow = 2.0;
  candidate (problem, 1)->bow = 0.5;
}

/* crooks of 1 and 0.5, a point each mm of difference: 0.5, and 1.5 when turned over */
static void
set_crook (BsOrderProblem *problem)
{
  candidate (problem, 0)->crook = 1.0;
  candidate (problem, 1)->crook = 0.5;
}

/* 1.7 % apart, of which 1 is tolerated: 2 x 0.7 */
static void
set_moisture (BsOrderProblem *problem)
{
  candidate (problem, 1)->moisture_pct = 9.7;
}

/* 100-130 against 120-150 on the faces that meet: 10 in common + 10 margin, x 0.5 x 0.05; left
 * faces of the second come there when left goes to the right; end for end mirrors 120-150 to
 * 850-880 */
static void
set_meeting (BsOrderProblem *problem)
{
  add_defect (problem, 0, BS_FACE_RIGHT, 100.0, 130.0);
  add_defect (problem, 1, BS_FACE_LEFT, 120.0, 150.0);
}

/* the mirror image of 120-150 in a lamination 1000 long that starts at 20 is 890-920 */
static void
set_meeting_mirrored (BsOrderProblem *problem)
{
  add_defect (problem, 0, BS_FACE_RIGHT, 900.0, 930.0);
  candidate (problem, 1)->start = 20.0;
  add_defect (problem, 1, BS_FACE_RIGHT, 120.0, 150.0);
}

static const Row rows[] = {
  { "show-face", set_show_face, BS_ORDER_TERM_SHOW_FACE, { 3000, 0, 3000, 0 } },
  { "underside", set_underside, BS_ORDER_TERM_OTHER_FACES, { 3000, 0, 3000, 0 } },
  { "back", set_back, BS_ORDER_TERM_OTHER_FACES, { 3000, 0, 0, 3000 } },
  { "planing", set_planing, BS_ORDER_TERM_PLANING, { 4000, 0, 0, 0 } },
  { "hearts-on-edge", set_hearts, BS_ORDER_TERM_HEARTS, { 3000, 0, 0, 3000 } },
  { "hearts-on-flat", set_hearts_flat, BS_ORDER_TERM_HEARTS, { 3000, 0, 3000, 0 } },
  { "colour", set_colour, BS_ORDER_TERM_COLOUR, { 2250, 2250, 2250, 2250 } },
  { "bow", set_bow, BS_ORDER_TERM_BOW, { 3000, 1000, 1000, 3000 } },
  { "open-ends", set_open_ends, BS_ORDER_TERM_OPEN_ENDS, { 1500, 2500, 2500, 1500 } },
  { "crook", set_crook, BS_ORDER_TERM_CROOK, { 500, 1500, 500, 1500 } },
  { "moisture", set_moisture, BS_ORDER_TERM_MOISTURE, { 1400, 1400, 1400, 1400 } },
  { "meeting", set_meeting, BS_ORDER_TERM_MEETING, { 500, 0, 0, 0 } },
  { "meeting-end-for-end", set_meeting_mirrored, BS_ORDER_TERM_MEETING, { 0, 0, 750, 0 } },
};

static void
test_term (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsOrderProblem) problem = new_pair ();

  row->set_up (problem);
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    {
      BsOrderPlace places[] = { { 0, BS_ORIENTATION_AS_MARKED }, { 1, (BsOrientation)o } };
      BsOrderCost cost = bs_order_cost (problem, places, 2);
      g_assert_cmpint (cost.terms[row->term], ==, row->cost[o]);
      g_assert_cmpint (bs_order_terms_sum (cost.terms), ==, cost.total);
    }
}

static void
test_hearts_free (void)
{
  g_autoptr (BsOrderProblem) problem = new_pair ();
  BsOrderPlace places[] = { { 0, BS_ORIENTATION_AS_MARKED }, { 1, BS_ORIENTATION_AS_MARKED } };

  set_hearts (problem);
  problem->alternate_hearts = FALSE;
  g_assert_cmpint (bs_order_cost (problem, places, 2).total, ==, 0);
}

/* Nothing is known of the second one. */
static void
test_unknown (void)
{
  g_autoptr (BsOrderProblem) problem = new_pair ();
  BsOrderPlace places[] = { { 0, BS_ORIENTATION_AS_MARKED }, { 1, BS_ORIENTATION_OVER } };
  BsOrderCandidate *second = candidate (problem, 1);

  set_hearts (problem);
  second->bow = second->crook = second->lightness = second->moisture_pct = NAN;
  second->heart_side = 0;
  g_clear_pointer (&second->defects, g_array_unref);
  g_assert_cmpint (bs_order_cost (problem, places, 2).total, ==, 0);
}

/* However bad a lamination is, sums stay far from the end of the integers. */
static void
test_capped (void)
{
  g_autoptr (BsOrderProblem) problem = new_pair ();
  BsOrderPlace places[] = { { 0, BS_ORIENTATION_AS_MARKED }, { 1, BS_ORIENTATION_AS_MARKED } };

  candidate (problem, 0)->bow = 1e12;
  candidate (problem, 0)->crook = 1e12;
  candidate (problem, 0)->lightness = 1e12;
  g_assert_cmpint (bs_order_cost (problem, places, 2).total, >, 0);
  g_assert_cmpint (bs_order_cost (problem, places, 2).total, <=, BS_ORDER_NEVER / 2);
}

/* Turned end for end as a whole, every cost is the same and the planing direction is the other. */
static void
test_whole_slab_turned (void)
{
  BsRandom random = bs_random_init (11);

  for (guint i = 0; i < 200; i++)
    {
      guint n = 1 + bs_random_below (&random, 12);
      g_autoptr (BsOrderProblem) problem = order_random_problem (&random, n, n);
      g_autofree BsOrderPlace *places = order_random_order (&random, problem);
      g_autofree BsOrderPlace *turned = g_new (BsOrderPlace, n);
      BsOrderCost cost, other;

      problem->shows_back = problem->shows_front;
      for (guint k = 0; k < n; k++)
        {
          turned[k] = places[n - 1 - k];
          turned[k].orientation ^= BS_ORIENTATION_END_FOR_END;
        }
      cost = bs_order_cost (problem, places, n);
      other = bs_order_cost (problem, turned, n);
      for (guint term = 0; term < BS_N_ORDER_TERMS; term++)
        g_assert_cmpint (other.terms[term], ==, cost.terms[term]);
    }
}

static void
test_every_term_is_named (void)
{
  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    {
      g_assert_cmpuint (strlen (bs_order_term_name ((BsOrderTerm)i)), >, 0);
      g_assert_true (g_str_has_suffix (bs_order_term_explanation ((BsOrderTerm)i), "."));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/order-cost/term/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_term);
    }
  g_test_add_func ("/order-cost/hearts-free", test_hearts_free);
  g_test_add_func ("/order-cost/unknown", test_unknown);
  g_test_add_func ("/order-cost/capped", test_capped);
  g_test_add_func ("/order-cost/whole-slab-turned", test_whole_slab_turned);
  g_test_add_func ("/order-cost/every-term-is-named", test_every_term_is_named);
  return g_test_run ();
}
