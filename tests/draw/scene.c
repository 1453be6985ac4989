/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "scene.h"

#include "core/text.h"

#include <math.h>

static BsWood *
new_wood (const char *id, const char *name)
{
  BsWood *wood = bs_wood_new (id);

  bs_text_set (&wood->name, name);
  wood->is_hardwood = TRUE;
  wood->sg_12 = 0.65;
  wood->side_hardness_n = 5800.0;
  wood->moe_mpa = 12000.0;
  wood->comp_perp_mpa = 8.0;
  return wood;
}

static void
add_defect (BsLamination *lamination, BsDefectKind kind, BsFace face, double x, double length,
            double across, double width)
{
  BsDefect defect = {
    .kind = kind,
    .face = face,
    .x_from = x,
    .x_to = x + length,
    .across_from = across,
    .across_to = across + width,
    .severity = 0.5 * (kind % 4),
  };

  g_array_append_val (lamination->defects, defect);
}

static BsLamination *
new_lamination (int i, BsLayup layup)
{
  g_autofree char *id = g_strdup_printf ("lamination-%d", i + 1);
  g_autofree char *label = g_strdup_printf ("%d", i + 1);
  BsLamination *lamination = bs_lamination_new (id);
  double wide = 96.0 + i % 3, narrow = 34.0 + 3.0 * (i % 4);
  int along = i * 7 % 5;

  bs_text_set (&lamination->label, label);
  bs_text_set (&lamination->wood, i % 5 == 3 ? "walnut-black" : "beech-european");
  lamination->length = 2150.0 + 10.0 * along;
  lamination->thickness = layup == BS_LAYUP_ON_EDGE ? narrow : wide;
  lamination->height = layup == BS_LAYUP_ON_EDGE ? wide : narrow;
  lamination->bow = 0.5 * along;
  lamination->crook = 0.4 * (2 - along);
  lamination->cup = 0.2;
  lamination->twist = 0.3 * (along - 2);
  lamination->taper = 0.0;
  lamination->run_out_top = i % 3 - 1;
  lamination->run_out_underside = 1 - i % 3;
  lamination->lightness = 66.0 + 3.0 * (i * 5 % 7);
  lamination->moisture_pct = 8.5;
  if (i % 5 == 3)
    lamination->lightness = NAN;
  if (i % 6 != 4)
    {
      lamination->pith_y = (i % 2 ? 1.0 : -1.0) * (15.0 * (i % 4));
      lamination->pith_z = (i % 3 ? -1.0 : 1.0) * (30.0 + 23.0 * (i % 5));
    }
  else
    lamination->pith_y = lamination->pith_z = NAN;
  add_defect (lamination, (BsDefectKind)(i % BS_N_DEFECT_KINDS),
              i % 2 ? BS_FACE_UNDERSIDE : BS_FACE_TOP, 400.0 + 170.0 * along,
              i % BS_N_DEFECT_KINDS == BS_DEFECT_HOLE ? 14.0 : 160.0, 6.0, 14.0);
  return lamination;
}

static void
place (BsPlan *plan, const BsLamination *lamination, int i)
{
  BsPlacement placement = {
    .lamination = g_ref_string_acquire (lamination->id),
    .orientation = (BsOrientation)(i % BS_N_ORIENTATIONS),
    .start = 5.0 * (i % 3),
  };

  g_array_append_val (plan->order, placement);
}

static void
add_clamps (BsPlan *plan)
{
  BsClampKind *clamp = bs_clamp_kind_new ("bar");
  BsCaulKind *caul = bs_caul_kind_new ("caul");

  bs_text_set (&clamp->name, "Bar clamp");
  clamp->count = 12;
  clamp->max_force_n = 6000.0;
  clamp->reach = 1200.0;
  clamp->head_width = 40.0;
  clamp->head_height = 40.0;
  g_ptr_array_add (plan->shop.clamps, clamp);

  bs_text_set (&caul->name, "Hardwood caul");
  caul->count = 12;
  caul->length = 600.0;
  caul->thickness = 60.0;
  caul->height = 40.0;
  caul->moe_mpa = 12000.0;
  g_ptr_array_add (plan->shop.cauls, caul);
}

BsPlan *
scene_new_plan (int n, BsLayup layup)
{
  BsPlan *plan = bs_plan_new ();

  bs_text_set (&plan->name, "Kneading counter (invented)");
  plan->slab.layup = layup;
  plan->slab.length = 2100.0;
  plan->slab.width = 38.0 * n;
  plan->slab.thickness = layup == BS_LAYUP_ON_EDGE ? 90.0 : 30.0;
  g_ptr_array_add (plan->woods, new_wood ("beech-european", "Beech, European"));
  add_clamps (plan);
  g_ptr_array_add (plan->woods, new_wood ("walnut-black", "Walnut, black"));
  for (int i = 0; i < n; i++)
    {
      BsLamination *lamination = new_lamination (i, layup);

      g_ptr_array_add (plan->laminations, lamination);
      place (plan, lamination, i);
    }
  return plan;
}

BsPlan *
scene_new_unknown_plan (int n)
{
  BsPlan *plan = bs_plan_new ();

  for (int i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("unknown-%d", i + 1);
      BsLamination *lamination = bs_lamination_new (id);

      lamination->length = lamination->thickness = lamination->height = NAN;
      lamination->bow = lamination->crook = lamination->cup = NAN;
      lamination->twist = lamination->taper = NAN;
      lamination->pith_y = lamination->pith_z = NAN;
      lamination->lightness = lamination->moisture_pct = NAN;
      g_ptr_array_add (plan->laminations, lamination);
      place (plan, lamination, i);
    }
  return plan;
}
