/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pressure.h"

#include "shops.h"

#include <math.h>

/* n clamps evenly along 1500 mm. */
static void
place (BsPlan *plan, guint n, double force_n)
{
  for (guint i = 0; i < n; i++)
    bs_plan_place_clamp (plan, "clamp", 1500.0 / n * (i + 0.5), force_n, i % 2 == 0);
}

static BsPressure *
press (const BsPlan *plan, BsPressModel model)
{
  BsPressure *self = bs_pressure_new (plan, model);

  bs_pressure_explain (self);
  return self;
}

/* Heads that touch press evenly, whatever the stiffness: p = sum F / (L h) on every spot of every
 * line. 15 heads of 100 mm with 2 kN on 1500 x 80 mm: 0.25 MPa. By either form of the model. */
static void
test_touching_heads (gconstpointer model)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsPressure) self = NULL;

  ((BsClampKind *)g_ptr_array_index (plan->shop.clamps, 0))->head_width = 100.0;
  place (plan, 15, 2000.0);
  self = press (plan, (BsPressModel)GPOINTER_TO_INT (model));
  g_assert_cmpint (self->state, ==, BS_PRESSURE_OF_SET_CLAMPS);
  g_assert_cmpint (self->layout.status, ==, BS_LAYOUT_REACHED);
  g_assert_cmpuint (bs_pressure_get_n_lines (self), ==, 9);
  for (guint i = 0; i < 9; i++)
    {
      const BsPressLine *line = bs_pressure_get_line (self, i);

      g_assert_cmpfloat_with_epsilon (line->mean_mpa, 0.25, 1e-6);
      g_assert_cmpfloat_with_epsilon (line->least_mpa, 0.25, 1e-4);
      g_assert_cmpfloat_with_epsilon (line->greatest_mpa, 0.25, 1e-4);
    }
  g_assert_cmpfloat_with_epsilon (self->why.value, 0.25, 1e-4);
  /* 2 kN on a head of 100 x 40 mm. */
  g_assert_cmpfloat_with_epsilon (self->head_stress_mpa, 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (self->open_length, 0.0, 1e-9);
}

/* The mean of every line is sum F / (L h), however the force is spread; what 20 clamps of 6 kN come
 * to is 1 MPa. */
static void
test_means (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (4);
  g_autoptr (BsPressure) self = NULL;

  place (plan, 6, 5000.0);
  self = press (plan, BS_PRESS_MODEL_SQUEEZE);
  g_assert_cmpuint (self->press.first_course, ==, 1);
  g_assert_cmpuint (bs_pressure_get_n_lines (self), ==, 9);
  for (guint i = 0; i < 9; i++)
    g_assert_cmpfloat_with_epsilon (bs_pressure_get_line (self, i)->mean_mpa, 0.25, 1e-6);
  g_assert_cmpfloat_with_epsilon (self->layout.mean_mpa, 0.25, 1e-6);
  g_assert_cmpfloat_with_epsilon (self->layout.mean_possible_mpa, 1.0, 1e-6);
  g_assert_cmpuint (self->layout.fewest_by_force, ==, 5); /* 0.25 MPa x 0.12 m2 / 6 kN */
  g_assert_true (isnan (self->head_stress_mpa));          /* the heads bear on cauls */
  g_assert_cmpint (self->layout.status, ==, BS_LAYOUT_SHORT);
  g_assert_cmpfloat (self->below_length, >, 0.0);
}

/* The faster form against the exact one, within what docs/pressing-model.md says of it: the least
 * no more than 0.06 of the mean lower and hardly higher, the greatest up to a fifth higher. */
static void
test_faster_form (gconstpointer n)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsPressure) exact = NULL, live = NULL;
  double mean;

  slab_at (plan, 4)->bow = 1.0;
  place (plan, GPOINTER_TO_UINT (n), 5000.0);
  exact = press (plan, BS_PRESS_MODEL_SQUEEZE);
  live = press (plan, BS_PRESS_MODEL_TIMOSHENKO);
  mean = exact->layout.mean_mpa;
  g_assert_cmpfloat (live->layout.least_mpa, >, exact->layout.least_mpa - 0.06 * mean);
  g_assert_cmpfloat (live->layout.least_mpa, <, exact->layout.least_mpa + 0.01 * mean);
  g_assert_cmpfloat (live->layout.greatest_mpa, >, exact->layout.greatest_mpa);
  g_assert_cmpfloat (live->layout.greatest_mpa, <, 1.2 * exact->layout.greatest_mpa);
  g_assert_false (isnan (exact->why.low) || isnan (exact->why.high));
  g_assert_true (isnan (live->why.low) && isnan (live->why.high));
}

/* Thirty laminations: nodes 20 mm apart in the faster form; no more than a tenth of the mean from
 * those 10 mm apart. */
