/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-work.h"

#include "slabs.h"

static const struct
{
  const char *name;
  BsFlattenWork work;
} works[] = {
  { "shimmed", BS_FLATTEN_SHIMMED },
  { "show-face-first", BS_FLATTEN_SHOW_FACE_FIRST },
  { "underside-first", BS_FLATTEN_UNDERSIDE_FIRST },
};

static BsPlan *
warped_slab (GRand *random)
{
  BsPlan *plan = slab_new ((guint)g_rand_int_range (random, 2, 12), 2000.0, 40.0, 90.0);

  for (guint i = 0; i < plan->order->len; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      lamination->height = g_rand_double_range (random, 88.0, 92.0);
      lamination->crook = g_rand_double_range (random, -3.0, 3.0);
      lamination->twist = g_rand_double_range (random, -5.0, 5.0);
    }
  return plan;
}

/* The rough answer is the exact one to what it promises. */
static void
test_rough (gconstpointer data)
{
  BsFlattenWork work = works[GPOINTER_TO_INT (data)].work;
  g_autoptr (GRand) random = g_rand_new_with_seed (31);

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random);
      g_autoptr (BsStack) stack = bs_stack_new (plan);
      BsFitBasis touching, basis;
      BsFaces faces;

      g_assert_true (bs_faces_init (&faces, stack));
      basis = bs_fit_basis_start (faces.x_mid, faces.y_mid, faces.length, faces.width);
      g_assert_cmpfloat_with_epsilon (bs_flatten_fit_rough (&faces, work, &basis),
                                      bs_flatten_fit (&faces, work, &touching).distance,
                                      BS_FIT_ROUGH);
      bs_faces_clear (&faces);
    }
}

/* What is named as touching does: its weighted distance is that between the planes. */
static void
test_touching (gconstpointer data)
{
  BsFlattenWork work = works[GPOINTER_TO_INT (data)].work;
  g_autoptr (GRand) random = g_rand_new_with_seed (32);

  for (int i = 0; i < 100; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random);
      g_autoptr (BsStack) stack = bs_stack_new (plan);
      BsFitBasis touching;
      BsFaces faces;
      double upper = 0.0, lower = 0.0;

      g_assert_true (bs_faces_init (&faces, stack));
      BsFit fit = bs_flatten_fit (&faces, work, &touching);
      for (int k = 0; k < 4; k++)
        {
          const BsFaceSpot *spot = &touching.spots[k];
          double over = spot->z - fit.slope_x * spot->x - fit.slope_y * spot->y - fit.offset;

          if (touching.weights[k] < 1e-9)
            continue;
          g_assert_cmpfloat_with_epsilon (over, touching.is_upper[k] ? fit.distance : 0.0, 1e-4);
          *(touching.is_upper[k] ? &upper : &lower) += touching.weights[k];
        }
      g_assert_cmpfloat_with_epsilon (upper, 1.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (lower, 1.0, 1e-9);
      bs_faces_clear (&faces);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (int i = 0; i < (int)G_N_ELEMENTS (works); i++)
    {
      g_autofree char *rough = g_strdup_printf ("/flatten-work/rough/%s", works[i].name);
      g_autofree char *touching = g_strdup_printf ("/flatten-work/touching/%s", works[i].name);

      g_test_add_data_func (rough, GINT_TO_POINTER (i), test_rough);
      g_test_add_data_func (touching, GINT_TO_POINTER (i), test_touching);
    }
  return g_test_run ();
}
