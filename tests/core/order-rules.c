/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-rules.h"

#define PLACE(i, k)                                                                                \
  {                                                                                                \
    .kind = BS_ORDER_PIN_PLACE, .candidate = (i), .place = (k)                                     \
  }
#define BESIDE(i, j)                                                                               \
  {                                                                                                \
    .kind = BS_ORDER_PIN_NEIGHBOURS, .candidate = (i), .other = (j)                                \
  }
#define FACE(i, f)                                                                                 \
  {                                                                                                \
    .kind = BS_ORDER_PIN_FACE_UP, .candidate = (i), .face = (f)                                    \
  }

/* Pins on n of m laminations, and whether an order can keep them all. */
typedef struct
{
  const char *path;
  guint n_candidates, n_places;
  BsOrderPin pins[6];
  guint n_pins;
  int error; /* BsOrderError, or -1 */
} Row;

static const Row rows[] = {
  { "none", 3, 3, { { 0 } }, 0, -1 },
  { "no-places", 3, 0, { { 0 } }, 0, BS_ORDER_ERROR_TOO_FEW },
  { "more-places-than-laminations", 3, 4, { { 0 } }, 0, BS_ORDER_ERROR_TOO_FEW },
  { "more-laminations-than-are-compared", 501, 4, { { 0 } }, 0, BS_ORDER_ERROR_TOO_MANY },
  { "first-and-last", 4, 4, { PLACE (2, 0), PLACE (1, 3) }, 2, -1 },
  { "said-twice", 4, 4, { PLACE (2, 0), PLACE (2, 0) }, 2, -1 },
  { "two-places", 4, 4, { PLACE (2, 0), PLACE (2, 1) }, 2, BS_ORDER_ERROR_PIN },
  { "two-at-one-place", 4, 4, { PLACE (2, 0), PLACE (1, 0) }, 2, BS_ORDER_ERROR_PIN },
  { "behind-the-last-place", 4, 3, { PLACE (2, 3) }, 1, BS_ORDER_ERROR_PIN },
  { "nobody", 4, 4, { PLACE (4, 0) }, 1, BS_ORDER_ERROR_PIN },
  { "row-of-three", 4, 4, { BESIDE (0, 2), BESIDE (2, 1) }, 2, -1 },
  { "three-neighbours",
    4,
    4,
    { BESIDE (0, 2), BESIDE (2, 1), BESIDE (3, 2) },
    3,
    BS_ORDER_ERROR_PIN },
  { "ring", 4, 4, { BESIDE (0, 2), BESIDE (2, 1), BESIDE (1, 0) }, 3, BS_ORDER_ERROR_PIN },
  { "beside-itself", 4, 4, { BESIDE (1, 1) }, 1, BS_ORDER_ERROR_PIN },
  { "beside-nobody", 4, 4, { BESIDE (1, 9) }, 1, BS_ORDER_ERROR_PIN },
  { "neighbours-two-apart",
    5,
    5,
    { BESIDE (0, 1), PLACE (0, 0), PLACE (1, 2) },
    3,
    BS_ORDER_ERROR_PIN },
  { "ends-of-a-row-of-three",
    5,
    5,
    { BESIDE (0, 1), BESIDE (1, 2), PLACE (0, 1), PLACE (2, 3) },
    4,
    -1 },
  { "middle-of-a-row-at-the-end",
    5,
    5,
    { BESIDE (0, 1), BESIDE (1, 2), PLACE (1, 0) },
    3,
    BS_ORDER_ERROR_PIN },
  /* two pairs and a pinned one in the middle of five: one on each side */
  { "pairs-that-fit", 5, 5, { BESIDE (0, 1), BESIDE (2, 3), PLACE (4, 2) }, 3, -1 },
  /* out of the middle they leave gaps of one and three */
  { "pairs-that-do-not-fit",
    5,
    5,
    { BESIDE (0, 1), BESIDE (2, 3), PLACE (4, 1) },
    3,
    BS_ORDER_ERROR_PIN },
  { "more-pinned-than-places", 6, 3, { BESIDE (0, 1), BESIDE (2, 3) }, 2, BS_ORDER_ERROR_TOO_MANY },
  { "top-up", 3, 3, { FACE (1, BS_FACE_TOP) }, 1, -1 },
  { "top-and-underside-up",
    3,
    3,
    { FACE (1, BS_FACE_TOP), FACE (1, BS_FACE_UNDERSIDE) },
    2,
    BS_ORDER_ERROR_PIN },
  { "left-face-up", 3, 3, { FACE (1, BS_FACE_LEFT) }, 1, BS_ORDER_ERROR_PIN },
};

