/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/random-plan.h"

#include "core/limits.h"
#include "core/text.h"

#include <math.h>

#define MOST_IN_SLAB 12
#define MOST_IN_RACK 3

/* How one plan is drawn. */
typedef struct
{
  BsRandom *random;
  BsPlan *plan;
  gboolean is_extreme; /* numbers at the ends of their ranges */
  guint unknown_in_10; /* of what may be unknown */
} Draw;

static gboolean
draw_chance (const Draw *self, guint in_10)
{
  return bs_random_below (self->random, 10) < in_10;
}

/* Usually between two usual values; in an extreme plan anywhere in the range, often at an end. */
static double
draw_number (const Draw *self, const BsLimit *limit, double low, double high)
{
  if (self->is_extreme && draw_chance (self, 4))
    return draw_chance (self, 5) ? limit->least : limit->most;
  if (self->is_extreme && draw_chance (self, 3))
    low = limit->least, high = limit->most;
  return low + bs_random_uniform (self->random) * (high - low);
}

static double
draw_unknown (const Draw *self, const BsLimit *limit, double low, double high)
{
  double value = draw_number (self, limit, low, high);

  return draw_chance (self, self->unknown_in_10) ? NAN : value;
}

static int
draw_whole (const Draw *self, const BsLimit *limit, double low, double high)
{
  return (int)floor (draw_number (self, limit, low, high) + 0.5);
}

static void
set_slab (const Draw *self)
{
  BsSlab *slab = &self->plan->slab;
  const BsLimits *limits = &bs_limits;

  slab->length = draw_number (self, &limits->slab_length, 400.0, 2500.0);
  slab->width = draw_number (self, &limits->slab_width, 100.0, 800.0);
  slab->thickness = draw_number (self, &limits->slab_thickness, 25.0, 100.0);
  slab->layup = draw_chance (self, 3) ? BS_LAYUP_ON_FLAT : BS_LAYUP_ON_EDGE;
  slab->alternate_hearts = draw_chance (self, 5);
  slab->shows_front = draw_chance (self, 5);
  slab->shows_back = draw_chance (self, 5);
  slab->shows_underside = draw_chance (self, 2);
  slab->alignment = (BsAlignment)bs_random_below (self->random, BS_N_ALIGNMENTS);
  slab->flatten_method = (BsFlattenMethod)bs_random_below (self->random, 3);
  slab->flatten_work = (BsFlattenWork)bs_random_below (self->random, BS_N_FLATTEN_WORKS);
  slab->allowance = draw_number (self, &limits->allowance, 0.0, 1.0);
  slab->dry_season.humidity_pct = draw_number (self, &limits->humidity, 25.0, 50.0);
  slab->damp_season.humidity_pct = draw_number (self, &limits->humidity, 45.0, 75.0);
}

static void
set_shop (const Draw *self)
{
  BsShop *shop = &self->plan->shop;
  const BsLimits *limits = &bs_limits;

  shop->climate.temperature_c = draw_number (self, &limits->temperature, 8.0, 30.0);
  shop->climate.humidity_pct = draw_number (self, &limits->humidity, 30.0, 80.0);
  shop->people = draw_whole (self, &limits->people, 1.0, 3.0);
  shop->planer_width
      = draw_chance (self, 3) ? 0.0 : draw_number (self, &limits->planer_width, 150.0, 500.0);
  shop->max_lift_kg = draw_unknown (self, &limits->max_lift, 10.0, 60.0);
  shop->times.spread_s_per_m2 = draw_number (self, &limits->spread_time, 60.0, 400.0);
  shop->times.joint_s = draw_number (self, &limits->hand_time, 2.0, 15.0);
  shop->times.place_s = draw_number (self, &limits->hand_time, 3.0, 20.0);
  shop->times.align_s = draw_number (self, &limits->hand_time, 3.0, 20.0);
  shop->times.tighten_s = draw_number (self, &limits->hand_time, 5.0, 30.0);
}

static void
add_clamps (const Draw *self)
{
  const BsLimits *limits = &bs_limits;

  for (guint i = bs_random_below (self->random, 4); i > 0; i--)
    {
      char id[16];
      g_snprintf (id, sizeof id, "clamp%u", i);
      BsClampKind *kind = bs_clamp_kind_new (id);
      kind->count = draw_whole (self, &limits->clamp_count, 0.0, 20.0);
      kind->max_force_n = draw_number (self, &limits->clamp_force, 1000.0, 12000.0);
      kind->reach = draw_number (self, &limits->clamp_reach, 150.0, 1200.0);
      kind->head_width = draw_number (self, &limits->clamp_head, 20.0, 60.0);
      kind->head_height = draw_number (self, &limits->clamp_head, 20.0, 60.0);
      kind->screw_mean_diameter = draw_unknown (self, &limits->screw_diameter, 10.0, 25.0);
      kind->screw_lead = draw_unknown (self, &limits->screw_lead, 2.0, 6.0);
      g_ptr_array_add (self->plan->shop.clamps, kind);
    }
}

