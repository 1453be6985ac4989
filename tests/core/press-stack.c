/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pressing.h"

#include <math.h>

/* What cannot be pressed is refused, with an error that says which piece or clamp. */

#define GOOD(number)                                                                               \
  {                                                                                                \
    .course = (number), .length = 600.0, .thickness = 30.0, .height = 80.0, .e_along_mpa = 12e3,   \
    .e_across_mpa = 900.0, .shear_mpa = 800.0                                                      \
  }

static BsPressPiece pieces[3] = { GOOD (0), GOOD (1), GOOD (2) };

typedef struct
{
  const char *name;
  gsize field;      /* offset of a double of the second piece, */
  double value;     /* what is put there, */
  const char *says; /* and a part of the message */
} SizeRow;

static const SizeRow size_rows[] = {
  { "no-thickness", G_STRUCT_OFFSET (BsPressPiece, thickness), 0.0, "Piece 2" },
  { "height-below-zero", G_STRUCT_OFFSET (BsPressPiece, height), -80.0, "Piece 2" },
  { "stiffness-unknown", G_STRUCT_OFFSET (BsPressPiece, e_across_mpa), NAN, "above zero" },
  { "along-endless", G_STRUCT_OFFSET (BsPressPiece, e_along_mpa), INFINITY, "above zero" },
  { "no-shear", G_STRUCT_OFFSET (BsPressPiece, shear_mpa), 0.0, "above zero" },
  { "bow-unknown", G_STRUCT_OFFSET (BsPressPiece, bow), NAN, "Piece 2" },
  { "start-unknown", G_STRUCT_OFFSET (BsPressPiece, start), NAN, "Piece 2" },
  { "too-short", G_STRUCT_OFFSET (BsPressPiece, length), 4.0, "4.0 mm long" },
};

static void
expect_refusal (const BsPressStack *stack, const char *says)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (bs_pressing_new (stack, &error));
  g_assert_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK);
  g_assert_nonnull (g_strstr_len (error->message, -1, says));
}

static void
check_sizes (gconstpointer data)
{
  const SizeRow *row = data;
  BsPressPiece changed[3] = { pieces[0], pieces[1], pieces[2] };
  BsPressStack stack = bs_press_stack_default ();

  stack.pieces = changed;
  stack.n_pieces = 3;
  G_STRUCT_MEMBER (double, &changed[1], row->field) = row->value;
  expect_refusal (&stack, row->says);
}

static void
check_places (void)
{
  BsPressPiece changed[3] = { pieces[0], pieces[1], pieces[2] };
  BsPressStack stack = bs_press_stack_default ();

  stack.pieces = changed;
  stack.n_pieces = 1;
  expect_refusal (&stack, "no glue line");
  stack.n_pieces = 3;
  changed[2].course = 3;
  expect_refusal (&stack, "no course may be empty");
  changed[2].course = 1;
  changed[2].start = 599.0;
  expect_refusal (&stack, "overlap");
  changed[2].start = 600.0;
  stack.step = 0.5;
  expect_refusal (&stack, "0.5 mm");
  stack.step = 10.0;
  stack.span_to = stack.span_from;
  expect_refusal (&stack, "must lie behind");
}

static void
check_default_is_fine (void)
{
  BsPressStack stack = bs_press_stack_default ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPressing) pressing = NULL;

  stack.pieces = pieces;
  stack.n_pieces = 3;
  pressing = bs_pressing_new (&stack, &error);
  g_assert_no_error (error);
  g_assert_nonnull (pressing);
}

static const struct
{
  const char *name;
  BsPressClamp clamp;
  const char *says;
} clamp_rows[] = {
  { "off-the-left", { -1.0, 1e3, 40.0 }, "does not bear" },
  { "on-the-very-end", { 600.0, 1e3, 40.0 }, "does not bear" },
  { "beyond-the-shorter-face", { 550.0, 1e3, 40.0 }, "550.0 mm" },
  { "pulls", { 300.0, -1.0, 40.0 }, "zero or more" },
  { "no-head", { 300.0, 1e3, 0.0 }, "head above zero" },
  { "nowhere", { NAN, 1e3, 40.0 }, "cannot be" },
};

static void
check_clamps (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  BsPressPiece changed[3] = { pieces[0], pieces[1], pieces[2] };
  BsPressStack stack = bs_press_stack_default ();
  g_autoptr (BsPressing) pressing = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (BsPressResult) result = { 0 };

  changed[2].length = i == 2 ? 500.0 : 600.0;
  stack.pieces = changed;
  stack.n_pieces = 3;
  pressing = bs_pressing_new (&stack, NULL);
  g_assert_false (bs_pressing_solve (pressing, &clamp_rows[i].clamp, 1, &result, &error));
  g_assert_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_CLAMP);
  g_assert_nonnull (g_strstr_len (error->message, -1, clamp_rows[i].says));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (size_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/press-stack/sizes/%s", size_rows[i].name);

      g_test_add_data_func (path, &size_rows[i], check_sizes);
    }
  for (guint i = 0; i < G_N_ELEMENTS (clamp_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/press-stack/clamps/%s", clamp_rows[i].name);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), check_clamps);
    }
  g_test_add_func ("/press-stack/places", check_places);
  g_test_add_func ("/press-stack/default-is-fine", check_default_is_fine);
  return g_test_run ();
}
