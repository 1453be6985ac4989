/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten.h"

#include "core/flatten-faces.h"
#include "slabs.h"

#include <math.h>

#define TOLERANCE 1e-6 /* mm: what the contract of the solution allows */

static BsFlattenResult
flatten (const BsPlan *plan)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenResult result;

  bs_flatten (stack, &result);
  if (stack->n > 0 && !isnan (result.thickness))
    g_assert_cmpfloat (result.gap, <=, TOLERANCE);
  return result;
}

static double
between (GRand *random, double low, double high)
{
  return g_rand_double_range (random, low, high);
}

/* A slab of warped laminations, some of them short and set in from the left. */
static BsPlan *
warped_slab (GRand *random, BsLayup layup)
{
  BsPlan *plan = slab_new ((guint)g_rand_int_range (random, 1, 14), 2000.0, 40.0, 90.0);

  plan->slab.layup = layup;
  plan->slab.allowance = between (random, 0.0, 1.0);
  plan->slab.alignment = (BsAlignment)g_rand_int_range (random, 0, BS_N_ALIGNMENTS);
  for (guint i = 0; i < plan->order->len; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      BsPlacement *placement = &g_array_index (plan->order, BsPlacement, i);
      lamination->length = between (random, 1200.0, 2000.0);
      lamination->thickness = between (random, 20.0, 60.0);
      lamination->height = between (random, 85.0, 95.0);
      lamination->crook = between (random, -4.0, 4.0);
      lamination->cup = between (random, -2.0, 2.0);
      lamination->twist = between (random, -5.0, 5.0);
      lamination->taper = between (random, -2.0, 2.0);
      placement->start = 2000.0 - lamination->length;
      placement->orientation = (BsOrientation)g_rand_int_range (random, 0, BS_N_ORIENTATIONS);
    }
  return plan;
}

/* Nothing sticks out of the rough slab anywhere on a grid, and no more comes off than is said. */
static void
check_fits (const BsPlan *plan)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenResult result;
  BsFaces faces;

  bs_flatten (stack, &result);
  g_assert_true (bs_faces_init (&faces, stack));
  for (guint i = 0; i < faces.n; i++)
    for (int j = 0; j <= 40; j++)
      for (int k = 0; k <= 8; k++)
        {
          const BsFaceStrip *strip = &faces.strips[i];
          double xi = j / 40.0, eta = k / 8.0;
          double plane = result.slope_x * (strip->x + xi * strip->length)
                         + result.slope_y * (strip->y + eta * strip->width) + result.offset;
          double off_top = bs_face_strip_top (strip, xi, eta) - plane - result.thickness;
          double off_underside = plane - bs_face_strip_underside (strip, xi, eta);
          g_assert_cmpfloat (off_top, >=, result.top_least - 1e-9);
          g_assert_cmpfloat (off_top, <=, result.top_most + 1e-9);
          g_assert_cmpfloat (off_underside, >=, result.underside_least - 1e-9);
          g_assert_cmpfloat (off_underside, <=, result.underside_most + 1e-9);
        }
  bs_faces_clear (&faces);
}

static void
test_fits (gconstpointer data)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random, (BsLayup)GPOINTER_TO_INT (data));
      check_fits (plan);
    }
}

/* A spot that is named does touch: both faces meet the slab there, but for the allowance. */
static void
test_touches (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (12);

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random, BS_LAYUP_ON_EDGE);
      g_autoptr (BsStack) stack = bs_stack_new (plan);
      BsFlattenResult result;
      BsFaces faces;
      int n_top = 0, n_underside = 0;

      bs_flatten (stack, &result);
      g_assert_true (bs_faces_init (&faces, stack));
      for (guint k = 0; k < result.n_touches; k++)
        {
          const BsTouch *touch = &result.touches[k];
          BsFaceSpot spot = { touch->x, touch->y, 0.0, touch->place, touch->is_top };
          bs_faces_update_spot (&faces, &spot);
          double plane = result.slope_x * spot.x + result.slope_y * spot.y + result.offset;
          double gap = touch->is_top ? spot.z - plane - result.thickness : plane - spot.z;
          /* The thickness is exact to TOLERANCE; a spot with a hundredth of the weight to 100 times
           * that. */
          g_assert_cmpfloat_with_epsilon (gap, plan->slab.allowance, 100.0 * TOLERANCE);
          n_top += touch->is_top ? 1 : 0;
          n_underside += touch->is_top ? 0 : 1;
        }
      g_assert_cmpint (n_top, >=, 1);
      g_assert_cmpint (n_underside, >=, 1);
      bs_faces_clear (&faces);
    }
}