static void
add_cauls (const Draw *self)
{
  const BsLimits *limits = &bs_limits;

  for (guint i = bs_random_below (self->random, 3); i > 0; i--)
    {
      char id[16];
      g_snprintf (id, sizeof id, "caul%u", i);
      BsCaulKind *kind = bs_caul_kind_new (id);
      kind->count = draw_whole (self, &limits->caul_count, 0.0, 6.0);
      kind->length = draw_number (self, &limits->caul_length, 400.0, 2500.0);
      kind->thickness = draw_number (self, &limits->caul_thickness, 20.0, 70.0);
      kind->height = draw_number (self, &limits->caul_height, 30.0, 90.0);
      kind->moe_mpa = draw_number (self, &limits->moe, 8000.0, 16000.0);
      g_ptr_array_add (self->plan->shop.cauls, kind);
    }
}

static void
set_adhesive (const Draw *self)
{
  BsAdhesive *adhesive = &self->plan->adhesive;
  const BsLimits *limits = &bs_limits;
  double span;

  adhesive->open_s = draw_number (self, &limits->assembly_time, 120.0, 1200.0);
  adhesive->total_s = draw_number (self, &limits->assembly_time, 240.0, 2400.0);
  adhesive->clamp_s = draw_number (self, &limits->clamp_time, 1800.0, 36000.0);
  adhesive->spread_g_per_m2 = draw_number (self, &limits->spread, 120.0, 300.0);
  adhesive->min_pressure_mpa = draw_number (self, &limits->pressure, 0.1, 0.9);
  span = draw_number (self, &limits->pressure, 0.1, 0.9);
  adhesive->max_pressure_mpa = fmin (adhesive->min_pressure_mpa + span, limits->pressure.most);
  adhesive->is_waterborne = draw_chance (self, 5);
  adhesive->is_moisture_curing = draw_chance (self, 3);
}

static void
add_woods (const Draw *self)
{
  const BsLimits *limits = &bs_limits;

  for (guint i = bs_random_below (self->random, 3); i > 0; i--)
    {
      char id[16];
      g_snprintf (id, sizeof id, "wood%u", i);
      BsWood *wood = bs_wood_new (id);
      wood->is_hardwood = draw_chance (self, 5);
      wood->sg_12 = draw_unknown (self, &limits->sg, 0.35, 0.8);
      wood->side_hardness_n = draw_unknown (self, &limits->hardness, 1500.0, 9000.0);
      wood->moe_mpa = draw_unknown (self, &limits->moe, 8000.0, 15000.0);
      wood->comp_perp_mpa = draw_unknown (self, &limits->comp_perp, 2.0, 9.0);
      wood->shrink_radial_pct = draw_unknown (self, &limits->shrinkage, 3.0, 6.0);
      wood->shrink_tangential_pct = draw_unknown (self, &limits->shrinkage, 6.0, 11.0);
      wood->coef_radial = draw_unknown (self, &limits->movement, 0.001, 0.002);
      wood->coef_tangential = draw_unknown (self, &limits->movement, 0.002, 0.004);
      g_ptr_array_add (self->plan->woods, wood);
    }
}

static void
add_defects (const Draw *self, BsLamination *lamination)
{
  for (guint i = bs_random_below (self->random, 3); i > 0; i--)
    {
      BsDefect defect = {
        .kind = (BsDefectKind)bs_random_below (self->random, BS_N_DEFECT_KINDS),
        .face = (BsFace)bs_random_below (self->random, BS_N_FACES),
        .severity = draw_number (self, &bs_limits.severity, 0.0, 2.0),
      };
      gboolean is_side = defect.face == BS_FACE_LEFT || defect.face == BS_FACE_RIGHT;
      double across = is_side ? lamination->height : lamination->thickness;
      defect.x_from = bs_random_uniform (self->random) * lamination->length;
      defect.x_to
          = defect.x_from + bs_random_uniform (self->random) * (lamination->length - defect.x_from);
      defect.across_from = bs_random_uniform (self->random) * across;
      defect.across_to
          = defect.across_from + bs_random_uniform (self->random) * (across - defect.across_from);
      g_array_append_val (lamination->defects, defect);
    }
}

static void
set_warp (const Draw *self, BsLamination *lamination)
{
  const BsLimit *warp = &bs_limits.warp;

  lamination->bow = draw_number (self, warp, -3.0, 3.0);
  lamination->crook = draw_number (self, warp, -2.0, 2.0);
  lamination->cup = draw_number (self, warp, -1.0, 1.0);
  lamination->twist = draw_number (self, warp, -2.0, 2.0);
  lamination->taper = draw_number (self, warp, -1.0, 1.0);
}

