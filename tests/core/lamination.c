/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/lamination.h"

#include "core/text.h"

#include <math.h>

/* A half turn about x changes y and z, one about z changes x and y, both together x and z: the
 * table that lamination.h gives in words, written out by hand. */
typedef struct
{
  const char *path;
  BsOrientation orientation;
  int x, y, z;
  BsFace left, top; /* what stands at the left and on top of the slab */
} Row;

static const Row rows[] = {
  { "as-marked", BS_ORIENTATION_AS_MARKED, 1, 1, 1, BS_FACE_LEFT, BS_FACE_TOP },
  { "over", BS_ORIENTATION_OVER, 1, -1, -1, BS_FACE_RIGHT, BS_FACE_UNDERSIDE },
  { "end-for-end", BS_ORIENTATION_END_FOR_END, -1, -1, 1, BS_FACE_RIGHT, BS_FACE_TOP },
  { "over-and-end", BS_ORIENTATION_OVER_AND_END, -1, 1, -1, BS_FACE_LEFT, BS_FACE_UNDERSIDE },
};

static void
test_turn (gconstpointer data)
{
  const Row *row = data;

  g_assert_cmpint (bs_orientation_sign_x (row->orientation), ==, row->x);
  g_assert_cmpint (bs_orientation_sign_y (row->orientation), ==, row->y);
  g_assert_cmpint (bs_orientation_sign_z (row->orientation), ==, row->z);
  g_assert_cmpint (bs_orientation_face (row->orientation, BS_FACE_LEFT), ==, row->left);
  g_assert_cmpint (bs_orientation_face (row->orientation, BS_FACE_TOP), ==, row->top);
}

/* Turns are right-handed: a mirror image is no turn. */
static void
test_turns_are_rigid (void)
{
  for (int o = 0; o < BS_N_ORIENTATIONS; o++)
    {
      int x = bs_orientation_sign_x (o);
      int y = bs_orientation_sign_y (o);
      int hand = x * y * bs_orientation_sign_z (o);
      g_assert_cmpint (hand, ==, 1);
    }
}

static void
test_turn_undoes_itself (void)
{
  for (int o = 0; o < BS_N_ORIENTATIONS; o++)
    for (int face = 0; face < BS_N_FACES; face++)
      g_assert_cmpint (bs_orientation_face (o, bs_orientation_face (o, face)), ==, face);
}

static void
test_turns_combine_by_xor (void)
{
  for (int a = 0; a < BS_N_ORIENTATIONS; a++)
    for (int b = 0; b < BS_N_ORIENTATIONS; b++)
      for (int face = 0; face < BS_N_FACES; face++)
        g_assert_cmpint (bs_orientation_face (a ^ b, face), ==,
                         bs_orientation_face (a, bs_orientation_face (b, face)));
}

static void
test_new_knows_nothing (void)
{
  g_autoptr (BsLamination) lamination = bs_lamination_new ("a");

  g_assert_cmpstr (lamination->id, ==, "a");
  g_assert_true (isnan (lamination->moisture_pct));
  g_assert_true (isnan (lamination->lightness));
  g_assert_true (isnan (lamination->pith_y));
  g_assert_true (isnan (lamination->pith_z));
  g_assert_cmpuint (lamination->defects->len, ==, 0);
}

static void
test_copy_is_its_own (void)
{
  g_autoptr (BsLamination) original = bs_lamination_new ("a");
  BsDefect knot = { .kind = BS_DEFECT_KNOT, .unknown = g_ref_string_new ("{}") };

  bs_text_set (&original->wood, "beech");
  g_array_append_val (original->defects, knot);
  g_autoptr (BsLamination) copy = bs_lamination_copy (original);
  bs_text_set (&copy->wood, "ash");
  g_array_set_size (copy->defects, 0);
  copy->length = 1.0;

  g_assert_cmpstr (original->wood, ==, "beech");
  g_assert_cmpuint (original->defects->len, ==, 1);
  g_assert_cmpstr (g_array_index (original->defects, BsDefect, 0).unknown, ==, "{}");
  g_assert_cmpfloat_with_epsilon (original->length, 0.0, 1e-12);
}

static void
test_refs (void)
{
  BsLamination *lamination = bs_lamination_new ("a");

  g_assert_true (bs_lamination_ref (lamination) == lamination);
  bs_lamination_unref (lamination);
  g_assert_cmpstr (lamination->id, ==, "a");
  bs_lamination_unref (lamination);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/lamination/turn/%s", rows[i].path);
      g_test_add_data_func (path, &rows[i], test_turn);
    }
  g_test_add_func ("/lamination/turns-are-rigid", test_turns_are_rigid);
  g_test_add_func ("/lamination/turn-undoes-itself", test_turn_undoes_itself);
  g_test_add_func ("/lamination/turns-combine-by-xor", test_turns_combine_by_xor);
  g_test_add_func ("/lamination/new-knows-nothing", test_new_knows_nothing);
  g_test_add_func ("/lamination/copy-is-its-own", test_copy_is_its_own);
  g_test_add_func ("/lamination/refs", test_refs);
  return g_test_run ();
}