/* Turns the whole slab: each lamination is turned, and the order runs the other way when the turn
 * changes front and back. */
static BsPlan *
turned (const BsPlan *plan, BsOrientation turn, double length)
{
  BsPlan *copy = bs_plan_copy (plan);
  guint n = copy->order->len;

  for (guint i = 0; i < n; i++)
    {
      BsPlacement *placement = &g_array_index (copy->order, BsPlacement, i);
      const BsLamination *lamination = bs_plan_find_lamination (plan, placement->lamination);
      placement->orientation ^= turn;
      if (bs_orientation_sign_x (turn) < 0)
        placement->start = length - placement->start - lamination->length;
    }
  for (guint i = 0; bs_orientation_sign_y (turn) < 0 && i < n / 2; i++)
    {
      BsPlacement *front = &g_array_index (copy->order, BsPlacement, i);
      BsPlacement *back = &g_array_index (copy->order, BsPlacement, n - 1 - i);
      BsPlacement held = *front;
      *front = *back;
      *back = held;
    }
  return copy;
}

static void
test_turned_end_for_end (gconstpointer data)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (13);

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random, (BsLayup)GPOINTER_TO_INT (data));
      g_autoptr (BsPlan) other = turned (plan, BS_ORIENTATION_END_FOR_END, 2000.0);
      BsFlattenResult one = flatten (plan), two = flatten (other);
      g_assert_cmpfloat_with_epsilon (one.thickness, two.thickness, 2.0 * TOLERANCE);
    }
}

/* Glued upside down on a bench after the whole slab was turned over: the same slab. Without taper,
 * as only then both narrow faces of a lamination are alike. */
static void
test_turned_over (gconstpointer data)
{
  BsOrientation turn = (BsOrientation)GPOINTER_TO_INT (data);
  g_autoptr (GRand) random = g_rand_new_with_seed (14);

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random, BS_LAYUP_ON_EDGE);
      for (guint k = 0; k < plan->order->len; k++)
        slab_at (plan, k)->taper = 0.0;
      plan->slab.alignment = BS_ALIGNMENT_UNDERSIDES_DOWN;
      g_autoptr (BsPlan) over = turned (plan, turn, 2000.0);
      over->slab.alignment = BS_ALIGNMENT_SHOW_FACES_DOWN;
      g_assert_cmpfloat_with_epsilon (flatten (plan).thickness, flatten (over).thickness,
                                      2.0 * TOLERANCE);
    }
}

/* More wood on any lamination never makes the slab thinner. */
static void
test_more_height (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (15);

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random, BS_LAYUP_ON_EDGE);
      plan->slab.alignment = BS_ALIGNMENT_UNDERSIDES_DOWN;
      double before = flatten (plan).thickness;
      guint place = (guint)g_rand_int_range (random, 0, (int)plan->order->len);
      BsLamination *lamination = slab_at (plan, place);
      double height = lamination->height + between (random, 0.0, 2.0);
      lamination->twist *= height / lamination->height; /* the same angle on a wider face */
      lamination->height = height;
      g_assert_cmpfloat (flatten (plan).thickness, >=, before - TOLERANCE);
    }
}

/* A slab of one lamination less is never thinner. */
static void
test_fewer_laminations (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (16);

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random, BS_LAYUP_ON_EDGE);
      plan->slab.alignment = BS_ALIGNMENT_UNDERSIDES_DOWN;
      double before = flatten (plan).thickness;
      if (plan->order->len < 2)
        continue;
      g_array_remove_index (plan->order, plan->order->len - 1);
      g_assert_cmpfloat (flatten (plan).thickness, >=, before - TOLERANCE);
    }
}