/* The first of a plan says how large they are; most others are nearly as large. */
static void
add_lamination (const Draw *self, guint number, double length, double thickness, double height)
{
  const BsLimits *limits = &bs_limits;
  const GPtrArray *woods = self->plan->woods;
  char id[16];

  g_snprintf (id, sizeof id, "%u", number);
  BsLamination *lamination = bs_lamination_new (id);
  if (!draw_chance (self, 5))
    bs_text_set (&lamination->label, id);
  if (number % 20 != 19)
    {
      lamination->length = draw_number (self, &limits->lamination_length, length, 1.02 * length);
      lamination->thickness
          = draw_number (self, &limits->lamination_thickness, thickness, 1.02 * thickness);
      lamination->height = draw_number (self, &limits->lamination_height, height, 1.02 * height);
      set_warp (self, lamination);
      add_defects (self, lamination);
    }
  if (woods->len > 0 && !draw_chance (self, self->unknown_in_10))
    {
      const BsWood *wood = g_ptr_array_index (woods, bs_random_below (self->random, woods->len));
      bs_text_set (&lamination->wood, wood->id);
    }
  lamination->pith_y = draw_unknown (self, &limits->pith, -60.0, 60.0);
  lamination->pith_z = draw_unknown (self, &limits->pith, -60.0, 60.0);
  lamination->run_out_top = (int)bs_random_below (self->random, 3) - 1;
  lamination->run_out_underside = (int)bs_random_below (self->random, 3) - 1;
  lamination->lightness = draw_unknown (self, &limits->lightness, 40.0, 80.0);
  lamination->moisture_pct = draw_unknown (self, &limits->moisture, 6.0, 14.0);
  g_ptr_array_add (self->plan->laminations, lamination);
}

/* Some number of laminations, of which some are in the slab. */
static void
add_laminations (const Draw *self)
{
  double length = 400.0 + 1600.0 * bs_random_uniform (self->random);
  double thickness = 18.0 + 40.0 * bs_random_uniform (self->random);
  double height = 30.0 + 70.0 * bs_random_uniform (self->random);
  guint in_slab = bs_random_below (self->random, MOST_IN_SLAB + 1);
  guint all = in_slab + bs_random_below (self->random, MOST_IN_RACK + 1);
  guint first = bs_random_below (self->random, 20); /* one of twenty has no size yet */

  for (guint i = 0; i < all; i++)
    add_lamination (self, first + i, length, thickness, height);
  for (guint i = 0; i < in_slab; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (self->plan->laminations, i);
      int place = (int)bs_random_below (self->random, i + 1);
      double start = draw_chance (self, 8) ? 0.0 : draw_number (self, &bs_limits.start, 0.0, 50.0);

      bs_plan_insert_placement (self->plan, place, lamination->id,
                                (BsOrientation)bs_random_below (self->random, BS_N_ORIENTATIONS),
                                start);
    }
}

/* Laminations from one end of a pack, as a pack within it. */
static void
nest_pack (const Draw *self, const BsPack *around)
{
  BsPack pack = { .first = around->first };

  if (around->count < 3 || draw_chance (self, 2))
    return;
  pack.count = 2 + (int)bs_random_below (self->random, (guint)(around->count - 2));
  if (draw_chance (self, 2))
    pack.first += around->count - pack.count;
  g_array_append_val (self->plan->packs, pack);
  nest_pack (self, &pack);
}

static void
add_packs (const Draw *self)
{
  int n = (int)self->plan->order->len;

  for (int at = 0; at + 2 <= n && draw_chance (self, 4);)
    {
      BsPack pack = { .first = at + (int)bs_random_below (self->random, 2) };
      int most = n - pack.first;

      if (most < 2)
        return;
      pack.count = 2 + (int)bs_random_below (self->random, (guint)(most - 1));
      g_array_append_val (self->plan->packs, pack);
      nest_pack (self, &pack);
      at = pack.first + pack.count;
    }
}

static void
place_clamps (const Draw *self)
{
  const GPtrArray *kinds = self->plan->shop.clamps;

  if (kinds->len == 0 || draw_chance (self, 7))
    return;
  for (guint i = bs_random_below (self->random, 7); i > 0; i--)
    {
      const BsClampKind *kind
          = g_ptr_array_index (kinds, bs_random_below (self->random, kinds->len));
      BsPlacedClamp placed = {
        .x = draw_number (self, &bs_limits.start, 0.0, self->plan->slab.length),
        .force_n = bs_random_uniform (self->random) * kind->max_force_n,
        .is_above = draw_chance (self, 5),
      };
      bs_text_set (&placed.kind, kind->id);
      g_array_append_val (self->plan->placed_clamps, placed);
    }
  bs_plan_sort_clamps (self->plan);
}

BsPlan *
random_plan_new (BsRandom *random)
{
  Draw draw = { .random = random, .plan = bs_plan_new () };

  draw.is_extreme = draw_chance (&draw, 2) || draw_chance (&draw, 1);
  draw.unknown_in_10 = bs_random_below (random, 3) * 2;
  draw.plan->units = draw_chance (&draw, 5) ? BS_UNIT_SYSTEM_INCH : BS_UNIT_SYSTEM_METRIC;
  set_slab (&draw);
  set_shop (&draw);
  add_clamps (&draw);
  add_cauls (&draw);
  set_adhesive (&draw);
  add_woods (&draw);
  add_laminations (&draw);
  add_packs (&draw);
  place_clamps (&draw);
  return draw.plan;
}
