/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-layout.h"

#include "plan/edits.h"
#include "slabs.h"

#define TEXT 13.0
#define PIXEL 0.01

typedef struct
{
  BsStack *slab, *rack;
} Stacks;

static Stacks
make_stacks (guint in_slab, guint in_rack)
{
  g_autoptr (BsPlan) plan = slab_new (in_slab + in_rack, 1500.0, 40.0, 60.0);
  Stacks stacks = { NULL, NULL };

  for (guint i = 0; i < in_rack; i++)
    {
      BsPlan *next = bs_edit_set_aside (plan, (int)in_slab);

      bs_plan_unref (plan);
      plan = next;
    }
  stacks.slab = bs_stack_new (plan);
  stacks.rack = bs_glue_up_rack_new (plan);
  return stacks;
}

static void
clear_stacks (Stacks *stacks)
{
  bs_stack_free (stacks->slab);
  bs_stack_free (stacks->rack);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Stacks, clear_stacks)

/* A row: a view, how many laminations, how near. */
typedef struct
{
  const char *path;
  double width, height;
  guint in_slab, in_rack;
  double zoom;
} Row;

static const Row rows[] = {
  { "/glue-up-layout/small-window", 900.0, 380.0, 16, 2, 1.0 },
  { "/glue-up-layout/usual-window", 860.0, 740.0, 16, 2, 1.0 },
  { "/glue-up-layout/sixty", 1180.0, 940.0, 60, 0, 1.0 },
  { "/glue-up-layout/full-rack", 860.0, 740.0, 1, 59, 1.0 },
  { "/glue-up-layout/empty-slab", 860.0, 740.0, 0, 5, 1.0 },
  { "/glue-up-layout/nothing-at-all", 860.0, 740.0, 0, 0, 1.0 },
  { "/glue-up-layout/near", 860.0, 740.0, 16, 2, 2.5 },
  { "/glue-up-layout/very-large", 3400.0, 2000.0, 60, 4, 1.0 },
};

static void
check_columns (const BsGlueUpLayout *layout, const BsStack *slab)
{
  for (guint i = 0; i < slab->n; i++)
    {
      graphene_rect_t at = bs_glue_up_layout_column (layout, slab, i);

      g_assert_cmpfloat (at.origin.x, >=, 0.0f);
      g_assert_cmpfloat (at.origin.x + at.size.width, <=, layout->width);
      g_assert_cmpfloat (at.origin.y + at.size.height, <, layout->rack_top);
      if (i == 0)
        continue;
      graphene_rect_t before = bs_glue_up_layout_column (layout, slab, i - 1);
      g_assert_cmpfloat_with_epsilon (before.origin.x + before.size.width, at.origin.x, PIXEL);
    }
}

static void
check_rack (const BsGlueUpLayout *layout, const BsStack *rack)
{
  for (guint i = 0; i < rack->n; i++)
    {
      graphene_rect_t at = bs_glue_up_layout_seat (layout, rack, i);

      g_assert_true (bs_glue_up_layout_is_in_rack (layout, at.origin.y));
      g_assert_cmpfloat (at.origin.x + at.size.width, <=, layout->width);
      g_assert_cmpfloat (at.origin.y + at.size.height, <=, layout->height);
      for (guint k = 0; k < i; k++)
        {
          graphene_rect_t other = bs_glue_up_layout_seat (layout, rack, k);

          g_assert_false (graphene_rect_intersection (&at, &other, NULL));
        }
    }
}

/* Everything has room, nothing lies on anything else, and nothing sticks out. */
static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_auto (Stacks) stacks = make_stacks (row->in_slab, row->in_rack);
  BsGlueUpLayout layout;

  bs_glue_up_layout_init (&layout, stacks.slab, stacks.rack, row->width, row->height, row->zoom,
                          TEXT);
  g_assert_cmpuint (stacks.slab->n, ==, row->in_slab);
  g_assert_cmpuint (stacks.rack->n, ==, row->in_rack);
  check_columns (&layout, stacks.slab);
  check_rack (&layout, stacks.rack);
  g_assert_cmpfloat_with_epsilon (layout.width, row->width * row->zoom, PIXEL);
  if (row->zoom <= 1.0)
    g_assert_cmpfloat (layout.height, <=, row->height + PIXEL);
}

/* Twice as near is twice as large, if width is what limits the picture. */
static void
test_zoom (void)
{
  g_auto (Stacks) stacks = make_stacks (30, 0);
  BsGlueUpLayout once, twice;

  bs_glue_up_layout_init (&once, stacks.slab, stacks.rack, 900.0, 800.0, 1.0, TEXT);
  bs_glue_up_layout_init (&twice, stacks.slab, stacks.rack, 900.0, 800.0, 2.0, TEXT);
  g_assert_cmpfloat (twice.section.per_mm_across, >, 1.9 * once.section.per_mm_across);
}

static void
test_least (void)
{
  g_auto (Stacks) stacks = make_stacks (16, 2);
  BsGlueUpLayout layout;
  int width, height;

  bs_glue_up_layout_least (&width, &height);
  bs_glue_up_layout_init (&layout, stacks.slab, stacks.rack, width, height, 1.0, TEXT);
  g_assert_cmpfloat (layout.section.per_mm_across, >, 0.0);
  g_assert_cmpfloat (layout.face.per_mm_along, >, 0.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_test_add_data_func (rows[i].path, &rows[i], test_row);
  g_test_add_func ("/glue-up-layout/zoom", test_zoom);
  g_test_add_func ("/glue-up-layout/least", test_least);
  return g_test_run ();
}
