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

static gboolean
keeps (const BsOrderProblem *problem, const BsOrderPlace *places, const BsOrderPin *pin)
{
  int place = find_place (problem, places, pin->candidate);
  int other = find_place (problem, places, pin->other);

  switch (pin->kind)
    {
    case BS_ORDER_PIN_PLACE:
      return place == (int)pin->place;
    case BS_ORDER_PIN_NEIGHBOURS:
      return place >= 0 && other >= 0 && ABS (place - other) == 1;
    case BS_ORDER_PIN_FACE_UP:
      return place < 0 || bs_orientation_face (places[place].orientation, BS_FACE_TOP) == pin->face;
    default:
      g_return_val_if_reached (FALSE);
    }
}

gboolean
order_keeps_pins (const BsOrderProblem *problem, const BsOrderPlace *places)
{
  for (guint k = 0; k < problem->n_places; k++)
    if (places[k].candidate >= problem->candidates->len
        || find_place (problem, places, places[k].candidate) != (int)k)
      return FALSE;
  for (guint i = 0; i < problem->pins->len; i++)
    if (!keeps (problem, places, &g_array_index (problem->pins, BsOrderPin, i)))
      return FALSE;
  return TRUE;
}

gint32
order_try_all (const BsOrderProblem *problem)
{
  guint n_nodes = problem->candidates->len * BS_N_ORIENTATIONS, n_rows = 1;
  BsOrderPlace places[4];
  gint32 least = G_MAXINT32;

  g_assert_cmpuint (problem->n_places, <=, G_N_ELEMENTS (places));
  for (guint k = 0; k < problem->n_places; k++)
    n_rows *= n_nodes;
  for (guint row = 0; row < n_rows; row++)
    {
      guint rest = row;
      for (guint k = 0; k < problem->n_places; k++)
        {
          guint node = rest % n_nodes;
          places[k].candidate = node / BS_N_ORIENTATIONS;
          places[k].orientation = (BsOrientation)(node % BS_N_ORIENTATIONS);
          rest /= n_nodes;
        }
      if (order_keeps_pins (problem, places))
        least = MIN (least, bs_order_cost (problem, places, problem->n_places).total);
    }
  return least;
}
