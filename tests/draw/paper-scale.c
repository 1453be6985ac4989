/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/paper-scale.h"

#include <math.h>

typedef struct
{
  const char *path;
  double size, room; /* mm of the slab, points of paper */
  BsUnitSystem units;
  double wanted;
} FindRow;

/* By hand: room / 72 x 25.4 mm of paper; the next round scale that is small enough. */
static const FindRow find_rows[] = {
  { "/paper-scale/find/true", 100.0, 300.0, BS_UNIT_SYSTEM_METRIC, 1.0 },    /* 105.8 mm */
  { "/paper-scale/find/half", 200.0, 300.0, BS_UNIT_SYSTEM_METRIC, 2.0 },    /* 100 <= 105.8 */
  { "/paper-scale/find/counter", 616.0, 646.0, BS_UNIT_SYSTEM_METRIC, 3.0 }, /* 227.9: 2.70 */
  { "/paper-scale/find/two-and-a-half", 560.0, 646.0, BS_UNIT_SYSTEM_METRIC, 2.5 }, /* 2.46 */
  { "/paper-scale/find/inch", 616.0, 646.0, BS_UNIT_SYSTEM_INCH, 3.0 },
  { "/paper-scale/find/inch-eight", 1700.0, 646.0, BS_UNIT_SYSTEM_INCH, 8.0 }, /* 7.46 */
  { "/paper-scale/find/no-size", NAN, 646.0, BS_UNIT_SYSTEM_METRIC, 0.0 },
  { "/paper-scale/find/empty", 0.0, 646.0, BS_UNIT_SYSTEM_METRIC, 0.0 },
  { "/paper-scale/find/no-room", 100.0, -5.0, BS_UNIT_SYSTEM_METRIC, 0.0 },
};

static void
test_find (gconstpointer data)
{
  const FindRow *row = data;

  g_assert_cmpfloat_with_epsilon (bs_paper_scale_find (row->size, row->room, row->units),
                                  row->wanted, 1e-9);
}

static void
test_larger (void)
{
  g_assert_cmpfloat_with_epsilon (bs_paper_scale_find_larger (2.5, BS_UNIT_SYSTEM_METRIC), 2.0,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (bs_paper_scale_find_larger (12.0, BS_UNIT_SYSTEM_INCH), 10.0,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (bs_paper_scale_find_larger (1.0, BS_UNIT_SYSTEM_METRIC), 0.0,
                                  1e-9);
}

static void
test_format (void)
{
  g_autofree char *half = bs_paper_scale_format (2.5), *ten = bs_paper_scale_format (10.0);

  g_assert_cmpstr (half, ==, "1:2.5");
  g_assert_cmpstr (ten, ==, "1:10");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (find_rows); i++)
    g_test_add_data_func (find_rows[i].path, &find_rows[i], test_find);
  g_test_add_func ("/paper-scale/larger", test_larger);
  g_test_add_func ("/paper-scale/format", test_format);
  return g_test_run ();
}