static void
test_many (void)
{
  g_autoptr (BsPlan) plan = slab_new (30, 1500.0, 40.0, 80.0);
  g_autoptr (BsPressure) live = NULL, quick = NULL;
  BsPressStack stack;
  g_auto (BsLayout) fine = { 0 };

  shop_set_wood (plan, 0.6, 7.0)->moe_mpa = 11000.0;
  shop_add_clamps (plan, 20, 6000.0, 1300.0, 40.0);
  place (plan, 8, 5000.0);
  live = press (plan, BS_PRESS_MODEL_TIMOSHENKO);
  quick = bs_pressure_new_quick (plan);
  stack = live->press.problem.stack;
  g_assert_cmpfloat_with_epsilon (stack.step, 20.0, 1e-12);
  g_assert_cmpint (quick->press.problem.stack.model, ==, BS_PRESS_MODEL_TIMOSHENKO);
  g_assert_cmpfloat_with_epsilon (quick->layout.least_mpa, live->layout.least_mpa, 1e-12);

  stack.step = 10.0;
  g_autoptr (BsPressing) pressing = bs_pressing_new (&stack, NULL);
  g_assert_true (bs_layout_press (&live->press.problem, pressing, live->layout.clamps,
                                  live->layout.n_clamps, &fine, NULL));
  g_assert_cmpfloat_with_epsilon (live->layout.least_mpa, fine.least_mpa, 0.1 * fine.mean_mpa);
}

/* A head presses harder than the wood bears: 6 kN on 20 x 20 mm is 15 MPa, against 7. */
static void
test_crushing_head (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);
  g_autoptr (BsPressure) self = NULL;

  kind->head_width = kind->head_height = 20.0;
  place (plan, 18, 6000.0);
  self = press (plan, BS_PRESS_MODEL_SQUEEZE);
  g_assert_cmpfloat_with_epsilon (self->head_stress_mpa, 15.0, 1e-9);
  g_assert_cmpfloat (self->layout.greatest_mpa, <, 7.0);
  g_assert_cmpint (self->layout.status, ==, BS_LAYOUT_CRUSHES);
}

typedef struct
{
  const char *path;
  void (*spoil) (BsPlan *plan);
  BsPressureState state;
  gboolean has_reason;
} StateRow;

static void
leave_one (BsPlan *plan)
{
  g_array_set_size (plan->order, 1);
}

static void
sell_clamps (BsPlan *plan)
{
  g_ptr_array_set_size (plan->shop.clamps, 0);
}

static void
shorten_clamps (BsPlan *plan)
{
  ((BsClampKind *)g_ptr_array_index (plan->shop.clamps, 0))->reach = 300.0;
}

static void
place_beyond (BsPlan *plan)
{
  place (plan, 4, 3000.0);
  bs_plan_place_clamp (plan, "clamp", 1600.0, 3000.0, TRUE);
}

/* One lamination ends far left of the only clamps: no forces on its joints balance them. */
static void
cut_one_short (BsPlan *plan)
{
  BsLamination *one = g_ptr_array_index (plan->laminations, 1);
  BsLamination *copy = bs_lamination_copy (one);

  copy->length = 300.0;
  g_ptr_array_index (plan->laminations, 1) = copy;
  bs_lamination_unref (one);
  for (guint i = 0; i < 2; i++)
    bs_plan_place_clamp (plan, "clamp", 1000.0 + 200.0 * i, 3000.0, TRUE);
}

static const StateRow state_rows[] = {
  { "one-lamination", leave_one, BS_PRESSURE_NO_STACK, TRUE },
  { "no-clamps", sell_clamps, BS_PRESSURE_NO_CLAMPS, FALSE },
  { "too-short", shorten_clamps, BS_PRESSURE_TOO_SHORT, FALSE },
  { "off-the-work", place_beyond, BS_PRESSURE_OFF_WORK, TRUE },
  { "tips", cut_one_short, BS_PRESSURE_OFF_WORK, TRUE },
};

static void
test_state (gconstpointer data)
{
  const StateRow *row = data;
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsPressure) self = NULL;

  row->spoil (plan);
  self = press (plan, BS_PRESS_MODEL_TIMOSHENKO);
  g_assert_cmpint (self->state, ==, row->state);
  g_assert_cmpint (self->reason != NULL, ==, row->has_reason);
  g_assert_cmpint (self->layout.status, ==, BS_LAYOUT_NO_CLAMPS);
  g_assert_cmpuint (bs_pressure_get_n_lines (self), ==, 0);
  g_assert_true (isnan (self->why.value));
  g_assert_nonnull (self->why.explanation);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/pressure/touching-heads/squeeze",
                        GINT_TO_POINTER (BS_PRESS_MODEL_SQUEEZE), test_touching_heads);
  g_test_add_data_func ("/pressure/touching-heads/timoshenko",
                        GINT_TO_POINTER (BS_PRESS_MODEL_TIMOSHENKO), test_touching_heads);
  g_test_add_func ("/pressure/means", test_means);
  g_test_add_data_func ("/pressure/faster-form/6", GUINT_TO_POINTER (6), test_faster_form);
  g_test_add_data_func ("/pressure/faster-form/10", GUINT_TO_POINTER (10), test_faster_form);
  g_test_add_data_func ("/pressure/faster-form/15", GUINT_TO_POINTER (15), test_faster_form);
  g_test_add_func ("/pressure/many", test_many);
  g_test_add_func ("/pressure/crushing-head", test_crushing_head);
  for (gsize i = 0; i < G_N_ELEMENTS (state_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/pressure/state/", state_rows[i].path, NULL);
      g_test_add_data_func (path, &state_rows[i], test_state);
    }
  return g_test_run ();
}
