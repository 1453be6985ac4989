/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/text.h"
#include "slabs.h"

/* What a plan of slabs.h needs to be glued: wood, clamps, cauls. Figures are made up and round, so
 * that the wanted values of a test can be worked by hand. */

/* Gives all laminations one wood, and returns it to be changed. */
static inline BsWood *
shop_set_wood (BsPlan *plan, double sg_12, double comp_perp_mpa)
{
  BsWood *wood = bs_wood_new ("wood");

  wood->sg_12 = sg_12;
  wood->comp_perp_mpa = comp_perp_mpa;
  g_ptr_array_add (plan->woods, wood);
  for (guint i = 0; i < plan->laminations->len; i++)
    bs_text_set (&slab_at (plan, i)->wood, "wood");
  return wood;
}

/* Square heads. */
static inline BsClampKind *
shop_add_clamps (BsPlan *plan, int count, double max_force_n, double reach, double head)
{
  BsClampKind *kind = bs_clamp_kind_new ("clamp");

  kind->count = count;
  kind->max_force_n = max_force_n;
  kind->reach = reach;
  kind->head_width = head;
  kind->head_height = head;
  g_ptr_array_add (plan->shop.clamps, kind);
  return kind;
}

static inline BsCaulKind *
shop_add_cauls (BsPlan *plan, int count, double length, double thickness, double height)
{
  BsCaulKind *kind = bs_caul_kind_new ("caul");

  kind->count = count;
  kind->length = length;
  kind->thickness = thickness;
  kind->height = height;
  kind->moe_mpa = 12000.0;
  g_ptr_array_add (plan->shop.cauls, kind);
  return kind;
}

/* Eight laminations 1200 x 40 x 45 mm of a medium wood that nothing is wrong with: it is wanted
 * 1200 x 320 x 45 mm, moisture and climate agree, there is time and force enough for it. */
static inline BsPlan *
shop_new_perfect (void)
{
  BsPlan *plan = slab_new (8, 1200.0, 40.0, 45.0);

  plan->slab.length = 1200.0;
  plan->slab.width = 320.0;
  plan->slab.thickness = 45.0;
  plan->slab.dry_season = (BsClimate){ 20.0, 40.0 };
  plan->slab.damp_season = (BsClimate){ 20.0, 60.0 };
  shop_set_wood (plan, 0.50, 6.0);
  shop_add_clamps (plan, 12, 6000.0, 600.0, 50.0);
  for (guint i = 0; i < plan->laminations->len; i++)
    slab_at (plan, i)->moisture_pct = 9.0;
  return plan;
}

/* Ten straight laminations 1500 x 40 x 80 mm of a hardwood, 20 clamps of 6 kN, and cauls of 800 mm
 * when asked for (four line both faces); the adhesive asks for 0.25 MPa. */
static inline BsPlan *
shop_new_pressed (int n_cauls)
{
  BsPlan *plan = slab_new (10, 1500.0, 40.0, 80.0);
  BsWood *wood = shop_set_wood (plan, 0.60, 7.0);

  wood->is_hardwood = TRUE;
  wood->moe_mpa = 11000.0;
  shop_add_clamps (plan, 20, 6000.0, 800.0, 40.0);
  shop_add_cauls (plan, n_cauls, 800.0, 50.0, 60.0);
  plan->adhesive.min_pressure_mpa = 0.25;
  plan->adhesive.max_pressure_mpa = 1.0;
  return plan;
}

/* The same in haste: seven joints of 5 + 0.054 m2 x 200 + 8 + 7 = 30.8 s and ten clamps of 12 s
 * take 335.6 s in one press, and at 20 C the adhesive gives 300. Half of it can be closed. */
static inline BsPlan *
shop_new_hasty (void)
{
  BsPlan *plan = shop_new_perfect ();

  plan->shop.climate = (BsClimate){ 20.0, 50.0 };
  plan->adhesive.open_s = 150.0;
  plan->adhesive.total_s = 300.0;
  return plan;
}