/* Perfect laminations: no tilt, nothing but the allowance comes off. */
static void
test_perfect (void)
{
  g_autoptr (BsPlan) plan = slab_new (5, 1500.0, 40.0, 80.0);
  plan->slab.allowance = 0.75;
  BsFlattenResult result = flatten (plan);

  g_assert_cmpfloat_with_epsilon (result.thickness, 78.5, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (result.slope_x, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (result.slope_y, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (result.offset, 0.75, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (result.top_most, 0.75, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (result.underside_most, 0.75, TOLERANCE);
}

/* A slab that narrows along its length can lie with its underside anywhere between flat and tilted
 * by the taper of another: the least tilt is shown, which here is none. */
static void
test_least_tilt (void)
{
  g_autoptr (BsPlan) plan = slab_new (5, 1500.0, 40.0, 80.0);

  for (guint i = 0; i < 5; i++)
    slab_at (plan, i)->taper = 4.0;
  BsFlattenResult result = flatten (plan);
  g_assert_cmpfloat_with_epsilon (result.thickness, 80.0, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (result.slope_x, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (result.top_most, 4.0, TOLERANCE);
}

static void
test_empty (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  BsFlattenResult result = flatten (plan);

  g_assert_true (isnan (result.thickness));
  g_assert_cmpuint (result.n_touches, ==, 0);
}

static void
test_without_size (void)
{
  g_autoptr (BsPlan) plan = slab_new (3, 1500.0, 40.0, 80.0);

  slab_at (plan, 1)->height = NAN;
  g_assert_true (isnan (flatten (plan).thickness));
}

/* Warp that nobody measured counts as none. */
static void
test_warp_unknown (void)
{
  g_autoptr (BsPlan) plan = slab_new (3, 1500.0, 40.0, 80.0);

  slab_at (plan, 1)->crook = NAN;
  slab_at (plan, 2)->twist = NAN;
  g_assert_cmpfloat_with_epsilon (flatten (plan).thickness, 80.0, TOLERANCE);
}

static void
test_nothing_left (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 2400.0, 40.0, 10.0);

  plan->slab.alignment = BS_ALIGNMENT_ENDS_FLUSH;
  slab_at (plan, 0)->crook = 9.0;
  slab_at (plan, 1)->crook = -9.0;
  g_assert_cmpfloat_with_epsilon (flatten (plan).thickness, 0.0, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/flatten/fits/on-edge", GINT_TO_POINTER (BS_LAYUP_ON_EDGE), test_fits);
  g_test_add_data_func ("/flatten/fits/on-flat", GINT_TO_POINTER (BS_LAYUP_ON_FLAT), test_fits);
  g_test_add_func ("/flatten/touches", test_touches);
  g_test_add_data_func ("/flatten/end-for-end/on-edge", GINT_TO_POINTER (BS_LAYUP_ON_EDGE),
                        test_turned_end_for_end);
  g_test_add_data_func ("/flatten/end-for-end/on-flat", GINT_TO_POINTER (BS_LAYUP_ON_FLAT),
                        test_turned_end_for_end);
  g_test_add_data_func ("/flatten/over", GINT_TO_POINTER (BS_ORIENTATION_OVER), test_turned_over);
  g_test_add_data_func ("/flatten/over-and-end", GINT_TO_POINTER (BS_ORIENTATION_OVER_AND_END),
                        test_turned_over);
  g_test_add_func ("/flatten/more-height", test_more_height);
  g_test_add_func ("/flatten/fewer-laminations", test_fewer_laminations);
  g_test_add_func ("/flatten/perfect", test_perfect);
  g_test_add_func ("/flatten/least-tilt", test_least_tilt);
  g_test_add_func ("/flatten/empty", test_empty);
  g_test_add_func ("/flatten/without-size", test_without_size);
  g_test_add_func ("/flatten/warp-unknown", test_warp_unknown);
  g_test_add_func ("/flatten/nothing-left", test_nothing_left);
  return g_test_run ();
}
