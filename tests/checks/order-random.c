/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/order-random.h"

/* A whole multiple of step from -n steps to n steps. */
static double
draw_step (BsRandom *random, guint n, double step)
{
  return step * ((double)bs_random_below (random, 2 * n + 1) - n);
}

static int
draw_sign (BsRandom *random)
{
  return (int)bs_random_below (random, 3) - 1;
}

static GArray *
draw_defects (BsRandom *random)
{
  static const double severities[] = { 0.2, 0.5, 1.0, 2.0 };
  GArray *defects = g_array_new (FALSE, TRUE, sizeof (BsOrderDefect));
  guint n = bs_random_below (random, 5);

  for (guint i = 0; i < n; i++)
    {
      BsOrderDefect defect = {
        .face = (BsFace)bs_random_below (random, BS_N_FACES),
        .x_from = 5.0 * bs_random_below (random, 225),
        .across = 5.0 * (1 + bs_random_below (random, 4)),
        .severity = severities[bs_random_below (random, G_N_ELEMENTS (severities))],
      };
      defect.x_to = defect.x_from + 5.0 * (2 + bs_random_below (random, 11));
      g_array_append_val (defects, defect);
    }
  return defects;
}

BsOrderProblem *
order_random_problem (BsRandom *random, guint n_candidates, guint n_places)
{
  BsOrderProblem *problem = bs_order_problem_new ();

  problem->n_places = n_places;
  problem->shows_front = bs_random_below (random, 3) == 0;
  problem->shows_back = bs_random_below (random, 3) == 0;
  for (guint i = 0; i < n_candidates; i++)
    {
      BsOrderCandidate candidate = {
        .length = 1200.0,
        .bow = draw_step (random, 3, 0.5),
        .crook = draw_step (random, 2, 0.5),
        .lightness = 50.0 + draw_step (random, 10, 0.5) + draw_step (random, 10, 0.5),
        .moisture_pct = 8.0 + draw_step (random, 10, 0.1) + draw_step (random, 10, 0.1),
        .heart_side = draw_sign (random),
        .run_out_top = draw_sign (random),
        .run_out_underside = draw_sign (random),
        .defects = draw_defects (random),
      };
      g_array_append_val (problem->candidates, candidate);
    }
  return problem;
}

void
order_random_pins (BsRandom *random, BsOrderProblem *problem, guint n_pins)
{
  guint n = problem->candidates->len;

  for (guint i = 0; i < n_pins; i++)
    {
      BsOrderPin pin = {
        .kind = (BsOrderPinKind)bs_random_below (random, 3),
        .candidate = bs_random_below (random, n),
        .place = bs_random_below (random, problem->n_places),
        .other = bs_random_below (random, n),
        .face = bs_random_below (random, 2) == 0 ? BS_FACE_TOP : BS_FACE_UNDERSIDE,
      };
      g_array_append_val (problem->pins, pin);
    }
}

BsOrderPlace *
order_random_order (BsRandom *random, const BsOrderProblem *problem)
{
  guint n = problem->candidates->len;
  g_autofree guint *left = g_new (guint, n);
  BsOrderPlace *places = g_new (BsOrderPlace, problem->n_places);

  for (guint i = 0; i < n; i++)
    left[i] = i;
  for (guint k = 0; k < problem->n_places; k++)
    {
      guint drawn = bs_random_below (random, n);
      places[k].candidate = left[drawn];
      places[k].orientation = (BsOrientation)bs_random_below (random, BS_N_ORIENTATIONS);
      left[drawn] = left[--n];
    }
  return places;
}

static int
find_place (const BsOrderProblem *problem, const BsOrderPlace *places, guint candidate)
{
  for (guint k = 0; k < problem->n_places; k++)
    if (places[k].candidate == candidate)
      return (int)k;
  return -1;
}

static void
assert_keeps (const BsOrderProblem *problem, const BsOrderPlace *places, const BsOrderPin *pin)
{
  int place = find_place (problem, places, pin->candidate);

  switch (pin->kind)
    {
    case BS_ORDER_PIN_PLACE:
      g_assert_cmpint (place, ==, (int)pin->place);
      break;
    case BS_ORDER_PIN_NEIGHBOURS:
      g_assert_cmpint (place, >=, 0);
      g_assert_cmpint (ABS (place - find_place (problem, places, pin->other)), ==, 1);
      break;
    case BS_ORDER_PIN_FACE_UP:
      if (place >= 0)
        g_assert_cmpint (bs_orientation_face (places[place].orientation, BS_FACE_TOP), ==,
                         pin->face);
      break;
    default:
      g_assert_not_reached ();
    }
}

void
order_assert_keeps_pins (const BsOrderProblem *problem, const BsOrderPlace *places)
{
  for (guint k = 0; k < problem->n_places; k++)
    {
      g_assert_cmpuint (places[k].candidate, <, problem->candidates->len);
      g_assert_cmpint (find_place (problem, places, places[k].candidate), ==, (int)k);
    }
  for (guint i = 0; i < problem->pins->len; i++)
    assert_keeps (problem, places, &g_array_index (problem->pins, BsOrderPin, i));
}