static BsOrderProblem *
new_problem (const Row *row)
{
  BsOrderProblem *problem = bs_order_problem_new ();

  problem->n_places = row->n_places;
  for (guint i = 0; i < row->n_candidates; i++)
    {
      BsOrderCandidate candidate = { .length = 1000.0 };
      g_autofree char *label = g_strdup_printf ("L%u", i);
      candidate.label = g_ref_string_new (label);
      g_array_append_val (problem->candidates, candidate);
    }
  g_array_append_vals (problem->pins, row->pins, row->n_pins);
  return problem;
}

/* The arrangement to start from holds all that are pinned, where they are pinned. */
static void
assert_start (const Row *row, const BsOrderRules *rules)
{
  for (guint i = 0; i < row->n_pins; i++)
    {
      const BsOrderPin *pin = &row->pins[i];
      int place = -1, other = -1;

      for (guint k = 0; k < rules->n_places; k++)
        {
          place = rules->start[k] == (int)pin->candidate ? (int)k : place;
          other = rules->start[k] == (int)pin->other ? (int)k : other;
        }
      if (pin->kind == BS_ORDER_PIN_PLACE)
        g_assert_cmpint (place, ==, (int)pin->place);
      if (pin->kind == BS_ORDER_PIN_NEIGHBOURS)
        g_assert_cmpint (ABS (place - other), ==, 1);
    }
}

static void
test_rules (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsOrderProblem) problem = new_problem (row);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, &error);

  if (row->error < 0)
    {
      g_assert_no_error (error);
      assert_start (row, rules);
      return;
    }
  g_assert_null (rules);
  g_assert_error (error, BS_ORDER_ERROR, row->error);
  g_assert_true (g_str_has_suffix (error->message, "."));
}

/* The sentence names the lamination by what is written on the wood. */
static void
test_names_the_lamination (void)
{
  const Row row = { "", 4, 4, { PLACE (2, 0), PLACE (2, 1) }, 2, 0 };
  g_autoptr (BsOrderProblem) problem = new_problem (&row);
  g_autoptr (GError) error = NULL;

  g_assert_null (bs_order_rules_new (problem, &error));
  g_assert_cmpstr (error->message, ==, "L2 is pinned to two places; take off one of the two pins.");
}

static void
test_allow (void)
{
  const Row row = { "", 4, 4, { PLACE (2, 1), FACE (3, BS_FACE_UNDERSIDE), BESIDE (0, 3) }, 3, 0 };
  g_autoptr (BsOrderProblem) problem = new_problem (&row);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);

  g_assert_true (bs_order_rules_allow (rules, 1, 2));
  g_assert_false (bs_order_rules_allow (rules, 0, 2));
  g_assert_false (bs_order_rules_allow (rules, 1, 0));
  g_assert_true (bs_order_rules_allow (rules, 0, 0));
  g_assert_true (bs_order_rules_are_partners (rules, 3, 0));
  g_assert_false (bs_order_rules_are_partners (rules, 3, 2));
  g_assert_cmpuint (rules->ways[3], ==,
                    1u << BS_ORIENTATION_OVER | 1u << BS_ORIENTATION_OVER_AND_END);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/order-rules/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_rules);
    }
  g_test_add_func ("/order-rules/names-the-lamination", test_names_the_lamination);
  g_test_add_func ("/order-rules/allow", test_allow);
  return g_test_run ();
}
