/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/wanted.h"

#include "core/limits.h"
#include "core/sawing-wish.h"
#include "core/slab-wish.h"

#include <math.h>

/* Laminations that differ by no more are sawn alike, as large as the largest, mm: nobody sets the
 * saw anew for less. */
#define ALIKE 2.0

static void
clear_want (gpointer data)
{
  g_ptr_array_unref (((BsWant *)data)->pieces);
}

/* A lamination on edge is a board that stands; on flat it is one that lies. */
static BsWant
want_lamination (const BsPlan *plan, double length, double thickness, double height)
{
  gboolean stands = plan->slab.layup == BS_LAYUP_ON_EDGE;

  return (BsWant){
    .is_lamination = TRUE,
    .length = length,
    .width = stands ? height : thickness,
    .thickness = stands ? thickness : height,
    .clear_faces = stands ? 0 : 1,
    .clear_edges = stands ? 1 : 0,
    .is_on_show = TRUE,
  };
}

static BsWant
want_one (const BsPlan *plan, const BsLamination *lamination)
{
  BsWant self
      = want_lamination (plan, lamination->length, lamination->thickness, lamination->height);

  self.name = lamination->label;
  self.wood = lamination->wood;
  return self;
}

static gboolean
are_alike (const BsWant *a, const BsWant *b)
{
  return g_strcmp0 (a->wood, b->wood) == 0 && fabs (a->length - b->length) <= ALIKE
         && fabs (a->width - b->width) <= ALIKE && fabs (a->thickness - b->thickness) <= ALIKE;
}

static BsWant *
add_want (GArray *wanted, const BsWant *want)
{
  g_array_append_val (wanted, *want);

  BsWant *added = &g_array_index (wanted, BsWant, wanted->len - 1);
  added->pieces = g_ptr_array_new ();
  return added;
}

/* The wants so far are all laminations; they are compared with the first of each. */
static BsWant *
find_alike (GArray *wanted, const BsPlan *plan, const BsWant *want)
{
  for (guint i = 0; i < wanted->len; i++)
    {
      BsWant *group = &g_array_index (wanted, BsWant, i);
      BsWant first
          = want_one (plan, bs_plan_find_lamination (plan, g_ptr_array_index (group->pieces, 0)));

      if (!are_alike (&first, want))
        continue;
      group->length = fmax (group->length, want->length);
      group->width = fmax (group->width, want->width);
      group->thickness = fmax (group->thickness, want->thickness);
      return group;
    }
  return add_want (wanted, want);
}

static void
add_laminations (GArray *wanted, const BsPlan *plan)
{
  for (guint i = 0; i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (plan->laminations, i);
      BsWant want = want_one (plan, lamination);

      if (lamination->board != NULL || bs_saw_count_cuts (plan, lamination->id) > 0
          || want.length <= 0.0 || want.width <= 0.0 || want.thickness <= 0.0)
        continue;
      g_ptr_array_add (find_alike (wanted, plan, &want)->pieces, lamination->id);
    }
}

/* Nothing but a wish for a slab. */
static void
add_slab (GArray *wanted, const BsPlan *plan)
{
  BsSlabWish wish = bs_slab_wish (plan, plan->buying.lamination_size);
  BsWant want = want_lamination (plan, wish.length, wish.thickness, wish.height);

  if (plan->woods->len > 0)
    want.wood = ((const BsWood *)g_ptr_array_index (plan->woods, 0))->id;
  want.needed = wish.count;
  add_want (wanted, &want);
}

static void
add_spare (GArray *wanted, const BsPlan *plan)
{
  double share = plan->buying.spare_pct / 100.0;

  for (guint i = 0; i < wanted->len; i++)
    {
      BsWant *want = &g_array_index (wanted, BsWant, i);
      if (want->pieces->len > 0)
        want->needed = (int)want->pieces->len;
      want->count = want->needed + (int)ceil (share * want->needed - 1e-9);
    }
}

static void
add_parts (GArray *wanted, const BsPlan *plan)
{
  for (guint i = 0; i < plan->parts->len; i++)
    {
      const BsPart *part = g_ptr_array_index (plan->parts, i);
      BsWant want = {
        .name = part->name,
        .wood = part->wood,
        .needed = part->count - bs_saw_count_cuts (plan, part->id),
        .length = part->length,
        .width = part->width,
        .thickness = part->thickness,
        .clear_faces = part->clear_faces,
        .clear_edges = part->clear_edges,
        .is_on_show = part->is_on_show,
      };

      if (want.needed <= 0)
        continue;
      want.count = want.needed;
      BsWant *added = add_want (wanted, &want);
      for (int k = 0; k < want.needed; k++)
        g_ptr_array_add (added->pieces, part->id);
    }
}

gboolean
bs_want_can_be_layers (const BsWant *self, const BsPlan *plan)
{
  const double half = self->thickness / 2.0;

  if (self->is_lamination)
    return plan->slab.layup == BS_LAYUP_ON_EDGE
           && bs_limit_contains (&bs_limits.lamination_thickness, half)
           && plan->laminations->len + (guint)self->needed <= BS_MAX_LAMINATIONS;
  return bs_saw_count_cuts (plan, g_ptr_array_index (self->pieces, 0)) == 0
         && bs_limit_contains (&bs_limits.part_thickness, half)
         && bs_limit_contains (&bs_limits.part_count, 2.0 * self->needed);
}

static int
count_pieces (const GArray *wanted)
{
  int n = 0;

  for (guint i = 0; i < wanted->len; i++)
    n += g_array_index (wanted, BsWant, i).needed;
  return n;
}

BsMillingWish
bs_want_get_wish (const BsWant *self, const GArray *wanted, const BsPlan *plan)
{
  return (BsMillingWish){
    .thickness = self->thickness,
    .width = self->width,
    .length = self->length,
    .count = count_pieces (wanted),
    .strips = 1,
    .confidence = plan->buying.confidence_pct / 100.0,
  };
}

GArray *
bs_wanted_new (const BsPlan *plan)
{
  GArray *wanted = g_array_new (FALSE, FALSE, sizeof (BsWant));
  BsWarpHabit habit = bs_warp_habit_of (plan);
  BsMillingShop shop = bs_milling_shop_of (plan);

  g_array_set_clear_func (wanted, clear_want);
  if (plan->laminations->len == 0)
    add_slab (wanted, plan);
  else
    add_laminations (wanted, plan);
  add_spare (wanted, plan);
  add_parts (wanted, plan);
  for (guint i = 0; i < wanted->len; i++)
    {
      BsWant *want = &g_array_index (wanted, BsWant, i);
      BsMillingWish wish = bs_want_get_wish (want, wanted, plan);

      bs_milling_need (&wish, &habit, &shop, &want->need);
      want->sawn_width = bs_milling_strip (want->width, want->length, &shop);
    }
  return wanted;
}
